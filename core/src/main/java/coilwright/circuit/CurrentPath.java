package coilwright.circuit;

import java.util.ArrayList;
import java.util.List;

/**
 * Coils in series from one brush to another.
 *
 * @param number 1 and up
 * @param fromBrush number of the brush at its start
 * @param toBrush number of the brush at its end
 * @param steps the coils in order
 */
public record CurrentPath(int number, int fromBrush, int toBrush, List<Step> steps) {
    /**
     * Copies the list.
     *
     * @param number 1 and up
     * @param fromBrush number of the brush at its start
     * @param toBrush number of the brush at its end
     * @param steps the coils in order
     */
    public CurrentPath {
        steps = List.copyOf(steps);
    }

    /** {@return the bars met, first and last included} */
    public List<Integer> bars() {
        var bars = new ArrayList<Integer>();
        bars.add(steps.get(0).fromBar());
        steps.forEach(s -> bars.add(s.toBar()));
        return List.copyOf(bars);
    }
}
