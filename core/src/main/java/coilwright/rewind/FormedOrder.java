package coilwright.rewind;

import coilwright.rewind.WorkStep.End;
import coilwright.rewind.WorkStep.Kind;
import coilwright.rewind.WorkStep.Side;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Formed coils, put in slot after slot. A bottom side goes in at once. A top side goes in when every side that belongs
 * beneath it in its slot is in; until then it stays lifted. A lifted side is lowered when, besides, the bottom sides
 * of all slots that its end connections lie over are in, since nothing can be slid under them afterwards. Common
 * practice.
 */
final class FormedOrder {
    private final Winding winding;
    private final StepList out;
    private final Stages stages;
    private final RoundTheCore round;
    private final SlotStack stack;
    private final List<CoilGroup> order;
    private final int[] lastBottom;
    private final List<Waiting> waiting = new ArrayList<>();
    private final List<WorkOrder.Lifted> lifted = new ArrayList<>();

    /** A group whose top sides are lifted. */
    private static final class Waiting {
        final CoilGroup group;
        final int since;
        final int passed;
        int freeAfter;

        Waiting(CoilGroup group, int since, int passed) {
            this.group = group;
            this.since = since;
            this.passed = passed;
        }
    }

    FormedOrder(Winding winding, StepList out, Stages stages) {
        this.winding = winding;
        this.out = out;
        this.stages = stages;
        this.round = RoundTheCore.of(winding);
        this.stack = new SlotStack(winding);
        this.order = round.byBottomSlot(CoilGroup.of(winding));
        this.lastBottom = round.lastBottom(order);
    }

    RoundTheCore round() {
        return round;
    }

    /** Every side that was lifted, in the order of lifting. */
    List<WorkOrder.Lifted> lay() {
        for (int i = 0; i < order.size(); i++) {
            boolean end = i == order.size() - 1;
            place(order.get(i));
            if (end && !waiting.isEmpty()) {
                stages.testSoFar("All bottom sides are in: test before the lifted sides are lowered over them");
            }
            lower(i);
            if (!end) {
                stages.next();
            }
        }
        stages.wedge();
        lifted.sort(Comparator.comparingInt(WorkOrder.Lifted::liftedAt));
        return lifted;
    }

    private void place(CoilGroup g) {
        StepDraft step = out.add(Kind.PLACE).coils(g.numbers());
        List<Integer> separators = new ArrayList<>();
        put(g, End.BOTTOM, step, separators);
        boolean fits = stack.readyFor(g.topSlot(), g.layer(End.TOP));
        if (fits) {
            put(g, End.TOP, step, separators);
        } else {
            g.sides(End.TOP).forEach(step::lift);
            waiting.add(new Waiting(g, step.number, passed(g)));
        }
        step.text("Put in " + named(g) + ": bottom " + sides(g) + " into slot " + g.bottomSlot() + layers(g, End.BOTTOM)
                + (fits
                        ? ", top " + sides(g) + " into slot " + g.topSlot() + layers(g, End.TOP)
                        : "; the top " + sides(g) + ", for slot " + g.topSlot() + layers(g, End.TOP) + ", "
                                + (g.coils().size() == 1 ? "stays" : "stay") + " lifted"));
        separate(step, separators);
        if (g.coils().stream().anyMatch(Coil::isDead)) {
            step.remark(Stages.deadRemark(g.coils()));
        }
        stages.laid(g.numbers());
        free(step.number);
        full(step, g.topSlot());
        if (g.topSlot() != g.bottomSlot()) {
            full(step, g.bottomSlot());
        }
    }

    private void put(CoilGroup g, End end, StepDraft step, List<Integer> separators) {
        int slot = g.slot(end);
        for (Side s : g.sides(end)) {
            step.side(s);
            stack.put(slot, s.layer());
            if (stack.layerFull(slot, s.layer()) && stack.anyAbove(slot, s.layer())) {
                separators.add(slot);
            }
        }
    }

    private void separate(StepDraft step, List<Integer> slots) {
        for (int slot : slots) {
            step.separator(slot);
        }
        if (!slots.isEmpty()) {
            step.remark("Separator in "
                    + NumberRuns.of("slot", slots.stream().distinct().toList()) + ".");
        }
    }

    private void full(StepDraft step, int slot) {
        if (stack.full(slot)) {
            stages.full(slot);
            step.remark("Slot " + slot + " is full.");
        }
    }

    /** The last place in the order that brings a bottom side under the end connections of a group's top sides. */
    private int passed(CoilGroup g) {
        int last = -1;
        int span = Math.floorMod(round.sign() * (g.bottomSlot() - g.topSlot()), round.slots());
        for (int i = 0; i < Math.max(1, span); i++) {
            int slot = winding.armature().wrapSlot(g.topSlot() + round.sign() * i);
            last = Math.max(last, lastBottom[slot]);
        }
        return last;
    }

    private void free(int step) {
        for (Waiting w : waiting) {
            if (w.freeAfter == 0 && stack.readyFor(w.group.topSlot(), w.group.layer(End.TOP))) {
                w.freeAfter = step;
            }
        }
    }

    /** Lowers what can be lowered after this place in the order, slot by slot, the deeper layer first. */
    private void lower(int place) {
        boolean again = true;
        while (again) {
            Map<List<Integer>, List<Waiting>> bySlot = new LinkedHashMap<>();
            for (Waiting w : waiting) {
                if (w.freeAfter > 0 && w.passed <= place) {
                    bySlot.computeIfAbsent(List.of(w.group.topSlot(), w.group.layer(End.TOP)), k -> new ArrayList<>())
                            .add(w);
                }
            }
            bySlot.values().forEach(this::lowerInto);
            again = !bySlot.isEmpty();
        }
    }

    private void lowerInto(List<Waiting> groups) {
        CoilGroup first = groups.get(0).group;
        StepDraft step = out.add(Kind.LOWER);
        List<Integer> numbers = new ArrayList<>();
        List<Integer> separators = new ArrayList<>();
        for (Waiting w : groups) {
            numbers.addAll(w.group.numbers());
            put(w.group, End.TOP, step, separators);
            for (Side s : w.group.sides(End.TOP)) {
                // A lap side follows its wave side in this same step.
                int free = s.layer() == w.group.layer(End.TOP) ? w.freeAfter : step.number;
                lifted.add(new WorkOrder.Lifted(s, w.since, free, step.number));
            }
        }
        step.coils(numbers);
        step.text("Lower the top " + (numbers.size() == 1 ? "side" : "sides") + " of " + NumberRuns.of("coil", numbers)
                + " into slot " + first.topSlot() + layers(first, End.TOP));
        separate(step, separators);
        waiting.removeAll(groups);
        free(step.number);
        full(step, first.topSlot());
    }

    private String named(CoilGroup g) {
        if (winding.sets().size() == 1) {
            return NumberRuns.of("coil", g.numbers());
        }
        List<String> out = new ArrayList<>();
        for (int set = 0; set < winding.sets().size(); set++) {
            int mine = set;
            List<Integer> numbers = g.coils().stream()
                    .filter(c -> c.set() == mine)
                    .map(Coil::number)
                    .toList();
            if (!numbers.isEmpty()) {
                out.add(NumberRuns.of(winding.sets().get(set).type().word() + " coil", numbers));
            }
        }
        return String.join(" and ", out);
    }

    private String layers(CoilGroup g, End end) {
        if (winding.layers() == 2) {
            return "";
        }
        List<Integer> layers = g.sides(end).stream().map(Side::layer).distinct().toList();
        return layers.size() == 1 ? " (layer " + layers.get(0) + ")" : " (layers " + NumberRuns.of(layers) + ")";
    }

    private static String sides(CoilGroup g) {
        return g.coils().size() == 1 ? "side" : "sides";
    }
}
