package coilwright.winding;

import java.util.List;

/** A wave winding's commutator pitch (K ± m)/p must be whole. */
final class CommutatorPitchWhole implements Rules.BlockingRule {
    static final String ID = "commutator-pitch-whole";

    @Override
    public List<Finding> check(Draft draft) {
        if (draft.spec().type() != WindingType.WAVE || draft.commutatorPitch().isPresent()) {
            return List.of();
        }
        int k = draft.bars();
        int p = draft.polePairs();
        int m = draft.plex();
        Direction direction = draft.direction();
        var other = Draft.wavePitch(k, p, m, direction.reversed());
        String need = Words.article(Words.plex(m)) + " wave on " + 2 * p + " poles needs " + need(p, m);
        String way = "; " + nearest(draft) + " would do";
        if (other.isPresent()) {
            String sign = direction == Direction.PROGRESSIVE ? "+" : "-";
            return List.of(Finding.error(
                    ID,
                    "commutator pitch would be (" + k + " " + sign + " " + m + ")/" + p + ", not whole",
                    "wound " + direction.reversed().word() + " the pitch is " + other.getAsInt() + "; else " + need
                            + way,
                    References.THERAJA));
        }
        return List.of(Finding.error(
                ID,
                "commutator pitch would be " + k + "/" + p + " ± " + m + "/" + p + ", not whole",
                need + way,
                References.THERAJA));
    }

    private static String need(int p, int m) {
        if (p == 2) {
            return (m % 2 == 0 ? "an even" : "an odd") + " number of bars";
        }
        if (m % p == 0) {
            return "a number of bars that " + p + " divides";
        }
        return "a multiple of " + p + " bars, " + m + " more or " + m + " less";
    }

    private static boolean works(int bars, int p, int m) {
        return bars > m
                && (Draft.wavePitch(bars, p, m, Direction.PROGRESSIVE).isPresent()
                        || Draft.wavePitch(bars, p, m, Direction.RETROGRESSIVE).isPresent());
    }

    private static String nearest(Draft draft) {
        int p = draft.polePairs();
        int m = draft.plex();
        int below = draft.bars() - 1;
        while (below >= 2 && !works(below, p, m)) {
            below--;
        }
        int above = draft.bars() + 1;
        while (!works(above, p, m)) {
            above++;
        }
        String high = withDead(draft, above);
        return below < 2 ? high : withDead(draft, below) + " or " + high;
    }

    private static String withDead(Draft draft, int bars) {
        int dead = draft.positions() - bars;
        return dead > 0 ? bars + " (" + Words.count(dead, "dead coil") + ")" : Integer.toString(bars);
    }
}
