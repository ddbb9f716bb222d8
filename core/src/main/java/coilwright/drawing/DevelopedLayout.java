package coilwright.drawing;

import coilwright.circuit.Brush;
import coilwright.circuit.BrushGear;
import coilwright.drawing.Shape.Anchor;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.CoilSide;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The winding rolled out flat: back end above, commutator end below. x runs along the circumference, slot 1 first; the
 * circumference repeats to both sides, and a page shows a window of it.
 */
final class DevelopedLayout {
    private static final double MARGIN = 16.5;
    private static final double ROOM = Canvas.LONG - 2 * MARGIN;
    private static final double NEAR = 0.3;
    private static final double APEX = 35;
    private static final double BEND = 76;
    private static final double STRIP = 77.5;
    private static final double CORE_TOP = 85;
    private static final double LEAD_END = 150;
    private static final double BAR_TOP = 153;
    private static final double BAR_BOTTOM = 162;
    private static final double BRUSH_BOTTOM = 168;
    private static final double PLUS_BUS = 173;
    private static final double MINUS_BUS = 178;
    private static final double LEGEND = 190;
    private static final double FOOTER = 200;

    private static final double JUMPER = 168;
    private static final double END_RADIUS = 0.7;
    private static final double TAG = 3.1;
    private static final int TAG_ROWS = 6;

    private final Overlay overlay;
    private final Winding winding;
    private final Armature a;
    private final ViewOptions options;
    private final Optional<BrushGear> gear;
    private final Leads leads;
    private final double fontSize;
    private final double around;
    private final double slotPitch;
    private final double barPitch;
    private final double positionPitch;
    private final double layerGap;
    private final double slopeHeight;
    private final boolean dense;
    private final double coreBottom;
    private final double leadStart;
    private final int slotsPerPage;

    private DevelopedLayout(Overlay overlay, ViewOptions options) {
        this.overlay = overlay;
        this.winding = overlay.winding();
        this.a = winding.armature();
        this.options = options;
        this.gear = overlay.plain() ? Caption.brushes(winding, options) : Optional.empty();
        this.leads = new Leads(overlay);
        double font = 3.2;
        while (font > Canvas.SMALL && leastPitch(font) * (a.slots() + overhang(true)) > ROOM) {
            font = Math.max(Canvas.SMALL, font - 0.2);
        }
        this.fontSize = font;
        double least = leastPitch(font);
        double pitch = Math.max(least, Math.min(44, ROOM / (a.slots() + overhang(true))));
        int perPage = a.slots();
        if (options.format() == PageFormat.A4 && pitch * (a.slots() + overhang(true)) > ROOM + 1e-6) {
            int pages = (int) Math.ceil(a.slots() / Math.max(1, Math.floor(ROOM / least - overhang(false))));
            perPage = (int) Math.ceil((double) a.slots() / pages);
            pitch = Math.max(least, Math.min(44, ROOM / (perPage + overhang(false))));
        }
        this.slotsPerPage = perPage;
        this.slotPitch = pitch;
        this.around = pitch * a.slots();
        this.barPitch = around / a.bars();
        int u = winding.sidesPerSlot();
        this.positionPitch = inner() * pitch / u;
        this.layerGap = Math.min(positionPitch * 0.84 / (winding.layers() - 1 + 0.6), 5.5 / (winding.layers() - 1));
        this.dense = positionPitch < 7;
        this.coreBottom = dense ? 103 : 113;
        this.leadStart = coreBottom + 3;
        double longest = winding.coils().stream()
                .mapToDouble(c -> Math.abs(span(c)))
                .max()
                .orElse(1);
        this.slopeHeight = Math.min(BEND - APEX, Math.max(12, 0.62 * longest)) / longest;
    }

    static DrawingPages pages(Overlay overlay, ViewOptions options) {
        var layout = new DevelopedLayout(overlay, options);
        int pages = (layout.a.slots() + layout.slotsPerPage - 1) / layout.slotsPerPage;
        List<Drawing> out = new ArrayList<>();
        for (int i = 0; i < pages; i++) {
            int first = 1 + i * layout.slotsPerPage;
            int last = Math.min(layout.a.slots(), first + layout.slotsPerPage - 1);
            out.add(layout.new Sheet(first, last, i + 1, pages).draw());
        }
        return new DrawingPages(out);
    }

    /** Part of a slot's pitch that its coil sides take; the rest is tooth. */
    private double inner() {
        return winding.sidesPerSlot() == 1 ? 0.78 : 0.86;
    }

    /** How far bars stand out beyond the slots of a page, in slot pitches. */
    private double overhang(boolean onePage) {
        double bar = (double) a.slots() / a.bars();
        if (onePage) {
            double half = a.slotOneInLineWith() == SlotAlignment.MICA ? 1 : 1 - bar;
            return Math.abs(half) / 2;
        }
        return 2 * bar;
    }

    private double leastPitch(double font) {
        int u = winding.sidesPerSlot();
        double coilLabel = digits(overlay.lastNumber(), font) + 0.8;
        double position = Math.max(coilLabel, 0.95 * winding.layers());
        double bar = (digits(a.bars(), font) + 1.1) * a.bars() / a.slots();
        double slot = digits(a.slots(), font) + 2.2;
        return Math.max(Math.max(position * u / inner(), bar), slot);
    }

    /** Width of the widest number of as many digits. */
    private static double digits(int largest, double font) {
        return TextWidths.em("0".repeat(Integer.toString(largest).length()), false) * font;
    }

    private double slotX(int slot) {
        return (slot - 1) * slotPitch;
    }

    private double barX(int bar) {
        return a.barCentre(bar) / 360 * around;
    }

    private double sideX(CoilSide side) {
        int u = winding.sidesPerSlot();
        int j = Math.floorMod(side.position() - 1, u);
        return slotX(side.slot())
                + ((j + 0.5) - u / 2.0) * positionPitch
                + (side.layer() - (winding.layers() + 1) / 2.0) * layerGap;
    }

    /** The way round from one x to another, mm: the short way, to the right where both are equal. */
    private double shortWay(double from, double to) {
        double d = to - from;
        d -= around * Math.floor(d / around);
        return d > around / 2 + 1e-6 ? d - around : d;
    }

    private double span(Coil c) {
        return shortWay(slotX(c.top().slot()), slotX(c.bottom().slot()))
                + sideX(c.bottom())
                - slotX(c.bottom().slot())
                - sideX(c.top())
                + slotX(c.top().slot());
    }

    private double apexHeight(Coil c) {
        return BEND - Math.max(5, slopeHeight * Math.abs(span(c)));
    }

    /** One page: the window of the circumference from one slot to another. */
    private final class Sheet {
        private final int firstSlot;
        private final int lastSlot;
        private final int number;
        private final int count;
        private final double from;
        private final double to;
        private final double leadFrom;
        private final double leadTo;
        private final double shift;
        private final double width;
        private final Canvas canvas = new Canvas();
        private final List<Cut> cuts = new ArrayList<>();
        private final Occupied occupied = new Occupied();
        private final Occupied leadLabels = new Occupied();
        private final List<Tag> tags = new ArrayList<>();
        private final List<Point> lifts = new ArrayList<>();
        private final List<Point> saws = new ArrayList<>();
        private int tagsLeftOut;

        /** What stands under a bar about a lead on it. */
        private record Tag(double x, String words, Role role) {}

        /** A line cut at the edge of the window. */
        private record Cut(Coil coil, boolean top, boolean left, boolean back, double x, double y) {}

        Sheet(int firstSlot, int lastSlot, int number, int count) {
            this.firstSlot = firstSlot;
            this.lastSlot = lastSlot;
            this.number = number;
            this.count = count;
            this.from = slotX(firstSlot) - slotPitch / 2;
            this.to = slotX(lastSlot) + slotPitch / 2;
            double first = from;
            double last = to;
            for (int[] bar : barsShown()) {
                first = Math.min(first, barX(bar[0]) + bar[1] * around - barPitch / 2);
                last = Math.max(last, barX(bar[0]) + bar[1] * around + barPitch / 2);
            }
            this.leadFrom = first;
            this.leadTo = last;
            this.width = Math.max(Canvas.LONG, leadTo - leadFrom + 2 * MARGIN);
            this.shift = (width - (leadTo - leadFrom)) / 2 - leadFrom;
        }

        /** Bars with any part in the window, each with the turn of the circumference it lies in. */
        private List<int[]> barsShown() {
            List<int[]> out = new ArrayList<>();
            if (count == 1) {
                for (int bar = 1; bar <= a.bars(); bar++) {
                    out.add(new int[] {bar, 0});
                }
                return out;
            }
            double half = a.slotOneInLineWith() == SlotAlignment.MICA ? 0.5 : 0;
            int first = (int) Math.floor(from / barPitch + 0.5 - half + 1e-6);
            int last = (int) Math.ceil(to / barPitch - 0.5 - half - 1e-6);
            for (int i = first; i <= last; i++) {
                out.add(new int[] {a.wrapBar(i + 1), Math.floorDiv(i, a.bars())});
            }
            return out;
        }

        private boolean barShown(double x) {
            if (count == 1) {
                return x > leadFrom && x < leadTo && x > barX(1) - barPitch / 2 && x < barX(a.bars()) + barPitch / 2;
            }
            return x > leadFrom && x < leadTo;
        }

        private boolean slotShown(double x) {
            return x > from && x < to;
        }

        Drawing draw() {
            String name = overlay.words().map(Overlay.Words::name).orElse("Developed winding");
            String title = options.title().isEmpty() ? name : options.title();
            String what = overlay.words().map(w -> w.what() + ". ").orElse("");
            boolean mirrored = overlay.words().map(Overlay.Words::mirrored).orElse(false);
            String sheet = count == 1 ? "" : ", sheet " + number + " of " + count;
            canvas.heading(
                    title,
                    overlay.words()
                            .map(Overlay.Words::what)
                            .orElseGet(() -> Caption.counts(a) + " · " + Caption.kind(winding)),
                    "Developed winding" + sheet + ": slots " + firstSlot + " to " + lastSlot + ", seen from "
                            + (mirrored ? "inside" : "outside") + ", back end above, commutator end below",
                    width);
            iron();
            poles();
            bars();
            // What stands out is painted last, but takes its numbers' places first.
            var front = new Canvas();
            overlay.inFront().forEach(c -> coil(front, c, marked(c)));
            List<Coil> last = new ArrayList<>();
            for (Coil c : winding.coils()) {
                if (overlay.front(c)) {
                    continue;
                }
                if (marked(c)) {
                    last.add(c);
                } else {
                    coil(canvas, c, false);
                }
            }
            last.forEach(c -> coil(canvas, c, true));
            canvas.addAll(front);
            cutLabels();
            slots();
            if (overlay.plain()) {
                brushes();
                legend();
            } else {
                poleLetters();
                tags();
                bridge();
                signs();
                overlayLegend(overlay.words().orElseThrow());
            }
            return canvas.page(
                    title,
                    what + "Developed winding diagram. " + Caption.counts(a) + ". " + Caption.kind(winding) + ".",
                    width,
                    Canvas.SHORT,
                    options.palette());
        }

        private boolean marked(Coil c) {
            return options.highlight().coils().contains(overlay.number(c));
        }

        private void iron() {
            canvas.rect(from + shift, CORE_TOP, to - from, coreBottom - CORE_TOP, Role.CORE);
            for (int slot = firstSlot; slot <= lastSlot; slot++) {
                canvas.rect(
                        slotX(slot) - slotWidth() / 2 + shift,
                        CORE_TOP,
                        slotWidth(),
                        coreBottom - CORE_TOP,
                        Role.OPENING);
            }
        }

        private double slotWidth() {
            return winding.sidesPerSlot() == 1
                    ? Math.min(slotPitch * 0.7, layerGap * (winding.layers() - 1) + 4)
                    : slotPitch * inner();
        }

        private void slots() {
            for (int slot = firstSlot; slot <= lastSlot; slot++) {
                double x = slotX(slot) + shift;
                double middle = (CORE_TOP + coreBottom) / 2;
                String words = Integer.toString(slot);
                double w = TextWidths.em(words, true) * fontSize + 1;
                boolean marked = options.highlight().slots().contains(slot);
                List<Shape> parts = List.of(
                        new Shape.Rect(x - slotWidth() / 2, CORE_TOP, slotWidth(), coreBottom - CORE_TOP, 0, List.of()),
                        new Shape.Rect(
                                x - w / 2, middle - 0.68 * fontSize, w, 1.36 * fontSize, 0.6, List.of(Role.PLATE)),
                        Canvas.centred(x, middle, words, fontSize, marked, Role.LABEL));
                canvas.group(Element.slot(slot), "Slot " + slot, Canvas.roles(Role.SLOT, marked), parts);
            }
        }

        private void poles() {
            double pitch = around / a.poles();
            double arc = 0.72 * pitch;
            for (int j = 1; j <= a.poles(); j++) {
                double centre = (j - 1) * pitch - options.rotorAngle() / 360 * around;
                boolean north = j % 2 == 1;
                List<Shape> parts = new ArrayList<>();
                forImages(centre - arc / 2, centre + arc / 2, from, to, k -> {
                    double x1 = Math.max(from, centre - arc / 2 + k * around);
                    double x2 = Math.min(to, centre + arc / 2 + k * around);
                    if (x2 - x1 < 0.05) {
                        return;
                    }
                    parts.add(new Shape.Rect(
                            x1 + shift,
                            STRIP,
                            x2 - x1,
                            CORE_TOP - STRIP - 1.5,
                            0,
                            List.of(north ? Role.NORTH : Role.SOUTH)));
                });
                canvas.group(
                        new Element(Element.Kind.POLE, j),
                        "Pole " + j + (north ? ", north" : ", south"),
                        List.of(Role.POLE),
                        parts);
            }
        }

        /** Letters over the coil sides that cross the pole strip, so after the coils. */
        private void poleLetters() {
            double pitch = around / a.poles();
            double arc = 0.72 * pitch;
            for (int j = 1; j <= a.poles(); j++) {
                double centre = (j - 1) * pitch - options.rotorAngle() / 360 * around;
                String letter = j % 2 == 1 ? "N" : "S";
                forImages(centre - arc / 2, centre + arc / 2, from, to, k -> {
                    double x1 = Math.max(from, centre - arc / 2 + k * around);
                    double x2 = Math.min(to, centre + arc / 2 + k * around);
                    if (x2 - x1 < Math.min(7, 0.4 * arc) || x2 - x1 < 4.2) {
                        return;
                    }
                    double x = (x1 + x2) / 2 + shift;
                    double y = (STRIP + CORE_TOP - 1.5) / 2;
                    canvas.add(new Shape.Rect(x - 2, y - 2.3, 4, 4.6, 0.8, List.of(Role.PLATE)));
                    canvas.add(Canvas.centred(x, y, letter, 3.6, true, Role.LABEL));
                });
            }
        }

        private void forImages(
                double low, double high, double left, double right, java.util.function.IntConsumer each) {
            int first = (int) Math.ceil((left - high) / around - 1e-9);
            int last = (int) Math.floor((right - low) / around + 1e-9);
            for (int k = first; k <= last; k++) {
                each.accept(k);
            }
        }

        private void bars() {
            for (int[] bar : barsShown()) {
                double x = barX(bar[0]) + bar[1] * around + shift;
                double w = barPitch * 0.9;
                boolean marked = options.highlight().bars().contains(bar[0]);
                List<Shape> parts = List.of(
                        new Shape.Rect(x - w / 2, BAR_TOP, w, BAR_BOTTOM - BAR_TOP, 0, List.of()),
                        Canvas.centred(
                                x, (BAR_TOP + BAR_BOTTOM) / 2, Integer.toString(bar[0]), fontSize, marked, Role.LABEL));
                canvas.group(Element.bar(bar[0]), "Bar " + bar[0], Canvas.roles(Role.BAR, marked), parts);
            }
        }

        private void coil(Canvas onto, Coil c, boolean marked) {
            double top = sideX(c.top());
            double apex = top + span(c) / 2;
            double bottom = top + span(c);
            double apexY = apexHeight(c);
            List<Shape> parts = new ArrayList<>();
            double reach = Math.abs(span(c)) / 2;
            forImages(apex - reach, apex + reach, from, to, k -> {
                double move = k * around;
                boolean topShown = slotShown(slotX(c.top().slot()) + move);
                boolean bottomShown = slotShown(slotX(c.top().slot())
                        + move
                        + shortWay(slotX(c.top().slot()), slotX(c.bottom().slot())));
                half(
                        parts,
                        c,
                        true,
                        List.of(
                                new Point(apex + move, apexY),
                                new Point(top + move, BEND),
                                new Point(top + move, leadStart)),
                        topShown);
                half(
                        parts,
                        c,
                        false,
                        List.of(
                                new Point(apex + move, apexY),
                                new Point(bottom + move, BEND),
                                new Point(bottom + move, leadStart)),
                        bottomShown);
                if (apex + move > from - NEAR && apex + move < to + NEAR) {
                    apexLabel(parts, c, apex + move + shift, apexY, marked || overlay.front(c));
                    if (overlay.mark(c).map(Overlay.Mark::cut).orElse(false)) {
                        saws.add(new Point(apex + move + shift, apexY));
                    }
                }
            });
            leads(parts, c, true, slotX(c.top().slot()), top);
            leads(parts, c, false, slotX(c.bottom().slot()), sideX(c.bottom()));
            onto.coil(overlay, c, "", parts, dense ? Role.DENSE : Role.COIL, marked);
        }

        private void apexLabel(List<Shape> parts, Coil c, double x, double y, boolean marked) {
            String words = overlay.label(c);
            for (double up : new double[] {1.2, 1.2 + 1.02 * fontSize, 1.2 + 1.5 * fontSize, 1.2 + 2.1 * fontSize}) {
                Shape.Text t =
                        Canvas.text(x, y - up, words, fontSize, marked, Anchor.MIDDLE, Role.LABEL, Role.COIL_TOP);
                if (occupied.take(t.bounds())) {
                    parts.add(t);
                    return;
                }
            }
        }

        /** From the far end of a coil down through its slot. */
        private void half(List<Shape> parts, Coil c, boolean top, List<Point> chain, boolean slotShown) {
            Role role = top ? Role.COIL_TOP : Role.COIL_BOTTOM;
            for (Piece piece : clip(chain, from, to)) {
                boolean holdsSide = slotShown && piece.end();
                boolean holdsApex = piece.start();
                if (!holdsSide && !holdsApex && !(piece.cutLeft() && piece.cutRight())) {
                    continue;
                }
                parts.add(new Shape.Polyline(moved(piece.points()), false, List.of(role)));
                double apex = chain.get(0).x();
                if (piece.cutLeft() && Math.abs(apex - from) > NEAR) {
                    cuts.add(new Cut(c, top, true, true, from, piece.leftY()));
                }
                if (piece.cutRight() && Math.abs(apex - to) > NEAR) {
                    cuts.add(new Cut(c, top, false, true, to, piece.rightY()));
                }
            }
        }

        private void leads(List<Shape> parts, Coil c, boolean top, double slot, double side) {
            List<Overlay.Lead> all = overlay.leads(c, top);
            for (int i = 0; i < all.size(); i++) {
                lead(parts, c, top, slot, side, all.get(i), i);
            }
        }

        private void lead(
                List<Shape> parts, Coil c, boolean top, double slot, double side, Overlay.Lead lead, int index) {
            Role role = Overlay.line(lead, top);
            OptionalInt bar = lead.bar();
            if (bar.isEmpty()) {
                forImages(slot, slot, from, to, k -> {
                    if (!slotShown(slot + k * around)) {
                        return;
                    }
                    double x = side + k * around + shift;
                    double y = leadStart + (top ? 5 : 8);
                    parts.add(new Shape.Polyline(
                            List.of(new Point(x, leadStart), new Point(x, y)), false, List.of(role)));
                    double w = Math.min(1.4, positionPitch * 0.3);
                    parts.add(new Shape.Line(new Point(x - w, y), new Point(x + w, y), List.of(Role.CAP)));
                });
                return;
            }
            double foot = barX(bar.getAsInt());
            double way = shortWay(slot, foot);
            double offset = leads.offset(c, top, index) * barPitch;
            double end = slot + way + offset;
            forImages(Math.min(side, end), Math.max(side, end), leadFrom, leadTo, k -> {
                double move = k * around;
                List<Point> chain = List.of(
                        new Point(side + move, leadStart),
                        new Point(end + move, LEAD_END),
                        new Point(end + move, BAR_TOP));
                boolean slotIn = slotShown(slot + move);
                boolean barIn = barShown(slot + way + move);
                boolean shown = false;
                for (Piece piece : clip(chain, leadFrom, leadTo)) {
                    boolean keep = (slotIn && piece.start())
                            || (barIn && piece.end())
                            || (piece.cutLeft() && piece.cutRight());
                    if (!keep) {
                        continue;
                    }
                    shown = true;
                    List<Point> points = piece.points();
                    if (piece.end() && !barIn) {
                        points = points.subList(0, points.size() - 1);
                        cuts.add(new Cut(c, top, end + move < (from + to) / 2, false, end + move, LEAD_END));
                    }
                    if (points.size() > 1) {
                        parts.add(new Shape.Polyline(moved(points), false, List.of(role)));
                    }
                    if (piece.end() && barIn && lead.role() != Role.COIL) {
                        parts.add(Canvas.end(new Point(end + move + shift, BAR_TOP), END_RADIUS, role));
                        tag(c, top, foot(bar.getAsInt(), end + move), lead.role());
                    }
                    if (piece.start() && !slotIn) {
                        cuts.add(new Cut(c, top, side + move < from, false, side + move, leadStart));
                    }
                    if (piece.cutLeft()) {
                        cuts.add(new Cut(c, top, true, false, leadFrom, piece.leftY()));
                    }
                    if (piece.cutRight()) {
                        cuts.add(new Cut(c, top, false, false, leadTo, piece.rightY()));
                    }
                }
                if (lead.role() == Role.LIFTED && shown) {
                    lifted(parts, chain.get(0), between(chain.get(0), chain.get(1), 0.5));
                }
            });
        }

        /** The middle of a bar in the turn of the circumference in which a lead meets it. */
        private double foot(int bar, double end) {
            return barX(bar) + around * Math.rint((end - barX(bar)) / around);
        }

        private void tag(Coil c, boolean top, double x, Role role) {
            if (role != Role.LIFTED) {
                tags.add(new Tag(x, overlay.number(c) + (top ? "t" : "b"), role));
            }
        }

        /** The part of a lifted lead that stays at the coil, and the cross where it ends. */
        private void lifted(List<Shape> parts, Point side, Point end) {
            for (Piece piece : clip(List.of(side, end), leadFrom, leadTo)) {
                parts.add(new Shape.Polyline(moved(piece.points()), false, List.of(Role.LIFTED)));
                if (piece.end()) {
                    Point p = new Point(end.x() + shift, end.y());
                    parts.addAll(Canvas.cross(p, 1.5, Role.LIFTED));
                    lifts.add(p);
                }
            }
        }

        /** Which lead is planned or found on a bar, in rows under it, as many as there is room for. */
        private void tags() {
            var taken = new Occupied();
            List<Shape> late = new ArrayList<>();
            List<Tag> sorted =
                    tags.stream().sorted(Comparator.comparingDouble(Tag::x)).toList();
            for (Tag t : sorted) {
                double w = TextWidths.em(t.words(), t.role() == Role.FOUND_LEAD) * Canvas.SMALL + 2;
                double x = t.x() + shift;
                boolean placed = false;
                for (int row = 0; row < TAG_ROWS && !placed; row++) {
                    double y = BAR_BOTTOM + 2.4 + row * TAG;
                    placed = taken.take(new Box(x - w / 2 - 0.3, y - 1.4, x + w / 2 + 0.3, y + 1.4));
                    if (placed) {
                        canvas.line(x, BAR_BOTTOM, x, y, Role.LEADER);
                        late.add(new Shape.Rect(x - w / 2 - 0.2, y - 1.3, w + 0.4, 2.6, 0, List.of(Role.PLATE)));
                        late.add(Canvas.end(new Point(x - w / 2 + 0.7, y), END_RADIUS, t.role()));
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
            double left = barX(first);
            double right = left + shortWay(left, barX(second));
            String words = "bridge " + first + "–" + second;
            double half = TextWidths.em(words, true) * 3.2 / 2;
            List<Point> names = new ArrayList<>();
            List<Shape> parts = new ArrayList<>();
            forImages(Math.min(left, right), Math.max(left, right), leadFrom, leadTo, k -> {
                double move = k * around;
                boolean firstIn = barShown(left + move);
                boolean secondIn = barShown(right + move);
                double x1 = Math.max(leadFrom, Math.min(left, right) + move);
                double x2 = Math.min(leadTo, Math.max(left, right) + move);
                if (x2 - x1 < 0.05) {
                    return;
                }
                List<Point> chain = new ArrayList<>();
                boolean leftIn = left < right ? firstIn : secondIn;
                boolean rightIn = left < right ? secondIn : firstIn;
                if (leftIn) {
                    chain.add(new Point(x1 + shift, BAR_BOTTOM - 1));
                }
                chain.add(new Point(x1 + shift, JUMPER));
                chain.add(new Point(x2 + shift, JUMPER));
                if (rightIn) {
                    chain.add(new Point(x2 + shift, BAR_BOTTOM - 1));
                }
                parts.add(new Shape.Polyline(chain, false, List.of(Role.BRIDGE)));
                if (leftIn) {
                    parts.add(Canvas.end(chain.get(0), 1.1, Role.BRIDGE));
                }
                if (rightIn) {
                    parts.add(Canvas.end(chain.get(chain.size() - 1), 1.1, Role.BRIDGE));
                }
                double x =
                        Math.max(Canvas.BORDER + half, Math.min(width - Canvas.BORDER - half, (x1 + x2) / 2 + shift));
                names.add(new Point(x, JUMPER + 4));
            });
            canvas.group("bridge-", Element.bar(first), words, List.of(Role.BRIDGE), parts);
            names.forEach(p -> canvas.plate(List.of(p), words, 3.2, leadLabels, b -> true, Role.BRIDGE));
        }

        /** The words "lift" and "cut" beside what is lifted and cut. */
        private void signs() {
            Box lead = new Box(Canvas.BORDER, leadStart, width - Canvas.BORDER, LEAD_END);
            for (Point p : lifts) {
                canvas.plate(beside(p, 5.4, 3.4), "lift", 2.9, leadLabels, lead::holds, Role.LIFTED);
            }
            Box back = new Box(Canvas.BORDER, 26, width - Canvas.BORDER, BEND);
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

        private void overlayLegend(Overlay.Words words) {
            double x = Canvas.BORDER;
            for (Overlay.Sample s : words.legend()) {
                x = canvas.sample(x, LEGEND, s.words(), s.role());
            }
            String tag = tags.isEmpty() ? "" : "3t, 3b: top, bottom lead of coil 3";
            if (tagsLeftOut > 0) {
                tag += " (" + tagsLeftOut + " left out)";
            }
            if (!cuts.isEmpty()) {
                tag += (tag.isEmpty() ? "" : " · ") + "at the sides: where the coil goes on";
            }
            canvas.text(
                    x,
                    LEGEND,
                    TextWidths.fit(tag, 2.6, false, width - Canvas.BORDER - x),
                    2.6,
                    Anchor.START,
                    Role.LEGEND);
            double y = LEGEND + 4.4;
            double room = Math.min(width, 600) - 2 * Canvas.BORDER - (count > 1 ? 30 : 0);
            if (!words.caution().isEmpty()) {
                y = canvas.lines(Canvas.BORDER, y, words.caution(), 2.9, true, room, 1, Role.CAUTION);
            }
            canvas.lines(
                    Canvas.BORDER,
                    y,
                    String.join(" · ", words.notes()),
                    2.6,
                    false,
                    room,
                    words.caution().isEmpty() ? 3 : 2,
                    Role.NOTE);
            if (count > 1) {
                canvas.text(
                        width - Canvas.BORDER, FOOTER, "sheet " + number + " of " + count, 2.9, Anchor.END, Role.NOTE);
            }
        }

        private List<Point> moved(List<Point> points) {
            return points.stream().map(p -> new Point(p.x() + shift, p.y())).toList();
        }

        /** Coil numbers in the margin where lines are cut, as many as there is room for. */
        private void cutLabels() {
            for (boolean left : new boolean[] {true, false}) {
                for (boolean back : new boolean[] {true, false}) {
                    List<Cut> here = new ArrayList<>(cuts.stream()
                            .filter(c -> c.left() == left && c.back() == back)
                            .sorted(Comparator.comparingDouble(Cut::y))
                            .toList());
                    double low = back ? APEX - 1 : leadStart - 1;
                    double high = back ? BEND + 4 : BAR_TOP;
                    label(here, left, low, high);
                }
            }
        }

        private void label(List<Cut> all, boolean left, double low, double high) {
            if (all.isEmpty()) {
                return;
            }
            double size = Canvas.SMALL;
            double gap = size * 1.04;
            int columns = all.size() * gap <= high - low ? 1 : 2;
            double step = gap / columns;
            int room = (int) Math.floor((high - low) / step);
            int every = (all.size() + room - 1) / room;
            List<Cut> shown = new ArrayList<>();
            for (int i = 0; i < all.size(); i += every) {
                shown.add(all.get(i));
            }
            double[] y = spread(shown.stream().mapToDouble(Cut::y).toArray(), step, low, high);
            double edge = (left ? leadFrom : leadTo) + shift;
            double outer = 3.8
                    + shown.stream()
                            .mapToDouble(c -> digits(overlay.number(c.coil()), size))
                            .max()
                            .orElseThrow();
            double sign = left ? -1 : 1;
            for (int i = 0; i < shown.size(); i++) {
                Cut c = shown.get(i);
                double column = columns == 2 && i % 2 == 1 ? outer : 2.6;
                double x = edge + sign * column;
                var leader = new Shape.Polyline(
                        List.of(
                                new Point(c.x() + shift, c.y()),
                                new Point(edge + sign * 2.2, y[i]),
                                new Point(edge + sign * (column - 0.3), y[i])),
                        false,
                        List.of(Role.LEADER));
                Shape.Text t = Canvas.text(
                        x,
                        y[i] + 0.36 * size,
                        Integer.toString(overlay.number(c.coil())),
                        size,
                        marked(c.coil()) || overlay.front(c.coil()),
                        left ? Anchor.END : Anchor.START,
                        c.top() ? Role.COIL_TOP : Role.COIL_BOTTOM);
                leadLabels.insist(t.bounds());
                canvas.add(leader);
                canvas.add(
                        c.coil().set() == 0
                                ? t
                                : new Shape.Group(
                                        Optional.empty(), Optional.empty(), "", List.of(Role.SECOND_SET), List.of(t)));
            }
        }

        private void brushes() {
            poleLetters();
            if (gear.isEmpty()) {
                return;
            }
            List<Double> plus = new ArrayList<>();
            List<Double> minus = new ArrayList<>();
            double low = Math.max(leadFrom, barX(1) - barPitch / 2 - (count == 1 ? 0 : around));
            double high = count == 1 ? barX(a.bars()) + barPitch / 2 : leadTo;
            double w = gear.get().widthBars() * barPitch;
            for (Brush b : gear.get().brushes()) {
                double centre = (b.angle() - options.rotorAngle()) / 360 * around;
                List<Shape> parts = new ArrayList<>();
                List<Double> ends = b.positive() ? plus : minus;
                double bus = b.positive() ? PLUS_BUS : MINUS_BUS;
                forImages(centre - w / 2, centre + w / 2, low, high, k -> {
                    double x1 = Math.max(low, centre - w / 2 + k * around);
                    double x2 = Math.min(high, centre + w / 2 + k * around);
                    if (x2 - x1 < 0.2) {
                        return;
                    }
                    double x = (x1 + x2) / 2 + shift;
                    parts.add(new Shape.Rect(
                            x1 + shift, BAR_BOTTOM + 0.6, x2 - x1, BRUSH_BOTTOM - BAR_BOTTOM - 0.6, 0.4, List.of()));
                    parts.add(new Shape.Line(new Point(x, BRUSH_BOTTOM), new Point(x, bus), List.of(Role.WIRE)));
                    parts.add(new Shape.Circle(new Point(x, bus), 0.7, List.of(Role.WIRE)));
                    if (x2 - x1 >= 3) {
                        parts.add(Canvas.centred(
                                x,
                                (BAR_BOTTOM + BRUSH_BOTTOM + 0.6) / 2,
                                b.sign(),
                                Math.min(4, x2 - x1),
                                true,
                                Role.LABEL));
                    }
                    ends.add(x);
                });
                canvas.group(
                        new Element(Element.Kind.BRUSH, b.number()),
                        "Brush " + b.number() + " " + b.sign() + ", on bars " + b.bars(),
                        List.of(Role.BRUSH),
                        parts);
            }
            bus(true, plus, PLUS_BUS);
            bus(false, minus, MINUS_BUS);
        }

        /** The wire that joins the brushes of one sign, from the left of the first sheet to the last such brush. */
        private void bus(boolean positive, List<Double> ends, double y) {
            double last = gear.orElseThrow().brushes().stream()
                    .filter(b -> b.positive() == positive)
                    .mapToDouble(b -> {
                        double x = (b.angle() - options.rotorAngle()) / 360 * around + slotPitch / 2;
                        return x - around * Math.floor(x / around) - slotPitch / 2;
                    })
                    .max()
                    .orElseThrow();
            double right = ends.stream().mapToDouble(x -> x).max().orElse(from + shift);
            if (last > to) {
                right = to + shift + 4;
            } else if (ends.isEmpty()) {
                return;
            }
            double left = from + shift - 6;
            String sign = positive ? "+" : "−";
            canvas.line(left, y, right, y, Role.WIRE);
            canvas.add(Canvas.centred(left - 2.6, y, sign, 4, true, Role.LABEL));
        }

        private void legend() {
            double x = Canvas.BORDER;
            double y = LEGEND;
            x = canvas.sample(x, y, "coil side at the top of its slot, and its lead", Role.COIL_TOP);
            x = canvas.sample(x, y, "coil side at the slot floor", Role.COIL_BOTTOM);
            if (winding.sets().size() > 1) {
                x = canvas.sample(x, y, "the same of the wave coils", Role.SECOND_SET);
            }
            canvas.text(x, y, "numbers above: coils; on the core: slots", 2.6, Anchor.START, Role.LEGEND);
            String second = "numbers at the sides: the coil goes on at the "
                    + (count == 1 ? "other side" : "same number on the next sheet");
            if (!winding.deadCoils().isEmpty()) {
                second += " · (number): dead coil, leads cut and insulated";
            } else if (winding.coils().stream().anyMatch(c -> !c.isLive())) {
                second += " · short cross line: a lead on no bar";
            }
            if (gear.isPresent()) {
                double off = gear.get().neutral().fromPoleCentre();
                second += " · brushes "
                        + (Math.abs(off) < 0.005
                                ? "in line with the pole centres"
                                : Caption.degrees(Math.abs(off)) + (off > 0 ? " right" : " left")
                                        + " of the pole centres");
            }
            canvas.text(
                    Canvas.BORDER,
                    y + 4.4,
                    TextWidths.fit(second, 2.6, false, width - 2 * Canvas.BORDER),
                    2.6,
                    Anchor.START,
                    Role.LEGEND);
            if (count > 1) {
                canvas.text(
                        width - Canvas.BORDER, FOOTER, "sheet " + number + " of " + count, 2.9, Anchor.END, Role.NOTE);
            }
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

    /** Moves sorted values apart to at least a step, keeping within the limits and as near as may be. */
    static double[] spread(double[] sorted, double step, double low, double high) {
        double[] y = sorted.clone();
        double floor = low;
        for (int i = 0; i < y.length; i++) {
            y[i] = Math.max(y[i], floor);
            floor = y[i] + step;
        }
        double ceiling = high;
        for (int i = y.length - 1; i >= 0; i--) {
            y[i] = Math.min(y[i], ceiling);
            ceiling = y[i] - step;
        }
        return y;
    }

    /**
     * A part of a chain within a window.
     *
     * @param points its points
     * @param start whether it holds the chain's first point
     * @param end whether it holds the chain's last point
     * @param cutLeft whether it is cut at the left edge
     * @param cutRight whether it is cut at the right edge
     * @param leftY where it is cut at the left edge
     * @param rightY where it is cut at the right edge
     */
    record Piece(
            List<Point> points,
            boolean start,
            boolean end,
            boolean cutLeft,
            boolean cutRight,
            double leftY,
            double rightY) {}

    /** The parts of a chain between two upright lines. */
    static List<Piece> clip(List<Point> chain, double left, double right) {
        List<Piece> out = new ArrayList<>();
        List<Point> run = new ArrayList<>();
        boolean start = false;
        double[] cut = {Double.NaN, Double.NaN};
        for (int i = 0; i + 1 < chain.size(); i++) {
            Point p = chain.get(i);
            Point q = chain.get(i + 1);
            double dx = q.x() - p.x();
            double enter = 0;
            double leave = 1;
            if (Math.abs(dx) < 1e-12) {
                if (p.x() < left || p.x() > right) {
                    continue;
                }
            } else {
                double t1 = (left - p.x()) / dx;
                double t2 = (right - p.x()) / dx;
                enter = Math.max(0, Math.min(t1, t2));
                leave = Math.min(1, Math.max(t1, t2));
                if (enter >= leave) {
                    continue;
                }
            }
            if (run.isEmpty()) {
                start = i == 0 && enter == 0;
                Point first = enter == 0 ? p : between(p, q, enter);
                run.add(first);
                if (enter > 0) {
                    cut[dx > 0 ? 0 : 1] = first.y();
                }
            }
            run.add(leave == 1 ? q : between(p, q, leave));
            boolean last = i + 2 == chain.size();
            if (leave < 1 || last) {
                if (leave < 1) {
                    cut[dx > 0 ? 1 : 0] = run.get(run.size() - 1).y();
                }
                out.add(new Piece(
                        List.copyOf(run),
                        start,
                        last && leave == 1,
                        !Double.isNaN(cut[0]),
                        !Double.isNaN(cut[1]),
                        cut[0],
                        cut[1]));
                run.clear();
                cut = new double[] {Double.NaN, Double.NaN};
            }
        }
        return out;
    }

    private static Point between(Point p, Point q, double t) {
        return new Point(p.x() + t * (q.x() - p.x()), p.y() + t * (q.y() - p.y()));
    }
}
