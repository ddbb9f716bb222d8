package coilwright.bench;

import java.util.List;

/**
 * What a meter reads, or should read, between two bars.
 *
 * @param from bar under the first probe
 * @param to bar under the second probe
 * @param value volts or ohms; volts are V(from) − V(to)
 */
public record PairReading(int from, int to, double value) {
    /**
     * {@return size of the largest finite one of readings; 0 where there is none}
     *
     * @param readings volts or ohms
     */
    public static double largest(List<PairReading> readings) {
        return readings.stream()
                .mapToDouble(r -> Math.abs(r.value()))
                .filter(Double::isFinite)
                .max()
                .orElse(0);
    }

    /**
     * {@return a value in the scale of a run; off the meter's scale is so at any}
     *
     * @param value volts or ohms, infinite where the meter is off its scale
     * @param scale reading over value
     */
    public static double atScale(double value, double scale) {
        return Double.isInfinite(value) ? value : value * scale;
    }

    /**
     * {@return this reading in the scale of a run}
     *
     * @param scale reading over value
     */
    public PairReading atScale(double scale) {
        return new PairReading(from, to, atScale(value, scale));
    }

    /** {@return where the probes go} */
    public BenchTest.Pair pair() {
        return new BenchTest.Pair(from, to);
    }
}
