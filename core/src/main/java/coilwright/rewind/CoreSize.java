package coilwright.rewind;

/**
 * The core as measured.
 *
 * @param lengthMm stack length along the shaft, vents and end insulation included
 * @param diameterMm over the teeth
 * @param slotDepthMm from the core's surface to the slot's floor
 * @param shaftMm diameter over the shaft and its insulation at the end turns, 0 where it is not in the way
 */
public record CoreSize(double lengthMm, double diameterMm, double slotDepthMm, double shaftMm) {
    /**
     * Checks the sizes.
     *
     * @param lengthMm stack length along the shaft, vents and end insulation included
     * @param diameterMm over the teeth
     * @param slotDepthMm from the core's surface to the slot's floor
     * @param shaftMm diameter over the shaft and its insulation at the end turns, 0 where it is not in the way
     * @throws IllegalArgumentException when one is out of range
     */
    public CoreSize {
        Require.positive("core length", lengthMm, "mm");
        Require.positive("core diameter", diameterMm, "mm");
        Require.positive("slot depth", slotDepthMm, "mm");
        Require.notNegative("shaft diameter", shaftMm, "mm");
        if (diameterMm - 2 * slotDepthMm <= shaftMm) {
            throw new IllegalArgumentException("core of " + Format.number(diameterMm) + " mm with slots "
                    + Format.number(slotDepthMm) + " mm deep leaves "
                    + Format.number(diameterMm - 2 * slotDepthMm) + " mm for a shaft of " + Format.number(shaftMm)
                    + " mm: measure the diameter and the depth again");
        }
    }

    /** {@return diameter of the circle through the middle of the slots, mm} */
    public double slotPitchCircleMm() {
        return diameterMm - slotDepthMm;
    }
}
