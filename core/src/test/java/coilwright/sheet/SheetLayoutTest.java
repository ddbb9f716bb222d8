package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.drawing.Box;
import coilwright.drawing.Drawing;
import coilwright.drawing.Palette;
import coilwright.drawing.Point;
import coilwright.drawing.Role;
import coilwright.drawing.Shape;
import coilwright.drawing.Shape.Anchor;
import coilwright.drawing.TextWidths;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Where everything stands on a page: text from 20 to 196 mm across and down to 281 mm, in lines of 3 mm type 1.42 times
 * as far apart, tables in rows of 6.1 mm.
 */
class SheetLayoutTest {
    private static final double STEP = 3 * 1.42;
    private static final double ROW = 6.1;
    private static final double BOTTOM = 281;

    private static Sheet sheet() {
        return Sheet.titled("A title", "A sheet", Palette.COLOUR);
    }

    private static List<Drawing> pages(Sheet sheet) {
        return sheet.pages().pages();
    }

    private static List<Shape.Text> texts(Drawing page, String words) {
        return page.texts().stream().filter(t -> t.text().equals(words)).toList();
    }

    private static Shape.Text text(Drawing page, String words) {
        assertThat(texts(page, words)).hasSize(1);
        return texts(page, words).get(0);
    }

    private static <T extends Shape> List<T> shapes(Drawing page, Class<T> type, Role role) {
        return page.shapes().stream()
                .filter(s -> type.isInstance(s) && s.roles().contains(role))
                .map(type::cast)
                .toList();
    }

    private static void near(double is, double should) {
        assertThat(is).isCloseTo(should, within(1e-9));
    }

    /** Words that fill so many lines of a room and are all of one width. */
    private static String lines(int n) {
        return String.join(" ", Collections.nCopies(n, "m".repeat(40)));
    }

    // ---- heads ------------------------------------------------------------------------------------------------------

    @Test
    void theTitleStandsOverTheKindOfSheetAndARule() {
        Drawing page = pages(sheet()).get(0);
        Shape.Text title = text(page, "A title");
        assertThat(title.size()).isEqualTo(6);
        assertThat(title.bold()).isTrue();
        assertThat(title.at()).isEqualTo(new Point(20, 20));
        Shape.Text kind = text(page, "A sheet");
        assertThat(kind.size()).isEqualTo(3.4);
        near(kind.at().x(), 20);
        near(kind.at().y(), 26.2);
        List<Shape.Line> rules = shapes(page, Shape.Line.class, Role.RULE);
        assertThat(rules).hasSize(1);
        near(rules.get(0).from().x(), 20);
        near(rules.get(0).to().x(), 196);
        near(rules.get(0).from().y(), 29.2);
        assertThat(page.width()).isEqualTo(210);
        assertThat(page.height()).isEqualTo(297);
        assertThat(page.title()).isEqualTo("A title");
        assertThat(page.description()).isEqualTo("A sheet, page 1 of 1.");
    }

    @Test
    void longTitlesGoOnInFurtherLines() {
        String long1 = "m".repeat(20) + " " + "m".repeat(20);
        Drawing page = pages(Sheet.titled(long1, lines(4), Palette.COLOUR)).get(0);
        List<Shape.Text> title =
                page.texts().stream().filter(t -> t.size() == 6).toList();
        List<Shape.Text> kind =
                page.texts().stream().filter(t -> t.size() == 3.4).toList();
        assertThat(title).hasSize(2);
        near(title.get(1).at().y() - title.get(0).at().y(), 8);
        assertThat(kind).hasSizeGreaterThan(1);
        near(kind.get(0).at().y() - title.get(1).at().y(), 6.2);
        near(kind.get(1).at().y() - kind.get(0).at().y(), 4.8);
    }

    @Test
    void laterPagesBearASmallHeadAndTheirNumber() {
        Sheet s = sheet();
        for (int i = 0; i < 80; i++) {
            s.paragraph("line " + i);
        }
        List<Drawing> pages = pages(s);
        assertThat(pages).hasSize(2);
        Drawing second = pages.get(1);
        Shape.Text title = text(second, "A title");
        assertThat(title.at()).isEqualTo(new Point(20, 15));
        assertThat(title.size()).isEqualTo(3);
        assertThat(title.bold()).isTrue();
        Shape.Text kind = text(second, "A sheet");
        assertThat(kind.at()).isEqualTo(new Point(196, 15));
        assertThat(kind.anchor()).isEqualTo(Anchor.END);
        Shape.Line rule = shapes(second, Shape.Line.class, Role.RULE).get(0);
        assertThat(rule.from()).isEqualTo(new Point(20, 17));
        assertThat(rule.to()).isEqualTo(new Point(196, 17));
        Shape.Text number = text(second, "page 2 of 2");
        assertThat(number.at()).isEqualTo(new Point(196, 288));
        assertThat(number.anchor()).isEqualTo(Anchor.END);
        assertThat(number.size()).isEqualTo(2.6);
        assertThat(second.description()).isEqualTo("A sheet, page 2 of 2.");
        // Long names are cut so that the two do not meet.
        Sheet wide =
                Sheet.titled("m".repeat(90), "m".repeat(90), Palette.COLOUR).keepTogether(BOTTOM);
        for (Shape.Text t : pages(wide).get(1).texts()) {
            if (t.at().y() == 15) {
                double room = t.bold() ? 0.55 * 176 : 0.42 * 176;
                double width = TextWidths.em(t.text(), t.bold()) * 3;
                assertThat(width).isBetween(room - 6, room);
            }
        }
    }

    // ---- text -------------------------------------------------------------------------------------------------------

    @Test
    void linesOfAParagraphStandOneStepApart() {
        Drawing page = pages(sheet().paragraph(lines(5)).paragraph("next")).get(0);
        List<Shape.Text> found =
                page.texts().stream().filter(t -> t.text().startsWith("m")).toList();
        // Four words of some 115 mm to 176 mm: one to a line.
        assertThat(found).hasSize(5);
        near(found.get(0).at().y(), 29.2 + 3 + 1 + 3);
        for (int i = 1; i < 5; i++) {
            near(found.get(i).at().y() - found.get(i - 1).at().y(), STEP);
            near(found.get(i).at().x(), 20);
        }
        near(text(page, "next").at().y() - found.get(4).at().y(), STEP + 1);
        near(Sheet.paragraphHeight(lines(5)), 1 + 5 * STEP);
    }

    @Test
    void aHeadingStandsApartAndIsFitted() {
        Drawing page = pages(sheet().paragraph("before").heading("Readings").paragraph("after"))
                .get(0);
        Shape.Text heading = text(page, "Readings");
        assertThat(heading.size()).isEqualTo(3.8);
        assertThat(heading.bold()).isTrue();
        double before = text(page, "before").at().y();
        near(heading.at().y() - before, STEP - 3 + 6);
        near(text(page, "after").at().y() - heading.at().y(), 2 + 1 + 3);
        near(heading.at().x(), 20);
        Drawing wide = pages(sheet().heading("m".repeat(90)).paragraph("after")).get(0);
        Shape.Text cut =
                wide.texts().stream().filter(t -> t.size() == 3.8).findFirst().orElseThrow();
        assertThat(TextWidths.em(cut.text(), true) * 3.8).isBetween(170.0, 176.0);
        // One heading serves for what follows it alone.
        assertThat(texts(
                        pages(sheet().heading("Once").paragraph("a").paragraph("b"))
                                .get(0),
                        "Once"))
                .hasSize(1);
    }

    @Test
    void itemsAndStepsAreSetIn() {
        Drawing page = pages(sheet().items(List.of("one", lines(2))).steps(List.of("first", "second")))
                .get(0);
        List<Shape.Text> dashes = texts(page, "–");
        assertThat(dashes).hasSize(2);
        near(dashes.get(0).at().x(), 21);
        near(text(page, "one").at().x(), 27);
        near(text(page, "one").at().y(), dashes.get(0).at().y());
        near(dashes.get(1).at().y() - dashes.get(0).at().y(), STEP + 1);
        near(text(page, "1.").at().y() - dashes.get(1).at().y(), 2 * STEP + 1);
        near(text(page, "first").at().y(), text(page, "1.").at().y());
        near(text(page, "2.").at().y() - text(page, "1.").at().y(), STEP + 1);
        near(text(page, "2.").at().x(), 21);
        near(text(page, "second").at().x(), 27);
    }

    @Test
    void thingsToTickHaveASquare() {
        Drawing page = pages(sheet().ticks(List.of("one", "two"))).get(0);
        List<Shape.Rect> squares = shapes(page, Shape.Rect.class, Role.TICK);
        assertThat(squares).hasSize(2).allMatch(r -> r.width() == 3.2 && r.height() == 3.2 && r.x() == 21);
        near(text(page, "one").at().x(), 27);
        near(text(page, "one").at().y() - squares.get(0).y(), 3 - 0.1);
        near(squares.get(1).y() - squares.get(0).y(), STEP + 1.8);
        near(text(page, "two").at().y() - text(page, "one").at().y(), STEP + 1.8);
    }

    /** A paragraph starts on a page only with three of its lines, an item with six, or all where it has fewer. */
    @Test
    void longTextsAreNotPartedAtTheirFirstLines() {
        // From 281 mm up: how many lines still fit where the last paragraph ends.
        for (int lines : new int[] {2, 3, 4, 7}) {
            for (boolean item : new boolean[] {false, true}) {
                int together = Math.min(lines, item ? 6 : 3);
                for (int before = 35; before < 52; before++) {
                    Sheet s = sheet();
                    for (int i = 0; i < before; i++) {
                        s.paragraph("line");
                    }
                    if (item) {
                        s.items(List.of(lines(lines)));
                    } else {
                        s.paragraph(lines(lines));
                    }
                    double from = 32.2 + before * (STEP + 1) + 1;
                    long fit = Math.max(0, (long) Math.floor((BOTTOM - from) / STEP + 1e-9));
                    long first = fit >= together ? Math.min(fit, lines) : 0;
                    long on = pages(s).get(0).texts().stream()
                            .filter(t -> t.text().startsWith("m"))
                            .count();
                    assertThat(on).as("%d lines after %d", lines, before).isEqualTo(first);
                }
            }
        }
    }

    @Test
    void wordsLongerThanTheLineAreParted() {
        assertThat(Sheet.wrapped("  ab  cd ", 3, false, 50)).containsExactly("ab cd");
        double two = TextWidths.em("mm", false) * 3;
        assertThat(Sheet.wrapped("mmm", 3, false, two)).containsExactly("mm", "m");
        assertThat(Sheet.wrapped("mmm", 3, false, two - 0.01)).containsExactly("m", "m", "m");
        // A sign of two code units is not parted.
        double one = TextWidths.em("😀", false) * 3;
        assertThat(Sheet.wrapped("😀😀", 3, false, one)).containsExactly("😀", "😀");
    }

    /** Lines run as far as their room goes, to the width of a word, and no further. */
    @Test
    void linesUseTheirRoomAndNoMore() {
        String words = String.join(" ", Collections.nCopies(60, "mm"));
        reaches(sheet().paragraph(words), false, 196);
        reaches(sheet().items(List.of(words)), false, 196);
        reaches(sheet().ticks(List.of(words)), false, 196);
        reaches(sheet().caution(List.of(words)), false, 193);
        reaches(sheet().facts(facts("name", words)), true, 196);
        var cell = new Table(
                List.of(new Table.Column("a", 1, Table.Align.LEFT), new Table.Column("b", 3, Table.Align.LEFT)),
                List.of(List.of("c", words)),
                1);
        reaches(sheet().table(cell), false, 195);
        var head = new Table(
                List.of(new Table.Column("a", 1, Table.Align.LEFT), new Table.Column(words, 3, Table.Align.LEFT)),
                List.of(List.of("c", "d")),
                1);
        reaches(sheet().table(head), true, 195);
        var inStrips = new Table(List.of(new Table.Column("a", 1, Table.Align.LEFT)), List.of(List.of(words)), 2);
        reaches(sheet().table(inStrips), false, 20 + (176 - 5) / 2.0 - 1);
    }

    private static void reaches(Sheet sheet, boolean bold, double edge) {
        double right = pages(sheet).get(0).texts().stream()
                .filter(t -> t.text().startsWith("mm"))
                .mapToDouble(t -> t.bounds().right())
                .max()
                .orElseThrow();
        double word = TextWidths.em("mm ", bold) * 3;
        assertThat(right).isLessThanOrEqualTo(edge + 1e-9).isGreaterThan(edge - word);
    }

    @Test
    void aHeadingStandsOverWhateverFollows() {
        List<Sheet> all = List.of(
                sheet().heading("Head").paragraph("a"),
                sheet().heading("Head").items(List.of("a")),
                sheet().heading("Head").ticks(List.of("a")),
                sheet().heading("Head").caution(List.of("a")),
                sheet().heading("Head").facts(facts("b", "a")),
                sheet().heading("Head").fields(List.of("a")),
                sheet().heading("Head").writingLines("a", 1),
                sheet().heading("Head").table(table(1, 1)),
                sheet().heading("Head").drawing(drawing(0, 0, 10, 10), 20),
                sheet().heading("Head").factsBeside(facts("b", "a"), drawing(0, 0, 10, 10), 20));
        for (Sheet s : all) {
            Drawing page = pages(s).get(0);
            near(text(page, "Head").at().y(), 29.2 + 3 + 6);
            assertThat(page.texts())
                    .filteredOn(t -> t.text().equals("a") || t.text().equals("n1"))
                    .allMatch(t -> t.at().y() > 29.2 + 3 + 6);
        }
    }

    @Test
    void aTickIsNotPartedFromItsFirstSixLines() {
        for (int lines : new int[] {2, 6, 8}) {
            for (int before = 35; before < 52; before++) {
                Sheet s = sheet();
                for (int i = 0; i < before; i++) {
                    s.paragraph("line");
                }
                double from = 32.2 + before * (STEP + 1) + 1.8;
                long fit = Math.max(0, (long) Math.floor((BOTTOM - from) / STEP + 1e-9));
                Drawing first = pages(s.ticks(List.of(lines(lines)))).get(0);
                assertThat(first.texts().stream()
                                .filter(t -> t.text().startsWith("m"))
                                .count())
                        .as("%d lines after %d", lines, before)
                        .isEqualTo(fit >= Math.min(lines, 6) ? Math.min(fit, lines) : 0);
                assertThat(shapes(first, Shape.Rect.class, Role.TICK)).hasSize(fit >= Math.min(lines, 6) ? 1 : 0);
            }
        }
    }

    // ---- cautions ---------------------------------------------------------------------------------------------------

    @Test
    void cautionsStandInABoxWithItsSign() {
        Drawing page = pages(sheet().caution(List.of("hot", "sharp")).paragraph("after"))
                .get(0);
        Shape.Rect box = shapes(page, Shape.Rect.class, Role.CAUTION).get(0);
        near(box.x(), 20);
        near(box.width(), 176);
        near(box.y(), 29.2 + 3 + 2);
        near(box.height(), 2.4 + STEP + 0.6 + 1.4 + 2 * (STEP + 0.6));
        Shape.Text head = text(page, "Caution");
        near(head.at().x(), 30);
        near(head.at().y(), box.y() + 2.4 + 3);
        near(text(page, "hot").at().x(), 30);
        near(text(page, "hot").at().y(), box.y() + 2.4 + STEP + 0.6 + 3);
        near(text(page, "sharp").at().y() - text(page, "hot").at().y(), STEP + 0.6);
        List<Shape.Text> dashes = texts(page, "–");
        near(dashes.get(0).at().x(), 24);
        near(dashes.get(0).at().y(), text(page, "hot").at().y());
        Shape.Polyline sign = shapes(page, Shape.Polyline.class, Role.CAUTION).get(0);
        near(sign.points().get(0).x(), 24.9);
        near(sign.points().get(1).x() - sign.points().get(0).x(), 2.6);
        near(sign.points().get(0).x() - sign.points().get(2).x(), 2.6);
        near(sign.points().get(1).y() - sign.points().get(0).y(), 4.2);
        near(sign.points().get(2).y(), sign.points().get(1).y());
        near(sign.points().get(0).y(), box.y() + 2.4);
        Shape.Text mark = text(page, "!");
        near(mark.at().x(), 24.9);
        near(mark.at().y() - sign.points().get(0).y(), 3.7);
        near(text(page, "after").at().y(), box.y() + 2.4 + STEP + 0.6 + 2 * (STEP + 0.6) + 2 + 1 + 3);
        assertThat(box.y() + box.height())
                .isGreaterThan(text(page, "sharp").bounds().bottom());
        assertThat(shapes(pages(sheet().caution(List.of())).get(0), Shape.Rect.class, Role.CAUTION))
                .isEmpty();
    }

    @Test
    void cautionsThatFillMoreThanAPageGoOnInABoxOfTheirOwn() {
        List<String> many =
                IntStream.rangeClosed(1, 70).mapToObj(i -> "mind " + i).toList();
        List<Drawing> pages = pages(sheet().caution(many));
        List<String> told = new ArrayList<>();
        int boxes = 0;
        for (Drawing page : pages) {
            for (Shape.Rect box : shapes(page, Shape.Rect.class, Role.CAUTION)) {
                boxes++;
                assertThat(box.y() + box.height()).isLessThanOrEqualTo(BOTTOM + 1e-9);
                text(page, "Caution");
            }
            page.texts().stream()
                    .map(Shape.Text::text)
                    .filter(t -> t.startsWith("mind "))
                    .forEach(told::add);
        }
        assertThat(told).isEqualTo(many);
        // 48 on a full page: 257 mm less the head and foot of the box, 4.86 mm each.
        assertThat(boxes).isEqualTo(2);
        // What fits on one page stays on one, even where it must wait for the next.
        Sheet s = sheet();
        for (int i = 0; i < 40; i++) {
            s.paragraph("line");
        }
        List<Drawing> next = pages(s.caution(many.subList(0, 12)));
        assertThat(shapes(next.get(0), Shape.Rect.class, Role.CAUTION)).isEmpty();
        assertThat(shapes(next.get(1), Shape.Rect.class, Role.CAUTION)).hasSize(1);
    }

    // ---- facts and blanks -------------------------------------------------------------------------------------------

    private static Map<String, String> facts(String... namesAndValues) {
        Map<String, String> out = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            out.put(namesAndValues[i], namesAndValues[i + 1]);
        }
        return out;
    }

    @Test
    void factsStandInTwoColumns() {
        Drawing page = pages(sheet().facts(facts("Slots", "17", "Commutator bars", "34", "Poles", "4")))
                .get(0);
        double wide = TextWidths.em("Commutator bars", false) * 3;
        Shape.Text name = text(page, "Commutator bars");
        Shape.Text value = text(page, "34");
        near(name.at().x(), 20);
        near(value.at().x(), 20 + wide + 3);
        near(text(page, "17").at().x(), 20 + wide + 3);
        near(name.at().y(), value.at().y());
        near(text(page, "Slots").at().y(), 29.2 + 3 + 1 + 3);
        near(name.at().y() - text(page, "Slots").at().y(), STEP + 0.7);
        assertThat(name.bold()).isFalse();
        assertThat(value.bold()).isTrue();
    }

    @Test
    void longNamesOfFactsTakeNoMoreThanTheirShare() {
        Drawing page = pages(sheet().facts(facts(lines(2), "value", "b", lines(3), "c", "d")))
                .get(0);
        near(text(page, "value").at().x(), 20 + 0.55 * 176);
        List<Shape.Text> keys = page.texts().stream()
                .filter(t -> t.text().startsWith("m") && !t.bold())
                .toList();
        assertThat(keys).hasSizeGreaterThan(2).allMatch(t -> TextWidths.em(t.text(), false) * 3 <= 0.55 * 176 - 2);
        near(keys.get(1).at().y() - keys.get(0).at().y(), STEP);
        List<Shape.Text> values = page.texts().stream()
                .filter(t -> t.text().startsWith("m") && t.bold())
                .toList();
        assertThat(values).hasSizeGreaterThan(3).allMatch(t -> TextWidths.em(t.text(), true) * 3 <= 0.45 * 176);
        near(text(page, "b").at().y() - keys.get(0).at().y(), keys.size() * STEP + 0.7);
        near(text(page, "d").at().y() - text(page, "b").at().y(), values.size() * STEP + 0.7);
    }

    @Test
    void factsGoOnOnTheNextPage() {
        Map<String, String> many = new LinkedHashMap<>();
        for (int i = 1; i <= 70; i++) {
            many.put("name " + i, "value " + i);
        }
        List<Drawing> pages = pages(sheet().facts(many).paragraph("after"));
        assertThat(pages).hasSize(2);
        List<Shape.Text> first = pages.get(0).texts().stream()
                .filter(t -> t.text().startsWith("value"))
                .toList();
        // From 33.2 to 281 mm, 4.96 mm each.
        assertThat(first).hasSize(49);
        Shape.Text next = text(pages.get(1), "value 50");
        near(next.at().y(), 23);
        near(
                text(pages.get(1), "after").at().y()
                        - text(pages.get(1), "value 70").at().y(),
                STEP + 0.7 + 1);
    }

    @Test
    void blanksShareTheRow() {
        Drawing page = pages(sheet().fields(List.of("Date", "Meter", "Name")).paragraph("after"))
                .get(0);
        List<Shape.Line> lines = shapes(page, Shape.Line.class, Role.RULE).stream()
                .filter(l -> l.from().y() > 30)
                .toList();
        double each = (176 - 2 * 5) / 3.0;
        for (int i = 0; i < 3; i++) {
            String name = List.of("Date", "Meter", "Name").get(i);
            double x = 20 + i * (each + 5);
            near(text(page, name).at().x(), x);
            near(lines.get(i).from().x(), x + TextWidths.em(name, false) * 3 + 1.5);
            near(lines.get(i).to().x(), x + each);
            near(lines.get(i).from().y(), lines.get(i).to().y());
            near(lines.get(i).from().y() - text(page, name).at().y(), 0.8);
        }
        near(lines.get(0).from().y(), 29.2 + 3 + 4 + 5);
        near(text(page, "after").at().y(), lines.get(0).from().y() + 1 + 1 + 3);
        // Names give way to the line.
        Drawing wide = pages(sheet().fields(List.of("m".repeat(60), "b"))).get(0);
        Shape.Text cut = wide.texts().stream()
                .filter(t -> t.text().startsWith("m"))
                .findFirst()
                .orElseThrow();
        assertThat(TextWidths.em(cut.text(), false) * 3).isLessThanOrEqualTo(0.7 * (176 - 5) / 2);
    }

    @Test
    void linesToWriteOnStandEightApart() {
        Drawing page =
                pages(sheet().writingLines("Notes", 3).paragraph("after")).get(0);
        List<Shape.Line> lines = shapes(page, Shape.Line.class, Role.RULE).stream()
                .filter(l -> l.from().y() > 30)
                .toList();
        assertThat(lines).hasSize(3);
        near(text(page, "Notes").at().y(), 29.2 + 3 + 3 + 3);
        near(lines.get(0).from().y() - text(page, "Notes").at().y(), STEP - 3 + 8);
        near(lines.get(1).from().y() - lines.get(0).from().y(), 8);
        near(lines.get(2).from().x(), 20);
        near(lines.get(2).to().x(), 196);
        near(text(page, "after").at().y(), lines.get(2).from().y() + 1 + 3);
        // They are kept on one page.
        Sheet s = sheet();
        for (int i = 0; i < 44; i++) {
            s.paragraph("line");
        }
        assertThat(texts(pages(s.writingLines("Notes", 3)).get(0), "Notes")).isEmpty();
    }

    // ---- drawings ---------------------------------------------------------------------------------------------------

    private static Drawing drawing(double x, double y, double width, double height) {
        return new Drawing(
                "Drawn",
                "What it shows.",
                500,
                500,
                Palette.COLOUR,
                List.of(
                        new Shape.Rect(0, 0, 500, 500, 0, List.of(Role.PAPER)),
                        new Shape.Rect(x, y, width, height, 2, List.of(Role.BAR))));
    }

    private static Shape.Rect bar(Drawing page) {
        return shapes(page, Shape.Rect.class, Role.BAR).get(0);
    }

    @Test
    void theInkIsAllButThePaper() {
        assertThat(Sheet.ink(drawing(100, 50, 60, 30))).isEqualTo(new Box(99.5, 49.5, 160.5, 80.5));
        var empty = new Drawing(
                "", "", 10, 20, Palette.COLOUR, List.of(new Shape.Rect(0, 0, 10, 20, 0, List.of(Role.PAPER))));
        assertThat(Sheet.ink(empty)).isEqualTo(new Box(0, 0, 10, 20));
    }

    @Test
    void aDrawingStandsInTheMiddleAsLargeAsItWasMade() {
        Drawing page = pages(sheet().drawing(drawing(100, 50, 60, 30), 90).paragraph("after"))
                .get(0);
        Shape.Rect bar = bar(page);
        near(bar.width(), 60);
        near(bar.height(), 30);
        near(bar.x() + 30, 108);
        near(bar.y(), 29.2 + 3 + 2 + 0.5);
        near(bar.radius(), 2);
        near(text(page, "after").at().y(), bar.y() + 30 + 0.5 + 2 + 1 + 3);
        assertThat(shapes(page, Shape.Rect.class, Role.PAPER)).hasSize(1);
    }

    @Test
    void aDrawingIsScaledToItsHeightOrTheWidthOfTheText() {
        // 61 by 31 mm with its white, into 15.5 mm.
        Shape.Rect low =
                bar(pages(sheet().drawing(drawing(100, 50, 60, 30), 15.5)).get(0));
        near(low.width(), 30);
        near(low.height(), 15);
        near(low.radius(), 1);
        near(Sheet.height(drawing(100, 50, 60, 30), 15.5), 15.5);
        near(Sheet.height(drawing(100, 50, 60, 30), 90), 31);
        // 353 by 31 mm: 352 is twice the text.
        Shape.Rect wide =
                bar(pages(sheet().drawing(drawing(0, 50, 351, 30), 90)).get(0));
        near(wide.width(), 175.5);
        near(wide.x(), 20.25);
        near(Sheet.height(drawing(0, 0, 351, 351), 1000), 176);
        // No drawing is higher than a page has room.
        near(Sheet.height(drawing(0, 0, 10, 513), 1000), 281 - 24);
    }

    @Test
    void factsStandBesideADrawing() {
        Drawing page = pages(sheet().factsBeside(facts("Slots", "17"), drawing(100, 50, 60, 30), 61)
                        .paragraph("after"))
                .get(0);
        Shape.Rect bar = bar(page);
        near(bar.x() + bar.width(), 195.5);
        near(bar.width(), 60);
        near(bar.y(), 29.2 + 3 + 2 + 0.5);
        near(text(page, "Slots").at().y(), 29.2 + 3 + 2 + 3);
        near(text(page, "after").at().y(), bar.y() + 30.5 + 1 + 1 + 3);
        // Scaled into its room; below facts that are higher than it.
        Map<String, String> many = new LinkedHashMap<>();
        for (int i = 1; i <= 10; i++) {
            many.put("name " + i, "value");
        }
        Drawing low = pages(sheet().factsBeside(many, drawing(100, 50, 60, 30), 30.5)
                        .paragraph("after"))
                .get(0);
        near(bar(low).width(), 30);
        near(text(low, "after").at().y(), text(low, "name 10").at().y() - 3 + STEP + 0.7 + 1 + 1 + 3);
        // Values are wrapped clear of the drawing, 5 mm from it.
        Drawing narrow = pages(sheet().factsBeside(facts("Kind", lines(2)), drawing(100, 50, 60, 30), 61))
                .get(0);
        assertThat(narrow.texts())
                .filteredOn(t -> t.text().startsWith("m"))
                .isNotEmpty()
                .allMatch(t -> t.bounds().right() <= 196 - 61 - 5 + 1e-9);
    }

    @Test
    void drawingsSideBySideStandOnOneLine() {
        Drawing row = SideBySide.of(List.of(drawing(100, 50, 60, 30), drawing(7, 9, 20, 10)), 8, Palette.COLOUR);
        List<Shape.Rect> bars = shapes(row, Shape.Rect.class, Role.BAR);
        near(bars.get(0).x(), 0.5);
        near(bars.get(0).y() + 30, 30.5);
        near(bars.get(1).x(), 61 + 8 + 0.5);
        near(bars.get(1).y() + 10, 30.5);
        near(row.width(), 61 + 8 + 21);
        near(row.height(), 31);
        assertThat(row.title()).isEqualTo("Drawn");
        assertThat(row.description()).isEqualTo("What it shows.");
        assertThat(shapes(row, Shape.Rect.class, Role.PAPER)).isEmpty();
        var named = new Shape.Group(Optional.of("bar-1"), Optional.empty(), "", List.of(), List.of(bars.get(0)));
        var one = new Drawing("", "", 99, 99, Palette.COLOUR, List.of(named));
        assertThat(SideBySide.of(List.of(one, one, one), 8, Palette.COLOUR).shapes())
                .extracting(s -> ((Shape.Group) s).id().orElseThrow())
                .containsExactly("bar-1", "s1-bar-1", "s2-bar-1");
    }

    @Test
    void everyShapeIsPlacedAndScaled() {
        var placed = new Placed(10, 20, 0.5, "p-");
        var a = new Point(4, 6);
        var at = new Point(12, 23);
        var zero = new Point(0, 0);
        var origin = new Point(10, 20);
        List<Role> r = List.of(Role.WIRE);
        assertThat(placed.shape(new Shape.Line(zero, a, r))).isEqualTo(new Shape.Line(origin, at, r));
        assertThat(placed.shape(new Shape.Polyline(List.of(a, zero), true, r)))
                .isEqualTo(new Shape.Polyline(List.of(at, origin), true, r));
        assertThat(placed.shape(new Shape.Rect(4, 6, 8, 10, 2, r))).isEqualTo(new Shape.Rect(12, 23, 4, 5, 1, r));
        assertThat(placed.shape(new Shape.Curve(zero, List.of(new Shape.Cubic(a, zero, a)), r)))
                .isEqualTo(new Shape.Curve(origin, List.of(new Shape.Cubic(at, origin, at)), r));
        assertThat(placed.shape(new Shape.Arc(a, 8, 30, 60, r))).isEqualTo(new Shape.Arc(at, 4, 30, 60, r));
        assertThat(placed.shape(new Shape.Sector(a, 4, 8, 30, 60, r))).isEqualTo(new Shape.Sector(at, 2, 4, 30, 60, r));
        assertThat(placed.shape(new Shape.Circle(a, 8, r))).isEqualTo(new Shape.Circle(at, 4, r));
        assertThat(placed.shape(new Shape.Text(a, "x", 3, true, Anchor.END, r)))
                .isEqualTo(new Shape.Text(at, "x", 1.5, true, Anchor.END, r));
        var line = new Shape.Line(zero, a, r);
        assertThat(placed.shape(new Shape.Group(Optional.of("c"), Optional.empty(), "t", r, List.of(line))))
                .isEqualTo(new Shape.Group(
                        Optional.of("p-c"), Optional.empty(), "t", r, List.of(new Shape.Line(origin, at, r))));
    }

    // ---- tables -----------------------------------------------------------------------------------------------------

    private static Table table(int rows, int strips) {
        return new Table(
                List.of(
                        new Table.Column("Name", 1, Table.Align.LEFT),
                        new Table.Column("Value", 2, Table.Align.RIGHT),
                        new Table.Column("Kind", 1, Table.Align.MIDDLE),
                        new Table.Column("Done", 1, Table.Align.TICK)),
                IntStream.rangeClosed(1, rows)
                        .mapToObj(i -> List.of("n" + i, "v" + i, "k" + i, ""))
                        .toList(),
                strips);
    }

    @Test
    void cellsStandByTheirColumns() {
        Drawing page = pages(sheet().table(table(2, 1)).paragraph("after")).get(0);
        double top = 29.2 + 3 + 2;
        Shape.Rect head = shapes(page, Shape.Rect.class, Role.HEAD).get(0);
        assertThat(head.bounds().left()).isEqualTo(20);
        near(head.width(), 176);
        near(head.y(), top);
        near(head.height(), ROW);
        double unit = 176 / 5.0;
        // Half of a line's step and a little for the letters' own height.
        double down = (ROW - 2.8 * 1.3) / 2 + 2.8 * 1.02;
        Shape.Text name = text(page, "n1");
        assertThat(name.anchor()).isEqualTo(Anchor.START);
        near(name.at().x(), 21);
        near(name.at().y(), top + ROW + down);
        near(text(page, "n2").at().y(), top + 2 * ROW + down);
        Shape.Text value = text(page, "v1");
        assertThat(value.anchor()).isEqualTo(Anchor.END);
        near(value.at().x(), 20 + 3 * unit - 1);
        Shape.Text kind = text(page, "k1");
        assertThat(kind.anchor()).isEqualTo(Anchor.MIDDLE);
        near(kind.at().x(), 20 + 3.5 * unit);
        Shape.Text headOfNumbers = text(page, "Value");
        assertThat(headOfNumbers.anchor()).isEqualTo(Anchor.MIDDLE);
        assertThat(headOfNumbers.bold()).isTrue();
        near(headOfNumbers.at().x(), 20 + 2 * unit);
        near(headOfNumbers.at().y(), top + down);
        assertThat(text(page, "Name").anchor()).isEqualTo(Anchor.START);
        assertThat(name.bold()).isFalse();
        List<Shape.Rect> ticks = shapes(page, Shape.Rect.class, Role.TICK);
        assertThat(ticks).hasSize(2);
        near(ticks.get(0).x() + 1.6, 20 + 4.5 * unit);
        near(ticks.get(0).y() + 1.6, top + 1.5 * ROW);
        near(ticks.get(1).y() + 1.6, top + 2.5 * ROW);
        near(text(page, "after").at().y(), top + 3 * ROW + 1 + 1 + 3);
    }

    @Test
    void rulesRunRoundEveryCell() {
        Drawing page = pages(sheet().table(table(2, 1))).get(0);
        double top = 29.2 + 3 + 2;
        List<Shape.Line> rules = shapes(page, Shape.Line.class, Role.RULE).stream()
                .filter(l -> l.from().y() > 30)
                .toList();
        List<Shape.Line> across =
                rules.stream().filter(l -> l.from().y() == l.to().y()).toList();
        List<Shape.Line> down =
                rules.stream().filter(l -> l.from().x() == l.to().x()).toList();
        assertThat(across).hasSize(4);
        for (int i = 0; i < 4; i++) {
            near(across.get(i).from().y(), top + i * ROW);
            near(across.get(i).from().x(), 20);
            near(across.get(i).to().x(), 196);
        }
        assertThat(down).hasSize(5);
        double[] shares = {0, 1, 3, 4, 5};
        for (int i = 0; i < 5; i++) {
            near(down.get(i).from().x(), 20 + shares[i] * 176 / 5);
            near(down.get(i).from().y(), top);
            near(down.get(i).to().y(), top + 3 * ROW);
        }
        assertThat(rules).hasSize(9);
    }

    @Test
    void rowsGrowWithTheirLines() {
        var long1 = new Table(
                List.of(
                        new Table.Column("A head of many words that goes on", 1, Table.Align.LEFT),
                        new Table.Column("B", 9, Table.Align.LEFT)),
                List.of(List.of("mmmmm mmmmm mmmmm", "x"), List.of("a", "y")),
                1);
        Drawing page = pages(sheet().table(long1)).get(0);
        double top = 29.2 + 3 + 2;
        long headLines = page.texts().stream()
                .filter(t -> t.bold() && t.size() == 2.8 && !t.text().equals("B"))
                .count();
        assertThat(headLines).isGreaterThan(1);
        double head = ROW + (headLines - 1) * 2.8 * 1.3;
        near(shapes(page, Shape.Rect.class, Role.HEAD).get(0).height(), head);
        List<Shape.Text> cell = texts(page, "mmmmm");
        assertThat(cell).hasSize(3);
        double high = ROW + 2 * 2.8 * 1.3;
        near(cell.get(1).at().y() - cell.get(0).at().y(), 2.8 * 1.3);
        // One line stands in the middle of three.
        near(text(page, "x").at().y(), cell.get(1).at().y());
        near(text(page, "a").at().y(), top + head + high + (ROW - 2.8 * 1.3) / 2 + 2.8 * 1.02);
    }

    /** Strips of 5 mm between them, evenly filled. */
    @Test
    void stripsRunSideBySide() {
        Drawing page = pages(sheet().table(table(9, 2)).paragraph("after")).get(0);
        double strip = (176 - 5) / 2.0;
        List<Shape.Rect> heads = shapes(page, Shape.Rect.class, Role.HEAD);
        assertThat(heads).hasSize(2);
        near(heads.get(0).x(), 20);
        near(heads.get(1).x(), 20 + strip + 5);
        near(heads.get(0).width(), strip);
        near(heads.get(1).y(), heads.get(0).y());
        near(text(page, "n1").at().y(), text(page, "n6").at().y());
        near(text(page, "n6").at().x() - text(page, "n1").at().x(), strip + 5);
        near(text(page, "n4").at().y(), text(page, "n9").at().y());
        // Below the longer strip.
        near(text(page, "after").at().y(), heads.get(0).y() + 6 * ROW + 1 + 1 + 3);
    }

    @Test
    void fullPagesAreFilledStripByStripAndTheRestIsEven() {
        // 3 + 29.2 + 2 + head: (281 − 40.3) / 6.1 = 39 rows a strip on page 1; 42 on a later one from 20 mm.
        List<Drawing> pages = pages(sheet().table(table(100, 2)));
        assertThat(pages).hasSize(2);
        assertThat(texts(pages.get(0), "n78")).hasSize(1);
        assertThat(texts(pages.get(1), "n79")).hasSize(1);
        near(text(pages.get(1), "n79").at().y(), text(pages.get(1), "n90").at().y());
        near(text(pages.get(1), "n89").at().y(), text(pages.get(1), "n100").at().y());
        for (Drawing page : pages) {
            assertThat(shapes(page, Shape.Rect.class, Role.HEAD)).hasSize(2);
        }
        assertThat(shapes(pages.get(0), Shape.Line.class, Role.RULE)).allMatch(l -> l.to().y() <= BOTTOM + 1e-6);
        near(shapes(pages.get(1), Shape.Rect.class, Role.HEAD).get(0).y(), 20);
    }

    @Test
    void threeRowsStayWithTheHead() {
        for (int before = 40; before < 48; before++) {
            Sheet s = sheet();
            for (int i = 0; i < before; i++) {
                s.paragraph("line");
            }
            Drawing first = pages(s.table(table(9, 1))).get(0);
            double room = BOTTOM - (32.2 + before * (STEP + 1) + 2);
            int rows = (int) Math.floor((room - ROW) / ROW + 1e-9);
            long on = first.texts().stream()
                    .filter(t -> t.text().matches("n\\d+"))
                    .count();
            assertThat(on).as("after %d", before).isEqualTo(rows >= 3 ? Math.min(rows, 9) : 0);
        }
    }

    // ---- documents --------------------------------------------------------------------------------------------------

    @Test
    void aDocumentPutsEveryBlockOnPaper() {
        Drawing annex = drawing(0, 0, 10, 10);
        var document = new Document(
                "A title",
                "A sheet",
                Palette.COLOUR,
                List.of(
                        new Block.Heading("Head"),
                        new Block.Paragraph("para"),
                        new Block.Items(List.of("item")),
                        new Block.Ticks(List.of("tick")),
                        new Block.Cautions(List.of("care")),
                        new Block.Facts(facts("Known", "17", "Unknown", "")),
                        new Block.Grid(table(1, 1)),
                        new Block.Blanks(List.of("Date")),
                        new Block.Lines(3),
                        new Block.Pictures(List.of(drawing(0, 0, 40, 30), drawing(0, 0, 40, 300))),
                        new Block.Annex("The plan", new coilwright.drawing.DrawingPages(List.of(annex, annex))),
                        new Block.Annex("The coil", new coilwright.drawing.DrawingPages(List.of(annex)))));
        List<Drawing> pages = document.pages().pages();
        assertThat(pages).hasSize(4).endsWith(annex, annex, annex);
        Drawing page = pages.get(0);
        for (String words : List.of(
                "Head",
                "para",
                "item",
                "tick",
                "care",
                "17",
                "_".repeat(24),
                "n1",
                "Date",
                "The plan: 2 pages at the end.",
                "The coil: 1 page at the end.")) {
            text(page, words);
        }
        // Three empty lines, as wide as the text but for the room of a name.
        assertThat(shapes(page, Shape.Line.class, Role.RULE))
                .filteredOn(l -> Math.abs(l.from().x() - 21.5) < 1e-9 && l.to().x() == 196)
                .hasSize(3);
        List<Shape.Rect> pictures = shapes(page, Shape.Rect.class, Role.BAR);
        // 301 mm with its white, put into 120.
        near(pictures.get(1).height(), 300 * 120 / 301.0);
        near(pictures.get(0).height(), 30 * 120 / 301.0);
    }

    @Test
    void blocksCheckWhatTheyHold() {
        for (int lines : new int[] {0, 31}) {
            org.assertj.core.api.Assertions.assertThatThrownBy(() -> new Block.Lines(lines))
                    .hasMessage("there are " + lines + " lines, but must be 1 to 30");
        }
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> new Table(List.of(), List.of(), 1))
                .hasMessage("a table has no columns, but needs one");
        for (double share : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            org.assertj.core.api.Assertions.assertThatThrownBy(() -> new Table.Column("Bars", share, Table.Align.LEFT))
                    .hasMessage("column \"Bars\" has a share of " + share + ", but must have more than 0");
        }
        assertThat(table(1, 6).strips()).isEqualTo(6);
        assertThat(new Block.Lines(30).lines()).isEqualTo(30);
        assertThat(new Block.Lines(1).lines()).isEqualTo(1);
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> new Block.Pictures(List.of()))
                .hasMessage("there are no drawings, but one is needed");
    }
}
