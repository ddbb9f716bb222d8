package coilwright.sheet;

import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** One part of a {@link Document}. A text that is empty where a value belongs is a place to write on. */
public sealed interface Block {
    /** A heading over what follows. */
    record Heading(String words) implements Block {}

    /** Running text. */
    record Paragraph(String words) implements Block {}

    /** Items, each with a dash. */
    record Items(List<String> items) implements Block {
        /**
         * Copies the list.
         *
         * @param items one line each
         */
        public Items {
            items = List.copyOf(items);
        }
    }

    /** Things to tick when done. */
    record Ticks(List<String> items) implements Block {
        /**
         * Copies the list.
         *
         * @param items one line each
         */
        public Ticks {
            items = List.copyOf(items);
        }
    }

    /** What can hurt someone or mislead. */
    record Cautions(List<String> items) implements Block {
        /**
         * Copies the list.
         *
         * @param items one line each
         */
        public Cautions {
            items = List.copyOf(items);
        }
    }

    /** Names and values beneath each other; a value that is not known is empty. */
    record Facts(Map<String, String> facts) implements Block {
        /**
         * Copies the map, its order kept.
         *
         * @param facts values by name, in order
         */
        public Facts {
            facts = Collections.unmodifiableMap(new LinkedHashMap<>(facts));
        }
    }

    /** A table; empty cells are to be written in. */
    record Grid(Table table) implements Block {}

    /** Names on one row, each with a line to write on. */
    record Blanks(List<String> names) implements Block {
        /**
         * Copies the list.
         *
         * @param names one or more
         */
        public Blanks {
            names = List.copyOf(names);
        }
    }

    /**
     * Lines to write on.
     *
     * @param lines how many, 1 to 30
     */
    record Lines(int lines) implements Block {
        /**
         * Checks the number.
         *
         * @param lines how many, 1 to 30
         * @throws IllegalArgumentException when it is out of range
         */
        public Lines {
            if (lines < 1 || lines > 30) {
                throw new IllegalArgumentException("there are " + lines + " lines, but must be 1 to 30");
            }
        }
    }

    /**
     * Drawings side by side among the text, no larger than they were made.
     *
     * @param drawings at least one
     */
    record Pictures(List<Drawing> drawings) implements Block {
        /**
         * Copies the list.
         *
         * @param drawings at least one
         * @throws IllegalArgumentException when it is empty
         */
        public Pictures {
            drawings = List.copyOf(drawings);
            if (drawings.isEmpty()) {
                throw new IllegalArgumentException("there are no drawings, but one is needed");
            }
        }
    }

    /**
     * Drawings that have pages of their own, at the end in print.
     *
     * @param words what they are
     * @param pages the pages
     */
    record Annex(String words, DrawingPages pages) implements Block {}
}
