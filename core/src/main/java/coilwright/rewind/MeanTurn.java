package coilwright.rewind;

/**
 * Mean length of one turn.
 *
 * @param lengthMm all round, mm
 * @param inCoreMm of that in the two slots, mm; the whole where it was measured
 * @param model how it was found
 */
public record MeanTurn(double lengthMm, double inCoreMm, String model) {
    /** Checks the lengths. */
    public MeanTurn {
        Require.positive("mean turn", lengthMm, "mm");
        Require.notNegative("length in the core", inCoreMm, "mm");
    }

    /**
     * Reckoned from the core: two lengths in the slots and one end turn at each end.
     *
     * @param throwSlots slots spanned
     */
    public static MeanTurn of(CoreSize core, int slots, int throwSlots, EndTurn endTurn) {
        double inCore = 2 * core.lengthMm();
        return new MeanTurn(inCore + 2 * endTurn.lengthMm(core, slots, throwSlots), inCore, endTurn.model());
    }

    /** As measured on an old turn, which takes over from any model. */
    public static MeanTurn measured(double lengthMm) {
        return new MeanTurn(lengthMm, lengthMm, "measured");
    }
}
