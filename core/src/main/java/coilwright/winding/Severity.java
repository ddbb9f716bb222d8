package coilwright.winding;

import java.util.Locale;

/** How much a finding matters. */
public enum Severity {
    /** The winding cannot be, or cannot work. */
    ERROR,
    /** It can be wound, but at a price. */
    WARNING,
    /** Worth knowing. */
    NOTE;

    /** {@return the word used in output} */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
