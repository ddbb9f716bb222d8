package coilwright.bench;

import coilwright.network.Solution;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import java.util.ArrayList;
import java.util.List;

/**
 * Where a steel blade is pulled down over an armature in a growler: over each slot in which the current that circulates
 * through a short makes a net number of ampere-conductors, at the armature angle where it makes most.
 *
 * <p>Resistance alone limits the current in this model; leakage makes it smaller in practice, in all slots alike.
 */
public final class GrowlerBlade {
    /** Share of one shorted coil's pull below which a blade is taken to lie still. */
    static final double LEAST_PULL = 0.1;

    private GrowlerBlade() {}

    /**
     * The pull over one slot.
     *
     * @param slot 1..S
     * @param pull ampere-conductors, relative to those of one coil shorted within itself with a whole face's flux
     * @param clockDegrees where the slot stands when it is pulled most, clockwise from straight up
     */
    public record SlotPull(int slot, double pull, double clockDegrees) {
        /** {@return whether the blade hums} */
        public boolean felt() {
            return pull >= LEAST_PULL;
        }
    }

    /**
     * {@return the pull over every slot, in order of number}
     *
     * @param armature the armature as it is on the bench
     * @param growler faces of the growler
     */
    public static List<SlotPull> pulls(BenchArmature armature, Growler growler) {
        Armature a = armature.winding().armature();
        double[] most = new double[a.slots() + 1];
        double[] at = new double[a.slots() + 1];
        int turns = 2 * a.slots();
        for (int i = 0; i < turns; i++) {
            double angle = i * 360.0 / turns;
            double[] net = slotConductors(armature, growler, angle);
            for (int s = 1; s <= a.slots(); s++) {
                double pull = Math.abs(net[s]) * armature.soundOhms();
                if (pull > most[s] * (1 + 1e-9) + 1e-12) {
                    most[s] = pull;
                    at[s] = angle;
                }
            }
        }
        List<SlotPull> out = new ArrayList<>();
        for (int s = 1; s <= a.slots(); s++) {
            double clock = at[s] + a.slotCentre(s);
            out.add(new SlotPull(s, most[s], clock - 360 * Math.floor(clock / 360)));
        }
        return out;
    }

    /**
     * {@return the slots over which the blade hums}
     *
     * @param armature the armature as it is on the bench
     * @param growler faces of the growler
     */
    public static List<Integer> slots(BenchArmature armature, Growler growler) {
        return pulls(armature, growler).stream()
                .filter(SlotPull::felt)
                .map(SlotPull::slot)
                .toList();
    }

    /**
     * {@return whether the blade hums everywhere, so that it tells nothing: equalizers, or a winding that equalizes
     * itself}
     *
     * @param sound the armature as it should be
     * @param growler faces of the growler
     */
    public static boolean useless(BenchArmature sound, Growler growler) {
        return 2 * slots(sound, growler).size() > sound.winding().armature().slots();
    }

    private static double[] slotConductors(BenchArmature armature, Growler growler, double angle) {
        Armature a = armature.winding().armature();
        BenchNetwork bench = BenchNetwork.of(
                armature, c -> growler.coilVolts(a, armature.winding().coil(c.coil()), angle));
        Solution solution = bench.network().solve();
        double[] net = new double[a.slots() + 1];
        for (BenchNetwork.Segment s : bench.segments()) {
            Coil coil = armature.winding().coil(s.coil());
            double ampereTurns = solution.current(s.branch())
                    * s.share()
                    * armature.coil(s.coil()).turns();
            net[coil.top().slot()] += ampereTurns;
            net[coil.bottom().slot()] -= ampereTurns;
        }
        return net;
    }
}
