package coilwright.winding;

import java.util.ArrayList;
import java.util.List;

/**
 * A frog-leg winding needs K/p whole, as many bars as its wave part of plex p·m has paths, and room for its wave coils
 * in two pole pitches.
 */
final class FrogLegFits implements Rules.BlockingRule {
    static final String ID = "frog-leg-fits";

    @Override
    public List<Finding> check(Draft draft) {
        if (draft.spec().type() != WindingType.FROG_LEG) {
            return List.of();
        }
        List<Finding> out = new ArrayList<>();
        int p = draft.polePairs();
        int k = draft.bars();
        int m = draft.plex();
        int least = 2 * p * m;
        if (k % p != 0) {
            int below = k / p * p;
            out.add(error(
                    "a frog-leg winding ties bars K/p = " + k + "/" + p + " apart, which is not whole",
                    (below >= least ? below + " or " : "") + Math.max(least, below + p) + " bars would do"));
        }
        if (least > k) {
            int plex = k / (2 * p);
            out.add(error(
                    "the wave part of a frog-leg winding has plex p·m = " + p * m + " and makes " + least
                            + " paths, more than the " + k + " coils there are to share out",
                    plex >= 1
                            ? "plex " + plex + (plex > 1 ? " or less" : "") + ", or " + least
                                    + " bars for this plex, would do"
                            : least + " bars for this plex would do"));
        }
        if (draft.fitsSlots() && k % p == 0) {
            checkSpan(out, draft);
        }
        return out;
    }

    private static void checkSpan(List<Finding> out, Draft draft) {
        int poles = draft.armature().poles();
        int pair = draft.bars() / draft.polePairs();
        int most = pair - draft.sidesPerSlot();
        if (draft.slots() < poles) {
            out.add(error(
                    draft.slots() + " slots on " + poles + " poles give less than one slot to a pole, which leaves no "
                            + "room for a lap and a wave coil within two pole pitches",
                    poles + " slots or more would do"));
        } else if (draft.backSpan() > most) {
            out.add(error(
                    "the lap coils of a frog-leg winding span " + draft.backSpan()
                            + " positions, which leaves no room for the wave coils within two pole pitches (" + pair
                            + " positions)",
                    draft.span() instanceof CoilSpan.Throw
                            ? "a throw of " + most / draft.sidesPerSlot() + " or less would do"
                            : "a backSpan of " + most + " or less would do"));
        }
    }

    private static Finding error(String reason, String wayOut) {
        return Finding.error(ID, reason, wayOut, References.PATENT_CH124206);
    }
}
