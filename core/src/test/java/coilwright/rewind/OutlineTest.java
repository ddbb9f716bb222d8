package coilwright.rewind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.rewind.Outline.Corner;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Outlines whose widths and areas can be worked out by hand. */
class OutlineTest {
    private static final double EXACT = 1e-9;
    private static final Outline BOX = new Outline(List.of(new Corner(3, 0, 0), new Corner(3, 10, 0)));
    /** Walls that lean out by one in five. */
    private static final Outline OPENING = new Outline(List.of(new Corner(2, 0, 0), new Corner(4, 10, 0)));
    /** Walls that lean in by one in five. */
    private static final Outline CLOSING = new Outline(List.of(new Corner(4, 0, 0), new Corner(2, 10, 0)));
    /** Both corners at the floor rounded by 2. */
    private static final Outline ROUNDED = new Outline(List.of(new Corner(3, 0, 2), new Corner(3, 10, 0)));
    /** What an inset takes off a leaning wall, measured across. */
    private static final double SLANT = Math.sqrt(1 + 0.2 * 0.2);

    @Test
    void theLinerLinesFloorAndWallsAndLeavesTheTopOpen() {
        assertThat(BOX.halfWidth(5, 1)).isCloseTo(2, within(EXACT));
        assertThat(BOX.halfWidth(1, 1)).isCloseTo(2, within(EXACT));
        assertThat(BOX.halfWidth(10, 1)).isCloseTo(2, within(EXACT));
        assertThat(BOX.halfWidth(0.5, 1)).isCloseTo(-0.5, within(EXACT));
        assertThat(BOX.halfWidth(10.5, 1)).isCloseTo(-0.5, within(EXACT));
        assertThat(BOX.halfWidth(5, 3.5)).isCloseTo(-0.5, within(EXACT));
        assertThat(OPENING.halfWidth(5, 1)).isCloseTo(3 - SLANT, within(EXACT));
        assertThat(CLOSING.halfWidth(5, 1)).isCloseTo(3 - SLANT, within(EXACT));
    }

    @Test
    void whereAnythingIsLeft() {
        assertThat(BOX.band(1)).containsExactly(1.0, 10.0);
        assertThat(BOX.band(3.1)).isEmpty();
        assertThat(BOX.band(11)).isEmpty();
        // 2 + y/5 = 2.9 · slant above the floor; 4 − y/5 = 2.5 · slant under the top.
        assertThat(OPENING.band(2.1)).containsExactly(2.1, 10.0);
        List<Double> opening = OPENING.band(2.9);
        assertThat(opening.get(0)).isCloseTo(5 * (2.9 * SLANT - 2), within(EXACT));
        assertThat(opening.get(1)).isEqualTo(10);
        List<Double> closing = CLOSING.band(2.5);
        assertThat(closing.get(0)).isEqualTo(2.5);
        assertThat(closing.get(1)).isCloseTo(5 * (4 - 2.5 * SLANT), within(EXACT));
        // Wide in the middle alone.
        var waist = new Outline(List.of(new Corner(1, 0, 0), new Corner(3, 4, 0), new Corner(1, 8, 0)));
        double across = 1.5 * Math.sqrt(1 + 0.5 * 0.5);
        assertThat(waist.band(1.5).get(0)).isCloseTo(Math.max(1.5, 2 * (across - 1)), within(EXACT));
        assertThat(waist.band(1.5).get(1)).isCloseTo(8 - 2 * (across - 1), within(EXACT));
    }

    @Test
    void areas() {
        assertThat(BOX.areaMm2()).isCloseTo(60, within(EXACT));
        assertThat(BOX.areaBetween(2, 5, 1)).isCloseTo(12, within(EXACT));
        assertThat(BOX.areaBetween(0, 20, 1)).isCloseTo(36, within(EXACT));
        assertThat(BOX.areaBetween(5, 2, 0)).isZero();
        assertThat(BOX.areaBetween(0, 10, 4)).isZero();
        assertThat(OPENING.areaMm2()).isCloseTo(60, within(EXACT));
        assertThat(OPENING.areaBetween(0, 5, 0)).isCloseTo(25, within(EXACT));
        // A rounded corner takes r²·(1 − π/4).
        assertThat(ROUNDED.areaMm2()).isCloseTo(60 - 8 * (1 - Math.PI / 4), within(EXACT));
        // Sharp and blunt corners: against the sum of strips.
        for (double floor : new double[] {1.5, 2.5, 4, 6}) {
            var rounded = new Outline(List.of(new Corner(floor, 0, 0.8), new Corner(2.5, 10, 0)));
            assertThat(rounded.areaBetween(0, 10, 0)).isCloseTo(rounded.areaMm2(), within(2e-3));
        }
    }

    @Test
    void roundedCorners() {
        assertThat(ROUNDED.halfWidth(0, 0)).isCloseTo(1, within(EXACT));
        assertThat(ROUNDED.halfWidth(1, 0)).isCloseTo(1 + Math.sqrt(3), within(EXACT));
        assertThat(ROUNDED.halfWidth(2, 0)).isCloseTo(3, within(EXACT));
        assertThat(ROUNDED.halfWidth(3, 0)).isCloseTo(3, within(EXACT));
        // Half a millimetre of liner leaves a radius of 1.5.
        assertThat(ROUNDED.halfWidth(0.5, 0.5)).isCloseTo(1, within(EXACT));
        assertThat(ROUNDED.halfWidth(1, 0.5)).isCloseTo(1 + Math.sqrt(1.5 * 1.5 - 1), within(EXACT));
        assertThat(ROUNDED.halfWidth(2, 2.5)).isCloseTo(-0.5, within(EXACT));
        assertThat(ROUNDED.boundary())
                .hasSize(2 * 17 + 2)
                .filteredOn(p -> p.yMm() < 2 - 1e-9)
                .allSatisfy(p -> assertThat(Math.hypot(Math.abs(p.xMm()) - 1, p.yMm() - 2))
                        .isCloseTo(2, within(EXACT)));
        assertThat(ROUNDED.boundary())
                .anyMatch(p -> Math.abs(p.xMm() - 3) < EXACT && Math.abs(p.yMm() - 2) < EXACT)
                .anyMatch(p -> Math.abs(p.xMm() - 1) < EXACT && Math.abs(p.yMm()) < EXACT);
        assertThat(BOX.boundary()).hasSize(4);
    }

    private static double area(List<SlotPoint> polygon) {
        double twice = 0;
        for (int i = 0; i < polygon.size(); i++) {
            SlotPoint p = polygon.get(i);
            SlotPoint q = polygon.get((i + 1) % polygon.size());
            twice += p.xMm() * q.yMm() - q.xMm() * p.yMm();
        }
        return twice / 2;
    }

    @Test
    void whatIsLeftWithinTheLiner() {
        assertThat(BOX.within(1, 2, 5))
                .containsExactlyInAnyOrder(
                        new SlotPoint(-2, 2), new SlotPoint(2, 2), new SlotPoint(2, 5), new SlotPoint(-2, 5));
        // The floor is lined, the flat top is not.
        assertThat(area(BOX.within(1, 0, 10))).isCloseTo(4 * 9, within(EXACT));
        assertThat(area(BOX.within(0, -5, 50))).isCloseTo(60, within(EXACT));
        assertThat(BOX.within(3.5, 0, 10)).hasSizeLessThan(3);
        assertThat(BOX.within(1, 11, 12)).hasSizeLessThan(3);
        // Anticlockwise, and as wide at each height as the half width says.
        for (Outline outline : List.of(OPENING, CLOSING, ROUNDED)) {
            for (double inset : new double[] {0, 0.4, 1.1}) {
                List<SlotPoint> left = outline.within(inset, 0.2, 8);
                assertThat(area(left)).isCloseTo(outline.areaBetween(0.2, 8, inset), within(0.02));
                assertThat(left).allSatisfy(p -> {
                    assertThat(p.yMm()).isBetween(Math.max(0.2, inset) - EXACT, 8 + EXACT);
                    assertThat(Math.abs(p.xMm())).isLessThanOrEqualTo(outline.halfWidth(p.yMm(), inset) + 0.02);
                });
            }
        }
    }

    /** Strips of 2 by 1 mm: across a box of 6.2 mm three lie flat, six stand upright. */
    @Test
    void stripsInRows() {
        var strip = new Conductor.Strip(1.8, 0.8, 0, 0.1);
        var box = new Outline(List.of(new Corner(3.1, 0, 0), new Corner(3.1, 10, 0)));
        List<SlotFill.LaidStrip> upright = new StripRows(box, 0.1, 0, 4.2, 8).lay(strip);
        assertThat(upright).hasSize(8);
        assertThat(upright.get(0)).isEqualTo(new SlotFill.LaidStrip(-3, 0.1, 1, 2));
        assertThat(upright.get(5)).isEqualTo(new SlotFill.LaidStrip(2, 0.1, 1, 2));
        // The second row, of the two that are left, stands in the middle.
        assertThat(upright.get(6)).isEqualTo(new SlotFill.LaidStrip(-1, 2.1, 1, 2));
        // Only flat strips go into a height of 1.5 mm.
        List<SlotFill.LaidStrip> flat = new StripRows(box, 0.1, 5, 6.5, 8).lay(strip);
        assertThat(flat).hasSize(3);
        assertThat(flat.get(0)).isEqualTo(new SlotFill.LaidStrip(-3, 5, 2, 1));
        assertThat(new StripRows(box, 0.1, 5, 5.9, 8).lay(strip)).isEmpty();
        assertThat(new StripRows(box, 2.7, 0, 10, 8).lay(strip)).isEmpty();
        // Where the walls lean out, a row may begin above the narrow floor.
        List<SlotFill.LaidStrip> higher = new StripRows(OPENING, 0, 0, 10, 1).lay(new Conductor.Strip(5, 0.5, 0, 0));
        assertThat(higher).hasSize(1);
        assertThat(higher.get(0).bottomMm() + higher.get(0).heightMm()).isLessThanOrEqualTo(10 + 1e-6);
    }
}
