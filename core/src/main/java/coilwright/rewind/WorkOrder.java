package coilwright.rewind;

import coilwright.rewind.WorkStep.Kind;
import coilwright.rewind.WorkStep.Side;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * The order of work for winding an armature: insulate, put in or wind the coils, wedge, connect and test, step by step.
 * Common practice; where the practice of the machine as found differs, do as found.
 *
 * @param winding what is wound
 * @param way how the coils come into the slots
 * @param steps in order, numbered from 1
 * @param lifted coil sides that stay out of their slots for a while, in the order of lifting; none where wound by hand
 * @param notes what to know beforehand about this winding
 */
public record WorkOrder(
        Winding winding, WindingWay way, List<WorkStep> steps, List<Lifted> lifted, List<String> notes) {

    /**
     * A coil side that stays lifted.
     *
     * @param side which
     * @param liftedAt number of the step in which its coil is put in
     * @param freeAfter number of the step after which every side that belongs beneath it in its slot is in; that of
     *     lowering itself where those sides are lowered just before it
     * @param loweredAt number of the step in which it is lowered
     */
    public record Lifted(Side side, int liftedAt, int freeAfter, int loweredAt) {}

    /**
     * Copies the lists.
     *
     * @param winding what is wound
     * @param way how the coils come into the slots
     * @param steps in order, numbered from 1
     * @param lifted coil sides that stay out of their slots for a while, in the order of lifting; none where wound by
     *     hand
     * @param notes what to know beforehand about this winding
     */
    public WorkOrder {
        Objects.requireNonNull(winding, "winding");
        Objects.requireNonNull(way, "way");
        steps = List.copyOf(steps);
        lifted = List.copyOf(lifted);
        notes = List.copyOf(notes);
    }

    /**
     * {@return the order of work without equalizers}
     *
     * @param winding the winding
     * @param way how the coils come into the slots
     * @throws IllegalArgumentException when the winding is not wound this way
     */
    public static WorkOrder of(Winding winding, WindingWay way) {
        return of(winding, way, List.of());
    }

    /**
     * {@return the order of work}
     *
     * @param winding the winding
     * @param way how the coils come into the slots
     * @param equalizers the bars that each equalizer joins, 1..K
     * @throws IllegalArgumentException when the winding is not wound this way, or an equalizer joins fewer than two
     *     bars or a bar that is not there
     */
    public static WorkOrder of(Winding winding, WindingWay way, List<List<Integer>> equalizers) {
        way.refusal(winding).ifPresent(reason -> {
            throw new IllegalArgumentException(reason);
        });
        equalizers.forEach(ring -> check(winding, ring));
        var out = new StepList();
        before(out);
        List<Lifted> lifted = List.of();
        Map<Integer, Integer> loops = Map.of();
        List<String> notes;
        var stages = new Stages(winding, out, way == WindingWay.OPPOSITE_PAIRS);
        if (way.byHand()) {
            var hand = HandOrder.of(winding, way, out, stages);
            loops = hand.lay(way);
            notes = WorkNotes.hand(winding, way, hand.round(), out.steps(), loops);
        } else {
            var formed = new FormedOrder(winding, out, stages);
            lifted = formed.lay();
            notes = WorkNotes.formed(winding, formed.round(), out.steps(), lifted);
        }
        boolean equalized = !equalizers.isEmpty() || winding.type() == WindingType.FROG_LEG;
        out.add(Kind.TEST)
                .tests(WorkTest.BLADE, WorkTest.OPEN, WorkTest.GROUND)
                .text("Test with all coils in and all leads free: now the blade is pulled over none but a coil that is"
                        + " shorted in itself, and such a coil can still be taken out");
        cutBack(winding, out);
        new LeadOrder(winding, loops, equalizers, out).connect();
        after(out, equalized);
        return new WorkOrder(winding, way, out.steps(), lifted, notes);
    }

    private static void check(Winding winding, List<Integer> ring) {
        int k = winding.armature().bars();
        if (ring.size() < 2) {
            throw new IllegalArgumentException("an equalizer joins " + ring + ", but needs at least two bars");
        }
        for (int bar : ring) {
            if (bar < 1 || bar > k) {
                throw new IllegalArgumentException(
                        "an equalizer joins bar " + bar + ", but the bars run from 1 to " + k);
            }
        }
    }

    private static void before(StepList out) {
        out.add(Kind.TEST)
                .tests(WorkTest.BARE_COMMUTATOR)
                .text("Test the bare commutator, clean and dry: bar to bar and every bar to the shaft; a fault found"
                        + " here after winding costs the winding");
        out.add(Kind.INSULATE)
                .text("Smooth burrs in the slots, then insulate slots, core ends and shaft; the slot insulation stands"
                        + " out at both ends and above the slot");
    }

    private static void cutBack(Winding winding, StepList out) {
        List<Integer> dead = winding.deadCoils().stream().map(Coil::number).toList();
        if (!dead.isEmpty()) {
            out.add(Kind.CUT_BACK)
                    .coils(dead)
                    .text("Cut back both ends of " + NumberRuns.of("dead coil", dead)
                            + ", insulate each by itself and tie it down; the coil stays in its slots for balance");
        }
    }

    private static void after(StepList out, boolean equalized) {
        out.add(Kind.TEST)
                .tests(WorkTest.DROP, WorkTest.GROUND)
                .text("Test before the leads are joined for good: lightly wedged leads read unevenly, but a crossed or"
                        + " reversed lead shows and can still be lifted out");
        out.add(Kind.JOIN)
                .text("Solder, braze, weld or stake the leads as the commutator was made; keep solder and flux from"
                        + " running behind the bars, and cut off what stands out");
        StepDraft joined = out.add(Kind.TEST)
                .tests(WorkTest.DROP, WorkTest.GROWLER_METER, WorkTest.GROUND)
                .text("Test the joints and what solder may have bridged: every reading is to be even with its like");
        if (equalized) {
            joined.remark("The winding is equalized: a growler blade now pulls at every slot and tells nothing.");
        } else {
            joined.tests(WorkTest.BLADE);
        }
        out.add(Kind.BAND).text("Band the end turns and the leads tightly, over insulation, as found");
        out.add(Kind.TEST)
                .tests(WorkTest.GROUND)
                .text("Test after banding: a band can press a coil on the core, and it is still off quickly");
        out.add(Kind.VARNISH)
                .text(
                        "Dry, varnish and bake as the maker of the varnish says; keep shaft, bearings and commutator clean");
        out.add(Kind.TEST)
                .tests(WorkTest.GROUND, WorkTest.INSULATION, WorkTest.DROP)
                .text("Test when cold after baking");
        out.add(Kind.FINISH)
                .text(
                        "Turn the commutator true, undercut the mica, break the edges of the bars, clean between the bars,"
                                + " and balance the armature");
        out.add(Kind.TEST)
                .tests(WorkTest.DROP, WorkTest.GROWLER_METER, WorkTest.GROUND, WorkTest.INSULATION)
                .text("Last test, and the readings to keep with the job")
                .remark("A high-potential test only by the standard agreed for the job, and last.");
    }

    /** {@return what can hurt someone in this work} */
    public List<String> cautions() {
        return WorkNotes.cautions(way);
    }

    /** {@return where the order comes from} */
    public Source source() {
        return Source.practice();
    }

    /** {@return the coil sides that come to lie in another layer than the plan has them, in the order of the work} */
    public List<Side> inOtherLayers() {
        return steps.stream()
                .flatMap(s -> s.sides().stream())
                .filter(s -> !s.asPlanned())
                .toList();
    }

    /** {@return the kinds of step that occur, in the order of their first one} */
    public Set<Kind> kinds() {
        Set<Kind> out = new LinkedHashSet<>();
        steps.forEach(s -> out.add(s.kind()));
        return out;
    }

    /**
     * {@return the steps of one kind, in order}
     *
     * @param kind which steps
     */
    public List<WorkStep> steps(Kind kind) {
        List<WorkStep> out = new ArrayList<>(steps);
        out.removeIf(s -> s.kind() != kind);
        return List.copyOf(out);
    }
}
