package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands check, identify and repair. */
class BenchCommandsTest {
    @TempDir
    private Path temp;

    private String job;
    private List<String> lines;

    @BeforeEach
    void lay() throws IOException {
        Path file = temp.resolve("job.yaml");
        Files.writeString(
                file,
                "coilwright: 1\ntitle: Mill lamp dynamo\narmature: {slots: 12, bars: 12, poles: 4,"
                        + " slotOneInLineWith: bar}\nwinding: {type: lap, plex: 1, direction: progressive, throw: 3}\n");
        job = file.toString();
        lines = new ArrayList<>();
        lines.add("coil,topSlot,bottomSlot,topBar,bottomBar");
        for (int n = 1; n <= 12; n++) {
            lines.add(n + "," + n + "," + (1 + (n + 2) % 12) + "," + n + "," + (1 + n % 12));
        }
    }

    private String list() throws IOException {
        Path file = temp.resolve("list.csv");
        Files.write(file, lines);
        return file.toString();
    }

    private static JsonNode json(Run run) throws IOException {
        assertThat(run.err()).isEmpty();
        return new ObjectMapper().readTree(run.out());
    }

    @Test
    void asPlannedIsTheSameAndLeavesWithNought() throws IOException {
        Run run = Run.of("check", job, list(), "--format", "json");
        assertThat(run.code()).isZero();
        assertThat(json(run).get("same").booleanValue()).isTrue();
        assertThat(json(run).get("differences")).isEmpty();
        assertThat(Run.of("check", job, list()).out()).contains("The connections are as planned.");
    }

    @Test
    void differencesHoldTheKeysScriptsRelyOn() throws IOException {
        lines.set(5, "5,5,8,6,5");
        lines.remove(9);
        lines.add("2,2,5,2,3");
        Run run = Run.of("check", job, list(), "--format", "json");
        assertThat(run.code()).isEqualTo(1);
        JsonNode json = json(run);
        assertThat(TableCommandTest.keys(json)).containsExactly("same", "differences");
        assertThat(json.get("differences").findValuesAsText("kind"))
                .containsExactly("doubled", "reversed-coil", "missing");
        JsonNode reversed = json.at("/differences/1");
        assertThat(reversed.get("coil").intValue()).isEqualTo(5);
        assertThat(reversed.at("/expected/topBar").intValue()).isEqualTo(5);
        assertThat(reversed.at("/found/topBar").intValue()).isEqualTo(6);
        assertThat(json.at("/differences/2/coil").intValue()).isEqualTo(9);
        assertThat(json.at("/differences/2/found").isNull()).isTrue();
        String csv = Run.of("check", job, list(), "--format", "csv").out();
        assertThat(csv.lines().skip(2).findFirst()).contains("5,reversed-coil,5,8,5,6,5,8,6,5");
    }

    @Test
    void theWrongDirectionIsOneFinding() throws IOException {
        for (int n = 1; n <= 12; n++) {
            lines.set(n, n + "," + n + "," + (1 + (n + 2) % 12) + "," + n + "," + (1 + (n + 10) % 12));
        }
        JsonNode json = json(Run.of("check", job, list(), "--format", "json"));
        assertThat(json.get("differences")).hasSize(1);
        JsonNode whole = json.at("/differences/0");
        assertThat(whole.get("kind").textValue()).isEqualTo("wrong-direction");
        assertThat(whole.get("coil").isNull()).isTrue();
        assertThat(whole.at("/expected/commutator").intValue()).isEqualTo(1);
        assertThat(whole.at("/found/commutator").intValue()).isEqualTo(-1);
        assertThat(Run.of("check", job, list()).out())
                .contains("connected retrogressive instead of progressive")
                .contains("turns the other");
    }

    @Test
    void freeTakesTheListsOwnNumbersAndTheDrawingMarksWhatDiffers() throws IOException {
        lines.subList(1, 13).clear();
        // Counted counter-clockwise, slot 1 here being the plan's slot 1, bar 5 here the plan's bar 1.
        for (int n = 1; n <= 12; n++) {
            int bar = 1 + Math.floorMod(5 - n, 12);
            lines.add(n + "," + (1 + Math.floorMod(1 - n, 12)) + "," + (1 + Math.floorMod(-2 - n, 12)) + "," + bar + ","
                    + (1 + Math.floorMod(bar - 2, 12)));
        }
        assertThat(Run.of("check", job, list()).code()).isEqualTo(1);
        Run free = Run.of("check", job, list(), "--free", "--format", "json");
        assertThat(free.code()).isZero();
        assertThat(json(free).at("/numbering/counted").textValue()).isEqualTo("counter-clockwise");
        String[] parts = lines.get(4).split(",");
        lines.set(4, String.join(",", parts[0], parts[1], parts[2], parts[4], parts[3]));
        Path svg = temp.resolve("marked.svg");
        Run run = Run.of("check", job, list(), "--free", "--drawing", svg.toString());
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out()).contains("counter-clockwise").contains("coil 4  reversed-coil");
        String drawn = Files.readString(svg);
        assertThat(drawn)
                .contains("1 coil differs")
                .contains("counter-clockwise")
                .contains("class=\"found-lead\"")
                .contains("class=\"planned-lead\"")
                .contains("Developed winding");
        assertThat(Run.of("check", job, list(), "--free", "--drawing", svg.toString(), "--view", "round")
                        .code())
                .isEqualTo(1);
        assertThat(Files.readString(svg)).contains("Round winding").contains("data-bar=\"12\"");
    }

    @Test
    void overlaysAreDrawnInTwoViewsAndThreeFormats() throws IOException {
        for (String ending : List.of("svg", "png", "pdf")) {
            for (String view : List.of("developed", "round")) {
                Path file = temp.resolve("repair-" + view + "." + ending);
                Run run = Run.of(
                        "repair",
                        job,
                        "--coil",
                        "4",
                        "--fault",
                        "shorted",
                        "--drawing",
                        file.toString(),
                        "--view",
                        view);
                assertThat(run.err()).isEmpty();
                assertThat(run.code()).isZero();
                assertThat(Files.size(file)).isGreaterThan(1000);
            }
        }
        assertThat(Files.readString(temp.resolve("repair-round.svg")))
                .contains("EMERGENCY MEASURE")
                .contains("bridge 4–5")
                .contains("class=\"lifted\"")
                .contains(">lift<")
                .contains("4 cut");
        Run paths = Run.of("check", job, list(), "--drawing", "x.svg", "--view", "paths");
        assertThat(paths.code()).isEqualTo(2);
        assertThat(paths.err()).contains("choose developed or round");
        Run none = Run.of("repair", job, "--coil", "4", "--fault", "open", "--view", "round");
        assertThat(none.code()).isEqualTo(2);
        assertThat(none.err()).contains("name one with --drawing FILE");
    }

    @Test
    void aBadListIsToldByLine() throws IOException {
        lines.set(3, "3,3,x,3,4");
        Run run = Run.of("check", job, list());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("list.csv:4: bottomSlot: is \"x\"");
    }

    @Test
    void identifyListsWhatFitsAndWhatToLookAtNext() throws IOException {
        Run run =
                Run.of("identify", "--slots", "12", "--bars", "12", "--throw", "3", "--poles", "4", "--format", "json");
        assertThat(run.code()).isZero();
        JsonNode json = json(run);
        assertThat(TableCommandTest.keys(json)).containsExactly("fits", "excluded", "next");
        assertThat(json.get("fits"))
                .isNotEmpty()
                .allSatisfy(f -> assertThat(TableCommandTest.keys(f))
                        .containsExactly(
                                "type",
                                "plex",
                                "direction",
                                "poles",
                                "commutator",
                                "throw",
                                "deadCoils",
                                "closures",
                                "parallelPaths",
                                "why"));
        assertThat(json.at("/next/observation").textValue()).isNotBlank();
        assertThat(json.at("/next/outcomes")).hasSizeGreaterThan(1);
        JsonNode one = json(Run.of(
                "identify",
                "--slots",
                "12",
                "--bars",
                "12",
                "--poles",
                "4",
                "--lead",
                "1,2",
                "4-7:4,5",
                "--continuity",
                "1,2=yes",
                "--format",
                "json"));
        assertThat(one.at("/fits/0/type").textValue()).isEqualTo("lap");
        assertThat(one.at("/fits/0/direction").textValue()).isEqualTo("progressive");
        assertThat(one.at("/fits/0/throw").intValue()).isEqualTo(3);
    }

    @Test
    void identifyLeavesWithOneWhereNothingFitsAndWithTwoOnBadInput() {
        Run none = Run.of("identify", "--slots", "12", "--bars", "12", "--poles", "4", "--lead", "1,7");
        assertThat(none.code()).isEqualTo(1);
        assertThat(none.out()).contains("No winding fits all of it");
        Run bar = Run.of("identify", "--slots", "12", "--bars", "12", "--lead", "1,13");
        assertThat(bar.code()).isEqualTo(2);
        assertThat(bar.err()).contains("there is no bar 13");
        Run units = Run.of(
                "identify", "--slots", "12", "--bars", "12", "--resistance", "1,2=0.2 ohm", "--resistance", "1,3=4");
        assertThat(units.code()).isEqualTo(2);
        assertThat(units.err()).contains("all with units, or all bare");
        assertThat(Run.of("identify", "--slots", "12", "--bars", "12", "--continuity", "1,2=maybe")
                        .err())
                .contains("must end in =yes or =no");
    }

    @Test
    void repairSaysWhatToLiftAndWhatToJoin() throws IOException {
        Run run = Run.of("repair", job, "--coil", "4", "--fault", "shorted", "--format", "json");
        assertThat(run.code()).isZero();
        JsonNode json = json(run);
        assertThat(json.get("emergency").booleanValue()).isTrue();
        assertThat(json.at("/lift/topBar").intValue()).isEqualTo(4);
        assertThat(json.at("/lift/bottomBar").intValue()).isEqualTo(5);
        assertThat(json.at("/lift/cutThrough").booleanValue()).isTrue();
        assertThat(json.at("/options/0/way").textValue()).isEqualTo("own-bars");
        assertThat(json.at("/options/0/parallelPaths").intValue()).isEqualTo(4);
        assertThat(json.at("/options/1/way").textValue()).isEqualTo("no-bridge");
        assertThat(json.at("/options/1/parallelPaths").intValue()).isEqualTo(3);
        String text = Run.of("repair", job, "--coil", "4", "--fault", "open").out();
        assertThat(text).contains("EMERGENCY MEASURE").contains("join bars 4 and 5");
        Run bad = Run.of("repair", job, "--coil", "40", "--fault", "open");
        assertThat(bad.code()).isEqualTo(2);
        assertThat(bad.err()).contains("there is no coil 40");
        assertThat(Run.of("repair", job, "--coil", "4", "--fault", "loose").err())
                .contains("must be open or shorted");
    }

    @Test
    void aChartThatCannotBeMadeIsRefusedBeforeAnythingIsSaid() {
        Path samples = TableCommandTest.SAMPLES;
        Run run = Run.of(
                "diagnose",
                samples.resolve("orchard-pump-dynamo.yaml").toString(),
                samples.resolveSibling("readings")
                        .resolve("orchard-pump-dynamo-drop.csv")
                        .toString(),
                "--test",
                "drop",
                "--chart",
                "chart");
        assertThat(run)
                .isEqualTo(
                        new Run(
                                2,
                                "",
                                "coilwright: \"chart\" does not end in a format a drawing can have: name it .svg, .png or .pdf\n"));
    }
}
