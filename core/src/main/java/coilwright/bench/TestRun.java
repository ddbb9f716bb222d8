package coilwright.bench;

import java.util.List;

/**
 * Readings taken in one go, with one meter and one set-up.
 *
 * @param test the test
 * @param readings in the order taken; any pairs, with gaps and repeats
 */
public record TestRun(BenchTest test, List<PairReading> readings) {
    /**
     * Copies the list.
     *
     * @param test the test
     * @param readings in the order taken; any pairs, with gaps and repeats
     */
    public TestRun {
        readings = List.copyOf(readings);
    }

    /** {@return the pairs read, in order} */
    public List<BenchTest.Pair> pairs() {
        return readings.stream().map(PairReading::pair).toList();
    }
}
