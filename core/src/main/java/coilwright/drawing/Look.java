package coilwright.drawing;

import java.util.List;
import java.util.OptionalInt;

/**
 * How one shape is painted.
 *
 * @param fill colour inside, as in 0xf6e7d3; empty for none
 * @param stroke colour of the line, likewise; empty for none
 * @param width of the line, mm
 * @param dashes lengths of strokes and gaps in turn, mm; empty for an unbroken line
 */
public record Look(OptionalInt fill, OptionalInt stroke, double width, List<Double> dashes) {
    /**
     * Copies the list.
     *
     * @param fill colour inside, as in 0xf6e7d3; empty for none
     * @param stroke colour of the line, likewise; empty for none
     * @param width of the line, mm
     * @param dashes lengths of strokes and gaps in turn, mm; empty for an unbroken line
     */
    public Look {
        dashes = List.copyOf(dashes);
    }
}
