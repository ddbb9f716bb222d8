package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Tells during a run, reading by reading, whether one stands out, long before there are enough for a diagnosis. What a
 * sound winding reads is compared at the scale of the readings so far: the median of reading over expectation, which a
 * few wrong ones do not move. Several threads may ask at a time.
 */
public final class ReadingWatch {
    /** Readings of a sound winding stay closer than this; common practice, from memory. */
    private static final double OUTLYING = 0.10;

    /** Pairs that should read less than this part of the usual tell nothing of the scale. */
    private static final double FLOOR = 0.2;

    private static final int ENOUGH = 3;

    private final BenchArmature sound;
    private final BenchTest test;
    private final boolean absolute;
    private final Map<BenchTest.Pair, Double> known = new ConcurrentHashMap<>();
    private final double typical;

    /**
     * A watch over one run.
     *
     * @param sound the armature as it should be
     * @param test the test that is taken
     * @param absolute whether the scale is known beforehand: resistance of a coil and current of the feed
     */
    public ReadingWatch(BenchArmature sound, BenchTest test, boolean absolute) {
        this.sound = sound;
        this.test = test;
        this.absolute = absolute;
        for (PairReading r : test.readWalk(sound)) {
            known.put(r.pair(), r.value());
        }
        typical = middle(known.values().stream()
                        .mapToDouble(Math::abs)
                        .filter(x -> x > 0 && Double.isFinite(x))
                        .toArray())
                .orElse(0);
    }

    private static OptionalDouble middle(double[] values) {
        Arrays.sort(values);
        return values.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(values[values.length / 2]);
    }

    /** What the sound armature reads; rounding beside the usual reading is nothing. */
    private double own(BenchTest.Pair pair) {
        Double value = known.get(pair);
        if (value == null) {
            value = test.read(sound, List.of(pair)).get(0).value();
            known.put(pair, value);
        }
        return Math.abs(value) < 1e-9 * typical ? 0 : value;
    }

    /**
     * How readings stand to what a sound winding of the job's own values would read.
     *
     * @param gain reading over expectation, the median; empty where no reading tells
     * @param count how many readings it rests on
     */
    public record Scale(OptionalDouble gain, int count) {}

    /**
     * {@return the scale of readings}
     *
     * @param taken in the base unit of the test
     */
    public Scale scale(List<PairReading> taken) {
        double[] ratios = taken.stream()
                .filter(r -> Double.isFinite(r.value()))
                .mapToDouble(r -> {
                    double own = own(r.pair());
                    return Math.abs(own) > FLOOR * typical && Double.isFinite(own) ? r.value() / own : Double.NaN;
                })
                .filter(x -> !Double.isNaN(x) && x != 0)
                .toArray();
        return new Scale(middle(ratios), ratios.length);
    }

    /**
     * {@return what a sound winding would read on a pair, at a scale; infinite where the meter should be off its scale;
     * empty while the scale is not known}
     *
     * @param pair bars under the probes
     * @param scale scale of the readings so far
     */
    public OptionalDouble expected(BenchTest.Pair pair, Scale scale) {
        double own = own(pair);
        if (Double.isInfinite(own) || own == 0) {
            return OptionalDouble.of(own);
        }
        if (scale.gain().isPresent()) {
            return OptionalDouble.of(own * scale.gain().getAsDouble());
        }
        return absolute ? OptionalDouble.of(own) : OptionalDouble.empty();
    }

    /**
     * {@return whether a reading stands out: by more than a tenth of what is expected, or of a fifth of the usual
     * reading where less is expected} Never while the scale rests on fewer than three readings, except where the meter
     * should, or should not, be off its scale.
     *
     * @param reading in the base unit of the test
     * @param scale of the other readings
     */
    public boolean standsOut(PairReading reading, Scale scale) {
        var pair = reading.pair();
        double own = own(pair);
        if (Double.isInfinite(own) || Double.isInfinite(reading.value())) {
            return Double.isInfinite(own) != Double.isInfinite(reading.value());
        }
        if (scale.count() < ENOUGH) {
            return false;
        }
        double gain = scale.gain().getAsDouble();
        double allowed = OUTLYING * Math.max(Math.abs(own * gain), FLOOR * Math.abs(typical * gain));
        return Math.abs(reading.value() - own * gain) > allowed;
    }
}
