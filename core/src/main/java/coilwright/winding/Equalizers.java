package coilwright.winding;

import java.util.List;

/** Whether equalizers are needed, possible, and where. */
final class Equalizers implements Rules.WindingRule {
    static final String ID = "equalizers";

    @Override
    public List<Finding> check(Winding winding) {
        Armature arm = winding.armature();
        int k = arm.bars();
        int p = arm.polePairs();
        return switch (winding.type()) {
            case LISTED -> List.of();
            case FROG_LEG ->
                List.of(Finding.note(
                        ID,
                        "a lap and a wave coil in series join bars " + k / p
                                + " apart with no net voltage: the winding equalizes itself",
                        References.PATENT_CH124206));
            case LAP -> List.of(lap(winding, k, p));
            case WAVE -> List.of(wave(winding, k, p));
        };
    }

    private static Finding lap(Winding winding, int k, int p) {
        if (p == 1) {
            return Finding.note(
                    ID,
                    "a lap winding on 2 poles has no two bars at one potential: nothing to equalize",
                    References.HAWKINS);
        }
        if (k % p != 0) {
            int below = k / p * p;
            return Finding.warning(
                    ID,
                    "equalizers are impossible: K/p = " + k + "/" + p
                            + " is not whole, so no two bars stand at one potential",
                    below + " or " + (below + p) + " bars would take equalizers",
                    References.HAWKINS);
        }
        String exact = winding.armature().slots() % p == 0
                ? ""
                : "; only nearly at one potential, as " + winding.armature().slots() + " slots do not repeat every two "
                        + "pole pitches";
        return Finding.note(
                ID,
                "equalizers are possible and advised for "
                        + winding.parallelPaths().getAsInt()
                        + " paths: they join bars K/p = " + k / p + " apart, " + p + " taps on each of up to " + k / p
                        + " rings" + exact,
                References.HAWKINS);
    }

    private static Finding wave(Winding winding, int k, int p) {
        int a = winding.parallelPaths().getAsInt() / 2;
        if (a == 1) {
            return Finding.note(ID, "a simplex wave has two paths only and needs no equalizers", References.HAWKINS);
        }
        if (winding.equalizerPitch().isPresent()) {
            return Finding.note(
                    ID,
                    "equalizers are possible: they join bars K/a = " + k / a + " apart, " + a + " taps on each ring",
                    References.ARNOLD);
        }
        return Finding.warning(
                ID,
                "no exact equalizer fits: K/a = " + k + "/" + a + " and p/a = " + p + "/" + a + " must both be whole",
                "share the current between the circuits by brushes of full width instead",
                References.ARNOLD);
    }
}
