package coilwright.network;

/** One change to a network. Several are applied in the order given; branches keep their numbers. */
public sealed interface Change permits Change.Resistance, Change.Emf, Change.Addition {
    /**
     * A branch takes another resistance and keeps its source.
     *
     * @param branch number of the branch
     * @param ohms new resistance: zero for a link, infinity to open the branch
     */
    record Resistance(int branch, double ohms) implements Change {}

    /**
     * A branch takes another source and keeps its resistance.
     *
     * @param branch number of the branch
     * @param volts new source voltage
     */
    record Emf(int branch, double volts) implements Change {}

    /**
     * A branch is added, and takes the next number.
     *
     * @param branch the new branch
     */
    record Addition(Branch branch) implements Change {}

    /**
     * Gives a branch another resistance, in ohms.
     *
     * @param branch number of the branch
     * @param ohms zero for a link, infinity for an open branch
     * @return the change
     */
    static Change resistance(int branch, double ohms) {
        return new Resistance(branch, ohms);
    }

    /**
     * Gives a branch another source voltage, in volts.
     *
     * @param branch number of the branch
     * @param volts driving from its {@code from} to its {@code to}
     * @return the change
     */
    static Change emf(int branch, double volts) {
        return new Emf(branch, volts);
    }

    /**
     * Opens a branch.
     *
     * @param branch number of the branch
     * @return the change
     */
    static Change removed(int branch) {
        return new Resistance(branch, Double.POSITIVE_INFINITY);
    }

    /**
     * Adds a resistance between two nodes, in ohms; zero makes a link.
     *
     * @param from node at one end
     * @param to node at the other end
     * @param ohms 0 or more
     * @return the change
     */
    static Change added(int from, int to, double ohms) {
        return new Addition(new Branch(from, to, ohms, 0));
    }

    /**
     * Joins two nodes by a link.
     *
     * @param a number of one node
     * @param b number of the other node
     * @return the change
     */
    static Change linked(int a, int b) {
        return added(a, b, 0);
    }
}
