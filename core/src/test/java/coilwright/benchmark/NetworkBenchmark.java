package coilwright.benchmark;

import coilwright.network.Change;
import coilwright.network.Factorisation;
import coilwright.network.Feed;
import coilwright.network.Network;
import coilwright.network.PreparedReadings;
import coilwright.network.Reading;
import coilwright.network.Trial;
import java.util.ArrayList;
import java.util.List;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * One suspected fault after another in the ring of a lap winding, by update, against a general sparse solver that
 * factorises its matrix anew.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
public class NetworkBenchmark {
    private static final double OHMS = 0.012;

    /** Number of bars. */
    @Param({"125", "250", "500"})
    public int bars;

    private Feed feed;
    private Network network;
    private Factorisation factorised;
    private Trial walk;
    private Trial probe;
    private double[] walkReadings;
    private final double[] probeReadings = new double[8];
    private GeneralSolver general;
    private int next;

    /** Builds the ring and what the trials need. */
    @Setup
    public void setUp() {
        feed = Feed.current(0, bars / 2, 5);
        network = DropWalkBenchmark.ring(bars, OHMS);
        factorised = network.factorised();
        walk = prepare(bars).trial();
        probe = prepare(probeReadings.length).trial();
        walkReadings = new double[bars];
        general = new GeneralSolver(network);
        // The columns of all coils are worked out before the first measurement.
        for (int k = 0; k < bars; k++) {
            walk.clear().resistance(k, OHMS / 2).read(walkReadings);
        }
    }

    private PreparedReadings prepare(int count) {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int bar = i * (bars / count);
            readings.add(new Reading(List.of(feed), bar, (bar + 1) % bars));
        }
        return factorised.prepare(readings);
    }

    private int next() {
        next = (next + 1) % bars;
        return next;
    }

    /** One coil changed: the whole walk by update. */
    @Benchmark
    public double walkByUpdate() {
        walk.clear().resistance(next(), OHMS * 0.8).read(walkReadings);
        return walkReadings[next];
    }

    /** One coil changed: eight readings by update. */
    @Benchmark
    public double eightReadingsByUpdate() {
        probe.clear().resistance(next(), OHMS * 0.8).read(probeReadings);
        return probeReadings[0];
    }

    /** Two coils changed: eight readings by update. */
    @Benchmark
    public double eightReadingsByUpdateOfTwo() {
        probe.clear()
                .resistance(next(), OHMS * 0.8)
                .resistance((next + 77) % bars, OHMS * 0.7)
                .read(probeReadings);
        return probeReadings[0];
    }

    /** One coil changed: the changed network factorised anew and solved. */
    @Benchmark
    public double refactorisation() {
        return network.with(List.of(Change.resistance(next(), OHMS * 0.8)))
                .factorised()
                .solve(feed)
                .voltage(next, (next + 1) % bars)
                .orElseThrow();
    }

    /** The general solver factorising its ready matrix anew and solving once. */
    @Benchmark
    public double generalRefactorisation() {
        return GeneralSolver.between(general.factorise().solve(0, bars / 2, 5), next(), (next + 1) % bars);
    }
}
