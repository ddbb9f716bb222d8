package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import coilwright.job.JobReader;
import coilwright.job.ReadingsFile;
import coilwright.job.TestKind;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ProbeCommandTest {
    private static final String ORCHARD = sample("orchard-pump-dynamo");
    private static final String PLATING = sample("plating-room-generator");
    private static final String WINCH = sample("quarry-winch-motor");
    private static final String MIXER = sample("pantry-mixer-motor");

    @TempDir
    private Path temp;

    private static String sample(String name) {
        return TableCommandTest.SAMPLES.resolve(name + ".yaml").toString();
    }

    static Stream<String> samples() throws IOException {
        return TableCommandTest.samples();
    }

    private static Run probe(String job, String... more) {
        List<String> args = new ArrayList<>(List.of("probe", job));
        args.addAll(Arrays.asList(more));
        return Run.of(args.toArray(String[]::new));
    }

    private static JsonNode json(String job, String... more) throws IOException {
        List<String> args = new ArrayList<>(Arrays.asList(more));
        args.addAll(List.of("--format", "json"));
        Run run = probe(job, args.toArray(String[]::new));
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isZero();
        return new ObjectMapper().readTree(run.out());
    }

    private String twoPoleLap() throws IOException {
        return Files.writeString(temp.resolve("lap.yaml"), """
                        coilwright: 1
                        title: Sixteen bars
                        armature: {slots: 16, bars: 16, poles: 2}
                        winding: {type: lap, throw: 7}
                        """).toString();
    }

    private static List<Double> values(JsonNode readings, String key) {
        List<Double> out = new ArrayList<>();
        readings.forEach(r -> out.add(r.get(key).doubleValue()));
        return out;
    }

    /**
     * 1 V over opposite bars of a two-pole lap winding of 16 coils drops over two paths of 8 like coils: 1/8 V each
     * (by arithmetic).
     */
    @Test
    void helpNamesEveryTest() {
        for (String command : List.of("probe", "diagnose")) {
            String help = Run.of(command, "--help").out().replaceAll("\\s+", " ");
            String words = help.substring(help.indexOf("--test=TEST "));
            for (TestKind test : TestKind.values()) {
                assertThat(words).containsPattern("\\b" + test.word() + "\\b");
            }
        }
    }

    @Test
    void aVoltOverOppositeBarsDropsEvenly() throws IOException {
        JsonNode json = json(twoPoleLap(), "--test", "drop", "--feed", "1,9", "--volts", "1");
        assertThat(json.get("test").textValue()).isEqualTo("drop");
        List<Double> volts = values(json.get("readings"), "volts");
        assertThat(volts).hasSize(16);
        for (int i = 0; i < 16; i++) {
            JsonNode r = json.get("readings").get(i);
            assertThat(TableCommandTest.keys(r)).containsExactly("from", "to", "volts");
            assertThat(r.get("from").intValue()).isEqualTo(i + 1);
            assertThat(r.get("to").intValue()).isEqualTo((i + 1) % 16 + 1);
            assertThat(volts.get(i)).isCloseTo(i < 8 ? 0.125 : -0.125, within(1e-12));
        }
    }

    /** One ampere divides over the two paths: half an ampere through each 1 ohm coil. */
    @Test
    void aCoilOfUnknownResistanceHasOneOhm() throws IOException {
        JsonNode json = json(twoPoleLap(), "--test", "drop", "--feed", "9,1", "--amps", "1");
        assertThat(values(json.get("readings"), "volts").get(0)).isCloseTo(-0.5, within(1e-12));
        assertThat(probe(twoPoleLap(), "--test", "drop").out()).contains("readings are for 1 ohm a coil");
    }

    /**
     * The orchard dynamo's coil c joins bars c and c + 9. From bar 1 to bar 5 lie 8 coils one way round (bars 1, 10, 2,
     * 11, 3, 12, 4, 13, 5) and 9 the other, so 1 A divides 9/17 to 8/17 (by arithmetic).
     */
    @Test
    void orchardDropsAsTheRingSays() throws IOException {
        JsonNode json = json(ORCHARD, "--test", "drop", "--feed", "1,5", "--amps", "1");
        double shortWay = 0.08 * 9 / 17;
        double longWay = 0.08 * 8 / 17;
        double[] potential = new double[18];
        int bar = 1;
        double v = 0;
        for (int coil = 0; coil < 17; coil++) {
            potential[bar] = v;
            v -= coil < 8 ? shortWay : -longWay;
            bar = (bar + 8) % 17 + 1;
        }
        for (JsonNode r : json.get("readings")) {
            assertThat(r.get("volts").doubleValue())
                    .isCloseTo(
                            potential[r.get("from").intValue()]
                                    - potential[r.get("to").intValue()],
                            within(1e-12));
        }
        assertThat(json.get("readings")).hasSize(17);
    }

    @Test
    void withoutFeedTheAdvisedOneIsUsedAndAllAreListed() throws IOException {
        JsonNode advised = json(ORCHARD, "--test", "drop");
        assertThat(advised.get("feeds")).hasSize(1);
        assertThat(advised.at("/feeds/0/in").intValue()).isEqualTo(1);
        assertThat(advised.at("/feeds/0/out").intValue()).isEqualTo(5);
        assertThat(advised.get("readings"))
                .isEqualTo(json(ORCHARD, "--test", "drop", "--feed", "1,5", "--amps", "1")
                        .get("readings"));
        JsonNode duplex = json(PLATING, "--test", "drop");
        assertThat(duplex.get("feeds")).hasSize(2);
    }

    @Test
    void growlerNamesTheBestPairsAndWhereTheyStand() throws IOException {
        JsonNode json = json(ORCHARD, "--test", "growler", "--angle", "10");
        assertThat(TableCommandTest.keys(json)).startsWith("test").contains("readings", "best");
        List<Double> volts = values(json.get("readings"), "volts");
        assertThat(volts).hasSize(17).allSatisfy(v -> assertThat(v).isBetween(0.0, 2.0));
        double most = volts.stream().mapToDouble(v -> v).max().orElseThrow();
        assertThat(json.get("best")).isNotEmpty();
        for (JsonNode b : json.get("best")) {
            int from = b.get("from").intValue();
            assertThat(volts.get(from - 1)).isCloseTo(most, within(1e-6));
            // Bar 1 stands in line with slot 1, at 10°; the middle of a pair is half a bar further on.
            double clock = (10 + (from - 0.5) * 360 / 17) % 360;
            assertThat(b.get("clockDegrees").doubleValue()).isCloseTo(clock, within(1e-9));
        }
        assertThat(json(ORCHARD, "--test", "growler").get("readings"))
                .isEqualTo(json(ORCHARD, "--test", "growler", "--angle", "0").get("readings"));
    }

    @Test
    void aKnownGoodPairScalesTheGrowler() throws IOException {
        JsonNode relative = json(ORCHARD, "--test", "growler", "--angle", "10");
        JsonNode scaled = json(ORCHARD, "--test", "growler", "--angle", "10", "--known", "4,5=350 mV");
        assertThat(relative.get("relative").booleanValue()).isTrue();
        assertThat(scaled.get("relative").booleanValue()).isFalse();
        List<Double> r = values(relative.get("readings"), "volts");
        List<Double> s = values(scaled.get("readings"), "volts");
        assertThat(r.get(3)).isGreaterThan(0);
        assertThat(s.get(3)).isCloseTo(0.35, within(1e-12));
        for (int i = 0; i < 17; i++) {
            assertThat(s.get(i)).isCloseTo(r.get(i) * 0.35 / r.get(3), within(1e-12));
        }
    }

    @Test
    void turnedGrowlerReadsEveryPairOfASymmetricWindingAlike() throws IOException {
        JsonNode json = json(ORCHARD, "--test", "growler-turned");
        List<Double> volts = values(json.get("readings"), "volts");
        assertThat(volts).hasSize(17).allSatisfy(v -> assertThat(v).isCloseTo(volts.get(0), within(1e-9)));
        assertThat(volts.get(0)).isGreaterThan(0.5);
        assertThat(json.get("best")).hasSize(17);
    }

    /** Bars 1 and 10 of the orchard dynamo: one coil beside sixteen in series, 0.08 · 16/17 ohm (by arithmetic). */
    @Test
    void resistanceOfOnePair() throws IOException {
        JsonNode json = json(ORCHARD, "--test", "resistance", "--pair", "1,10");
        assertThat(json.get("readings")).hasSize(1);
        assertThat(json.at("/readings/0/ohms").doubleValue()).isCloseTo(0.08 * 16 / 17, within(1e-12));
        JsonNode warm = json(ORCHARD, "--test", "resistance", "--pair", "1,10", "--temperature", "75");
        assertThat(warm.at("/readings/0/ohms").doubleValue())
                .isCloseTo(0.08 * 16 / 17 * (234.5 + 75) / (234.5 + 20), within(1e-12));
        assertThat(json(ORCHARD, "--test", "resistance").get("readings")).hasSize(17);
        JsonNode apart = json(ORCHARD, "--test", "resistance", "--step", "9");
        assertThat(values(apart.get("readings"), "ohms"))
                .allSatisfy(r -> assertThat(r).isCloseTo(0.08 * 16 / 17, within(1e-12)));
        assertThat(apart.at("/readings/0/to").intValue()).isEqualTo(10);
    }

    @Test
    void circuitsThatNothingJoinsReadOpenAndAreWalkedByThemselves() throws IOException {
        JsonNode json = json(PLATING, "--test", "resistance");
        assertThat(json.get("readings")).hasSize(80).allSatisfy(r -> {
            assertThat(r.get("ohms").isNull()).isTrue();
            assertThat(r.get("open").booleanValue()).isTrue();
        });
        assertThat(json.get("withinCircuit")).hasSize(2);
        // One coil beside the 39 others of its circuit (by arithmetic).
        for (JsonNode circuit : json.get("withinCircuit")) {
            assertThat(circuit.get("readings")).hasSize(40);
            assertThat(values(circuit.get("readings"), "ohms"))
                    .allSatisfy(r -> assertThat(r).isCloseTo(820e-6 * 39 / 40, within(1e-12)));
        }
        assertThat(json.at("/withinCircuit/1/readings/39/from").intValue()).isEqualTo(80);
        assertThat(json.at("/withinCircuit/1/readings/39/to").intValue()).isEqualTo(2);

        JsonNode drop = json(PLATING, "--test", "drop", "--amps", "2");
        for (JsonNode circuit : drop.get("withinCircuit")) {
            // Fed by itself at opposite bars: 1 A each way.
            assertThat(values(circuit.get("readings"), "volts"))
                    .allSatisfy(v -> assertThat(Math.abs(v)).isCloseTo(820e-6, within(1e-12)));
        }
        assertThat(json(ORCHARD, "--test", "drop").has("withinCircuit")).isFalse();
        assertThat(probe(PLATING, "--test", "growler").out())
                .contains("Within circuit 2\n", "The winding makes 2 circuits")
                .doesNotContain("  1-2 ");
        assertThat(probe(PLATING, "--test", "drop", "--feed", "1,2").out())
                .contains("Nothing joins the places where current goes in");
    }

    @Test
    void aSoundArmatureIsNotGroundedAFaultyOneIs() throws IOException {
        JsonNode sound = json(ORCHARD, "--test", "ground");
        assertThat(sound.get("readings")).hasSize(17);
        assertThat(sound.at("/readings/0/to").textValue()).isEqualTo("shaft");
        assertThat(sound.get("readings"))
                .allSatisfy(r -> assertThat(r.get("open").booleanValue()).isTrue());
        JsonNode grounded = json(ORCHARD, "--test", "ground", "--fault", "ground:3");
        assertThat(grounded.at("/readings/2/ohms").doubleValue()).isZero();
        assertThat(grounded.at("/readings/3/ohms").doubleValue()).isGreaterThan(0);
        assertThat(grounded.at("/faults/0").textValue()).isEqualTo("bar 3 grounded");
        JsonNode walk = json(ORCHARD, "--test", "ground-walk", "--fault", "ground:3");
        assertThat(walk.at("/readings/2/volts").doubleValue()).isZero();
        assertThat(probe(ORCHARD, "--test", "ground-walk", "--fault", "ground:3")
                        .out())
                .contains("The walk reads nothing at: bar 3");
        assertThat(probe(ORCHARD, "--test", "ground-walk").out()).contains("Nothing joins the winding to the shaft");
    }

    @Test
    void aReversedCoilTurnsTheNeedle() throws IOException {
        JsonNode json = json(ORCHARD, "--test", "polarity", "--fault", "reversed-coil:4");
        assertThat(json.get("readings"))
                .hasSize(17)
                .allSatisfy(r -> assertThat(r.get("sense").doubleValue())
                        .isEqualTo(r.get("coil").intValue() == 4 ? -1 : 1));
    }

    @Test
    void anOpenCoilShowsInTheDropTest() throws IOException {
        JsonNode json = json(twoPoleLap(), "--test", "drop", "--feed", "1,9", "--volts", "1", "--fault", "open-coil:3");
        List<Double> volts = values(json.get("readings"), "volts");
        assertThat(volts.get(2)).isCloseTo(1, within(1e-12));
        assertThat(volts.get(0)).isCloseTo(0, within(1e-12));
        assertThat(volts.get(8)).isCloseTo(-0.125, within(1e-12));
    }

    @Test
    void brushesFeedTheArmature() throws IOException {
        // Both brushes lie on one bar or two neighbours: the two-pole ring falls into two like paths.
        JsonNode json = json(twoPoleLap(), "--test", "drop", "--brushes", "--volts", "1", "--brush-width", "0.5");
        List<Double> volts = values(json.get("readings"), "volts");
        assertThat(volts.stream().mapToDouble(v -> v).sum()).isCloseTo(0, within(1e-12));
        assertThat(volts.stream().filter(v -> v > 1e-9).mapToDouble(v -> v).sum())
                .isCloseTo(1, within(1e-12));
        JsonNode ohms = json(twoPoleLap(), "--test", "resistance", "--brushes", "--brush-width", "0.5");
        assertThat(ohms.at("/brushToBrush/ohms").doubleValue()).isBetween(3.0, 4.0);
    }

    @Test
    void bladeHumsOverTheSlotsOfTheShortedCoils() throws IOException {
        JsonNode json = json(ORCHARD, "--test", "growler-blade", "--short", "shorted-coil:3");
        assertThat(json.get("useless").booleanValue()).isFalse();
        assertThat(json.get("cases")).hasSize(1);
        assertThat(values(json.at("/cases/0/slots"), "slot")).contains(3.0, 7.0);
        assertThat(json(ORCHARD, "--test", "growler-blade").get("cases")).hasSize(3);
        assertThat(probe(ORCHARD, "--test", "growler-blade").out())
                .contains("With no short: the blade lies still everywhere");
        assertThat(probe(ORCHARD, "--test", "growler-blade", "--short", "open-coil:3")
                        .err())
                .contains("a blade feels shorts only");
        assertThat(probe(sample("hill-tram-motor"), "--test", "growler-blade").out())
                .contains("it tells nothing here");
    }

    static List<Arguments> inverse() {
        return List.of(
                Arguments.of("drop", "0.0847 V", 0.0847, "5%", true),
                Arguments.of("drop", "-75.3 mV", -0.0753, "2%", true),
                Arguments.of("growler", "0.7", 0.7, "10%", false),
                Arguments.of("resistance", "75.3 mohm", 0.0753, "1%", false));
    }

    /** Every pair is tried: those near enough are listed, and no others. */
    @ParameterizedTest
    @MethodSource("inverse")
    void readingFindsExactlyThePairsThatShowIt(
            String test, String given, double value, String tolerance, boolean signed) throws Exception {
        Run run = probe(ORCHARD, "--test", test, "--reading", given, "--tolerance", tolerance, "--format", "json");
        assertThat(run.code()).isZero();
        JsonNode json = new ObjectMapper().readTree(run.out());
        String key = test.equals("resistance") ? "ohms" : "volts";
        List<String> found = new ArrayList<>();
        for (JsonNode p : json.get("pairs")) {
            assertThat(TableCommandTest.keys(p)).containsExactly("from", "to", key);
            found.add(p.get("from") + "-" + p.get("to"));
        }
        BenchArmature armature = JobReader.read(Path.of(ORCHARD)).benchArmature();
        BenchTest bench = switch (test) {
            case "drop" -> new BenchTest.Drop(1, 5, 1);
            case "growler" -> new BenchTest.GrowlerWalked(coilwright.bench.Growler.USUAL, 0);
            default -> new BenchTest.Resistance();
        };
        double slack = Double.parseDouble(tolerance.replace("%", "")) / 100 * Math.abs(value);
        List<String> expected = new ArrayList<>();
        for (int i = 1; i <= 17; i++) {
            for (int j = signed ? 1 : i + 1; j <= 17; j++) {
                if (i != j) {
                    double read = bench.read(armature, List.of(new BenchTest.Pair(i, j)))
                            .get(0)
                            .value();
                    if (Math.abs(read - value) <= slack) {
                        expected.add(i + "-" + j);
                    }
                }
            }
        }
        assertThat(expected).isNotEmpty();
        assertThat(found).containsExactlyInAnyOrderElementsOf(expected);
    }

    @Test
    void aReadingThatNoPairShowsLeavesWithOne() throws IOException {
        Run run = probe(ORCHARD, "--test", "drop", "--reading", "5 V", "--format", "json");
        assertThat(run.code()).isEqualTo(1);
        assertThat(new ObjectMapper().readTree(run.out()).get("pairs")).isEmpty();
        assertThat(probe(ORCHARD, "--test", "drop", "--reading", "5 V").out())
                .contains("No two bars read 5 V within 5%.");
    }

    /** What a CSV answer holds reads back as the readings of the JSON answer. */
    @ParameterizedTest
    @MethodSource("samples")
    void everySampleAndTestInEveryForm(String sample) throws Exception {
        int bars = JobReader.read(Path.of(sample)).armature().bars();
        if (bars > 100) {
            return;
        }
        for (TestKind test : TestKind.values()) {
            JsonNode json = json(sample, "--test", test.word());
            List<PairReading> back = ReadingsFile.parse(
                            "x",
                            probe(sample, "--test", test.word(), "--format", "csv")
                                    .out(),
                            bars)
                    .numbers(test, Optional.empty());
            assertThat(back).hasSize(json.get("readings").size());
            for (int i = 0; i < back.size(); i++) {
                JsonNode r = json.get("readings").get(i);
                JsonNode value = r.get(r.has("ohms") ? "ohms" : r.has("sense") ? "sense" : "volts");
                assertThat(back.get(i).from()).isEqualTo(r.get("from").intValue());
                assertThat(back.get(i).value())
                        .isEqualTo(value.isNull() ? Double.POSITIVE_INFINITY : value.doubleValue());
            }
            Run text = probe(sample, "--test", test.word(), "--explain");
            assertThat(text.err()).isEmpty();
            assertThat(text.out()).contains("Cautions", "Steps", "What a deviation means", "Expected readings");
            assertThat(text.out().lines()).allSatisfy(l -> assertThat(l).hasSizeLessThanOrEqualTo(120));
            assertThat(probe(sample, "--test", test.word(), "--explain")).isEqualTo(text);
        }
    }

    @Test
    void textShowsEachReadingAsLongAsItIsLarge() throws IOException {
        String out = probe(twoPoleLap(), "--test", "drop", "--feed", "1,9", "--volts", "1")
                .out();
        assertThat(out)
                .contains("   1-2  +125.00  " + "#".repeat(40) + "\n")
                .contains("  16-1  -125.00  " + "-".repeat(40) + "\n")
                .contains("Expected readings: 1 V in at bar 1 and out at bar 9");
        assertThat(probe(MIXER, "--test", "growler").out()).contains("That pattern is the slots, not a fault.");
        assertThat(probe(ORCHARD, "--test", "growler").out()).doesNotContain("That pattern is the slots");
        assertThat(probe(WINCH, "--test", "drop").out()).contains("Equalizers join bars of one potential");
    }

    @Test
    void aSheetIsWrittenForEveryTest() throws IOException {
        for (String test : List.of("drop", "growler", "resistance", "ground", "growler-blade")) {
            Path file = temp.resolve(test + ".pdf");
            Run run = probe(ORCHARD, "--test", test, "--sheet", file.toString());
            assertThat(run).isEqualTo(new Run(0, "", ""));
            assertThat(Files.readAllBytes(file)).startsWith("%PDF-".getBytes(StandardCharsets.US_ASCII));
        }
        assertThat(probe(ORCHARD, "--test", "drop", "--volts", "1", "--sheet", "x.pdf")
                        .err())
                .contains("give --feed and --amps");
    }

    static List<Arguments> badUsage() {
        return List.of(
                Arguments.of(
                        "--test dropp",
                        "--test is \"dropp\", but must be one of drop, growler, growler-turned, "
                                + "resistance, ground, ground-walk, polarity, growler-blade"),
                Arguments.of("--test drop --feed 1", "--feed is \"1\", but must be two bars such as 1,2"),
                Arguments.of("--test drop --feed 1,18", "--feed names bar 18, but bars run from 1 to 17"),
                Arguments.of("--test drop --feed 5,5", "--feed is \"5,5\": name two different bars"),
                Arguments.of("--test drop --amps 0", "feed current is 0.0 A, but must be more than 0"),
                Arguments.of(
                        "--test drop --amps 3V", "--amps is \"3V\", a voltage, but must be a current such as \"1 A\""),
                Arguments.of(
                        "--test drop --amps 1 --volts 1",
                        "--amps and --volts were both given: a supply holds one of them steady"),
                Arguments.of(
                        "--test drop --brushes --feed 1,5",
                        "--brushes and --feed were both given: feed at bars or through the brushes"),
                Arguments.of("--test growler --feed 1,5", "--feed is not used with --test growler: leave it out"),
                Arguments.of("--test drop --angle 5", "--angle is not used with --test drop: leave it out"),
                Arguments.of("--test resistance --clock 5", "--clock is not used with --test resistance: leave it out"),
                Arguments.of(
                        "--test drop --reading 1 --tolerance 5",
                        "--tolerance is \"5\", but must be a share such as 5%"),
                Arguments.of(
                        "--test drop --reading 3ohm",
                        "--reading is \"3ohm\", a resistance, but must be a voltage such as \"1 V\""),
                Arguments.of(
                        "--test drop --step 17",
                        "pairs 17 bars apart were asked for, but with 17 bars they are 1 to 16 apart"),
                Arguments.of(
                        "--test ground --pair 1,2",
                        "--pair is \"1,2\", but a ground test is read between a bar and the shaft: 1,shaft"),
                Arguments.of(
                        "--test drop --fault open-col:3",
                        "\"open-col\" is no kind of fault: did you mean \"open-coil\"?"),
                Arguments.of(
                        "--test growler --known 1,2",
                        "--known is \"1,2\", but must be a pair and its reading such as 1,2=0.35"),
                Arguments.of("--test drop --brush-width 2", "--brush-width is used with --brushes only"),
                Arguments.of(
                        "--test growler-blade --reading 1",
                        "--reading is not used with --test growler-blade: a blade gives no number"));
    }

    @ParameterizedTest
    @MethodSource("badUsage")
    void badUsageLeavesWithTwoAndSaysWhatWouldDo(String options, String message) {
        Run run = probe(ORCHARD, options.split(" "));
        assertThat(run.err()).isEqualTo("coilwright: " + message + "\n");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"drop", "growler-blade"})
    void anImpossibleWindingLeavesWithOneAndAWrongRingWithTwo(String test) throws IOException {
        Path job = Files.writeString(temp.resolve("job.yaml"), """
                coilwright: 1
                title: Two dozen
                armature: {slots: 24, bars: 24, poles: 4}
                winding: {type: wave, throw: 6}
                """);
        Run run = probe(job.toString(), "--test", test);
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.err()).startsWith(job + ": commutator pitch would be 24/2");
        Files.writeString(job, """
                coilwright: 1
                title: Rings
                armature: {slots: 17, bars: 17, poles: 4}
                winding: {type: wave, throw: 4}
                equalizers: {every: 1}
                """);
        Run rings = probe(job.toString(), "--test", test);
        assertThat(rings.code()).isEqualTo(2);
        assertThat(rings.err()).contains("no two bars at one potential");
    }
}
