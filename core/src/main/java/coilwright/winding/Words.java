package coilwright.winding;

import java.util.Locale;

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
        String s = String.format(Locale.ROOT, "%.2f", x);
        return s.contains(".") ? s.replaceAll("\\.?0+$", "") : s;
    }

    static String slots(double n) {
        return number(n) + (n == 1 ? " slot" : " slots");
    }

    static String article(String noun) {
        boolean vowel = "aeiou8".indexOf(noun.charAt(0)) >= 0 || noun.startsWith("11-");
        return (vowel ? "an " : "a ") + noun;
    }
}
