package coilwright.bench;

/**
 * Two places joined: an equalizer, touching bars, a short within or between coils, a ground.
 *
 * @param a one place
 * @param b the other place
 * @param ohms resistance of the joint, 0 or more
 */
public record Bond(Point a, Point b, double ohms) {
    /**
     * Checks the values.
     *
     * @param a one place
     * @param b the other place
     * @param ohms resistance of the joint, 0 or more
     * @throws IllegalArgumentException when the places are one, or the resistance is out of range
     */
    public Bond {
        if (a.equals(b)) {
            throw new IllegalArgumentException(a + " is joined to itself: name two places");
        }
        if (!(ohms >= 0) || Double.isInfinite(ohms)) {
            throw new IllegalArgumentException(
                    "the bond from " + a + " to " + b + " has " + ohms + " ohm, but must have 0 or more");
        }
    }

    /**
     * {@return two places joined with no resistance}
     *
     * @param a one place
     * @param b the other
     */
    public static Bond direct(Point a, Point b) {
        return new Bond(a, b, 0);
    }
}
