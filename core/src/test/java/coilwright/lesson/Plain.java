package coilwright.lesson;

import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.SlotAlignment;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.List;

/**
 * A winding table by plain counting, from the definitions alone. Shares nothing with the code under test but the records
 * that say what is wound.
 *
 * @param rows one for every coil: top slot, bottom slot, top bar, bottom bar; bars are 0 for a dead coil
 * @param yc commutator pitch, signed
 * @param y1 positions spanned at the back
 * @param u coil sides per slot and layer
 */
record Plain(Armature armature, WindingSpec.Regular spec, List<int[]> rows, int yc, int y1, int u) {
    static Plain of(Armature a, WindingSpec.Regular spec) {
        int s = a.slots();
        int k = a.bars();
        int q = k + spec.deadCoils().size();
        if (q % s != 0) {
            throw new IllegalArgumentException(q + " coils over " + s + " slots");
        }
        int u = q / s;
        int sign = spec.direction().sign();
        int yc = spec.type() == WindingType.LAP ? sign * spec.plex() : steps(k, a.poles() / 2, sign * spec.plex());
        int y1 = spec.span() instanceof CoilSpan.Positions p
                ? p.positions()
                : u * (spec.span() instanceof CoilSpan.Throw t ? t.slots() : Math.max(1, s / a.poles()));
        List<int[]> rows = new ArrayList<>();
        int rank = 0;
        for (int i = 0; i < q; i++) {
            int[] row = {i / u + 1, (i + y1) % q / u + 1, 0, 0};
            if (!spec.deadCoils().contains(i + 1)) {
                int top = Math.floorMod(rank + spec.leadOffset(), k);
                row[2] = top + 1;
                row[3] = Math.floorMod(top + yc, k) + 1;
                rank++;
            }
            rows.add(row);
        }
        return new Plain(a, spec, rows, yc, y1, u);
    }

    /** The step that comes out past or short of the first bar after so many steps, by trying; 0 where none does. */
    static int steps(int bars, int polePairs, int past) {
        for (int step = 1; step <= bars + Math.abs(past); step++) {
            int at = 0;
            for (int i = 0; i < polePairs; i++) {
                at += step;
            }
            if (at == bars + past) {
                return step;
            }
        }
        return 0;
    }

    /** Rings met when every coil is followed from its top bar to its bottom bar. */
    int rings() {
        int k = armature.bars();
        int[] next = new int[k + 1];
        for (int[] r : rows) {
            if (r[2] > 0) {
                if (next[r[2]] != 0) {
                    return -1;
                }
                next[r[2]] = r[3];
            }
        }
        boolean[] seen = new boolean[k + 1];
        int n = 0;
        for (int bar = 1; bar <= k; bar++) {
            if (!seen[bar]) {
                n++;
                for (int at = bar; !seen[at]; at = next[at]) {
                    seen[at] = true;
                }
            }
        }
        return n;
    }

    /** Half the parallel paths: how often the coils' voltages, laid end to end as vectors, go once round. */
    int turnsOfTheVoltages() {
        double turns = 0;
        for (int[] r : rows) {
            if (r[2] > 0) {
                double t = (double) (r[3] - r[2]) * armature.polePairs() / armature.bars();
                turns += t - Math.rint(t);
            }
        }
        return (int) Math.round(Math.abs(turns));
    }

    double slotAngle(int slot) {
        return (slot - 1) * 360.0 / armature.slots();
    }

    double barAngle(int bar) {
        return (bar - 1 + (armature.slotOneInLineWith() == SlotAlignment.MICA ? 0.5 : 0)) * 360.0 / armature.bars();
    }
}
