package coilwright.drawing;

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
        double width = a.barAngle() * (pitch < 1 ? 0.8 : 0.9);
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
}
