package coilwright.bench;

/**
 * What a meter reads, or should read, between two bars.
 *
 * @param from bar under the first probe
 * @param to bar under the second probe
 * @param value volts or ohms; volts are V(from) − V(to)
 */
public record PairReading(int from, int to, double value) {
    /** {@return where the probes go} */
    public BenchTest.Pair pair() {
        return new BenchTest.Pair(from, to);
    }
}
