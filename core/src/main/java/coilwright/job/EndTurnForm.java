package coilwright.job;

/** How the coils go from slot to slot outside the core. */
public enum EndTurnForm {
    /** Wound by hand, taut from slot to slot. */
    HAND_WOUND,
    /** Formed coils with legs and a nose. */
    DIAMOND
}
