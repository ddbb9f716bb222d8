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
}
