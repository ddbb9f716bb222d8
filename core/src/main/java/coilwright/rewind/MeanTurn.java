package coilwright.rewind;

/**
 * Mean length of one turn.
 *
 * @param lengthMm all round, mm
 * @param inCoreMm of that in the two slots, mm; the whole where it was measured
 * @param model how it was found
 */
public record MeanTurn(double lengthMm, double inCoreMm, String model) {
    /**
     * Checks the lengths.
     *
     * @param lengthMm all round, mm
     * @param inCoreMm of that in the two slots, mm; the whole where it was measured
     * @param model how it was found
     * @throws IllegalArgumentException when the turn is not over 0 or the part in the core is negative
     */
    public MeanTurn {
        Require.positive("mean turn", lengthMm, "mm");
        Require.notNegative("length in the core", inCoreMm, "mm");
    }

    /**
     * {@return the mean turn reckoned from the core: two lengths in the slots and one end turn at each end}
     *
     * @param core sizes of the core
     * @param slots slots in the core
     * @param throwSlots slots spanned
     * @param endTurn form of the end turns
     */
    public static MeanTurn of(CoreSize core, int slots, int throwSlots, EndTurn endTurn) {
        double inCore = 2 * core.lengthMm();
        return new MeanTurn(inCore + 2 * endTurn.lengthMm(core, slots, throwSlots), inCore, endTurn.model());
    }

    /**
     * {@return the mean turn as measured on an old one, which takes over from any model}
     *
     * @param lengthMm whole length of one turn, mm
     */
    public static MeanTurn measured(double lengthMm) {
        return new MeanTurn(lengthMm, lengthMm, "measured");
    }
}
