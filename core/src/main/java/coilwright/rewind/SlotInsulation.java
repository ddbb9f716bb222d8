package coilwright.rewind;

/**
 * What a slot holds beside wire.
 *
 * @param linerMm thickness of the liner on floor, walls and shoulders, 0 if none
 * @param separatorMm thickness between the two layers, 0 if none
 * @param wedgeMm height taken at the top of the body by wedge, top stick and folded liner, 0 if none
 */
public record SlotInsulation(double linerMm, double separatorMm, double wedgeMm) {
    /** Nothing but wire. */
    public static final SlotInsulation NONE = new SlotInsulation(0, 0, 0);

    /**
     * Checks the sizes.
     *
     * @param linerMm thickness of the liner on floor, walls and shoulders, 0 if none
     * @param separatorMm thickness between the two layers, 0 if none
     * @param wedgeMm height taken at the top of the body by wedge, top stick and folded liner, 0 if none
     * @throws IllegalArgumentException when one is negative
     */
    public SlotInsulation {
        Require.notNegative("liner", linerMm, "mm");
        Require.notNegative("separator", separatorMm, "mm");
        Require.notNegative("wedge", wedgeMm, "mm");
    }
}
