package coilwright.drawing;

import coilwright.circuit.Brush;
import coilwright.circuit.BrushGear;
import coilwright.circuit.CurrentPath;
import coilwright.circuit.Step;
import coilwright.drawing.Shape.Anchor;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Each parallel path from a + to a − brush as a row of coils with the bars between them. */
final class PathsLayout {
    private static final double LEFT = 44;
    private static final double TOP = 36;
    private static final double ROW = 15;
    private static final double BOX = 9.5;
    private static final double BAR = 6.6;
    private static final double STEP = 17.6;

    private final Winding winding;
    private final ViewOptions options;
    private final String title;
    private final Optional<BrushGear> gear;
    private final double width;
    private final int perRow;
    private final List<Row> rows = new ArrayList<>();

    /** One row of things of a height, drawn from a top. */
    private interface Row {
        void draw(Canvas canvas, double y);
    }

    private PathsLayout(Winding winding, ViewOptions options) {
        this.winding = winding;
        this.options = options;
        this.title = options.title().isEmpty() ? "Parallel paths" : options.title();
        this.gear = Caption.brushes(winding, options);
        int longest = gear.map(g ->
                        g.paths().stream().mapToInt(p -> p.steps().size()).max().orElse(1))
                .orElse(1);
        int most = (int) ((Canvas.LONG - LEFT - Canvas.BORDER - 18) / STEP);
        if (options.format() == PageFormat.SINGLE && longest > most) {
            most = Math.min(longest, Math.max(most, 40));
        }
        this.perRow = most;
        this.width = Math.max(Canvas.LONG, LEFT + most * STEP + 18 + Canvas.BORDER);
    }

    static DrawingPages pages(Winding winding, ViewOptions options) {
        var layout = new PathsLayout(winding, options);
        layout.fill();
        List<Row> rows = layout.rows;
        double bottom = 16;
        int perPage = options.format() == PageFormat.SINGLE ? rows.size() : (int) ((Canvas.SHORT - TOP - bottom) / ROW);
        int pages = Math.max(1, (rows.size() + perPage - 1) / Math.max(1, perPage));
        double height = Math.max(
                options.format() == PageFormat.A4 ? Canvas.SHORT : 100,
                TOP + Math.min(perPage, rows.size()) * ROW + bottom);
        List<Drawing> out = new ArrayList<>();
        for (int i = 0; i < pages; i++) {
            var canvas = new Canvas();
            layout.head(canvas, i + 1, pages);
            double y = TOP;
            for (Row row : rows.subList(i * perPage, Math.min(rows.size(), (i + 1) * perPage))) {
                row.draw(canvas, y);
                y += ROW;
            }
            layout.foot(canvas, height, i + 1, pages);
            out.add(canvas.page(layout.title, layout.description(), layout.width, height, options.palette()));
        }
        return new DrawingPages(out);
    }

    private String description() {
        if (gear.isEmpty()) {
            return "No coil of this winding has both leads on bars, so there is no path.";
        }
        return gear.get().paths().size() + " parallel paths from + to − brushes, "
                + gear.get().shorted().size() + " coils shorted by brushes. " + Caption.kind(winding) + ".";
    }

    private void head(Canvas canvas, int page, int pages) {
        String where = gear.map(g -> "brushes " + Caption.number(g.widthBars())
                        + (g.widthBars() == 1 ? " bar" : " bars") + " wide, slot 1 at "
                        + Caption.degrees(options.rotorAngle()))
                .orElse("no live coil, so no path");
        canvas.heading(
                title,
                Caption.counts(winding.armature()) + " · " + Caption.kind(winding),
                "Parallel paths from + brush to − brush" + (pages > 1 ? ", sheet " + page + " of " + pages : "") + ": "
                        + where,
                width);
    }

    private void foot(Canvas canvas, double height, int page, int pages) {
        canvas.text(
                Canvas.BORDER,
                height - 8,
                TextWidths.fit(
                        "box: coil, → passed from top lead to bottom lead, ← the other way · circle: bar"
                                + " · dark: brush",
                        2.6,
                        false,
                        width - 2 * Canvas.BORDER - 40),
                2.6,
                Anchor.START,
                Role.LEGEND);
        if (pages > 1) {
            canvas.text(
                    width - Canvas.BORDER, height - 8, "sheet " + page + " of " + pages, 2.9, Anchor.END, Role.NOTE);
        }
    }

    private void fill() {
        Set<Integer> barsDone = new LinkedHashSet<>();
        if (gear.isPresent()) {
            Map<Integer, Brush> brushes = new LinkedHashMap<>();
            gear.get().brushes().forEach(b -> brushes.put(b.number(), b));
            for (CurrentPath path : gear.get().paths()) {
                List<Step> steps = path.steps();
                for (int i = 0; i < steps.size(); i += perRow) {
                    int from = i;
                    int to = Math.min(steps.size(), i + perRow);
                    rows.add((canvas, y) -> path(canvas, y, path, from, to, brushes, barsDone));
                }
            }
            apart("Shorted by brushes", gear.get().shorted(), Role.SHORTED);
            apart("On no path", gear.get().idle(), Role.BOX);
        }
        apart("Dead, no leads", winding.deadCoils(), Role.DEAD);
        apart(
                "One lead loose",
                winding.coils().stream().filter(c -> !c.isLive() && !c.isDead()).toList(),
                Role.FAULT);
    }

    private void path(
            Canvas canvas,
            double y,
            CurrentPath path,
            int from,
            int to,
            Map<Integer, Brush> brushes,
            Set<Integer> barsDone) {
        double middle = y + ROW / 2;
        Role role = Role.path(path.number());
        List<Step> steps = path.steps();
        boolean last = to == steps.size();
        double end = LEFT + (to - from) * STEP + (last ? 11 : 0);
        canvas.line(from == 0 ? LEFT - 14 : LEFT - 5, middle, end, middle, Role.WIRE);
        if (from == 0) {
            canvas.add(Canvas.text(
                    Canvas.BORDER, middle + 1.2, "Path " + path.number(), 3, true, Anchor.START, Role.LABEL));
            brush(canvas, LEFT - 14, middle, brushes.get(path.fromBrush()));
        } else {
            canvas.text(Canvas.BORDER, middle + 1, "path " + path.number() + " goes on", 2.6, Anchor.START, Role.NOTE);
        }
        for (int i = from; i < to; i++) {
            Step step = steps.get(i);
            double x = LEFT + (i - from) * STEP;
            bar(canvas, x, middle, step.fromBar(), barsDone);
            box(canvas, x + (STEP - BOX) / 2, middle, step.coil(), step.forward() ? "→" : "←", List.of(Role.BOX), role);
        }
        if (last) {
            double x = LEFT + (to - from) * STEP;
            bar(canvas, x, middle, steps.get(steps.size() - 1).toBar(), barsDone);
            brush(canvas, x + 11, middle, brushes.get(path.toBrush()));
        }
    }

    private void brush(Canvas canvas, double x, double y, Brush brush) {
        String words = brush.sign() + brush.number();
        canvas.add(new Shape.Group(
                Optional.empty(),
                Optional.of(new Element(Element.Kind.BRUSH, brush.number())),
                "Brush " + brush.number() + " " + brush.sign() + ", on bars " + brush.bars(),
                List.of(Role.BRUSH),
                List.of(
                        new Shape.Rect(x - 4.6, y - 3, 9.2, 6, 0.6, List.of()),
                        Canvas.centred(x, y, words, 3, true, Role.LABEL))));
    }

    private void bar(Canvas canvas, double x, double y, int bar, Set<Integer> done) {
        boolean marked = options.highlight().bars().contains(bar);
        String words = Integer.toString(bar);
        double size = words.length() > 3 ? 2.2 : 2.5;
        canvas.add(new Shape.Group(
                done.add(bar) ? Optional.of("bar-" + bar) : Optional.empty(),
                Optional.of(Element.bar(bar)),
                "Bar " + bar,
                Canvas.roles(Role.BAR, marked),
                List.of(
                        new Shape.Circle(new Point(x, y), BAR / 2, List.of()),
                        Canvas.centred(x, y, words, size, marked, Role.LABEL))));
    }

    private void box(Canvas canvas, double x, double y, Coil coil, String arrow, List<Role> kind, Role path) {
        boolean marked = options.highlight().coils().contains(coil.number());
        List<Role> roles = new ArrayList<>(List.of(Role.COIL));
        roles.addAll(kind);
        if (marked) {
            roles.add(Role.HIGHLIGHT);
        }
        Element e = Element.coil(coil.number());
        List<Shape> parts = new ArrayList<>();
        parts.add(new Shape.Rect(x, y - 4.2, BOX, 8.4, 0.8, List.of(path)));
        boolean alone = arrow.isEmpty();
        parts.add(
                Canvas.centred(x + BOX / 2, alone ? y : y - 1.5, Integer.toString(coil.number()), 3, true, Role.LABEL));
        if (!alone) {
            parts.add(Canvas.centred(x + BOX / 2, y + 2.2, arrow, 2.6, false, Role.LABEL));
        }
        canvas.add(new Shape.Group(Optional.of(e.id()), Optional.of(e), Caption.coil(coil), roles, parts));
    }

    /** Rows of coils that lie on no path. */
    private void apart(String words, List<Coil> coils, Role role) {
        int most = (int) ((width - LEFT - Canvas.BORDER) / (BOX + 3.5));
        for (int i = 0; i < coils.size(); i += most) {
            List<Coil> some = coils.subList(i, Math.min(coils.size(), i + most));
            boolean first = i == 0;
            rows.add((canvas, y) -> {
                if (first) {
                    canvas.add(
                            Canvas.text(Canvas.BORDER, y + ROW / 2 + 1.1, words, 2.9, true, Anchor.START, Role.LABEL));
                }
                double x = LEFT + 2;
                for (Coil c : some) {
                    box(canvas, x, y + ROW / 2, c, "", List.of(role), role);
                    x += BOX + 3.5;
                }
            });
        }
    }
}
