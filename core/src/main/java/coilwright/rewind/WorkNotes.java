package coilwright.rewind;

import coilwright.rewind.WorkStep.Kind;
import coilwright.rewind.WorkStep.Side;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Predicate;

/** What to know before the work begins. */
final class WorkNotes {
    private WorkNotes() {}

    static List<String> formed(
            Winding winding, RoundTheCore round, List<WorkStep> steps, List<WorkOrder.Lifted> lifted) {
        List<String> out = new ArrayList<>();
        out.add("Coils go in " + round.word() + ", seen from the commutator end, slot after slot towards their bottom"
                + " sides, beginning with "
                + NumberRuns.of("coil", first(steps, Kind.PLACE).coils()) + ".");
        if (winding.layers() > 2) {
            out.add("Four layers, from the floor up: lap bottom sides (layer 4), wave bottom sides (3), wave top sides"
                    + " (2), lap top sides (1). A lap and a wave coil that share both slots go in together.");
        }
        if (lifted.isEmpty()) {
            out.add("No side has to stay lifted.");
        } else {
            int last = steps(steps, Kind.PLACE)
                    .get(steps(steps, Kind.PLACE).size() - 1)
                    .number();
            List<Integer> toTheEnd = coils(lifted, l -> l.loweredAt() > last);
            List<Integer> onTheWay = coils(lifted, l -> l.loweredAt() <= last);
            if (!toTheEnd.isEmpty()) {
                out.add((toTheEnd.size() == 1
                                ? "The top side of the first coil (" + toTheEnd.get(0) + ") stays"
                                : "The top sides of the first " + toTheEnd.size() + " coils (" + NumberRuns.of(toTheEnd)
                                        + ") stay")
                        + " lifted to the end, since the bottom sides beneath come in last; tie up what is lifted no"
                        + " further out than needed.");
            }
            if (!onTheWay.isEmpty()) {
                out.add(
                        onTheWay.size() == 1
                                ? "The top side of one more coil waits lifted for some slots and is lowered on the way."
                                : "The top sides of " + onTheWay.size()
                                        + " more coils wait lifted for some slots and are lowered on the way.");
            }
        }
        common(winding, out);
        return out;
    }

    private static List<Integer> coils(List<WorkOrder.Lifted> lifted, Predicate<WorkOrder.Lifted> which) {
        return List.copyOf(new TreeSet<>(
                lifted.stream().filter(which).map(l -> l.side().coil()).toList()));
    }

    static List<String> hand(
            Winding winding, WindingWay way, RoundTheCore round, List<WorkStep> steps, Map<Integer, Integer> loops) {
        List<String> out = new ArrayList<>();
        String start = "beginning with "
                + NumberRuns.of("coil", first(steps, Kind.WIND).coils());
        if (way == WindingWay.COIL_BY_COIL) {
            out.add("Wire is wound straight into the slots, coil after coil " + round.word()
                    + ", seen from the commutator end, " + start
                    + ". The end turns pile up: the last coils lie over the"
                    + " first, and no coil comes out without those over it.");
        } else {
            out.add("Wire is wound straight into the slots, each coil followed by the one opposite to it across the"
                    + " shaft, pair after pair " + round.word() + ", seen from the commutator end, " + start
                    + ". The end turns stay in balance; no coil comes out without those over it."
                    + (winding.armature().slots() % 2 == 0
                            ? ""
                            : " With " + winding.armature().slots()
                                    + " slots the opposite coil lies half a slot off, and the last coil has none."));
        }
        List<Side> other = steps.stream()
                .flatMap(s -> s.sides().stream())
                .filter(s -> !s.asPlanned())
                .toList();
        if (!other.isEmpty()) {
            List<Integer> coils =
                    List.copyOf(new TreeSet<>(other.stream().map(Side::coil).toList()));
            out.add("What comes first into a slot lies at its floor, so the layers of the plan cannot all be kept: "
                    + coils.size() + " of " + winding.coils().size() + " coils (" + NumberRuns.of(coils)
                    + ") have a side in the other layer. \"Top\" and \"bottom\" name the two sides of a coil as in the"
                    + " plan, wherever they lie; leads and bars stay as planned.");
        }
        out.add("The top lead of a coil is its start, the bottom lead its finish. Wind every coil the same way round,"
                + " sleeve each lead, and mark it with coil, start or finish, and bar.");
        if (winding.sidesPerSlot() > 1) {
            out.add("Coils that share both slots are wound one after the other with a loop between them, or, where the"
                    + " leads are cut, together with as many wires in hand, each wire marked.");
        }
        if (!loops.isEmpty()) {
            out.add("A loop is drawn out to the bar where one coil ends and the next one starts ("
                    + (loops.size() == 1 ? "one loop" : loops.size() + " loops")
                    + "): loops in the order of the bars, none cut.");
        }
        out.add("Coils wound later are a little longer: readings that rise slowly in the order of winding are no"
                + " fault.");
        common(winding, out);
        return out;
    }

    private static void common(Winding winding, List<String> out) {
        List<Coil> half =
                winding.coils().stream().filter(c -> !c.isLive() && !c.isDead()).toList();
        if (!half.isEmpty()) {
            out.add("By the list "
                    + NumberRuns.of("coil", half.stream().map(Coil::number).toList())
                    + (half.size() == 1 ? " has" : " have")
                    + " one lead on no bar: find its bar first, or insulate its end.");
        }
        out.add("Leave slots open, the coils held down with a cord or a stick, until the coils in them have been"
                + " tested.");
    }

    private static List<WorkStep> steps(List<WorkStep> steps, Kind kind) {
        return steps.stream().filter(s -> s.kind() == kind).toList();
    }

    private static WorkStep first(List<WorkStep> steps, Kind kind) {
        return steps(steps, kind).get(0);
    }

    static List<String> cautions(WindingWay way) {
        List<String> out = new ArrayList<>();
        out.add("Wire ends spring and cut: eye protection"
                + (way.byHand() ? "; hands off a winding machine that turns." : "."));
        out.add("The growler is a mains magnet, and mains test lamps make the whole armature live: local electrical"
                + " codes, licensed practice.");
        out.add("After an insulation or high-potential test discharge the winding to the shaft before touching it.");
        out.add("Soldering, brazing and baking are hot work with fumes: ventilation, no varnish or solvent near a flame"
                + " or a hot oven, fire watch as local rules ask.");
        out.add("Varnish and solvents: gloves and ventilation, as the maker's safety sheet says.");
        out.add("Turning and undercutting: lathe rules, eye protection; mica and copper dust is not to be breathed:"
                + " a respirator and suction. No steel tool between soft copper bars but the one that cuts the mica.");
        return out;
    }
}
