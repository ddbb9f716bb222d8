package coilwright.commutator;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers in messages. */
final class Text {
    private Text() {}

    /** Millimetres to the nearest micrometre, no trailing zeros. */
    static String mm(double x) {
        if (Double.isNaN(x) || Double.isInfinite(x)) {
            return "no number";
        }
        BigDecimal b = new BigDecimal(x).setScale(3, RoundingMode.HALF_EVEN);
        return b.stripTrailingZeros().toPlainString() + " mm";
    }

    /** Millimetres, and thousandths of an inch to one decimal. */
    static String both(double x) {
        BigDecimal thou = new BigDecimal(x / 0.0254).setScale(1, RoundingMode.HALF_EVEN);
        return mm(x) + " (" + thou.stripTrailingZeros().toPlainString() + " thou)";
    }

    static void most(String what, double x, double most) {
        if (x > most) {
            throw new IllegalArgumentException(
                    what + " is " + mm(x) + ", but may be at most " + mm(most) + ": check the unit");
        }
    }

    static void finite(String what, double x) {
        if (Double.isNaN(x) || Double.isInfinite(x)) {
            throw new IllegalArgumentException(what + " is no number: measure it again");
        }
    }

    static double notNegative(String what, double x) {
        if (!(x >= 0) || Double.isInfinite(x)) {
            throw new IllegalArgumentException(what + " is " + mm(x) + ", but must be 0 or more");
        }
        return x;
    }

    static double positive(String what, double x) {
        if (!(x > 0) || Double.isInfinite(x)) {
            throw new IllegalArgumentException(what + " is " + mm(x) + ", but must be over 0: measure it again");
        }
        return x;
    }
}
