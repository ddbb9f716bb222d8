package coilwright.benchmark;

import coilwright.bench.BenchArmature;
import coilwright.bench.DropTest;
import coilwright.bench.PairReading;
import coilwright.bench.ResistanceTest;
import coilwright.bench.Supply;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * The bench on a lap winding of 500 bars, from the numbers of the armature to the readings.
 *
 * <p>Run {@link #main}, for instance by
 *
 * <pre>mvn -q -pl core test-compile exec:java -Dexec.classpathScope=test \
 *     -Dexec.mainClass=coilwright.benchmark.DropWalkBenchmark</pre>
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class DropWalkBenchmark {
    private static final int BARS = 500;
    private static final double OHMS = 0.012;

    private final BenchArmature armature = BenchArmature.sound(lap(), OHMS);

    private static Winding lap() {
        return Winding.build(Armature.of(BARS / 2, BARS, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
    }

    /** The winding built and checked, and its 500 drop readings. */
    @Benchmark
    public List<PairReading> dropWalkFromFreshWinding() {
        return DropTest.at(BenchArmature.sound(lap(), OHMS), 1, 1 + BARS / 2, new Supply.Current(5))
                .neighbours();
    }

    /** The winding alone. */
    @Benchmark
    public Winding freshWinding() {
        return lap();
    }

    /** The 500 drop readings of a winding built before. */
    @Benchmark
    public List<PairReading> dropWalk() {
        return DropTest.at(armature, 1, 1 + BARS / 2, new Supply.Current(5)).neighbours();
    }

    /** The same with the network factorised anew for every pair. */
    @Benchmark
    public double dropWalkPairByPair() {
        double sum = 0;
        for (int bar = 1; bar <= BARS; bar++) {
            sum += DropTest.at(armature, 1, 1 + BARS / 2, new Supply.Current(5))
                    .between(bar, bar % BARS + 1)
                    .value();
        }
        return sum;
    }

    /** The 500 resistances from bar to bar. */
    @Benchmark
    public List<PairReading> resistanceWalk() {
        return ResistanceTest.of(armature).neighbours();
    }

    /** Measures. */
    public static void main(String[] args) throws RunnerException {
        // The runner hands this on to the virtual machines it starts.
        System.setProperty("java.class.path", NetworkBenchmark.classPath());
        new Runner(new OptionsBuilder()
                        .include(DropWalkBenchmark.class.getName())
                        .build())
                .run();
    }
}
