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

        /** The word in messages and in {@code data-coil} and its like. */
        public String word() {
            return word;
        }
    }

    /** Coil of a number. */
    public static Element coil(int number) {
        return new Element(Kind.COIL, number);
    }

    /** Bar of a number. */
    public static Element bar(int number) {
        return new Element(Kind.BAR, number);
    }

    /** Slot of a number. */
    public static Element slot(int number) {
        return new Element(Kind.SLOT, number);
    }

    /** Id in the SVG, as in {@code coil-5}. */
    public String id() {
        return kind.word() + "-" + number;
    }
}
