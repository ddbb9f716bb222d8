package coilwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class VisibleTest {
    @Test
    void whatIsSeenStaysAsItIs() {
        for (String text : List.of("", "Mühle 3", "12 µm", "モーター", "🧲", "אבג", "a\u00a0b", "e\u0301", "\\u001B")) {
            assertThat(Visible.of(text)).isEqualTo(text);
        }
    }

    @Test
    void whatMovesOrTurnsTheTextIsWrittenAsAnEscape() {
        assertThat(Visible.of("a\u001b[31m")).isEqualTo("a\\u001B[31m");
        assertThat(Visible.of("a\r\n\t\0\u0085\u2028")).isEqualTo("a\\u000D\\u000A\\u0009\\u0000\\u0085\\u2028");
        assertThat(Visible.of("\u202e\u2066\u200f\ufeff")).isEqualTo("\\u202E\\u2066\\u200F\\uFEFF");
        assertThat(Visible.of("\ud800x\uffff")).isEqualTo("\\uD800x\\uFFFF");
        assertThat(Visible.of(Character.toString(0xE0041))).isEqualTo("\\U000E0041");
    }

    @Test
    void anAnswerKeepsItsLinesAndWhatJoinsLetters() {
        assertThat(Visible.answer("a\tb\nc\u007f\r\u2028\u202e\u2069é"))
                .isEqualTo("a\tb\nc\\u007F\\u000D\\u2028\\u202E\\u2069é");
        for (String text : List.of("", "Mühle 3\n", "\u05d0\u200f", "\u200c\u200d", "\ud83e\uddf2")) {
            assertThat(Visible.answer(text)).isEqualTo(text);
        }
    }

    @Test
    void longTextIsCutBetweenCharacters() {
        assertThat(Visible.cut("a".repeat(60))).isEqualTo("a".repeat(60));
        assertThat(Visible.cut("a".repeat(61))).isEqualTo("a".repeat(60) + "…");
        assertThat(Visible.cut("a".repeat(59) + "🧲b")).isEqualTo("a".repeat(59) + "…");
        assertThat(Visible.cut("ab\n", 2)).isEqualTo("ab…");
    }

    @Test
    void aProblemIsOneHarmlessLineWhateverTheFileIsCalled() {
        assertThat(new Problem("a\nb\u001b[1m", 3, "x\u202e", "is \"\u0007\""))
                .hasToString("a\\u000Ab\\u001B[1m:3: x\\u202E: is \"\\u0007\"");
    }
}
