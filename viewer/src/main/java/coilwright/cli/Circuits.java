package coilwright.cli;

import coilwright.circuit.BrushGear;
import coilwright.circuit.WindingGraph;
import coilwright.winding.Winding;
import java.util.OptionalInt;

/** Asks the winding where a rule tells, the circuit only where none does: tracing it takes a library to load. */
final class Circuits {
    private Circuits() {}

    static int closures(Winding winding) {
        OptionalInt byRule = winding.closures();
        return byRule.isPresent() ? byRule.getAsInt() : WindingGraph.of(winding).closures();
    }

    static OptionalInt parallelPaths(Winding winding) {
        OptionalInt byRule = winding.parallelPaths();
        if (byRule.isPresent() || winding.liveCoils().isEmpty()) {
            return byRule;
        }
        return OptionalInt.of(
                BrushGear.at(winding, 0, BrushGear.leastWidth(winding)).paths().size());
    }
}
