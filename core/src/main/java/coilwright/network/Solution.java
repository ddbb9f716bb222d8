package coilwright.network;

import java.util.List;
import java.util.OptionalDouble;

/** Voltages and currents of a network under given feeds. */
public final class Solution {
    private final Network network;
    private final List<Feed> feeds;
    private final double[] feedCurrents;
    private final double[] voltage;
    private final int[] reference;
    private volatile double[] currents;
    private volatile boolean[] linkBridges;

    Solution(Network network, List<Feed> feeds, double[] feedCurrents, double[] voltage, int[] reference) {
        this.network = network;
        this.feeds = feeds;
        this.feedCurrents = feedCurrents;
        this.voltage = voltage;
        this.reference = reference;
    }

    /** {@return the network that was solved, with its changes} */
    public Network network() {
        return network;
    }

    /** {@return the feeds it was solved for} */
    public List<Feed> feeds() {
        return feeds;
    }

    /**
     * {@return voltage of one node over another, in volts; empty when neither branches nor voltage feeds join the two,
     * so that either floats with regard to the other}
     *
     * @param a number of one node
     * @param b number of the other node
     * @throws IllegalArgumentException if a node is not there
     */
    public OptionalDouble voltage(int a, int b) {
        network.checkNode(a);
        network.checkNode(b);
        return reference[a] == reference[b] ? OptionalDouble.of(voltage[a] - voltage[b]) : OptionalDouble.empty();
    }

    /**
     * {@return voltage of a node, in volts, over the {@linkplain #reference(int) reference} of its part}
     *
     * @param node number of the node
     * @throws IllegalArgumentException if the node is not there
     */
    public double voltage(int node) {
        network.checkNode(node);
        return voltage[node];
    }

    /**
     * {@return the node from which the voltages in this node's part are counted: the one with the lowest number}
     * Branches, links and voltage feeds make a part. Two nodes with different references float with regard to one
     * another.
     *
     * @param node number of the node
     * @throws IllegalArgumentException if the node is not there
     */
    public int reference(int node) {
        network.checkNode(node);
        return reference[node];
    }

    /**
     * {@return current through a branch from its {@code from} to its {@code to}, in amperes; zero in an open branch} In
     * a ring of links, see {@link #currentIsCertain}, the share that equal small resistances would take.
     *
     * @param branch number of the branch
     * @throws IllegalArgumentException if there is no such branch
     */
    public double current(int branch) {
        network.checkBranch(branch);
        return currents()[branch];
    }

    /**
     * {@return whether the network determines the branch's current} It does not in a link that closes a ring of links,
     * around which any current could flow.
     *
     * @param branch number of the branch
     * @throws IllegalArgumentException if there is no such branch
     */
    public boolean currentIsCertain(int branch) {
        network.checkBranch(branch);
        if (!network.branch(branch).isLink()) {
            return true;
        }
        boolean[] known = linkBridges;
        if (known == null) {
            known = LinkCurrents.linkBridges(network);
            linkBridges = known;
        }
        return known[branch];
    }

    /**
     * {@return current that a feed drives into its {@code in} node, in amperes}
     *
     * @param feed position in {@link #feeds()}
     * @throws IndexOutOfBoundsException if there is no such feed
     */
    public double feedCurrent(int feed) {
        return feedCurrents[feed];
    }

    /** {@return largest failure of Kirchhoff's current law at any node, in amperes: the trace of rounding} */
    public double residual() {
        double[] surplus = feedSurplus();
        double[] i = currents();
        for (int e = 0; e < i.length; e++) {
            surplus[network.branch(e).from()] -= i[e];
            surplus[network.branch(e).to()] += i[e];
        }
        double most = 0;
        for (double s : surplus) {
            most = Math.max(most, Math.abs(s));
        }
        return most;
    }

    private double[] currents() {
        double[] known = currents;
        if (known == null) {
            known = new double[network.branchCount()];
            double[] surplus = feedSurplus();
            for (int e = 0; e < known.length; e++) {
                Branch branch = network.branch(e);
                if (!branch.isLink() && !branch.isOpen()) {
                    double i = (voltage[branch.from()] - voltage[branch.to()] + branch.emf()) / branch.resistance();
                    known[e] = i;
                    surplus[branch.from()] -= i;
                    surplus[branch.to()] += i;
                }
            }
            LinkCurrents.write(network, surplus, known);
            currents = known;
        }
        return known;
    }

    private double[] feedSurplus() {
        double[] surplus = new double[network.nodeCount()];
        for (int f = 0; f < feedCurrents.length; f++) {
            surplus[feeds.get(f).in()] += feedCurrents[f];
            surplus[feeds.get(f).out()] -= feedCurrents[f];
        }
        return surplus;
    }
}
