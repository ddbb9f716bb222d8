package coilwright.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SafeFilesTest {
    @TempDir
    private Path temp;

    @Test
    void writesANewFileAndLeavesNothingBeside() throws IOException {
        Path file = temp.resolve("a.txt");
        SafeFiles.write(file, "one");
        SafeFiles.write(file, "two");
        assertThat(file).hasContent("two");
        assertThat(names()).containsExactly("a.txt");
    }

    @Test
    void aReaderNeverSeesAPart() throws Exception {
        Path file = temp.resolve("a.txt");
        String a = "a".repeat(300_000);
        String b = "b".repeat(200_000);
        SafeFiles.write(file, a);
        var stop = new AtomicBoolean();
        var wrong = new AtomicBoolean();
        var reader = new Thread(() -> {
            while (!stop.get()) {
                try {
                    String seen = Files.readString(file);
                    if (!seen.equals(a) && !seen.equals(b)) {
                        wrong.set(true);
                    }
                } catch (IOException e) {
                    wrong.set(true);
                }
            }
        });
        reader.start();
        for (int i = 0; i < 40; i++) {
            SafeFiles.write(file, i % 2 == 0 ? b : a);
        }
        stop.set(true);
        reader.join();
        assertThat(wrong).isFalse();
    }

    @Test
    void aLinkStaysALink() throws IOException {
        Path file = temp.resolve("real.txt");
        Path link = temp.resolve("link.txt");
        Files.writeString(file, "old");
        Files.createSymbolicLink(link, file);
        SafeFiles.write(link, "new");
        assertThat(Files.isSymbolicLink(link)).isTrue();
        assertThat(file).hasContent("new");
    }

    @Test
    void rightsAreKept() throws IOException {
        assumeTrue(Files.getFileStore(temp).supportsFileAttributeView("posix"));
        Path file = Files.writeString(temp.resolve("a.txt"), "old");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rw----"));
        SafeFiles.write(file, "new");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-rw----");
    }

    @Test
    void whatIsNoRegularFileIsWrittenStraight() throws IOException {
        Path sink = Path.of("/dev/null");
        assumeTrue(Files.exists(sink));
        SafeFiles.write(sink, "gone");
        assertThat(Files.isRegularFile(sink)).isFalse();
        assertThat(Files.exists(sink)).isTrue();
    }

    @Test
    void aFailureSaysWhyAndLeavesNothing() throws IOException {
        assertThat(reason(temp)).isEqualTo("it is a folder: name a file in it");
        assertThat(reason(temp.resolve("none/a.txt")))
                .isEqualTo("there is no folder " + temp.resolve("none") + ": make it, or name another");
        Path file = Files.writeString(temp.resolve("a.txt"), "old");
        assertThat(reason(file.resolve("b.txt")))
                .isEqualTo("there is no folder " + file + ": make it, or name another");
        assertThat(file).hasContent("old");
        assertThat(names()).containsExactly("a.txt");
    }

    @Test
    void linksStayAndWhatTheyPointToIsWritten() throws IOException {
        Path elsewhere = Files.createDirectories(temp.resolve("elsewhere/deep"));
        Path file = Files.writeString(elsewhere.resolve("real.txt"), "old");
        Path folder = Files.createSymbolicLink(temp.resolve("folder"), elsewhere);
        Path toFile = Files.createSymbolicLink(temp.resolve("first"), Path.of("folder/second"));
        Files.createSymbolicLink(elsewhere.resolve("second"), Path.of("../deep/real.txt"));
        SafeFiles.write(toFile, "new");
        assertThat(file).hasContent("new");
        assertThat(Files.isSymbolicLink(toFile)).isTrue();
        assertThat(Files.isSymbolicLink(elsewhere.resolve("second"))).isTrue();

        Path dangling = Files.createSymbolicLink(folder.resolve("dangling"), Path.of("../later.txt"));
        SafeFiles.write(dangling, "made");
        assertThat(temp.resolve("elsewhere/later.txt")).hasContent("made");
        assertThat(Files.isSymbolicLink(dangling)).isTrue();

        assertThat(reason(folder)).isEqualTo("it is a folder: name a file in it");
        Path nowhere = Files.createSymbolicLink(temp.resolve("nowhere"), Path.of("none/a.txt"));
        assertThat(reason(nowhere)).startsWith("there is no folder ").contains("none: make it");
        Files.createSymbolicLink(temp.resolve("round"), Path.of("about"));
        Path about = Files.createSymbolicLink(temp.resolve("about"), Path.of("round"));
        assertThat(reason(about)).isEqualTo("its links lead round in a circle");
        assertThat(Files.isSymbolicLink(about)).isTrue();
    }

    @Test
    void anotherHardLinkKeepsTheOldVersion() throws IOException {
        Path file = Files.writeString(temp.resolve("a.txt"), "old");
        Path other = Files.createLink(temp.resolve("b.txt"), file);
        SafeFiles.write(file, "new");
        assertThat(file).hasContent("new");
        assertThat(other).hasContent("old");
    }

    @Test
    void oddNamesAreNamesLikeOthers() throws IOException {
        for (String name : List.of(
                " a ",
                "-rf",
                "a\"b'c`d$e",
                "[a]*?{b,c}",
                "a\nb",
                "\\Q.x.\\E",
                ".",
                "x".repeat(255),
                "y".repeat(49) + "é")) {
            Path folder = Files.createTempDirectory(temp, "odd");
            Path file;
            try {
                file = folder.resolve(name.equals(".") ? ".hidden" : name);
            } catch (InvalidPathException e) {
                // Where the system's names are ASCII, or forbid a sign, there is no such name.
                continue;
            }
            SafeFiles.write(file, "old");
            SafeFiles.write(file, "new");
            assertThat(file).hasContent("new");
            assertThat(names(folder)).hasSize(1);
        }
    }

    @Test
    void whatWasLeftBehindIsTakenAwayAndWhatIsInUseIsNot() throws IOException {
        String gone = Long.toString((1L << 30) + 7, 36);
        String here = Long.toString(ProcessHandle.current().pid(), 36);
        String living = Long.toString(
                ProcessHandle.current().parent().map(ProcessHandle::pid).orElse(1L), 36);
        Path mine = Files.writeString(temp.resolve(".a.txt." + here + "-7.part"), "x");
        Path dead = Files.writeString(temp.resolve(".a.txt." + gone + "-0.part"), "x");
        Path used = Files.writeString(temp.resolve(".a.txt." + living + "-0.part"), "x");
        Path other = Files.writeString(temp.resolve(".b.txt." + gone + "-0.part"), "x");
        Path strange = Files.writeString(temp.resolve(".a.txt.backup.part"), "x");
        SafeFiles.write(temp.resolve("a.txt"), "new");
        assertThat(mine).doesNotExist();
        assertThat(dead).doesNotExist();
        assertThat(List.of(used, other, strange)).allMatch(Files::exists);
        Files.setLastModifiedTime(used, FileTime.from(Instant.now().minus(Duration.ofDays(2))));
        SafeFiles.write(temp.resolve("a.txt"), "new");
        assertThat(used).doesNotExist();
    }

    @Test
    void ofSeveralFilesAllOrNoneAreWritten() throws IOException {
        Path a = Files.writeString(temp.resolve("a.txt"), "old");
        Map<Path, byte[]> contents = new LinkedHashMap<>();
        contents.put(a, "new".getBytes(StandardCharsets.UTF_8));
        Path b = temp.resolve("none/b.txt");
        contents.put(b, "new".getBytes(StandardCharsets.UTF_8));
        assertThat(catchThrowableOfType(FileSystemException.class, () -> SafeFiles.write(contents))
                        .getFile())
                .isEqualTo(b.toString());
        assertThat(a).hasContent("old");
        assertThat(names()).containsExactly("a.txt");
        Files.createDirectory(b.getParent());
        SafeFiles.write(contents);
        assertThat(a).hasContent("new");
        assertThat(b).hasContent("new");
    }

    @Test
    void aNewFileIsMadeByOneOnly() throws Exception {
        int savers = 8;
        for (int i = 0; i < 20; i++) {
            Path file = temp.resolve("new" + i);
            var start = new CountDownLatch(1);
            Set<String> made = ConcurrentHashMap.newKeySet();
            List<Thread> threads = new ArrayList<>();
            for (int n = 0; n < savers; n++) {
                String name = "saver " + n;
                threads.add(new Thread(() -> {
                    try {
                        start.await();
                        SafeFiles.create(file, name);
                        made.add(name);
                    } catch (FileAlreadyExistsException e) {
                        return;
                    } catch (IOException | InterruptedException e) {
                        made.add(e.toString());
                    }
                }));
            }
            threads.forEach(Thread::start);
            start.countDown();
            for (Thread t : threads) {
                t.join();
            }
            assertThat(made).containsExactly(Files.readString(file));
        }
        assertThat(names()).hasSize(20).noneMatch(n -> n.endsWith(".part"));
    }

    /** The inside of an archive, as Java shows it, stands for file systems that know neither rights nor links. */
    @Test
    void neitherRightsNorLinksAreNeeded() throws IOException {
        try (FileSystem archive = FileSystems.newFileSystem(temp.resolve("a.zip"), Map.of("create", "true"))) {
            Path file = archive.getPath("/a.txt");
            SafeFiles.create(file, "old");
            assertThatThrownBy(() -> SafeFiles.create(file, "x")).isInstanceOf(FileAlreadyExistsException.class);
            SafeFiles.write(file, "new");
            assertThat(Files.readString(file)).isEqualTo("new");
            assertThat(names(archive.getPath("/"))).containsExactly("a.txt");
        }
    }

    @Test
    void whatAShellHandsOverIsWrittenOnNotReplaced() throws IOException {
        Path file = Files.writeString(temp.resolve("a.txt"), "before\n");
        try (FileChannel open = FileChannel.open(file, StandardOpenOption.APPEND)) {
            Optional<Path> handed = handed(file);
            assumeTrue(handed.isPresent(), "left out, for want of /proc, where open files are shown as links");
            SafeFiles.write(handed.get(), "new\n");
            open.write(ByteBuffer.wrap("after\n".getBytes(StandardCharsets.UTF_8)));
        }
        assertThat(file).hasContent("before\nnew\nafter\n");
    }

    private static Optional<Path> handed(Path file) throws IOException {
        Path folder = Path.of("/proc/self/fd");
        if (!Files.isDirectory(folder)) {
            return Optional.empty();
        }
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(Files::isSymbolicLink)
                    .filter(l -> {
                        try {
                            return Files.readSymbolicLink(l).equals(file.toRealPath());
                        } catch (IOException e) {
                            return false;
                        }
                    })
                    .findFirst();
        }
    }

    @Test
    void aPipeIsWrittenInto() throws Exception {
        Path pipe = temp.resolve("pipe");
        Forked.needs("named pipes", "mkfifo", pipe.toString());
        var seen = new CompletableFuture<String>();
        var reader = new Thread(() -> {
            try {
                seen.complete(Files.readString(pipe));
            } catch (IOException e) {
                seen.completeExceptionally(e);
            }
        });
        reader.start();
        SafeFiles.write(pipe, "through");
        assertThat(seen.get()).isEqualTo("through");
        assertThat(Files.isRegularFile(pipe)).isFalse();
    }

    /** While the second of two files, a pipe, waits for its reader, the first stands written beside its place. */
    private void whileStaged(Path first, Step meanwhile) throws Exception {
        Path pipe = temp.resolve("pipe");
        Forked.needs("named pipes", "mkfifo", pipe.toString());
        Map<Path, byte[]> contents = new LinkedHashMap<>();
        contents.put(first, "new".getBytes(StandardCharsets.UTF_8));
        contents.put(pipe, "through".getBytes(StandardCharsets.UTF_8));
        var done = new CompletableFuture<Void>();
        var saver = new Thread(() -> {
            try {
                SafeFiles.write(contents);
                done.complete(null);
            } catch (IOException e) {
                done.completeExceptionally(e);
            }
        });
        saver.start();
        while (!done.isDone() && !waitsForReader(saver)) {
            Thread.onSpinWait();
        }
        if (!done.isDone()) {
            meanwhile.run();
            assertThat(Files.readString(pipe)).isEqualTo("through");
        }
        try {
            done.get();
        } catch (ExecutionException e) {
            throw (IOException) e.getCause();
        }
    }

    private interface Step {
        void run() throws Exception;
    }

    private static boolean waitsForReader(Thread saver) {
        return Stream.of(saver.getStackTrace())
                .anyMatch(f ->
                        f.getMethodName().equals("write") && f.getClassName().equals(Files.class.getName()));
    }

    @Test
    void whatAnotherTookForLeftBehindIsWrittenAnew() throws Exception {
        Path folder = Files.createDirectory(temp.resolve("shared"));
        Path file = Files.writeString(folder.resolve("a.txt"), "old");
        whileStaged(file, () -> {
            assertThat(file).hasContent("old");
            for (String name : names(folder)) {
                if (name.endsWith(".part")) {
                    assertThat(folder.resolve(name)).hasContent("new");
                    Files.delete(folder.resolve(name));
                }
            }
        });
        assertThat(file).hasContent("new");
        assertThat(names(folder)).containsExactly("a.txt");
    }

    @Test
    void whatAnotherThreadIsAtWorkOnIsNotTakenAway() throws Exception {
        Path folder = Files.createDirectory(temp.resolve("shared"));
        Path file = Files.writeString(folder.resolve("a.txt"), "old");
        whileStaged(file, () -> {
            List<String> before = names(folder);
            SafeFiles.write(file, "between");
            assertThat(file).hasContent("between");
            assertThat(names(folder)).isEqualTo(before).hasSize(2);
        });
        assertThat(file).hasContent("new");
        assertThat(names(folder)).containsExactly("a.txt");
    }

    @Test
    void aFolderThatGoesWhileSavingIsToldByTheNameThatWasGiven() throws Exception {
        Path folder = Files.createDirectory(temp.resolve("stick"));
        Path file = folder.resolve("a.txt");
        assertThatThrownBy(() -> whileStaged(file, () -> {
                    for (String name : names(folder)) {
                        Files.delete(folder.resolve(name));
                    }
                    Files.delete(folder);
                }))
                .isInstanceOfSatisfying(FileSystemException.class, e -> {
                    assertThat(e.getFile()).isEqualTo(file.toString());
                    assertThat(e.getReason()).isEqualTo("there is no such file or folder");
                });
        assertThat(folder).doesNotExist();
    }

    @Test
    void ownLitterIsPassedOverUpToAHundredTimes() throws IOException {
        Path file = Files.writeString(temp.resolve("a.txt"), "old");
        String start = ".a.txt." + Long.toString(ProcessHandle.current().pid(), 36) + "-";
        for (int i = 0; i <= 100; i++) {
            Files.writeString(temp.resolve(start + i + ".part"), "x");
        }
        assertThat(reason(file)).isEqualTo("a file of that name is in the way");
        assertThat(file).hasContent("old");
        assertThat(names()).hasSize(102);
        Files.delete(temp.resolve(start + "100.part"));
        SafeFiles.write(file, "new");
        assertThat(file).hasContent("new");
        assertThat(names()).containsExactly("a.txt");
        // Nothing is held of what was done with: a hundred and more find their names again.
        for (int i = 0; i <= 101; i++) {
            SafeFiles.write(file, "new " + i);
        }
        assertThat(file).hasContent("new 101");
        Files.writeString(temp.resolve(".b.txt" + start.substring(6) + "3.part"), "x");
        SafeFiles.create(temp.resolve("b.txt"), "new");
        assertThat(names()).containsExactly("a.txt", "b.txt");
    }

    @Test
    void theStartOfALongNameCutsNoSignInTwo() {
        assertThat(StagedFile.shortened("a".repeat(50))).isEqualTo("a".repeat(50));
        assertThat(StagedFile.shortened("a".repeat(50) + "b")).isEqualTo("a".repeat(50));
        String musical = Character.toString(0x1D11E);
        assertThat(StagedFile.shortened("a".repeat(49) + musical)).isEqualTo("a".repeat(49));
        assertThat(StagedFile.shortened("a".repeat(48) + musical + "b")).isEqualTo("a".repeat(48) + musical);
    }

    @Test
    void anotherGroupMayDoNoMoreThanOthers() {
        Map.of(
                        "rwxrwxrwx", "rwxrwxrwx",
                        "rw-rw-r--", "rw-r--r--",
                        "rwxrwx---", "rwx------",
                        "rwxrwx--x", "rwx--x--x",
                        "rw-rw--w-", "rw--w--w-",
                        "r--------", "r--------",
                        "rw----rwx", "rw----rwx")
                .forEach((had, narrowed) -> {
                    var rights = PosixFilePermissions.fromString(had);
                    StagedFile.narrow(rights);
                    assertThat(PosixFilePermissions.toString(rights)).as(had).isEqualTo(narrowed);
                });
    }

    @Test
    void aNewFileHasTheRightsOfAnyNewFile() throws IOException {
        assumeTrue(Files.getFileStore(temp).supportsFileAttributeView("posix"));
        Path file = temp.resolve("a.txt");
        SafeFiles.write(file, "new");
        assertThat(Files.getPosixFilePermissions(file))
                .isEqualTo(Files.getPosixFilePermissions(Files.writeString(temp.resolve("b.txt"), "any")));
    }

    @Test
    void reasonsAreToldInWords() {
        assertThat(SafeFiles.reason(new FileAlreadyExistsException("a")))
                .isEqualTo("a file of that name is in the way");
        assertThat(SafeFiles.reason(new NotDirectoryException("a"))).isEqualTo("a part of the path is not a folder");
        assertThat(SafeFiles.reason(new FileSystemLoopException("a"))).isEqualTo("its links lead round in a circle");
        assertThat(SafeFiles.reason(new AccessDeniedException("a"))).isEqualTo("permission denied");
        assertThat(SafeFiles.reason(new NoSuchFileException("a"))).isEqualTo("there is no such file or folder");
        assertThat(SafeFiles.reason(new AccessDeniedException("a", null, "Locked by another")))
                .isEqualTo("locked by another");
        assertThat(SafeFiles.reason(new IOException("No space left on device"))).isEqualTo("no space left on device");
        assertThat(SafeFiles.reason(new EOFException())).isEqualTo("EOFException");
        assertThat(SafeFiles.reason(new EOFException(" "))).isEqualTo("EOFException");
    }

    private static String reason(Path file) {
        return SafeFiles.reason(catchThrowableOfType(IOException.class, () -> SafeFiles.write(file, "x")));
    }

    private List<String> names() throws IOException {
        return names(temp);
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }
}
