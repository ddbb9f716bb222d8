package coilwright.fault;

/**
 * How likely each kind of fault is before any reading, when an armature comes to the bench. Common practice: opens,
 * shorts and bad joints make up most faults; crossed and misplaced leads follow a rewind. Each weight is shared evenly
 * among the places where the fault can be.
 */
final class Priors {
    static final double SOUND = 0.50;
    static final double OPEN = 0.09;
    static final double SHORTED_COIL = 0.07;
    static final double SHORTED_TURNS = 0.07;
    static final double HIGH_RESISTANCE = 0.06;
    static final double BAR_SHORT = 0.07;
    static final double SLOT_SHORT = 0.01;
    static final double GROUND = 0.04;
    static final double REVERSED = 0.015;
    static final double CROSSED = 0.025;
    static final double WRONG_BAR = 0.015;
    static final double WRONG_TURNS = 0.015;
    /** A second fault besides a first. */
    static final double SECOND = 0.15;
    /** A reading written down wrong. */
    static final double SLIP = 0.01;

    private Priors() {}
}
