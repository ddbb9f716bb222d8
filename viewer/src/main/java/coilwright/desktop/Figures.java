package coilwright.desktop;

import coilwright.job.Quantity;
import coilwright.job.TestKind;
import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers as the window writes them. */
final class Figures {
    private Figures() {}

    /** Three figures in plain digits. */
    static String three(double x) {
        if (Double.isInfinite(x)) {
            return "off the scale";
        }
        if (Math.abs(x) < 1e-12) {
            return "0";
        }
        BigDecimal rounded = new BigDecimal(x).round(new MathContext(3));
        String plain = (rounded.scale() < 0 ? rounded.setScale(0) : rounded).toPlainString();
        return plain.startsWith("-") ? "−" + plain.substring(1) : plain;
    }

    /** A value in the base unit of a test, in another unit of the same kind; blank for the base unit itself. */
    static String in(double base, TestKind test, String unit) {
        if (Double.isInfinite(base)) {
            return "off the scale (OL)";
        }
        if (unit.isEmpty() || test.kinds().isEmpty()) {
            return three(base);
        }
        Quantity.Kind kind = new Quantity(BigDecimal.ONE, unit).kind();
        double one = new Quantity(BigDecimal.ONE, unit).in(kind.units().get(0));
        return three(base / one) + " " + unit;
    }

    static String percent(double p) {
        return p > 0.995 && p < 1 ? "over 99 %" : p < 0.01 && p > 0 ? "under 1 %" : Math.round(p * 100) + " %";
    }
}
