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
import java.util.List;
import java.util.Map;

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

    private static final double TOP = 24;
    private static final double BOTTOM = 281;
    private static final double BODY = 3;
    private static final double LINE = 1.42;
    private static final double CELL = 2.8;
    private static final double ROW = 6.1;
    private static final double STRIP_GAP = 5;
    private static final double TICK = 3.2;

    private final String title;
    private final String subtitle;
    private final Palette palette;
    private final List<List<Shape>> pages = new ArrayList<>();
    private double y;
    private int drawings;
    private String heading = "";

    private Sheet(String title, String subtitle, Palette palette) {
        this.title = title;
        this.subtitle = subtitle;
        this.palette = palette;
        pages.add(new ArrayList<>());
        y = 20;
        for (String line : wrapped(title, 6, true, ROOM)) {
            text(LEFT, y, line, 6, true, Anchor.START, Role.TITLE);
            y += 8;
        }
        y -= 1.8;
        for (String line : wrapped(subtitle, 3.4, false, ROOM)) {
            text(LEFT, y, line, 3.4, false, Anchor.START, Role.NOTE);
            y += 4.8;
        }
        y -= 1.8;
        add(new Shape.Line(new Point(LEFT, y), new Point(RIGHT, y), List.of(Role.RULE)));
        y += 3;
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
        heading = words;
        return this;
    }

    /**
     * Begins a new page unless there is room for what must not be parted.
     *
     * @param height mm
     * @return this sheet
     */
    public Sheet keepTogether(double height) {
        reserve(height);
        return this;
    }

    /** Finds room for what comes next, its heading with it, and writes the heading. */
    private void begin(double gap, double height) {
        if (heading.isEmpty()) {
            y += gap;
            reserve(height);
            return;
        }
        reserve(8 + gap + height);
        y += 6;
        text(LEFT, y, TextWidths.fit(heading, 3.8, true, ROOM), 3.8, true, Anchor.START, Role.LABEL);
        y += 2 + gap;
        heading = "";
    }

    /**
     * Adds running text.
     *
     * @param words broken into lines as it needs
     * @return this sheet
     */
    public Sheet paragraph(String words) {
        List<String> lines = wrapped(words, BODY, false, ROOM);
        begin(1, Math.min(lines.size(), 3) * BODY * LINE);
        lines(lines, LEFT);
        return this;
    }

    /** How high {@link #paragraph} makes words, mm. */
    static double paragraphHeight(String words) {
        return 1 + wrapped(words, BODY, false, ROOM).size() * BODY * LINE;
    }

    /**
     * Adds items, each with a dash.
     *
     * @param items one line each
     * @return this sheet
     */
    public Sheet items(List<String> items) {
        for (String item : items) {
            item("–", item);
        }
        return this;
    }

    /**
     * Adds steps, numbered from 1.
     *
     * @param steps one or more lines each
     * @return this sheet
     */
    public Sheet steps(List<String> steps) {
        for (int i = 0; i < steps.size(); i++) {
            item((i + 1) + ".", steps.get(i));
        }
        return this;
    }

    private void item(String mark, String words) {
        double indent = 7;
        List<String> lines = wrapped(words, BODY, false, ROOM - indent);
        begin(1, Math.min(lines.size(), 6) * BODY * LINE);
        text(LEFT + 1, y + BODY, mark, BODY, false, Anchor.START, Role.LABEL);
        lines(lines, LEFT + indent);
    }

    /**
     * Adds items with a small square to tick.
     *
     * @param items one line each
     * @return this sheet
     */
    public Sheet ticks(List<String> items) {
        double indent = 7;
        for (String item : items) {
            List<String> lines = wrapped(item, BODY, false, ROOM - indent);
            begin(1.8, Math.min(lines.size(), 6) * BODY * LINE);
            tick(LEFT + 1, y + 0.1);
            lines(lines, LEFT + indent);
        }
        return this;
    }

    private void tick(double x, double top) {
        add(new Shape.Rect(x, top, TICK, TICK, 0, List.of(Role.TICK)));
    }

    /**
     * Adds a box of cautions; kept on one page where it fits on one.
     *
     * @param items one line each
     * @return this sheet
     */
    public Sheet caution(List<String> items) {
        if (items.isEmpty()) {
            return this;
        }
        double indent = 7;
        double inner = 3;
        List<List<String>> left = new ArrayList<>();
        items.forEach(i -> left.add(wrapped(i, BODY, false, ROOM - 2 * inner - indent)));
        begin(2, Math.min(height(left), BOTTOM - TOP));
        while (!left.isEmpty()) {
            List<List<String>> here = new ArrayList<>();
            while (!left.isEmpty() && (here.isEmpty() || y + height(here, left.get(0)) <= BOTTOM)) {
                here.add(left.remove(0));
            }
            double high = height(here);
            add(new Shape.Rect(LEFT, y, ROOM, high, 1, List.of(Role.CAUTION)));
            y += 2.4;
            sign(LEFT + inner + 1.9, y + 2.6);
            text(LEFT + inner + indent, y + 3, "Caution", BODY, true, Anchor.START, Role.CAUTION);
            y += BODY * LINE + 0.6;
            for (List<String> lines : here) {
                text(LEFT + inner + 1, y + BODY, "–", BODY, false, Anchor.START, Role.LABEL);
                for (String line : lines) {
                    text(LEFT + inner + indent, y + BODY, line, BODY, false, Anchor.START, Role.LABEL);
                    y += BODY * LINE;
                }
                y += 0.6;
            }
            y += 2;
            if (!left.isEmpty()) {
                nextPage();
            }
        }
        return this;
    }

    private static double height(List<List<String>> items) {
        double h = 2.4 + BODY * LINE + 0.6 + 1.4;
        for (List<String> lines : items) {
            h += lines.size() * BODY * LINE + 0.6;
        }
        return h;
    }

    private static double height(List<List<String>> items, List<String> more) {
        return height(items) + more.size() * BODY * LINE + 0.6;
    }

    private void sign(double x, double middle) {
        add(new Shape.Polyline(
                List.of(new Point(x, middle - 2.6), new Point(x + 2.6, middle + 1.6), new Point(x - 2.6, middle + 1.6)),
                true,
                List.of(Role.CAUTION)));
        add(new Shape.Text(new Point(x, middle + 1.1), "!", 2.6, true, Anchor.MIDDLE, List.of(Role.CAUTION)));
    }

    /**
     * Adds names and values beneath each other, in one column.
     *
     * @param facts values by name, in order
     * @return this sheet
     */
    public Sheet facts(Map<String, String> facts) {
        begin(0, BODY * LINE + 2);
        y = facts(facts, LEFT, ROOM, y);
        return this;
    }

    private double facts(Map<String, String> facts, double x, double room, double from) {
        double at = from + 1;
        double name = 0;
        for (String key : facts.keySet()) {
            name = Math.max(name, TextWidths.em(key, false) * BODY);
        }
        name = Math.min(name + 3, room * 0.55);
        for (Map.Entry<String, String> f : facts.entrySet()) {
            List<String> keys = wrapped(f.getKey(), BODY, false, name - 2);
            List<String> values = wrapped(f.getValue(), BODY, true, room - name);
            double high = Math.max(keys.size(), values.size()) * BODY * LINE + 0.7;
            if (at + high > BOTTOM) {
                nextPage();
                at = y;
            }
            column(keys, x, at, false, Role.NOTE);
            column(values, x + name, at, true, Role.LABEL);
            at += high;
        }
        return at;
    }

    private void column(List<String> lines, double x, double from, boolean bold, Role role) {
        double at = from + BODY;
        for (String line : lines) {
            text(x, at, line, BODY, bold, Anchor.START, role);
            at += BODY * LINE;
        }
    }

    /**
     * Adds names with a line to write on, as many on a row as there are.
     *
     * @param names one row
     * @return this sheet
     */
    public Sheet fields(List<String> names) {
        begin(4, 9);
        double gap = 5;
        double each = (ROOM - gap * (names.size() - 1)) / names.size();
        for (int i = 0; i < names.size(); i++) {
            double x = LEFT + i * (each + gap);
            String name = TextWidths.fit(names.get(i), BODY, false, each * 0.7);
            text(x, y + 4.2, name, BODY, false, Anchor.START, Role.NOTE);
            double from = x + TextWidths.em(name, false) * BODY + 1.5;
            add(new Shape.Line(new Point(from, y + 5), new Point(x + each, y + 5), List.of(Role.RULE)));
        }
        y += 6;
        return this;
    }

    /**
     * {@return empty lines to write on, kept on one page}
     *
     * @param words what for, small above them
     * @param lines how many
     */
    public Sheet writingLines(String words, int lines) {
        double step = 8;
        begin(3, BODY * LINE + lines * step);
        text(LEFT, y + BODY, words, BODY, false, Anchor.START, Role.NOTE);
        y += BODY * LINE;
        for (int i = 0; i < lines; i++) {
            y += step;
            add(new Shape.Line(new Point(LEFT, y), new Point(RIGHT, y), List.of(Role.RULE)));
        }
        return this;
    }

    /**
     * Adds a drawing in the middle, no larger than it was made, no wider than the text and no higher than given.
     *
     * @param drawing the drawing
     * @param mostHeight mm
     * @return this sheet
     */
    public Sheet drawing(Drawing drawing, double mostHeight) {
        Box ink = ink(drawing);
        double scale = scale(ink, mostHeight);
        begin(2, scale * ink.height());
        embed(drawing, ink, LEFT + (ROOM - scale * ink.width()) / 2, y, scale);
        y += scale * ink.height() + 2;
        return this;
    }

    private static double scale(Box ink, double mostHeight) {
        return Math.min(1, Math.min(ROOM / ink.width(), Math.min(mostHeight, BOTTOM - TOP) / ink.height()));
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
        Box ink = ink(drawing);
        double scale = Math.min(1, Math.min(widest / ink.width(), (BOTTOM - TOP) / ink.height()));
        double wide = scale * ink.width();
        double high = scale * ink.height();
        begin(2, high);
        int page = pages.size();
        double from = y;
        embed(drawing, ink, RIGHT - wide, from, scale);
        double below = facts(facts, LEFT, ROOM - wide - 5, from - 1);
        y = pages.size() == page ? Math.max(below, from + high) + 1 : below;
        return this;
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

    private void embed(Drawing drawing, Box ink, double x, double atY, double scale) {
        drawings++;
        var placed = new Placed(
                x - scale * ink.left(), atY - scale * ink.top(), scale, drawings == 1 ? "" : "d" + drawings + "-");
        for (Shape s : drawing.shapes()) {
            if (!s.roles().contains(Role.PAPER)) {
                add(placed.shape(s));
            }
        }
    }

    /**
     * Adds a table; its head stands again on every page and every strip.
     *
     * @param table heads and rows
     * @return this sheet
     */
    public Sheet table(Table table) {
        new TableRun(table).run();
        return this;
    }

    private final class TableRun {
        private final Table table;
        private final int n;
        private final double stripWidth;
        private final double[] left;
        private final List<List<List<String>>> rows = new ArrayList<>();
        private final List<Double> heights = new ArrayList<>();
        private final List<List<String>> head = new ArrayList<>();
        private double headHeight = ROW;

        TableRun(Table table) {
            this.table = table;
            this.n = table.columns().size();
            this.stripWidth = (ROOM - STRIP_GAP * (table.strips() - 1)) / table.strips();
            double total =
                    table.columns().stream().mapToDouble(Table.Column::share).sum();
            this.left = new double[n + 1];
            for (int i = 0; i < n; i++) {
                left[i + 1] = left[i] + stripWidth * table.columns().get(i).share() / total;
                List<String> lines = wrapped(table.columns().get(i).head(), CELL, true, left[i + 1] - left[i] - 2);
                head.add(lines);
                headHeight = Math.max(headHeight, rowHeight(lines.size()));
            }
            for (List<String> row : table.rows()) {
                List<List<String>> cells = new ArrayList<>();
                double high = ROW;
                for (int i = 0; i < n; i++) {
                    List<String> lines = wrapped(row.get(i), CELL, false, left[i + 1] - left[i] - 2);
                    cells.add(lines);
                    high = Math.max(high, rowHeight(lines.size()));
                }
                rows.add(cells);
                heights.add(high);
            }
        }

        private static double rowHeight(int lines) {
            return ROW + (lines - 1) * CELL * 1.3;
        }

        void run() {
            int next = 0;
            while (next < rows.size()) {
                double few = headHeight;
                for (int i = next; i < Math.min(rows.size(), next + 3); i++) {
                    few += heights.get(i);
                }
                begin(next == 0 ? 2 : 0, few);
                double room = BOTTOM - y - headHeight;
                room = Math.min(room, even(next, room));
                double top = y;
                double lowest = y;
                for (int strip = 0; strip < table.strips() && next < rows.size(); strip++) {
                    y = top;
                    int end = fill(next, room);
                    paint(LEFT + strip * (stripWidth + STRIP_GAP), next, end);
                    lowest = Math.max(lowest, y);
                    next = end;
                }
                y = lowest + 1;
            }
        }

        /** The least height in which all that is left runs evenly over the strips; the room where it takes more. */
        private double even(int from, double room) {
            double each = 0;
            for (int i = from; i < rows.size(); i++) {
                each += heights.get(i);
            }
            each /= table.strips();
            while (each < room) {
                int at = from;
                for (int s = 0; s < table.strips() && at < rows.size(); s++) {
                    at = fill(at, each);
                }
                if (at == rows.size()) {
                    return each;
                }
                each += ROW / 2;
            }
            return room;
        }

        private int fill(int from, double room) {
            int end = from;
            double used = 0;
            while (end < rows.size() && (end == from || used + heights.get(end) <= room + 1e-6)) {
                used += heights.get(end);
                end++;
            }
            return end;
        }

        private void paint(double x, int from, int to) {
            double top = y;
            add(new Shape.Rect(x, y, stripWidth, headHeight, 0, List.of(Role.HEAD)));
            for (int i = 0; i < n; i++) {
                cell(head.get(i), x, i, headHeight, true);
            }
            y += headHeight;
            rule(x, top);
            rule(x, y);
            for (int r = from; r < to; r++) {
                for (int i = 0; i < n; i++) {
                    if (table.columns().get(i).align() == Table.Align.TICK) {
                        tick(x + (left[i] + left[i + 1]) / 2 - TICK / 2, y + (heights.get(r) - TICK) / 2);
                    } else {
                        cell(rows.get(r).get(i), x, i, heights.get(r), false);
                    }
                }
                y += heights.get(r);
                rule(x, y);
            }
            for (int i = 0; i <= n; i++) {
                add(new Shape.Line(new Point(x + left[i], top), new Point(x + left[i], y), List.of(Role.RULE)));
            }
        }

        private void rule(double x, double at) {
            add(new Shape.Line(new Point(x, at), new Point(x + stripWidth, at), List.of(Role.RULE)));
        }

        private void cell(List<String> lines, double x, int column, double high, boolean bold) {
            Table.Align align = bold && table.columns().get(column).align() == Table.Align.RIGHT
                    ? Table.Align.MIDDLE
                    : table.columns().get(column).align();
            double at = y + (high - lines.size() * CELL * 1.3) / 2 + CELL * 1.02;
            double from = x + left[column] + 1;
            double to = x + left[column + 1] - 1;
            for (String line : lines) {
                switch (align) {
                    case LEFT -> text(from, at, line, CELL, bold, Anchor.START, Role.LABEL);
                    case MIDDLE, TICK -> text((from + to) / 2, at, line, CELL, bold, Anchor.MIDDLE, Role.LABEL);
                    case RIGHT -> text(to, at, line, CELL, bold, Anchor.END, Role.LABEL);
                }
                at += CELL * 1.3;
            }
        }
    }

    private void lines(List<String> lines, double x) {
        for (String line : lines) {
            reserve(BODY * LINE);
            text(x, y + BODY, line, BODY, false, Anchor.START, Role.LABEL);
            y += BODY * LINE;
        }
    }

    private void text(double x, double at, String words, double size, boolean bold, Anchor anchor, Role role) {
        if (!words.isEmpty()) {
            add(new Shape.Text(new Point(x, at), words, size, bold, anchor, List.of(role)));
        }
    }

    private void add(Shape shape) {
        pages.get(pages.size() - 1).add(shape);
    }

    private void reserve(double height) {
        if (y + height > BOTTOM) {
            nextPage();
        }
    }

    private void nextPage() {
        pages.add(new ArrayList<>());
        text(LEFT, 15, TextWidths.fit(title, BODY, true, ROOM * 0.55), BODY, true, Anchor.START, Role.TITLE);
        text(RIGHT, 15, TextWidths.fit(subtitle, BODY, false, ROOM * 0.42), BODY, false, Anchor.END, Role.NOTE);
        add(new Shape.Line(new Point(LEFT, 17), new Point(RIGHT, 17), List.of(Role.RULE)));
        y = TOP - 4;
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
        List<Drawing> out = new ArrayList<>();
        for (int i = 0; i < pages.size(); i++) {
            List<Shape> shapes = new ArrayList<>();
            shapes.add(new Shape.Rect(0, 0, WIDTH, HEIGHT, 0, List.of(Role.PAPER)));
            shapes.addAll(pages.get(i));
            shapes.add(new Shape.Text(
                    new Point(RIGHT, 288),
                    "page " + (i + 1) + " of " + pages.size(),
                    2.6,
                    false,
                    Anchor.END,
                    List.of(Role.NOTE)));
            out.add(new Drawing(
                    title,
                    subtitle + ", page " + (i + 1) + " of " + pages.size() + ".",
                    WIDTH,
                    HEIGHT,
                    palette,
                    shapes));
        }
        return new DrawingPages(out);
    }
}
