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
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AcceptCommandTest {
    private static final String DONE = "rating: {kind: dc-motor, volts: 120 V, power: 1 kW}\n"
            + "asRewound: {measured: {temperature: 20 °C, insulationOneMinute: 120 Mohm}, highPotential: {volts: 992 V,"
            + " current: ac, seconds: 60, result: passed}, polarity: right}\n";

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

    private static String readings(String last) {
        return "readings:\n  - {test: resistance, stage: as-rewound, unit: mohm, readings: ["
                + IntStream.rangeClosed(1, 11)
                        .mapToObj(b -> "{from: " + b + ", to: " + (b + 1) + ", reading: 90}")
                        .collect(Collectors.joining(", "))
                + ", {from: 12, to: 1, reading: " + last + "}]}\n";
    }

    private static Run run(String... args) {
        List<String> all = new ArrayList<>(List.of("accept"));
        all.addAll(List.of(args));
        return Run.of(all.toArray(String[]::new));
    }

    private static JsonNode json(Run run) throws IOException {
        assertThat(run.err()).isEmpty();
        return new ObjectMapper().readTree(run.out());
    }

    @Test
    void acceptedNotAcceptedAndIncomplete() throws IOException {
        Run accepted = run(job(DONE + readings("92")), "--format", "json");
        assertThat(accepted.code()).isZero();
        JsonNode json = json(accepted);
        assertThat(TableCommandTest.keys(json))
                .containsExactly(
                        "verdict",
                        "verdictText",
                        "machine",
                        "checks",
                        "insulation",
                        "voltages",
                        "voltagesDiffer",
                        "barToBar",
                        "notRead",
                        "temperatureRise",
                        "toDo",
                        "conflicts",
                        "cautions");
        assertThat(json.get("verdict").textValue()).isEqualTo("accepted");
        // 120 Mohm at 20 °C is a quarter of that at 40 °C.
        assertThat(json.at("/insulation/at40Mohm").doubleValue()).isCloseTo(30, within(1e-6));
        // ANSI/EASA AR100-2020: 80 % of 1000 + 2·120 V.
        assertThat(json.at("/voltages/0/acHigh").doubleValue()).isCloseTo(992, within(1e-6));
        assertThat(json.at("/voltages/0/applied").textValue()).isEqualTo("kept");
        assertThat(json.get("voltagesDiffer").booleanValue()).isTrue();
        assertThat(json.get("toDo")).isEmpty();

        Run uneven = run(job(DONE + readings("120")), "--format", "json");
        assertThat(uneven.code()).isEqualTo(1);
        assertThat(json(uneven).get("verdict").textValue()).isEqualTo("not accepted");
        assertThat(run(job(DONE + readings("OL"))).code()).isEqualTo(1);

        Run incomplete = run(job(DONE));
        assertThat(incomplete.code()).isZero();
        assertThat(incomplete.out()).contains("INCOMPLETE: nothing failed, but still to do: bar to bar.");
        Run nothing = run(job(""), "--format", "json");
        assertThat(nothing.code()).isZero();
        assertThat(json(nothing).get("toDo")).hasSize(4);
        assertThat(json(nothing).at("/machine/kind").isNull()).isTrue();
    }

    @Test
    void optionsStandInPlaceOfTheJob() throws IOException {
        String job = job(DONE + readings("92"));
        assertThat(run(job, "--insulation-one-minute", "3 Mohm", "--temperature", "40 °C")
                        .code())
                .isEqualTo(1);
        assertThat(run(job, "--limit", "ir-ieee43-2000").code()).isEqualTo(1);
        JsonNode old = json(run(job, "--work", "new", "--volts", "240V", "--format", "json"));
        assertThat(old.at("/voltages/0/acHigh").doubleValue()).isCloseTo(1480, within(1e-6));
        assertThat(old.get("verdict").textValue()).isEqualTo("incomplete");
        assertThat(run(job, "--scheme", "iec").out()).contains("less than the chosen scheme asks");
        JsonNode hot = json(run(
                job,
                "--cold-resistance",
                "1 ohm",
                "--hot-resistance",
                "1.2 ohm",
                "--ambient",
                "25 °C",
                "--limit",
                "rise-a",
                "--insulation-ten-minutes",
                "300 Mohm",
                "--format",
                "json"));
        // 1.2·(234.5 + 20) − 234.5 − 25 K.
        assertThat(hot.at("/temperatureRise/riseK").doubleValue()).isCloseTo(45.9, within(1e-6));
        assertThat(hot.at("/insulation/polarizationIndex").doubleValue()).isCloseTo(2.5, within(1e-6));
        assertThat(hot.get("verdict").textValue()).isEqualTo("accepted");
    }

    @Test
    void badInputIsToldWithTheWayOut() throws IOException {
        String job = job(DONE);
        assertThat(run(job, "--kind", "steam").err()).contains("must be one of dc-motor, dc-generator, universal");
        assertThat(run(job, "--work", "old").err()).contains("must be one of new, rewound, reconditioned, in-service");
        assertThat(run(job, "--volts", "120").err()).contains("--volts is 120 without a unit");
        assertThat(run(job, "--volts", "900 kV").err())
                .contains("rated voltage is")
                .contains("check the unit");
        assertThat(run(job, "--hot-resistance", "1 ohm").err()).contains("without the ambient temperature");
        assertThat(run(job, "--limit", "pi").err()).contains("there is no limit \"pi\": choose one of");
        assertThat(run(job, "--insulation-one-minute", "1 mm").err()).contains("must be a resistance");
        for (String option : List.of("--kind", "--work", "--limit")) {
            assertThat(run(job, option, "x").code()).as(option).isEqualTo(2);
        }
    }

    @Test
    void csvHasEveryLimitAndTheSheetIsWritten() throws IOException {
        String csv = run(job(DONE), "--format", "csv").out();
        assertThat(csv).startsWith("check,status,item,applies,low,high,unit,value,pass,decides,source\n");
        assertThat(csv.lines().filter(l -> l.startsWith("high-potential"))).hasSize(2);
        assertThat(csv.lines().filter(l -> l.startsWith("polarity,passed"))).hasSize(1);
        Path sheet = temp.resolve("acceptance.pdf");
        assertThat(run(job(""), "--sheet", sheet.toString())).isEqualTo(new Run(0, "", ""));
        assertThat(sheet).isNotEmptyFile();
    }
}
