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

    private static final String PICTURES = "samples/docs/pictures/";

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
                .replace("samples/", TableCommandTest.SAMPLES.getParent() + "/")
                .replace("drawings/", temp + "/");
        Run run = Run.of(command.split(" "));
        assertThat(run.code()).isLessThan(2);
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).isEqualTo(commandAndOutput.get(1));
    }

    static Stream<String> manual() throws IOException {
        List<String> commands = new ArrayList<>();
        try (Stream<Path> pages = Files.list(Path.of("../samples/docs"))) {
            for (Path page : pages.filter(Files::isRegularFile).sorted().toList()) {
                Matcher m = Pattern.compile("\\$ coilwright (.*)\n").matcher(Files.readString(page));
                while (m.find()) {
                    commands.add(m.group(1));
                }
            }
        }
        return commands.stream();
    }

    @ParameterizedTest
    @MethodSource("manual")
    void theManualsCommandsRun(String command) throws IOException {
        String here = command.replace(PICTURES, temp + "/")
                .replace("samples/", TableCommandTest.SAMPLES.getParent() + "/")
                .replace("drawings/", temp + "/");
        Run run = Run.of(words(here));
        assertThat(run.code()).as(run.err()).isLessThan(2);
        assertThat(run.err()).isEmpty();
        List<Path> written;
        try (Stream<Path> files = Files.list(temp)) {
            written = files.toList();
        }
        assertThat(!run.out().isEmpty() || !written.isEmpty()).isTrue();
        Matcher picture = Pattern.compile(PICTURES + "(\\S+)").matcher(command);
        while (picture.find()) {
            assertThat(temp.resolve(picture.group(1)))
                    .as("the picture in the manual is the one drawn now")
                    .hasSameTextualContentAs(Path.of("..", PICTURES, picture.group(1)));
        }
    }

    /** The words of a command; quotation marks keep one together. */
    private static String[] words(String command) {
        List<String> words = new ArrayList<>();
        Matcher m = Pattern.compile("\"([^\"]*)\"|(\\S+)").matcher(command);
        while (m.find()) {
            words.add(m.group(1) == null ? m.group(2) : m.group(1));
        }
        return words.toArray(String[]::new);
    }

    @Test
    void everyPictureOfTheManualIsDrawnByACommandInIt() throws IOException {
        String commands = String.join("\n", manual().toList());
        try (Stream<Path> pictures = Files.list(Path.of("..", PICTURES))) {
            assertThat(pictures.map(p -> PICTURES + p.getFileName()))
                    .isNotEmpty()
                    .allSatisfy(p -> assertThat(commands).contains(p));
        }
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
        List<Path> pages = new ArrayList<>(List.of(README, Path.of("../DEVELOPERS.md")));
        try (Stream<Path> manual = Files.list(Path.of("../samples/docs"))) {
            manual.filter(Files::isRegularFile).forEach(pages::add);
        }
        for (Path page : pages) {
            Matcher m = Pattern.compile("\\]\\(([^)#:]+)\\)").matcher(Files.readString(page));
            while (m.find()) {
                assertThat(page.resolveSibling(m.group(1))).exists();
            }
        }
        assertThat(shown()).hasSizeGreaterThan(2);
    }
}
