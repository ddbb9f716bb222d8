package coilwright.rewind;

/** Checks that name the value, the rule and the way out. */
final class Require {
    private Require() {}

    static double positive(String what, double value, String unit) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(
                    what + " is " + with(value, unit) + ", but must be over 0: measure it again");
        }
        return value;
    }

    static void most(String what, double value, double most, String unit) {
        if (value > most) {
            throw new IllegalArgumentException(what + " is " + with(value, unit) + ", but may be at most "
                    + with(most, unit) + ": check the unit");
        }
    }

    static void notNegative(String what, double value, String unit) {
        if (!(value >= 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(what + " is " + with(value, unit) + ", but must be 0 (none) or more");
        }
    }

    private static String with(double value, String unit) {
        return unit.isEmpty() ? Format.number(value) : Format.number(value) + " " + unit;
    }

    static void atLeast(String what, int value, int least) {
        if (value < least) {
            throw new IllegalArgumentException(what + " is " + value + ", but must be at least " + least);
        }
    }

    static void inRange(String what, int value, int least, int most) {
        if (value < least || value > most) {
            throw new IllegalArgumentException(
                    what + " is " + value + ", but must be from " + least + " to " + most + ": count again");
        }
    }

    static void temperature(String what, double celsius) {
        if (!(celsius > -234.5 && celsius < 1000)) {
            throw new IllegalArgumentException(what + " is " + Format.number(celsius)
                    + " °C, but must be over -234.5 °C and under 1000 °C: give degrees Celsius");
        }
    }
}
