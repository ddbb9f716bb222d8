package coilwright.benchmark;

import coilwright.network.Branch;
import coilwright.network.Change;
import coilwright.network.Factorisation;
import coilwright.network.Feed;
import coilwright.network.Network;
import coilwright.network.PreparedReadings;
import coilwright.network.Reading;
import coilwright.network.Solution;
import coilwright.network.Trial;
import java.io.File;
import java.net.URI;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.ejml.data.DMatrixRMaj;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.data.DMatrixSparseTriplet;
import org.ejml.interfaces.linsol.LinearSolverSparse;
import org.ejml.ops.DConvertMatrixStruct;
import org.ejml.sparse.FillReducing;
import org.ejml.sparse.csc.factory.LinearSolverFactory_DSCC;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * The network solver on a lap winding of 500 bars: a whole drop walk, and one suspected fault after another.
 *
 * <p>Run {@link #main}, for instance by
 *
 * <pre>mvn -q -pl core test-compile exec:java -Dexec.classpathScope=test \
 *     -Dexec.mainClass=coilwright.benchmark.NetworkBenchmark</pre>
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class NetworkBenchmark {
    private static final int BARS = 500;
    private static final double OHMS = 0.012;
    private static final Feed FEED = Feed.current(0, BARS / 2, 5);

    private Network network;
    private Factorisation factorised;
    private Trial walk;
    private Trial probe;
    private final double[] walkReadings = new double[BARS];
    private final double[] probeReadings = new double[8];
    private DMatrixSparseCSC matrix;
    private int next;

    /** Builds the ring and what the trials need. */
    @Setup
    public void setUp() {
        network = lap();
        factorised = network.factorised();
        walk = prepare(BARS).trial();
        probe = prepare(8).trial();
        matrix = matrix(network);
        // The columns of all coils are worked out before the first measurement.
        for (int k = 0; k < BARS; k++) {
            walk.clear().resistance(k, OHMS / 2).read(walkReadings);
        }
    }

    private PreparedReadings prepare(int count) {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int bar = i * (BARS / count);
            readings.add(new Reading(List.of(FEED), bar, (bar + 1) % BARS));
        }
        return factorised.prepare(readings);
    }

    private static Network lap() {
        Network.Builder builder = Network.builder().nodes(BARS);
        for (int k = 0; k < BARS; k++) {
            builder.branch(k, (k + 1) % BARS, OHMS);
        }
        return builder.build();
    }

    /** The conductance matrix with the last bar grounded. */
    private static DMatrixSparseCSC matrix(Network network) {
        int n = network.nodeCount() - 1;
        DMatrixSparseTriplet triplets = new DMatrixSparseTriplet(n, n, 4 * n + 4);
        for (Branch branch : network.branches()) {
            double g = 1 / branch.resistance();
            int p = branch.from();
            int q = branch.to();
            if (p < n) {
                triplets.addItem(p, p, g);
            }
            if (q < n) {
                triplets.addItem(q, q, g);
            }
            if (p < n && q < n) {
                triplets.addItem(p, q, -g);
                triplets.addItem(q, p, -g);
            }
        }
        DMatrixSparseCSC m = DConvertMatrixStruct.convert(triplets, (DMatrixSparseCSC) null);
        m.sortIndices(null);
        // Entries for the same place add up.
        DMatrixSparseCSC sum = new DMatrixSparseCSC(n, n, m.nz_length);
        int at = 0;
        for (int c = 0; c < n; c++) {
            for (int i = m.col_idx[c]; i < m.col_idx[c + 1]; i++) {
                if (at > sum.col_idx[c] && sum.nz_rows[at - 1] == m.nz_rows[i]) {
                    sum.nz_values[at - 1] += m.nz_values[i];
                } else {
                    sum.nz_rows[at] = m.nz_rows[i];
                    sum.nz_values[at++] = m.nz_values[i];
                }
            }
            sum.col_idx[c + 1] = at;
        }
        sum.nz_length = at;
        return sum;
    }

    private static DMatrixRMaj generalSolve(DMatrixSparseCSC m) {
        LinearSolverSparse<DMatrixSparseCSC, DMatrixRMaj> solver = LinearSolverFactory_DSCC.lu(FillReducing.NONE);
        if (!solver.setA(m.copy())) {
            throw new IllegalStateException("singular");
        }
        DMatrixRMaj b = new DMatrixRMaj(m.numRows, 1);
        b.set(0, 0, 5);
        b.set(BARS / 2, 0, -5);
        DMatrixRMaj x = new DMatrixRMaj(m.numRows, 1);
        solver.solve(b, x);
        return x;
    }

    /** Network built, factorised and solved once; the drop between each two neighbouring bars read from that. */
    @Benchmark
    public double dropWalkFromFreshNetwork() {
        Solution solution = lap().factorised().solve(FEED);
        double sum = 0;
        for (int k = 0; k < BARS; k++) {
            sum += solution.voltage(k, (k + 1) % BARS).orElseThrow();
        }
        return sum;
    }

    /** The same drops, with a general sparse solver called for each pair of bars. */
    @Benchmark
    public double dropWalkByGeneralSolverPerPair() {
        double sum = 0;
        for (int k = 0; k < BARS; k++) {
            DMatrixRMaj x = generalSolve(matrix);
            int to = (k + 1) % BARS;
            sum += (k < x.numRows ? x.get(k, 0) : 0) - (to < x.numRows ? x.get(to, 0) : 0);
        }
        return sum;
    }

    /** One coil changed: the whole walk of 500 readings by update. */
    @Benchmark
    public double walkByUpdate() {
        next = (next + 1) % BARS;
        walk.clear().resistance(next, OHMS * 0.8).read(walkReadings);
        return walkReadings[next];
    }

    /** One coil changed: eight readings by update. */
    @Benchmark
    public double eightReadingsByUpdate() {
        next = (next + 1) % BARS;
        probe.clear().resistance(next, OHMS * 0.8).read(probeReadings);
        return probeReadings[0];
    }

    /** Two coils changed: eight readings by update. */
    @Benchmark
    public double eightReadingsByUpdateOfTwo() {
        next = (next + 1) % BARS;
        probe.clear()
                .resistance(next, OHMS * 0.8)
                .resistance((next + 77) % BARS, OHMS * 0.7)
                .read(probeReadings);
        return probeReadings[0];
    }

    /** One coil changed: the changed network factorised anew and solved. */
    @Benchmark
    public double refactorisation() {
        next = (next + 1) % BARS;
        return network.with(List.of(Change.resistance(next, OHMS * 0.8)))
                .factorised()
                .solve(FEED)
                .voltage(next, (next + 1) % BARS)
                .orElseThrow();
    }

    /** The general sparse solver factorising the same size of network once. */
    @Benchmark
    public double generalRefactorisation() {
        return generalSolve(matrix).get(0, 0);
    }

    /** Measures and prints the ratios. */
    public static void main(String[] args) throws RunnerException {
        // The runner hands this on to the virtual machines it starts.
        System.setProperty("java.class.path", classPath());
        Collection<RunResult> results = new Runner(new OptionsBuilder()
                        .include(NetworkBenchmark.class.getName())
                        .build())
                .run();
        Map<String, Double> micros = results.stream()
                .collect(Collectors.toMap(
                        result -> result.getPrimaryResult().getLabel(),
                        result -> result.getPrimaryResult().getScore()));
        ratio(micros, "dropWalkByGeneralSolverPerPair", "dropWalkFromFreshNetwork");
        ratio(micros, "refactorisation", "eightReadingsByUpdate");
        ratio(micros, "refactorisation", "eightReadingsByUpdateOfTwo");
        ratio(micros, "refactorisation", "walkByUpdate");
        ratio(micros, "generalRefactorisation", "eightReadingsByUpdate");
    }

    /** The class path of this class, also where a build tool has loaded it by a class loader of its own. */
    public static String classPath() {
        if (NetworkBenchmark.class.getClassLoader() instanceof URLClassLoader loader) {
            return Arrays.stream(loader.getURLs())
                    .map(url -> Path.of(URI.create(url.toString())).toString())
                    .collect(Collectors.joining(File.pathSeparator));
        }
        return System.getProperty("java.class.path");
    }

    private static void ratio(Map<String, Double> micros, String slow, String fast) {
        double a = micros.get(slow);
        double b = micros.get(fast);
        System.out.printf(Locale.ROOT, "%s / %s = %.3f us / %.3f us = %.0f%n", slow, fast, a, b, a / b);
    }
}
