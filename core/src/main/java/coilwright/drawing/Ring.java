package coilwright.drawing;

import coilwright.circuit.Brush;
import coilwright.circuit.BrushGear;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.CoilSide;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/**
 * The armature seen from the commutator end: from the middle outwards the shaft, brushes, bars, leads, slots, the end
 * connections of the back folded outwards, and the poles. Slot 1 is up at rotor angle 0.
 */
final class Ring {
    /** Sum of the widths of all bands at full size, mm. */
    private static final double BANDS = 79;

    private static final double SHAFT = 6;
    private static final double BRUSH = 6.5;
    private static final double BAR = 8.5;
    private static final double LEAD = 19;
    private static final double CORE = 14.5;
    private static final double BACK = 19;
    private static final double NUMBERS = 6;
    private static final double POLE = 5.5;

    private final Overlay overlay;
    private final Winding winding;
    private final Armature a;
    private final ViewOptions options;
    private final Leads leads;
    private final RingSizes size;
    private final double font;
    private final double positionAngle;
    private final double layerAngle;
    private final double longest;
    private final boolean dense;
    private final boolean fine;
    private final boolean alone;
    private final Occupied occupied = new Occupied();
    private final RingMarks marks;

    /**
     * A ring that fits a circle.
     *
     * @param core radius of the middle within the brushes
     * @param radius of the whole
     * @param alone whether the armature is shown without brushes and poles
     */
    Ring(Overlay overlay, ViewOptions options, Point middle, double core, double radius, double font, boolean alone) {
        this.overlay = overlay;
        this.winding = overlay.winding();
        this.a = winding.armature();
        this.options = options;
        this.leads = new Leads(overlay);
        this.font = font;
        double scale = (radius - core) / (alone ? BANDS - POLE - BRUSH : BANDS);
        this.alone = alone;
        double barIn = core + (alone ? 0 : BRUSH * scale);
        double barOut = barIn + BAR * scale;
        double coreIn = barOut + LEAD * scale;
        double coreOut = coreIn + CORE * scale;
        double apexOut = coreOut + BACK * scale;
        double poleIn = apexOut + NUMBERS * scale;
        double poleOut = poleIn + POLE * scale;
        double shaft = Math.max(1.5, Math.min(SHAFT, barIn - BRUSH * scale - 3));
        this.size = new RingSizes(
                middle, scale, shaft, barIn, barOut, coreIn, coreOut, apexOut, poleIn, poleOut, options.rotorAngle());
        this.marks = new RingMarks(overlay, size, occupied);
        int u = winding.sidesPerSlot();
        this.positionAngle = inner(winding) * a.slotAngle() / u;
        double mm = coreIn * Math.toRadians(positionAngle);
        double gap = Math.min(mm * 0.84 / (winding.layers() - 1 + 0.6), 5.0 / (winding.layers() - 1));
        this.layerAngle = Math.toDegrees(gap / coreIn);
        this.longest = Math.max(
                1e-9,
                winding.coils().stream()
                        .mapToDouble(c -> Math.abs(span(c)))
                        .max()
                        .orElse(1));
        this.dense = gap < 2;
        this.fine = gap < 0.9;
    }

    private static double inner(Winding w) {
        return w.sidesPerSlot() == 1 ? 0.7 : 0.84;
    }

    /** Radius of the middle that gives every number its room, with bands at full size. */
    static double roomyCore(Winding w, double font) {
        Armature a = w.armature();
        double bars = (digits(a.bars(), font) + 1) * a.bars() / (2 * Math.PI) - BRUSH - BAR / 2;
        double slots = (digits(a.slots(), font) + 2) * a.slots() / (2 * Math.PI) - BRUSH - BAR - LEAD - CORE / 2;
        int positions = w.positions();
        double sides = 0.95 * w.layers() * positions / inner(w) / (2 * Math.PI) - BRUSH - BAR - LEAD;
        int last = w.coils().get(w.coils().size() - 1).number();
        double coils = (digits(last, font) + 0.7) * positions / inner(w) / (2 * Math.PI) - BANDS + POLE + NUMBERS;
        return Math.max(Math.max(bars, slots), Math.max(sides, coils));
    }

    static double fullRadius(double core) {
        return core + BANDS;
    }

    private static double digits(int largest, double font) {
        return TextWidths.em("0".repeat(Integer.toString(largest).length()), false) * font;
    }

    /** The way round from one angle to another, degrees: the short way, clockwise where both are equal. */
    static double shortWay(double from, double to) {
        double d = to - from;
        d -= 360 * Math.floor(d / 360);
        return d > 180 + 1e-9 ? d - 360 : d;
    }

    private double sideAngle(CoilSide side) {
        int u = winding.sidesPerSlot();
        int j = Math.floorMod(side.position() - 1, u);
        return options.rotorAngle()
                + a.slotCentre(side.slot())
                + (j + 0.5 - u / 2.0) * positionAngle
                + (side.layer() - (winding.layers() + 1) / 2.0) * layerAngle;
    }

    private double sideRadius(CoilSide side) {
        double depth = (side.layer() - 1.0) / (winding.layers() - 1);
        return size.coreOut() - size.scale() * (2.2 + depth * (CORE - 6.4));
    }

    private double span(Coil c) {
        double slots =
                shortWay(a.slotCentre(c.top().slot()), a.slotCentre(c.bottom().slot()));
        double from = sideAngle(c.top()) - a.slotCentre(c.top().slot());
        double to = sideAngle(c.bottom()) - a.slotCentre(c.bottom().slot());
        return slots + to - from;
    }

    /**
     * Paints it.
     *
     * @param prefix of ids
     * @param only the coils to draw; all where empty
     */
    void paint(Canvas canvas, String prefix, Optional<Set<Integer>> only) {
        canvas.add(new Shape.Circle(size.middle(), size.coreOut(), List.of(Role.CORE)));
        canvas.add(new Shape.Circle(size.middle(), size.coreIn(), List.of(Role.OPENING)));
        canvas.add(new Shape.Circle(size.middle(), size.shaft(), List.of(Role.SHAFT)));
        double width = winding.sidesPerSlot() == 1
                ? Math.min(0.6 * a.slotAngle(), layerAngle * (winding.layers() - 1) + Math.toDegrees(4 / size.coreIn()))
                : inner(winding) * a.slotAngle();
        for (int slot = 1; slot <= a.slots(); slot++) {
            canvas.add(slotSector(slot, width, List.of(Role.OPENING)));
        }
        if (!alone) {
            poles(canvas, prefix);
        }
        bars(canvas, prefix, only);
        // What stands out is painted last, but takes its numbers' places first.
        var front = new Canvas();
        overlay.inFront().forEach(c -> coil(front, prefix, c, marked(c)));
        List<Coil> last = new ArrayList<>();
        for (Coil c : winding.coils()) {
            if (only.isPresent() && !only.get().contains(c.number())) {
                continue;
            }
            if (overlay.front(c)) {
                continue;
            }
            if (marked(c)) {
                last.add(c);
            } else {
                coil(canvas, prefix, c, false);
            }
        }
        last.forEach(c -> coil(canvas, prefix, c, true));
        canvas.addAll(front);
        slots(canvas, prefix, width, only);
        if (!overlay.plain()) {
            marks.paint(canvas);
        } else if (!alone) {
            brushes(canvas, prefix);
        }
    }

    private boolean marked(Coil c) {
        return options.highlight().coils().contains(overlay.number(c));
    }

    /** How many leads found no room for their words at the bar. */
    int tagsLeftOut() {
        return marks.tagsLeftOut();
    }

    private Shape.Sector slotSector(int slot, double width, List<Role> roles) {
        double angle = options.rotorAngle() + a.slotCentre(slot);
        return new Shape.Sector(
                size.middle(), size.coreIn() + 1.6 * size.scale(), size.coreOut(), angle - width / 2, width, roles);
    }

    /** Every which number is shown, so that texts of a width find room at a pitch. */
    static int every(double width, double pitch) {
        for (int step : new int[] {1, 2, 5, 10, 20, 50, 100, 200}) {
            if (step * pitch >= width) {
                return step;
            }
        }
        return 500;
    }

    private static boolean shown(int number, int step, int count) {
        return step == 1
                || number == 1
                || (number % step == 0 && count + 1 - number >= step * 0.6 && number - 1 >= step * 0.6);
    }

    private void slots(Canvas canvas, String prefix, double width, Optional<Set<Integer>> only) {
        double radius = size.coreOut() - size.scale() * (2.2 + (CORE - 6.4) / 2);
        int step = every(digits(a.slots(), font) + 1.6, 2 * Math.PI * radius / a.slots());
        Set<Integer> wanted = touchedSlots(only);
        for (int slot = 1; slot <= a.slots(); slot++) {
            boolean marked = options.highlight().slots().contains(slot);
            List<Shape> parts = new ArrayList<>();
            parts.add(slotSector(slot, width, List.of()));
            boolean show =
                    wanted.contains(slot) || (shown(slot, step, a.slots()) && clear(slot, wanted, step, a.slots()));
            if (show) {
                String words = Integer.toString(slot);
                Point p = size.at(radius, options.rotorAngle() + a.slotCentre(slot));
                double w = TextWidths.em(words, true) * font + 0.7;
                parts.add(new Shape.Rect(p.x() - w / 2, p.y() - 0.6 * font, w, 1.2 * font, 0.5, List.of(Role.PLATE)));
                parts.add(Canvas.centred(p.x(), p.y(), words, font, marked, Role.LABEL));
            }
            canvas.group(prefix, Element.slot(slot), "Slot " + slot, Canvas.roles(Role.SLOT, marked), parts);
        }
    }

    private Set<Integer> touchedSlots(Optional<Set<Integer>> only) {
        Set<Integer> out = new TreeSet<>();
        only.ifPresent(set -> set.forEach(n -> {
            out.add(winding.coil(n).top().slot());
            out.add(winding.coil(n).bottom().slot());
        }));
        return out;
    }

    private Set<Integer> touchedBars(Optional<Set<Integer>> only) {
        Set<Integer> out = new TreeSet<>();
        only.ifPresent(set -> set.forEach(n -> {
            winding.coil(n).topBar().ifPresent(out::add);
            winding.coil(n).bottomBar().ifPresent(out::add);
        }));
        return out;
    }

    /** Whether a thinned number keeps clear of the wanted ones. */
    private static boolean clear(int number, Set<Integer> wanted, int step, int count) {
        return step == 1
                || wanted.stream().noneMatch(w -> {
                    int d = Math.abs(w - number);
                    return Math.min(d, count - d) < step;
                });
    }

    private void bars(Canvas canvas, String prefix, Optional<Set<Integer>> only) {
        double radius = (size.barIn() + size.barOut()) / 2;
        double pitch = 2 * Math.PI * radius / a.bars();
        int step = every(digits(a.bars(), font) + 0.8, pitch);
        Set<Integer> wanted = touchedBars(only);
        List<Shape> late = new ArrayList<>();
        for (int bar = 1; bar <= a.bars(); bar++) {
            boolean marked = options.highlight().bars().contains(bar);
            double angle = options.rotorAngle() + a.barCentre(bar);
            double w = a.barAngle() * (pitch < 1 ? 0.8 : 0.9);
            List<Shape> parts = new ArrayList<>();
            parts.add(new Shape.Sector(size.middle(), size.barIn(), size.barOut(), angle - w / 2, w, List.of()));
            Shape.Text t = null;
            if (wanted.contains(bar) || (shown(bar, step, a.bars()) && clear(bar, wanted, step, a.bars()))) {
                Point p = size.at(radius, angle);
                t = Canvas.centred(p.x(), p.y(), Integer.toString(bar), font, marked, Role.LABEL);
                if (!occupied.take(t.bounds())) {
                    t = null;
                }
            }
            if (t != null && step == 1) {
                parts.add(t);
            }
            canvas.group(prefix, Element.bar(bar), "Bar " + bar, barRoles(marked, pitch), parts);
            if (t != null && step > 1) {
                late.add(new Shape.Rect(
                        t.bounds().left() - 0.3,
                        t.at().y() - 0.36 * font - 0.55 * font,
                        t.bounds().width() + 0.6,
                        1.1 * font,
                        0.4,
                        List.of(Role.PLATE)));
                late.add(t);
            }
        }
        late.forEach(canvas::add);
    }

    private static List<Role> barRoles(boolean marked, double pitch) {
        List<Role> roles = new ArrayList<>(Canvas.roles(Role.BAR, marked));
        if (pitch < 1.6) {
            roles.add(Role.FINE);
        }
        return roles;
    }

    private void poles(Canvas canvas, String prefix) {
        double pitch = 360.0 / a.poles();
        for (int j = 1; j <= a.poles(); j++) {
            boolean north = j % 2 == 1;
            double centre = (j - 1) * pitch;
            Point p = size.at((size.poleIn() + size.poleOut()) / 2, centre);
            List<Shape> parts = new ArrayList<>();
            parts.add(new Shape.Sector(
                    size.middle(),
                    size.poleIn(),
                    size.poleOut(),
                    centre - 0.36 * pitch,
                    0.72 * pitch,
                    List.of(north ? Role.NORTH : Role.SOUTH)));
            double high = Math.max(Canvas.SMALL, 4 * size.scale());
            if (0.72 * Math.toRadians(pitch) * size.poleIn() > high * 1.2) {
                Shape.Text letter = Canvas.centred(p.x(), p.y(), north ? "N" : "S", high, true, Role.LABEL);
                occupied.insist(letter.bounds());
                parts.add(letter);
            }
            canvas.group(
                    prefix,
                    new Element(Element.Kind.POLE, j),
                    "Pole " + j + (north ? ", north" : ", south"),
                    List.of(Role.POLE),
                    parts);
        }
    }

    private void brushes(Canvas canvas, String prefix) {
        Optional<BrushGear> gear = Caption.brushes(winding, options);
        if (gear.isEmpty()) {
            return;
        }
        for (Brush b : gear.get().brushes()) {
            double outer = size.barIn() - 0.5 * size.scale();
            double inner = size.barIn() - 5.6 * size.scale();
            double w = Math.min(gear.get().widthBars() * a.barAngle(), 358);
            double radius = (outer + inner) / 2;
            Point p = size.at(radius, b.angle());
            List<Shape> parts = new ArrayList<>();
            parts.add(new Shape.Sector(size.middle(), inner, outer, b.angle() - w / 2, w, List.of()));
            double mm = Math.toRadians(w) * radius;
            double high = Math.min(3.6 * size.scale(), mm * 0.95);
            boolean inside = high >= Canvas.SMALL;
            Shape.Text t = inside
                    ? Canvas.centred(p.x(), p.y(), b.sign(), high, true, Role.LABEL)
                    : Canvas.centred(
                            size.at(inner - 2, b.angle()).x(),
                            size.at(inner - 2, b.angle()).y(),
                            b.sign(),
                            3,
                            true,
                            Role.LABEL);
            boolean room = occupied.take(t.bounds());
            if (inside && room) {
                parts.add(t);
            }
            canvas.group(
                    prefix,
                    new Element(Element.Kind.BRUSH, b.number()),
                    "Brush " + b.number() + " " + b.sign() + ", on bars " + b.bars(),
                    List.of(Role.BRUSH),
                    parts);
            if (!inside && room) {
                canvas.add(t);
            }
        }
    }

    private void coil(Canvas canvas, String prefix, Coil c, boolean marked) {
        double top = sideAngle(c.top());
        double bottom = top + span(c);
        double apex = (top + bottom) / 2;
        double rise = Math.max(0.16, Math.abs(span(c)) / longest);
        double apexRadius = size.coreOut() + (size.apexOut() - size.coreOut()) * rise;
        double foot = size.coreOut() + 1.2 * size.scale();
        double dot = Math.min(1.1, 0.42 * size.coreIn() * Math.toRadians(layerAngle));
        List<Shape> parts = new ArrayList<>();
        List<Shape> caps = new ArrayList<>();
        for (boolean isTop : new boolean[] {true, false}) {
            double side = isTop ? top : bottom;
            var half = new Spiral(size.middle(), apexRadius, apex);
            half.to(foot, side);
            half.to(sideRadius(isTop ? c.top() : c.bottom()), side);
            List<Overlay.Lead> all = overlay.leads(c, isTop);
            if (all.size() == 1 && all.get(0).role() == Role.COIL) {
                lead(half, caps, c, isTop, side, all.get(0), 0);
            } else {
                half.to(size.coreIn(), side);
                for (int i = 0; i < all.size(); i++) {
                    var own = new Spiral(size.middle(), size.coreIn(), side);
                    lead(own, caps, c, isTop, side, all.get(i), i);
                    parts.add(own.curve(List.of(Overlay.line(all.get(i), isTop))));
                }
            }
            parts.add(half.curve(List.of(isTop ? Role.COIL_TOP : Role.COIL_BOTTOM)));
        }
        parts.add(new Shape.Circle(size.at(sideRadius(c.top()), top), dot, List.of(Role.COIL_TOP)));
        parts.add(new Shape.Circle(size.at(sideRadius(c.bottom()), bottom), dot, List.of(Role.COIL_BOTTOM)));
        parts.addAll(caps);
        if (overlay.mark(c).map(Overlay.Mark::cut).orElse(false)) {
            marks.cut(apexRadius, apex, overlay.number(c) + " cut");
        } else {
            label(parts, c, apexRadius, apex, marked || overlay.front(c));
        }
        canvas.coil(overlay, c, prefix, parts, weight(), marked);
    }

    private Role weight() {
        if (alone || !dense) {
            return Role.COIL;
        }
        return fine ? Role.FINE : Role.DENSE;
    }

    private void label(List<Shape> parts, Coil c, double radius, double degrees, boolean marked) {
        String words = overlay.label(c);
        int count = winding.positions();
        double pitch = Math.toRadians(positionAngle) * size.apexOut();
        int step = every(digits(overlay.lastNumber(), font) + 0.6, pitch);
        boolean dead = words.startsWith("(");
        if (!marked && !dead && !shown(1 + (overlay.number(c) - 1) % count, step, count)) {
            return;
        }
        for (double out : new double[] {0.55 * font + 0.6, 1.6 * font + 0.6}) {
            Point p = size.at(radius + out, degrees);
            Shape.Text t = Canvas.centred(p.x(), p.y(), words, font, marked, Role.LABEL, Role.COIL_TOP);
            if (radius + out + font / 2 < size.poleIn() + 0.5 && occupied.take(t.bounds())) {
                parts.add(t);
                return;
            }
        }
    }

    /** From the side inwards to the bar, or to a cap where the lead lands on none. */
    private void lead(Spiral line, List<Shape> caps, Coil c, boolean top, double side, Overlay.Lead lead, int index) {
        OptionalInt bar = lead.bar();
        double start = size.coreIn() - 0.8 * size.scale();
        if (bar.isEmpty()) {
            double end = size.coreIn() - (top ? 3.5 : 6) * size.scale();
            line.to(end, side);
            double half = Math.toDegrees(
                    Math.min(1.3 * size.scale(), 0.3 * size.coreIn() * Math.toRadians(positionAngle)) / end);
            caps.add(new Shape.Line(size.at(end, side - half), size.at(end, side + half), List.of(Role.CAP)));
            return;
        }
        double slot = a.slotCentre((top ? c.top() : c.bottom()).slot());
        double way = shortWay(slot, a.barCentre(bar.getAsInt()));
        double own = side - options.rotorAngle() - slot;
        own -= 360 * Math.rint(own / 360);
        double end = side - own + way + leads.offset(c, top, index) * a.barAngle();
        line.to(start, side);
        line.to(size.barOut() + 1.4 * size.scale(), end);
        line.to(size.barOut(), end);
        if (lead.role() == Role.COIL) {
            return;
        }
        caps.add(Canvas.end(
                size.at(size.barOut(), end),
                Math.min(0.7, 0.2 * size.barOut() * Math.toRadians(a.barAngle())),
                Overlay.line(lead, top)));
        if (lead.role() == Role.LIFTED) {
            double r = (start + size.barOut()) / 2;
            double middleway = side + (end - side) * (start - r) / (start - size.barOut() - 1.4 * size.scale());
            var kept = new Spiral(size.middle(), size.coreIn(), side);
            kept.to(start, side);
            kept.to(r, middleway);
            caps.add(kept.curve(List.of(Role.LIFTED)));
            Point p = size.at(r, middleway);
            caps.addAll(Canvas.cross(p, 1.5, Role.LIFTED));
            marks.lifted(p);
        } else {
            marks.tag(bar.getAsInt(), overlay.number(c) + (top ? "t" : "b"), lead.role());
        }
    }
}
