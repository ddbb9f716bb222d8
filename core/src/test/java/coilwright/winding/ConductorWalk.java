package coilwright.winding;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;

/**
 * The textbooks' own way to a winding table, written without the model: number the conductors 1..Z round the armature,
 * odd on top and even beneath, and walk on by back pitch and front pitch until every conductor is met. The coil with
 * top conductor 2k − 1 starts at bar k; where a coil ends, the next one starts. (NIMI, Electrician (CITS) Trade Theory,
 * vol. 2, pp. 158 and 161; Bakshi, Electrical Machines I, Exs 1.21 and 1.23.)
 */
final class ConductorWalk {
    /** One line of the table; bar 0 stands for a lead cut off. */
    record Row(int top, int bottom, int topSlot, int bottomSlot, int topBar, int bottomBar) {}

    final TreeMap<Integer, Row> rows = new TreeMap<>();

    /** The top conductors in series order, one list for each closed circuit. */
    final List<List<Integer>> circuits = new ArrayList<>();

    private final int conductors;
    private final int slots;
    private final int[] numberAmongLive;
    private final List<Integer> liveTops = new ArrayList<>();

    /**
     * Walks round.
     *
     * @param conductors all of them, dead ones included
     * @param back back pitch, counted over all conductors, as the coils lie
     * @param resultant back pitch and signed front pitch together, counted over live conductors alone
     * @param deadTops top conductors of the dead coils
     * @param offset bars by which conductor 1 is moved on from bar 1
     */
    ConductorWalk(int conductors, int slots, int back, int resultant, Set<Integer> deadTops, int offset) {
        this.conductors = conductors;
        this.slots = slots;
        numberAmongLive = new int[conductors + 2];
        for (int c = 1; c <= conductors; c += 2) {
            if (deadTops.contains(c)) {
                int bottom = around(c + back, conductors);
                rows.put(c, new Row(c, bottom, slotOf(c), slotOf(bottom), 0, 0));
            } else {
                liveTops.add(c);
                numberAmongLive[c] = 2 * liveTops.size() - 1;
            }
        }
        int z = 2 * liveTops.size();
        for (int start : liveTops) {
            if (rows.containsKey(start)) {
                continue;
            }
            List<Integer> circuit = new ArrayList<>();
            int top = start;
            do {
                circuit.add(top);
                int bottom = around(top + back, conductors);
                int nextNumber = around(numberAmongLive[top] + resultant, z);
                int next = liveTops.get((nextNumber - 1) / 2);
                rows.put(top, new Row(top, bottom, slotOf(top), slotOf(bottom), bar(top, offset), bar(next, offset)));
                top = next;
            } while (!rows.containsKey(top));
            if (top != start) {
                throw new AssertionError("the walk from " + start + " ran into " + top);
            }
            circuits.add(circuit);
        }
    }

    /** By the books' rules: back pitch 2·u·throw + 1; lap pitches differ by 2m; wave pitches average (Z ± 2m)/P. */
    static int resultantByTheBooks(boolean lap, int liveConductors, int poles, int plex, boolean progressive) {
        int turn = progressive ? 2 * plex : -2 * plex;
        return lap ? turn : 2 * ((liveConductors + turn) / poles);
    }

    private int bar(int topConductor, int offset) {
        return around((numberAmongLive[topConductor] + 1) / 2 + offset, liveTops.size());
    }

    private int slotOf(int conductor) {
        int perSlot = conductors / slots;
        int slot = 1;
        for (int last = perSlot; last < conductor; last += perSlot) {
            slot++;
        }
        return slot;
    }

    private static int around(int number, int count) {
        int n = number;
        while (n > count) {
            n -= count;
        }
        while (n < 1) {
            n += count;
        }
        return n;
    }
}
