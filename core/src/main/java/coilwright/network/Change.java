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

    /** Gives a branch another resistance, in ohms. */
    static Change resistance(int branch, double ohms) {
        return new Resistance(branch, ohms);
    }

    /** Gives a branch another source voltage, in volts. */
    static Change emf(int branch, double volts) {
        return new Emf(branch, volts);
    }

    /** Opens a branch. */
    static Change removed(int branch) {
        return new Resistance(branch, Double.POSITIVE_INFINITY);
    }

    /** Adds a resistance between two nodes, in ohms; zero makes a link. */
    static Change added(int from, int to, double ohms) {
        return new Addition(new Branch(from, to, ohms, 0));
    }

    /** Joins two nodes by a link. */
    static Change linked(int a, int b) {
        return added(a, b, 0);
    }
}
