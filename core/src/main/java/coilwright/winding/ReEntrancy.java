package coilwright.winding;

import java.util.ArrayList;
import java.util.List;

/** How many closed circuits the winding makes: gcd(K, |yc|). */
final class ReEntrancy implements Rules.WindingRule {
    static final String ID = "re-entrancy";

    @Override
    public List<Finding> check(Winding winding) {
        List<Finding> out = new ArrayList<>();
        if (winding.type() == WindingType.LISTED) {
            return out;
        }
        int k = winding.armature().bars();
        for (CoilSet set : winding.sets()) {
            Pitches y = set.pitches().orElseThrow();
            int g = y.closures(k);
            String which = winding.sets().size() > 1 ? set.type().word() + " part " : "";
            String degree = switch (g) {
                case 1 -> "singly";
                case 2 -> "doubly";
                case 3 -> "triply";
                default -> g + "-fold";
            };
            out.add(Finding.note(
                    ID,
                    which + degree + " re-entrant: gcd(" + k + ", " + Math.abs(y.commutator()) + ") = " + g + ", so "
                            + (g == 1 ? "one closed circuit takes in every coil" : g + " separate closed circuits"),
                    References.ARNOLD));
        }
        return out;
    }
}
