package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import coilwright.bench.TestRun;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * A lap winding with two faults, all single faults and all pairs of the main kinds weighed; and one hypothesis by the
 * quick way against a network built and factorised anew for it.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
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
}
