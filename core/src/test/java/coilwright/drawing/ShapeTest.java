package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.drawing.Shape.Cubic;
import java.util.List;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Boxes around shapes and distances to them, by geometry. */
class ShapeTest {
    private static final Offset<Double> EXACT = within(1e-9);
    private static final Point ORIGIN = new Point(0, 0);

    private static Point p(double x, double y) {
        return new Point(x, y);
    }

    private static void box(Box box, double left, double top, double right, double bottom, double slack) {
        assertThat(box.left()).isCloseTo(left, within(slack));
        assertThat(box.top()).isCloseTo(top, within(slack));
        assertThat(box.right()).isCloseTo(right, within(slack));
        assertThat(box.bottom()).isCloseTo(bottom, within(slack));
    }

    @Test
    void aPolygonIsNearAllOverWithin() {
        var arrow = new Shape.Polyline(List.of(p(0, 0), p(10, 0), p(4, 4), p(0, 10)), true, List.of());
        assertThat(arrow.distance(p(1, 1))).isZero();
        assertThat(arrow.distance(p(3, 3))).isZero();
        // In the notch of the two slopes: off the line from (4, 4) towards (−4, 6).
        assertThat(arrow.distance(p(6, 6))).isCloseTo((2 * 6 + 2 * 4) / Math.hypot(4, 6), EXACT);
        assertThat(arrow.distance(p(-3, 5))).isCloseTo(3, EXACT);
        assertThat(arrow.distance(p(5, -2))).isCloseTo(2, EXACT);
        assertThat(arrow.distance(p(13, -4))).isCloseTo(5, EXACT);
        assertThat(arrow.distance(p(-1, 0))).isCloseTo(1, EXACT);
        // Left open, it is a line: the side from last to first is not there.
        var open = new Shape.Polyline(arrow.points(), false, List.of());
        assertThat(open.distance(p(0, 5))).isCloseTo(5 / Math.hypot(4, 6) * 4, EXACT);
        assertThat(open.distance(p(1, 1))).isCloseTo(1, EXACT);
        box(arrow.bounds(), 0, 0, 10, 10, 0);
    }

    @Test
    void aCurveRunsThroughItsPieces() {
        // A quarter of a circle of radius 10 about (0, 0), then a straight piece of 10 down.
        double k = 5.522847498;
        var curve = new Shape.Curve(
                p(0, -10),
                List.of(
                        new Cubic(p(k, -10), p(10, -k), p(10, 0)),
                        new Cubic(p(10, 10.0 / 3), p(10, 20.0 / 3), p(10, 10))),
                List.of());
        box(curve.bounds(), 0, -10, 10, 10, 1e-9);
        for (double degrees = 5; degrees < 90; degrees += 10) {
            Point on = Point.polar(0, 0, 10, degrees);
            assertThat(curve.distance(on)).isLessThan(0.06);
        }
        assertThat(curve.distance(ORIGIN)).isCloseTo(10, within(0.06));
        assertThat(curve.distance(p(13, 5))).isCloseTo(3, EXACT);
        assertThat(curve.distance(p(10, 14))).isCloseTo(4, EXACT);
        assertThat(curve.distance(p(-3, -14))).isCloseTo(5, EXACT);
        // A lopsided piece: at its half it lies at (a + 3 b + 3 c + d) / 8.
        var lean = new Shape.Curve(p(0, 0), List.of(new Cubic(p(2, 8), p(6, 8), p(16, 0))), List.of());
        assertThat(lean.distance(p((3 * 2 + 3 * 6 + 16) / 8.0, 6))).isCloseTo(0, EXACT);
        // And at a quarter at (27 a + 27 b + 9 c + d) / 64.
        assertThat(lean.distance(p((27 * 2 + 9 * 6 + 16) / 64.0, 36 * 8 / 64.0)))
                .isCloseTo(0, EXACT);
        box(lean.bounds(), 0, 0, 16, 6, 1e-9);
    }

    @Test
    void arcsAndSectorsFollowTheirCircles() {
        var arc = new Shape.Arc(ORIGIN, 10, 90, 180, List.of());
        box(arc.bounds(), -10, 0, 10, 10, 1e-9);
        assertThat(arc.distance(p(0, 12))).isCloseTo(2, EXACT);
        assertThat(arc.distance(p(0, -10))).isCloseTo(Math.sqrt(200), EXACT);
        assertThat(arc.distance(Point.polar(0, 0, 10, 137))).isLessThan(0.02);
        assertThat(arc.distance(ORIGIN)).isCloseTo(10, within(0.02));
        // A small arc is drawn in four chords at least.
        assertThat(new Shape.Arc(ORIGIN, 10, 0, 4, List.of()).distance(Point.polar(0, 0, 10, 1)))
                .isLessThan(1e-9);
        var sector = new Shape.Sector(ORIGIN, 5, 10, -90, 180, List.of());
        box(sector.bounds(), -10, -10, 10, 0, 1e-9);
        assertThat(sector.distance(p(0, -7))).isZero();
        assertThat(sector.distance(p(0, -3))).isCloseTo(2, within(0.02));
        assertThat(sector.distance(p(7, 3))).isCloseTo(3, EXACT);
        assertThat(sector.distance(p(-12, 0))).isCloseTo(2, EXACT);
    }

    @Test
    void textsAndRectanglesAreBoxes() {
        var text = new Shape.Text(p(50, 20), "abc", 10, false, Shape.Anchor.START, List.of());
        double wide = text.width();
        box(text.bounds(), 50, 20 - 7.6, 50 + wide, 22.4, 1e-9);
        box(
                new Shape.Text(p(50, 20), "abc", 10, false, Shape.Anchor.END, List.of()).bounds(),
                50 - wide,
                12.4,
                50,
                22.4,
                1e-9);
        assertThat(text.distance(p(47, 12.4 - 4))).isCloseTo(5, EXACT);
        assertThat(text.distance(p(51, 20))).isZero();
        var rect = new Shape.Rect(2, 3, 10, 4, 1, List.of());
        assertThat(rect.distance(p(15, 11))).isCloseTo(5, EXACT);
        assertThat(rect.distance(p(-1, 5))).isCloseTo(3, EXACT);
        var circle = new Shape.Circle(ORIGIN, 3, List.of());
        assertThat(circle.distance(p(0, 5))).isCloseTo(2, EXACT);
        assertThat(circle.distance(p(1, 1))).isZero();
        box(circle.bounds(), -3, -3, 3, 3, 0);
    }

    @Test
    void aDrawingCountsAndBoundsItsShapes() {
        var rect = new Shape.Rect(2, 3, 10, 4, 0, List.of());
        var group = new Shape.Group(Optional.empty(), Optional.empty(), "", List.of(), List.of(rect, rect));
        var page = new Drawing(
                "", "", 20, 20, Palette.COLOUR, List.of(rect, group, new Shape.Circle(ORIGIN, 3, List.of())));
        assertThat(page.size()).isEqualTo(5);
        box(page.bounds(), -3, -3, 12, 7, 0);
        assertThat(new Drawing("", "", 20, 30, Palette.COLOUR, List.of()).bounds())
                .isEqualTo(new Box(0, 0, 20, 30));
        assertThat(page.outsidePage()).hasSize(1);
    }

    @Test
    void boxesThatTouchByAHairDoNotOverlap() {
        var box = new Box(0, 0, 10, 10);
        assertThat(box.overlaps(new Box(9.98, 2, 20, 8))).isTrue();
        assertThat(box.overlaps(new Box(9.995, 2, 20, 8))).isFalse();
        assertThat(box.overlaps(new Box(-5, 2, 0.02, 8))).isTrue();
        assertThat(box.overlaps(new Box(-5, 2, 0.005, 8))).isFalse();
        assertThat(box.overlaps(new Box(2, 9.98, 8, 20))).isTrue();
        assertThat(box.overlaps(new Box(2, 9.995, 8, 20))).isFalse();
        assertThat(box.overlaps(new Box(2, -5, 8, 0.02))).isTrue();
        assertThat(box.overlaps(new Box(2, -5, 8, 0.005))).isFalse();
        assertThat(box.holds(new Box(-0.005, -0.005, 10.005, 10.005))).isTrue();
        assertThat(box.holds(new Box(-0.02, 0, 10, 10))).isFalse();
        assertThat(box.holds(new Box(0, -0.02, 10, 10))).isFalse();
        assertThat(box.holds(new Box(0, 0, 10.02, 10))).isFalse();
        assertThat(box.holds(new Box(0, 0, 10, 10.02))).isFalse();
        assertThat(box.union(new Box(-1, 2, 4, 12))).isEqualTo(new Box(-1, 0, 10, 12));
        assertThat(box.grown(1)).isEqualTo(new Box(-1, -1, 11, 11));
    }
}
