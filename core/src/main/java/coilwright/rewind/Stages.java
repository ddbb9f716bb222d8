package coilwright.rewind;

import coilwright.rewind.WorkStep.Kind;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Tests and wedges between the coils: after every pole pitch of slots, while a fault is still cheap to mend. */
final class Stages {
    private static final int FEWEST = 3;

    private final StepList out;
    private final int every;
    private final List<Integer> untested = new ArrayList<>();
    private final List<Integer> unwedged = new ArrayList<>();
    private int groups;

    Stages(Winding winding, StepList out, boolean even) {
        this.out = out;
        Armature a = winding.armature();
        int perSlot = Math.max(1, CoilGroup.of(winding).size() / a.slots());
        int pitch = Math.max(FEWEST, a.slots() / a.poles());
        this.every = perSlot * (even ? pitch + pitch % 2 : pitch);
    }

    /** A group of coils has come in. */
    void laid(List<Integer> coils) {
        untested.addAll(coils);
        groups++;
    }

    void full(int slot) {
        unwedged.add(slot);
    }

    /** Tests and wedges when enough coils have come in. */
    void next() {
        if (groups >= every) {
            testSoFar("Test before going on");
            wedge();
        }
    }

    void testSoFar(String why) {
        if (untested.isEmpty()) {
            return;
        }
        Collections.sort(untested);
        out.add(Kind.TEST)
                .coils(untested)
                .tests(WorkTest.OPEN, WorkTest.GROUND, WorkTest.BETWEEN_COILS)
                .text(why + ": " + NumberRuns.of("coil", untested)
                        + ", each lead against its other end, against the core, and against the coils beside it");
        untested.clear();
        groups = 0;
    }

    /** Closes the slots that are full, after a last test of the coils in them. */
    void wedge() {
        testSoFar("Test before the slots are closed");
        if (unwedged.isEmpty()) {
            return;
        }
        Collections.sort(unwedged);
        out.add(Kind.WEDGE)
                .slots(unwedged)
                .text("Fold the slot insulation over and drive the wedges into " + NumberRuns.of("slot", unwedged)
                        + "; no wedge may stand above the core");
        unwedged.clear();
    }

    static String deadRemark(List<Coil> coils) {
        List<Integer> dead =
                coils.stream().filter(Coil::isDead).map(Coil::number).toList();
        return (dead.size() == 1 ? "Coil " + dead.get(0) + " is dead" : "Coils " + NumberRuns.of(dead) + " are dead")
                + ": no lead to any bar.";
    }
}
