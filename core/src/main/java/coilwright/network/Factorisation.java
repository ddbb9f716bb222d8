package coilwright.network;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicReferenceArray;

/**
 * A network made ready: links contracted, parts told apart, one node of each part grounded and the conductance matrix
 * factorised. Every later question costs two sweeps over the sparse factor, and small changes cost less.
 *
 * <p>The work for one branch (the voltages caused by one ampere through it) is kept once it has been asked for.
 */
public final class Factorisation {
    private final Network network;
    private final Branch[] branches;
    /** Node after contraction of the links, per node. */
    private final int[] joined;

    private final int joinedCount;
    /** Ends of each branch after contraction. */
    private final int[] from;

    private final int[] to;
    /** Conductance of each branch; zero for links and open branches. */
    private final double[] conductance;
    /** Part of each contracted node. */
    private final int[] part;

    private final int partCount;
    private final StarMesh factor;
    private final double typicalResistance;
    private final AtomicReferenceArray<double[]> columns;
    private volatile boolean[] bridges;
    private volatile boolean[] linkBridges;
    private volatile double[] ownVoltages;

    Factorisation(Network network) {
        this.network = network;
        branches = network.branches().toArray(Branch[]::new);
        int m = branches.length;
        Parts links = new Parts(network.nodeCount());
        for (Branch branch : branches) {
            if (branch.isLink()) {
                links.join(branch.from(), branch.to());
            }
        }
        joined = links.numbered();
        joinedCount = links.count();
        from = new int[m];
        to = new int[m];
        conductance = new double[m];
        Parts parts = new Parts(joinedCount);
        double[] total = new double[joinedCount];
        double sum = 0;
        int finite = 0;
        for (int e = 0; e < m; e++) {
            Branch branch = branches[e];
            from[e] = joined[branch.from()];
            to[e] = joined[branch.to()];
            if (branch.isLink() || branch.isOpen()) {
                continue;
            }
            double g = branch.conductance();
            conductance[e] = g;
            sum += branch.resistance();
            finite++;
            if (from[e] != to[e]) {
                parts.join(from[e], to[e]);
                total[from[e]] += g;
                total[to[e]] += g;
            }
        }
        typicalResistance = finite == 0 ? 1 : sum / finite;
        part = parts.numbered();
        partCount = parts.count();
        factor = StarMesh.of(grounded(total), from, to, conductance);
        columns = new AtomicReferenceArray<>(m);
    }

    /** Grounds the best-tied node of each part, so that a poorly tied one never carries the voltages of the rest. */
    private boolean[] grounded(double[] total) {
        int[] best = new int[partCount];
        Arrays.fill(best, -1);
        for (int v = 0; v < joinedCount; v++) {
            if (best[part[v]] < 0 || total[v] > total[best[part[v]]]) {
                best[part[v]] = v;
            }
        }
        boolean[] grounded = new boolean[joinedCount];
        for (int v : best) {
            grounded[v] = true;
        }
        return grounded;
    }

    /** {@return the network that was factorised} */
    public Network network() {
        return network;
    }

    /** {@return number of parts that no branch joins to one another; a node without branches is a part} */
    public int partCount() {
        return partCount;
    }

    /**
     * {@return whether branches or links join two nodes}
     *
     * @param a number of one node
     * @param b number of the other node
     * @throws IllegalArgumentException if a node is not there
     */
    public boolean connected(int a, int b) {
        return part[joined(a)] == part[joined(b)];
    }

    /**
     * {@return whether opening the branch would part the network: a branch that is not open and whose ends nothing else
     * joins}
     *
     * @param branch number of the branch
     * @throws IllegalArgumentException if there is no such branch
     */
    public boolean isBridge(int branch) {
        network.checkBranch(branch);
        return branches[branch].isLink() ? linkBridges()[branch] && partsWithout(branch) : bridges()[branch];
    }

    private boolean partsWithout(int link) {
        Parts rest = new Parts(network.nodeCount());
        for (int e = 0; e < branches.length; e++) {
            if (e != link && !branches[e].isOpen()) {
                rest.join(branches[e].from(), branches[e].to());
            }
        }
        return rest.find(branches[link].from()) != rest.find(branches[link].to());
    }

    /**
     * {@return resistance between two nodes in ohms, the sources at rest; empty when nothing joins the two}
     *
     * @param a number of one node
     * @param b number of the other node
     * @throws IllegalArgumentException if a node is not there
     */
    public OptionalDouble resistance(int a, int b) {
        int p = joined(a);
        int q = joined(b);
        if (part[p] != part[q]) {
            return OptionalDouble.empty();
        }
        if (p == q) {
            return OptionalDouble.of(0);
        }
        double[] x = pairColumn(p, q);
        return OptionalDouble.of(x[p] - x[q]);
    }

    /**
     * {@return voltages and currents under some feeds together with the network's own sources}
     *
     * @param feeds currents and voltages fed, none for the sources alone
     * @throws IllegalArgumentException if a feed names a node that is not there
     * @throws UnsolvableNetworkException if no voltages satisfy the feeds
     */
    public Solution solve(Feed... feeds) {
        return solve(List.of(feeds));
    }

    /**
     * {@return voltages and currents under some feeds together with the network's own sources}
     *
     * @param feeds currents and voltages fed, none for the sources alone
     * @throws IllegalArgumentException if a feed names a node that is not there
     * @throws UnsolvableNetworkException if no voltages satisfy the feeds
     */
    public Solution solve(List<Feed> feeds) {
        Fed fed = new Fed(this, feeds, true);
        Perturbation none = new Perturbation(this);
        if (none.solve(fed, false) == Perturbation.Outcome.UNSOLVABLE) {
            throw new UnsolvableNetworkException(none.trouble());
        }
        return none.solution(network, fed);
    }

    /**
     * {@return the network with some changes, solved from this factorisation}
     *
     * @param changes the changes, made in this order
     * @throws IllegalArgumentException if a change names a branch or a node that is not there, or a value out of range
     */
    public Modified with(List<Change> changes) {
        return new Modified(this, changes);
    }

    /**
     * {@return the network with some changes, solved from this factorisation}
     *
     * @param changes the changes, made in this order
     */
    public Modified with(Change... changes) {
        return with(List.of(changes));
    }

    /**
     * Readies a set of meter readings, to be worked out under very many small changes.
     *
     * @param readings what the meter is put to, and under which feed
     * @return the readings, ready to be worked out
     * @throws IllegalArgumentException if a reading or a feed names a node that is not there
     */
    public PreparedReadings prepare(List<Reading> readings) {
        return new PreparedReadings(this, readings);
    }

    int joined(int node) {
        network.checkNode(node);
        return joined[node];
    }

    int[] joined() {
        return joined;
    }

    int joinedCount() {
        return joinedCount;
    }

    int part(int joinedNode) {
        return part[joinedNode];
    }

    int[] part() {
        return part;
    }

    int from(int branch) {
        return from[branch];
    }

    int to(int branch) {
        return to[branch];
    }

    double conductance(int branch) {
        return conductance[branch];
    }

    Branch branch(int number) {
        return branches[number];
    }

    int branchCount() {
        return branches.length;
    }

    double typicalResistance() {
        return typicalResistance;
    }

    int factorSize() {
        return factor.nonZeros();
    }

    boolean[] bridges() {
        boolean[] known = bridges;
        if (known == null) {
            boolean[] counts = new boolean[branches.length];
            for (int e = 0; e < counts.length; e++) {
                counts[e] = conductance[e] != 0;
            }
            known = Bridges.of(joinedCount, from, to, counts);
            bridges = known;
        }
        return known;
    }

    /** The links that alone hold their two ends together, as far as links go. */
    boolean[] linkBridges() {
        boolean[] known = linkBridges;
        if (known == null) {
            known = LinkCurrents.linkBridges(network);
            linkBridges = known;
        }
        return known;
    }

    /** Voltages caused by one ampere in at the branch's {@code from} and out at its {@code to}. */
    double[] column(int branch) {
        double[] known = columns.get(branch);
        if (known == null) {
            known = pairColumn(from[branch], to[branch]);
            columns.set(branch, known);
        }
        return known;
    }

    /** Voltages caused by one ampere in at p and out at q; each part's ground takes what is left over. */
    double[] pairColumn(int p, int q) {
        double[] x = new double[joinedCount];
        x[p] += 1;
        x[q] -= 1;
        factor.solve(x, new double[joinedCount]);
        return x;
    }

    /** Voltages caused by the network's own sources. */
    double[] ownVoltages() {
        double[] known = ownVoltages;
        if (known == null) {
            known = new double[joinedCount];
            for (int e = 0; e < branches.length; e++) {
                double driven = conductance[e] * branches[e].emf();
                if (driven != 0 && from[e] != to[e]) {
                    known[from[e]] -= driven;
                    known[to[e]] += driven;
                }
            }
            factor.solve(known, new double[joinedCount]);
            ownVoltages = known;
        }
        return known;
    }
}
