package coilwright.network;

import java.util.Arrays;

/**
 * Currents in links.
 *
 * <p>Links that form no ring carry what Kirchhoff's current law leaves to them. In a ring of links any circulating
 * current would do; given is the share that links of equal small resistance would take, which is also the one of least
 * sum of squares.
 */
final class LinkCurrents {
    private LinkCurrents() {}

    static boolean[] linkBridges(Network network) {
        int m = network.branchCount();
        int[] a = new int[m];
        int[] b = new int[m];
        boolean[] counts = new boolean[m];
        for (int e = 0; e < m; e++) {
            Branch branch = network.branch(e);
            a[e] = branch.from();
            b[e] = branch.to();
            counts[e] = branch.isLink();
        }
        return Bridges.of(network.nodeCount(), a, b, counts);
    }

    /**
     * Puts the link currents in their places.
     *
     * @param surplus current that arrives at each node by ordinary branches and feeds
     * @param currents currents of all branches; those of links are written
     */
    static void write(Network network, double[] surplus, double[] currents) {
        int n = network.nodeCount();
        int m = network.branchCount();
        int[] a = new int[m];
        int[] b = new int[m];
        double[] g = new double[m];
        Parts groups = new Parts(n);
        boolean any = false;
        for (int e = 0; e < m; e++) {
            Branch branch = network.branch(e);
            a[e] = branch.from();
            b[e] = branch.to();
            if (branch.isLink()) {
                g[e] = 1;
                groups.join(a[e], b[e]);
                any = true;
            }
        }
        if (!any) {
            return;
        }
        boolean[] grounded = new boolean[n];
        for (int v = 0; v < n; v++) {
            grounded[v] = groups.find(v) == v;
        }
        double[] x = Arrays.copyOf(surplus, n);
        StarMesh.of(grounded, a, b, g).solve(x, new double[n]);
        for (int e = 0; e < m; e++) {
            if (g[e] != 0) {
                currents[e] = x[a[e]] - x[b[e]];
            }
        }
    }
}
