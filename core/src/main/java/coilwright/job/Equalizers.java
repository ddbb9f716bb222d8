package coilwright.job;

import coilwright.circuit.WindingGraph;
import coilwright.winding.Armature;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.List;

/**
 * Equalizer rings behind the commutator: each joins one set of bars that stand at one potential.
 *
 * @param every 1 for a ring on every such set, 2 for one on every other, and so on; the set of the lowest bar has one
 */
public record Equalizers(int every) {
    /**
     * Checks the number.
     *
     * @param every 1 for a ring on every such set, 2 for one on every other, and so on; the set of the lowest bar has
     *     one
     * @throws IllegalArgumentException when it is out of range
     */
    public Equalizers {
        if (every < 1 || every > Armature.MAX_BARS) {
            throw new IllegalArgumentException("every is " + every + ", but must be from 1 (a ring on every set of bars"
                    + " at one potential) to " + Armature.MAX_BARS);
        }
    }

    /**
     * {@return the bars of each ring, in order of the lowest bar}
     *
     * @param winding the winding
     * @throws IllegalArgumentException when the winding has no bars at one potential, or fewer sets of them than one
     *     ring would skip
     */
    public List<List<Integer>> rings(Winding winding) {
        List<List<Integer>> sets = WindingGraph.of(winding).equipotentialBars();
        if (sets.isEmpty()) {
            throw new IllegalArgumentException("equalizers.every is " + every + ", but this winding has no two bars at"
                    + " one potential for a ring to join: leave equalizers out");
        }
        if (every > sets.size()) {
            throw new IllegalArgumentException("equalizers.every is " + every + ", but this winding has only "
                    + sets.size() + " sets of bars at one potential: give 1 to " + sets.size());
        }
        List<List<Integer>> rings = new ArrayList<>();
        for (int i = 0; i < sets.size(); i += every) {
            rings.add(sets.get(i));
        }
        return List.copyOf(rings);
    }
}
