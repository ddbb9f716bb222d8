package coilwright.lesson;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** The kinds of exercise. */
public enum Kind {
    /** Work out the pitches of a winding. */
    PITCHES("Pitches"),
    /** Fill in a winding table. */
    TABLE("Winding table"),
    /** Tell whether a winding can be wound, and what would do if not. */
    FEASIBLE("Can it be wound?"),
    /** Find the error in a connection list. */
    LIST_ERROR("Error in a connection list"),
    /** Say what a test should read. */
    READINGS("What should it read?"),
    /** Find the fault from readings. */
    FAULT("Find the fault"),
    /** Places of brushes and equalizers. */
    PLACES("Brushes and equalizers"),
    /** Wire, slot fill and resistance. */
    WIRE("Wire, slot fill and resistance");

    private final String title;

    Kind(String title) {
        this.title = title;
    }

    /** {@return the title as it stands over an exercise} */
    public String title() {
        return title;
    }

    /** {@return the word for it in commands and output, as in {@code list-error}} */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * {@return the kind of a word}
     *
     * @param word as files and commands have it
     * @throws IllegalArgumentException when there is none, naming those there are
     */
    public static Kind named(String word) {
        return Arrays.stream(values())
                .filter(k -> k.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("there is no kind of exercise \"" + word
                        + "\": the kinds are "
                        + Arrays.stream(values()).map(Kind::word).collect(Collectors.joining(", "))
                        + ", or all"));
    }
}
