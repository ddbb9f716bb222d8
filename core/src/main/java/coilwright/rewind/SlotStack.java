package coilwright.rewind;

import coilwright.winding.Coil;
import coilwright.winding.CoilSide;
import coilwright.winding.Winding;

/** How far each slot is filled, layer by layer, against what is to come into it. */
final class SlotStack {
    private final int layers;
    private final int[][] planned;
    private final int[][] in;

    SlotStack(Winding winding) {
        layers = winding.layers();
        planned = new int[winding.armature().slots() + 1][layers + 1];
        in = new int[winding.armature().slots() + 1][layers + 1];
        for (Coil c : winding.coils()) {
            count(c.top());
            count(c.bottom());
        }
    }

    private void count(CoilSide side) {
        planned[side.slot()][side.layer()]++;
    }

    void put(int slot, int layer) {
        in[slot][layer]++;
    }

    /** Whether every side that belongs beneath this layer of the slot is in. */
    boolean readyFor(int slot, int layer) {
        for (int l = layer + 1; l <= layers; l++) {
            if (in[slot][l] < planned[slot][l]) {
                return false;
            }
        }
        return true;
    }

    boolean layerFull(int slot, int layer) {
        return in[slot][layer] == planned[slot][layer];
    }

    boolean full(int slot) {
        return readyFor(slot, 0);
    }

    /** Sides that come to lie above this layer. */
    boolean anyAbove(int slot, int layer) {
        for (int l = layer - 1; l >= 1; l--) {
            if (planned[slot][l] > 0) {
                return true;
            }
        }
        return false;
    }

    /** Sides that the lower layer of a two-layer slot has in the plan. */
    int bottoms(int slot) {
        return planned[slot][layers];
    }

    int planned(int slot) {
        int n = 0;
        for (int l = 1; l <= layers; l++) {
            n += planned[slot][l];
        }
        return n;
    }
}
