package coilwright.winding;

import java.util.List;

/** The two leads of a coil must land on two bars, and a lap step must stay well within a turn. */
final class LeadsApart implements Rules.BlockingRule {
    static final String ID = "leads-apart";

    @Override
    public List<Finding> check(Draft draft) {
        if (draft.spec().type() == WindingType.LISTED || draft.commutatorPitch().isEmpty()) {
            return List.of();
        }
        int k = draft.bars();
        int yc = draft.commutatorPitch().getAsInt();
        if (Math.floorMod(yc, k) == 0) {
            return List.of(Finding.error(
                    ID,
                    "commutator pitch " + yc + " on " + k + " bars brings both leads of a coil to one bar",
                    "a smaller plex or another number of bars would do",
                    References.ARITHMETIC));
        }
        if (draft.spec().type() == WindingType.LAP && 2 * Math.abs(yc) > k) {
            return List.of(Finding.error(
                    ID,
                    Words.article(Words.plex(draft.plex())) + " lap steps " + Math.abs(yc) + " bars, over half of the "
                            + k + " there are",
                    "plex " + Math.max(1, k / 2) + " or less would do",
                    References.ARITHMETIC));
        }
        return List.of();
    }
}
