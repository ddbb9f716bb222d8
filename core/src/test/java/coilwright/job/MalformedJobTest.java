package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every malformed file under {@code malformed} is refused with exactly the problems that expected.txt lists. */
class MalformedJobTest {
    private static final Path FOLDER = Path.of("src/test/resources/coilwright/job/malformed");

    private static final String GOOD = """
            coilwright: 1
            title: Test
            armature: {slots: 17, bars: 17, poles: 4}
            winding: {type: wave, throw: 4}
            """;

    @TempDir
    private Path temp;

    static Stream<String> files() throws IOException {
        try (Stream<Path> paths = Files.list(FOLDER)) {
            return paths
                    .map(p -> p.getFileName().toString())
                    .filter(n -> n.endsWith(".yaml"))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    @ParameterizedTest
    @MethodSource("files")
    void isRefusedWithExactlyTheseProblems(String name) throws Exception {
        List<String> expected = Files.readAllLines(FOLDER.resolve("expected.txt")).stream()
                .filter(l -> l.startsWith(name + ":"))
                .toList();
        assertThat(expected).as("expected.txt tells what is wrong with " + name).isNotEmpty();

        var refusal = catchThrowableOfType(
                BadInputException.class, () -> JobReader.parse(name, Files.readString(FOLDER.resolve(name))));

        assertThat(refusal).isNotNull();
        assertThat(refusal.problems().stream().map(Problem::toString)).containsExactlyElementsOf(expected);
    }

    @Test
    void everyExpectedProblemBelongsToAFile() throws IOException {
        List<String> files = files().toList();
        assertThat(files).hasSizeGreaterThan(90);
        assertThat(Files.readAllLines(FOLDER.resolve("expected.txt")))
                .allSatisfy(l -> assertThat(files).contains(l.substring(0, l.indexOf(':'))));
    }

    @Test
    void missingFileIsNamed() {
        Path file = temp.resolve("none.yaml");
        refused(file, file + ": there is no such file");
    }

    @Test
    void folderIsNoJobFile() {
        refused(temp, temp + ": is a folder, not a job file");
    }

    @Test
    void latin1IsRefusedAtItsLine() throws IOException {
        Path file = Files.write(
                temp.resolve("latin.yaml"), "coilwright: 1\ntitle: Mühle\n".getBytes(StandardCharsets.ISO_8859_1));
        refused(file, file + ":2: is not UTF-8 text from here on: save it as UTF-8");
    }

    @Test
    void utf16IsRefused() throws IOException {
        Path file = Files.write(temp.resolve("wide.yaml"), GOOD.getBytes(StandardCharsets.UTF_16));
        refused(file, file + ":1: is not UTF-8 text from here on: save it as UTF-8");
    }

    @Test
    void cutUtf8SequenceIsRefused() throws IOException {
        Path file = Files.write(temp.resolve("cut.yaml"), new byte[] {'a', ':', ' ', (byte) 0xC3});
        refused(file, file + ":1: is not UTF-8 text from here on: save it as UTF-8");
    }

    @Test
    void nulIsRefused() throws IOException {
        Path file = Files.writeString(temp.resolve("nul.yaml"), GOOD + "# \0\n");
        refused(file, file + ":5: holds the unseen character U+0000: take it out");
    }

    @Test
    void tooLongFileIsRefused() throws IOException {
        Path file = Files.writeString(temp.resolve("long.yaml"), GOOD + "#".repeat(JobReader.MAX_BYTES));
        refused(file, file + ": is longer than 4194304 bytes, the most that a job file may have");
    }

    @Test
    void tooManyValuesAreRefused() {
        String text = GOOD + "x: [" + "1,".repeat(YamlText.MAX_EVENTS) + "]\n";
        assertThatThrownBy(() -> JobReader.parse("many.yaml", text))
                .isInstanceOf(BadInputException.class)
                .hasMessage("many.yaml:5: has more than 200000 keys and values up to here, too many");
    }

    @Test
    void moreThanFiftyProblemsAreCutShort() {
        StringBuilder text = new StringBuilder(GOOD);
        for (int i = 0; i < 60; i++) {
            text.append("unknown").append(i).append(": 1\n");
        }
        var refusal = catchThrowableOfType(BadInputException.class, () -> JobReader.parse("x", text.toString()));
        assertThat(refusal.problems()).hasSize(51);
        assertThat(refusal.problems().get(50)).hasToString("x: 10 more problems are not shown");
    }

    @Test
    void longestListedWindingStaysWithinTheBounds() throws Exception {
        StringBuilder text = new StringBuilder("""
                coilwright: 1
                title: T
                armature: {slots: 1000, bars: 4000, poles: 8}
                winding:
                  type: listed
                  coils:
                """);
        for (int coil = 1; coil <= 8000; coil++) {
            text.append("    - {coil: ").append(coil);
            text.append(", topSlot: 1000, bottomSlot: 1000, topBar: 4000, bottomBar: 4000}\n");
        }
        assertThat(JobReader.parse("x", text.toString()).armature().bars()).isEqualTo(4000);
    }

    private static void refused(Path file, String... problems) {
        var refusal = catchThrowableOfType(BadInputException.class, () -> JobReader.read(file));
        assertThat(refusal).isNotNull();
        assertThat(refusal.problems().stream().map(Problem::toString)).containsExactly(problems);
    }
}
