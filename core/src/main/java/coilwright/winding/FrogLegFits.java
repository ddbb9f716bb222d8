package coilwright.winding;

import java.util.ArrayList;
import java.util.List;

/** A frog-leg winding needs K/p and Q/p whole, and room for its wave coils in two pole pitches. */
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
        if (k % p != 0) {
            int below = k / p * p;
            out.add(Finding.error(
                    ID,
                    "a frog-leg winding ties bars K/p = " + k + "/" + p + " apart, which is not whole",
                    (below >= 2 ? below + " or " : "") + (below + p) + " bars would do",
                    References.PATENT_CH124206));
        } else {
            int wave = k / p - draft.direction().sign() * draft.plex();
            if (wave <= 0 || wave % k == 0) {
                out.add(Finding.error(
                        ID,
                        "the wave part of a frog-leg winding would step K/p - m = " + k / p + " - " + draft.plex()
                                + " = " + wave + " bars",
                        "a plex smaller than " + k / p + " would do",
                        References.PATENT_CH124206));
            }
            int most = k / p - draft.sidesPerSlot();
            if (draft.fitsSlots() && draft.backSpan() > most) {
                out.add(Finding.error(
                        ID,
                        "the lap coils of a frog-leg winding span " + draft.backSpan()
                                + " positions, which leaves no room for the wave coils within two pole pitches ("
                                + k / p + " positions)",
                        "a span of about half of that would do",
                        References.PATENT_CH124206));
            }
        }
        return out;
    }
}
