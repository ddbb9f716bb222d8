package coilwright.job;

import java.util.Locale;
import java.util.function.IntPredicate;

/**
 * Text from a user or a file as messages and answers show it. What cannot be seen, ends the line, moves the cursor or
 * turns the text about it is written as an escape, such as {@code \u001B}, so that a message is always one line, and
 * nothing that is shown does anything to the screen it comes out on.
 */
public final class Visible {
    private static final int MOST = 60;

    private Visible() {}

    /**
     * {@return the whole text}
     *
     * @param text any
     */
    public static String of(String text) {
        return escaped(text, Visible::isUnseen);
    }

    /**
     * {@return the text, cut short after {@value #MOST} characters}
     *
     * @param text any
     */
    public static String cut(String text) {
        return cut(text, MOST);
    }

    /**
     * {@return the text, cut short}
     *
     * @param text any
     * @param most characters shown, at least 1
     */
    public static String cut(String text, int most) {
        if (text.length() <= most) {
            return of(text);
        }
        int end = Character.isHighSurrogate(text.charAt(most - 1)) ? most - 1 : most;
        return of(text.substring(0, end)) + "…";
    }

    /**
     * {@return the text of an answer, its line feeds and tabs left as they are} It goes to other programs as well, so that
     * marks which only join letters or tell their direction stay; what commands a terminal or turns the text about is
     * written as an escape, which JSON takes for the character itself.
     *
     * @param text of one or more lines
     */
    public static String answer(String text) {
        return escaped(text, Visible::commands);
    }

    private static String escaped(String text, IntPredicate unseen) {
        if (text.codePoints().noneMatch(unseen)) {
            return text;
        }
        var out = new StringBuilder();
        text.codePoints().forEach(c -> {
            if (unseen.test(c)) {
                out.append(String.format(Locale.ROOT, c > 0xFFFF ? "\\U%08X" : "\\u%04X", c));
            } else {
                out.appendCodePoint(c);
            }
        });
        return out.toString();
    }

    private static boolean isUnseen(int c) {
        return switch (Character.getType(c)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> true;
            default -> (c & 0xFFFE) == 0xFFFE;
        };
    }

    private static boolean commands(int c) {
        boolean turnsOrBreaks = (c >= 0x2028 && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
        return turnsOrBreaks || (Character.isISOControl(c) && c != '\n' && c != '\t');
    }
}
