package coilwright.commutator;

/**
 * One reading of the dial gauge.
 *
 * @param bar bar under the gauge, from 1
 * @param heightMm gauge reading, mm; more means that the bar stands further out. Any zero will do.
 */
public record Reading(int bar, double heightMm) {
    /**
     * Checks the reading.
     *
     * @throws IllegalArgumentException when the bar is under 1 or the reading is no number
     */
    public Reading {
        if (bar < 1) {
            throw new IllegalArgumentException("bar is " + bar + ", but bars count from 1");
        }
        Text.finite("reading of bar " + bar, heightMm);
    }
}
