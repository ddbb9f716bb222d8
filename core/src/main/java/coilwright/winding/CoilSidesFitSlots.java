package coilwright.winding;

import java.util.ArrayList;
import java.util.List;

/** Live and dead coils together must fill the slots evenly: (K + d)/S whole. */
final class CoilSidesFitSlots implements Rules.BlockingRule {
    static final String ID = "coil-sides-fit-slots";

    @Override
    public List<Finding> check(Draft draft) {
        if (draft.spec().type() == WindingType.LISTED || draft.fitsSlots()) {
            return List.of();
        }
        int s = draft.slots();
        int q = draft.positions();
        int dead = draft.deadCoils();
        String coils = Words.count(q, "coil") + (dead == 0 ? "" : " (" + Words.count(dead, "dead coil") + " counted)");
        return List.of(Finding.error(
                ID,
                draft.bars() + " bars need " + coils + ", which do not share out evenly over " + s + " slots (" + q
                        + "/" + s + " is not whole)",
                wayOut(draft),
                References.NAGRATH_KOTHARI));
    }

    private static String wayOut(Draft draft) {
        int filling = draft.coilsToFill(draft.positions()) - draft.bars();
        // A frog-leg winding has no dead coils, and a wave of no whole pitch is not mended by filling the slots.
        String fill = draft.spec() instanceof WindingSpec.Regular && draft.steps(draft.bars())
                ? Words.count(filling, "dead coil") + " in all would fill the slots"
                : "";
        List<String> bars = nearestBars(draft);
        if (!fill.isEmpty() && (filling <= draft.mostDead() || bars.isEmpty())) {
            return fill + (bars.isEmpty() ? "" : "; or " + String.join(" or ", bars) + " bars would do");
        }
        if (!bars.isEmpty()) {
            return String.join(" or ", bars) + " bars would do";
        }
        return "no number of bars suits these slots: another number of slots or other dead coils would do";
    }

    /** The nearest numbers of bars that fill the slots together with the dead coils given, and can be stepped. */
    private static List<String> nearestBars(Draft draft) {
        int s = draft.slots();
        int dead = draft.deadCoils();
        List<String> out = new ArrayList<>();
        for (int q = draft.positions() / s * s; q - dead >= 2; q -= s) {
            if (draft.steps(q - dead)) {
                out.add(Integer.toString(q - dead));
                break;
            }
        }
        for (int q = draft.coilsToFill(draft.positions()); q - dead <= Armature.MAX_BARS; q += s) {
            if (draft.steps(q - dead)) {
                out.add(Integer.toString(q - dead));
                break;
            }
        }
        return out;
    }
}
