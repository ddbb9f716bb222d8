package coilwright.rewind;

import java.util.Locale;

/** How far a published value may be trusted. */
public enum Trust {
    /** Read in the named source. */
    READ("read in the source"),
    /** Read in part; the note says what was not. */
    READ_IN_PART("read in part"),
    /** From memory of the named source, not read again. */
    FROM_MEMORY("from memory"),
    /** Follows by arithmetic from a value read. */
    DERIVED("derived"),
    /** A formula fitted to values of the source. */
    FITTED("fitted");

    private final String word;

    Trust(String word) {
        this.word = word;
    }

    /** {@return the words printed beside the value} */
    public String word() {
        return word;
    }

    static Trust of(String text) {
        return valueOf(text.toUpperCase(Locale.ROOT).replace('-', '_'));
    }
}
