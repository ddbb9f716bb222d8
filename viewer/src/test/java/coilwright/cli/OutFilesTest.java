package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What commands write: never over what they read, and into pipes and terminals as well. */
class OutFilesTest {
    private static final Path SAMPLES = Path.of("../samples");
    private static final Path JOB = SAMPLES.resolve("jobs/orchard-pump-dynamo.yaml");

    @TempDir
    private Path temp;

    /** A name in capitals is a file to read, {@code >} stands before it where it is written. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "table JOB --out >JOB",
                "table JOB --format csv --out >LINK",
                "table JOB --format json --out >HARD",
                "draw JOB.svg --view round --out >JOB.svg",
                "probe JOB --test resistance --out >JOB",
                "diagnose JOB READINGS --test drop --feed 1,5 --out >JOB",
                "diagnose JOB READINGS --test drop --feed 1,5 --out >READINGS",
                "diagnose JOB READINGS.svg --test drop --feed 1,5 --chart >READINGS.svg",
                "check JOB CONNECTIONS --out >CONNECTIONS",
                "check JOB.svg CONNECTIONS --drawing >JOB.svg",
                "repair JOB --coil 3 --fault open --out >JOB",
                "repair JOB.svg --coil 3 --fault open --drawing >JOB.svg",
                "rewind JOB --out >JOB",
                "commutator JOB RUNOUT --out >RUNOUT",
                "commutator JOB RUNOUT.svg --chart >RUNOUT.svg",
                "accept JOB --out >JOB",
                "sheet JOB.html --kind as-found --out >JOB.html",
                "page JOB.html --test drop --out >JOB.html"
            })
    void whatIsReadIsNotOverwritten(String line) throws IOException {
        List<String> args = new ArrayList<>();
        for (String word : line.split(" ")) {
            args.add(word.startsWith(">") || Character.isUpperCase(word.charAt(0)) ? input(word) : word);
        }
        List<String> before = contents();
        Run run = Run.of(args.toArray(String[]::new));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err())
                .isEqualTo("coilwright: " + args.get(args.size() - 1)
                        + ": is read by this command, and would be lost: name another file to write\n");
        assertThat(contents()).isEqualTo(before);
    }

    private String input(String word) throws IOException {
        String name = word.replace(">", "");
        Path file = temp.resolve(name);
        Path job = temp.resolve("JOB");
        if (Files.exists(file)) {
            return file.toString();
        }
        if (name.equals("LINK")) {
            Files.createSymbolicLink(file, Path.of("JOB"));
        } else if (name.equals("HARD")) {
            Files.createLink(file, job);
        } else if (name.startsWith("RUNOUT")) {
            Files.writeString(file, runOut());
        } else if (name.startsWith("CONNECTIONS")) {
            Files.writeString(
                    file, Run.of("table", JOB.toString(), "--format", "csv").out());
        } else {
            Files.copy(
                    name.startsWith("READINGS") ? SAMPLES.resolve("readings/orchard-pump-dynamo-drop.csv") : JOB, file);
        }
        return file.toString();
    }

    private static String runOut() {
        StringBuilder text = new StringBuilder("bar,height\n");
        for (int bar = 1; bar <= 17; bar++) {
            text.append(bar).append(",0.01 mm\n");
        }
        return text.toString();
    }

    private List<String> contents() throws IOException {
        try (Stream<Path> files = Files.list(temp)) {
            List<String> out = new ArrayList<>();
            for (Path p : files.sorted().toList()) {
                out.add(p.getFileName() + (Files.isSymbolicLink(p) ? " -> " : " ") + Files.readString(p));
            }
            return out;
        }
    }

    /** As of several pages, the second of which would be named as the job is. */
    @Test
    void ofSeveralFilesNoneIsWrittenWhereOneIsRead() throws IOException {
        var files = new OutFiles();
        Path job = Files.writeString(temp.resolve("a-2.svg"), "job");
        files.reads(job);
        Map<Path, byte[]> pages = new LinkedHashMap<>();
        pages.put(temp.resolve("a-1.svg"), new byte[1]);
        pages.put(temp.resolve("b/../a-2.svg"), new byte[1]);
        Files.createDirectory(temp.resolve("b"));
        assertThatThrownBy(() -> files.write(pages))
                .isInstanceOf(UsageException.class)
                .hasMessageContaining("a-2.svg: is read by this command");
        assertThat(temp.resolve("a-1.svg")).doesNotExist();
        assertThat(job).hasContent("job");
        files.write(temp.resolve("a-1.svg"), "one");
        assertThatThrownBy(() -> files.write(temp.resolve("a-1.svg"), "two"))
                .hasMessageContaining("was written by this command just now");
        assertThat(temp.resolve("a-1.svg")).hasContent("one");
    }

    @Test
    void twoAnswersGoIntoTwoFiles() {
        String chart = temp.resolve("a.svg").toString();
        Run run = Run.of(
                "diagnose",
                JOB.toString(),
                SAMPLES.resolve("readings/orchard-pump-dynamo-drop.csv").toString(),
                "--test",
                "drop",
                "--feed",
                "1,5",
                "--chart",
                chart,
                "--out",
                temp.resolve("./a.svg").toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("--chart and --out both name").contains("name a file of its own for each");
        assertThat(temp.resolve("a.svg")).doesNotExist();
        String sink = "/dev/null";
        if (Files.exists(Path.of(sink))) {
            assertThat(Run.of("table", JOB.toString(), "--out", sink).code()).isZero();
        }
    }

    @Test
    void standardOutputByItsNameIsStandardOutput() {
        Run plain = Run.of("table", JOB.toString());
        assertThat(Run.of("table", JOB.toString(), "--out", "/dev/stdout")).isEqualTo(plain);
    }

    @Test
    void aFileThatCannotBeWrittenIsNamedWithTheReason() throws IOException {
        Run run = Run.of(
                "table", JOB.toString(), "--out", temp.resolve("none/a.txt").toString());
        assertThat(run)
                .isEqualTo(new Run(
                        2,
                        "",
                        "coilwright: " + temp.resolve("none/a.txt") + ": cannot be written: there is no folder "
                                + temp.resolve("none") + ": make it, or name another\n"));
        run = Run.of("draw", JOB.toString(), "--view", "round", "--out", "/");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("does not end in a format a drawing can have");
    }

    @Test
    void whatCouldCommandATerminalIsShownByItsNumber() {
        Run run = Run.of("table", "\u001b[31m\u202eno.yaml");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).isEqualTo("\\u001B[31m\\u202Eno.yaml: there is no such file\n");
        assertThat(Run.of("table", "--\u009b31m", "a").err())
                .contains("\"--\\u009B31m\"")
                .doesNotContain("\u009b");
    }

    /** Each in a Java of its own, whose output is what the shell makes it. */
    @Test
    void aReaderThatGoesAwayIsNoTroubleAndAFullDiskIs() throws Exception {
        for (String needed : List.of("/bin/sh", "/dev/full", "/dev/stdout")) {
            assumeTrue(Files.exists(Path.of(needed)), "left out, for want of " + needed);
        }
        assertThat(shell("{ \"$@\"; echo \"code $?\" >&2; } | :")).isEqualTo("code 0\n");
        assertThat(shell("\"$@\" --out /dev/stdout | cat; { \"$@\" --out /dev/stdout; } | :"))
                .isEqualTo(Run.of("table", JOB.toString()).out());
        assertThat(shell("\"$@\" > /dev/full; echo \"code $?\""))
                .matches("coilwright: cannot write the answer: .*\ncode 2\n");
    }

    private static String shell(String script) throws IOException, InterruptedException {
        Process p = new ProcessBuilder(
                        "/bin/sh",
                        "-c",
                        script,
                        "sh",
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Main.class.getName(),
                        "table",
                        JOB.toString())
                .redirectErrorStream(true)
                .start();
        p.getOutputStream().close();
        String said = new String(p.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        p.waitFor();
        return said;
    }
}
