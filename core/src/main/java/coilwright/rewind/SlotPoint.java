package coilwright.rewind;

/**
 * A place in a slot, seen along the shaft.
 *
 * @param xMm from the slot's centre line, mm, to the right
 * @param yMm above the slot's floor, mm, towards the air gap
 */
public record SlotPoint(double xMm, double yMm) {
    double distance(SlotPoint other) {
        return Math.hypot(xMm - other.xMm, yMm - other.yMm);
    }
}
