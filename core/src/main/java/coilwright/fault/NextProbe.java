package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.FeedBars;
import coilwright.bench.Growler;
import coilwright.bench.GrowlerMeter;
import coilwright.bench.PairReading;
import coilwright.bench.TestRun;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * The reading that would tell most, next.
 *
 * @param test the test to set up
 * @param pair where the probes go
 * @param information expected gain, nats; infinite where a doubtful reading is to be repeated
 * @param instruction what to do, in words
 * @param outcomes what each explanation left would read there, likeliest first
 */
public record NextProbe(
        BenchTest test, BenchTest.Pair pair, double information, String instruction, List<Outcome> outcomes) {
    private static final double LEAST_INFORMATION = 0.02;
    private static final double LEAST_NOISE = 0.01;
    private static final int MOST_HYPOTHESES = 16;
    private static final int MOST_PAIRS = 80;

    /**
     * What one explanation reads.
     *
     * @param faults the explanation; none for a sound winding
     * @param value the reading, in the scale of the readings already taken by this test, else against a sound winding
     */
    public record Outcome(List<Fault> faults, double value) {}

    /**
     * Copies the list.
     *
     * @param test the test to set up
     * @param pair where the probes go
     * @param information expected gain, nats; infinite where a doubtful reading is to be repeated
     * @param instruction what to do, in words
     * @param outcomes what each explanation left would read there, likeliest first
     */
    public NextProbe {
        outcomes = List.copyOf(outcomes);
    }

    private record Hypothesis(List<Fault> faults, double p) {}

    /**
     * {@return the best next reading, by expected information: a bound on it from how far apart the explanations'
     * readings lie against the noise} A doubtful reading is first taken again. Where nothing is found so far, the walk
     * is first completed. Empty where one explanation is left, or no test of the trade tells those left apart.
     *
     * @param diagnosis what the readings say so far
     * @param growler faces of the growler at hand
     */
    public static Optional<NextProbe> of(Diagnosis diagnosis, Growler growler) {
        if (!diagnosis.suspects().isEmpty()) {
            Diagnosis.Suspect s = diagnosis.suspects().get(0);
            var pair = new BenchTest.Pair(s.reading().from(), s.reading().to());
            return Optional.of(new NextProbe(
                    s.test(),
                    pair,
                    Double.POSITIVE_INFINITY,
                    "read " + pair + " again (" + s.test().setUp() + "): " + s.advice(),
                    List.of(new Outcome(diagnosis.likeliest(), s.expected()))));
        }
        List<Hypothesis> left = left(diagnosis);
        if (left.size() < 2) {
            return diagnosis.likeliest().isEmpty() ? readOn(diagnosis) : Optional.empty();
        }
        NextProbe best = null;
        double most = 0;
        for (BenchTest test : tests(diagnosis, growler)) {
            // A little in favour of what is set up already.
            double favour = isSetUp(diagnosis, test) ? 1.1 : 1;
            Optional<NextProbe> bestOfTest = of(diagnosis, test, left);
            if (bestOfTest.isPresent() && bestOfTest.get().information() * favour > most * 1.0001) {
                best = bestOfTest.get();
                most = best.information() * favour;
            }
        }
        return Optional.ofNullable(best);
    }

    /** The reading of one test that tells most. */
    private static Optional<NextProbe> of(Diagnosis diagnosis, BenchTest test, List<Hypothesis> left) {
        List<BenchTest.Pair> pairs = pairs(diagnosis, test, left);
        if (pairs.isEmpty()) {
            return Optional.empty();
        }
        List<double[]> readings =
                left.stream().map(h -> readings(diagnosis, test, pairs, h)).toList();
        double typical = typical(readings);
        double noise = Math.max(LEAST_NOISE, diagnosis.noise());
        int best = -1;
        double most = 0;
        for (int i = 0; i < pairs.size(); i++) {
            double information = information(left, readings, i, typical, noise);
            if (information >= LEAST_INFORMATION && information > most * 1.0001) {
                best = i;
                most = information;
            }
        }
        if (best < 0) {
            return Optional.empty();
        }
        double gain = gain(diagnosis, test);
        List<Outcome> outcomes = new ArrayList<>();
        for (int h = 0; h < left.size(); h++) {
            outcomes.add(new Outcome(left.get(h).faults(), PairReading.atScale(readings.get(h)[best], gain)));
        }
        return Optional.of(new NextProbe(test, pairs.get(best), most, words(test, pairs.get(best)), outcomes));
    }

    private static double[] readings(
            Diagnosis diagnosis, BenchTest test, List<BenchTest.Pair> pairs, Hypothesis hypothesis) {
        BenchArmature faulty = Fault.all(diagnosis.armature(), hypothesis.faults());
        return test.read(faulty, pairs).stream().mapToDouble(PairReading::value).toArray();
    }

    /** Nothing found so far, but the walk is not complete: its next pair. */
    private static Optional<NextProbe> readOn(Diagnosis d) {
        Winding winding = d.armature().winding();
        for (TestRun run : d.runs()) {
            Set<Set<Integer>> read = new LinkedHashSet<>();
            run.pairs().forEach(p -> read.add(Set.of(p.from(), p.to())));
            for (BenchTest.Pair p : run.test().walk(winding)) {
                if (!read.contains(Set.of(p.from(), p.to()))) {
                    return Optional.of(new NextProbe(
                            run.test(),
                            p,
                            0,
                            "read on, the walk is not complete: " + words(run.test(), p),
                            List.of(new Outcome(
                                    List.of(),
                                    run.test()
                                            .read(d.armature(), List.of(p))
                                            .get(0)
                                            .atScale(gain(d, run.test()))
                                            .value()))));
                }
            }
        }
        return Optional.empty();
    }

    private static List<Hypothesis> left(Diagnosis d) {
        List<Hypothesis> out = new ArrayList<>();
        if (d.soundProbability() > 0.01) {
            out.add(new Hypothesis(List.of(), d.soundProbability()));
        }
        for (Diagnosis.Explanation e : d.ranked()) {
            if (e.probability() < 0.01) {
                continue;
            }
            double share = e.probability() / (1 + e.sameReadings().size());
            out.add(new Hypothesis(e.faults(), share));
            e.sameReadings().forEach(f -> out.add(new Hypothesis(f, share)));
        }
        return out.size() > MOST_HYPOTHESES ? out.subList(0, MOST_HYPOTHESES) : out;
    }

    private static boolean isSetUp(Diagnosis d, BenchTest test) {
        return d.runs().stream().anyMatch(r -> r.test().equals(test));
    }

    private static double gain(Diagnosis d, BenchTest test) {
        for (int i = 0; i < d.runs().size(); i++) {
            if (d.runs().get(i).test().equals(test) && d.gains().get(i) != 0) {
                return d.gains().get(i);
            }
        }
        return 1;
    }

    private static List<BenchTest> tests(Diagnosis d, Growler growler) {
        Set<BenchTest> out = new LinkedHashSet<>();
        d.runs().forEach(r -> out.add(r.test()));
        Winding winding = d.armature().winding();
        int bars = winding.armature().bars();
        boolean equalized = !d.armature().bonds().isEmpty();
        for (FeedBars f : FeedBars.advised(winding, equalized)) {
            out.add(new BenchTest.Drop(f.in(), f.out(), 1));
            int shift = Math.max(1, bars / 4);
            int in = winding.armature().wrapBar(f.in() + shift);
            int to = winding.armature().wrapBar(f.out() + shift);
            out.add(new BenchTest.Drop(in, to, 1));
        }
        out.add(new BenchTest.Resistance());
        out.add(new BenchTest.GrowlerTurned(
                growler, GrowlerMeter.of(d.armature(), growler).bestClock()));
        out.add(new BenchTest.Polarity());
        out.add(new BenchTest.Ground());
        return List.copyOf(out);
    }

    /** Pairs near where the explanations differ, not yet read. */
    private static List<BenchTest.Pair> pairs(Diagnosis d, BenchTest test, List<Hypothesis> left) {
        Winding winding = d.armature().winding();
        Set<Integer> near = new LinkedHashSet<>();
        for (Hypothesis h : left) {
            for (Fault f : h.faults()) {
                f.bars().forEach(b -> around(winding, near, b));
                for (int c : f.coils()) {
                    winding.coil(c).topBar().ifPresent(b -> around(winding, near, b));
                    winding.coil(c).bottomBar().ifPresent(b -> around(winding, near, b));
                }
            }
        }
        Set<BenchTest.Pair> read = new LinkedHashSet<>();
        for (TestRun run : d.runs()) {
            if (run.test().equals(test)) {
                read.addAll(run.pairs());
            }
        }
        List<BenchTest.Pair> walk = new ArrayList<>(test.walk(winding));
        if (test instanceof BenchTest.Resistance || test instanceof BenchTest.Drop) {
            for (int bar : near) {
                walk.add(new BenchTest.Pair(bar, winding.armature().wrapBar(bar + 1)));
                walk.add(new BenchTest.Pair(bar, winding.armature().wrapBar(bar + 2)));
            }
        }
        return walk.stream()
                .distinct()
                .filter(p -> p.from() != p.to())
                .filter(p -> near.contains(p.from()) || near.contains(p.to()))
                .filter(p -> !read.contains(p))
                .limit(MOST_PAIRS)
                .toList();
    }

    private static void around(Winding winding, Set<Integer> near, int bar) {
        for (int off = -2; off <= 2; off++) {
            near.add(winding.armature().wrapBar(bar + off));
        }
    }

    private static double typical(List<double[]> readings) {
        double[] sizes = readings.stream()
                .flatMapToDouble(Arrays::stream)
                .map(Math::abs)
                .filter(x -> x > 0 && !Double.isInfinite(x))
                .sorted()
                .toArray();
        return sizes.length == 0 ? 1 : sizes[sizes.length / 2];
    }

    private static double information(
            List<Hypothesis> left, List<double[]> readings, int i, double typical, double noise) {
        double total = left.stream().mapToDouble(Hypothesis::p).sum();
        double sum = 0;
        for (int h = 0; h < left.size(); h++) {
            double mix = 0;
            for (int k = 0; k < left.size(); k++) {
                mix += left.get(k).p() / total * overlap(readings.get(h)[i], readings.get(k)[i], typical, noise);
            }
            sum -= left.get(h).p() / total * Math.log(mix);
        }
        return sum;
    }

    private static double overlap(double a, double b, double typical, double noise) {
        if (Double.isInfinite(a) || Double.isInfinite(b)) {
            return a == b ? 1 : 0;
        }
        double error = noise * Math.max(0.2 * typical, Math.max(Math.abs(a), Math.abs(b)));
        double apart = (a - b) / error;
        return Math.exp(-apart * apart / 8);
    }

    private static String words(BenchTest test, BenchTest.Pair pair) {
        String where = pair.to() == BenchTest.SHAFT
                ? "bar " + pair.from() + " and the shaft"
                : "bars " + pair.from() + " and " + pair.to();
        return String.format(Locale.ROOT, "probes on %s; %s", where, test.setUp());
    }
}
