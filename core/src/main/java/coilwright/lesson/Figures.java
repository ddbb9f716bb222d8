package coilwright.lesson;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;

/** Numbers as exercises write them. */
final class Figures {
    /** How near to a half, in units of the last place, a value may lie and still be rounded one way by everybody. */
    private static final double CLEAR = 0.02;

    private Figures() {}

    /** A number with so many decimals. */
    static String fixed(double x, int decimals) {
        BigDecimal b = new BigDecimal(x).setScale(decimals, RoundingMode.HALF_EVEN);
        return b.signum() == 0 ? BigDecimal.ZERO.setScale(decimals).toPlainString() : b.toPlainString();
    }

    /** Whether everybody rounds a value to so many decimals alike, whatever the last figures of the working. */
    static boolean clear(double x, int decimals) {
        double last = Math.abs(x) * Math.pow(10, decimals);
        return Math.abs(last - Math.floor(last) - 0.5) > CLEAR;
    }

    /** At most five significant figures, no trailing zeros, for the lines of a working. */
    static String number(double x) {
        BigDecimal b = new BigDecimal(x).round(new MathContext(5, RoundingMode.HALF_EVEN));
        if (b.signum() == 0 || b.abs().compareTo(new BigDecimal("1e-9")) < 0) {
            return "0";
        }
        return b.stripTrailingZeros().toPlainString().replace('-', '−');
    }

    /** With its sign. */
    static String signed(int n) {
        return n < 0 ? "−" + -(long) n : "+" + n;
    }

    static String degrees(double x) {
        return number(x) + "°";
    }

    static String count(int n, String noun) {
        return n + " " + noun + (n == 1 ? "" : "s");
    }

    /** 1, 2 and 3. */
    static String list(List<?> things) {
        List<String> words = things.stream().map(String::valueOf).toList();
        if (words.size() < 2) {
            return String.join("", words);
        }
        return String.join(", ", words.subList(0, words.size() - 1)) + " and " + words.get(words.size() - 1);
    }

    /** 1,2,3. */
    static String commas(List<?> things) {
        return String.join(",", things.stream().map(String::valueOf).toList());
    }
}
