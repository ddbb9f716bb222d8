package coilwright.winding;

import java.util.List;

/** A winding of plex m makes at least 2·m paths, so it needs at least that many bars, else its steps run past half. */
final class LeadsApart implements Rules.BlockingRule {
    static final String ID = "leads-apart";

    @Override
    public List<Finding> check(Draft draft) {
        WindingType type = draft.spec().type();
        int k = draft.bars();
        int m = draft.plex();
        if ((type != WindingType.LAP && type != WindingType.WAVE) || 2 * m <= k) {
            return List.of();
        }
        if (type == WindingType.LAP) {
            return List.of(Finding.error(
                    ID,
                    Words.article(Words.plex(m)) + " lap steps " + m + " bars, over half of the " + k + " there are",
                    "plex " + k / 2 + (k / 2 > 1 ? " or less" : "") + " would do",
                    References.ARITHMETIC));
        }
        int plex = k / 2;
        while (plex >= 1
                && Draft.wavePitch(k, draft.polePairs(), plex, draft.direction())
                        .isEmpty()) {
            plex--;
        }
        int bars = 2 * m;
        while (!draft.waveSteps(bars, draft.direction())) {
            bars++;
        }
        return List.of(Finding.error(
                ID,
                Words.article(Words.plex(m)) + " wave makes " + 2 * m + " paths, more than the " + k
                        + " coils there are to share out",
                plex >= 1
                        ? "plex " + plex + ", or " + bars + " bars for this plex, would do"
                        : bars + " bars for this plex would do",
                References.ARITHMETIC));
    }
}
