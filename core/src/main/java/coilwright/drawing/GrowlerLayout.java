package coilwright.drawing;

import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.bench.GrowlerMeter;
import coilwright.bench.PairReading;
import coilwright.drawing.Shape.Anchor;
import coilwright.winding.Armature;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * The armature in the growler's V, from the commutator end: faces, flux at one instant, slots, bars, and the probes on
 * the pair of bars that reads most. One A4 page for any number of bars: where they are crowded, numbers are left out;
 * every bar still bears its number for a person who points at it.
 */
final class GrowlerLayout {
    private static final double PANEL = 84;
    private static final double RADIUS = 56;
    private static final double GAP = 4.6;

    private final Winding winding;

    private final Armature a;
    private final ViewOptions options;
    private final Growler growler;
    private final Optional<PairReading> shown;
    private final List<PairReading> best;
    private final double radius;
    private final Point middle;
    private final boolean blade;
    private final EndView end;

    private GrowlerLayout(Winding winding, ViewOptions options, Point middle, double radius, boolean blade) {
        this.winding = winding;
        this.a = winding.armature();
        this.options = options;
        this.growler = options.bench().growler();
        this.middle = middle;
        this.blade = blade;
        this.radius = radius;
        var test = new BenchTest.GrowlerWalked(growler, options.rotorAngle());
        var armature = options.bench().armature(winding);
        List<PairReading> walk = test.readWalk(armature);
        double most = walk.stream().mapToDouble(PairReading::value).max().orElse(0);
        this.best = walk.stream()
                .filter(r -> most > 1e-9 && r.value() >= most * (1 - 1e-6))
                .toList();
        options.bench().probes().ifPresent(this::check);
        this.shown = blade
                ? Optional.empty()
                : options.bench()
                        .probes()
                        .map(p -> test.read(armature, List.of(p)).get(0))
                        .or(() -> best.stream().min((x, y) -> Double.compare(fromTop(x), fromTop(y))));
        Set<Integer> wanted = new LinkedHashSet<>();
        shown.ifPresent(r -> {
            wanted.add(r.from());
            wanted.add(r.to());
        });
        this.end = new EndView(
                winding, options.rotorAngle(), middle, radius, Canvas.SMALL + 0.4, wanted, options.highlight());
    }

    private void check(BenchTest.Pair pair) {
        for (int bar : new int[] {pair.from(), pair.to()}) {
            if (bar < 1 || bar > a.bars()) {
                throw new IllegalArgumentException("probe on bar " + bar + ", but bars run from 1 to " + a.bars());
            }
        }
        if (pair.from() == pair.to()) {
            throw new IllegalArgumentException("both probes on bar " + pair.from() + ": name two different bars");
        }
    }

    /** How far the middle of a pair stands from straight up, where a hand reaches it best. */
    private double fromTop(PairReading r) {
        double c = clock(r);
        return Math.min(c, 360 - c);
    }

    private double clock(PairReading r) {
        return turn(GrowlerMeter.middle(a, r.from(), r.to()) + options.rotorAngle());
    }

    private static double turn(double degrees) {
        double t = degrees - 360 * Math.floor(degrees / 360);
        return t >= 360 - 1e-9 ? 0 : t;
    }

    static DrawingPages pages(Winding winding, ViewOptions options) {
        var canvas = new Canvas();
        var layout = new GrowlerLayout(winding, options, new Point(104, 27 + 24 + RADIUS), RADIUS, false);
        layout.picture(canvas);
        String title = options.title().isEmpty() ? "Armature in the growler" : options.title();
        layout.panel(canvas, title, Canvas.LONG - Canvas.BORDER - PANEL);
        return DrawingPages.of(canvas.page(title, layout.description(), Canvas.LONG, Canvas.SHORT, options.palette()));
    }

    /** The picture alone, without words beside it. */
    static Drawing alone(Winding winding, ViewOptions options, double radius, boolean blade) {
        var canvas = new Canvas();
        double half = radius + 25;
        var layout = new GrowlerLayout(winding, options, new Point(half, radius + 25), radius, blade);
        layout.picture(canvas);
        return canvas.page(
                "Armature in the growler", layout.description(), 2 * half, 2 * radius + 62, options.palette());
    }

    private String description() {
        return "Armature in the growler, seen from the commutator end. " + Caption.counts(a) + ". "
                + Caption.kind(winding) + ". Slot 1 at " + Caption.degrees(turn(options.rotorAngle()))
                + " clockwise from straight up. " + probes() + ".";
    }

    private String probes() {
        return blade
                ? "A steel blade over the top slot"
                : shown.map(r -> "Probes on bars " + r.from() + " and " + r.to() + " at " + Caption.degrees(clock(r))
                                + ": reading " + value(r.value()))
                        .orElse("No pair of bars reads anything");
    }

    static String value(double x) {
        return String.format(Locale.ROOT, "%.3f", x);
    }

    private void picture(Canvas canvas) {
        body(canvas);
        end.core(canvas);
        flux(canvas);
        shown.ifPresent(r -> end.leads(canvas, r.from(), r.to(), clock(r)));
        end.slots(canvas);
        end.commutator(canvas);
        faces(canvas);
        var occupied = new Occupied();
        shown.ifPresent(r -> end.meter(canvas, r.from(), r.to(), clock(r), value(r.value()), occupied));
        if (blade) {
            canvas.rect(middle.x() - 0.6, middle.y() - radius - 16, 1.2, 14.6, Role.INSTRUMENT);
            Shape.Text t =
                    Canvas.text(middle.x() + 2, middle.y() - radius - 12, "blade", 2.6, true, Anchor.START, Role.LABEL);
            canvas.add(t);
            occupied.take(t.bounds()
                    .union(new Box(middle.x() - 1, middle.y() - radius - 16, middle.x() + 1, middle.y() - radius - 1)));
        }
        end.slotOne(canvas, occupied);
    }

    private double base() {
        return middle.y() + radius + 26;
    }

    /** The iron: two limbs on a base, or a ring where the faces stand high. */
    private void body(Canvas canvas) {
        double rf = radius + GAP;
        double half = growler.halfGap();
        double inner = half - growler.face() / 2;
        double outer = half + growler.face() / 2;
        if (inner > 85 || outer > 150) {
            canvas.add(new Shape.Sector(
                    middle, rf, rf + 14, 180 - outer, Math.min(2 * outer, 359), List.of(Role.GROWLER)));
            return;
        }
        double bottom = base() + 9;
        double wide = radius + 14;
        List<Point> outline = new ArrayList<>();
        outline.add(new Point(middle.x() + wide, bottom));
        Point top = end.at(rf, 180 - outer);
        outline.add(new Point(middle.x() + wide, top.y()));
        int n = 24;
        for (int i = 0; i <= n; i++) {
            outline.add(end.at(rf, 180 - outer + i * growler.face() / n));
        }
        outline.add(new Point(end.at(rf, 180 - inner).x(), base()));
        for (int i = outline.size() - 1; i >= 0; i--) {
            Point p = outline.get(i);
            outline.add(new Point(2 * middle.x() - p.x(), p.y()));
        }
        canvas.add(new Shape.Polyline(outline, true, List.of(Role.GROWLER)));
        canvas.add(Canvas.centred(
                middle.x(),
                (base() + bottom) / 2,
                "growler: faces " + Caption.degrees(growler.face()) + " wide, " + Caption.degrees(half)
                        + " either side of straight down",
                2.6,
                false,
                Role.LABEL));
    }

    private void faces(Canvas canvas) {
        for (double centre : new double[] {growler.rightFace(), growler.leftFace()}) {
            canvas.add(new Shape.Arc(
                    middle, radius + GAP, centre - growler.face() / 2, growler.face(), List.of(Role.FACE)));
        }
    }

    /** Lines from the right face through the core to the left one; the flux is even under a face. */
    private void flux(Canvas canvas) {
        double from = radius + GAP + 8;
        int lines = 6;
        for (int i = 0; i < lines; i++) {
            double theta = growler.rightFace() + growler.face() * ((i + 0.5) / lines - 0.5);
            Point start = end.at(from, theta);
            Point edge = end.at(radius, theta);
            Point out = end.at(radius, 360 - theta);
            Point stop = end.at(from, 360 - theta);
            canvas.add(new Shape.Curve(
                    start,
                    List.of(
                            new Shape.Cubic(start, edge, edge),
                            new Shape.Cubic(end.at(radius * 0.36, theta), end.at(radius * 0.36, 360 - theta), out),
                            new Shape.Cubic(out, stop, stop)),
                    List.of(Role.FLUX)));
            arrow(canvas, end.at(radius + GAP + 2.4, theta), theta + 180);
            arrow(canvas, end.at(radius + GAP + 5.2, 360 - theta), 360 - theta);
        }
    }

    /** A small arrowhead whose tip is at a point, towards a direction. */
    private static void arrow(Canvas canvas, Point tip, double towards) {
        Point back = Point.polar(tip.x(), tip.y(), 2.6, towards + 180);
        canvas.add(new Shape.Polyline(
                List.of(
                        tip,
                        Point.polar(back.x(), back.y(), 0.9, towards + 90),
                        Point.polar(back.x(), back.y(), 0.9, towards - 90)),
                true,
                List.of(Role.FLUX)));
    }

    private void panel(Canvas canvas, String title, double x) {
        double y = canvas.lines(x, 17, title, 5, true, PANEL, 3, Role.TITLE) + 1;
        y = canvas.lines(x, y, "Armature in the growler, seen from the commutator end", 2.9, false, PANEL, 2, Role.NOTE)
                + 1.5;
        for (String part : (Caption.counts(a) + " · " + Caption.kind(winding)).split(" · ")) {
            y = canvas.lines(x, y, part, 2.9, false, PANEL, 2, Role.NOTE);
        }
        y += 3;
        y = canvas.lines(x, y, "Probes", 2.9, true, PANEL, 1, Role.NOTE);
        y = canvas.lines(x, y, probes() + ".", 2.9, false, PANEL, 3, Role.NOTE);
        if (!best.isEmpty()) {
            y = canvas.lines(
                    x, y + 1.5, "Reads most, " + value(best.get(0).value()) + ":", 2.9, true, PANEL, 1, Role.NOTE);
            int lines = 0;
            for (PairReading r : best) {
                if (lines == 9 && best.size() > 10) {
                    y = canvas.lines(x, y, "and " + (best.size() - 9) + " more pairs", 2.9, false, PANEL, 1, Role.NOTE);
                    break;
                }
                lines++;
                y = canvas.lines(
                        x,
                        y,
                        r.from() + "–" + r.to() + " at " + Caption.degrees(clock(r)),
                        2.9,
                        false,
                        PANEL,
                        1,
                        Role.NOTE);
            }
        }
        legend(canvas, x);
    }

    private void legend(Canvas canvas, double x) {
        double y = Canvas.SHORT - 52;
        canvas.sample(x, y, "flux at one instant", Role.FLUX);
        canvas.sample(x, y + 4.6, "a probe and its lead", Role.PROBE);
        canvas.sample(x, y + 9.2, "face of the growler", Role.FACE);
        y += 13.8;
        List<String> words = new ArrayList<>(List.of(
                "Angles are clockwise from straight up. Solid triangle: slot 1.",
                "Reading 1 is one whole face's flux through one sound coil."));
        if (winding.sidesPerSlot() > 1) {
            words.add(winding.sidesPerSlot() + " coils share each slot: readings step from group to group of "
                    + winding.sidesPerSlot() + " bars. That is no fault.");
        }
        if (!options.bench().equalizers().isEmpty()) {
            words.add(options.bench().equalizers().size() + " equalizer rings are joined.");
        }
        for (String s : words) {
            y = canvas.lines(x, y, s, 2.6, false, PANEL, 3, Role.LEGEND) + 0.6;
        }
    }
}
