package coilwright.sheet;

import coilwright.drawing.Box;
import coilwright.drawing.Drawing;
import coilwright.drawing.Point;
import coilwright.drawing.Role;
import coilwright.drawing.Shape;
import coilwright.drawing.Shape.Anchor;
import coilwright.drawing.TextWidths;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Fills upright A4 pages from top to bottom; what finds no room goes to the next page. */
final class SheetLayout {
    private static final double LEFT = Sheet.LEFT;
    private static final double RIGHT = Sheet.RIGHT;
    private static final double ROOM = Sheet.ROOM;
    static final double TOP = 24;
    static final double BOTTOM = 281;
    static final double BODY = 3;
    static final double LINE = 1.42;
    private static final double ROW = 6.1;
    private static final double WRITING = 8;
    private static final double TICK = 3.2;

    private final String title;
    private final String subtitle;
    private final double lineHigh;
    private final double rowHigh;
    private final double writing;
    private final List<List<Shape>> pages = new ArrayList<>();
    private double y;
    private int drawings;
    private String heading = "";

    /**
     * An empty page with its title.
     *
     * @param closeness how high lines, rows and room to write are, as a share of the usual
     */
    SheetLayout(String title, String subtitle, double closeness) {
        this.title = title;
        this.subtitle = subtitle;
        this.lineHigh = BODY * LINE * closeness;
        this.rowHigh = ROW * closeness;
        this.writing = WRITING * closeness;
        pages.add(new ArrayList<>());
        y = 20;
        for (String line : Sheet.wrapped(title, 6, true, ROOM)) {
            text(LEFT, y, line, 6, true, Anchor.START, Role.TITLE);
            y += 8;
        }
        y -= 1.8;
        for (String line : Sheet.wrapped(subtitle, 3.4, false, ROOM)) {
            text(LEFT, y, line, 3.4, false, Anchor.START, Role.NOTE);
            y += 4.8;
        }
        y -= 1.8;
        add(new Shape.Line(new Point(LEFT, y), new Point(RIGHT, y), List.of(Role.RULE)));
        y += 3;
    }

    void heading(String words) {
        heading = words;
    }

    void keepTogether(double height) {
        reserve(height);
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

    void paragraph(String words) {
        List<String> lines = Sheet.wrapped(words, BODY, false, ROOM);
        begin(1, Math.min(lines.size(), 3) * lineHigh);
        lines(lines, LEFT);
    }

    void items(List<String> items) {
        for (String item : items) {
            item("–", item);
        }
    }

    void steps(List<String> steps) {
        for (int i = 0; i < steps.size(); i++) {
            item((i + 1) + ".", steps.get(i));
        }
    }

    private void item(String mark, String words) {
        double indent = 7;
        List<String> lines = Sheet.wrapped(words, BODY, false, ROOM - indent);
        begin(1, Math.min(lines.size(), 6) * lineHigh);
        text(LEFT + 1, y + BODY, mark, BODY, false, Anchor.START, Role.LABEL);
        lines(lines, LEFT + indent);
    }

    void ticks(List<String> items) {
        double indent = 7;
        for (String item : items) {
            List<String> lines = Sheet.wrapped(item, BODY, false, ROOM - indent);
            begin(1.8, Math.min(lines.size(), 6) * lineHigh);
            tick(LEFT + 1, y + 0.1);
            lines(lines, LEFT + indent);
        }
    }

    private void tick(double x, double top) {
        add(new Shape.Rect(x, top, TICK, TICK, 0, List.of(Role.TICK)));
    }

    void caution(List<String> items) {
        if (items.isEmpty()) {
            return;
        }
        double indent = 7;
        double inner = 3;
        List<List<String>> left = new ArrayList<>();
        items.forEach(i -> left.add(Sheet.wrapped(i, BODY, false, ROOM - 2 * inner - indent)));
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
            y += lineHigh + 0.6;
            for (List<String> lines : here) {
                text(LEFT + inner + 1, y + BODY, "–", BODY, false, Anchor.START, Role.LABEL);
                for (String line : lines) {
                    text(LEFT + inner + indent, y + BODY, line, BODY, false, Anchor.START, Role.LABEL);
                    y += lineHigh;
                }
                y += 0.6;
            }
            y += 2;
            if (!left.isEmpty()) {
                nextPage();
            }
        }
    }

    private double height(List<List<String>> items) {
        double h = 2.4 + lineHigh + 0.6 + 1.4;
        for (List<String> lines : items) {
            h += lines.size() * lineHigh + 0.6;
        }
        return h;
    }

    private double height(List<List<String>> items, List<String> more) {
        return height(items) + more.size() * lineHigh + 0.6;
    }

    private void sign(double x, double middle) {
        add(new Shape.Polyline(
                List.of(new Point(x, middle - 2.6), new Point(x + 2.6, middle + 1.6), new Point(x - 2.6, middle + 1.6)),
                true,
                List.of(Role.CAUTION)));
        add(new Shape.Text(new Point(x, middle + 1.1), "!", 2.6, true, Anchor.MIDDLE, List.of(Role.CAUTION)));
    }

    void facts(Map<String, String> facts) {
        begin(0, lineHigh + 2);
        y = facts(facts, LEFT, ROOM, y);
    }

    private double facts(Map<String, String> facts, double x, double room, double from) {
        double at = from + 1;
        double name = 0;
        for (String key : facts.keySet()) {
            name = Math.max(name, TextWidths.em(key, false) * BODY);
        }
        name = Math.min(name + 3, room * 0.55);
        for (Map.Entry<String, String> f : facts.entrySet()) {
            List<String> keys = Sheet.wrapped(f.getKey(), BODY, false, name - 2);
            List<String> values = Sheet.wrapped(f.getValue(), BODY, true, room - name);
            double high = Math.max(keys.size(), values.size()) * lineHigh + 0.7;
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
            at += lineHigh;
        }
    }

    void fields(List<String> names) {
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
    }

    void writingLines(String words, int lines) {
        begin(3, lineHigh + lines * writing);
        text(LEFT, y + BODY, words, BODY, false, Anchor.START, Role.NOTE);
        y += lineHigh;
        for (int i = 0; i < lines; i++) {
            y += writing;
            add(new Shape.Line(new Point(LEFT, y), new Point(RIGHT, y), List.of(Role.RULE)));
        }
    }

    void drawing(Drawing drawing, double mostHeight) {
        Box ink = Sheet.ink(drawing);
        double scale = Sheet.scale(ink, mostHeight);
        begin(2, scale * ink.height());
        embed(drawing, ink, LEFT + (ROOM - scale * ink.width()) / 2, y, scale);
        y += scale * ink.height() + 2;
    }

    void factsBeside(Map<String, String> facts, Drawing drawing, double widest) {
        Box ink = Sheet.ink(drawing);
        double scale = Math.min(1, Math.min(widest / ink.width(), (BOTTOM - TOP) / ink.height()));
        double wide = scale * ink.width();
        double high = scale * ink.height();
        begin(2, high);
        int page = pages.size();
        double from = y;
        embed(drawing, ink, RIGHT - wide, from, scale);
        double below = facts(facts, LEFT, ROOM - wide - 5, from - 1);
        y = pages.size() == page ? Math.max(below, from + high) + 1 : below;
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

    void table(Table table) {
        new TableRun(table).run();
    }

    /** Paints a table, strip by strip and page by page. */
    private final class TableRun {
        private final Table table;
        private final TableLayout layout;

        TableRun(Table table) {
            this.table = table;
            this.layout = new TableLayout(table, rowHigh);
        }

        void run() {
            int next = 0;
            while (next < layout.rows()) {
                double few = layout.headHeight();
                for (int i = next; i < Math.min(layout.rows(), next + 3); i++) {
                    few += layout.height(i);
                }
                begin(next == 0 ? 2 : 0, few);
                double room = BOTTOM - y - layout.headHeight();
                room = Math.min(room, layout.even(next, room));
                double top = y;
                double lowest = y;
                for (int strip = 0; strip < table.strips() && next < layout.rows(); strip++) {
                    y = top;
                    int end = layout.fill(next, room);
                    paint(LEFT + strip * (layout.stripWidth() + TableLayout.STRIP_GAP), next, end);
                    lowest = Math.max(lowest, y);
                    next = end;
                }
                y = lowest + 1;
            }
        }

        private void paint(double x, int from, int to) {
            double top = y;
            add(new Shape.Rect(x, y, layout.stripWidth(), layout.headHeight(), 0, List.of(Role.HEAD)));
            for (int i = 0; i < table.columns().size(); i++) {
                cell(layout.head(i), x, i, layout.headHeight(), true);
            }
            y += layout.headHeight();
            rule(x, top);
            rule(x, y);
            for (int r = from; r < to; r++) {
                for (int i = 0; i < table.columns().size(); i++) {
                    if (table.columns().get(i).align() == Table.Align.TICK) {
                        tick(
                                x + (layout.left(i) + layout.left(i + 1)) / 2 - TICK / 2,
                                y + (layout.height(r) - TICK) / 2);
                    } else {
                        cell(layout.cell(r, i), x, i, layout.height(r), false);
                    }
                }
                y += layout.height(r);
                rule(x, y);
            }
            for (int i = 0; i <= table.columns().size(); i++) {
                add(new Shape.Line(
                        new Point(x + layout.left(i), top), new Point(x + layout.left(i), y), List.of(Role.RULE)));
            }
        }

        private void rule(double x, double at) {
            add(new Shape.Line(new Point(x, at), new Point(x + layout.stripWidth(), at), List.of(Role.RULE)));
        }

        private void cell(List<String> lines, double x, int column, double high, boolean bold) {
            Table.Align align = bold && table.columns().get(column).align() == Table.Align.RIGHT
                    ? Table.Align.MIDDLE
                    : table.columns().get(column).align();
            double at = y + (high - lines.size() * TableLayout.LINE) / 2 + TableLayout.LETTER * 1.02;
            double from = x + layout.left(column) + 1;
            double to = x + layout.left(column + 1) - 1;
            for (String line : lines) {
                switch (align) {
                    case LEFT -> text(from, at, line, TableLayout.LETTER, bold, Anchor.START, Role.LABEL);
                    case MIDDLE, TICK ->
                        text((from + to) / 2, at, line, TableLayout.LETTER, bold, Anchor.MIDDLE, Role.LABEL);
                    case RIGHT -> text(to, at, line, TableLayout.LETTER, bold, Anchor.END, Role.LABEL);
                }
                at += TableLayout.LINE;
            }
        }
    }

    private void lines(List<String> lines, double x) {
        for (String line : lines) {
            reserve(lineHigh);
            text(x, y + BODY, line, BODY, false, Anchor.START, Role.LABEL);
            y += lineHigh;
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

    int pageCount() {
        return pages.size();
    }

    /** How much of the last page is taken, mm. */
    double lastPageHeight() {
        return y - TOP + 4;
    }

    /** What stands on each page, without its number. */
    List<List<Shape>> pages() {
        return pages;
    }
}
