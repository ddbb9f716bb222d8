package coilwright.drawing;

import coilwright.drawing.Shape.Anchor;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What an overlay adds to one page of a winding rolled out flat beside its coils: tags under the bars, bridge, signs. */
final class DevelopedMarks {
    private static final double JUMPER = 168;
    private static final double TAG = 3.1;
    private static final int TAG_ROWS = 6;

    private final Overlay overlay;
    private final DevelopedPlan plan;
    private final DevelopedWindow window;
    private final Occupied occupied;
    private final Occupied leadLabels;
    private final Canvas canvas;
    private int tagsLeftOut;

    /**
     * Marks of one page.
     *
     * @param occupied by the numbers at the coils' far ends
     * @param leadLabels places taken by labels at the leads
     */
    DevelopedMarks(
            Overlay overlay,
            DevelopedPlan plan,
            DevelopedWindow window,
            Occupied occupied,
            Occupied leadLabels,
            Canvas canvas) {
        this.overlay = overlay;
        this.plan = plan;
        this.window = window;
        this.occupied = occupied;
        this.leadLabels = leadLabels;
        this.canvas = canvas;
    }

    /** Draws them all. */
    void draw(DevelopedCoils coils) {
        tags(coils.tags());
        bridge();
        signs(coils.lifts(), coils.saws());
    }

    /** Tags for which there was no room. */
    int tagsLeftOut() {
        return tagsLeftOut;
    }

    /** Which lead is planned or found on a bar, in rows under it, as many as there is room for. */
    private void tags(List<DevelopedCoils.Tag> tags) {
        var taken = new Occupied();
        List<Shape> late = new ArrayList<>();
        List<DevelopedCoils.Tag> sorted = tags.stream()
                .sorted(Comparator.comparingDouble(DevelopedCoils.Tag::x))
                .toList();
        for (DevelopedCoils.Tag t : sorted) {
            double w = TextWidths.em(t.words(), t.role() == Role.FOUND_LEAD) * Canvas.SMALL + 2;
            double x = t.x() + window.shift;
            boolean placed = false;
            for (int row = 0; row < TAG_ROWS && !placed; row++) {
                double y = DevelopedPlan.BAR_BOTTOM + 2.4 + row * TAG;
                placed = taken.take(new Box(x - w / 2 - 0.3, y - 1.4, x + w / 2 + 0.3, y + 1.4));
                if (placed) {
                    canvas.line(x, DevelopedPlan.BAR_BOTTOM, x, y, Role.LEADER);
                    late.add(new Shape.Rect(x - w / 2 - 0.2, y - 1.3, w + 0.4, 2.6, 0, List.of(Role.PLATE)));
                    late.add(Canvas.end(new Point(x - w / 2 + 0.7, y), DevelopedCoils.END_RADIUS, t.role()));
                    late.add(Canvas.text(
                            x - w / 2 + 2,
                            y + 0.36 * Canvas.SMALL,
                            t.words(),
                            Canvas.SMALL,
                            t.role() == Role.FOUND_LEAD,
                            Anchor.START,
                            t.role()));
                }
            }
            tagsLeftOut += placed ? 0 : 1;
        }
        late.forEach(canvas::add);
    }

    /** The jumper, the short way round beneath the bars. */
    private void bridge() {
        if (overlay.bridge().isEmpty()) {
            return;
        }
        int first = overlay.bridge().get(0);
        int second = overlay.bridge().get(1);
        double left = plan.barX(first);
        double right = left + plan.shortWay(left, plan.barX(second));
        String words = "bridge " + first + "–" + second;
        double half = TextWidths.em(words, true) * 3.2 / 2;
        List<Point> names = new ArrayList<>();
        List<Shape> parts = new ArrayList<>();
        plan.forImages(Math.min(left, right), Math.max(left, right), window.leadFrom, window.leadTo, k -> {
            double move = k * plan.around;
            boolean firstIn = window.barShown(left + move);
            boolean secondIn = window.barShown(right + move);
            double x1 = Math.max(window.leadFrom, Math.min(left, right) + move);
            double x2 = Math.min(window.leadTo, Math.max(left, right) + move);
            if (x2 - x1 < 0.05) {
                return;
            }
            List<Point> chain = new ArrayList<>();
            boolean leftIn = left < right ? firstIn : secondIn;
            boolean rightIn = left < right ? secondIn : firstIn;
            if (leftIn) {
                chain.add(new Point(x1 + window.shift, DevelopedPlan.BAR_BOTTOM - 1));
            }
            chain.add(new Point(x1 + window.shift, JUMPER));
            chain.add(new Point(x2 + window.shift, JUMPER));
            if (rightIn) {
                chain.add(new Point(x2 + window.shift, DevelopedPlan.BAR_BOTTOM - 1));
            }
            parts.add(new Shape.Polyline(chain, false, List.of(Role.BRIDGE)));
            if (leftIn) {
                parts.add(Canvas.end(chain.get(0), 1.1, Role.BRIDGE));
            }
            if (rightIn) {
                parts.add(Canvas.end(chain.get(chain.size() - 1), 1.1, Role.BRIDGE));
            }
            double x = Math.max(
                    Canvas.BORDER + half, Math.min(window.width - Canvas.BORDER - half, (x1 + x2) / 2 + window.shift));
            names.add(new Point(x, JUMPER + 4));
        });
        canvas.group("bridge-", Element.bar(first), words, List.of(Role.BRIDGE), parts);
        names.forEach(p -> canvas.plate(List.of(p), words, 3.2, leadLabels, b -> true, Role.BRIDGE));
    }

    /** The words "lift" and "cut" beside what is lifted and cut. */
    private void signs(List<Point> lifts, List<Point> saws) {
        Box lead = new Box(Canvas.BORDER, plan.leadStart, window.width - Canvas.BORDER, DevelopedPlan.LEAD_END);
        for (Point p : lifts) {
            canvas.plate(beside(p, 5.4, 3.4), "lift", 2.9, leadLabels, lead::holds, Role.LIFTED);
        }
        Box back = new Box(Canvas.BORDER, 26, window.width - Canvas.BORDER, DevelopedPlan.BEND);
        for (Point p : saws) {
            canvas.rect(p.x() - 1.1, p.y() - 0.4, 2.2, 3, Role.PLATE);
            for (double side : new double[] {-1.1, 1.1}) {
                canvas.line(p.x() + side, p.y() + 0.4, p.x() + side, p.y() + 3.6, Role.LIFTED);
            }
            List<Point> places = List.of(
                    new Point(p.x(), p.y() + 6),
                    new Point(p.x() + 6, p.y() + 1),
                    new Point(p.x() - 6, p.y() + 1),
                    new Point(p.x(), p.y() + 9));
            canvas.plate(places, "cut", 2.9, occupied, back::holds, Role.LIFTED);
        }
    }

    /** Places beside a point: right, left, below, above. */
    private static List<Point> beside(Point p, double aside, double over) {
        return List.of(
                new Point(p.x() + aside, p.y()),
                new Point(p.x() - aside, p.y()),
                new Point(p.x(), p.y() + over),
                new Point(p.x(), p.y() - over),
                new Point(p.x() + aside, p.y() + over),
                new Point(p.x() - aside, p.y() - over),
                new Point(p.x(), p.y() + 2 * over),
                new Point(p.x(), p.y() - 2 * over),
                new Point(p.x() + 2 * aside, p.y()),
                new Point(p.x() - 2 * aside, p.y()),
                new Point(p.x() + 2 * aside, p.y() + 2 * over),
                new Point(p.x() - 2 * aside, p.y() - 2 * over));
    }
}
