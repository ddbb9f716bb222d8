package coilwright.rewind;

import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * Cleaning and inspection of an armature, in the order in which it is done, and what to note before it is stripped.
 * Common practice.
 *
 * @param items in order
 */
public record Checklist(List<Item> items) {
    /** The parts of the work, in order. */
    public enum Section {
        /** What can hurt someone or spoil the armature. */
        CAUTION,
        /** Clean and dry before any test. */
        CLEAN,
        /** What to look at. */
        LOOK,
        /** Tests, in order. */
        TEST,
        /** State of the insulation, part by part. */
        INSULATION,
        /** What to note before stripping. */
        RECORD
    }

    /**
     * One item.
     *
     * @param section part of the work
     * @param id short name, unique within its section
     * @param text what to do or look at
     * @param sound what a sound armature shows; empty in CAUTION, CLEAN and RECORD
     * @param touchUp LOOK and TEST: what a deviation points to; INSULATION: when and how to touch up; else empty
     * @param renew INSULATION: when to renew; else empty
     */
    public record Item(Section section, String id, String text, String sound, String touchUp, String renew) {
        /**
         * Checks that there is something to do.
         *
         * @param section part of the work
         * @param id short name, unique within its section
         * @param text what to do or look at
         * @param sound what a sound armature shows; empty in CAUTION, CLEAN and RECORD
         * @param touchUp LOOK and TEST: what a deviation points to; INSULATION: when and how to touch up; else empty
         * @param renew INSULATION: when to renew; else empty
         * @throws IllegalArgumentException when it has no name or no text
         */
        public Item {
            Objects.requireNonNull(section, "section");
            Objects.requireNonNull(sound, "sound");
            Objects.requireNonNull(touchUp, "touchUp");
            Objects.requireNonNull(renew, "renew");
            if (id.isBlank() || text.isBlank()) {
                throw new IllegalArgumentException("item \"" + id + "\" of a checklist has no name or no text");
            }
        }
    }

    private static final class Table {
        static final Psv ROWS = Psv.load("checklist.psv");

        private Table() {}
    }

    /**
     * Copies the list.
     *
     * @param items in order
     */
    public Checklist {
        items = List.copyOf(items);
    }

    /**
     * {@return the list for one armature}
     *
     * @param equalized whether it has equalizers or is frog-leg wound, so that a growler blade tells nothing
     */
    public static Checklist of(boolean equalized) {
        String not = equalized ? "plain" : "equalized";
        return new Checklist(Table.ROWS.rows().stream()
                .filter(r -> !r.text("for").equals(not))
                .map(r -> new Item(
                        Section.valueOf(r.text("section").toUpperCase(Locale.ROOT)),
                        r.text("id"),
                        r.text("text"),
                        r.text("sound"),
                        r.text("touch-up"),
                        r.text("renew")))
                .toList());
    }

    /**
     * {@return the items of one part, in order}
     *
     * @param section which part
     */
    public List<Item> items(Section section) {
        return items.stream().filter(i -> i.section() == section).toList();
    }

    /** {@return where the list comes from} */
    public Source source() {
        return Source.practice();
    }
}
