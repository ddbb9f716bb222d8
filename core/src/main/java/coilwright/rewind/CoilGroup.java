package coilwright.rewind;

import coilwright.rewind.WorkStep.End;
import coilwright.rewind.WorkStep.Side;
import coilwright.winding.Coil;
import coilwright.winding.CoilSide;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Coils of one set that share both their slots, and so go in together. */
record CoilGroup(int set, int topSlot, int bottomSlot, List<Coil> coils) {
    /** All groups of a winding, in order of their first coil. */
    static List<CoilGroup> of(Winding winding) {
        Map<List<Integer>, List<Coil>> together = new LinkedHashMap<>();
        for (Coil c : winding.coils()) {
            together.computeIfAbsent(
                            List.of(c.set(), c.top().slot(), c.bottom().slot()), k -> new ArrayList<>())
                    .add(c);
        }
        List<CoilGroup> out = new ArrayList<>();
        together.forEach((k, coils) -> out.add(new CoilGroup(k.get(0), k.get(1), k.get(2), List.copyOf(coils))));
        return out;
    }

    int topLayer() {
        return coils.get(0).top().layer();
    }

    int bottomLayer() {
        return coils.get(0).bottom().layer();
    }

    List<Integer> numbers() {
        return coils.stream().map(Coil::number).toList();
    }

    /** The sides of one end, each in the layer of the plan. */
    List<Side> sides(End end) {
        return coils.stream().map(c -> side(c, end)).toList();
    }

    static Side side(Coil coil, End end) {
        CoilSide s = end == End.TOP ? coil.top() : coil.bottom();
        return new Side(coil.number(), end, s.slot(), s.layer(), s.layer());
    }
}
