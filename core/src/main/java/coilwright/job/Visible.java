package coilwright.job;

import java.util.Locale;

/**
 * Text from a user or a file as messages show it. What cannot be seen, ends the line, moves the cursor or turns the
 * text about it is written as an escape, such as {@code \u001B}, so that a message is always one line that does nothing
 * to the screen it comes out on.
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
        return text.codePoints().anyMatch(Visible::isUnseen) ? escaped(text) : text;
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

    private static String escaped(String text) {
        var out = new StringBuilder();
        text.codePoints().forEach(c -> {
            if (isUnseen(c)) {
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
}
