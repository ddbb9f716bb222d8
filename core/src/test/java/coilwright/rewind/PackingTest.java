package coilwright.rewind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class PackingTest {
    @Provide
    Arbitrary<SlotShape> shapes() {
        return SlotShapes.between(2, 12, 8, 25);
    }

    @Property(tries = 150)
    void wiresNeitherOverlapNorLeaveTheRegion(
            @ForAll("shapes") SlotShape shape,
            @ForAll @DoubleRange(min = 0.4, max = 3) double d,
            @ForAll @DoubleRange(min = 0, max = 0.5) double liner,
            @ForAll @DoubleRange(min = 0, max = 2) double wedge) {
        Outline body = shape.body();
        double top = body.heightMm() - wedge;
        Packing p = Packing.in(body, liner, 0, top, d);
        List<SlotPoint> c = p.centres();
        for (int i = 0; i < c.size(); i++) {
            for (int j = 0; j < i; j++) {
                assertThat(c.get(i).distance(c.get(j))).isGreaterThan(d * (1 - 1e-6));
            }
            assertThat(c.get(i).yMm() + d / 2).isLessThan(top + 1e-6);
            assertThat(clearance(body, c.get(i))).isGreaterThan(d / 2 + liner - 0.02);
        }
        // Oler's inequality for points of a convex set at least d apart.
        double most = 2 * body.areaMm2() / (Math.sqrt(3) * d * d) + boundaryLength(body) / (2 * d) + 1;
        assertThat((double) c.size()).isLessThanOrEqualTo(most);
    }

    /**
     * Distance to the drawn boundary, without the flat top, reckoned apart from the code under test. The boundary's
     * chords cut arcs short by at most 0.02 mm here.
     */
    private static double clearance(Outline body, SlotPoint p) {
        List<SlotPoint> b = body.boundary();
        double least = Double.POSITIVE_INFINITY;
        boolean inside = true;
        for (int i = 0; i < b.size(); i++) {
            SlotPoint s = b.get(i);
            SlotPoint t = b.get((i + 1) % b.size());
            double dx = t.xMm() - s.xMm();
            double dy = t.yMm() - s.yMm();
            double length = Math.hypot(dx, dy);
            if (length < 1e-9 || (Math.abs(s.yMm() - body.heightMm()) < 1e-9 && Math.abs(dy) < 1e-9)) {
                continue;
            }
            double along = ((p.xMm() - s.xMm()) * dx + (p.yMm() - s.yMm()) * dy) / (length * length);
            double k = Math.max(0, Math.min(1, along));
            least = Math.min(least, Math.hypot(p.xMm() - s.xMm() - k * dx, p.yMm() - s.yMm() - k * dy));
            inside &= dx * (p.yMm() - s.yMm()) - dy * (p.xMm() - s.xMm()) >= -0.02;
        }
        return inside ? least : -least;
    }

    private static double boundaryLength(Outline body) {
        double sum = 0;
        List<SlotPoint> b = body.boundary();
        for (int i = 0; i < b.size(); i++) {
            sum += b.get(i).distance(b.get((i + 1) % b.size()));
        }
        return sum;
    }

    @Property(tries = 100)
    void areaAgreesWithTheDrawnBoundary(@ForAll("shapes") SlotShape shape) {
        Outline body = shape.body();
        double twice = 0;
        List<SlotPoint> b = body.boundary();
        for (int i = 0; i < b.size(); i++) {
            SlotPoint s = b.get(i);
            SlotPoint t = b.get((i + 1) % b.size());
            twice += s.xMm() * t.yMm() - t.xMm() * s.yMm();
        }
        // Chords of 16 steps lose about a thousandth of a quarter circle.
        assertThat(body.areaMm2()).isCloseTo(twice / 2, within(body.areaMm2() * 0.002));
        assertThat(body.areaBetween(0, body.heightMm(), 0)).isCloseTo(body.areaMm2(), within(body.areaMm2() * 3e-4));
    }

    @Property(tries = 40)
    void noFewerThanInSquareRows(
            @ForAll @DoubleRange(min = 3, max = 10) double width, @ForAll @DoubleRange(min = 0.5, max = 2) double d) {
        Outline body = new SlotShape.Rectangular(width, 15).body();
        int columns = (int) Math.floor(width / d + 1e-9);
        int rows = (int) Math.floor(15 / d + 1e-9);
        assertThat(Packing.in(body, 0, 0, 15, d).count()).isGreaterThanOrEqualTo(columns * rows);
    }

    @Test
    void knownCounts() {
        // One column, two columns touching, and a slot too narrow.
        assertThat(count(1, 5, 1)).isEqualTo(5);
        assertThat(count(2, 5, 1)).isEqualTo(10);
        assertThat(count(0.99, 5, 1)).isZero();
        assertThat(count(3, 0.99, 1)).isZero();
        // Ten by ten: 100 in square rows, 105 in eleven hexagonal rows of ten and nine in turn: 6 × 10 + 5 × 9.
        assertThat(count(10, 10, 1)).isGreaterThanOrEqualTo(105);
        // A slot 1 + √3/2 wide holds two columns in each other's hollows: 5 + 4 in a depth of 5.
        assertThat(count(1 + Math.sqrt(3) / 2, 5, 1)).isEqualTo(9);
    }

    @Test
    void patterns() {
        Packing square = Packing.in(new SlotShape.Rectangular(6, 4).body(), 0, 0, 4, 2);
        assertThat(square.pattern()).isEqualTo(Packing.Pattern.SQUARE);
        assertThat(square.centres())
                .containsExactly(
                        new SlotPoint(-2, 1),
                        new SlotPoint(0, 1),
                        new SlotPoint(2, 1),
                        new SlotPoint(-2, 3),
                        new SlotPoint(0, 3),
                        new SlotPoint(2, 3));
        Packing hexagonal = Packing.in(new SlotShape.Rectangular(10, 10).body(), 0, 0, 10, 1);
        assertThat(hexagonal.pattern()).isEqualTo(Packing.Pattern.HEXAGONAL);
        assertThat(hexagonal.count()).isEqualTo(105);
        // One wire to a row, left and right in turn, 0.6 aside and 0.8 up: six in 5 mm, where hollows take five.
        Packing staggered = Packing.in(new SlotShape.Rectangular(1.6, 5).body(), 0, 0, 5, 1);
        assertThat(staggered.pattern()).isEqualTo(Packing.Pattern.STAGGERED);
        assertThat(staggered.count()).isEqualTo(6);
        assertThat(staggered.lowest(2))
                .extracting(SlotPoint::yMm)
                .satisfies(y -> assertThat(y.get(1) - y.get(0)).isCloseTo(0.8, within(1e-9)));
        // Rows of three and two in turn, 1.25 apart, rise 0.78 each: five rows instead of four rows of three.
        assertThat(count(3.5, 4.3, 1)).isEqualTo(13);
    }

    @Test
    void onlyTheRoomBetweenTwoHeights() {
        Outline body = new SlotShape.Rectangular(2.2, 10).body();
        Packing high = Packing.in(body, 0.1, 4, 7, 1);
        assertThat(high.count()).isEqualTo(6);
        assertThat(high.centres()).allMatch(p -> p.yMm() >= 4.5 - 1e-9 && p.yMm() <= 6.5 + 1e-9);
        assertThat(Packing.in(body, 0.1, 4, 4.9, 1).count()).isZero();
        assertThat(Packing.in(body, 0.1, 4, 5, 1).count()).isEqualTo(2);
        // The liner lies on the floor too.
        assertThat(Packing.in(body, 0.1, 0, 1.05, 1).count()).isZero();
        assertThat(Packing.in(body, 0.1, 0, 1.1, 1).centres())
                .extracting(SlotPoint::yMm)
                .allMatch(y -> Math.abs(y - 0.6) < 1e-9);
        assertThat(high.lowest(9)).hasSize(6);
    }

    @Test
    void roundBottomTakesOneWireAtTheFloor() {
        Outline body = new SlotShape.RoundBottom(2, 4).body();
        Packing p = Packing.in(body, 0, 0, 4, 2);
        assertThat(p.centres()).hasSize(2);
        assertThat(p.centres().get(0).xMm()).isCloseTo(0, within(1e-6));
        assertThat(p.centres().get(0).yMm()).isCloseTo(1, within(1e-6));
    }

    @Test
    void sameInputSamePlaces() {
        Outline body = new SlotShape.SemiClosed(2, 0.5, 1, 6, 4, 12, 1).body();
        assertThat(Packing.in(body, 0.2, 0, 12, 0.7)).isEqualTo(Packing.in(body, 0.2, 0, 12, 0.7));
    }

    @Test
    void areasOfShapes() {
        assertThat(new SlotShape.Rectangular(5, 20).areaMm2()).isCloseTo(100, within(1e-9));
        assertThat(new SlotShape.ParallelTooth(6, 4, 20, 0).areaMm2()).isCloseTo(100, within(1e-9));
        // A rectangle with a half circle under it.
        assertThat(new SlotShape.RoundBottom(4, 10).areaMm2()).isCloseTo(4 * 8 + Math.PI * 2, within(1e-9));
        // Two rounded corners of a rectangle lose (2 − π/2)·r².
        assertThat(new SlotShape.ParallelTooth(6, 6, 10, 1).areaMm2()).isCloseTo(60 - (2 - Math.PI / 2), within(1e-9));
        // Neck, shoulders and body.
        assertThat(new SlotShape.SemiClosed(2, 1, 1, 6, 4, 10, 0).areaMm2()).isCloseTo(2 + 4 + 50, within(1e-9));
        assertThat(new SlotShape.SemiClosed(2, 1, 1, 6, 4, 10, 0).depthMm()).isCloseTo(12, within(1e-9));
    }

    @Test
    void shapesThatCannotBe() {
        assertThatThrownBy(() -> new SlotShape.RoundBottom(4, 1.5)).hasMessageContaining("corner radius is 2 mm");
        assertThatThrownBy(() -> new SlotShape.ParallelTooth(6, 4, 10, 3)).hasMessageContaining("at most");
        assertThatThrownBy(() -> new SlotShape.SemiClosed(7, 0, 1, 6, 4, 10, 0))
                .hasMessageContaining("wider than the body");
        assertThatThrownBy(() -> new SlotShape.Rectangular(0, 10)).hasMessageContaining("slot width is 0 mm");
        // At most half the floor in a box; 2 / tan 22.5° where the walls lean out by 45°, the floor being 4 wide.
        assertThat(new SlotShape.ParallelTooth(6, 6, 10, 3).cornerRadiusMm()).isEqualTo(3);
        assertThat(new SlotShape.ParallelTooth(24, 4, 10, 4.828).cornerRadiusMm())
                .isEqualTo(4.828);
        assertThatThrownBy(() -> new SlotShape.ParallelTooth(24, 4, 10, 4.829))
                .hasMessage(
                        "corner radius is 4.829 mm, but a floor of 4 mm and a depth of 10 mm leave room for 4.828 mm at"
                                + " most");
        // A wall shorter than half the floor bounds the radius.
        assertThatThrownBy(() -> new SlotShape.ParallelTooth(6, 6, 2, 2.01))
                .hasMessageContaining("room for 2 mm at most");
        assertThatThrownBy(() -> new SlotShape.SemiClosed(2, 0, 1, 6, 6, 10, 3.1))
                .hasMessageContaining("leave room for 3 mm at most");
        // Walls that lean in by a fifth each, shoulders by twice their height and by an eighth of it.
        assertThat(new SlotShape.SemiClosed(2, 0, 1, 6, 10, 10, 0).openingMm()).isEqualTo(2);
        assertThat(new SlotShape.SemiClosed(6, 0, 1, 6, 6, 10, 0).openingMm()).isEqualTo(6);
        assertThatThrownBy(() -> new SlotShape.SemiClosed(5.5, 0, 2, 6, 10, 10, 0))
                .hasMessage(
                        "the walls lean in more than the shoulders, so the body is hollow: check the widths and heights");
        assertThat(new SlotShape.SemiClosed(5.5, 0, 1.25, 6, 10, 10, 0).shoulderMm())
                .isEqualTo(1.25);
    }

    private static int count(double width, double depth, double d) {
        return Packing.in(new SlotShape.Rectangular(width, depth).body(), 0, 0, depth, d)
                .count();
    }
}
