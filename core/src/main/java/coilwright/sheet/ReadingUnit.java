package coilwright.sheet;

import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import java.util.List;
import java.util.Locale;

/**
 * How readings of one test are written, all alike.
 *
 * @param name as in "mV"
 * @param factor from the test's own value to this unit, over 0
 * @param decimals behind the point, 0 to 6
 */
public record ReadingUnit(String name, double factor, int decimals) {
    /**
     * {@return a unit in which the largest reading has one to three figures before the point}
     *
     * @param test the test
     * @param readings in the test's own unit
     * @param ohmsKnown whether the resistance of a coil is known; else values are told for one of a size
     * @param voltsKnown whether growler readings are in volts; else they are relative
     */
    public static ReadingUnit of(BenchTest test, List<PairReading> readings, boolean ohmsKnown, boolean voltsKnown) {
        double most = PairReading.largest(readings);
        if (test instanceof BenchTest.Polarity) {
            return new ReadingUnit("sense", 1, 0);
        }
        if (test.relative() && !voltsKnown) {
            return new ReadingUnit("relative", 1, 3);
        }
        if (!test.relative() && !ohmsKnown && most > 0) {
            return new ReadingUnit(test.ohms() ? "× one coil" : "mV at 1 mΩ a coil", 1, decimals(most));
        }
        String base = test.ohms() ? "Ω" : "V";
        double size = most * (1 + 1e-9);
        if (size >= 1 || most == 0) {
            return new ReadingUnit(base, 1, decimals(most));
        }
        return size >= 1e-3
                ? new ReadingUnit("m" + base, 1e3, decimals(most * 1e3))
                : new ReadingUnit("µ" + base, 1e6, decimals(most * 1e6));
    }

    private static int decimals(double most) {
        return most <= 0 ? 3 : (int) Math.max(0, Math.min(6, 3 - Math.floor(Math.log10(most) + 1e-9)));
    }

    /**
     * {@return a value of the test in this unit}
     *
     * @param own in the test's own unit: volts, ohms or amperes
     */
    public double value(double own) {
        return own * factor;
    }

    /**
     * {@return a value of the test in words: "open" where nothing joins two bars, a sense as + or −}
     *
     * @param own in the test's own unit: volts, ohms or amperes
     */
    public String words(double own) {
        if (Double.isInfinite(own)) {
            return "open";
        }
        if (name.equals("sense")) {
            return own > 0 ? "+" : own < 0 ? "−" : "none";
        }
        String s = String.format(Locale.ROOT, "%." + decimals + "f", Math.abs(value(own)));
        boolean nothing = s.chars().allMatch(c -> c == '0' || c == '.');
        return own < 0 && !nothing ? "−" + s : s;
    }
}
