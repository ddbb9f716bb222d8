package coilwright.winding;

import java.util.ArrayList;
import java.util.List;

/** Back and front pitch in conductors must both be odd, so that a top side always joins a bottom side. */
final class ConductorParity implements Rules.WindingRule {
    static final String ID = "parity";

    @Override
    public List<Finding> check(Winding winding) {
        List<Finding> out = new ArrayList<>();
        for (CoilSet set : winding.sets()) {
            if (set.pitches().isPresent()) {
                Pitches y = set.pitches().get();
                out.add(Finding.note(
                        ID,
                        "back pitch " + y.back() + " and front pitch " + y.front()
                                + " are both odd, so every top side joins bottom sides at both ends",
                        References.THERAJA));
            }
        }
        return out;
    }
}
