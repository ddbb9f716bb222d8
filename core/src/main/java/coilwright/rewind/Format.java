package coilwright.rewind;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers in messages and reports. */
public final class Format {
    private Format() {}

    /**
     * {@return a number with at most four significant digits, no trailing zeros, no exponent}
     *
     * @param x any number
     */
    public static String number(double x) {
        if (Double.isNaN(x) || Double.isInfinite(x)) {
            return "no number";
        }
        BigDecimal b = new BigDecimal(x).round(new MathContext(4, RoundingMode.HALF_EVEN));
        return b.stripTrailingZeros().toPlainString();
    }

    /**
     * {@return a fraction as a percentage with one decimal at most}
     *
     * @param fraction 1 for the whole
     */
    public static String percent(double fraction) {
        BigDecimal b = new BigDecimal(fraction * 100).setScale(1, RoundingMode.HALF_EVEN);
        return b.stripTrailingZeros().toPlainString() + " %";
    }
}
