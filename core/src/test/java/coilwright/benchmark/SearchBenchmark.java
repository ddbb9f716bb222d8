package coilwright.benchmark;

import coilwright.winding.Winding;
import coilwright.winding.WindingSearch;
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
 * The search for every winding that fits a core, for 2, 4, 6 and 8 poles, against building each winding it finds once.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
public class SearchBenchmark {
    private static final int MOST_POLES = 8;

    /** Number of slots. */
    @Param({"50", "100", "200"})
    public int slots;

    private List<Winding> found;

    /** Searches once, to know what there is to build. */
    @Setup
    public void prepare() {
        found = new ArrayList<>();
        search().forEach(result -> result.possible().forEach(candidate -> found.add(candidate.winding())));
    }

    /** Everything that fits, with what the rules say of it. */
    @Benchmark
    public List<WindingSearch.Result> search() {
        List<WindingSearch.Result> results = new ArrayList<>();
        for (int poles = 2; poles <= MOST_POLES; poles += 2) {
            results.add(WindingSearch.find(WindingSearch.Query.of(slots, poles)));
        }
        return results;
    }

    /** The windings that fit, known before. */
    @Benchmark
    public List<Winding> buildWhatFits() {
        List<Winding> windings = new ArrayList<>();
        for (Winding winding : found) {
            windings.add(Winding.build(winding.armature(), winding.spec()));
        }
        return windings;
    }
}
