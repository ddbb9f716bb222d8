package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.drawing.Drawing;
import coilwright.drawing.Palette;
import coilwright.drawing.Shape;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class FewestPagesTest {
    private static Sheet items(int count) {
        return Sheet.titled("A title", "A sheet", Palette.COLOUR)
                .items(IntStream.rangeClosed(1, count)
                        .mapToObj(i -> "item " + i)
                        .toList());
    }

    private static List<List<String>> texts(List<Drawing> pages) {
        return pages.stream()
                .map(p -> p.texts().stream().map(Shape.Text::text).toList())
                .toList();
    }

    private static int most() {
        int count = 1;
        while (items(count + 1).pages().pages().size() == 1) {
            count++;
        }
        return count;
    }

    @Test
    void aLastPageWithALineOrTwoIsSaved() {
        int most = most();
        for (int over = 1; over <= 3; over++) {
            assertThat(items(most + over).pages().pages()).hasSize(2);
            List<Drawing> pages = items(most + over).fewestPages().pages();
            assertThat(pages).hasSize(1);
            assertThat(texts(pages).get(0)).contains("item 1", "item " + (most + over), "page 1 of 1");
        }
    }

    @Test
    void whatCannotBeSavedIsLaidOutAsUsual() {
        int most = most();
        for (int count : new int[] {1, most, most + 8, most + 20, 2 * most}) {
            assertThat(items(count).fewestPages()).isEqualTo(items(count).pages());
        }
    }

    @Property(tries = 60)
    void nothingOverlapsOrIsLost(@ForAll @IntRange(min = 1, max = 90) int rows, @ForAll @IntRange(max = 12) int ticks) {
        List<String> done = IntStream.range(0, ticks).mapToObj(i -> "done " + i).toList();
        Sheet sheet = Sheet.titled("A title", "A sheet", Palette.COLOUR)
                .caution(List.of("Mind this.", "Mind that as well, in words that need ".repeat(4)))
                .facts(Map.of("Slots", "17, in words that need two lines or even three of them ".repeat(3)))
                .heading("Table")
                .table(new Table(
                        List.of(
                                new Table.Column("Row", 2, Table.Align.LEFT),
                                new Table.Column("Words", 3, Table.Align.RIGHT)),
                        IntStream.rangeClosed(1, rows)
                                .mapToObj(i -> List.of("r" + i, i % 7 == 0 ? "words ".repeat(40) : ""))
                                .toList(),
                        1))
                .ticks(done)
                .writingLines("Remarks", 3)
                .fields(List.of("Date", "Meter"));
        List<Drawing> usual = sheet.pages().pages();
        List<Drawing> fewest = sheet.fewestPages().pages();
        assertThat(fewest.size()).isBetween(usual.size() - 1, usual.size());
        fewest.forEach(page -> {
            assertThat(page.overlappingTexts()).isEmpty();
            assertThat(page.outsidePage()).isEmpty();
        });
        assertThat(rows(fewest)).isEqualTo(rows(usual));
        assertThat(texts(fewest).get(fewest.size() - 1)).contains("Meter");
    }

    private static List<String> rows(List<Drawing> pages) {
        return texts(pages).stream()
                .flatMap(List::stream)
                .filter(t -> t.matches("r\\d+|done \\d+"))
                .toList();
    }
}
