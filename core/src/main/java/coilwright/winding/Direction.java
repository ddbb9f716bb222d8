package coilwright.winding;

import java.util.Locale;

/** Which way the winding proceeds round the commutator. */
public enum Direction {
    /** Lap: yc = +m. Wave: yc = (K + m)/p. */
    PROGRESSIVE(+1),
    /** Lap: yc = −m. Wave: yc = (K − m)/p. */
    RETROGRESSIVE(-1);

    private final int sign;

    Direction(int sign) {
        this.sign = sign;
    }

    /** {@return +1 progressive, −1 retrogressive} */
    public int sign() {
        return sign;
    }

    /** {@return the other direction} */
    public Direction reversed() {
        return this == PROGRESSIVE ? RETROGRESSIVE : PROGRESSIVE;
    }

    /** {@return the word used in job files and messages} */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
