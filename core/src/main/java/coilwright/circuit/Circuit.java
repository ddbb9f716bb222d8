package coilwright.circuit;

import java.util.List;

/**
 * Coils joined to one another through bars.
 *
 * @param kind what shape they make
 * @param bars the bars met, in order of the walk; in order of number where it branches
 * @param steps the coils in order of the walk; in order of number where it branches
 */
public record Circuit(Kind kind, List<Integer> bars, List<Step> steps) {
    /** The shapes a circuit can have. */
    public enum Kind {
        /** One closed ring, as a sound winding makes. */
        CLOSED,
        /** A chain with two ends. */
        OPEN,
        /** Some bar joins more than two leads. */
        BRANCHED,
        /** One bar that no live coil touches. */
        BARE_BAR
    }

    /**
     * Copies the lists.
     *
     * @param kind what shape they make
     * @param bars the bars met, in order of the walk; in order of number where it branches
     * @param steps the coils in order of the walk; in order of number where it branches
     */
    public Circuit {
        bars = List.copyOf(bars);
        steps = List.copyOf(steps);
    }
}
