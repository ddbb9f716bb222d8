package coilwright.rewind;

import coilwright.rewind.WorkStep.End;
import coilwright.rewind.WorkStep.Side;
import coilwright.winding.Coil;
import coilwright.winding.CoilSet;
import coilwright.winding.CoilSide;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Coils that share both their slots, and so go in together. */
record CoilGroup(int topSlot, int bottomSlot, List<Coil> coils) {
    /** All groups of a winding, in order of their first coil. */
    static List<CoilGroup> of(Winding winding) {
        boolean asOne = setsReachAlike(winding);
        Map<List<Integer>, List<Coil>> together = new LinkedHashMap<>();
        for (Coil c : winding.coils()) {
            together.computeIfAbsent(
                            List.of(
                                    asOne ? 0 : c.set(),
                                    c.top().slot(),
                                    c.bottom().slot()),
                            k -> new ArrayList<>())
                    .add(c);
        }
        List<CoilGroup> out = new ArrayList<>();
        together.forEach((k, coils) -> out.add(new CoilGroup(k.get(1), k.get(2), List.copyOf(coils))));
        return out;
    }

    /** Whether every set has the same throw, so that a slot's coils of all sets fill the same two slots. */
    private static boolean setsReachAlike(Winding winding) {
        List<CoilSet> sets = winding.sets();
        if (sets.size() < 2) {
            return true;
        }
        int span = sets.get(0).pitches().orElseThrow().backSpan();
        return sets.stream().map(s -> s.pitches().orElseThrow()).allMatch(p -> p.backSpan() == span && !p.stepped());
    }

    /** The deepest layer of the sides of one end. */
    int layer(End end) {
        return sides(end).get(0).layer();
    }

    int slot(End end) {
        return end == End.TOP ? topSlot : bottomSlot;
    }

    List<Integer> numbers() {
        return coils.stream().map(Coil::number).toList();
    }

    /** The sides of one end, each in the layer of the plan, the deepest first. */
    List<Side> sides(End end) {
        return coils.stream()
                .map(c -> side(c, end))
                .sorted(Comparator.comparingInt(Side::layer).reversed())
                .toList();
    }

    static Side side(Coil coil, End end) {
        CoilSide s = end == End.TOP ? coil.top() : coil.bottom();
        return new Side(coil.number(), end, s.slot(), s.layer(), s.layer());
    }
}
