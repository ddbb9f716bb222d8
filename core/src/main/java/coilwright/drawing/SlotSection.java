package coilwright.drawing;

import coilwright.drawing.Shape.Anchor;
import coilwright.rewind.Conductor;
import coilwright.rewind.Outline;
import coilwright.rewind.SlotFill;
import coilwright.rewind.SlotInsulation;
import coilwright.rewind.SlotPoint;
import coilwright.rewind.SlotShape;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A slot seen along the shaft, floor below, with liner, separator, wedge and every conductor that finds a place by
 * {@link SlotFill}.
 */
public final class SlotSection {
    private static final double MIDDLE = 102;
    private static final double MOST_WIDTH = 108;
    private static final double SURFACE = 44;
    private static final double MOST_DEPTH = 120;
    private static final double IRON = 9;
    private static final double PANEL = 202;
    private static final double[] SCALES = {1, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8, 10, 12.5, 15, 20, 25, 30, 40, 50, 80, 100
    };

    private final Data data;
    private final Outline body;
    private final SlotFill fill;
    private final double scale;
    private final Canvas canvas = new Canvas();
    private int left;

    /**
     * What is drawn.
     *
     * @param title one line
     * @param shape of the slot
     * @param insulation in it
     * @param conductor of one turn
     * @param turnsPerLayer turns of all coil sides of one layer, 1 or more
     */
    public record Data(
            String title, SlotShape shape, SlotInsulation insulation, Conductor conductor, int turnsPerLayer) {}

    private SlotSection(Data data) {
        this.data = data;
        this.body = data.shape().body();
        this.fill = SlotFill.of(data.shape(), data.insulation(), data.conductor(), data.turnsPerLayer());
        double most = Math.min(MOST_WIDTH / width(), MOST_DEPTH / data.shape().depthMm());
        double nice = most;
        for (double s : SCALES) {
            nice = s <= most ? s : nice;
        }
        this.scale = most < 1 || most > 200 ? most : nice;
    }

    /**
     * {@return the section on one A4 page, long side across}
     *
     * @param data sizes, insulation and wires
     * @param palette colours, or black, white and grey
     * @throws IllegalArgumentException when the insulation leaves no room in the slot
     */
    public static Drawing of(Data data, Palette palette) {
        return new SlotSection(data).draw(palette);
    }

    /** Widest place of the slot, mm. */
    private double width() {
        double half = body.boundary().stream().mapToDouble(p -> p.xMm()).max().orElseThrow();
        return Math.max(2 * half, data.shape().openingMm());
    }

    private Point at(double x, double y) {
        return new Point(MIDDLE + x * scale, SURFACE + (data.shape().depthMm() - y) * scale);
    }

    private Point at(SlotPoint p) {
        return at(p.xMm(), p.yMm());
    }

    private Drawing draw(Palette palette) {
        String title = data.title().isEmpty() ? "Slot section" : data.title();
        canvas.heading(
                title,
                "Section of a slot, seen along the shaft, air gap above, scale " + Decimal.of(scale) + " : 1",
                data.conductor().label() + " · " + count(data.turnsPerLayer(), "turn") + " in a layer",
                PANEL - 4);
        iron();
        List<Label> labels = insulation();
        labels.addAll(conductors());
        labels(labels);
        dimensions();
        scaleBar();
        panel();
        return canvas.page(
                title,
                "Section of a slot " + mm(width()) + " wide and "
                        + mm(data.shape().depthMm()) + " deep with " + fill.wires() + " wires.",
                Canvas.LONG,
                Canvas.SHORT,
                palette);
    }

    /** The slot's outline from the surface on the left down round the floor and up on the right. */
    private List<Point> outline() {
        List<SlotPoint> b = body.boundary();
        double top = body.heightMm() - 1e-9 * body.heightMm();
        int first = 0;
        for (int i = 0; i < b.size(); i++) {
            if (b.get(i).yMm() >= top && b.get((i + 1) % b.size()).yMm() >= top) {
                first = (i + 1) % b.size();
            }
        }
        List<Point> out = new ArrayList<>();
        double half = data.shape().openingMm() / 2;
        if (data.shape().neckMm() > 0) {
            out.add(at(-half, data.shape().depthMm()));
        }
        for (int i = 0; i < b.size(); i++) {
            out.add(at(b.get((first + i) % b.size())));
        }
        if (data.shape().neckMm() > 0) {
            out.add(at(half, data.shape().depthMm()));
        }
        return out;
    }

    private void iron() {
        double half = width() / 2 * scale + IRON;
        double depth = data.shape().depthMm() * scale + IRON;
        canvas.rect(MIDDLE - half, SURFACE, 2 * half, depth, Role.CORE);
        List<Point> outline = outline();
        canvas.add(new Shape.Polyline(outline, true, List.of(Role.OPENING)));
        Point left = outline.get(0);
        Point right = outline.get(outline.size() - 1);
        canvas.line(MIDDLE - half, SURFACE, left.x(), SURFACE, Role.AXIS);
        canvas.line(right.x(), SURFACE, MIDDLE + half, SURFACE, Role.AXIS);
    }

    /** A part of the page to be named in the margin. */
    private record Label(Point at, String words) {}

    private List<Label> insulation() {
        List<Label> labels = new ArrayList<>();
        double liner = data.insulation().linerMm();
        double top = body.heightMm() - data.insulation().wedgeMm();
        if (liner > 0) {
            canvas.add(new Shape.Polyline(points(body.within(0, 0, body.heightMm())), true, List.of(Role.LINER)));
            List<SlotPoint> inner = body.within(liner, 0, body.heightMm());
            canvas.add(new Shape.Polyline(points(inner), true, List.of(Role.OPENING)));
            double y = body.heightMm() * 0.12 + liner;
            labels.add(new Label(at(halfWidth(y, 0) - liner / 2, y), "liner"));
        }
        part(
                fill.separatorFromMm(),
                fill.separatorFromMm() + data.insulation().separatorMm(),
                Role.SEPARATOR,
                "separator",
                labels);
        part(top, body.heightMm(), Role.WEDGE, "wedge", labels);
        canvas.add(new Shape.Polyline(outline(), false, List.of(Role.AXIS)));
        return labels;
    }

    private void part(double from, double to, Role role, String name, List<Label> labels) {
        List<SlotPoint> area = to - from > 1e-9 ? body.within(data.insulation().linerMm(), from, to) : List.of();
        if (area.size() < 3) {
            return;
        }
        canvas.add(new Shape.Polyline(points(area), true, List.of(role)));
        double y = (from + to) / 2;
        labels.add(new Label(at(halfWidth(y, data.insulation().linerMm()) * 0.8, y), name));
    }

    private List<Point> points(List<SlotPoint> list) {
        return list.stream().map(this::at).toList();
    }

    /** Half the width at a height within an inset; negative where nothing is left. */
    private double halfWidth(double y, double inset) {
        double hair = 1e-7 * body.heightMm();
        return body.within(inset, y - hair, y + hair).stream()
                .mapToDouble(p -> p.xMm())
                .max()
                .orElse(-1);
    }

    private List<Label> conductors() {
        List<Label> labels = new ArrayList<>();
        if (data.conductor() instanceof Conductor.Strip strip) {
            for (boolean top : new boolean[] {false, true}) {
                SlotFill.Strips strips = fill.strips().orElseThrow();
                List<SlotFill.LaidStrip> laid = top ? strips.top() : strips.bottom();
                laid.forEach(l -> strip(strip, l, top));
                left += data.turnsPerLayer() - laid.size();
                laid.stream()
                        .findFirst()
                        .ifPresent(l -> labels.add(new Label(
                                at(l.leftMm() + l.widthMm() / 2, l.bottomMm() + l.heightMm() / 2), layer(top))));
            }
            return labels;
        }
        Conductor.Round round = (Conductor.Round) data.conductor();
        if (fill.packing().isEmpty()) {
            return labels;
        }
        SlotFill.Placed placed = fill.packing().get();
        double outer = round.wire().overallDiameterMm() / 2 * scale;
        double bare = round.wire().size().bareDiameterMm() / 2 * scale;
        for (boolean top : new boolean[] {false, true}) {
            List<SlotPoint> centres = top ? placed.top() : placed.bottom();
            Role copper = top ? Role.COPPER_TOP : Role.COPPER_BOTTOM;
            List<Shape> parts = new ArrayList<>();
            for (SlotPoint c : centres) {
                if (outer - bare >= 0.08) {
                    parts.add(new Shape.Circle(at(c), outer, List.of(Role.COVERING)));
                    parts.add(new Shape.Circle(at(c), bare, List.of(copper)));
                } else {
                    parts.add(new Shape.Circle(at(c), outer, List.of(copper)));
                }
            }
            if (!parts.isEmpty()) {
                canvas.add(new Shape.Group(
                        Optional.of(top ? "top-layer" : "bottom-layer"),
                        Optional.empty(),
                        layer(top) + ": " + count(centres.size(), "wire"),
                        outer < 0.6 ? List.of(Role.FINE) : List.of(),
                        parts));
                SlotPoint right = centres.stream()
                        .max(Comparator.comparingDouble(p -> p.xMm()))
                        .orElseThrow();
                labels.add(new Label(at(right), layer(top)));
            }
            left += placed.wiresPerLayer() - centres.size();
        }
        return labels;
    }

    private static String layer(boolean top) {
        return top ? "top layer" : "bottom layer";
    }

    private void strip(Conductor.Strip strip, SlotFill.LaidStrip laid, boolean top) {
        double cover = strip.insulationMm() * scale;
        Point corner = at(laid.leftMm(), laid.bottomMm() + laid.heightMm());
        double width = laid.widthMm() * scale;
        double height = laid.heightMm() * scale;
        canvas.add(new Shape.Rect(corner.x(), corner.y(), width, height, 0, List.of(Role.COVERING)));
        canvas.add(new Shape.Rect(
                corner.x() + cover,
                corner.y() + cover,
                width - 2 * cover,
                height - 2 * cover,
                strip.cornerRadiusMm() * scale,
                List.of(top ? Role.COPPER_TOP : Role.COPPER_BOTTOM)));
    }

    private void labels(List<Label> labels) {
        List<Label> sorted = labels.stream()
                .sorted(Comparator.comparingDouble((Label l) -> l.at().y()))
                .toList();
        double low = SURFACE + 2;
        double high = SURFACE + MOST_DEPTH + IRON;
        double[] y =
                Occupied.spread(sorted.stream().mapToDouble(l -> l.at().y()).toArray(), 5, low, high);
        double x = MIDDLE + width() / 2 * scale + IRON + 3;
        for (int i = 0; i < sorted.size(); i++) {
            Label l = sorted.get(i);
            canvas.add(new Shape.Polyline(
                    List.of(l.at(), new Point(x - 2, y[i]), new Point(x - 0.5, y[i])), false, List.of(Role.LEADER)));
            canvas.add(new Shape.Circle(l.at(), 0.4, List.of(Role.READ)));
            canvas.text(x, y[i] + 1, l.words(), 2.9, Anchor.START, Role.LABEL);
        }
    }

    private void dimensions() {
        double left = MIDDLE - width() / 2 * scale - IRON - 4;
        double floor = SURFACE + data.shape().depthMm() * scale;
        canvas.line(left, SURFACE, left, floor, Role.DIMENSION);
        end(left, SURFACE, true);
        end(left, floor, true);
        canvas.line(left - 1.5, SURFACE, MIDDLE - width() / 2 * scale - IRON, SURFACE, Role.DIMENSION);
        canvas.line(left - 1.5, floor, MIDDLE - width() / 2 * scale - IRON, floor, Role.DIMENSION);
        canvas.text(left - 2, (SURFACE + floor) / 2 + 1, mm(data.shape().depthMm()), 2.9, Anchor.END, Role.LABEL);
        double bodyHalf =
                body.boundary().stream().mapToDouble(p -> p.xMm()).max().orElseThrow();
        double widest = body.boundary().stream()
                .filter(p -> p.xMm() > bodyHalf * (1 - 1e-9))
                .mapToDouble(p -> p.yMm())
                .max()
                .orElseThrow();
        across(bodyHalf, floor + IRON + 5, at(bodyHalf, widest).y(), mm(2 * bodyHalf) + " wide", 4.2);
        if (Math.abs(data.shape().openingMm() - 2 * bodyHalf) > 1e-9
                || data.shape().neckMm() > 0) {
            across(
                    data.shape().openingMm() / 2,
                    SURFACE - 6,
                    SURFACE,
                    mm(data.shape().openingMm()) + " opening",
                    -2.2);
        }
    }

    /** A dimension line across the slot at a height of the page, for a width found at another height. */
    private void across(double half, double y, double from, String words, double text) {
        double side = half * scale;
        canvas.line(MIDDLE - side, y, MIDDLE + side, y, Role.DIMENSION);
        for (double x : new double[] {MIDDLE - side, MIDDLE + side}) {
            end(x, y, false);
            canvas.line(x, from, x, y + Math.signum(y - from) * 1.5, Role.DIMENSION);
        }
        canvas.text(MIDDLE, y + text, words, 2.9, Anchor.MIDDLE, Role.LABEL);
    }

    /** The oblique stroke that ends a dimension line. */
    private void end(double x, double y, boolean upright) {
        double dx = upright ? 1 : 0.8;
        canvas.line(x - dx, y + 0.8, x + dx, y - 0.8, Role.AXIS);
    }

    private void scaleBar() {
        double length = 0.1;
        for (double l : new double[] {0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000}) {
            length = l * scale <= 55 ? l : length;
        }
        double w = length * scale;
        double x = MIDDLE - w / 2;
        double y = 196;
        canvas.add(new Shape.Rect(x, y, w / 2, 1.6, 0, List.of(Role.READ)));
        canvas.add(new Shape.Rect(x, y, w, 1.6, 0, List.of(Role.AXIS)));
        canvas.text(MIDDLE, y - 1.5, mm(length), 2.6, Anchor.MIDDLE, Role.LABEL);
    }

    private void panel() {
        double room = Canvas.LONG - Canvas.BORDER - PANEL;
        double y = 38;
        y = canvas.lines(PANEL, y, verdict(), 3.2, true, room, 5, Role.NOTE) + 2;
        List<String> lines = new ArrayList<>();
        lines.add("slot " + area(fill.slotAreaMm2()));
        lines.add("room for wire " + area(fill.windingAreaMm2()));
        lines.add(count(fill.wires(), data.conductor() instanceof Conductor.Strip ? "strip" : "wire") + ", copper "
                + area(fill.copperAreaMm2()));
        lines.add("copper over slot " + percent(fill.copperFactor()));
        boolean round = data.conductor() instanceof Conductor.Round;
        lines.add((round ? "slot fill, wire as squares " : "slot fill ") + percent(fill.fill()));
        if (round) {
            lines.add("slot fill, wire as circles " + percent(fill.circleFill()));
        }
        fill.packing()
                .ifPresent(p -> lines.add(
                        "bottom layer laid " + p.bottomRoom().pattern().word() + ", room for "
                                + p.bottomRoom().count() + "; top layer "
                                + p.topRoom().pattern().word() + ", room for "
                                + p.topRoom().count()));
        for (String line : lines) {
            y = canvas.lines(PANEL, y, line, 2.9, false, room, 2, Role.NOTE);
        }
        y += 4;
        y = key(y, Role.COPPER_TOP, "top layer, copper light");
        y = key(y, Role.COPPER_BOTTOM, "bottom layer, copper dark");
        y = data.insulation().linerMm() > 0
                ? key(y, Role.LINER, "liner " + mm(data.insulation().linerMm()))
                : y;
        y = data.insulation().separatorMm() > 0
                ? key(y, Role.SEPARATOR, "separator " + mm(data.insulation().separatorMm()))
                : y;
        if (data.insulation().wedgeMm() > 0) {
            key(
                    y,
                    Role.WEDGE,
                    "wedge, top stick, folded liner " + mm(data.insulation().wedgeMm()));
        }
    }

    private double key(double y, Role role, String words) {
        canvas.rect(PANEL, y - 2.6, 7, 3.2, role);
        canvas.text(PANEL + 9, y, words, 2.6, Anchor.START, Role.LEGEND);
        return y + 4.8;
    }

    private String verdict() {
        boolean strip = data.conductor() instanceof Conductor.Strip;
        if (!strip && fill.packing().isEmpty()) {
            return "The wires are too many to be drawn singly: by area they "
                    + (fill.fits() ? "go in" : "do not go in");
        }
        String what = strip ? "strip" : "wire";
        int placed = fill.wires() - left;
        String passes = fill.packing().filter(p -> !p.passesOpening()).isPresent()
                ? "; the wire does not pass the slot opening"
                : "";
        return left == 0
                ? "All " + count(fill.wires(), what) + " find a place" + passes
                : placed + " of " + count(fill.wires(), what) + " find a place, " + left + (left == 1 ? " is" : " are")
                        + " left over" + passes;
    }

    private static String count(int n, String what) {
        return n + " " + what + (n == 1 ? "" : "s");
    }

    private static String mm(double x) {
        return Decimal.of(x) + " mm";
    }

    private static String area(double x) {
        return String.format(Locale.ROOT, x < 10 ? "%.2f mm²" : "%.1f mm²", x);
    }

    private static String percent(double x) {
        return String.format(Locale.ROOT, "%.1f %%", 100 * x);
    }
}
