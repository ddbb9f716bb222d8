package coilwright.commutator;

/**
 * One reading of the dial gauge.
 *
 * @param bar bar under the gauge, from 1
 * @param heightMm gauge reading, mm; more means that the bar stands further out. Any zero will do.
 */
public record Reading(int bar, double heightMm) {
    /** Largest gauge reading taken, mm either way; a dial gauge has no such travel. */
    public static final double MOST_MM = 100;

    /**
     * Checks the reading.
     *
     * @param bar bar under the gauge, from 1
     * @param heightMm gauge reading, mm; more means that the bar stands further out. Any zero will do.
     * @throws IllegalArgumentException when the bar is under 1 or the reading is no number or out of range
     */
    public Reading {
        if (bar < 1) {
            throw new IllegalArgumentException("bar is " + bar + ", but bars count from 1");
        }
        Text.finite("reading of bar " + bar, heightMm);
        if (Math.abs(heightMm) > MOST_MM) {
            throw new IllegalArgumentException("reading of bar " + bar + " is " + Text.mm(heightMm)
                    + ", but a gauge reads at most " + Text.mm(MOST_MM) + " either way: check the unit");
        }
    }
}
