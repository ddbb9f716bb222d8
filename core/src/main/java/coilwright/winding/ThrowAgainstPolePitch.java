package coilwright.winding;

import java.util.ArrayList;
import java.util.List;

/** The coil span against the pole pitch: chording factor, too long, too short. */
final class ThrowAgainstPolePitch implements Rules.WindingRule {
    static final String ID = "throw-against-pole-pitch";

    @Override
    public List<Finding> check(Winding winding) {
        List<Finding> out = new ArrayList<>();
        double pitch = winding.armature().polePitchSlots();
        for (CoilSet set : winding.sets()) {
            if (set.pitches().isEmpty()) {
                continue;
            }
            double span = set.pitches().get().meanThrow();
            double ratio = span / pitch;
            String which = winding.sets().size() > 1 ? set.type().word() + " coils: " : "";
            String facts = which + "coils span " + Words.slots(span) + ", the pole pitch is " + Words.slots(pitch)
                    + ", chording factor " + Words.rounded(chordingFactor(ratio), 3);
            int usual = usual(pitch);
            if (tooLong(span, pitch)) {
                out.add(Finding.warning(
                        ID,
                        facts
                                + "; longer than the pole pitch by a slot or more, which costs copper and adds no voltage",
                        "a throw of " + usual + " (1-" + (usual + 1) + ") would do",
                        References.EGYCON));
            } else if (tooShort(span, pitch)) {
                out.add(Finding.warning(
                        ID,
                        facts + "; shorter than two thirds of the pole pitch, so the coil sides lose voltage",
                        "a throw of " + usual + " (1-" + (usual + 1) + ") would do",
                        References.COMMON_PRACTICE));
            } else {
                out.add(Finding.note(ID, facts, References.CLAYTON));
            }
        }
        return out;
    }

    /** Whether the coils of a set pass without a warning. */
    static boolean suits(CoilSet set, double pitch) {
        return set.pitches()
                .map(pitches -> !tooLong(pitches.meanThrow(), pitch) && !tooShort(pitches.meanThrow(), pitch))
                .orElse(true);
    }

    private static boolean tooLong(double span, double pitch) {
        return span >= pitch + 1;
    }

    private static boolean tooShort(double span, double pitch) {
        return span / pitch < 2.0 / 3.0 && span < usual(pitch);
    }

    private static int usual(double pitch) {
        return Math.max(1, (int) Math.floor(pitch));
    }

    /** |sin(ratio · 90°)|, the fundamental of a coil's flux against full pitch. */
    static double chordingFactor(double ratio) {
        return Math.abs(Math.sin(ratio * Math.PI / 2));
    }
}
