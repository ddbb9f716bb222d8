package coilwright.drawing;

import coilwright.drawing.Shape.Anchor;
import coilwright.winding.Coil;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/** The coils on one page of a winding rolled out flat, and what they leave to be labelled. */
final class DevelopedCoils {
    /** What stands under a bar about a lead on it. */
    record Tag(double x, String words, Role role) {}

    /** A line cut at the edge of the window. */
    record Cut(Coil coil, boolean top, boolean left, boolean back, double x, double y) {}

    static final double END_RADIUS = 0.7;
    private static final double NEAR = 0.3;

    private final Overlay overlay;
    private final DevelopedPlan plan;
    private final DevelopedWindow window;
    private final Leads leads;
    private final Occupied occupied;
    private final List<Cut> cuts = new ArrayList<>();
    private final List<Tag> tags = new ArrayList<>();
    private final List<Point> lifts = new ArrayList<>();
    private final List<Point> saws = new ArrayList<>();

    /**
     * Coils for one page.
     *
     * @param occupied by the numbers at the coils' far ends
     */
    DevelopedCoils(Overlay overlay, DevelopedPlan plan, DevelopedWindow window, Leads leads, Occupied occupied) {
        this.overlay = overlay;
        this.plan = plan;
        this.window = window;
        this.leads = leads;
        this.occupied = occupied;
    }

    /** Where lines are cut, in the order drawn. */
    List<Cut> cuts() {
        return cuts;
    }

    /** What is to stand under the bars. */
    List<Tag> tags() {
        return tags;
    }

    /** Where lifted leads end, on the page. */
    List<Point> lifts() {
        return lifts;
    }

    /** Far ends of coils that are cut through, on the page. */
    List<Point> saws() {
        return saws;
    }

    /** Draws a coil. */
    void draw(Canvas onto, Coil c, boolean marked) {
        double top = plan.sideX(c.top());
        double apex = top + plan.span(c) / 2;
        double bottom = top + plan.span(c);
        double apexY = plan.apexHeight(c);
        List<Shape> parts = new ArrayList<>();
        double reach = Math.abs(plan.span(c)) / 2;
        plan.forImages(apex - reach, apex + reach, window.from, window.to, k -> {
            double move = k * plan.around;
            boolean topShown = window.slotShown(plan.slotX(c.top().slot()) + move);
            boolean bottomShown = window.slotShown(plan.slotX(c.top().slot())
                    + move
                    + plan.shortWay(
                            plan.slotX(c.top().slot()), plan.slotX(c.bottom().slot())));
            half(
                    parts,
                    c,
                    true,
                    List.of(
                            new Point(apex + move, apexY),
                            new Point(top + move, DevelopedPlan.BEND),
                            new Point(top + move, plan.leadStart)),
                    topShown);
            half(
                    parts,
                    c,
                    false,
                    List.of(
                            new Point(apex + move, apexY),
                            new Point(bottom + move, DevelopedPlan.BEND),
                            new Point(bottom + move, plan.leadStart)),
                    bottomShown);
            if (apex + move > window.from - NEAR && apex + move < window.to + NEAR) {
                apexLabel(parts, c, apex + move + window.shift, apexY, marked || overlay.front(c));
                if (overlay.mark(c).map(Overlay.Mark::cut).orElse(false)) {
                    saws.add(new Point(apex + move + window.shift, apexY));
                }
            }
        });
        leads(parts, c, true, plan.slotX(c.top().slot()), top);
        leads(parts, c, false, plan.slotX(c.bottom().slot()), plan.sideX(c.bottom()));
        onto.coil(overlay, c, "", parts, plan.dense ? Role.DENSE : Role.COIL, marked);
    }

    private void apexLabel(List<Shape> parts, Coil c, double x, double y, boolean marked) {
        String words = overlay.label(c);
        for (double up :
                new double[] {1.2, 1.2 + 1.02 * plan.fontSize, 1.2 + 1.5 * plan.fontSize, 1.2 + 2.1 * plan.fontSize}) {
            Shape.Text t =
                    Canvas.text(x, y - up, words, plan.fontSize, marked, Anchor.MIDDLE, Role.LABEL, Role.COIL_TOP);
            if (occupied.take(t.bounds())) {
                parts.add(t);
                return;
            }
        }
    }

    /** From the far end of a coil down through its slot. */
    private void half(List<Shape> parts, Coil c, boolean top, List<Point> chain, boolean slotShown) {
        Role role = top ? Role.COIL_TOP : Role.COIL_BOTTOM;
        for (Chain.Piece piece : Chain.clip(chain, window.from, window.to)) {
            boolean holdsSide = slotShown && piece.end();
            boolean holdsApex = piece.start();
            if (!holdsSide && !holdsApex && !(piece.cutLeft() && piece.cutRight())) {
                continue;
            }
            parts.add(new Shape.Polyline(window.moved(piece.points()), false, List.of(role)));
            double apex = chain.get(0).x();
            if (piece.cutLeft() && Math.abs(apex - window.from) > NEAR) {
                cuts.add(new Cut(c, top, true, true, window.from, piece.leftY()));
            }
            if (piece.cutRight() && Math.abs(apex - window.to) > NEAR) {
                cuts.add(new Cut(c, top, false, true, window.to, piece.rightY()));
            }
        }
    }

    private void leads(List<Shape> parts, Coil c, boolean top, double slot, double side) {
        List<Overlay.Lead> all = overlay.leads(c, top);
        for (int i = 0; i < all.size(); i++) {
            lead(parts, c, top, slot, side, all.get(i), i);
        }
    }

    private void lead(List<Shape> parts, Coil c, boolean top, double slot, double side, Overlay.Lead lead, int index) {
        Role role = Overlay.line(lead, top);
        OptionalInt bar = lead.bar();
        if (bar.isEmpty()) {
            onNoBar(parts, top, slot, side, role);
            return;
        }
        double foot = plan.barX(bar.getAsInt());
        double way = plan.shortWay(slot, foot);
        double offset = leads.offset(c, top, index) * plan.barPitch;
        double end = slot + way + offset;
        plan.forImages(Math.min(side, end), Math.max(side, end), window.leadFrom, window.leadTo, k -> {
            double move = k * plan.around;
            List<Point> chain = List.of(
                    new Point(side + move, plan.leadStart),
                    new Point(end + move, DevelopedPlan.LEAD_END),
                    new Point(end + move, DevelopedPlan.BAR_TOP));
            boolean slotIn = window.slotShown(slot + move);
            boolean barIn = window.barShown(slot + way + move);
            boolean shown = false;
            for (Chain.Piece piece : Chain.clip(chain, window.leadFrom, window.leadTo)) {
                boolean keep =
                        (slotIn && piece.start()) || (barIn && piece.end()) || (piece.cutLeft() && piece.cutRight());
                if (!keep) {
                    continue;
                }
                shown = true;
                List<Point> points = piece.points();
                if (piece.end() && !barIn) {
                    points = points.subList(0, points.size() - 1);
                    cuts.add(new Cut(
                            c,
                            top,
                            end + move < (window.from + window.to) / 2,
                            false,
                            end + move,
                            DevelopedPlan.LEAD_END));
                }
                if (points.size() > 1) {
                    parts.add(new Shape.Polyline(window.moved(points), false, List.of(role)));
                }
                if (piece.end() && barIn && lead.role() != Role.COIL) {
                    parts.add(
                            Canvas.end(new Point(end + move + window.shift, DevelopedPlan.BAR_TOP), END_RADIUS, role));
                    tag(c, top, foot(bar.getAsInt(), end + move), lead.role());
                }
                if (piece.start() && !slotIn) {
                    cuts.add(new Cut(c, top, side + move < window.from, false, side + move, plan.leadStart));
                }
                if (piece.cutLeft()) {
                    cuts.add(new Cut(c, top, true, false, window.leadFrom, piece.leftY()));
                }
                if (piece.cutRight()) {
                    cuts.add(new Cut(c, top, false, false, window.leadTo, piece.rightY()));
                }
            }
            if (lead.role() == Role.LIFTED && shown) {
                lifted(parts, chain.get(0), Chain.point(chain.get(0), chain.get(1), 0.5));
            }
        });
    }

    /** A short lead with a cross line at its end. */
    private void onNoBar(List<Shape> parts, boolean top, double slot, double side, Role role) {
        plan.forImages(slot, slot, window.from, window.to, k -> {
            if (!window.slotShown(slot + k * plan.around)) {
                return;
            }
            double x = side + k * plan.around + window.shift;
            double y = plan.leadStart + (top ? 5 : 8);
            parts.add(new Shape.Polyline(List.of(new Point(x, plan.leadStart), new Point(x, y)), false, List.of(role)));
            double w = Math.min(1.4, plan.positionPitch * 0.3);
            parts.add(new Shape.Line(new Point(x - w, y), new Point(x + w, y), List.of(Role.CAP)));
        });
    }

    /** The middle of a bar in the turn of the circumference in which a lead meets it. */
    private double foot(int bar, double end) {
        return plan.barX(bar) + plan.around * Math.rint((end - plan.barX(bar)) / plan.around);
    }

    private void tag(Coil c, boolean top, double x, Role role) {
        if (role != Role.LIFTED) {
            tags.add(new Tag(x, overlay.number(c) + (top ? "t" : "b"), role));
        }
    }

    /** The part of a lifted lead that stays at the coil, and the cross where it ends. */
    private void lifted(List<Shape> parts, Point side, Point end) {
        for (Chain.Piece piece : Chain.clip(List.of(side, end), window.leadFrom, window.leadTo)) {
            parts.add(new Shape.Polyline(window.moved(piece.points()), false, List.of(Role.LIFTED)));
            if (piece.end()) {
                Point p = new Point(end.x() + window.shift, end.y());
                parts.addAll(Canvas.cross(p, 1.5, Role.LIFTED));
                lifts.add(p);
            }
        }
    }
}
