package coilwright.winding;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Wording shared by the rules. */
final class Words {
    private Words() {}

    static String plex(int m) {
        return WindingSpec.plexWord(m);
    }

    static String count(int n, String noun) {
        String number = switch (n) {
            case 0 -> "no";
            case 1 -> "one";
            case 2 -> "two";
            case 3 -> "three";
            default -> Integer.toString(n);
        };
        return number + " " + noun + (n == 1 ? "" : "s");
    }

    /** A number with at most two decimals and no trailing zeros. */
    static String number(double x) {
        return rounded(x, 2).stripTrailingZeros().toPlainString();
    }

    /** A number with so many decimals; a format string would read the tables of every language first. */
    static BigDecimal rounded(double x, int decimals) {
        return BigDecimal.valueOf(x).setScale(decimals, RoundingMode.HALF_UP);
    }

    static String slots(double n) {
        return number(n) + (n == 1 ? " slot" : " slots");
    }

    static String article(String noun) {
        boolean vowel = "aeiou8".indexOf(noun.charAt(0)) >= 0 || noun.startsWith("11-");
        return (vowel ? "an " : "a ") + noun;
    }
}
