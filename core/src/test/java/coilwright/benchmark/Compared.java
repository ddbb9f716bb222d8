package coilwright.benchmark;

import java.util.Map;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One thing measured at several sizes beside what it is held against.
 *
 * @param what it is
 * @param unit of its size, such as bars; empty where it has none
 * @param times by size
 * @param against the name of the baseline
 * @param floor times of the baseline by size, with the sizes of {@code times}
 */
record Compared(
        String what,
        String unit,
        SortedMap<Integer, Measured> times,
        String against,
        SortedMap<Integer, Measured> floor) {
    /**
     * Copies the times.
     *
     * @throws IllegalArgumentException when there is none, or the baseline was measured at other sizes
     */
    Compared {
        times = new TreeMap<>(times);
        floor = new TreeMap<>(floor);
        if (times.isEmpty() || !times.keySet().equals(floor.keySet())) {
            throw new IllegalArgumentException(
                    what + " was measured at " + times.keySet() + ", but its baseline at " + floor.keySet());
        }
    }

    /** Time over time of the baseline. */
    double ratio(int size) {
        return times.get(size).nanos() / floor.get(size).nanos();
    }

    /** The exponent e with which time grows as size to the power e, as {@link #exponent}. */
    OptionalDouble growth() {
        return exponent(times);
    }

    /** Slope of the straight line of least squares through log time over log size; empty under three sizes. */
    static OptionalDouble exponent(SortedMap<Integer, Measured> times) {
        int n = times.size();
        if (n < 3) {
            return OptionalDouble.empty();
        }
        double meanX = 0;
        double meanY = 0;
        for (Map.Entry<Integer, Measured> e : times.entrySet()) {
            meanX += Math.log(e.getKey()) / n;
            meanY += Math.log(e.getValue().nanos()) / n;
        }
        double xy = 0;
        double xx = 0;
        for (Map.Entry<Integer, Measured> e : times.entrySet()) {
            double x = Math.log(e.getKey()) - meanX;
            xy += x * (Math.log(e.getValue().nanos()) - meanY);
            xx += x * x;
        }
        return OptionalDouble.of(xy / xx);
    }
}
