package coilwright.drawing;

import coilwright.winding.SlotAlignment;
import java.util.ArrayList;
import java.util.List;

/** The part of a winding rolled out flat that one page shows, from one slot to another. */
final class DevelopedWindow {
    /**
     * A bar in one turn of the circumference.
     *
     * @param number of the bar
     * @param turn 0 for the turn that slot 1 lies in, 1 for the next to the right
     */
    record BarImage(int number, int turn) {}

    final int firstSlot;
    final int lastSlot;
    final int number;
    final int count;
    final double from;
    final double to;
    final double leadFrom;
    final double leadTo;
    final double shift;
    final double width;
    private final DevelopedPlan plan;

    /**
     * A window.
     *
     * @param number of the page, from 1
     * @param count of pages
     */
    DevelopedWindow(DevelopedPlan plan, int firstSlot, int lastSlot, int number, int count) {
        this.plan = plan;
        this.firstSlot = firstSlot;
        this.lastSlot = lastSlot;
        this.number = number;
        this.count = count;
        this.from = plan.slotX(firstSlot) - plan.slotPitch / 2;
        this.to = plan.slotX(lastSlot) + plan.slotPitch / 2;
        double first = from;
        double last = to;
        for (BarImage bar : barsShown()) {
            first = Math.min(first, barX(bar) - plan.barPitch / 2);
            last = Math.max(last, barX(bar) + plan.barPitch / 2);
        }
        this.leadFrom = first;
        this.leadTo = last;
        this.width = Math.max(Canvas.LONG, leadTo - leadFrom + 2 * DevelopedPlan.MARGIN);
        this.shift = (width - (leadTo - leadFrom)) / 2 - leadFrom;
    }

    /** Bars with any part in the window, each with the turn of the circumference it lies in. */
    List<BarImage> barsShown() {
        List<BarImage> out = new ArrayList<>();
        if (count == 1) {
            for (int bar = 1; bar <= plan.armature.bars(); bar++) {
                out.add(new BarImage(bar, 0));
            }
            return out;
        }
        double half = plan.armature.slotOneInLineWith() == SlotAlignment.MICA ? 0.5 : 0;
        int first = (int) Math.floor(from / plan.barPitch + 0.5 - half + 1e-6);
        int last = (int) Math.ceil(to / plan.barPitch - 0.5 - half - 1e-6);
        for (int i = first; i <= last; i++) {
            out.add(new BarImage(plan.armature.wrapBar(i + 1), Math.floorDiv(i, plan.armature.bars())));
        }
        return out;
    }

    /** The middle of a bar, before it is shifted onto the page. */
    double barX(BarImage bar) {
        return plan.barX(bar.number()) + bar.turn() * plan.around;
    }

    /** Whether a bar whose middle lies there is on the page. */
    boolean barShown(double x) {
        if (count == 1) {
            return x > leadFrom
                    && x < leadTo
                    && x > plan.barX(1) - plan.barPitch / 2
                    && x < plan.barX(plan.armature.bars()) + plan.barPitch / 2;
        }
        return x > leadFrom && x < leadTo;
    }

    /** Whether a slot whose middle lies there is on the page. */
    boolean slotShown(double x) {
        return x > from && x < to;
    }

    /** Points as they lie on the page. */
    List<Point> moved(List<Point> points) {
        return points.stream().map(p -> new Point(p.x() + shift, p.y())).toList();
    }
}
