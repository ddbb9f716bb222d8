package coilwright.winding;

import java.util.ArrayList;
import java.util.List;

/** All rules of the trade, each a small check of its own. */
public final class Rules {
    private static final List<BlockingRule> BLOCKING = List.of(
            new CoilSidesFitSlots(),
            new CommutatorPitchWhole(),
            new LeadsApart(),
            new SpanInRange(),
            new DeadCoilsExist(),
            new FrogLegFits(),
            new ListedCoilsExist());

    private static final List<WindingRule> ADVISORY = List.of(
            new ThrowAgainstPolePitch(),
            new ConductorParity(),
            new SteppedCoils(),
            new Symmetry(),
            new ReEntrancy(),
            new Equalizers(),
            new BrushWidth(),
            new DeadCoilUse(),
            new ListedLeads());

    private Rules() {}

    /**
     * {@return the rules without which a winding cannot be built that this one breaks; empty where it can be built}
     *
     * @param armature core and commutator
     * @param spec how it is wound
     */
    public static List<Finding> blocking(Armature armature, WindingSpec spec) {
        var draft = new Draft(armature, spec);
        List<Finding> out = new ArrayList<>();
        for (BlockingRule rule : BLOCKING) {
            out.addAll(rule.check(draft));
        }
        return List.copyOf(out);
    }

    /**
     * {@return what the other rules say of a winding that can be built, notes included}
     *
     * @param winding the winding
     */
    public static List<Finding> check(Winding winding) {
        List<Finding> out = new ArrayList<>();
        for (WindingRule rule : ADVISORY) {
            out.addAll(rule.check(winding));
        }
        return List.copyOf(out);
    }

    /** A rule without which the winding cannot be built. */
    interface BlockingRule {
        List<Finding> check(Draft draft);
    }

    /** A rule about a winding that can be built. */
    interface WindingRule {
        List<Finding> check(Winding winding);
    }
}
