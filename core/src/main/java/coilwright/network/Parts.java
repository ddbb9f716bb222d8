package coilwright.network;

import java.util.Arrays;

/** Disjoint sets of the numbers 0 to n − 1. */
final class Parts {
    private final int[] parent;
    private int count;

    Parts(int n) {
        parent = new int[n];
        reset();
    }

    private Parts(Parts other) {
        parent = other.parent.clone();
        count = other.count;
    }

    Parts copy() {
        return new Parts(this);
    }

    void reset() {
        for (int i = 0; i < parent.length; i++) {
            parent[i] = i;
        }
        count = parent.length;
    }

    int find(int i) {
        int root = i;
        while (parent[root] != root) {
            parent[root] = parent[parent[root]];
            root = parent[root];
        }
        return root;
    }

    /** Joins two sets; the lower root becomes the root of both. Returns whether they were apart. */
    boolean join(int a, int b) {
        int ra = find(a);
        int rb = find(b);
        if (ra == rb) {
            return false;
        }
        parent[Math.max(ra, rb)] = Math.min(ra, rb);
        count--;
        return true;
    }

    int count() {
        return count;
    }

    /** The set of each number; sets are numbered from zero in the order of their lowest members. */
    int[] numbered() {
        int[] number = new int[parent.length];
        Arrays.fill(number, -1);
        int next = 0;
        for (int i = 0; i < parent.length; i++) {
            int root = find(i);
            if (number[root] < 0) {
                number[root] = next++;
            }
            number[i] = number[root];
        }
        return number;
    }
}
