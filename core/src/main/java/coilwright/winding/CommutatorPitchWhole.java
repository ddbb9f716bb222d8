package coilwright.winding;

import java.util.ArrayList;
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
        if (other.isPresent()) {
            boolean more = direction == Direction.RETROGRESSIVE;
            return List.of(Finding.error(
                    ID,
                    "commutator pitch would be (" + k + " " + (more ? "-" : "+") + " " + m + ")/" + p + ", not whole",
                    "wound " + direction.reversed().word() + " the pitch is " + other.getAsInt() + "; "
                            + Words.article(direction.word()) + " " + Words.plex(m) + " wave on " + 2 * p
                            + " poles needs a multiple of " + p + " bars and " + m + (more ? " more; " : " less; ")
                            + nearest(draft, true),
                    References.THERAJA));
        }
        return List.of(Finding.error(
                ID,
                "commutator pitch would be " + k + "/" + p + " ± " + m + "/" + p + ", not whole",
                Words.article(Words.plex(m)) + " wave on " + 2 * p + " poles needs " + need(p, m) + "; "
                        + nearest(draft, false),
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

    /** The nearest numbers of bars below and above that would do, with the dead coils that leaves on this core. */
    private static String nearest(Draft draft, boolean sameDirection) {
        List<String> out = new ArrayList<>();
        int below = draft.bars() - 1;
        while (below >= 2 && !works(draft, below, sameDirection)) {
            below--;
        }
        if (below >= 2) {
            out.add(named(draft, below));
        }
        int above = draft.bars() + 1;
        while (above <= Armature.MAX_BARS && !works(draft, above, sameDirection)) {
            above++;
        }
        if (above <= Armature.MAX_BARS) {
            out.add(named(draft, above));
        }
        return String.join(" or ", out) + " would do";
    }

    private static boolean works(Draft draft, int bars, boolean sameDirection) {
        Direction direction = draft.direction();
        return draft.waveSteps(bars, direction) || (!sameDirection && draft.waveSteps(bars, direction.reversed()));
    }

    private static String named(Draft draft, int bars) {
        List<String> remarks = new ArrayList<>();
        int dead = draft.coilsToFill(bars) - bars;
        if (dead > 0 && ((draft.fitsSlots() && bars < draft.positions()) || dead <= draft.mostDead())) {
            remarks.add(Words.count(dead, "dead coil"));
        }
        if (!draft.waveSteps(bars, draft.direction())) {
            remarks.add("wound " + draft.direction().reversed().word());
        }
        return bars + (remarks.isEmpty() ? "" : " (" + String.join(", ", remarks) + ")");
    }
}
