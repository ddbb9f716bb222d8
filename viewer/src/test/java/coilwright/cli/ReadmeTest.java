package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The commands in README.md do what stands there. */
class ReadmeTest {
    private static final Path README = Path.of("../README.md");
    private static final Pattern SHOWN = Pattern.compile("```console\n\\$ coilwright (.*)\n([^`]*)```");

    @TempDir
    private Path temp;

    static Stream<List<String>> shown() throws IOException {
        Matcher m = SHOWN.matcher(Files.readString(README));
        List<List<String>> shown = new ArrayList<>();
        while (m.find()) {
            shown.add(List.of(m.group(1), m.group(2)));
        }
        return shown.stream();
    }

    @ParameterizedTest
    @MethodSource("shown")
    void prints(List<String> commandAndOutput) {
        String command = commandAndOutput
                .get(0)
                .replace("samples/jobs", TableCommandTest.SAMPLES.toString())
                .replace("drawings/", temp + "/");
        Run run = Run.of(command.split(" "));
        assertThat(run.code()).isLessThan(2);
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).isEqualTo(commandAndOutput.get(1));
    }

    @Test
    void theMainCommandWritesTheDrawings() throws IOException {
        Matcher main =
                Pattern.compile("java -jar viewer/target/coilwright.jar (.*)\n").matcher(Files.readString(README));
        assertThat(main.find()).isTrue();
        String command = main.group(1)
                .replace("samples/jobs", TableCommandTest.SAMPLES.toString())
                .replace("--drawings drawings", "--drawings " + temp);
        assertThat(Run.of(command.split(" ")).code()).isZero();
        assertThat(temp.resolve("developed.svg")).exists();
        assertThat(temp.resolve("round.png")).exists();
    }

    @Test
    void everyFileItNamesIsThere() throws IOException {
        for (String page : List.of("../README.md", "../DEVELOPERS.md")) {
            Matcher m = Pattern.compile("\\]\\(([^)#:]+)\\)").matcher(Files.readString(Path.of(page)));
            while (m.find()) {
                assertThat(Path.of("..", m.group(1))).exists();
            }
        }
        assertThat(shown()).hasSizeGreaterThan(2);
    }
}
