package coilwright.benchmark;

import java.util.Arrays;

/**
 * A time that was measured.
 *
 * @param nanos time of one go, nanoseconds, over 0
 * @param error how far goes lie apart, nanoseconds, not under 0
 */
record Measured(double nanos, double error) {
    /**
     * The median of times and half the range of their middle half, which a few goes held up by other work leave alone.
     *
     * @param nanos at least one
     */
    static Measured middle(double[] nanos) {
        double[] sorted = nanos.clone();
        Arrays.sort(sorted);
        int n = sorted.length;
        double median = (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
        return new Measured(median, (sorted[n - 1 - n / 4] - sorted[n / 4]) / 2);
    }
}
