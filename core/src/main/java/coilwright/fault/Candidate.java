package coilwright.fault;

import coilwright.bench.Point;
import java.util.function.DoubleFunction;

/**
 * A fault whose size may be free: it is a fault for every share from 0 to 1 of its range.
 *
 * @param kind word of the kind
 * @param prior weight of this fault at this place before any reading
 * @param sized whether its size is free
 * @param fault the fault at a share of its range
 */
record Candidate(String kind, double prior, boolean sized, DoubleFunction<Fault> fault) {
    static final double LEAST_SHORTED = 0.15;
    static final double MOST_SHORTED = 0.95;
    static final double LEAST_JOINT = 0.25;
    static final double MOST_JOINT = 50;
    static final double FEWEST_TURNS = 0.50;
    static final double MOST_TURNS = 1.50;
    static final double LEAST_TURN_ERROR = 0.15;

    static Candidate fixed(Fault fault, double prior) {
        return new Candidate(fault.kind(), prior, false, share -> fault);
    }

    static Candidate shortedTurns(int coil, double prior) {
        return new Candidate("shorted-turns", prior, true, share -> {
            // Even steps in the conductance left, since that is what the readings follow.
            double low = 1 / (1 - LEAST_SHORTED);
            double high = 1 / (1 - MOST_SHORTED);
            return new Fault.ShortedTurns(coil, 1 - 1 / between(low, high, share));
        });
    }

    static Candidate highResistance(int coil, double soundOhms, double prior) {
        return new Candidate(
                "high-resistance",
                prior,
                true,
                share -> new Fault.HighResistance(coil, soundOhms * between(LEAST_JOINT, MOST_JOINT, share)));
    }

    static Candidate fewTurns(int coil, double prior) {
        return new Candidate(
                "wrong-turns",
                prior,
                true,
                share -> new Fault.WrongTurns(coil, between(FEWEST_TURNS, 1 - LEAST_TURN_ERROR, share)));
    }

    static Candidate manyTurns(int coil, double prior) {
        return new Candidate(
                "wrong-turns",
                prior,
                true,
                share -> new Fault.WrongTurns(coil, between(1 + LEAST_TURN_ERROR, MOST_TURNS, share)));
    }

    static Candidate groundedCoil(int coil, double prior) {
        return new Candidate("ground", prior, true, share -> groundedAt(coil, share));
    }

    /** A ground at a share of the stretch along a coil where it can be told from one at a bar. */
    static Fault groundedAt(int coil, double share) {
        return new Fault.Ground(new Point.Inside(coil, along(share)));
    }

    /** Place along a coil, its very ends aside. */
    static double along(double share) {
        return 0.02 + 0.96 * share;
    }

    private static double between(double low, double high, double share) {
        return low * Math.pow(high / low, share);
    }
}
