package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.regex.Pattern;
import org.assertj.core.api.Assertions;

/** What every refusal must be like. */
final class Refusal {
    private static final int MOST_SHOWN = 51;
    private static final int LONGEST = 700;

    /** What may be said of a file without a line: the whole of it is wrong. */
    private static final Pattern WHOLE = Pattern.compile("(is empty|holds nothing but|is longer than|"
            + "\\d+ more problems|has no heights|is not UTF-8|there is no such|lists \\d+ coils).*");

    private static final Pattern QUOTED = Pattern.compile("\".*\"|\\btag:\\S*");
    private static final Pattern FROM_WITHIN = Pattern.compile(
            "\\b(java|javax|org|com|coilwright|picocli)(\\.[a-z]\\w*)*\\.[A-Z]|Exception|Error:|@[0-9a-f]{6}");

    private Refusal() {}

    /** Each problem told once, in words, at its line, without a letter that is not seen. */
    static void check(BadInputException e, String file, String input) {
        List<Problem> problems = e.problems();
        assertThat(problems).hasSizeBetween(1, MOST_SHOWN);
        long lines = input.lines().count() + 1;
        Set<String> told = new HashSet<>();
        for (Problem p : problems) {
            assertThat(p.file()).isEqualTo(file);
            assertThat((long) p.line()).as("line of %s", p).isBetween(0L, lines);
            assertThat(told.add(p.toString())).as("told once: %s", p).isTrue();
            assertThat(p.message()).as("message").isNotBlank().hasSizeLessThan(LONGEST);
            assertThat(p.field()).as("field").hasSizeLessThan(LONGEST);
            if (p.line() == 0) {
                assertThat(p.message()).as("told without a line").matches(WHOLE);
            }
            assertThat(QUOTED.matcher(p.message()).replaceAll("")).doesNotContainPattern(FROM_WITHIN);
            assertSeen(p.toString());
        }
        assertSeen(e.getMessage().replace("\n", ""));
    }

    /** Nothing in it moves the cursor, turns the text about, or cannot be seen. */
    static void assertSeen(String text) {
        assertNone(text, c -> harms(c) || Character.getType(c) == Character.FORMAT);
    }

    /** Nothing in it moves the cursor or turns the text about; line feeds are let pass. */
    static void assertHarmless(String text) {
        assertNone(text, c -> c != '\n' && harms(c));
    }

    private static boolean harms(int c) {
        int type = Character.getType(c);
        return type == Character.CONTROL
                || type == Character.SURROGATE
                || type == Character.LINE_SEPARATOR
                || type == Character.PARAGRAPH_SEPARATOR
                || (c >= 0x202a && c <= 0x202e)
                || (c >= 0x2066 && c <= 0x2069)
                || (c & 0xfffe) == 0xfffe;
    }

    private static void assertNone(String text, IntPredicate wrong) {
        text.codePoints()
                .filter(wrong)
                .findFirst()
                .ifPresent(c -> Assertions.fail("U+%04X in %s", c, FuzzInput.of(text)));
    }

    /** A refusal of our own, in words, and none that came out of a library. */
    static void assertOwn(IllegalArgumentException e) {
        assertThat(e.getStackTrace()[0].getClassName())
                .as("where \"%s\" comes from", e.getMessage())
                .startsWith("coilwright.");
        assertThat(e.getMessage()).isNotBlank().hasSizeLessThan(LONGEST);
        assertSeen(e.getMessage());
    }
}
