package coilwright.benchmark;

import coilwright.bench.BenchArmature;
import coilwright.bench.DropTest;
import coilwright.bench.PairReading;
import coilwright.bench.ResistanceTest;
import coilwright.bench.Supply;
import coilwright.network.Network;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** The readings between neighbouring bars of a lap winding, against a general sparse solver. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
public class DropWalkBenchmark {
    private static final double OHMS = 0.012;
    private static final double AMPS = 5;

    /** Number of bars. */
    @Param({"125", "250", "500"})
    public int bars;

    private BenchArmature armature;
    private Network ring;

    /** Builds the winding, and the bare ring of resistances that it is. */
    @Setup
    public void prepare() {
        armature = BenchArmature.sound(lap(), OHMS);
        ring = ring(bars, OHMS);
    }

    private Winding lap() {
        return Winding.build(Armature.of(bars / 5, bars, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
    }

    /** A resistance between each two neighbouring nodes. */
    static Network ring(int nodes, double ohms) {
        Network.Builder builder = Network.builder().nodes(nodes);
        for (int k = 0; k < nodes; k++) {
            builder.branch(k, (k + 1) % nodes, ohms);
        }
        return builder.build();
    }

    /** The drop readings of a winding built before. */
    @Benchmark
    public List<PairReading> dropWalk() {
        return dropWalk(armature);
    }

    /** The winding built and checked, and its drop readings. */
    @Benchmark
    public List<PairReading> dropWalkFromFreshWinding() {
        return dropWalk(BenchArmature.sound(lap(), OHMS));
    }

    private List<PairReading> dropWalk(BenchArmature of) {
        return DropTest.at(of, 1, 1 + bars / 2, new Supply.Current(AMPS)).neighbours();
    }

    /** The resistances from bar to bar. */
    @Benchmark
    public List<PairReading> resistanceWalk() {
        return ResistanceTest.of(armature).neighbours();
    }

    /** The drops from a matrix set up, factorised and solved once by the general solver. */
    @Benchmark
    public double generalDropWalk() {
        DMatrixRMaj x = new GeneralSolver(ring).factorise().solve(0, bars / 2, AMPS);
        double sum = 0;
        for (int k = 0; k < bars; k++) {
            sum += GeneralSolver.between(x, k, (k + 1) % bars);
        }
        return sum;
    }

    /** The drops with the general solver called for each pair of bars. */
    @Benchmark
    public double generalDropWalkPerPair() {
        double sum = 0;
        for (int k = 0; k < bars; k++) {
            DMatrixRMaj x = new GeneralSolver(ring).factorise().solve(0, bars / 2, AMPS);
            sum += GeneralSolver.between(x, k, (k + 1) % bars);
        }
        return sum;
    }

    /** The resistances from a matrix factorised once and solved for each pair by the general solver. */
    @Benchmark
    public double generalResistanceWalk() {
        GeneralSolver solver = new GeneralSolver(ring).factorise();
        double sum = 0;
        for (int k = 0; k < bars; k++) {
            int next = (k + 1) % bars;
            sum += GeneralSolver.between(solver.solve(k, next, 1), k, next);
        }
        return sum;
    }
}
