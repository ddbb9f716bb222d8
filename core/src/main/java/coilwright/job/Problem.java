package coilwright.job;

import java.util.Objects;

/**
 * One thing wrong with an input file.
 *
 * @param file the file's name, as the user gave it
 * @param line counted from 1; 0 where it is the whole file
 * @param field which field, such as {@code armature.slots}; empty where it is none in particular
 * @param message what is wrong and what would do
 */
public record Problem(String file, int line, String field, String message) {
    /**
     * Makes what is unseen visible.
     *
     * @param file the file's name, as the user gave it
     * @param line counted from 1; 0 where it is the whole file
     * @param field which field, such as {@code armature.slots}; empty where it is none in particular
     * @param message what is wrong and what would do
     */
    public Problem {
        Objects.requireNonNull(file);
        field = Visible.of(field);
        message = Visible.of(message);
    }

    /** "file:line: field: message", without the parts there are none of. */
    @Override
    public String toString() {
        return Visible.of(file) + (line > 0 ? ":" + line : "") + ": " + (field.isEmpty() ? "" : field + ": ") + message;
    }
}
