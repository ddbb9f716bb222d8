package coilwright.commutator;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A measured value against one limit.
 *
 * @param limit with its source
 * @param valueMm measured
 * @param pass whether it keeps to the limit
 */
public record CommutatorVerdict(CommutatorLimit limit, double valueMm, boolean pass) {
    private static CommutatorVerdict of(CommutatorLimit limit, double value) {
        return new CommutatorVerdict(limit, value, limit.admits(value));
    }

    /**
     * {@return the run-out against every limit on it; the choice is the user's}
     *
     * @param runOut readings with the circle that fits them
     */
    public static List<CommutatorVerdict> runOut(RunOut runOut) {
        List<CommutatorVerdict> out = new ArrayList<>();
        for (CommutatorLimit l : CommutatorLimit.all()) {
            if (l.quantity().isRunOut()) {
                boolean span = l.quantity() == CommutatorLimit.Quantity.RUN_OUT_SIX_BARS;
                out.add(of(l, span ? runOut.largestChangeWithinMm(6) : runOut.tirMm()));
            }
        }
        return List.copyOf(out);
    }

    /**
     * {@return the depth of the mica under the bars against every limit on it}
     *
     * @param depthMm mica under the bars, mm
     */
    public static List<CommutatorVerdict> undercut(double depthMm) {
        Text.notNegative("undercut depth", depthMm);
        return CommutatorLimit.on(CommutatorLimit.Quantity.UNDERCUT_LIMIT).stream()
                .map(l -> of(l, depthMm))
                .toList();
    }

    /**
     * {@return what has been turned off against every limit on it; empty where the new diameter is not known}
     *
     * @param newDiameterMm over the commutator when it was new, mm; empty where not known
     * @param diameterMm over the commutator now, or after the cut, mm
     */
    public static List<CommutatorVerdict> wear(OptionalDouble newDiameterMm, double diameterMm) {
        Text.positive("commutator diameter", diameterMm);
        if (newDiameterMm.isEmpty()) {
            return List.of();
        }
        return CommutatorLimit.on(CommutatorLimit.Quantity.DIAMETER_WEAR).stream()
                .map(l -> of(l, newDiameterMm.getAsDouble() - diameterMm))
                .toList();
    }

    /** {@return the verdict in one line, with its source} */
    public String text() {
        return Text.mm(valueMm) + (pass ? " passes: " : " fails: ") + limit.machine() + ", " + limit.printed()
                + (limit.note().isEmpty() ? "" : " (" + limit.note() + ")") + "; " + limit.cite();
    }
}
