package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import coilwright.bench.TestRun;
import coilwright.benchmark.NetworkBenchmark;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * A lap winding with two faults, all single faults and all pairs of the main kinds weighed; and one hypothesis by the
 * quick way against a network built and factorised anew for it. The main method prints times, ratios and growth.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 1)
@Measurement(iterations = 3, time = 1)
public class DiagnosisBenchmark {
    /** Number of bars. */
    @Param({"125", "250", "500"})
    public int bars;

    private BenchArmature sound;
    private BenchArmature faulty;
    private List<TestRun> runs;
    private RunModel model;
    private List<Alteration> alterations;

    /** Makes the armature and its readings. */
    @Setup
    public void prepare() {
        Winding w = Winding.build(Armature.of(bars / 5, bars, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
        sound = BenchArmature.sound(w, 1);
        List<Fault> faults = List.of(new Fault.ShortedTurns(bars / 7, 0.5), new Fault.HighResistance(bars / 3, 0.8));
        faulty = Workshop.with(sound, faults);
        var test = new BenchTest.Drop(1, bars / 2 + 1, 1);
        var random = new Random(5);
        List<PairReading> readings = new ArrayList<>();
        for (PairReading r : test.readWalk(faulty)) {
            readings.add(new PairReading(r.from(), r.to(), r.value() * (1 + 0.01 * random.nextGaussian())));
        }
        runs = List.of(new TestRun(test, readings));
        model = new RunModel(new SoundNetwork(sound), runs.get(0));
        alterations = new Alterations(sound).of(faults).orElseThrow().list();
    }

    /** Readings to explanation, exhaustive. */
    @Benchmark
    public Diagnosis diagnose() {
        return Diagnosis.of(sound, runs);
    }

    /** One pair of faults weighed from the sound network's own solution. */
    @Benchmark
    public double[] hypothesisByUpdate() {
        return model.predict(alterations).orElseThrow();
    }

    /** One pair of faults weighed by a network factorised for it. */
    @Benchmark
    public double[] hypothesisByRefactorising() {
        return model.slow(faulty);
    }

    /** Runs all and prints ratios. */
    public static void main(String[] args) throws RunnerException {
        System.setProperty("java.class.path", NetworkBenchmark.classPath());
        Collection<RunResult> results = new Runner(new OptionsBuilder()
                        .include(DiagnosisBenchmark.class.getName())
                        .build())
                .run();
        Map<String, Map<Integer, Double>> by = new TreeMap<>();
        for (RunResult r : results) {
            String name = r.getParams().getBenchmark();
            by.computeIfAbsent(name.substring(name.lastIndexOf('.') + 1), x -> new TreeMap<>())
                    .put(
                            Integer.parseInt(r.getParams().getParam("bars")),
                            r.getPrimaryResult().getScore());
        }
        for (int k : List.of(125, 250, 500)) {
            System.out.printf(
                    Locale.ROOT,
                    "K = %d: diagnosis %.2f s; one hypothesis %.1f us by update, %.0f us by refactorising, ratio %.0f%n",
                    k,
                    by.get("diagnose").get(k) / 1e6,
                    by.get("hypothesisByUpdate").get(k),
                    by.get("hypothesisByRefactorising").get(k),
                    by.get("hypothesisByRefactorising").get(k)
                            / by.get("hypothesisByUpdate").get(k));
        }
        Map<Integer, Double> diagnose = by.get("diagnose");
        System.out.printf(
                Locale.ROOT,
                "growth exponent of the diagnosis: %.2f from 125 to 250 bars, %.2f from 250 to 500%n",
                exponent(diagnose.get(125), diagnose.get(250)),
                exponent(diagnose.get(250), diagnose.get(500)));
    }

    private static double exponent(double time, double timeOfTwice) {
        return Math.log(timeOfTwice / time) / Math.log(2);
    }
}
