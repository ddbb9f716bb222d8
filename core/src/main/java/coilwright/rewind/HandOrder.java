package coilwright.rewind;

import coilwright.rewind.WorkStep.End;
import coilwright.rewind.WorkStep.Kind;
import coilwright.rewind.WorkStep.Side;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;

/**
 * Wire wound straight into the slots. Both sides of a coil go in together, so what comes first into a slot lies at its
 * floor, whatever the plan says. Common practice.
 */
final class HandOrder {
    private final Winding winding;
    private final StepList out;
    private final Stages stages;
    private final RoundTheCore round;
    private final SlotStack stack;
    private final int[] in;
    private final Map<Integer, Integer> loops = new LinkedHashMap<>();
    private Coil previous;

    /** Winds in the way round that keeps more sides in the layer of the plan. */
    static HandOrder of(Winding winding, WindingWay way, StepList out, Stages stages) {
        RoundTheCore usual = RoundTheCore.of(winding);
        var other = new RoundTheCore(usual.slots(), usual.from(), -usual.sign());
        boolean better = inOtherLayers(winding, way, other) < inOtherLayers(winding, way, usual);
        return new HandOrder(winding, better ? other : usual, out, stages);
    }

    private static long inOtherLayers(Winding winding, WindingWay way, RoundTheCore round) {
        var trial = new StepList();
        new HandOrder(winding, round, trial, new Stages(winding, trial, false)).lay(way);
        return trial.steps().stream()
                .flatMap(s -> s.sides().stream())
                .filter(s -> !s.asPlanned())
                .count();
    }

    private HandOrder(Winding winding, RoundTheCore round, StepList out, Stages stages) {
        this.winding = winding;
        this.out = out;
        this.stages = stages;
        this.round = round;
        this.stack = new SlotStack(winding);
        this.in = new int[winding.armature().slots() + 1];
    }

    RoundTheCore round() {
        return round;
    }

    /** Winds all; answers the coils that go on without a cut, each with the coil that follows it. */
    Map<Integer, Integer> lay(WindingWay way) {
        List<CoilGroup> order = order(way);
        for (int i = 0; i < order.size(); i++) {
            wind(order.get(i));
            if (i < order.size() - 1) {
                stages.next();
            }
        }
        stages.wedge();
        return loops;
    }

    private List<CoilGroup> order(WindingWay way) {
        List<CoilGroup> groups = new ArrayList<>(CoilGroup.of(winding));
        int first = groups.get(0).topSlot();
        Comparator<CoilGroup> inTurn = Comparator.<CoilGroup>comparingInt(g -> along(first, g.topSlot()))
                .thenComparingInt(g -> along(g.topSlot(), g.bottomSlot()));
        if (way == WindingWay.COIL_BY_COIL) {
            groups.sort(inTurn);
            return groups;
        }
        // The slot opposite: exactly so in an even number of slots, half a slot off in an odd one.
        int half = (round.slots() + 1) / 2;
        groups.sort(Comparator.<CoilGroup>comparingInt(g -> along(first, g.topSlot()) % half)
                .thenComparing(inTurn));
        return groups;
    }

    private int along(int from, int to) {
        return Math.floorMod(round.sign() * (to - from), round.slots());
    }

    private void wind(CoilGroup g) {
        StepDraft step = out.add(Kind.WIND).coils(g.numbers());
        boolean several = g.coils().size() > 1;
        step.text((several
                        ? "Wind " + NumberRuns.of("coil", g.numbers()) + " one after the other"
                        : "Wind coil " + g.coils().get(0).number())
                + " into slots " + g.topSlot() + " and " + g.bottomSlot() + ", starting at slot " + g.topSlot());
        List<Side> sides = new ArrayList<>();
        for (Coil c : g.coils()) {
            loop(c, step);
            sides.add(lay(c, End.TOP));
            sides.add(lay(c, End.BOTTOM));
        }
        sides.forEach(step::side);
        step.slots(List.of(g.topSlot(), g.bottomSlot()));
        places(step, sides);
        separators(step, g);
        if (g.coils().stream().anyMatch(Coil::isDead)) {
            step.remark(Stages.deadRemark(g.coils()));
        }
        stages.laid(g.numbers());
        for (int slot : new LinkedHashSet<>(List.of(g.topSlot(), g.bottomSlot()))) {
            if (in[slot] == stack.planned(slot)) {
                stages.full(slot);
                step.remark("Slot " + slot + " is full.");
            }
        }
    }

    /** Where the coil before ends on the bar on which this one starts, the wire need not be cut. */
    private void loop(Coil c, StepDraft step) {
        if (previous != null
                && previous.bottomBar().isPresent()
                && previous.bottomBar().equals(c.topBar())) {
            loops.put(previous.number(), c.number());
            step.loop(c.topBar().getAsInt());
        }
        previous = c;
    }

    private Side lay(Coil c, End end) {
        Side plan = CoilGroup.side(c, end);
        int lies = in[plan.slot()] < stack.bottoms(plan.slot()) ? 2 : 1;
        in[plan.slot()]++;
        return new Side(plan.coil(), plan.end(), plan.slot(), plan.layer(), lies);
    }

    private static void places(StepDraft step, List<Side> sides) {
        if (sides.stream().allMatch(Side::asPlanned)) {
            return;
        }
        if (sides.stream().allMatch(s -> s.lies() == 2)) {
            step.remark("Both sides lie at the floor.");
        } else if (sides.stream().allMatch(s -> s.lies() == 1)) {
            step.remark("Both sides lie over earlier coils.");
        } else if (sides.stream().noneMatch(Side::asPlanned)) {
            step.remark("The layers of the plan are exchanged.");
        } else {
            step.remark("Some sides lie in another layer than planned.");
        }
    }

    private void separators(StepDraft step, CoilGroup g) {
        List<Integer> slots = new ArrayList<>();
        for (int slot : new LinkedHashSet<>(List.of(g.topSlot(), g.bottomSlot()))) {
            int bottoms = stack.bottoms(slot);
            int mine = (int) g.coils().stream()
                    .mapToLong(
                            c -> (c.top().slot() == slot ? 1 : 0) + (c.bottom().slot() == slot ? 1 : 0))
                    .sum();
            if (in[slot] >= bottoms && in[slot] - mine < bottoms && stack.planned(slot) > in[slot]) {
                slots.add(slot);
                step.separator(slot);
            }
        }
        if (!slots.isEmpty()) {
            step.remark("Separator in " + NumberRuns.of("slot", slots) + ".");
        }
    }
}
