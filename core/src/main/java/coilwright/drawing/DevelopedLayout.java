package coilwright.drawing;

import coilwright.circuit.Brush;
import coilwright.circuit.BrushGear;
import coilwright.drawing.Shape.Anchor;
import coilwright.winding.Coil;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The winding rolled out flat: back end above, commutator end below. x runs along the circumference, slot 1 first; the
 * circumference repeats to both sides, and a page shows a window of it.
 */
final class DevelopedLayout {
    private static final double STRIP = 77.5;
    private static final double BRUSH_BOTTOM = 168;
    private static final double PLUS_BUS = 173;
    private static final double MINUS_BUS = 178;
    private static final double FOOTER = 200;
    /** Part of a pole's pitch that its face takes in the drawing. */
    private static final double POLE_FACE = 0.72;

    private final Overlay overlay;
    private final ViewOptions options;
    private final DevelopedPlan plan;
    private final DevelopedWindow window;
    private final Optional<BrushGear> gear;
    private final Canvas canvas = new Canvas();
    private final DevelopedCoils coils;
    private final DevelopedMargin margin;
    private final DevelopedMarks marks;

    private DevelopedLayout(
            Overlay overlay,
            ViewOptions options,
            DevelopedPlan plan,
            DevelopedWindow window,
            Optional<BrushGear> gear,
            Leads leads) {
        this.overlay = overlay;
        this.options = options;
        this.plan = plan;
        this.window = window;
        this.gear = gear;
        var occupied = new Occupied();
        var leadLabels = new Occupied();
        this.coils = new DevelopedCoils(overlay, plan, window, leads, occupied);
        this.margin = new DevelopedMargin(overlay, plan, window, options.highlight(), leadLabels, canvas);
        this.marks = new DevelopedMarks(overlay, plan, window, occupied, leadLabels, canvas);
    }

    static DrawingPages pages(Overlay overlay, ViewOptions options) {
        var plan = new DevelopedPlan(overlay, options.format());
        Optional<BrushGear> gear = overlay.plain() ? Caption.brushes(plan.winding, options) : Optional.empty();
        var leads = new Leads(overlay);
        int slots = plan.armature.slots();
        int pages = (slots + plan.slotsPerPage - 1) / plan.slotsPerPage;
        List<Drawing> out = new ArrayList<>();
        for (int i = 0; i < pages; i++) {
            int first = 1 + i * plan.slotsPerPage;
            int last = Math.min(slots, first + plan.slotsPerPage - 1);
            var window = new DevelopedWindow(plan, first, last, i + 1, pages);
            out.add(new DevelopedLayout(overlay, options, plan, window, gear, leads).draw());
        }
        return new DrawingPages(out);
    }

    private Drawing draw() {
        String name = overlay.words().map(Overlay.Words::name).orElse("Developed winding");
        String title = options.title().isEmpty() ? name : options.title();
        String what = overlay.words().map(w -> w.what() + ". ").orElse("");
        boolean mirrored = overlay.words().map(Overlay.Words::mirrored).orElse(false);
        String sheet = window.count == 1 ? "" : ", sheet " + window.number + " of " + window.count;
        canvas.heading(
                title,
                overlay.words()
                        .map(Overlay.Words::what)
                        .orElseGet(() -> Caption.counts(plan.armature) + " · " + Caption.kind(plan.winding)),
                "Developed winding" + sheet + ": slots " + window.firstSlot + " to " + window.lastSlot + ", seen from "
                        + (mirrored ? "inside" : "outside") + ", back end above, commutator end below",
                window.width);
        iron();
        poles();
        bars();
        // What stands out is painted last, but takes its numbers' places first.
        var front = new Canvas();
        overlay.inFront().forEach(c -> coils.draw(front, c, marked(c)));
        List<Coil> last = new ArrayList<>();
        for (Coil c : plan.winding.coils()) {
            if (overlay.front(c)) {
                continue;
            }
            if (marked(c)) {
                last.add(c);
            } else {
                coils.draw(canvas, c, false);
            }
        }
        last.forEach(c -> coils.draw(canvas, c, true));
        canvas.addAll(front);
        margin.label(coils.cuts());
        slots();
        if (overlay.plain()) {
            brushes();
            legend();
        } else {
            poleLetters();
            marks.draw(coils);
            overlayLegend(overlay.words().orElseThrow());
        }
        return canvas.page(
                title,
                what + "Developed winding diagram. " + Caption.counts(plan.armature) + ". " + Caption.kind(plan.winding)
                        + ".",
                window.width,
                Canvas.SHORT,
                options.palette());
    }

    private boolean marked(Coil c) {
        return options.highlight().coils().contains(overlay.number(c));
    }

    private void iron() {
        canvas.rect(
                window.from + window.shift,
                DevelopedPlan.CORE_TOP,
                window.to - window.from,
                plan.coreBottom - DevelopedPlan.CORE_TOP,
                Role.CORE);
        for (int slot = window.firstSlot; slot <= window.lastSlot; slot++) {
            canvas.rect(
                    plan.slotX(slot) - plan.slotWidth() / 2 + window.shift,
                    DevelopedPlan.CORE_TOP,
                    plan.slotWidth(),
                    plan.coreBottom - DevelopedPlan.CORE_TOP,
                    Role.OPENING);
        }
    }

    private void slots() {
        for (int slot = window.firstSlot; slot <= window.lastSlot; slot++) {
            double x = plan.slotX(slot) + window.shift;
            double middle = (DevelopedPlan.CORE_TOP + plan.coreBottom) / 2;
            String words = Integer.toString(slot);
            double w = TextWidths.em(words, true) * plan.fontSize + 1;
            boolean marked = options.highlight().slots().contains(slot);
            List<Shape> parts = List.of(
                    new Shape.Rect(
                            x - plan.slotWidth() / 2,
                            DevelopedPlan.CORE_TOP,
                            plan.slotWidth(),
                            plan.coreBottom - DevelopedPlan.CORE_TOP,
                            0,
                            List.of()),
                    new Shape.Rect(
                            x - w / 2,
                            middle - 0.68 * plan.fontSize,
                            w,
                            1.36 * plan.fontSize,
                            0.6,
                            List.of(Role.PLATE)),
                    Canvas.centred(x, middle, words, plan.fontSize, marked, Role.LABEL));
            canvas.group(Element.slot(slot), "Slot " + slot, Canvas.roles(Role.SLOT, marked), parts);
        }
    }

    private void poles() {
        double pitch = plan.around / plan.armature.poles();
        double arc = POLE_FACE * pitch;
        for (int j = 1; j <= plan.armature.poles(); j++) {
            double centre = (j - 1) * pitch - options.rotorAngle() / 360 * plan.around;
            boolean north = j % 2 == 1;
            List<Shape> parts = new ArrayList<>();
            plan.forImages(centre - arc / 2, centre + arc / 2, window.from, window.to, k -> {
                double x1 = Math.max(window.from, centre - arc / 2 + k * plan.around);
                double x2 = Math.min(window.to, centre + arc / 2 + k * plan.around);
                if (x2 - x1 < 0.05) {
                    return;
                }
                parts.add(new Shape.Rect(
                        x1 + window.shift,
                        STRIP,
                        x2 - x1,
                        DevelopedPlan.CORE_TOP - STRIP - 1.5,
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
        double pitch = plan.around / plan.armature.poles();
        double arc = POLE_FACE * pitch;
        for (int j = 1; j <= plan.armature.poles(); j++) {
            double centre = (j - 1) * pitch - options.rotorAngle() / 360 * plan.around;
            String letter = j % 2 == 1 ? "N" : "S";
            plan.forImages(centre - arc / 2, centre + arc / 2, window.from, window.to, k -> {
                double x1 = Math.max(window.from, centre - arc / 2 + k * plan.around);
                double x2 = Math.min(window.to, centre + arc / 2 + k * plan.around);
                if (x2 - x1 < Math.min(7, 0.4 * arc) || x2 - x1 < 4.2) {
                    return;
                }
                double x = (x1 + x2) / 2 + window.shift;
                double y = (STRIP + DevelopedPlan.CORE_TOP - 1.5) / 2;
                canvas.add(new Shape.Rect(x - 2, y - 2.3, 4, 4.6, 0.8, List.of(Role.PLATE)));
                canvas.add(Canvas.centred(x, y, letter, 3.6, true, Role.LABEL));
            });
        }
    }

    private void bars() {
        for (DevelopedWindow.BarImage bar : window.barsShown()) {
            double x = window.barX(bar) + window.shift;
            double w = plan.barPitch * 0.9;
            boolean marked = options.highlight().bars().contains(bar.number());
            List<Shape> parts = List.of(
                    new Shape.Rect(
                            x - w / 2,
                            DevelopedPlan.BAR_TOP,
                            w,
                            DevelopedPlan.BAR_BOTTOM - DevelopedPlan.BAR_TOP,
                            0,
                            List.of()),
                    Canvas.centred(
                            x,
                            (DevelopedPlan.BAR_TOP + DevelopedPlan.BAR_BOTTOM) / 2,
                            Integer.toString(bar.number()),
                            plan.fontSize,
                            marked,
                            Role.LABEL));
            canvas.group(Element.bar(bar.number()), "Bar " + bar.number(), Canvas.roles(Role.BAR, marked), parts);
        }
    }

    private void overlayLegend(Overlay.Words words) {
        double x = Canvas.BORDER;
        for (Overlay.Sample s : words.legend()) {
            x = canvas.sample(x, DevelopedPlan.LEGEND, s.words(), s.role());
        }
        String tag = coils.tags().isEmpty() ? "" : "3t, 3b: top, bottom lead of coil 3";
        if (marks.tagsLeftOut() > 0) {
            tag += " (" + marks.tagsLeftOut() + " left out)";
        }
        if (!coils.cuts().isEmpty()) {
            tag += (tag.isEmpty() ? "" : " · ") + "at the sides: where the coil goes on";
        }
        canvas.text(
                x,
                DevelopedPlan.LEGEND,
                TextWidths.fit(tag, 2.6, false, window.width - Canvas.BORDER - x),
                2.6,
                Anchor.START,
                Role.LEGEND);
        double y = DevelopedPlan.LEGEND + 4.4;
        double room = Math.min(window.width, 600) - 2 * Canvas.BORDER - (window.count > 1 ? 30 : 0);
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
        footer();
    }

    private void brushes() {
        poleLetters();
        if (gear.isEmpty()) {
            return;
        }
        List<Double> plus = new ArrayList<>();
        List<Double> minus = new ArrayList<>();
        double low =
                Math.max(window.leadFrom, plan.barX(1) - plan.barPitch / 2 - (window.count == 1 ? 0 : plan.around));
        double high = window.count == 1 ? plan.barX(plan.armature.bars()) + plan.barPitch / 2 : window.leadTo;
        double w = gear.get().widthBars() * plan.barPitch;
        for (Brush b : gear.get().brushes()) {
            double centre = (b.angle() - options.rotorAngle()) / 360 * plan.around;
            List<Shape> parts = new ArrayList<>();
            List<Double> ends = b.positive() ? plus : minus;
            double bus = b.positive() ? PLUS_BUS : MINUS_BUS;
            plan.forImages(centre - w / 2, centre + w / 2, low, high, k -> {
                double x1 = Math.max(low, centre - w / 2 + k * plan.around);
                double x2 = Math.min(high, centre + w / 2 + k * plan.around);
                if (x2 - x1 < 0.2) {
                    return;
                }
                double x = (x1 + x2) / 2 + window.shift;
                parts.add(new Shape.Rect(
                        x1 + window.shift,
                        DevelopedPlan.BAR_BOTTOM + 0.6,
                        x2 - x1,
                        BRUSH_BOTTOM - DevelopedPlan.BAR_BOTTOM - 0.6,
                        0.4,
                        List.of()));
                parts.add(new Shape.Line(new Point(x, BRUSH_BOTTOM), new Point(x, bus), List.of(Role.WIRE)));
                parts.add(new Shape.Circle(new Point(x, bus), 0.7, List.of(Role.WIRE)));
                if (x2 - x1 >= 3) {
                    parts.add(Canvas.centred(
                            x,
                            (DevelopedPlan.BAR_BOTTOM + BRUSH_BOTTOM + 0.6) / 2,
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
                    double x = (b.angle() - options.rotorAngle()) / 360 * plan.around + plan.slotPitch / 2;
                    return x - plan.around * Math.floor(x / plan.around) - plan.slotPitch / 2;
                })
                .max()
                .orElseThrow();
        double right = ends.stream().mapToDouble(x -> x).max().orElse(window.from + window.shift);
        if (last > window.to) {
            right = window.to + window.shift + 4;
        } else if (ends.isEmpty()) {
            return;
        }
        double left = window.from + window.shift - 6;
        String sign = positive ? "+" : "−";
        canvas.line(left, y, right, y, Role.WIRE);
        canvas.add(Canvas.centred(left - 2.6, y, sign, 4, true, Role.LABEL));
    }

    private void legend() {
        double x = Canvas.BORDER;
        double y = DevelopedPlan.LEGEND;
        x = canvas.sample(x, y, "coil side at the top of its slot, and its lead", Role.COIL_TOP);
        x = canvas.sample(x, y, "coil side at the slot floor", Role.COIL_BOTTOM);
        if (plan.winding.sets().size() > 1) {
            x = canvas.sample(x, y, "the same of the wave coils", Role.SECOND_SET);
        }
        canvas.text(x, y, "numbers above: coils; on the core: slots", 2.6, Anchor.START, Role.LEGEND);
        String second = "numbers at the sides: the coil goes on at the "
                + (window.count == 1 ? "other side" : "same number on the next sheet");
        if (!plan.winding.deadCoils().isEmpty()) {
            second += " · (number): dead coil, leads cut and insulated";
        } else if (plan.winding.coils().stream().anyMatch(c -> !c.isLive())) {
            second += " · short cross line: a lead on no bar";
        }
        if (gear.isPresent()) {
            double off = gear.get().neutral().fromPoleCentre();
            second += " · brushes "
                    + (Math.abs(off) < 0.005
                            ? "in line with the pole centres"
                            : Caption.degrees(Math.abs(off)) + (off > 0 ? " right" : " left") + " of the pole centres");
        }
        canvas.text(
                Canvas.BORDER,
                y + 4.4,
                TextWidths.fit(second, 2.6, false, window.width - 2 * Canvas.BORDER),
                2.6,
                Anchor.START,
                Role.LEGEND);
        footer();
    }

    private void footer() {
        if (window.count > 1) {
            String words = "sheet " + window.number + " of " + window.count;
            canvas.text(window.width - Canvas.BORDER, FOOTER, words, 2.9, Anchor.END, Role.NOTE);
        }
    }
}
