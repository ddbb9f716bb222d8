package coilwright.winding;

import java.util.ArrayList;
import java.util.List;

/** Says so where the coils of one slot split over two. */
final class SteppedCoils implements Rules.WindingRule {
    static final String ID = "stepped-coils";

    @Override
    public List<Finding> check(Winding winding) {
        List<Finding> out = new ArrayList<>();
        for (CoilSet set : winding.sets()) {
            if (set.pitches().isPresent() && set.pitches().get().stepped()) {
                Pitches y = set.pitches().get();
                int low = y.backSpan() / y.sidesPerSlot();
                int longer = y.backSpan() % y.sidesPerSlot();
                out.add(Finding.note(
                        ID,
                        "stepped (split-throw) coils: of the " + y.sidesPerSlot() + " coils of a slot "
                                + (y.sidesPerSlot() - longer) + " span " + low + " slots (1-" + (low + 1) + ") and "
                                + longer + " span " + (low + 1) + " (1-" + (low + 2) + ")",
                        References.ARITHMETIC));
            }
        }
        return out;
    }
}
