package coilwright.network;

import java.util.Arrays;

/** The edges of a multigraph whose removal cuts a part in two. */
final class Bridges {
    private Bridges() {}

    /**
     * Marks the bridges by a depth-first search that needs no call stack.
     *
     * @param n number of vertices
     * @param a one end of each edge
     * @param b other end of each edge
     * @param counts which edges are there at all
     */
    static boolean[] of(int n, int[] a, int[] b, boolean[] counts) {
        int m = counts.length;
        int[] start = new int[n + 1];
        for (int e = 0; e < m; e++) {
            if (counts[e] && a[e] != b[e]) {
                start[a[e] + 1]++;
                start[b[e] + 1]++;
            }
        }
        for (int v = 0; v < n; v++) {
            start[v + 1] += start[v];
        }
        int[] next = Arrays.copyOf(start, n);
        int[] edges = new int[start[n]];
        for (int e = 0; e < m; e++) {
            if (counts[e] && a[e] != b[e]) {
                edges[next[a[e]]++] = e;
                edges[next[b[e]]++] = e;
            }
        }
        System.arraycopy(start, 0, next, 0, n);
        int[] seen = new int[n];
        int[] low = new int[n];
        int[] stack = new int[n];
        int[] by = new int[n];
        boolean[] bridge = new boolean[m];
        int clock = 0;
        for (int root = 0; root < n; root++) {
            if (seen[root] != 0) {
                continue;
            }
            int top = 0;
            stack[0] = root;
            by[root] = -1;
            seen[root] = low[root] = ++clock;
            while (top >= 0) {
                int v = stack[top];
                if (next[v] < start[v + 1]) {
                    int e = edges[next[v]++];
                    int w = a[e] == v ? b[e] : a[e];
                    if (e == by[v]) {
                        continue;
                    }
                    if (seen[w] == 0) {
                        seen[w] = low[w] = ++clock;
                        by[w] = e;
                        stack[++top] = w;
                    } else {
                        low[v] = Math.min(low[v], seen[w]);
                    }
                } else {
                    top--;
                    if (top >= 0) {
                        int u = stack[top];
                        low[u] = Math.min(low[u], low[v]);
                        if (low[v] > seen[u]) {
                            bridge[by[v]] = true;
                        }
                    }
                }
            }
        }
        return bridge;
    }
}
