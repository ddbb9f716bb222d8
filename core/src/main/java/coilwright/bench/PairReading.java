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

    /** {@return where the probes go} */
    public BenchTest.Pair pair() {
        return new BenchTest.Pair(from, to);
    }
}
