package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class CommandLineTest {
    @TempDir
    private Path temp;

    static Stream<String> commands() {
        return Commands.names().stream();
    }

    @ParameterizedTest
    @MethodSource("commands")
    void everyCommandHasHelpWithExamples(String command) {
        Run run = Run.of(command, "--help");
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .contains("Usage: coilwright " + command)
                .contains("Examples:")
                .containsPattern("Examples:\\R(.*\\R)*.*coilwright " + command);
        assertThat(run.out()).contains("-h, --help");
    }

    @ParameterizedTest
    @MethodSource("commands")
    void helpIsTheSameWhetherOneCommandIsMadeOrAll(String command) {
        String alone = Run.of(command, "--help").out();
        var console = new Console(System.out, System.err);
        String among = Commands.line(Commands.names(), console)
                .getSubcommands()
                .get(command)
                .getUsageMessage();
        assertThat(alone).isEqualTo(among);
    }

    @Test
    void mainHelpNamesEveryCommand() {
        Run run = Run.of("--help");
        assertThat(run.code()).isZero();
        Commands.names().forEach(n -> assertThat(run.out()).containsPattern("(?m)^  " + n + " "));
    }

    @Test
    void versionIsTheBuilds() {
        Run run = Run.of("--version");
        assertThat(run.code()).isZero();
        assertThat(run.out()).matches("coilwright \\d+\\.\\d+\\S*\\R");
    }

    @Test
    void wrongUsageLeavesWithTwoAndSaysHowToGoOn() {
        assertThat(Run.of())
                .isEqualTo(new Run(
                        2,
                        "",
                        "coilwright: a command is missing: one of " + String.join(", ", Commands.names())
                                + "\n\"coilwright --help\" shows how it is used\n"));
        Run misspelt = Run.of("tabel");
        assertThat(misspelt.code()).isEqualTo(2);
        assertThat(misspelt.err()).startsWith("coilwright: there is no command \"tabel\" here: did you mean table?\n");
        Run option = Run.of("table", "--fromat", "json", "x.yaml");
        assertThat(option.code()).isEqualTo(2);
        assertThat(option.err())
                .contains("there is no option \"--fromat\" here: did you mean --format?")
                .contains("\"coilwright table --help\" shows how it is used");
        Run form = Run.of("table", "--format", "xml", "x.yaml");
        assertThat(form.code()).isEqualTo(2);
        assertThat(form.err()).contains("'--format': is \"xml\", but must be one of text, json, csv");
        assertThat(Run.of("table").err()).contains("JOB");
    }

    @Test
    void whatIsGivenDoesNothingToTheScreen() throws Exception {
        assertThat(Run.of("table", "a\u001b[31m\n.yaml").err())
                .isEqualTo("a\\u001B[31m\\u000A.yaml: there is no such file\n");
        assertThat(Run.of("\u001b[2J").err()).startsWith("coilwright: there is no command \"\\u001B[2J\" here\n");
        assertThat(Run.of("rules", "--slots", "12", "--poles", "2", "--type", "x".repeat(5000) + "\u202e")
                        .err())
                .startsWith("coilwright: --type is \"" + "x".repeat(60) + "…\", but must be");
        String drawings = temp.resolve("a\u001b[1m").toString();
        Run run = Run.of(
                "table",
                TableCommandTest.SAMPLES.resolve("tin-tram-toy-motor.yaml").toString(),
                "--drawings",
                drawings);
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("a\\u001B[1m/round.svg").doesNotContain("\u001b");
    }

    @Test
    void aNameThatNoFileCanHaveIsRefusedInWords() {
        assertThat(Run.of("table", "a\0b").err())
                .startsWith(
                        "coilwright: Invalid value for positional parameter at index 0 (JOB): is \"a\\u0000b\", which cannot be "
                                + "the name of a file here\n");
        assertThat(Run.of("table", "").err()).contains("is empty, but must be the name of a file");
        assertThat(Run.of("table", "\ud800").code()).isEqualTo(2);
    }

    @Test
    void aNameThatBeginsWithAnAtIsANameLikeAnyOther() throws Exception {
        Path file = Files.copy(TableCommandTest.SAMPLES.resolve("tin-tram-toy-motor.yaml"), temp.resolve("options"));
        assertThat(Run.of("table", "@" + file).err()).isEqualTo("@" + file + ": there is no such file\n");
    }

    @ParameterizedTest
    @CsvSource({
        "1e3, a whole number",
        "0x10, a whole number",
        "99999999999, a whole number from -2147483648 to 2147483647",
        "99999999999999999999, a whole number from -9223372036854775808 to 9223372036854775807",
        "\u0663, a whole number"
    })
    void aWholeNumberIsPlainDigits(String given, String wanted) {
        assertThat(Run.of("rules", "--slots", given, "--poles", "2").err())
                .startsWith("coilwright: Invalid value for option '--slots': is \"" + given + "\", but must be "
                        + wanted + "\n");
    }

    @ParameterizedTest
    @ValueSource(strings = {"NaN", "Infinity", "1e999", "0x1p3", "1d", "1,5"})
    void aNumberIsPlainDigits(String given) {
        String job = TableCommandTest.SAMPLES.resolve("tin-tram-toy-motor.yaml").toString();
        assertThat(Run.of("draw", job, "--view", "round", "--angle", given).err())
                .startsWith("coilwright: Invalid value for option '--angle': is \"" + given
                        + "\", but must be a number such as 1.5\n");
    }

    @Test
    void whatShouldNeverHappenIsOneLine() {
        Run run = new Run(0, "", Complaints.unexpected(new IllegalStateException("a\nb")));
        assertThat(run.err())
                .startsWith("coilwright: this should not have happened; please report it")
                .contains("IllegalStateException: a b at coilwright.cli.CommandLineTest")
                .doesNotContain("\n");
    }

    @Test
    void completionIsAScriptThatBashTakes() throws Exception {
        Run run = Run.of("completion");
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("complete -F").contains("--explain");
        assumeTrue(Files.exists(Path.of("/bin/bash")), "no bash here");
        Path script = Files.writeString(temp.resolve("completion.sh"), run.out());
        var bash = new ProcessBuilder("/bin/bash", "-n", script.toString()).start();
        assertThat(bash.waitFor()).isZero();
    }

    @Test
    void aClosedPipeIsNoTroubleAFullDiskIs() throws Exception {
        assumeTrue(Files.exists(Path.of("/bin/bash")) && Files.exists(Path.of("/dev/full")), "no bash or /dev/full");
        String sample =
                TableCommandTest.SAMPLES.resolve("mountain-railway-motor.yaml").toString();
        String table = java() + " table " + sample + " --format json";
        assertThat(bash("set -o pipefail; " + table + " | head -n 1")).isEqualTo("0 {\n");
        assertThat(bash(table + " > /dev/full")).matches("2 coilwright: cannot write the answer: .*\n");
    }

    /** What a table does not need must not be loaded, since loading is most of the time it takes. */
    @Test
    void aTableLoadsNoLibraryItDoesNotNeed() throws Exception {
        String sample =
                TableCommandTest.SAMPLES.resolve("orchard-pump-dynamo.yaml").toString();
        assumeTrue(Files.exists(Path.of("/bin/bash")), "no bash here");
        List<String> loaded = bash(java().replace(" -cp ", " -verbose:class -cp ") + " table " + sample)
                .lines()
                .filter(l -> l.contains("source:"))
                .toList();
        assertThat(loaded).anyMatch(l -> l.contains("org.yaml.snakeyaml."));
        assertThat(loaded)
                .noneMatch(l -> l.contains(" org.apache.batik.")
                        || l.contains(" org.apache.fop.")
                        || l.contains(" org.jgrapht.")
                        || l.contains(" org.ejml.")
                        || l.contains(" tech.units.")
                        || l.contains(" com.fasterxml.jackson.")
                        || l.contains(" java.awt."));
        // 219 when this was written; the option parser alone would bring a hundred more.
        assertThat(loaded.stream().filter(l -> l.contains("source: file:") || l.contains("source: jar:")))
                .hasSizeBetween(150, 235);
    }

    private static String java() {
        return "'" + Path.of(System.getProperty("java.home"), "bin", "java") + "' -XX:TieredStopAtLevel=1 -cp '"
                + System.getProperty("java.class.path") + "' coilwright.cli.Main";
    }

    /** Exit code and output of a line of shell. */
    private static String bash(String line) throws Exception {
        var process = new ProcessBuilder("/bin/bash", "-c", line)
                .redirectErrorStream(true)
                .start();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return process.waitFor() + " " + output;
    }
}
