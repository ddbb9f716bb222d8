package coilwright.drawing;

import coilwright.drawing.DevelopedCoils.Cut;
import coilwright.drawing.Shape.Anchor;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Coil numbers in the margins of one page of a winding rolled out flat, where its lines are cut. */
final class DevelopedMargin {
    private final Overlay overlay;
    private final DevelopedPlan plan;
    private final DevelopedWindow window;
    private final Highlight highlight;
    private final Occupied leadLabels;
    private final Canvas canvas;

    /**
     * Margins of one page.
     *
     * @param leadLabels places taken by labels at the leads
     */
    DevelopedMargin(
            Overlay overlay,
            DevelopedPlan plan,
            DevelopedWindow window,
            Highlight highlight,
            Occupied leadLabels,
            Canvas canvas) {
        this.overlay = overlay;
        this.plan = plan;
        this.window = window;
        this.highlight = highlight;
        this.leadLabels = leadLabels;
        this.canvas = canvas;
    }

    /** Numbers the cut lines, as many as there is room for. */
    void label(List<Cut> cuts) {
        for (boolean left : new boolean[] {true, false}) {
            for (boolean back : new boolean[] {true, false}) {
                List<Cut> here = new ArrayList<>(cuts.stream()
                        .filter(c -> c.left() == left && c.back() == back)
                        .sorted(Comparator.comparingDouble(Cut::y))
                        .toList());
                double low = back ? DevelopedPlan.APEX - 1 : plan.leadStart - 1;
                double high = back ? DevelopedPlan.BEND + 4 : DevelopedPlan.BAR_TOP;
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
        double[] y = Occupied.spread(shown.stream().mapToDouble(Cut::y).toArray(), step, low, high);
        double edge = (left ? window.leadFrom : window.leadTo) + window.shift;
        double outer = 3.8
                + shown.stream()
                        .mapToDouble(c -> DevelopedPlan.digits(overlay.number(c.coil()), size))
                        .max()
                        .orElseThrow();
        double sign = left ? -1 : 1;
        for (int i = 0; i < shown.size(); i++) {
            Cut c = shown.get(i);
            double column = columns == 2 && i % 2 == 1 ? outer : 2.6;
            double x = edge + sign * column;
            var leader = new Shape.Polyline(
                    List.of(
                            new Point(c.x() + window.shift, c.y()),
                            new Point(edge + sign * 2.2, y[i]),
                            new Point(edge + sign * (column - 0.3), y[i])),
                    false,
                    List.of(Role.LEADER));
            Shape.Text t = Canvas.text(
                    x,
                    y[i] + 0.36 * size,
                    Integer.toString(overlay.number(c.coil())),
                    size,
                    highlight.coils().contains(overlay.number(c.coil())) || overlay.front(c.coil()),
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
}
