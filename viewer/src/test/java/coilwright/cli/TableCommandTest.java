package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.job.ConnectionList;
import coilwright.job.JobReader;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class TableCommandTest {
    static final Path SAMPLES = Path.of("../samples/jobs");
    private static final String ORCHARD =
            SAMPLES.resolve("orchard-pump-dynamo.yaml").toString();

    @TempDir
    private Path temp;

    static Stream<String> samples() throws IOException {
        try (Stream<Path> files = Files.list(SAMPLES)) {
            return files.map(Path::toString).sorted().toList().stream();
        }
    }

    static List<String> keys(JsonNode node) {
        List<String> keys = new ArrayList<>();
        node.fieldNames().forEachRemaining(keys::add);
        return keys;
    }

    @Test
    void jsonHoldsTheKeysScriptsRelyOn() throws IOException {
        Run run = Run.of("table", ORCHARD, "--format", "json");
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).endsWith("}\n");
        JsonNode json = new ObjectMapper().readTree(run.out());
        assertThat(keys(json))
                .containsExactly(
                        "slots",
                        "bars",
                        "poles",
                        "pitches",
                        "closures",
                        "parallelPaths",
                        "equalizerPitch",
                        "coils",
                        "findings");
        assertThat(json.get("slots").intValue()).isEqualTo(17);
        assertThat(json.get("bars").intValue()).isEqualTo(17);
        assertThat(json.get("poles").intValue()).isEqualTo(4);
        assertThat(keys(json.get("pitches"))).containsExactly("back", "front", "resultant", "commutator", "throw");
        // yc = (17 + 1)/2; Yb = 2·4 + 1; Yf = 2·(9 − 4) − 1.
        assertThat(json.at("/pitches/commutator").intValue()).isEqualTo(9);
        assertThat(json.at("/pitches/back").intValue()).isEqualTo(9);
        assertThat(json.at("/pitches/front").intValue()).isEqualTo(9);
        assertThat(json.at("/pitches/resultant").intValue()).isEqualTo(18);
        assertThat(json.at("/pitches/throw").intValue()).isEqualTo(4);
        assertThat(json.get("closures").intValue()).isEqualTo(1);
        assertThat(json.get("parallelPaths").intValue()).isEqualTo(2);
        assertThat(json.get("equalizerPitch").isNull()).isTrue();
        assertThat(json.get("coils")).hasSize(17);
        for (int i = 0; i < 17; i++) {
            JsonNode coil = json.get("coils").get(i);
            assertThat(keys(coil)).containsExactly("coil", "topSlot", "bottomSlot", "topBar", "bottomBar", "dead");
            assertThat(coil.get("coil").intValue()).isEqualTo(i + 1);
            assertThat(coil.get("topSlot").intValue()).isEqualTo(i + 1);
            assertThat(coil.get("bottomSlot").intValue()).isEqualTo((i + 4) % 17 + 1);
            assertThat(coil.get("topBar").intValue()).isEqualTo(i + 1);
            assertThat(coil.get("bottomBar").intValue()).isEqualTo((i + 9) % 17 + 1);
            assertThat(coil.get("dead").booleanValue()).isFalse();
        }
        for (JsonNode finding : json.get("findings")) {
            assertThat(keys(finding)).startsWith("rule", "severity", "message");
        }
    }

    @Test
    void aDeadCoilHasNoBarsInJson() throws IOException {
        JsonNode json = new ObjectMapper()
                .readTree(Run.of("table", sample("ferry-lantern-dynamo"), "--format", "json")
                        .out());
        JsonNode dead = json.get("coils").get(23);
        assertThat(dead.get("dead").booleanValue()).isTrue();
        assertThat(dead.get("topBar").isNull()).isTrue();
        assertThat(dead.get("bottomBar").isNull()).isTrue();
        assertThat(json.at("/pitches/commutator").intValue()).isEqualTo(11);
    }

    @Test
    void commutatorPitchKeepsItsSignAndAnUnevenListHasNoPitches() throws IOException {
        Path job = write("""
                coilwright: 1
                title: Backward
                armature: {slots: 12, bars: 12, poles: 4}
                winding: {type: lap, direction: retrogressive}
                """);
        JsonNode lap = new ObjectMapper()
                .readTree(Run.of("table", job.toString(), "--format", "json").out());
        assertThat(lap.at("/pitches/commutator").intValue()).isEqualTo(-1);
        assertThat(lap.at("/pitches/front").intValue()).isEqualTo(9);
        assertThat(lap.at("/pitches/resultant").intValue()).isEqualTo(2);

        JsonNode listed = new ObjectMapper()
                .readTree(Run.of("table", sample("landing-stage-light-dynamo"), "--format", "json")
                        .out());
        listed.get("pitches").forEach(p -> assertThat(p.isNull()).isTrue());
        assertThat(listed.get("closures").intValue()).isEqualTo(1);
        assertThat(listed.get("parallelPaths").intValue()).isEqualTo(2);
    }

    @Test
    void anImpossibleWindingLeavesWithOneAndSaysWhy() throws IOException {
        Path job = write("""
                coilwright: 1
                title: Two dozen
                armature: {slots: 24, bars: 24, poles: 4}
                winding: {type: wave, throw: 6}
                """);
        String reason =
                "commutator pitch would be 24/2 ± 1/2, not whole: a simplex wave on 4 poles needs an odd number "
                        + "of bars; 23 (one dead coil) or 25 would do";
        Run text = Run.of("table", job.toString());
        assertThat(text.code()).isEqualTo(1);
        assertThat(text.out()).isEmpty();
        assertThat(text.err()).startsWith(job + ": commutator pitch would be 24/2 ± 1/2, not whole");

        Run run = Run.of("table", job.toString(), "--format", "json");
        assertThat(run.code()).isEqualTo(1);
        JsonNode json = new ObjectMapper().readTree(run.out());
        assertThat(keys(json))
                .containsExactlyElementsOf(keys(new ObjectMapper()
                        .readTree(Run.of("table", ORCHARD, "--format", "json").out())));
        json.get("pitches").forEach(p -> assertThat(p.isNull()).isTrue());
        assertThat(keys(json.get("pitches"))).hasSize(5);
        assertThat(json.get("closures").isNull()).isTrue();
        assertThat(json.get("coils")).isEmpty();
        assertThat(json.at("/findings/0/rule").textValue()).isEqualTo("commutator-pitch-whole");
        assertThat(json.at("/findings/0/severity").textValue()).isEqualTo("error");
        assertThat(reason).startsWith(json.at("/findings/0/message").textValue().substring(0, 40));
        assertThat(run.err())
                .isEqualTo(job + ": " + json.at("/findings/0/message").textValue() + "\n");
    }

    @ParameterizedTest
    @MethodSource("samples")
    void everySampleHasATableInEveryForm(String sample) throws Exception {
        for (String form : List.of("text", "json", "csv")) {
            Run run = Run.of("table", sample, "--format", form);
            assertThat(run.code()).isZero();
            assertThat(run.err()).isEmpty();
            assertThat(run.out()).isNotBlank();
            assertThat(Run.of("table", sample, "--format", form)).isEqualTo(run);
        }
        var winding = JobReader.read(Path.of(sample)).build();
        String csv = Run.of("table", sample, "--format", "csv").out();
        assertThat(csv).startsWith("coil,topSlot,bottomSlot,topBar,bottomBar,dead\n");
        assertThat(ConnectionList.parse("x", csv)).isEqualTo(winding.asListed().coils());
        JsonNode json = new ObjectMapper()
                .readTree(Run.of("table", sample, "--format", "json").out());
        assertThat(json.get("coils")).hasSize(winding.coils().size());
        json.get("findings")
                .forEach(f -> assertThat(f.get("severity").textValue()).isEqualTo("note"));
    }

    @Test
    void textNamesWhatARewinderAsks() {
        String out = Run.of("table", ORCHARD).out();
        assertThat(out)
                .startsWith("Orchard pump dynamo\n")
                .contains("  coil throw        1-5 (spans 4 slots)\n")
                .contains("  commutator pitch  +9 bars\n")
                .contains("  coil  top slot  bottom slot  top lead on bar  bottom lead on bar\n")
                .contains("    17        17            4               17                   9\n")
                .doesNotContain("The arithmetic");
        assertThat(out.lines()).allSatisfy(l -> assertThat(l).hasSizeLessThanOrEqualTo(100));
    }

    @Test
    void explainShowsTheArithmeticWithTheJobsNumbers() {
        assertThat(Run.of("table", ORCHARD, "--explain").out())
                .contains("yc = (K + m)/p = (17 + 1)/2 = 9 bars")
                .contains("Yb = 2 × y1 + 1 = 2 × 4 + 1 = 9 conductors")
                .contains("Yf = 2 × (yc - y1) - 1 = 2 × (9 - 4) - 1 = 9 conductors")
                .contains("gcd(K, yc) = gcd(17, 9) = 1")
                .contains("2 × m = 2 × 1 = 2");
        assertThat(Run.of("table", sample("ferry-lantern-dynamo"), "--explain").out())
                .contains("Q = bars + dead coils = 23 + 1 = 24")
                .contains("yc = (K - m)/p = (23 - 1)/2 = 11 bars");
        assertThat(Run.of("table", sample("hill-tram-motor"), "--explain").out())
                .contains("y1 = Q/p - y1 of the lap part = 48/2 - 12 = 12 positions")
                .contains("yc = (K - m)/p = (48 - 2)/2 = 23 bars")
                .contains("2 × P × m = 2 × 4 × 1 = 8");
    }

    @Test
    void outWritesTheSameAsItWouldPrint() throws IOException {
        Path file = temp.resolve("coils.csv");
        Run run = Run.of("table", ORCHARD, "--format", "csv", "--out", file.toString());
        assertThat(run).isEqualTo(new Run(0, "", ""));
        assertThat(file).hasContent(Run.of("table", ORCHARD, "--format", "csv").out());
    }

    @Test
    void aFailedWriteSaysWhyAndKeepsTheOldFile() {
        Run run = Run.of("table", ORCHARD, "--out", temp.resolve("no/such.txt").toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err())
                .isEqualTo("coilwright: " + temp.resolve("no/such.txt") + ": cannot be written: there is no folder "
                        + temp.resolve("no") + ": make it, or name another\n");
    }

    @Test
    void everyProblemOfABadFileStandsOnALineOfItsOwn() throws IOException {
        Path job =
                write("coilwright: 1\ntitle: 12\narmature: {slots: 17.5, bars: 17, poles: 3}\nwinding: {type: lap}\n");
        Run run = Run.of("table", job.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines())
                .containsExactly(
                        job
                                + ":2: title: is 12, which YAML takes for a number: put quotation marks round it to make it "
                                + "text",
                        job + ":3: armature.slots: is 17.5, but must be a whole number",
                        job
                                + ":3: armature.poles: poles is 3, but poles come in pairs of north and south: 2 or 4 would "
                                + "do");
    }

    private Path write(String text) throws IOException {
        return Files.writeString(temp.resolve("job.yaml"), text);
    }

    private static String sample(String name) {
        return SAMPLES.resolve(name + ".yaml").toString();
    }
}
