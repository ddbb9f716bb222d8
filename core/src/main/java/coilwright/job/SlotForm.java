package coilwright.job;

/** Shapes of slot. */
public enum SlotForm {
    /** Parallel walls and a flat floor. */
    RECTANGULAR,
    /** Walls that lean together towards the floor, so that the teeth are parallel. */
    PARALLEL_TOOTH,
    /** Parallel walls and a round floor. */
    ROUND_BOTTOM,
    /** A body under tooth tips that leave a narrow opening. */
    SEMI_CLOSED
}
