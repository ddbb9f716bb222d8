package coilwright.bench;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.network.DenseOracle;
import coilwright.network.Feed;
import coilwright.network.Network;
import coilwright.network.NgSpice;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Readings on generated armatures of all kinds of winding and fault against a circuit simulator and against a dense
 * solution, both of a network written out by other means than the one under test.
 */
class BenchOracleTest {
    private static final int ARMATURES = 273;
    private static final double RELATIVE = 1e-9;
    /** Rounding of a reading that is a small difference of large voltages. */
    private static final double ROUNDING = 1e-12;
    /** Where all voltages cancel, rounding goes by those that cancel: a coil in the whole flux has 1. */
    private static final double LEAST_SIZE = 1e-3;

    private static final List<BenchSamples.Sample> SAMPLES = new ArrayList<>();
    private static final List<Question> QUESTIONS = new ArrayList<>();

    /** What the bench reads, and the network and feeds that should give it. */
    private record Question(
            BenchSamples.Sample sample, String test, Network network, List<Feed> feeds, List<PairReading> readings) {
        boolean unsigned() {
            return test.startsWith("growler");
        }

        /** Volts that the supply sets up across one coil: what rounding is measured by where all bars are joined. */
        double supply() {
            return feeds.stream()
                    .mapToDouble(f -> f instanceof Feed.Current c
                            ? c.amperes() * sample.armature().soundOhms()
                            : ((Feed.Voltage) f).volts())
                    .sum();
        }
    }

    /** Voltage between two nodes, as another program finds it. */
    private interface Voltages {
        OptionalDouble between(int a, int b);
    }

    @BeforeAll
    static void askTheBench() {
        for (int i = 0; i < ARMATURES; i++) {
            Random random = new Random(7_000 + i);
            var sample = BenchSamples.nth(i, random);
            SAMPLES.add(sample);
            BenchArmature a = sample.armature();
            int bars = a.winding().armature().bars();
            Network plain = PlainNetwork.of(a);
            drop(sample, plain, random);
            resistance(sample, plain, random);
            double angle = 720 * random.nextDouble() - 360;
            double halfGap = 30 + 30 * random.nextDouble();
            var growler = new Growler(halfGap, halfGap * (0.5 + random.nextDouble()));
            QUESTIONS.add(new Question(
                    sample,
                    "growler walked",
                    PlainNetwork.inGrowler(a, growler, angle),
                    List.of(),
                    new BenchTest.GrowlerWalked(growler, angle).read(a, everyPair(bars))));
        }
    }

    private static void drop(BenchSamples.Sample sample, Network plain, Random random) {
        BenchArmature a = sample.armature();
        int bars = a.winding().armature().bars();
        int in = 1 + random.nextInt(bars);
        int out = 1 + (in + random.nextInt(bars - 1)) % bars;
        boolean current = random.nextInt(3) > 0;
        double size = 0.5 + 20 * random.nextDouble();
        List<Feed> feeds = List.of(current ? Feed.current(in - 1, out - 1, size) : Feed.voltage(in - 1, out - 1, size));
        OptionalDouble ohms = ResistanceTest.of(a).between(in, out);
        // A feed that can drive no current, or a voltage across joined bars, has no solution to compare.
        if (ohms.isPresent() && (current || ohms.getAsDouble() > 0) && DenseOracle.solvable(plain, feeds)) {
            DropTest test = DropTest.at(a, in, out, current ? new Supply.Current(size) : new Supply.Voltage(size));
            QUESTIONS.add(new Question(
                    sample,
                    "drop",
                    plain,
                    feeds,
                    everyPair(bars).stream()
                            .map(p -> test.between(p.from(), p.to()))
                            .toList()));
        }
    }

    private static void resistance(BenchSamples.Sample sample, Network plain, Random random) {
        int bars = sample.armature().winding().armature().bars();
        ResistanceTest test = ResistanceTest.of(sample.armature());
        for (int n = 0; n < 2; n++) {
            int from = 1 + random.nextInt(bars);
            int to = n == 0 ? from % bars + 1 : 1 + (from + random.nextInt(bars - 1)) % bars;
            List<Feed> feeds = List.of(Feed.current(from - 1, to - 1, 1));
            OptionalDouble ohms = test.between(from, to);
            assertThat(ohms.isPresent())
                    .as("%s: bars %s and %s", sample, from, to)
                    .isEqualTo(DenseOracle.solvable(plain, feeds));
            if (ohms.isPresent()) {
                QUESTIONS.add(new Question(
                        sample, "resistance", plain, feeds, List.of(new PairReading(from, to, ohms.getAsDouble()))));
            }
        }
    }

    private static List<BenchTest.Pair> everyPair(int bars) {
        List<BenchTest.Pair> out = new ArrayList<>();
        for (int i = 1; i <= bars; i++) {
            for (int j = i + 1; j <= bars; j++) {
                out.add(new BenchTest.Pair(i, j));
            }
        }
        return out;
    }

    private static void compare(Question q, Voltages other, double greatest) {
        double size = Math.max(greatest, q.supply());
        for (PairReading r : q.readings()) {
            double expected = other.between(r.from() - 1, r.to() - 1).orElse(0);
            if (q.unsigned()) {
                expected = Math.abs(expected);
            }
            double off = Math.abs(r.value() - expected);
            if (!(off <= RELATIVE * Math.abs(expected) + ROUNDING * Math.max(size, LEAST_SIZE))) {
                throw new AssertionError(q.test() + " of " + q.sample() + ": " + r + ", but the other solution gives "
                        + expected + ", off by " + off);
            }
        }
    }

    @Test
    void allKindsAreThere() {
        Map<BenchSamples.Kind, Integer> kinds = new EnumMap<>(BenchSamples.Kind.class);
        Map<String, Integer> faults = new LinkedHashMap<>();
        Map<String, Integer> tests = new LinkedHashMap<>();
        int equalizedWithFaults = 0;
        for (var s : SAMPLES) {
            kinds.merge(s.kind(), 1, Integer::sum);
            s.faults().forEach(f -> faults.merge(f.kind(), 1, Integer::sum));
            boolean rings = !BenchSamples.equalized(
                            BenchArmature.sound(s.armature().winding(), 1))
                    .bonds()
                    .isEmpty();
            equalizedWithFaults += s.equalized() && rings && !s.faults().isEmpty() ? 1 : 0;
        }
        QUESTIONS.forEach(q -> tests.merge(q.test(), 1, Integer::sum));
        assertThat(kinds).hasSize(BenchSamples.KINDS.size());
        assertThat(kinds.values()).allMatch(n -> n >= 39);
        // Grounds on bars and in coils are one kind.
        assertThat(faults).hasSize(BenchSamples.FAULT_KINDS - 1);
        assertThat(faults.values()).allMatch(n -> n >= 20);
        assertThat(equalizedWithFaults).isGreaterThan(12);
        assertThat(tests.get("drop")).isGreaterThan(200);
        assertThat(tests.get("resistance")).isGreaterThan(400);
        assertThat(tests.get("growler walked")).isEqualTo(ARMATURES);
    }

    @Test
    void agreesWithADenseSolution() {
        for (Question q : QUESTIONS) {
            DenseOracle dense = DenseOracle.solve(q.network(), q.feeds());
            compare(q, dense::voltage, dense.greatest());
        }
    }

    @Test
    void agreesWithTheCircuitSimulator() {
        NgSpice.assumeAvailable();
        int batch = 100;
        for (int from = 0; from < QUESTIONS.size(); from += batch) {
            List<Question> some = QUESTIONS.subList(from, Math.min(QUESTIONS.size(), from + batch));
            List<NgSpice.Result> results = NgSpice.solve(some.stream()
                    .map(q -> new NgSpice.Case(q.network(), q.feeds()))
                    .toList());
            for (int i = 0; i < some.size(); i++) {
                NgSpice.Result result = results.get(i);
                compare(some.get(i), result::voltage, result.greatest());
            }
        }
    }
}
