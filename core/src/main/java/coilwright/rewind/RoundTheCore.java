package coilwright.rewind;

import coilwright.rewind.WorkStep.End;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The way round the core in which coils follow each other.
 *
 * @param slots number of slots
 * @param from slot in which the first bottom side lies
 * @param sign +1 clockwise, −1 anticlockwise
 */
record RoundTheCore(int slots, int from, int sign) {
    /**
     * The way round that keeps fewer sides lifted, clockwise where both keep as many: towards the bottom sides, so that
     * each coil's bottom side goes in ahead of the top sides that lie on it.
     */
    static RoundTheCore of(Winding winding) {
        List<CoilGroup> groups = CoilGroup.of(winding);
        int from = groups.get(0).bottomSlot();
        var clockwise = new RoundTheCore(winding.armature().slots(), from, 1);
        var anticlockwise = new RoundTheCore(winding.armature().slots(), from, -1);
        return anticlockwise.lifted(groups) < clockwise.lifted(groups) ? anticlockwise : clockwise;
    }

    /** Slots from the first one on. */
    int distance(int slot) {
        return Math.floorMod(sign * (slot - from), slots);
    }

    String word() {
        return sign > 0 ? "clockwise" : "anticlockwise";
    }

    /** The groups bottom slot by bottom slot, in each the deepest layer first. */
    List<CoilGroup> byBottomSlot(List<CoilGroup> groups) {
        List<CoilGroup> out = new ArrayList<>(groups);
        out.sort(Comparator.<CoilGroup>comparingInt(g -> distance(g.bottomSlot()))
                .thenComparing(Comparator.<CoilGroup>comparingInt(g -> g.layer(End.BOTTOM))
                        .reversed())
                .thenComparing(Comparator.<CoilGroup>comparingInt(
                                g -> Math.floorMod(sign * (g.bottomSlot() - g.topSlot()), slots))
                        .reversed()));
        return out;
    }

    /** For each slot the place in the order of the last bottom side that comes into it; the first where none does. */
    int[] lastBottom(List<CoilGroup> order) {
        int[] last = new int[slots + 1];
        for (int i = 0; i < order.size(); i++) {
            last[order.get(i).bottomSlot()] = i;
        }
        return last;
    }

    private int lifted(List<CoilGroup> groups) {
        List<CoilGroup> order = byBottomSlot(groups);
        int[] last = lastBottom(order);
        int n = 0;
        for (int i = 0; i < order.size(); i++) {
            if (last[order.get(i).topSlot()] > i) {
                n += order.get(i).coils().size();
            }
        }
        return n;
    }
}
