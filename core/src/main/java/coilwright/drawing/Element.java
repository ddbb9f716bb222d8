package coilwright.drawing;

import java.util.Locale;

/**
 * What a shape shows: coil 5, bar 12, slot 3.
 *
 * @param kind what it is
 * @param number its number, 1 and up
 */
public record Element(Kind kind, int number) {
    /** The kinds of numbered thing in a drawing. */
    public enum Kind {
        /** A coil. */
        COIL,
        /** A commutator bar. */
        BAR,
        /** A slot. */
        SLOT,
        /** A pole. */
        POLE,
        /** A brush. */
        BRUSH,
        /** A parallel path. */
        PATH;

        private final String word = name().toLowerCase(Locale.ROOT);

        private final String attribute = "data-" + word;

        /** The attribute in SVG, as in {@code data-coil}. */
        String attribute() {
            return attribute;
        }

        /** {@return the word in messages and in {@code data-coil} and its like} */
        public String word() {
            return word;
        }
    }

    /**
     * {@return coil of a number}
     *
     * @param number its number, from 1
     */
    public static Element coil(int number) {
        return new Element(Kind.COIL, number);
    }

    /**
     * {@return bar of a number}
     *
     * @param number its number, from 1
     */
    public static Element bar(int number) {
        return new Element(Kind.BAR, number);
    }

    /**
     * {@return slot of a number}
     *
     * @param number its number, from 1
     */
    public static Element slot(int number) {
        return new Element(Kind.SLOT, number);
    }

    /** {@return id in the SVG, as in {@code coil-5}} */
    public String id() {
        return kind.word() + "-" + number;
    }
}
