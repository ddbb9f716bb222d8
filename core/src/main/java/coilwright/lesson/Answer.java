package coilwright.lesson;

import java.util.Objects;

/**
 * One thing asked for, with the one right answer.
 *
 * @param what is asked for
 * @param value in the form in which it can be compared: a number with the decimals asked for and a point, a word, or
 *     numbers with commas between
 * @param unit of a number; empty where there is none
 * @param words the value as it is printed; the same as the value unless it needs more
 */
public record Answer(String what, String value, String unit, String words) {
    /**
     * Checks that there is an answer.
     *
     * @param what is asked for
     * @param value in the form in which it can be compared: a number with the decimals asked for and a point, a word,
     *     or numbers with commas between
     * @param unit of a number; empty where there is none
     * @param words the value as it is printed; the same as the value unless it needs more
     * @throws IllegalArgumentException when the value is empty
     */
    public Answer {
        Objects.requireNonNull(what, "what");
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(words, "words");
        if (value.isEmpty()) {
            throw new IllegalArgumentException("\"" + what + "\" is asked for, but has no answer");
        }
    }

    static Answer of(String what, String value, String unit) {
        return new Answer(what, value, unit, value.replace('-', '−'));
    }

    static Answer of(String what, int value, String unit) {
        return of(what, Integer.toString(value), unit);
    }

    static Answer word(String what, String value, String words) {
        return new Answer(what, value, "", words);
    }

    /** {@return the value and its unit, as printed} */
    public String printed() {
        String noun = value.matches("-?1") && unit.endsWith("s") ? unit.substring(0, unit.length() - 1) : unit;
        return unit.isEmpty() ? words : words + (unit.equals("°") ? "" : " ") + noun;
    }
}
