package coilwright.winding;

import java.util.Locale;

/** What the centre line of slot 1 runs through at the commutator. */
public enum SlotAlignment {
    /** The middle of bar 1. */
    BAR,
    /** The mica between the last bar and bar 1. */
    MICA;

    /** {@return the word used in job files: {@code bar} or {@code mica}} */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
