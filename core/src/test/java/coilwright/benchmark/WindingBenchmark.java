package coilwright.benchmark;

import coilwright.circuit.Circuit;
import coilwright.circuit.WindingGraph;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.CoilSide;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import org.jgrapht.Graph;
import org.jgrapht.alg.connectivity.ConnectivityInspector;
import org.jgrapht.graph.DirectedPseudograph;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * A lap winding built and checked, against as many coils with nothing to work out; and its circuits, against the same
 * graph and its connected parts by JGraphT.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
public class WindingBenchmark {
    /** Number of bars. */
    @Param({"125", "250", "500"})
    public int bars;

    private Winding winding;

    /** Builds the winding whose circuits are looked for. */
    @Setup
    public void prepare() {
        winding = winding();
    }

    /** From numbers to a winding. */
    @Benchmark
    public Winding winding() {
        return Winding.build(Armature.of(bars / 5, bars, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
    }

    /** As many coils, listed and entered by number. */
    @Benchmark
    public Map<Integer, Coil> readyCoils() {
        List<Coil> coils = new ArrayList<>();
        for (int n = 1; n <= bars; n++) {
            coils.add(new Coil(
                    n, 0, new CoilSide(n, n, 1), new CoilSide(n, n, 2), OptionalInt.of(n), OptionalInt.of(n + 1)));
        }
        Map<Integer, Coil> byNumber = new LinkedHashMap<>();
        List.copyOf(coils).forEach(c -> byNumber.put(c.number(), c));
        return byNumber;
    }

    /** The circuits that the coils make, bar by bar. */
    @Benchmark
    public List<Circuit> circuits() {
        return WindingGraph.of(winding).circuits();
    }

    /** The same graph, with no more asked than which bars hang together. */
    @Benchmark
    public List<Set<Integer>> graphAndParts() {
        Graph<Integer, Coil> graph = new DirectedPseudograph<>(Coil.class);
        for (int bar = 1; bar <= bars; bar++) {
            graph.addVertex(bar);
        }
        for (Coil coil : winding.coils()) {
            graph.addEdge(coil.topBar().getAsInt(), coil.bottomBar().getAsInt(), coil);
        }
        return new ConnectivityInspector<>(graph).connectedSets();
    }
}
