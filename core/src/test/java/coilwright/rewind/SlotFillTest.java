package coilwright.rewind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SlotFillTest {
    private static Conductor wire(double bare, double overall, int strands) {
        var size = new WireSize(WireSystem.METRIC, "test", bare, Source.arithmetic());
        return new Conductor.Round(RoundWire.of(size, InsulationBuild.BARE).measuredOverall(overall), strands);
    }

    @Test
    void areasOfARectangularSlot() {
        var slot = new SlotShape.Rectangular(6, 20);
        var fill = SlotFill.of(slot, new SlotInsulation(0.5, 1, 2), wire(0.9, 1, 2), 5);
        assertThat(fill.slotAreaMm2()).isCloseTo(120, within(1e-9));
        // Five millimetres between the liners; 20 − 0.5 floor − 2 wedge − 1 separator high.
        assertThat(fill.windingAreaMm2()).isCloseTo(5 * 16.5, within(0.01));
        assertThat(fill.wires()).isEqualTo(20);
        assertThat(fill.copperAreaMm2()).isCloseTo(20 * Math.PI / 4 * 0.81, within(1e-9));
        assertThat(fill.fill()).isCloseTo(20 / 82.5, within(1e-4));
        assertThat(fill.circleFill()).isCloseTo(Math.PI / 4 * 20 / 82.5, within(1e-4));
        assertThat(fill.copperFactor()).isCloseTo(20 * Math.PI / 4 * 0.81 / 120, within(1e-9));
        assertThat(fill.fits()).isTrue();
        var placed = fill.packing().orElseThrow();
        assertThat(placed.bottom()).hasSize(10);
        assertThat(placed.top()).hasSize(10);
        assertThat(placed.separatorToMm() - placed.separatorFromMm()).isCloseTo(1, within(1e-9));
    }

    @Test
    void countDecidesNotArea() {
        // Two wires of 3 mm side by side need 6 mm: at 5.9 mm the area is there and the places are not.
        var fill = SlotFill.of(new SlotShape.Rectangular(5.9, 12.4), SlotInsulation.NONE, wire(2.9, 3, 1), 4);
        assertThat(fill.fill()).isLessThan(1);
        assertThat(fill.fits()).isFalse();
        assertThat(SlotFill.of(new SlotShape.Rectangular(6, 12.4), SlotInsulation.NONE, wire(2.9, 3, 1), 4)
                        .fits())
                .isTrue();
    }

    @Test
    void wireMustPassTheOpening() {
        var slot = new SlotShape.SemiClosed(1.5, 0.5, 1, 6, 4, 12, 1);
        assertThat(SlotFill.of(slot, SlotInsulation.NONE, wire(1.4, 1.45, 1), 4).fits())
                .isTrue();
        var thick = SlotFill.of(slot, SlotInsulation.NONE, wire(1.5, 1.6, 1), 4);
        assertThat(thick.packing().orElseThrow().mostPerLayer()).isGreaterThan(4);
        assertThat(thick.packing().orElseThrow().passesOpening()).isFalse();
        assertThat(thick.fits()).isFalse();
    }

    @Property(tries = 40)
    void halfTheRoomIsFoundAsByPlainHalving(
            @ForAll @IntRange(max = 3) int kind,
            @ForAll @DoubleRange(min = 2, max = 14) double width,
            @ForAll @DoubleRange(min = 0.4, max = 1.3) double taper,
            @ForAll @DoubleRange(min = 6, max = 45) double depth,
            @ForAll @DoubleRange(min = 0, max = 0.6) double liner) {
        SlotShape slot = switch (kind) {
            case 0 -> new SlotShape.Rectangular(width, depth);
            case 1 -> new SlotShape.ParallelTooth(width, width * taper, depth, width * 0.1);
            case 2 -> new SlotShape.RoundBottom(width, depth + width);
            default -> new SlotShape.SemiClosed(width / 4, 0.5, 1, width, width * taper, depth, width * 0.1);
        };
        Outline body = slot.body();
        double top = body.heightMm() - 1;
        double half = body.areaBetween(0, top, liner) / 2;
        double lo = 0;
        double hi = top;
        for (int i = 0; i < 40; i++) {
            double mid = (lo + hi) / 2;
            if (body.areaBetween(0, mid, liner) < half) {
                lo = mid;
            } else {
                hi = mid;
            }
        }
        assertThat(SlotFill.halfArea(body, new SlotInsulation(liner, 0, 1), top))
                .isEqualTo((lo + hi) / 2);
    }

    @Property(tries = 60)
    void layersStayOnTheirSideOfTheSeparator(
            @ForAll @DoubleRange(min = 0.5, max = 1.5) double d,
            @ForAll @DoubleRange(min = 0, max = 1) double separator,
            @ForAll @IntRange(min = 1, max = 30) int turns) {
        var slot = new SlotShape.ParallelTooth(8, 5, 18, 1);
        var fill = SlotFill.of(slot, new SlotInsulation(0.3, separator, 1), wire(d * 0.9, d, 1), turns);
        var placed = fill.packing().orElseThrow();
        for (SlotPoint p : placed.bottom()) {
            assertThat(p.yMm() + d / 2).isLessThanOrEqualTo(placed.separatorFromMm() + 1e-6);
        }
        for (SlotPoint p : placed.top()) {
            assertThat(p.yMm() - d / 2).isGreaterThanOrEqualTo(placed.separatorToMm() - 1e-6);
            assertThat(p.yMm() + d / 2).isLessThanOrEqualTo(17 + 1e-6);
        }
        assertThat(fill.fits())
                .isEqualTo(placed.bottom().size() == turns && placed.top().size() == turns);
        // Wires that do fit cannot have more circle area than there is room.
        if (fill.fits()) {
            assertThat(fill.circleFill()).isLessThan(1);
        }
    }

    /** Every fifth of a millimetre tried instead. */
    @ParameterizedTest
    @CsvSource({"0, 1.5, 0.5", "1, 1, 0", "2, 1.3, 0.5", "3, 1.3, 0"})
    void noOtherPlaceOfTheSeparatorHoldsMore(int which, double d, double separator) {
        SlotShape slot = List.of(
                        new SlotShape.ParallelTooth(8, 5, 18, 1),
                        new SlotShape.RoundBottom(5, 14),
                        new SlotShape.SemiClosed(2, 0.5, 1, 6, 4, 12, 1),
                        new SlotShape.ParallelTooth(4, 7, 12, 0.5))
                .get(which);
        Outline body = slot.body();
        double top = body.heightMm() - 0.5;
        var placed = SlotFill.of(slot, new SlotInsulation(0.2, separator, 0.5), wire(d * 0.9, d, 1), 100)
                .packing()
                .orElseThrow();
        int most = 0;
        for (double y = 3; y < top - separator; y += 0.2) {
            int below = Packing.in(body, 0.2, 0, y, d).count();
            most = Math.max(
                    most,
                    Math.min(below, Packing.in(body, 0.2, y + separator, top, d).count()));
        }
        assertThat(placed.mostPerLayer()).isGreaterThanOrEqualTo(most);
        assertThat(placed.fits()).isFalse();
    }

    @Test
    void theSeparatorLiesWhereHalfTheAreaIsBelow() {
        // 17.5 mm between floor and wedge: the middle is 9.25 mm up, the separator half a millimetre either side.
        var box = SlotFill.of(new SlotShape.Rectangular(6, 20), new SlotInsulation(0.5, 1, 2), wire(0.9, 1, 1), 40);
        assertThat(box.packing().orElseThrow().separatorFromMm()).isCloseTo(8.75, within(0.01));
        assertThat(box.packing().orElseThrow().separatorToMm()).isCloseTo(9.75, within(0.01));
        // Width 5 + y/6: half of 117 mm² lies under 10.02 mm, where a millimetre of separator takes 6.67 mm².
        var strip = new Conductor.Strip(3, 8, 0, 0);
        var taper = SlotFill.of(new SlotShape.ParallelTooth(8, 5, 18, 0), new SlotInsulation(0, 1, 0), strip, 1);
        assertThat(taper.windingAreaMm2()).isCloseTo(117 - (5 + (Math.sqrt(1602) - 30) / 6), within(0.02));
    }

    @Test
    void openSlotsLoseTheLinerAtTheirMouth() {
        // Narrower at the top: 2 mm less two liners of 0.3 mm.
        var closing = new SlotShape.ParallelTooth(2, 4, 12, 0);
        var liner = new SlotInsulation(0.3, 0, 0);
        assertThat(SlotFill.of(closing, liner, wire(1.3, 1.39, 1), 1)
                        .packing()
                        .orElseThrow()
                        .passesOpening())
                .isTrue();
        assertThat(SlotFill.of(closing, liner, wire(1.3, 1.41, 1), 1)
                        .packing()
                        .orElseThrow()
                        .passesOpening())
                .isFalse();
        // Under tooth tips the liner ends below the mouth.
        var tips = new SlotShape.SemiClosed(1.5, 0.5, 1, 6, 4, 12, 1);
        assertThat(SlotFill.of(tips, liner, wire(1.4, 1.5, 1), 1)
                        .packing()
                        .orElseThrow()
                        .passesOpening())
                .isTrue();
    }

    @Test
    void thinWireGoesByAreaAlone() {
        // 100 mm² over the square of 0.16 mm are 3906 places; of 0.15 mm, 4444.
        var box = new SlotShape.Rectangular(5, 20);
        assertThat(SlotFill.of(box, SlotInsulation.NONE, wire(0.15, 0.16, 1), 10)
                        .packing())
                .isPresent();
        assertThat(SlotFill.of(box, SlotInsulation.NONE, wire(0.14, 0.15, 1), 10)
                        .packing())
                .isEmpty();
        var tooMuch = SlotFill.of(box, SlotInsulation.NONE, new Conductor.Strip(4.9, 10.3, 0, 0), 1);
        assertThat(tooMuch.fill()).isGreaterThan(1);
        assertThat(tooMuch.fits()).isFalse();
    }

    @Test
    void stripGoesByAreaAndIsLaidInRows() {
        var fill = SlotFill.of(
                new SlotShape.Rectangular(5, 20),
                new SlotInsulation(0.3, 0.5, 1),
                new Conductor.Strip(3.8, 8, 0.5, 0.1),
                1);
        assertThat(fill.packing()).isEmpty();
        assertThat(fill.wires()).isEqualTo(2);
        assertThat(fill.fill()).isCloseTo(2 * 4.0 * 8.2 / (4.4 * (20 - 0.3 - 1 - 0.5)), within(1e-3));
        assertThat(fill.fits()).isTrue();
        // Half of the 18.7 mm from the liner to the wedge lies under the middle of the separator.
        assertThat(fill.separatorFromMm()).isCloseTo(0.3 + 18.7 / 2 - 0.25, within(1e-2));
        SlotFill.LaidStrip bottom = fill.strips().orElseThrow().bottom().get(0);
        assertThat(bottom.leftMm()).isEqualTo(-2);
        assertThat(bottom.bottomMm()).isEqualTo(0.3);
        assertThat(bottom.heightMm()).isEqualTo(8.2);
        assertThat(fill.strips().orElseThrow().top())
                .singleElement()
                .extracting(SlotFill.LaidStrip::bottomMm)
                .isEqualTo(fill.separatorFromMm() + 0.5);
    }

    @Test
    void stripThatAreaAloneLetsInNeedNotFindAPlace() {
        // Two strips 3 mm wide do not lie side by side in 5 mm, nor above each other in a layer 4.6 mm high.
        var fill = SlotFill.of(
                new SlotShape.Rectangular(5, 10), new SlotInsulation(0, 0.8, 0), new Conductor.Strip(3, 3, 0, 0), 2);
        assertThat(fill.fits()).isTrue();
        assertThat(fill.wires()).isEqualTo(4);
        assertThat(fill.strips().orElseThrow().count()).isEqualTo(2);
    }

    @Test
    void tooMuchInsulation() {
        assertThatThrownBy(() -> SlotFill.of(
                        new SlotShape.Rectangular(5, 20), new SlotInsulation(2.6, 0, 0), wire(0.5, 0.6, 1), 5))
                .hasMessageContaining("leave no room in the slot");
    }
}
