package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CommutatorCommandTest {
    @TempDir
    private Path temp;

    private String job(String more) throws IOException {
        Path file = temp.resolve("job.yaml");
        Files.writeString(
                file,
                "coilwright: 1\ntitle: Mill lamp dynamo\narmature: {slots: 12, bars: 12, poles: 4,"
                        + " slotOneInLineWith: bar}\nwinding: {type: lap, throw: 3}\n" + more);
        return file.toString();
    }

    /** Twelve bars off centre by 0.03 mm towards bar 4, a quarter of the way round. */
    private String runOut() throws IOException {
        List<String> lines = new ArrayList<>(List.of("bar,height"));
        for (int b = 1; b <= 12; b++) {
            lines.add(b + "," + Math.round(30 * Math.sin(2 * Math.PI * (b - 1) / 12)) + " µm");
        }
        return Files.write(temp.resolve("run-out.csv"), lines).toString();
    }

    private static Run run(String... args) {
        List<String> all = new ArrayList<>(List.of("commutator"));
        all.addAll(List.of(args));
        return Run.of(all.toArray(String[]::new));
    }

    private static JsonNode json(Run run) throws IOException {
        assertThat(run.err()).isEmpty();
        return new ObjectMapper().readTree(run.out());
    }

    @Test
    void jsonHoldsTheKeysScriptsRelyOn() throws IOException {
        JsonNode json = json(run(
                job(""),
                runOut(),
                "--diameter",
                "48 mm",
                "--minimum",
                "47 mm",
                "--mica",
                "0.7 mm",
                "--undercut",
                "15 thou",
                "--format",
                "json"));
        assertThat(TableCommandTest.keys(json))
                .containsExactly(
                        "bars",
                        "read",
                        "missing",
                        "tirMm",
                        "highestBar",
                        "lowestBar",
                        "eccentricityMm",
                        "highSide",
                        "ownShape",
                        "largestStep",
                        "standouts",
                        "cuts",
                        "undercut",
                        "verdict",
                        "verdictLines",
                        "limits",
                        "notes",
                        "cautions",
                        "readings");
        assertThat(json.at("/tirMm").doubleValue()).isCloseTo(0.06, within(1e-9));
        assertThat(json.at("/eccentricityMm").doubleValue()).isCloseTo(0.03, within(0.0005));
        assertThat(json.at("/highSide/bar").intValue()).isEqualTo(4);
        assertThat(json.at("/highSide/clock").textValue()).isEqualTo("3:00");
        // The whole swing is turned off: 0.06 mm on the radius, and as much off the mean diameter as the low bar lies
        // under the mean, twice 0.03 mm.
        assertThat(json.at("/cuts/0/depthMm").doubleValue()).isCloseTo(0.06, within(1e-6));
        assertThat(json.at("/cuts/0/diameterAfterMm").doubleValue()).isCloseTo(47.94, within(1e-6));
        assertThat(json.at("/cuts/0/leftMm").doubleValue()).isCloseTo(0.94, within(1e-6));
        assertThat(json.at("/undercut/depthNowMm").doubleValue()).isCloseTo(0.381, within(1e-6));
        assertThat(json.at("/verdict").textValue()).isEqualTo("no-limit-chosen");
        assertThat(json.get("readings")).hasSize(12);
        assertThat(json.get("limits"))
                .allMatch(l -> !l.get("source").textValue().isEmpty());
    }

    @Test
    void leavesWithOneOutOfTheChosenLimitsOrUnderTheMinimum() throws IOException {
        String job = job("");
        String csv = runOut();
        assertThat(run(job, csv).code()).isZero();
        assertThat(run(job, csv, "--limit", "car-starter-1994").code()).isZero();
        Run out = run(job, csv, "--limit", "car-starter-1994", "--limit", "brush-maker");
        assertThat(out.code()).isEqualTo(1);
        assertThat(out.out()).contains("OUT OF THE CHOSEN LIMITS").contains("brush-maker: 0.06 mm fails");
        assertThat(run(job, csv, "--limit", "brush-maker", "--centring", "recentred")
                        .code())
                .isZero();
        Run under = run(job, csv, "--diameter", "48 mm", "--minimum", "47.95 mm");
        assertThat(under.code()).isEqualTo(1);
        assertThat(under.out()).contains("UNDER THE MINIMUM").contains("0.01 mm under the\n");
        assertThat(run(job, csv, "--diameter", "48 mm", "--minimum", "47.94 mm", "--allowance", "0.01 mm")
                        .code())
                .isEqualTo(1);
    }

    @Test
    void theJobsSectionServesWhereNothingElseIsGiven() throws IOException {
        String job =
                job("commutator: {diameter: 48 mm, minimum: 45 mm, mica: 0.7 mm, undercut: 0.4 mm, runOut: [{bar: 1,"
                        + " height: 0 mm}, {bar: 5, height: 0.01 mm}, {bar: 9, height: 0.5 thou}]}\n");
        JsonNode json = json(run(job, "--format", "json"));
        assertThat(json.get("read").intValue()).isEqualTo(3);
        assertThat(json.at("/tirMm").doubleValue()).isCloseTo(0.0127, within(1e-9));
        assertThat(json.at("/cuts/0/keepsMinimum").booleanValue()).isTrue();
        assertThat(json(run(job, runOut(), "--minimum", "48 mm", "--format", "json"))
                        .at("/verdict")
                        .textValue())
                .isEqualTo("under-minimum");
    }

    @Test
    void limitsAreListedWithoutAJob() throws IOException {
        Run text = run("--limits");
        assertThat(text.code()).isZero();
        assertThat(text.out()).contains("brush-maker").contains("misprinted");
        JsonNode json = json(run("--limits", "--format", "json"));
        String csv = run("--limits", "--format", "csv").out();
        assertThat(csv.lines().count()).isEqualTo(json.get("limits").size() + 1);
    }

    @Test
    void badInputIsToldWithTheWayOut() throws IOException {
        String job = job("");
        assertThat(run().err()).contains("commutator needs a JOB");
        Run none = run(job);
        assertThat(none.code()).isEqualTo(2);
        assertThat(none.err()).contains("there are no run-out readings").contains("--sheet");
        assertThat(run(job, runOut(), "--limit", "brush-makr").err())
                .contains("there is no limit \"brush-makr\": choose one of");
        assertThat(run(job, runOut(), "--diameter", "48").err()).contains("--diameter is 48 without a unit");
        assertThat(run(job, runOut(), "--diameter", "4 km").err()).contains("may be at most 5000 mm");
        assertThat(run(job, runOut(), "--centring", "true").err()).contains("must be as-read or recentred");
        Path bare = Files.writeString(temp.resolve("bare.csv"), "bar,height\n1,0.1\n");
        Run unit = run(job, bare.toString());
        assertThat(unit.code()).isEqualTo(2);
        assertThat(unit.err()).contains("bare.csv:2: height: is \"0.1\" without a unit");
        assertThat(run(job, bare.toString(), "--unit", "mm").err()).contains("only 1 bar is read");
        assertThat(run(job, bare.toString(), "--unit", "V").err()).contains("must be one of length");
    }

    @Test
    void csvHasTheReadingsAndTheSheetIsWrittenWithAndWithoutThem() throws IOException {
        Run csv = run(job(""), runOut(), "--format", "csv");
        assertThat(csv.out().lines().toList()).hasSize(13).first().isEqualTo("bar,heightMm,residualMm,standsOut");
        Path empty = temp.resolve("empty.svg");
        Path full = temp.resolve("full.pdf");
        Run run = run(job(""), "--sheet", empty.toString());
        assertThat(run).isEqualTo(new Run(0, "", ""));
        assertThat(run(job(""), runOut(), "--limit", "brush-maker", "--sheet", full.toString())
                        .code())
                .isEqualTo(1);
        assertThat(full).isNotEmptyFile();
        assertThat(temp.resolve("empty-1.svg")).isNotEmptyFile();
    }

    @Test
    void theChartIsWrittenBesideTheAnswer() throws IOException {
        Path chart = temp.resolve("trace.svg");
        Run run = run(job(""), runOut(), "--diameter", "48 mm", "--chart", chart.toString());
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("Total indicator reading");
        assertThat(Files.readString(chart)).contains("commutator run-out").contains("</svg>");
        Run none = run(job(""), "--chart", chart.toString());
        assertThat(none.code()).isEqualTo(2);
        assertThat(run(job(""), runOut(), "--chart", temp.resolve("trace.bmp").toString())
                        .code())
                .isEqualTo(2);
        Run empty = run(job(""), "--sheet", temp.resolve("e.pdf").toString(), "--chart", chart.toString());
        assertThat(empty.code()).isEqualTo(2);
        assertThat(empty.err()).contains("there are no run-out readings to draw");
    }

    @Test
    void theSampleIsJudged() {
        String jobs = TableCommandTest.SAMPLES.toString();
        Run run = run(
                jobs + "/pantry-mixer-motor.yaml",
                jobs + "/../readings/pantry-mixer-motor-run-out.csv",
                "--limit",
                "brush-maker");
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out()).contains("23 of 24; not read: 9").contains("bar 14 by +0.019 mm");
    }
}
