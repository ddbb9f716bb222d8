package coilwright.drawing;

import coilwright.drawing.Overlay.Lead;
import coilwright.drawing.Overlay.Mark;
import coilwright.drawing.Overlay.Sample;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Lays a coil that is cut out over its winding. */
final class CutOutOverlay {
    private CutOutOverlay() {}

    static Overlay lay(Winding winding, CutOut cutOut) {
        Coil faulty = winding.coil(cutOut.coil());
        for (int bar : cutOut.bridge()) {
            if (bar < 1 || bar > winding.armature().bars()) {
                throw new IllegalArgumentException("there is no bar " + bar + ": bars run from 1 to "
                        + winding.armature().bars());
            }
        }
        Map<Integer, Mark> marks = new LinkedHashMap<>();
        for (Coil c : winding.coils()) {
            boolean cut = c.equals(faulty);
            boolean idle = !cut && cutOut.idle().contains(c.number());
            Role lead = cut ? Role.LIFTED : Role.COIL;
            marks.put(
                    c.number(),
                    new Mark(
                            c.number(),
                            "",
                            Caption.coil(c) + (cut ? "; cut out" : idle ? "; carries nothing" : ""),
                            cut ? Role.LIFTED : idle ? Role.IDLE : Role.QUIET,
                            List.of(new Lead(c.topBar(), c.topBar().isPresent() ? lead : Role.COIL)),
                            List.of(new Lead(c.bottomBar(), c.bottomBar().isPresent() ? lead : Role.COIL)),
                            cut && cutOut.cutThrough()));
        }
        cutOut.idle().forEach(winding::coil);
        List<Sample> legend = new ArrayList<>();
        legend.add(new Sample(Role.LIFTED, "faulty coil; ×: lead lifted and insulated"));
        legend.add(new Sample(Role.PLANNED_LEAD, "where the lead was (ring)"));
        List<String> notes = new ArrayList<>();
        notes.add("coil " + faulty.number() + ": lift the top lead from " + Caption.lead(faulty.topBar())
                + " and the bottom lead from " + Caption.lead(faulty.bottomBar()) + ", insulate both");
        if (cutOut.cutThrough()) {
            notes.add("cut coil " + faulty.number() + " through at the back end, insulate the ends");
        }
        if (cutOut.bridge().isEmpty()) {
            notes.add("join no bars");
        } else {
            legend.add(new Sample(Role.BRIDGE, "jumper"));
            notes.add("join bars " + cutOut.bridge().get(0) + " and "
                    + cutOut.bridge().get(1) + " by a jumper");
        }
        if (marks.values().stream().anyMatch(m -> m.look() == Role.IDLE)) {
            legend.add(new Sample(Role.IDLE, "carries nothing then"));
        }
        legend.add(new Sample(Role.QUIET, "unchanged"));
        return new Overlay(
                winding,
                marks,
                cutOut.bridge(),
                Optional.of(new Overlay.Words(
                        "Coil " + faulty.number() + " cut out",
                        "Emergency repair: coil " + faulty.number() + " cut out",
                        false,
                        legend,
                        notes,
                        "EMERGENCY MEASURE: rewind the armature as soon as it can be spared")));
    }
}
