package coilwright.rewind;

import java.util.ArrayList;
import java.util.List;

/**
 * How even readings are that should all be alike, such as bar to bar.
 *
 * @param readings in order, in any one unit
 * @param mean of them
 * @param highest largest deviation above the mean, percent of the mean
 * @param lowest largest deviation below the mean, percent, positive
 */
public record Evenness(List<Double> readings, double mean, double highest, double lowest) {
    /**
     * Copies the list.
     *
     * @param readings in order, in any one unit
     * @param mean of them
     * @param highest largest deviation above the mean, percent of the mean
     * @param lowest largest deviation below the mean, percent, positive
     */
    public Evenness {
        readings = List.copyOf(readings);
    }

    /**
     * Compares readings with their mean.
     *
     * @param readings from bar to bar, in any one unit
     * @return how far they lie from their mean
     * @throws IllegalArgumentException when there are none, one is no number, or their mean is not over 0
     */
    public static Evenness of(List<Double> readings) {
        if (readings.isEmpty()) {
            throw new IllegalArgumentException("there are no readings to compare: give at least one");
        }
        double mean =
                readings.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
        Require.positive("mean reading", mean, "");
        double high = 0;
        double low = 0;
        for (double r : readings) {
            high = Math.max(high, (r - mean) / mean * 100);
            low = Math.max(low, (mean - r) / mean * 100);
        }
        return new Evenness(readings, mean, high, low);
    }

    /** {@return deviation of each reading from the mean, percent, signed} */
    public List<Double> deviations() {
        return readings.stream().map(r -> (r - mean) / mean * 100).toList();
    }

    /** {@return the evenness against every limit shipped} */
    public List<AcceptanceVerdict> verdicts() {
        List<AcceptanceVerdict> out = new ArrayList<>();
        Limit.on("bar-to-bar").forEach(l -> out.add(AcceptanceVerdict.of(l, Math.max(highest, lowest))));
        Limit.on("bar-to-bar-high").forEach(l -> out.add(AcceptanceVerdict.of(l, highest)));
        Limit.on("bar-to-bar-low").forEach(l -> out.add(AcceptanceVerdict.of(l, lowest)));
        return List.copyOf(out);
    }
}
