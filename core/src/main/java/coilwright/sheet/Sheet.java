package coilwright.sheet;

import coilwright.drawing.Box;
import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.drawing.Point;
import coilwright.drawing.Role;
import coilwright.drawing.Shape;
import coilwright.drawing.Shape.Anchor;
import coilwright.drawing.TextWidths;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/**
 * A document on upright A4 pages, filled from top to bottom; what finds no room goes to the next page. Every page bears
 * its number and how many there are.
 */
public final class Sheet {
    /** Width of a page, mm. */
    public static final double WIDTH = 210;

    /** Height of a page, mm. */
    public static final double HEIGHT = 297;

    /** Left edge of the text, mm: wide enough to punch. */
    public static final double LEFT = 20;

    /** Right edge of the text, mm. */
    public static final double RIGHT = 196;

    /** Width of the text, mm. */
    public static final double ROOM = RIGHT - LEFT;

    /** Of the last page, mm: less is hardly worth a page of its own. */
    private static final double LITTLE = 52;

    /** How close lines and rows may come, in percent of the usual. */
    private static final int CLOSEST = 90;

    private static final int CLOSER = 2;

    private final String title;
    private final String subtitle;
    private final Palette palette;
    private final List<Consumer<SheetLayout>> parts = new ArrayList<>();

    private Sheet(String title, String subtitle, Palette palette) {
        this.title = title;
        this.subtitle = subtitle;
        this.palette = palette;
    }

    private Sheet add(Consumer<SheetLayout> part) {
        parts.add(part);
        return this;
    }

    /**
     * {@return an empty sheet}
     *
     * @param title what it is about: stands large on page 1 and small on the others
     * @param subtitle what kind of sheet it is
     * @param palette colours, or black, white and grey
     */
    public static Sheet titled(String title, String subtitle, Palette palette) {
        return new Sheet(title, subtitle, palette);
    }

    /**
     * Adds a heading, kept on one page with the start of what follows.
     *
     * @param words one line
     * @return this sheet
     */
    public Sheet heading(String words) {
        return add(page -> page.heading(words));
    }

    /**
     * Begins a new page unless there is room for what must not be parted.
     *
     * @param height mm
     * @return this sheet
     */
    public Sheet keepTogether(double height) {
        return add(page -> page.keepTogether(height));
    }

    /**
     * Adds running text.
     *
     * @param words broken into lines as it needs
     * @return this sheet
     */
    public Sheet paragraph(String words) {
        return add(page -> page.paragraph(words));
    }

    /** How high {@link #paragraph} makes words, mm. */
    static double paragraphHeight(String words) {
        return 1 + wrapped(words, SheetLayout.BODY, false, ROOM).size() * SheetLayout.BODY * SheetLayout.LINE;
    }

    /**
     * Adds items, each with a dash.
     *
     * @param items one line each
     * @return this sheet
     */
    public Sheet items(List<String> items) {
        List<String> kept = List.copyOf(items);
        return add(page -> page.items(kept));
    }

    /**
     * Adds steps, numbered from 1.
     *
     * @param steps one or more lines each
     * @return this sheet
     */
    public Sheet steps(List<String> steps) {
        List<String> kept = List.copyOf(steps);
        return add(page -> page.steps(kept));
    }

    /**
     * Adds items with a small square to tick.
     *
     * @param items one line each
     * @return this sheet
     */
    public Sheet ticks(List<String> items) {
        List<String> kept = List.copyOf(items);
        return add(page -> page.ticks(kept));
    }

    /**
     * Adds a box of cautions; kept on one page where it fits on one.
     *
     * @param items one line each
     * @return this sheet
     */
    public Sheet caution(List<String> items) {
        List<String> kept = List.copyOf(items);
        return add(page -> page.caution(kept));
    }

    /**
     * Adds names and values beneath each other, in one column.
     *
     * @param facts values by name, in order
     * @return this sheet
     */
    public Sheet facts(Map<String, String> facts) {
        Map<String, String> kept = new LinkedHashMap<>(facts);
        return add(page -> page.facts(kept));
    }

    /**
     * Adds names with a line to write on, as many on a row as there are.
     *
     * @param names one row
     * @return this sheet
     */
    public Sheet fields(List<String> names) {
        List<String> kept = List.copyOf(names);
        return add(page -> page.fields(kept));
    }

    /**
     * {@return empty lines to write on, kept on one page}
     *
     * @param words what for, small above them
     * @param lines how many
     */
    public Sheet writingLines(String words, int lines) {
        return add(page -> page.writingLines(words, lines));
    }

    /**
     * Adds a drawing in the middle, no larger than it was made, no wider than the text and no higher than given.
     *
     * @param drawing the drawing
     * @param mostHeight mm
     * @return this sheet
     */
    public Sheet drawing(Drawing drawing, double mostHeight) {
        return add(page -> page.drawing(drawing, mostHeight));
    }

    static double scale(Box ink, double mostHeight) {
        return Math.min(
                1,
                Math.min(
                        ROOM / ink.width(), Math.min(mostHeight, SheetLayout.BOTTOM - SheetLayout.TOP) / ink.height()));
    }

    /** How high {@link #drawing} makes a drawing, mm. */
    static double height(Drawing drawing, double mostHeight) {
        Box ink = ink(drawing);
        return scale(ink, mostHeight) * ink.height();
    }

    /**
     * Adds facts at the left and a drawing at the right of them.
     *
     * @param facts values by name, in order
     * @param drawing the drawing
     * @param widest room for the drawing, mm, at most the width of the text less 50
     * @return this sheet
     */
    public Sheet factsBeside(Map<String, String> facts, Drawing drawing, double widest) {
        Map<String, String> kept = new LinkedHashMap<>(facts);
        return add(page -> page.factsBeside(kept, drawing, widest));
    }

    /** The part of a drawing that is not empty, with a hair of white around it. */
    static Box ink(Drawing drawing) {
        return drawing.shapes().stream()
                .filter(s -> !s.roles().contains(Role.PAPER))
                .map(Shape::bounds)
                .reduce(Box::union)
                .map(b -> new Box(b.left() - 0.5, b.top() - 0.5, b.right() + 0.5, b.bottom() + 0.5))
                .orElse(drawing.page());
    }

    /**
     * Adds a table; its head stands again on every page and every strip.
     *
     * @param table heads and rows
     * @return this sheet
     */
    public Sheet table(Table table) {
        return add(page -> page.table(table));
    }

    /** Lines no wider than the room; a word that is wider is parted. */
    static List<String> wrapped(String words, double size, boolean bold, double room) {
        List<String> parts = new ArrayList<>();
        for (String word : words.strip().split("\\s+")) {
            String rest = word;
            while (TextWidths.em(rest, bold) * size > room && rest.codePointCount(0, rest.length()) > 1) {
                int end = rest.length();
                while (end > rest.offsetByCodePoints(0, 1)
                        && TextWidths.em(rest.substring(0, end), bold) * size > room) {
                    end = rest.offsetByCodePoints(end, -1);
                }
                parts.add(rest.substring(0, end));
                rest = rest.substring(end);
            }
            parts.add(rest);
        }
        return TextWidths.wrap(String.join(" ", parts), size, bold, room, Integer.MAX_VALUE);
    }

    /** {@return all pages, numbered} */
    public DrawingPages pages() {
        return numbered(laidOut(100));
    }

    /**
     * {@return all pages, numbered, lines and rows somewhat closer than usual where that saves a last page with next to
     * nothing on it}
     */
    public DrawingPages fewestPages() {
        SheetLayout usual = laidOut(100);
        if (usual.lastPageHeight() > LITTLE || laidOut(CLOSEST).pageCount() == usual.pageCount()) {
            return numbered(usual);
        }
        int percent = 100 - CLOSER;
        SheetLayout closer = laidOut(percent);
        while (closer.pageCount() == usual.pageCount()) {
            percent -= CLOSER;
            closer = laidOut(percent);
        }
        return numbered(closer);
    }

    private SheetLayout laidOut(int percent) {
        var layout = new SheetLayout(title, subtitle, percent / 100.0);
        parts.forEach(p -> p.accept(layout));
        return layout;
    }

    private DrawingPages numbered(SheetLayout layout) {
        int count = layout.pageCount();
        List<Drawing> out = new ArrayList<>();
        for (List<Shape> page : layout.pages()) {
            int number = out.size() + 1;
            List<Shape> shapes = new ArrayList<>();
            shapes.add(new Shape.Rect(0, 0, WIDTH, HEIGHT, 0, List.of(Role.PAPER)));
            shapes.addAll(page);
            shapes.add(new Shape.Text(
                    new Point(RIGHT, 288),
                    "page " + number + " of " + count,
                    2.6,
                    false,
                    Anchor.END,
                    List.of(Role.NOTE)));
            out.add(new Drawing(
                    title, subtitle + ", page " + number + " of " + count + ".", WIDTH, HEIGHT, palette, shapes));
        }
        return new DrawingPages(out);
    }
}
