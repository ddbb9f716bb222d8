package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.drawing.Drawing;
import coilwright.drawing.Palette;
import coilwright.drawing.Point;
import coilwright.drawing.Role;
import coilwright.drawing.Shape;
import coilwright.drawing.TextWidths;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.AlphaChars;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;

class SheetTest {
    @Property(tries = 100)
    void wrappedLinesFitAndLoseNothing(
            @ForAll @Size(min = 1, max = 20) List<@AlphaChars @StringLength(min = 1, max = 60) String> words) {
        String text = String.join(" ", words);
        List<String> lines = Sheet.wrapped(text, 3, false, 50);
        assertThat(lines).allMatch(l -> TextWidths.em(l, false) * 3 <= 50 + 1e-9);
        assertThat(String.join("", lines).replace(" ", "")).isEqualTo(text.replace(" ", ""));
    }

    @Property(tries = 40)
    void blocksOfAnyLengthStayOnTheirPages(
            @ForAll @Size(max = 30) List<@AlphaChars @StringLength(min = 1, max = 400) String> texts,
            @ForAll @IntRange(min = 0, max = 300) int rows,
            @ForAll @IntRange(min = 1, max = 4) int strips) {
        Sheet sheet = Sheet.titled("A title", "A sheet", Palette.COLOUR)
                .heading("Steps")
                .steps(texts)
                .heading("Items")
                .items(texts)
                .caution(texts)
                .ticks(texts)
                .facts(Map.of("Slots", "17"))
                .fields(List.of("Date", "Meter"))
                .heading("Table")
                .table(numbers(rows, strips))
                .paragraph("The end.");
        List<Drawing> pages = sheet.pages().pages();
        List<String> cells = new ArrayList<>();
        for (int i = 0; i < pages.size(); i++) {
            Drawing page = pages.get(i);
            assertThat(page.overlappingTexts()).isEmpty();
            assertThat(page.outsidePage()).isEmpty();
            List<String> on = page.texts().stream().map(Shape.Text::text).toList();
            assertThat(on).contains("page " + (i + 1) + " of " + pages.size());
            List<String> here = on.stream().filter(t -> t.matches("r\\d+")).toList();
            long heads = on.stream().filter("Row"::equals).count();
            assertThat(heads).isBetween(here.isEmpty() ? 0L : 1L, (long) strips);
            cells.addAll(here);
        }
        assertThat(cells)
                .isEqualTo(IntStream.rangeClosed(1, rows).mapToObj(i -> "r" + i).toList());
    }

    private static Table numbers(int rows, int strips) {
        return new Table(
                List.of(
                        new Table.Column("Row", 2, Table.Align.LEFT),
                        new Table.Column("A longer heading", 3, Table.Align.RIGHT)),
                IntStream.rangeClosed(1, rows)
                        .mapToObj(i -> List.of("r" + i, i % 7 == 0 ? "some words that need two lines" : ""))
                        .toList(),
                strips);
    }

    @Test
    void aHeadingIsNeverLeftAloneAtTheFoot() {
        for (int before = 1; before < 60; before++) {
            Sheet sheet = Sheet.titled("A title", "A sheet", Palette.COLOUR)
                    .items(IntStream.range(0, before).mapToObj(i -> "item").toList())
                    .heading("Readings")
                    .table(numbers(9, 1));
            for (Drawing page : sheet.pages().pages()) {
                List<String> on = page.texts().stream().map(Shape.Text::text).toList();
                assertThat(on.contains("Readings")).isEqualTo(on.contains("r1") && on.contains("r3"));
            }
        }
    }

    @Test
    void aDrawingIsScaledIntoItsRoomAndKeepsItsIdsApart() {
        var square = new Drawing(
                "Square",
                "",
                400,
                400,
                Palette.COLOUR,
                List.of(new Shape.Group(
                        java.util.Optional.of("bar-1"),
                        java.util.Optional.empty(),
                        "",
                        List.of(Role.BAR),
                        List.of(new Shape.Line(new Point(0, 0), new Point(400, 400), List.of(Role.WIRE))))));
        Drawing page = Sheet.titled("A title", "A sheet", Palette.COLOUR)
                .drawing(square, 80)
                .drawing(square, 80)
                .pages()
                .first();
        List<Shape.Group> groups = page.shapes().stream()
                .filter(Shape.Group.class::isInstance)
                .map(Shape.Group.class::cast)
                .toList();
        assertThat(groups).extracting(g -> g.id().get()).containsExactly("bar-1", "d2-bar-1");
        assertThat(groups).allMatch(g -> g.bounds().height() > 75 && g.bounds().height() <= 80);
        assertThat(page.outsidePage()).isEmpty();
    }

    @Test
    void aTableNeedsAsManyTextsAsColumns() {
        var one = List.of(new Table.Column("Bars", 1, Table.Align.LEFT));
        assertThatThrownBy(() -> new Table(one, List.of(List.of("1", "2")), 1))
                .hasMessage("a row has 2 texts, but there are 1 columns");
        assertThatThrownBy(() -> new Table(one, List.of(), 7))
                .hasMessage("a table in 7 strips, but 1 to 6 fit side by side");
        assertThatThrownBy(() -> new Table.Column("Bars", 0, Table.Align.LEFT))
                .hasMessageContaining("must have more than 0");
    }
}
