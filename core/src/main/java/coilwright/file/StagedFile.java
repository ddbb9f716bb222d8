package coilwright.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.GroupPrincipal;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.nio.file.attribute.UserPrincipal;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A file written whole beside its place, and not yet in it. */
final class StagedFile {
    private static final String ENDING = ".part";

    /** No more of a name than leaves room for the rest in the longest name that file systems take. */
    private static final int MOST_OF_NAME = 50;

    private static final int MOST_TRIES = 100;

    /** Writing takes no day: what is older was left behind, whoever bears the number of its process by now. */
    private static final Duration OLD = Duration.ofDays(1);

    /** Those this program is at work on. */
    private static final Set<Path> OWN = ConcurrentHashMap.newKeySet();

    private final Path file;
    private final Path target;
    private final byte[] bytes;
    private Optional<Path> beside = Optional.empty();

    private StagedFile(Path file, Path target, byte[] bytes) {
        this.file = file;
        this.target = target;
        this.bytes = bytes;
    }

    /**
     * Writes the bytes beside a place, down to the disk.
     *
     * @param file as it was given
     * @param target its place, links followed
     */
    static StagedFile of(Path file, Path target, byte[] bytes) throws IOException {
        var staged = new StagedFile(file, target, bytes);
        staged.write();
        return staged;
    }

    /** The file as it was given. */
    Path file() {
        return file;
    }

    private Path folder() {
        return target.toAbsolutePath().getParent();
    }

    private void write() throws IOException {
        Path made = create();
        beside = Optional.of(made);
        try {
            fill(made);
            keepRights(made);
        } catch (IOException e) {
            drop();
            throw new FileSystemException(
                    target.toString(), null, SafeFiles.reason(e) + ": make room there, or name a file elsewhere");
        }
    }

    private Path create() throws IOException {
        String name = "." + shortened(target.getFileName().toString()) + "."
                + Long.toString(ProcessHandle.current().pid(), Character.MAX_RADIX) + "-";
        for (int i = 0; ; i++) {
            Path candidate = folder().resolve(name + i + ENDING);
            // Another thread's is passed over: its mark is not ours to take away.
            if (!OWN.add(candidate)) {
                if (i >= MOST_TRIES) {
                    throw new FileAlreadyExistsException(candidate.toString());
                }
                continue;
            }
            try {
                return Files.createFile(candidate, hidden());
            } catch (FileAlreadyExistsException e) {
                OWN.remove(candidate);
                if (i >= MOST_TRIES) {
                    throw e;
                }
            } catch (AccessDeniedException e) {
                OWN.remove(candidate);
                throw new FileSystemException(
                        target.toString(),
                        null,
                        "no file may be made in the folder " + folder()
                                + ", where it is written before it is put in place: allow that, or name another folder");
            } catch (IOException e) {
                OWN.remove(candidate);
                throw e;
            }
        }
    }

    /** The start of a name, no sign cut in two. */
    static String shortened(String name) {
        return name.length() <= MOST_OF_NAME
                ? name
                : name.substring(0, MOST_OF_NAME - (Character.isHighSurrogate(name.charAt(MOST_OF_NAME - 1)) ? 1 : 0));
    }

    /** What replaces a file is nobody else's to read before it has that file's rights. */
    private FileAttribute<?>[] hidden() {
        boolean posix = folder().getFileSystem().supportedFileAttributeViews().contains("posix");
        return posix && Files.exists(target)
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(
                            EnumSet.of(PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE))
                }
                : new FileAttribute<?>[0];
    }

    private void fill(Path made) throws IOException {
        try (FileChannel channel = FileChannel.open(made, StandardOpenOption.WRITE)) {
            ByteBuffer buffer = ByteBuffer.wrap(bytes);
            while (buffer.hasRemaining()) {
                channel.write(buffer);
            }
            channel.force(true);
        }
    }

    private void keepRights(Path part) throws IOException {
        PosixFileAttributeView old = Files.getFileAttributeView(target, PosixFileAttributeView.class);
        PosixFileAttributeView made = Files.getFileAttributeView(part, PosixFileAttributeView.class);
        if (old == null || made == null || !Files.exists(target)) {
            return;
        }
        PosixFileAttributes wanted = old.readAttributes();
        Set<PosixFilePermission> rights = EnumSet.noneOf(PosixFilePermission.class);
        rights.addAll(wanted.permissions());
        keepOwner(made, wanted.owner());
        if (!keepGroup(made, wanted.group())) {
            narrow(rights);
        }
        try {
            made.setPermissions(rights);
        } catch (IOException e) {
            // A file system without rights of its own, such as a memory stick's, refuses; all files are alike there.
            return;
        }
    }

    private static void keepOwner(PosixFileAttributeView made, UserPrincipal owner) throws IOException {
        try {
            if (!made.getOwner().equals(owner)) {
                made.setOwner(owner);
            }
        } catch (FileSystemException e) {
            // Only an administrator gives files away: it is then the file of the one who saved it last.
            return;
        }
    }

    private static boolean keepGroup(PosixFileAttributeView made, GroupPrincipal group) throws IOException {
        try {
            if (!made.readAttributes().group().equals(group)) {
                made.setGroup(group);
            }
            return true;
        } catch (FileSystemException e) {
            return false;
        }
    }

    /** Another group may do no more than all others may. */
    static void narrow(Set<PosixFilePermission> rights) {
        if (!rights.contains(PosixFilePermission.OTHERS_READ)) {
            rights.remove(PosixFilePermission.GROUP_READ);
        }
        if (!rights.contains(PosixFilePermission.OTHERS_WRITE)) {
            rights.remove(PosixFilePermission.GROUP_WRITE);
        }
        if (!rights.contains(PosixFilePermission.OTHERS_EXECUTE)) {
            rights.remove(PosixFilePermission.GROUP_EXECUTE);
        }
    }

    /** Puts it into its place, over what is there. */
    void putInPlace() throws IOException {
        for (int i = 0; ; i++) {
            try {
                move(beside.orElseThrow());
                break;
            } catch (NoSuchFileException e) {
                // On a shared folder, another machine may have taken it for one left behind.
                if (i == 2 || beside.filter(Files::exists).isPresent() || !Files.isDirectory(folder())) {
                    throw e;
                }
                drop();
                write();
            }
        }
        inPlace();
    }

    private void move(Path made) throws IOException {
        try {
            Files.move(made, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException | FileAlreadyExistsException e) {
            // Such a file system replaces in two steps; a kill between them leaves the new one under its other name.
            Files.move(made, target, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** Puts it into its place where nothing is there. */
    void putInNewPlace() throws IOException {
        Path made = beside.orElseThrow();
        try {
            Files.createLink(target, made);
            Files.delete(made);
        } catch (FileAlreadyExistsException e) {
            throw new FileAlreadyExistsException(file.toString());
        } catch (UnsupportedOperationException | IOException e) {
            // Without hard links, a file made between these two lines would be lost.
            if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
                throw new FileAlreadyExistsException(file.toString());
            }
            move(made);
        }
        inPlace();
    }

    private void inPlace() {
        beside.ifPresent(OWN::remove);
        beside = Optional.empty();
        SafeFiles.settle(folder());
        clearLeftBehind();
    }

    /** Takes it away where it was not put into its place. */
    void drop() {
        beside.ifPresent(made -> {
            try {
                Files.deleteIfExists(made);
            } catch (IOException e) {
                // The next to write this file tries again.
                return;
            } finally {
                OWN.remove(made);
            }
        });
        beside = Optional.empty();
    }

    /** Only now that the place holds a whole file is nothing else wanted any more. */
    private void clearLeftBehind() {
        Pattern form = Pattern.compile(
                Pattern.quote("." + shortened(target.getFileName().toString()) + ".")
                        + "([0-9a-z]{1,7})-[0-9]{1,3}"
                        + Pattern.quote(ENDING));
        try (DirectoryStream<Path> found = Files.newDirectoryStream(folder())) {
            for (Path p : found) {
                Matcher m = form.matcher(p.getFileName().toString());
                if (m.matches() && isLeftBehind(p, m.group(1))) {
                    Files.deleteIfExists(p);
                }
            }
        } catch (IOException | DirectoryIteratorException e) {
            // Tidying up is no reason to fail: the file itself is written.
            return;
        }
    }

    private static boolean isLeftBehind(Path part, String process) throws IOException {
        long pid = Long.parseLong(process, Character.MAX_RADIX);
        if (pid == ProcessHandle.current().pid()) {
            return !OWN.contains(part);
        }
        FileTime written = Files.getLastModifiedTime(part, LinkOption.NOFOLLOW_LINKS);
        return ProcessHandle.of(pid).map(p -> !p.isAlive()).orElse(true)
                || written.toInstant().isBefore(Instant.now().minus(OLD));
    }
}
