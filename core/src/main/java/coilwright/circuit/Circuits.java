package coilwright.circuit;

import coilwright.winding.Winding;
import java.util.OptionalInt;

/** Asks the winding where a rule tells, the circuit only where none does: tracing it takes a library to load. */
public final class Circuits {
    private Circuits() {}

    /**
     * {@return closed circuits, by the rule of the winding's kind or traced}
     *
     * @param winding the winding
     */
    public static int closures(Winding winding) {
        OptionalInt byRule = winding.closures();
        return byRule.isPresent() ? byRule.getAsInt() : WindingGraph.of(winding).closures();
    }

    /**
     * {@return parallel paths from brush to brush, by the rule of the winding's kind or traced; empty without a live
     * coil}
     *
     * @param winding the winding
     */
    public static OptionalInt parallelPaths(Winding winding) {
        OptionalInt byRule = winding.parallelPaths();
        if (byRule.isPresent() || winding.liveCoils().isEmpty()) {
            return byRule;
        }
        return OptionalInt.of(
                BrushGear.at(winding, 0, BrushGear.leastWidth(winding)).paths().size());
    }
}
