package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class RewindCommandTest {
    private static final String ORCHARD =
            TableCommandTest.SAMPLES.resolve("orchard-pump-dynamo.yaml").toString();
    private static final String VAN =
            TableCommandTest.SAMPLES.resolve("post-van-dynamo.yaml").toString();

    @TempDir
    private Path temp;

    static Stream<String> samples() throws IOException {
        return TableCommandTest.samples();
    }

    private static Run rewind(String job, String... more) {
        List<String> args = new ArrayList<>(List.of("rewind", job));
        args.addAll(Arrays.asList(more));
        return Run.of(args.toArray(String[]::new));
    }

    private static JsonNode json(Run run) throws IOException {
        assertThat(run.err()).isEmpty();
        return new ObjectMapper().readTree(run.out());
    }

    @ParameterizedTest
    @MethodSource("samples")
    void everySampleIsWorkedOutInEveryForm(String sample) throws IOException {
        Run text = rewind(sample);
        assertThat(text.code()).as(text.err()).isZero();
        assertThat(text.out()).contains("\nCoil\n", "\nArmature\n", "\nSlot\n", "\nLoad\n", "it goes in");
        assertThat(text.out().lines()).allMatch(line -> line.codePointCount(0, line.length()) <= 110);
        assertThat(text.out()).doesNotContain("null", "Optional", "NaN", "no number");
        JsonNode json = json(rewind(sample, "--format", "json"));
        assertThat(json.get("canBeWound").booleanValue()).isTrue();
        assertThat(json.at("/slot/fits").booleanValue()).isTrue();
        assertThat(json.get("missing")).isEmpty();
        assertThat(rewind(sample, "--format", "csv").out().lines())
                .allMatch(line -> line.replaceAll("\"[^\"]*\"", "")
                                .chars()
                                .filter(c -> c == ',')
                                .count()
                        == 4);
    }

    @Test
    void theKeysScriptsRelyOn() throws IOException {
        JsonNode json = json(rewind(VAN, "--format", "json"));
        assertThat(TableCommandTest.keys(json))
                .containsExactly(
                        "title",
                        "canBeWound",
                        "turns",
                        "volts",
                        "rpm",
                        "amps",
                        "wire",
                        "coil",
                        "armature",
                        "slot",
                        "currentDensity",
                        "barVolts",
                        "limits",
                        "measured",
                        "substitutes",
                        "plan",
                        "otherWindings",
                        "missing");
        assertThat(TableCommandTest.keys(json.get("plan")))
                .containsExactly(
                        "possible",
                        "reason",
                        "wireGiven",
                        "wireProposed",
                        "winding",
                        "idealTurns",
                        "idealAreaMm2",
                        "emfAtSpeed",
                        "rpmForVolts",
                        "samePowerAmps",
                        "proposals",
                        "turns",
                        "volts",
                        "rpm",
                        "amps",
                        "wire",
                        "coil",
                        "armature",
                        "slot",
                        "currentDensity",
                        "barVolts",
                        "limits",
                        "cautions",
                        "missing");
        assertThat(json.at("/plan/turns").intValue()).isEqualTo(8);
        assertThat(json.at("/plan/wire/size").textValue()).isEqualTo("19 AWG");
        assertThat(json.at("/plan/cautions/0/source").textValue()).isNotEmpty();
        // Twice the turns of half the copper, but for leads that stay and a gauge that is not quite half.
        double factor = json.at("/plan/armature/brushToBrush/0/ohms").doubleValue()
                / json.at("/armature/brushToBrush/0/ohms").doubleValue();
        assertThat(factor).isCloseTo(4, within(0.25));
    }

    @Test
    void optionsTakeThePlaceOfThePlan() throws IOException {
        JsonNode json = json(rewind(
                VAN,
                "--volts",
                "24V",
                "--speed",
                "2400 rpm",
                "--turns",
                "9",
                "--wire",
                "2 x 0.63 mm",
                "--insulation",
                "iec-grade-1",
                "--temperature",
                "18 °C",
                "--temperature",
                "212 °F",
                "--allowance",
                "5%",
                "--substitutes",
                "1",
                "--format",
                "json"));
        JsonNode plan = json.get("plan");
        assertThat(plan.get("volts").intValue()).isEqualTo(24);
        assertThat(plan.get("turns").intValue()).isEqualTo(9);
        assertThat(plan.get("idealTurns").doubleValue()).isEqualTo(8);
        assertThat(plan.at("/wire/label").textValue()).isEqualTo("2 × 0.630 mm, grade 1");
        assertThat(plan.get("wireGiven").booleanValue()).isTrue();
        assertThat(json.at("/coil/resistance").findValuesAsText("celsius")).containsExactly("18", "100");
        assertThat(json.at("/armature/allowance").doubleValue()).isEqualTo(0.05);
        assertThat(json.get("substitutes").size()).isBetween(1, 2);
    }

    @Test
    void theCoveringFollowsTheFoundWires() throws IOException {
        JsonNode json = json(rewind(ORCHARD, "--wire", "23 AWG", "--format", "json"));
        assertThat(json.at("/plan/wire/insulation").textValue()).isEqualTo("nema-heavy");
        assertThat(json.at("/plan/volts").intValue()).isEqualTo(12);
        assertThat(json.at("/plan/idealTurns").intValue()).isEqualTo(6);
    }

    @Test
    void wireThatDoesNotGoInLeavesWithOne() {
        Run run = rewind(ORCHARD, "--wire", "1.5 mm");
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).contains("it does not go in", "the wires do not all go into the slot");
    }

    @Test
    void aWindingThatDoesNotFitLeavesWithOne() throws IOException {
        Run run = rewind(ORCHARD, "--type", "wave", "--plex", "2");
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out()).contains("It cannot be wound", "17 bars on 4 poles");
        JsonNode plan = json(rewind(ORCHARD, "--type", "wave", "--plex", "2", "--format", "json"))
                .get("plan");
        assertThat(plan.get("possible").booleanValue()).isFalse();
        assertThat(plan.get("reason").textValue()).contains("plex 2");
    }

    @Test
    void lapInPlaceOfWaveTakesTwiceTheTurnsOnFourPoles() throws IOException {
        JsonNode json = json(rewind(ORCHARD, "--type", "lap", "--format", "json"));
        assertThat(json.at("/plan/winding/parallelPaths").intValue()).isEqualTo(4);
        assertThat(json.at("/plan/turns").intValue()).isEqualTo(12);
        assertThat(json.at("/plan/emfAtSpeed").doubleValue()).isEqualTo(12);
        assertThat(json.at("/plan/cautions").findValuesAsText("id")).contains("winding-type");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--volts|12 A|--volts is \"12 A\", a current, but must be a voltage",
                "--volts|0|--volts is 0 V, but must be over 0",
                "--speed|-5|--speed is -5 rpm, but must be over 0",
                "--speed|fast|--speed is \"fast\", but must be a speed of turning",
                "--turns|0|--turns is 0, but must be from 1 to 10000",
                "--turns|99999999999|turns",
                "--wire|18|wire size \"18\" cannot be read",
                "--wire|0 x 18 AWG|--wire has 0 in hand",
                "--wire|999 x 18 AWG|--wire has 999 in hand",
                "--wire|99 AWG|AWG 99 is outside the gauge",
                "--insulation|nema-heavy|--insulation is given without --wire",
                "--type|frog-leg|--type is \"frog-leg\", but must be lap or wave",
                "--plex|2|--plex is given without --type",
                "--temperature|900 °C|temperature is 900 °C",
                "--temperature|hot|--temperature is \"hot\"",
                "--allowance|ten|--allowance is \"ten\"",
                "--substitutes|-1|substitutes are -1",
                "--volts|999999999999 kV|planned voltage is 999999999999 kV, beyond any armature",
                "--volts|999999 V|turns per coil is 500000, but must be from 1 to 100000",
            })
    void badOptionsAreToldInALine(String option, String value, String message) {
        Run run = rewind(ORCHARD, option, value);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains(message).doesNotContain("at coilwright", "should not have happened");
    }

    @Test
    void anInsulationThatIsNotMadeForTheWireIsRefused() {
        assertThat(rewind(ORCHARD, "--wire", "18 AWG", "--insulation", "thick").err())
                .contains("--insulation is \"thick\", but must be one of bare, iec-grade-1");
        assertThat(rewind(ORCHARD, "--wire", "0.5 mm", "--insulation", "nema-heavy")
                        .err())
                .contains("no overall diameter is known for 0.500 mm in heavy build");
    }

    private String bare() throws IOException {
        return Files.writeString(temp.resolve("bare.yaml"), """
                        coilwright: 1
                        title: Bare
                        armature: {slots: 17, bars: 17, poles: 4}
                        winding: {type: wave}
                        """).toString();
    }

    @Test
    void aBareJobIsToldWhatItLacks() throws IOException {
        Run run = rewind(bare());
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("winding.turns", "wire.size", "core.slot", "rating.volts");
        Run asked = rewind(bare(), "--volts", "12V");
        assertThat(asked.code()).isEqualTo(2);
        assertThat(asked.err()).contains("tells too little", "rating.volts and rating.speed");
        assertThat(rewind(bare(), "--drawing", temp.resolve("slot.svg").toString())
                        .err())
                .contains("core.slot, wire.insulation, winding.turns");
    }

    @Test
    void anImpossibleWindingLeavesWithOne() throws IOException {
        Path file = Files.writeString(temp.resolve("no.yaml"), """
                        coilwright: 1
                        title: Sixteen bars
                        armature: {slots: 16, bars: 16, poles: 4}
                        winding: {type: wave}
                        """);
        Run run = rewind(file.toString());
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.err()).contains("commutator pitch");
    }

    @Test
    void drawingAndSheetAreWritten() throws IOException {
        Path slot = temp.resolve("slot.svg");
        Path sheet = temp.resolve("plan.pdf");
        assertThat(rewind(VAN, "--drawing", slot.toString(), "--sheet", sheet.toString())
                        .out())
                .isEmpty();
        assertThat(slot).content().contains("<svg", "19 AWG, heavy build");
        assertThat(Files.readString(sheet, StandardCharsets.ISO_8859_1)).startsWith("%PDF");
        byte[] first = Files.readAllBytes(sheet);
        rewind(VAN, "--sheet", sheet.toString());
        assertThat(Files.readAllBytes(sheet)).isEqualTo(first);
    }
}
