package coilwright.lesson;

import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.drawing.BenchPicture;
import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingView;
import coilwright.drawing.Element;
import coilwright.drawing.GrowlerBench;
import coilwright.drawing.Highlight;
import coilwright.drawing.Palette;
import coilwright.drawing.Point;
import coilwright.drawing.Role;
import coilwright.drawing.Shape;
import coilwright.drawing.ViewOptions;
import coilwright.winding.Armature;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/** Drawings as exercises need them: without the words round them, small enough to stand in a text. */
final class Pictures {
    private static final double COMMUTATOR_BOTTOM = 163;
    private static final double BRUSHES_BOTTOM = 184;
    private static final double LOWER = 0.7;
    private static final double LEAST_TEXT = 3.5;
    private static final double INSIDE = 60;
    private static final double RADIUS = 22;
    private static final int MOST_SLOTS = 18;
    private static final int MOST_BARS = 24;

    private Pictures() {}

    /** Whether a drawing of the whole winding can be read at the width of a page. */
    static boolean small(Armature a) {
        return a.slots() <= MOST_SLOTS && a.bars() <= MOST_BARS;
    }

    /**
     * The winding rolled out, with the brushes at the neutral or without them.
     *
     * @param marked coils drawn heavily
     */
    static Drawing developed(Winding winding, List<Integer> marked, boolean brushes) {
        return developed(winding, new Highlight(new TreeSet<>(marked), Set.of(), Set.of()), brushes);
    }

    /** The winding rolled out with its brushes and coil 1 marked; empty where it is too large to be read. */
    static Optional<Drawing> ofAll(Winding winding) {
        return small(winding.armature()) ? Optional.of(developed(winding, List.of(1), true)) : Optional.empty();
    }

    static Drawing developed(Winding winding, Highlight highlight, boolean brushes) {
        Drawing whole = DrawingView.DEVELOPED
                .draw(winding, ViewOptions.of("").withHighlight(highlight))
                .first();
        double bottom = brushes ? BRUSHES_BOTTOM : COMMUTATOR_BOTTOM;
        List<Shape> kept = whole.shapes().stream()
                .filter(s -> s.roles().stream().noneMatch(r -> r == Role.TITLE || r == Role.NOTE || r == Role.LEGEND))
                .filter(s -> s.roles().contains(Role.PAPER) || s.bounds().bottom() < bottom)
                .filter(s -> brushes || !isBrush(s))
                .toList();
        return new Drawing(
                whole.title(),
                whole.description(),
                whole.width(),
                whole.height(),
                whole.palette(),
                withRoom(kept.stream().map(Pictures::lower).toList()));
    }

    /** Leaves out the numbers at the sides, with their lines, that the larger figures leave no room for. */
    private static List<Shape> withRoom(List<Shape> shapes) {
        List<Shape.Text> taken = new ArrayList<>();
        List<Shape> out = new ArrayList<>();
        for (int i = 0; i < shapes.size(); i++) {
            Shape s = shapes.get(i);
            boolean leader = s.roles().contains(Role.LEADER);
            if (leader && i + 1 < shapes.size() && shapes.get(i + 1) instanceof Shape.Text t) {
                i++;
                if (taken.stream().noneMatch(o -> o.bounds().overlaps(t.bounds()))) {
                    taken.add(t);
                    out.add(s);
                    out.add(t);
                }
                continue;
            }
            out.add(s);
        }
        return out;
    }

    private static boolean isBrush(Shape s) {
        return s instanceof Shape.Group g
                && g.element()
                        .map(Element::kind)
                        .filter(k -> k == Element.Kind.BRUSH)
                        .isPresent();
    }

    /** Some coils of a winding alone, the last of them drawn heavily. */
    static Drawing firstCoils(Winding winding, List<Integer> coils) {
        List<ListedCoil> list =
                coils.stream().map(winding::coil).map(ListedCoil::of).toList();
        Winding part = Winding.build(winding.armature(), new WindingSpec.Listed(list));
        return developed(part, List.of(coils.get(coils.size() - 1)), false);
    }

    /** The same lower, its figures no smaller than can be read when the drawing is fitted to a page. */
    private static Shape lower(Shape s) {
        if (s instanceof Shape.Text t) {
            double size = Math.max(t.size(), LEAST_TEXT);
            // In slots and bars the middle of the figures stays where it was.
            double y = t.at().y() > INSIDE ? lower(t.at().y() - 0.36 * t.size()) + 0.36 * size : lower(t.at().y());
            var at = new Point(t.at().x(), y);
            return new Shape.Text(at, t.text(), size, t.bold(), t.anchor(), t.roles());
        } else if (s instanceof Shape.Group g) {
            List<Shape> parts = g.shapes().stream().map(Pictures::lower).toList();
            return new Shape.Group(g.id(), g.element(), g.title(), g.roles(), parts);
        } else if (s instanceof Shape.Rect r) {
            boolean plate = r.roles().contains(Role.PLATE);
            double top = lower(r.y());
            double bottom = lower(r.y() + r.height());
            double high = plate ? Math.max(r.height(), 1.2 * LEAST_TEXT) : bottom - top;
            double wide = plate ? Math.max(r.width(), LEAST_TEXT) : r.width();
            double middle = (top + bottom) / 2;
            double x = r.x() + (r.width() - wide) / 2;
            return new Shape.Rect(x, middle - high / 2, wide, high, r.radius(), r.roles());
        } else if (s instanceof Shape.Line l) {
            return new Shape.Line(lower(l.from()), lower(l.to()), l.roles());
        } else if (s instanceof Shape.Polyline p) {
            return new Shape.Polyline(p.points().stream().map(Pictures::lower).toList(), p.closed(), p.roles());
        } else if (s instanceof Shape.Curve c) {
            return new Shape.Curve(
                    lower(c.start()),
                    c.pieces().stream()
                            .map(q -> new Shape.Cubic(lower(q.first()), lower(q.second()), lower(q.end())))
                            .toList(),
                    c.roles());
        } else if (s instanceof Shape.Circle c) {
            return new Shape.Circle(lower(c.middle()), c.radius(), c.roles());
        }
        throw new IllegalStateException(
                "no developed winding holds a " + s.getClass().getSimpleName());
    }

    private static Point lower(Point p) {
        return new Point(p.x(), lower(p.y()));
    }

    /** Brushes and what joins them keep their height. */
    private static double lower(double y) {
        return LOWER * Math.min(y, COMMUTATOR_BOTTOM) + Math.max(0, y - COMMUTATOR_BOTTOM);
    }

    /** The armature with a feed and a meter on it. */
    static Drawing touched(
            Winding winding, Optional<BenchTest.Pair> feed, Optional<BenchTest.Pair> meter, String unit) {
        return BenchPicture.touched(
                winding, new BenchPicture.Touches(feed, meter, unit, OptionalInt.empty()), Palette.COLOUR, RADIUS);
    }

    /**
     * The armature in the growler with the probes on a pair of bars, and nothing told of its faces.
     *
     * @param shown whether the meter shows what it reads; else a question mark
     */
    static Drawing growler(Winding winding, double angle, BenchTest.Pair probes, boolean shown) {
        Drawing d = BenchPicture.growler(
                winding,
                ViewOptions.of("")
                        .withRotorAngle(angle)
                        .withBench(new GrowlerBench(Growler.USUAL, List.of(), Optional.of(probes))),
                RADIUS);
        List<Shape> shapes =
                d.shapes().stream().flatMap(s -> silent(s, shown).stream()).toList();
        return new Drawing(d.title(), "", d.width(), d.height(), d.palette(), shapes);
    }

    private static Optional<Shape> silent(Shape s, boolean shown) {
        if (s instanceof Shape.Text t) {
            if (t.text().startsWith("growler:")) {
                return Optional.empty();
            }
            boolean reading = !shown && t.text().matches("\\d+\\.\\d+");
            return Optional.of(reading ? new Shape.Text(t.at(), "?", t.size(), t.bold(), t.anchor(), t.roles()) : t);
        } else if (s instanceof Shape.Group g) {
            List<Shape> parts =
                    g.shapes().stream().flatMap(x -> silent(x, shown).stream()).toList();
            return parts.isEmpty()
                    ? Optional.empty()
                    : Optional.of(new Shape.Group(g.id(), g.element(), "", g.roles(), parts));
        }
        return Optional.of(s);
    }
}
