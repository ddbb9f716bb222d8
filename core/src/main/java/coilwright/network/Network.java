package coilwright.network;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * Nodes and the branches between them. Immutable; {@link #builder()} makes one.
 *
 * <p>Nodes are numbered from zero and may bear labels. Branches are numbered from zero in the order added; several may
 * join the same two nodes, and one may start and end at the same node.
 */
public final class Network {
    private final List<String> labels;
    private final Map<String, Integer> byLabel;
    private final List<Branch> branches;

    private Network(List<String> labels, Map<String, Integer> byLabel, List<Branch> branches) {
        this.labels = labels;
        this.byLabel = byLabel;
        this.branches = branches;
    }

    /** {@return a builder without nodes} */
    public static Builder builder() {
        return new Builder();
    }

    /** {@return number of nodes} */
    public int nodeCount() {
        return labels.size();
    }

    /** {@return number of branches, open ones included} */
    public int branchCount() {
        return branches.size();
    }

    /** {@return the branches in the order of their numbers} */
    public List<Branch> branches() {
        return branches;
    }

    /**
     * {@return a branch by its number}
     *
     * @param number from 0
     * @throws IndexOutOfBoundsException if there is no such branch
     */
    public Branch branch(int number) {
        return branches.get(number);
    }

    /**
     * {@return the label of a node; one that was given none is called by its number}
     *
     * @param node number of the node
     * @throws IndexOutOfBoundsException if there is no such node
     */
    public String label(int node) {
        return labels.get(node);
    }

    /**
     * {@return the node that bears a label}
     *
     * @param label any text
     */
    public OptionalInt node(String label) {
        Integer node = byLabel.get(label);
        return node == null ? OptionalInt.empty() : OptionalInt.of(node);
    }

    /**
     * Works out, once, all that the feeds and the changes to come have in common.
     *
     * @return the network, ready to be solved again and again
     */
    public Factorisation factorised() {
        return new Factorisation(this);
    }

    /**
     * Solves for one set of feeds. To solve for several, {@linkplain #factorised() factorise} first.
     *
     * @param feeds currents and voltages fed, none for the sources alone
     * @return voltages and currents
     * @throws IllegalArgumentException if a feed names a node that is not there
     * @throws UnsolvableNetworkException if no voltages satisfy the feeds
     */
    public Solution solve(Feed... feeds) {
        return factorised().solve(feeds);
    }

    /**
     * {@return the network with some changes made, in the order given}
     *
     * @param changes the changes, made in this order
     * @throws IllegalArgumentException if a change names a branch or a node that is not there, or a value out of range
     */
    public Network with(List<Change> changes) {
        List<Branch> changed = new ArrayList<>(branches);
        for (Change change : changes) {
            apply(change, changed);
        }
        return new Network(labels, byLabel, Collections.unmodifiableList(changed));
    }

    void apply(Change change, List<Branch> changed) {
        if (change instanceof Change.Resistance to) {
            checkBranch(to.branch(), changed.size());
            changed.set(to.branch(), changed.get(to.branch()).withResistance(to.ohms()));
        } else if (change instanceof Change.Emf to) {
            checkBranch(to.branch(), changed.size());
            changed.set(to.branch(), changed.get(to.branch()).withEmf(to.volts()));
        } else if (change instanceof Change.Addition addition) {
            checkNode(addition.branch().from());
            checkNode(addition.branch().to());
            changed.add(addition.branch());
        }
    }

    void checkNode(int node) {
        if (node < 0 || node >= nodeCount()) {
            throw new IllegalArgumentException("no node " + node + ": the network has "
                    + (nodeCount() == 0 ? "none" : "nodes 0 to " + (nodeCount() - 1)));
        }
    }

    void checkBranch(int branch) {
        checkBranch(branch, branchCount());
    }

    private static void checkBranch(int branch, int count) {
        if (branch < 0 || branch >= count) {
            throw new IllegalArgumentException("no branch " + branch + ": the network has "
                    + (count == 0 ? "none" : "branches 0 to " + (count - 1)));
        }
    }

    /** Collects nodes and branches. Not for use by several threads. */
    public static final class Builder {
        private final List<String> labels = new ArrayList<>();
        private final Map<String, Integer> byLabel = new LinkedHashMap<>();
        private final List<Branch> branches = new ArrayList<>();

        private Builder() {}

        /**
         * Adds nodes labelled by their numbers.
         *
         * @param count how many, 0 or more
         * @return this builder
         */
        public Builder nodes(int count) {
            for (int i = 0; i < count; i++) {
                node(Integer.toString(labels.size()));
            }
            return this;
        }

        /**
         * {@return the number of the node with this label; adds the node if there is none}
         *
         * @param label any text
         */
        public int node(String label) {
            Integer known = byLabel.putIfAbsent(label, labels.size());
            if (known != null) {
                return known;
            }
            labels.add(label);
            return labels.size() - 1;
        }

        /**
         * Adds a branch and returns its number.
         *
         * @param branch the branch
         * @return its number, from 0
         * @throws IllegalArgumentException if an end is not a node
         */
        public int branch(Branch branch) {
            if (Math.max(branch.from(), branch.to()) >= labels.size()) {
                throw new IllegalArgumentException("branch from node " + branch.from() + " to node " + branch.to()
                        + ": there are " + labels.size() + " nodes, numbered from 0; add the node first");
            }
            branches.add(branch);
            return branches.size() - 1;
        }

        /**
         * Adds a resistance, in ohms, and returns the number of the branch.
         *
         * @param from node at one end
         * @param to node at the other end
         * @param ohms zero for a link, infinity for an open branch
         * @return its number, from 0
         */
        public int branch(int from, int to, double ohms) {
            return branch(new Branch(from, to, ohms, 0));
        }

        /**
         * Adds a resistance, in ohms, with a source, in volts, and returns the number of the branch.
         *
         * @param from node at one end
         * @param to node at the other end
         * @param ohms zero for a link, infinity for an open branch
         * @param emf source voltage, driving from {@code from} to {@code to}
         * @return its number, from 0
         */
        public int branch(int from, int to, double ohms, double emf) {
            return branch(new Branch(from, to, ohms, emf));
        }

        /**
         * Adds a branch of no resistance and returns its number.
         *
         * @param a number of one node
         * @param b number of the other node
         * @return its number, from 0
         */
        public int link(int a, int b) {
            return branch(new Branch(a, b, 0, 0));
        }

        /**
         * Makes the network. The builder may be used further.
         *
         * @return the network so far
         */
        public Network build() {
            return new Network(
                    List.copyOf(labels),
                    Collections.unmodifiableMap(new LinkedHashMap<>(byLabel)),
                    List.copyOf(branches));
        }
    }
}
