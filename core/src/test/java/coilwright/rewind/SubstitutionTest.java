package coilwright.rewind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SubstitutionTest {
    private static final Conductor EIGHTEEN = Conductor.of(RoundWire.of(WireSizes.awg(18), InsulationBuild.NEMA_HEAVY));

    @Test
    void twoInHandThreeSizesThinner() {
        var options = Substitution.options(Substitution.Wanted.inPlaceOf(EIGHTEEN), Substitution.Rank.AREA);
        // The size itself comes first, then two of 21 AWG, by the factor of 2.005 for three sizes.
        assertThat(options.get(0).conductor().label()).isEqualTo("18 AWG, heavy build");
        assertThat(options.get(0).areaDifference()).isCloseTo(0, within(1e-12));
        var two = options.stream()
                .filter(o -> o.conductor().label().equals("2 × 21 AWG, heavy build"))
                .findFirst()
                .orElseThrow();
        assertThat(two.areaDifference()).isCloseTo(2 / 2.005 - 1, within(1e-4));
        assertThat(options.indexOf(two)).isLessThanOrEqualTo(2);
        // More covering for the same copper.
        assertThat(two.roomDifference()).isPositive();
    }

    @Test
    void fitOrderPutsTheLikestRoomFirst() {
        var options = Substitution.options(Substitution.Wanted.inPlaceOf(EIGHTEEN), Substitution.Rank.FIT);
        double last = -1;
        for (var o : options) {
            assertThat(Math.abs(o.roomDifference())).isGreaterThanOrEqualTo(last);
            last = Math.abs(o.roomDifference());
        }
        assertThat(options)
                .extracting(o -> o.conductor().wire().size().system())
                .contains(WireSystem.values());
    }

    @Property
    void everyOptionKeepsToTheLimits(
            @ForAll @DoubleRange(min = 0.01, max = 20) double area,
            @ForAll @DoubleRange(min = 0.02, max = 0.3) double tolerance) {
        var wanted = new Substitution.Wanted(
                area,
                area * 1.5,
                Map.of(WireSystem.METRIC, InsulationBuild.IEC_GRADE_2, WireSystem.AWG, InsulationBuild.NEMA_HEAVY),
                3,
                tolerance);
        List<Substitution.Option> options = Substitution.options(wanted, Substitution.Rank.AREA);
        double last = -1;
        for (var o : options) {
            assertThat(Math.abs(o.conductor().areaMm2() / area - 1)).isLessThanOrEqualTo(tolerance + 1e-9);
            assertThat(o.conductor().strands()).isBetween(1, 3);
            assertThat(Math.abs(o.areaDifference())).isGreaterThanOrEqualTo(last);
            assertThat(o.resistanceFactor()).isCloseTo(area / o.conductor().areaMm2(), within(1e-9));
            last = Math.abs(o.areaDifference());
        }
        // Metric sizes are at most 13 % apart in diameter up to 5 mm, so some are always within 15 % of area.
        if (tolerance > 0.15 && area < 18) {
            assertThat(options).isNotEmpty();
        }
    }

    @ParameterizedTest
    @CsvSource({
        "BARE, BARE, BARE",
        "IEC_GRADE_1, NEMA_SINGLE, IEC_GRADE_1",
        "NEMA_SINGLE, NEMA_SINGLE, IEC_GRADE_1",
        "IEC_GRADE_2, NEMA_HEAVY, IEC_GRADE_2",
        "DOUBLE_COTTON, NEMA_HEAVY, IEC_GRADE_2",
        "NEMA_TRIPLE, NEMA_TRIPLE, IEC_GRADE_3",
        "IEC_GRADE_3, NEMA_TRIPLE, IEC_GRADE_3"
    })
    void theBuildLikestToItsOwn(InsulationBuild own, InsulationBuild american, InsulationBuild other) {
        // AWG is made in NEMA builds, the others in IEC grades; 18 AWG is sold in all of them.
        var wire = new RoundWire(WireSizes.awg(18), own, 1.2, Source.arithmetic());
        assertThat(Substitution.Wanted.inPlaceOf(Conductor.of(wire)).builds())
                .containsEntry(WireSystem.AWG, american)
                .containsEntry(WireSystem.METRIC, other)
                .containsEntry(WireSystem.SWG, other);
    }

    @Test
    void inPlaceOfAStrip() {
        var strip = new Conductor.Strip(4, 2, 0, 0.1);
        var wanted = Substitution.Wanted.inPlaceOf(strip);
        assertThat(wanted.builds()).containsEntry(WireSystem.METRIC, InsulationBuild.IEC_GRADE_2);
        assertThat(wanted.areaMm2()).isEqualTo(8);
        assertThat(wanted.mostInHand()).isEqualTo(3);
        assertThat(wanted.within()).isEqualTo(0.1);
    }

    @Test
    void roomIsComparedWithWhatIsWanted() {
        var options = Substitution.options(
                new Substitution.Wanted(1, 2, Map.of(WireSystem.METRIC, InsulationBuild.IEC_GRADE_2), 8, 0.5),
                Substitution.Rank.FIT);
        assertThat(options).isNotEmpty().allSatisfy(o -> {
            assertThat(o.areaDifference()).isCloseTo(o.conductor().areaMm2() - 1, within(1e-12));
            assertThat(o.roomDifference()).isCloseTo(o.conductor().roomMm2() / 2 - 1, within(1e-12));
        });
        assertThat(options).extracting(o -> o.conductor().strands()).contains(1, 8);
    }

    @Test
    void refusesNothingToOffer() {
        assertThatThrownBy(() -> new Substitution.Wanted(1, 1, Map.of(), 3, 0.1))
                .hasMessageContaining("name AWG, METRIC or SWG");
        assertThatThrownBy(() -> new Substitution.Wanted(1, 1, Map.of(WireSystem.SWG, InsulationBuild.BARE), 9, 0.1))
                .hasMessageContaining("1 to 8");
    }
}
