package coilwright.winding;

import java.util.ArrayList;
import java.util.List;

/** Equal paths need S/a, K/a and p/a whole, a = half the parallel paths. */
final class Symmetry implements Rules.WindingRule {
    static final String ID = "symmetry";

    @Override
    public List<Finding> check(Winding winding) {
        if (winding.type() != WindingType.LAP && winding.type() != WindingType.WAVE) {
            return List.of();
        }
        int a = winding.parallelPaths().getAsInt() / 2;
        Armature arm = winding.armature();
        List<Finding> out = new ArrayList<>();
        check(out, "slots", arm.slots(), a, "the paths hold unequal numbers of coil sides under the poles");
        check(out, "bars", arm.bars(), a, "the paths hold unequal numbers of coils, and no exact equalizer fits");
        if (winding.type() == WindingType.WAVE) {
            check(out, "pole pairs", arm.polePairs(), a, "the paths meet different poles, and no exact equalizer fits");
        } else if (arm.polePairs() % a != 0) {
            out.add(Finding.note(
                    ID,
                    "pole pairs over pairs of paths is " + arm.polePairs() + "/" + a + ", not whole: the "
                            + a / arm.polePairs() + " interleaved windings share each pole pair, and only the brushes "
                            + "even out their currents",
                    References.ARNOLD));
        }
        return out;
    }

    private static void check(List<Finding> out, String what, int n, int a, String effect) {
        if (n % a != 0) {
            int below = n / a * a;
            out.add(Finding.warning(
                    ID,
                    what + " over pairs of paths is " + n + "/" + a + ", not whole: " + effect,
                    "for equal paths the number of " + what + " would be " + (below > 0 ? below + " or " : "")
                            + (below + a),
                    References.ARNOLD));
        }
    }
}
