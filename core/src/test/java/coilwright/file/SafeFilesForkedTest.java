package coilwright.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Saving while the program is killed, the disk is full or rights are missing, each in a Java of its own. */
class SafeFilesForkedTest {
    /** More of them with {@code -Dfuzz=1000}. */
    private static final int KILLS = Integer.getInteger("fuzz", 20);

    private static final int AT_ONCE = 2;

    @TempDir
    private Path temp;

    private static ProcessBuilder saver(List<String> before, String... args) {
        return Forked.java(before, Saver.class, List.of(SafeFiles.class), args);
    }

    private static String said(List<String> before, String... args) throws Exception {
        return Forked.says(saver(before, args)).replace("\r", "");
    }

    @Test
    void killedAtAnyMomentTheFileIsWholeAndLitterDoesNotGrow() throws Exception {
        Path file = temp.resolve("job.yaml");
        var random = new Random(KILLS);
        for (int killed = 0; killed < KILLS; killed += AT_ONCE) {
            List<Process> savers = new ArrayList<>();
            for (int i = 0; i < AT_ONCE; i++) {
                savers.add(saver(List.of(), "on", file.toString(), "saver" + (killed + i))
                        .start());
            }
            for (Process p : savers) {
                assertThat(p.getInputStream().read())
                        .as("the first save is done")
                        .isEqualTo('.');
            }
            Thread.sleep(random.nextInt(20), random.nextInt(1_000_000));
            for (Process p : savers) {
                p.destroyForcibly().waitFor();
            }
            assertThat(Saver.whole(Files.readString(file))).startsWith("saver");
            assertThat(parts()).as("left behind by those killed last").isLessThanOrEqualTo(AT_ONCE);
        }
        SafeFiles.write(file, Saver.version("last", 10));
        assertThat(Saver.names(temp)).isEqualTo("[job.yaml]");
    }

    private long parts() throws IOException {
        try (Stream<Path> files = Files.list(temp)) {
            return files.filter(p -> p.toString().endsWith(".part")).count();
        }
    }

    @Test
    void onAFullDiskNothingIsLostAndTheReasonIsTold() throws Exception {
        String mount = "mount -t tmpfs -o size=64k none \"$0\"";
        Forked.needs("the right to mount a small disk", "unshare", "-rm", "sh", "-c", mount, temp.toString());
        String a = temp.resolve("a").toString();
        String b = temp.resolve("b").toString();
        assertThat(said(
                                List.of("unshare", "-rm", "sh", "-c", mount + " && exec \"$@\"", temp.toString()),
                                "once",
                                a + "=9000",
                                a + "=90000",
                                a + "=8000," + b + "=60000",
                                a + "=7000")
                        .replaceFirst("(?i)no space left on device", "no space left on device"))
                .isEqualTo("""
                        written
                        a new [a]
                        no space left on device: make room there, or name a file elsewhere
                        a new [a]
                        no space left on device: make room there, or name a file elsewhere
                        a new [a]
                        written
                        a new [a]
                        """);
    }

    /** A quota, as it looks to a program: the file may grow to 4 blocks only. */
    @Test
    void whereAFileMayNotGrowNothingIsLost() throws Exception {
        Forked.needs("a shell that bounds the size of files", "sh", "-c", "ulimit -f 8");
        Path file = temp.resolve("a");
        assertThat(said(
                        List.of("sh", "-c", "ulimit -f 8 && exec \"$@\"", "sh"),
                        "once",
                        file + "=1000",
                        file + "=90000"))
                .matches("written\na new \\[a]\n.*: make room there, or name a file elsewhere\na new \\[a]\n");
        assertThat(Files.readString(file)).isEqualTo(Saver.version("new", 1000));
    }

    @Test
    void withoutTheRightToWriteNothingIsLostAndTheWayOutIsTold() throws Exception {
        Path readOnly = Files.createDirectory(temp.resolve("folder"));
        Path inIt = Files.writeString(readOnly.resolve("a"), "old");
        Path newInIt = readOnly.resolve("b");
        Path file = Files.writeString(temp.resolve("c"), "old");
        Files.setPosixFilePermissions(readOnly, PosixFilePermissions.fromString("r-xr-xr-x"));
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r--r--"));
        try {
            String folder = "no file may be made in the folder " + readOnly + ", where it is written before it is put"
                    + " in place: allow that, or name another folder\n";
            assertThat(said(asNobody(), "once", newInIt + "=1")).isEqualTo(folder);
            assertThat(said(asNobody(), "once", inIt + "=1", file + "=1"))
                    .startsWith(folder)
                    .contains("it may not be written to: allow that, or name another file\n");
            assertThat(inIt).hasContent("old");
            assertThat(file).hasContent("old");
        } finally {
            Files.setPosixFilePermissions(readOnly, PosixFilePermissions.fromString("rwxr-xr-x"));
        }
    }

    /** An administrator is bound by no rights, until all powers are taken off. */
    private static List<String> asNobody() {
        boolean root = System.getProperty("user.name").equals("root");
        if (!root) {
            return List.of();
        }
        String[] off = {"setpriv", "--bounding-set=-all", "--inh-caps=-all", "true"};
        Forked.needs("a way to take powers off", off);
        return List.of(off).subList(0, 3);
    }

    @Test
    void ownerAndGroupAreKeptAndAnotherGroupMayDoNoMoreThanOthers() throws Exception {
        assumeTrue(
                System.getProperty("user.name").equals("root"),
                "left out, for want of the right to give files away: run as an administrator");
        Path file = Files.writeString(temp.resolve("a"), "old");
        Forked.needs("a way to give files away", "chown", "12345:23456", file.toString());
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rw-r--"));
        SafeFiles.write(file, "new");
        assertThat(Files.getAttribute(file, "unix:uid")).isEqualTo(12345);
        assertThat(Files.getAttribute(file, "unix:gid")).isEqualTo(23456);
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rwx-w-"));
        assertThat(said(asNobody(), "once", file + "=1")).startsWith("written");
        assertThat(Files.getAttribute(file, "unix:uid")).isEqualTo(0);
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw--w--w-");
    }
}
