package coilwright.network;

/**
 * A resistance in series with a source of voltage, between two nodes.
 *
 * <p>The source drives current from {@code from} to {@code to}: a positive {@code emf} makes {@code to} the higher of
 * the two when no current flows. The current, counted positive from {@code from} to {@code to} through the branch, is
 * (v<sub>from</sub> − v<sub>to</sub> + emf) / resistance.
 *
 * <p>Both ends may be the same node: such a branch carries emf / resistance and disturbs nothing else.
 *
 * @param from node the branch leaves, from zero
 * @param to node the branch reaches, from zero
 * @param resistance ohms: zero for a link, infinity for an open branch, else between 1e-30 and 1e30
 * @param emf volts, finite; zero in a link
 */
public record Branch(int from, int to, double resistance, double emf) {
    private static final double LEAST = 1e-30;
    private static final double MOST = 1e30;

    /**
     * Checks the ranges.
     *
     * @param from node the branch leaves, from zero
     * @param to node the branch reaches, from zero
     * @param resistance ohms: zero for a link, infinity for an open branch, else between 1e-30 and 1e30
     * @param emf volts, finite; zero in a link
     * @throws IllegalArgumentException if a value lies outside its range
     */
    public Branch {
        if (from < 0 || to < 0) {
            throw new IllegalArgumentException(
                    "branch from node " + from + " to node " + to + ": nodes are numbered from 0");
        }
        boolean ordinary = resistance >= LEAST && resistance <= MOST;
        if (!ordinary && resistance != 0 && resistance != Double.POSITIVE_INFINITY) {
            throw new IllegalArgumentException("branch from node " + from + " to node " + to + " has " + resistance
                    + " ohm: give 1e-30 to 1e30, 0 for a link or infinity for an open branch");
        }
        if (!Double.isFinite(emf)) {
            throw new IllegalArgumentException(
                    "branch from node " + from + " to node " + to + " has a source of " + emf + " V: give a number");
        }
        if (resistance == 0 && emf != 0) {
            throw new IllegalArgumentException("branch from node " + from + " to node " + to + " has a source of " + emf
                    + " V and no resistance: give it a resistance, or feed the two nodes with a voltage");
        }
    }

    /** {@return whether the branch has no resistance, so that its ends are one node} */
    public boolean isLink() {
        return resistance == 0;
    }

    /** {@return whether the branch is open, so that it carries no current} */
    public boolean isOpen() {
        return resistance == Double.POSITIVE_INFINITY;
    }

    Branch withResistance(double ohms) {
        return new Branch(from, to, ohms, emf);
    }

    Branch withEmf(double volts) {
        return new Branch(from, to, resistance, volts);
    }

    double conductance() {
        return 1 / resistance;
    }
}
