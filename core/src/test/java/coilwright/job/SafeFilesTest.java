package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
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
        assertThat(reason(temp)).isEqualTo("it is a folder");
        assertThat(reason(temp.resolve("none/a.txt"))).isEqualTo("there is no folder " + temp.resolve("none"));
        Path file = Files.writeString(temp.resolve("a.txt"), "old");
        assertThat(reason(file.resolve("b.txt"))).isEqualTo("there is no folder " + file);
        assertThat(file).hasContent("old");
        assertThat(names()).containsExactly("a.txt");
    }

    private static String reason(Path file) {
        return SafeFiles.reason(catchThrowableOfType(IOException.class, () -> SafeFiles.write(file, "x")));
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(temp)) {
            return files.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }
}
