package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.Bond;
import coilwright.bench.CoilState;
import coilwright.bench.Point;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The parts that the bars fall into once two coils are open. With the first one open, a depth-first search finds the
 * coils that are then all that holds a part (bridges); opening one of these parts what hangs on it from the rest.
 */
final class Openings {
    private final int bars;
    private final Map<Integer, Integer> edgeOf = new LinkedHashMap<>();
    /** Bars at the ends of each coil or bond. */
    private final int[] a;

    private final int[] b;
    /** Where the edges of each bar start in the list of all bars' edges. */
    private final int[] start;

    private final int[] edges;

    Openings(BenchArmature armature) {
        bars = armature.winding().armature().bars();
        List<CoilState> coils = armature.coils().stream()
                .filter(c -> c.connected() && !c.open())
                .filter(c -> !c.topBar().equals(c.bottomBar()))
                .toList();
        List<Bond> bonds = armature.bonds().stream()
                .filter(x -> x.a() instanceof Point.Bar && x.b() instanceof Point.Bar)
                .toList();
        a = new int[coils.size() + bonds.size()];
        b = new int[a.length];
        int e = 0;
        for (CoilState c : coils) {
            edgeOf.put(c.coil(), e);
            a[e] = c.topBar().getAsInt();
            b[e++] = c.bottomBar().getAsInt();
        }
        for (Bond bond : bonds) {
            a[e] = ((Point.Bar) bond.a()).number();
            b[e++] = ((Point.Bar) bond.b()).number();
        }
        start = new int[bars + 2];
        for (e = 0; e < a.length; e++) {
            start[a[e] + 1]++;
            start[b[e] + 1]++;
        }
        for (int bar = 1; bar <= bars; bar++) {
            start[bar + 1] += start[bar];
        }
        edges = new int[2 * a.length];
        int[] next = start.clone();
        for (e = 0; e < a.length; e++) {
            edges[next[a[e]]++] = e;
            edges[next[b[e]]++] = e;
        }
    }

    /** The armature with one coil open. */
    One without(int coil) {
        return new One(edgeOf.getOrDefault(coil, -1));
    }

    /** One coil open, and another to be opened. */
    final class One {
        private final int[] part = new int[bars + 1];
        /** Order in which the search came to each bar, and the last to which it came beyond it. */
        private final int[] enter = new int[bars + 1];

        private final int[] last = new int[bars + 1];
        /** For each coil or bond that is all that holds a part, the first bar of that part; else 0. */
        private final int[] hangs = new int[a.length];

        private One(int open) {
            int[] low = new int[bars + 1];
            int[] by = new int[bars + 1];
            int[] stack = new int[bars];
            int[] next = start.clone();
            int clock = 0;
            for (int root = 1; root <= bars; root++) {
                if (enter[root] != 0) {
                    continue;
                }
                int top = 0;
                stack[0] = root;
                by[root] = -1;
                part[root] = root;
                enter[root] = low[root] = ++clock;
                while (top >= 0) {
                    int v = stack[top];
                    if (next[v] < start[v + 1]) {
                        int e = edges[next[v]++];
                        int w = a[e] == v ? b[e] : a[e];
                        if (e == open || e == by[v]) {
                            continue;
                        }
                        if (enter[w] == 0) {
                            enter[w] = low[w] = ++clock;
                            by[w] = e;
                            part[w] = root;
                            stack[++top] = w;
                        } else {
                            low[v] = Math.min(low[v], enter[w]);
                        }
                    } else {
                        last[v] = clock;
                        top--;
                        if (top >= 0) {
                            int u = stack[top];
                            low[u] = Math.min(low[u], low[v]);
                            if (low[v] > enter[u]) {
                                hangs[by[v]] = v;
                            }
                        }
                    }
                }
            }
        }

        /** The part that each bar, by number, belongs to once this coil is open too; not to be changed. */
        int[] partsWithout(int other) {
            int first = edgeOf.containsKey(other) ? hangs[edgeOf.get(other)] : 0;
            if (first == 0) {
                return part;
            }
            int[] out = Arrays.copyOf(part, bars + 1);
            for (int bar = 1; bar <= bars; bar++) {
                if (enter[bar] >= enter[first] && enter[bar] <= last[first]) {
                    out[bar] = bars + first;
                }
            }
            return out;
        }
    }
}
