package coilwright.drawing;

import coilwright.bench.BenchTest;
import coilwright.winding.Armature;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * The armature from the commutator end without its coils: from the middle outwards the shaft, the bars and the slots,
 * all with their numbers, as far as there is room for them.
 */
final class EndView {
    private static final double SHAFT = 0.12;
    private static final double BAR_IN = 0.44;
    private static final double BAR_OUT = 0.62;
    private static final double SLOT_IN = 0.8;
    private static final double METER = 7.6;

    private final Armature a;
    private final double angle;
    private final Point middle;
    private final double radius;
    private final double font;
    private final Set<Integer> wantedBars;
    private final Highlight highlight;

    /**
     * An end view.
     *
     * @param angle of slot 1's centre line
     * @param radius of the core, mm
     * @param font of the numbers, mm
     * @param wantedBars bars whose numbers come before those of others
     */
    EndView(
            Winding winding,
            double angle,
            Point middle,
            double radius,
            double font,
            Set<Integer> wantedBars,
            Highlight highlight) {
        this.a = winding.armature();
        this.angle = angle;
        this.middle = middle;
        this.radius = radius;
        this.font = font;
        this.wantedBars = wantedBars;
        this.highlight = highlight;
    }

    Point at(double r, double degrees) {
        return Point.polar(middle.x(), middle.y(), r, degrees);
    }

    double barAngle(int bar) {
        return angle + a.barCentre(bar);
    }

    double slotAngle(int slot) {
        return angle + a.slotCentre(slot);
    }

    /** Where a probe touches the bars: just within their outer edge. */
    double touch() {
        return radius * BAR_OUT - Math.min(1, radius * 0.02);
    }

    double shaftRadius() {
        return radius * SHAFT;
    }

    double barInner() {
        return radius * BAR_IN;
    }

    double barOuter() {
        return radius * BAR_OUT;
    }

    /** The iron with its open slots. */
    void core(Canvas canvas) {
        canvas.add(new Shape.Circle(middle, radius, List.of(Role.CORE)));
        for (int slot = 1; slot <= a.slots(); slot++) {
            canvas.add(slotSector(slot, List.of(Role.OPENING)));
        }
    }

    private Shape.Sector slotSector(int slot, List<Role> roles) {
        double width = Math.min(0.55 * a.slotAngle(), Math.toDegrees(9 / (radius * SLOT_IN)));
        return new Shape.Sector(middle, radius * SLOT_IN, radius, slotAngle(slot) - width / 2, width, roles);
    }

    /** Slot outlines and numbers. */
    void slots(Canvas canvas) {
        double r = radius * (SLOT_IN + 1) / 2;
        int step = every(digits(a.slots()) + 1.2, 2 * Math.PI * r / a.slots(), a.slots());
        for (int slot = 1; slot <= a.slots(); slot++) {
            boolean marked = slot == 1 || highlight.slots().contains(slot);
            List<Shape> parts = new ArrayList<>();
            parts.add(slotSector(slot, List.of()));
            if (shown(slot, step, a.slots())) {
                String words = Integer.toString(slot);
                Point p = at(r, slotAngle(slot));
                double w = TextWidths.em(words, true) * font + 0.7;
                parts.add(new Shape.Rect(p.x() - w / 2, p.y() - 0.6 * font, w, 1.2 * font, 0.5, List.of(Role.PLATE)));
                parts.add(Canvas.centred(p.x(), p.y(), words, font, marked, Role.LABEL));
            }
            canvas.group(Element.slot(slot), "Slot " + slot, Canvas.roles(Role.SLOT, marked), parts);
        }
    }

    /** The commutator, over everything beneath it, and the shaft. */
    void commutator(Canvas canvas) {
        canvas.add(new Shape.Circle(middle, radius * BAR_OUT + 0.8, List.of(Role.OPENING)));
        double r = radius * (BAR_IN + BAR_OUT) / 2;
        double pitch = 2 * Math.PI * r / a.bars();
        int step = every(digits(a.bars()) + 0.8, pitch, a.bars());
        double width = a.barAngle() * (pitch < 1 ? 0.8 : Math.max(0.9, 1 - 1.2 / pitch));
        var occupied = new Occupied();
        List<Shape> numbers = new ArrayList<>();
        for (int bar : inOrderOfWant()) {
            boolean wanted = wantedBars.contains(bar) || highlight.bars().contains(bar);
            if (!wanted && !shown(bar, step, a.bars())) {
                continue;
            }
            Point p = at(r, barAngle(bar));
            Shape.Text t = Canvas.centred(p.x(), p.y(), Integer.toString(bar), font, wanted, Role.LABEL);
            Box box = t.bounds();
            if (occupied.take(box.grown(0.2))) {
                if (step > 1) {
                    numbers.add(new Shape.Rect(
                            box.left() - 0.3,
                            p.y() - 0.55 * font,
                            box.width() + 0.6,
                            1.1 * font,
                            0.4,
                            List.of(Role.PLATE)));
                }
                numbers.add(t);
            }
        }
        for (int bar = 1; bar <= a.bars(); bar++) {
            boolean marked = wantedBars.contains(bar) || highlight.bars().contains(bar);
            canvas.group(
                    Element.bar(bar),
                    "Bar " + bar,
                    pitch < 1.2 ? List.of(Role.BAR, Role.DENSE) : Canvas.roles(Role.BAR, marked),
                    List.of(new Shape.Sector(
                            middle, barInner(), barOuter(), barAngle(bar) - width / 2, width, List.of())));
        }
        numbers.forEach(canvas::add);
        canvas.add(new Shape.Circle(middle, shaftRadius(), List.of(Role.SHAFT)));
    }

    private List<Integer> inOrderOfWant() {
        List<Integer> out = new ArrayList<>();
        for (int bar : wantedBars) {
            if (bar >= 1 && bar <= a.bars()) {
                out.add(bar);
            }
        }
        for (int bar = 1; bar <= a.bars(); bar++) {
            if (!wantedBars.contains(bar)) {
                out.add(bar);
            }
        }
        return out;
    }

    private double digits(int largest) {
        return TextWidths.em("0".repeat(Integer.toString(largest).length()), true) * font;
    }

    /** Every which number is shown, so that texts of a width find room at a pitch. */
    private static int every(double width, double pitch, int count) {
        for (int step : new int[] {1, 2, 5, 10, 20, 50, 100, 200, 500}) {
            if (step * pitch >= width) {
                return step;
            }
        }
        return count;
    }

    private static boolean shown(int number, int step, int count) {
        return step == 1
                || number == 1
                || (number % step == 0 && count + 1 - number >= step * 0.6 && number - 1 >= step * 0.6);
    }

    private double meterRadius() {
        return radius + 16.2;
    }

    /** Leads of two probes: from each bar straight out past the core, then round to the meter. */
    void leads(Canvas canvas, int from, int to, double clock) {
        for (int bar : new int[] {from, to}) {
            // The shaft's lead leaves it beside the one on the bar.
            lead(
                    canvas,
                    bar == BenchTest.SHAFT ? 0 : touch(),
                    bar == BenchTest.SHAFT ? clock + 14 : barAngle(bar),
                    clock);
        }
    }

    private void lead(Canvas canvas, double start, double at, double clock) {
        double round = radius + 10;
        double way = Ring.shortWay(at, clock);
        List<Point> path = new ArrayList<>();
        path.add(at(start, at));
        int n = Math.max(1, (int) Math.ceil(Math.abs(way) / 5));
        if (n == 1) {
            path.add(at(round, at));
            path.add(at(meterRadius() - METER + 1, at + way * 0.5));
        } else {
            for (int i = 0; i <= n; i++) {
                path.add(at(round, at + way * i / n));
            }
            path.add(at(meterRadius() - METER + 1, clock));
        }
        canvas.add(new Shape.Polyline(path, false, List.of(Role.HALO)));
        canvas.add(new Shape.Polyline(path, false, List.of(Role.PROBE)));
    }

    /** The meter and the points of its probes. */
    void meter(Canvas canvas, int from, int to, double clock, String words, Occupied occupied) {
        double pitch = 2 * Math.PI * touch() / a.bars();
        for (int bar : new int[] {from, to}) {
            Point p = bar == BenchTest.SHAFT ? middle : at(touch(), barAngle(bar));
            canvas.add(new Shape.Circle(p, Math.min(1, Math.max(0.35, pitch * 0.3)), List.of(Role.PROBE)));
        }
        Point p = at(meterRadius(), clock);
        canvas.add(new Shape.Circle(p, METER, List.of(Role.INSTRUMENT)));
        canvas.add(Canvas.centred(p.x(), p.y() - 1.7, words, 3.2, true, Role.LABEL));
        canvas.add(Canvas.centred(p.x(), p.y() + 2.4, pair(from, to), 2.2, false, Role.LABEL));
        occupied.take(new Box(p.x() - METER, p.y() - METER, p.x() + METER, p.y() + METER));
    }

    private static String pair(int from, int to) {
        return new BenchTest.Pair(from, to).dashed();
    }

    /** Slot 1's mark, and its angle from straight up. */
    void slotOne(Canvas canvas, Occupied occupied) {
        double at = angle - 360 * Math.floor(angle / 360);
        double r = radius + 2.3;
        double half = Math.toDegrees(1.7 / radius);
        canvas.add(new Shape.Polyline(
                List.of(at(radius + 0.3, at), at(radius + 3.9, at - half), at(radius + 3.9, at + half)),
                true,
                List.of(Role.READ)));
        if (at > 2 && at < 358) {
            canvas.add(new Shape.Line(at(radius + 0.5, 0), at(radius + 7, 0), List.of(Role.GUIDE)));
            canvas.add(new Shape.Arc(middle, r, 0, at, List.of(Role.GUIDE)));
        }
        String words = "slot 1 at " + Caption.degrees(at);
        double size = 2.6;
        double w = TextWidths.em(words, true) * size;
        for (int i = 0; i < 60; i++) {
            double off = (i + 1) / 2 * 4 * (i % 2 == 0 ? 1 : -1);
            double x = Math.sin(Math.toRadians(at + off));
            Point p = at(radius + 6.5, at + off);
            Shape.Text t = Canvas.centred(p.x() + x * w / 2, p.y(), words, size, true, Role.LABEL);
            if (occupied.take(t.bounds().grown(0.5))) {
                Box b = t.bounds();
                canvas.add(new Shape.Rect(
                        b.left() - 0.4, b.top() - 0.2, b.width() + 0.8, b.height() + 0.3, 0.5, List.of(Role.PLATE)));
                canvas.add(t);
                return;
            }
        }
    }

    /** Two leads of a supply from within the ring of bars, + on one bar and − on the other. */
    void feed(Canvas canvas, int in, int out) {
        double r = radius * 0.3;
        double sign = Math.min(3, radius * 0.08);
        double first = barAngle(in);
        double way = Ring.shortWay(first, barAngle(out));
        double least = Math.toDegrees(2.4 * sign / r);
        double spread = Math.max(0, least - Math.abs(way)) / 2 * (way < 0 ? -1 : 1);
        terminal(canvas, in, first - spread, "+", r, sign);
        terminal(canvas, out, first + way + spread, "−", r, sign);
    }

    private void terminal(Canvas canvas, int bar, double at, String words, double r, double sign) {
        Point p = at(r, at);
        canvas.add(new Shape.Line(p, at(barInner() + 0.6, barAngle(bar)), List.of(Role.WIRE)));
        canvas.add(new Shape.Circle(p, sign, List.of(Role.INSTRUMENT)));
        canvas.add(Canvas.centred(p.x(), p.y(), words, Math.max(Canvas.SMALL, sign * 1.3), true, Role.LABEL));
    }

    /** A compass outside a slot, its needle along the rim. */
    void compass(Canvas canvas, int slot, Occupied occupied) {
        double at = slotAngle(slot);
        Point p = at(radius + 11, at);
        double r = 6;
        canvas.add(new Shape.Line(at(radius + 1, at), p, List.of(Role.LEADER)));
        canvas.add(new Shape.Circle(p, r, List.of(Role.INSTRUMENT)));
        Point tip = Point.polar(p.x(), p.y(), r - 1, at + 90);
        Point tail = Point.polar(p.x(), p.y(), r - 1, at - 90);
        Point left = Point.polar(p.x(), p.y(), 1.2, at);
        Point right = Point.polar(p.x(), p.y(), 1.2, at + 180);
        canvas.add(new Shape.Polyline(List.of(tip, left, right), true, List.of(Role.READ)));
        canvas.add(new Shape.Polyline(List.of(tail, left, right), true, List.of(Role.AXIS)));
        occupied.take(new Box(p.x() - r, p.y() - r, p.x() + r, p.y() + r));
    }
}
