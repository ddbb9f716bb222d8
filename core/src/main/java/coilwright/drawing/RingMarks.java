package coilwright.drawing;

import coilwright.winding.Armature;
import java.util.ArrayList;
import java.util.List;

/** What an overlay says within a ring: the jumper, words at leads and bars, and what is lifted or cut. */
final class RingMarks {
    private static final double STEP = 0.8;

    private final Overlay overlay;
    private final Armature armature;
    private final RingSizes size;
    private final Occupied occupied;
    private final List<Tag> tags = new ArrayList<>();
    private final List<Point> lifts = new ArrayList<>();
    private final List<Saw> saws = new ArrayList<>();
    private int tagsLeftOut;

    /** Where a coil is cut through. */
    private record Saw(double radius, double degrees, String words) {}

    /** What stands within a bar about a lead on it. */
    private record Tag(int bar, String words, Role role) {}

    RingMarks(Overlay overlay, RingSizes size, Occupied occupied) {
        this.overlay = overlay;
        this.armature = overlay.winding().armature();
        this.size = size;
        this.occupied = occupied;
    }

    /** A coil is cut through here. */
    void cut(double radius, double degrees, String words) {
        saws.add(new Saw(radius, degrees, words));
    }

    /** A lead is lifted here. */
    void lifted(Point place) {
        lifts.add(place);
    }

    /** Words about a lead on a bar. */
    void tag(int bar, String words, Role role) {
        tags.add(new Tag(bar, words, role));
    }

    /** How many leads found no room for their words at the bar. */
    int tagsLeftOut() {
        return tagsLeftOut;
    }

    void paint(Canvas canvas) {
        bridge(canvas);
        tags(canvas);
        signs(canvas);
    }

    private double barAngle(int bar) {
        return size.rotorAngle() + armature.barCentre(bar);
    }

    /** Whether a box lies between the shaft and the bars. */
    private boolean withinBars(Box box) {
        double out = 0;
        for (double x : new double[] {box.left(), box.right()}) {
            for (double y : new double[] {box.top(), box.bottom()}) {
                out = Math.max(out, size.middle().distance(new Point(x, y)));
            }
        }
        double in =
                new Shape.Rect(box.left(), box.top(), box.width(), box.height(), 0, List.of()).distance(size.middle());
        return out < size.barIn() - 0.3 && in > size.shaft() + 0.3;
    }

    /** The jumper within the bars, the short way round. */
    private void bridge(Canvas canvas) {
        if (overlay.bridge().isEmpty()) {
            return;
        }
        int first = overlay.bridge().get(0);
        int second = overlay.bridge().get(1);
        double from = barAngle(first);
        double way = Ring.shortWay(armature.barCentre(first), armature.barCentre(second));
        double radius = size.barIn() - 3 * size.scale();
        String words = "bridge " + first + "–" + second;
        Point start = size.at(size.barIn() + size.scale(), from);
        Point end = size.at(size.barIn() + size.scale(), from + way);
        canvas.group(
                "bridge-",
                Element.bar(first),
                words,
                List.of(Role.BRIDGE),
                List.of(
                        new Shape.Line(start, size.at(radius, from), List.of(Role.BRIDGE)),
                        new Shape.Arc(size.middle(), radius, from, way, List.of(Role.BRIDGE)),
                        new Shape.Line(size.at(radius, from + way), end, List.of(Role.BRIDGE)),
                        Canvas.end(start, 1.1, Role.BRIDGE),
                        Canvas.end(end, 1.1, Role.BRIDGE)));
        List<Point> places = new ArrayList<>();
        for (double r = radius - 3; r > 0; r -= 1) {
            places.add(size.at(r, from + way / 2));
        }
        for (double y = size.shaft() + 3; y < size.barIn(); y += 1) {
            places.add(new Point(size.middle().x(), size.middle().y() + y));
            places.add(new Point(size.middle().x(), size.middle().y() - y));
        }
        canvas.plate(places, words, 3, occupied, this::withinBars, Role.BRIDGE);
    }

    /** Which lead is planned or found on a bar, inwards from it, as many as there is room for. */
    private void tags(Canvas canvas) {
        for (Tag t : tags) {
            double high = Canvas.SMALL;
            boolean found = t.role() == Role.FOUND_LEAD;
            double w = TextWidths.em(t.words(), found) * high + 2;
            boolean placed = false;
            for (Point p : tagPlaces(barAngle(t.bar()), w)) {
                var box = new Box(p.x() - w / 2 - 0.3, p.y() - 1.4, p.x() + w / 2 + 0.3, p.y() + 1.4);
                placed = withinBars(box) && occupied.take(box);
                if (placed) {
                    canvas.add(new Shape.Line(size.at(size.barIn(), barAngle(t.bar())), p, List.of(Role.LEADER)));
                    canvas.rect(box.left(), box.top(), box.width(), box.height(), Role.PLATE);
                    canvas.add(Canvas.end(new Point(p.x() - w / 2 + 0.7, p.y()), 0.7, t.role()));
                    canvas.add(Canvas.text(
                            p.x() - w / 2 + 2,
                            p.y() + 0.36 * high,
                            t.words(),
                            high,
                            found,
                            Shape.Anchor.START,
                            t.role()));
                    break;
                }
            }
            tagsLeftOut += placed ? 0 : 1;
        }
    }

    /** Middles of a tag at a bar, on its radius first, then beside it. */
    private List<Point> tagPlaces(double degrees, double width) {
        List<Point> out = new ArrayList<>();
        for (double aside : new double[] {0, 0.7 * width, -0.7 * width, 1.4 * width, -1.4 * width}) {
            for (double r = size.barIn() - 1.8; r > size.shaft() + 2; r -= STEP) {
                Point p = size.at(r, degrees);
                out.add(new Point(p.x() + aside, p.y()));
            }
        }
        return out;
    }

    /** The words "lift" and "cut" beside what is lifted and cut. */
    private void signs(Canvas canvas) {
        for (Point p : lifts) {
            List<Point> places = new ArrayList<>();
            for (double away = 5; away < 12; away += 1.5) {
                for (int turn = 0; turn < 360; turn += 45) {
                    places.add(Point.polar(p.x(), p.y(), away, 90 + turn));
                }
            }
            canvas.plate(places, "lift", 2.9, occupied, this::betweenBarsAndSlots, Role.LIFTED);
        }
        for (Saw saw : saws) {
            double r = saw.radius();
            double at = saw.degrees();
            Point p = size.at(r, at);
            double half = Math.toDegrees(1.2 / r);
            canvas.add(new Shape.Sector(size.middle(), r - 1.2, r + 1.2, at - half, 2 * half, List.of(Role.PLATE)));
            for (double side : new double[] {-half, half}) {
                canvas.add(
                        new Shape.Line(size.at(r - 1.8, at + side), size.at(r + 1.8, at + side), List.of(Role.LIFTED)));
            }
            List<Point> places = new ArrayList<>();
            for (double away = 5; away < 14; away += 1.5) {
                for (int turn = 0; turn < 360; turn += 30) {
                    places.add(Point.polar(p.x(), p.y(), away, at + 180 + turn));
                }
            }
            canvas.plate(places, saw.words(), 2.9, occupied, this::overTheBack, Role.LIFTED);
        }
    }

    private boolean betweenBarsAndSlots(Box box) {
        return box.left() > size.middle().x() - size.coreIn()
                && box.right() < size.middle().x() + size.coreIn()
                && box.top() > size.middle().y() - size.coreIn()
                && box.bottom() < size.middle().y() + size.coreIn()
                && new Shape.Rect(box.left(), box.top(), box.width(), box.height(), 0, List.of())
                                .distance(size.middle())
                        > size.barOut();
    }

    private boolean overTheBack(Box box) {
        Point mid = new Point((box.left() + box.right()) / 2, (box.top() + box.bottom()) / 2);
        double r = size.middle().distance(mid);
        return r > size.coreOut() + 1 && r < size.poleOut() - 4;
    }
}
