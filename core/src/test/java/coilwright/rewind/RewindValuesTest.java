package coilwright.rewind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.rewind.Quantities.Kind;
import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Ranges, and small sums whose result is known. */
class RewindValuesTest {
    @Test
    void ranges() {
        assertThat(Require.positive("speed", 7, "r/min")).isEqualTo(7);
        assertThatThrownBy(() -> Require.positive("speed", 0, "r/min"))
                .hasMessage("speed is 0 r/min, but must be over 0: measure it again");
        assertThatThrownBy(() -> Require.positive("ratio", Double.POSITIVE_INFINITY, ""))
                .hasMessage("ratio is no number, but must be over 0: measure it again");
        Require.most("speed", 8, 8, "r/min");
        assertThatThrownBy(() -> Require.most("speed", 8.5, 8, "r/min"))
                .hasMessage("speed is 8.5 r/min, but may be at most 8 r/min: check the unit");
        Require.notNegative("neck", 0, "mm");
        for (double wrong : new double[] {-1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> Require.notNegative("neck", wrong, "mm"))
                    .hasMessageEndingWith(" mm, but must be 0 (none) or more");
        }
        Require.atLeast("bars", 2, 2);
        assertThatThrownBy(() -> Require.atLeast("bars", 1, 2)).hasMessage("bars is 1, but must be at least 2");
        Require.inRange("sides", 1, 1, 20);
        Require.inRange("sides", 20, 1, 20);
        for (int wrong : new int[] {0, 21}) {
            assertThatThrownBy(() -> Require.inRange("sides", wrong, 1, 20))
                    .hasMessage("sides is %s, but must be from 1 to 20: count again", wrong);
        }
        Require.temperature("ambient", -234.4);
        Require.temperature("ambient", 999.9);
        for (double wrong : new double[] {-234.5, 1000, Double.NaN}) {
            assertThatThrownBy(() -> Require.temperature("ambient", wrong))
                    .hasMessageEndingWith(" °C, but must be over -234.5 °C and under 1000 °C: give degrees Celsius");
        }
    }

    @Test
    void machinesHavePolesInPairsAndACurrent() {
        var copper = new ArmatureCopper(
                new CoilCopper(
                        4,
                        Conductor.of(RoundWire.of(WireSizes.metric(0.8), InsulationBuild.BARE)),
                        MeanTurn.measured(200),
                        0),
                28,
                28,
                2);
        assertThat(machine(2, copper, 12).meanVoltsBetweenBars()).isCloseTo(28 * 2 / 28.0, within(1e-12));
        for (int wrong : new int[] {0, 3}) {
            assertThatThrownBy(() -> machine(wrong, copper, 12))
                    .hasMessage("poles is %s, but must be even and at least 2", wrong);
        }
        assertThatThrownBy(() -> machine(4, copper, 0))
                .hasMessage("armature current is 0 A, but must be over 0: measure it again");
        // A tenth for waste.
        assertThat(copper.massToBuyKg(0.1)).isCloseTo(1.1 * copper.massKg(), within(1e-12));
        assertThat(copper.wireToBuyM(0.1)).isCloseTo(1.1 * 28 * 4 * 0.2, within(1e-9));
    }

    private static Machine machine(int poles, ArmatureCopper copper, double amps) {
        return new Machine(poles, 28, copper, 28, 1500, OptionalDouble.of(amps), Optional.empty());
    }

    @Test
    void emfNeedsPolesConductorsAndPaths() {
        assertThat(Emf.meanVoltsBetweenBars(120, 4, 48)).isEqualTo(10);
        assertThatThrownBy(() -> Emf.volts(1, 0.1, 10, 100, 2)).hasMessage("poles is 1, but must be at least 2");
        assertThatThrownBy(() -> Emf.volts(2, 0.1, 1, 100, 2)).hasMessage("conductors is 1, but must be at least 2");
        assertThatThrownBy(() -> Emf.flux(2, 12, 10, 100, 1)).hasMessage("parallel paths is 1, but must be at least 2");
        assertThatThrownBy(() -> Emf.meanVoltsBetweenBars(12, 1, 10)).hasMessage("poles is 1, but must be at least 2");
        assertThatThrownBy(() -> Emf.meanVoltsBetweenBars(12, 2, 1)).hasMessage("bars is 1, but must be at least 2");
    }

    @Test
    void evennessAboveAndBelowTheMean() {
        Evenness e = Evenness.of(List.of(9.0, 10.0, 10.0, 11.5, 9.5));
        assertThat(e.mean()).isEqualTo(10);
        assertThat(e.highest()).isCloseTo(15, within(1e-12));
        assertThat(e.lowest()).isCloseTo(10, within(1e-12));
        assertThat(e.deviations()).containsExactly(-10.0, 0.0, 0.0, 15.0, -5.0);
        assertThat(e.verdicts())
                .extracting(v -> v.limit().quantity(), AcceptanceVerdict::value)
                .contains(
                        org.assertj.core.groups.Tuple.tuple("bar-to-bar", 15.0),
                        org.assertj.core.groups.Tuple.tuple("bar-to-bar-high", 15.0),
                        org.assertj.core.groups.Tuple.tuple("bar-to-bar-low", 10.0));
        assertThatThrownBy(() -> Evenness.of(List.of()))
                .hasMessage("there are no readings to compare: give at least one");
    }

    @Test
    void formsOfEndTurns() {
        assertThat(new EndTurn.HandWound(5).model()).startsWith("hand wound: overhang, then taut from slot to slot");
        assertThat(new EndTurn.Diamond(5, 45, 3).model())
                .isEqualTo(
                        "formed coil: straight parts, legs along the slot pitch circle at 45° to the end face, nose");
        assertThat(new EndTurn.Diamond(5, 0, 3).legDegrees()).isZero();
        for (double wrong : new double[] {-1, 80, Double.NaN}) {
            assertThatThrownBy(() -> new EndTurn.Diamond(5, wrong, 3))
                    .hasMessageEndingWith("°, but must be from 0 to under 80: measure it from the core's end face");
        }
    }

    @Test
    void stripsAreNamedAndRounded() {
        var strip = new Conductor.Strip(4, 2, 1, 0.1);
        assertThat(strip.label()).isEqualTo("strip 4 × 2 mm");
        assertThat(strip.areaMm2()).isCloseTo(8 - (4 - Math.PI), within(1e-12));
        assertThatThrownBy(() -> new Conductor.Strip(4, 2, 1.01, 0.1))
                .hasMessage("corner radius is 1.01 mm, but may be half the strip's thinner side at most, 1 mm");
        assertThatThrownBy(() -> new Conductor.Strip(2, 4, 1.01, 0.1)).hasMessageContaining("at most, 1 mm");
    }

    @ParameterizedTest
    @CsvSource({
        "1/32 in, 0.79375",
        "+1/32 in, 0.79375",
        "-1/32 in, -0.79375",
        "1 1/2 in, 38.1",
        "-1 1/2 in, -38.1",
        "+1 1/2 in, 38.1",
        "2.5 mm, 2.5"
    })
    void lengthsInFractions(String text, double mm) {
        assertThat(Quantities.parse(Kind.LENGTH, text)).isCloseTo(mm, within(1e-12));
    }

    @Test
    void numbersOutOfRange() {
        assertThatThrownBy(() -> Quantities.parse(Kind.LENGTH, "1/0 mm"))
                .hasMessageStartingWith("\"1/0 mm\" is out of range: write ");
        assertThatThrownBy(() -> Quantities.parse(Kind.LENGTH, "0/0 mm")).hasMessageContaining(" is out of range");
        assertThat(Format.number(0)).isEqualTo("0");
        assertThat(Format.number(Double.NaN)).isEqualTo("no number");
        assertThat(Format.percent(0)).isEqualTo("0 %");
        assertThat(Format.percent(0.4567)).isEqualTo("45.7 %");
    }

    @Test
    void sumsOfCopperNeedValuesInRange() {
        var coil = new CoilCopper(
                4, Conductor.of(RoundWire.of(WireSizes.metric(0.8), InsulationBuild.BARE)), MeanTurn.measured(200), 0);
        assertThatThrownBy(() -> new ArmatureCopper(coil, 28, 1, 2)).hasMessageContaining("live coils is 1");
        var copper = new ArmatureCopper(coil, 28, 28, 2);
        assertThatThrownBy(() -> copper.wireToBuyM(-0.1)).hasMessageStartingWith("allowance is -0.1, ");
        assertThatThrownBy(() -> copper.massToBuyKg(-0.1)).hasMessageStartingWith("allowance is -0.1, ");
        assertThatThrownBy(() -> copper.currentDensity(-1)).hasMessageStartingWith("armature current is -1 A, ");
        assertThatThrownBy(() -> new EndTurn.HandWound(-1)).hasMessageStartingWith("overhang is -1 mm, ");
    }

    @Test
    void whereValuesComeFrom() {
        assertThat(Source.practice()).isEqualTo(new Source("common practice", "", Trust.FROM_MEMORY));
        assertThat(Source.practice().cite()).isEqualTo("common practice (from memory)");
        assertThat(new Source("Tables", "1920", Trust.READ).cite()).isEqualTo("Tables, 1920 (read in the source)");
        assertThat(Limit.of("ir-ieee43-2000").source().edition()).isEqualTo("2000");
        assertThat(Limit.of("ir-ieee43-2000").source().trust()).isEqualTo(Trust.READ);
    }

    @Test
    void slotsAsDeepAsTheCoreAreRefused() {
        assertThat(new CoreSize(50, 60, 15, 29).slotPitchCircleMm()).isEqualTo(45);
        assertThatThrownBy(() -> new CoreSize(50, 60, 15, 30))
                .hasMessageContaining("leaves 30 mm for a shaft of 30 mm: measure the diameter and the depth again");
    }

    @Test
    void waysOfWindingThatDoNotSuit() {
        var frogLeg = Winding.build(
                Armature.of(24, 24, 4), new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.usual(), 0));
        assertThat(WindingWay.COIL_BY_COIL.refusal(frogLeg))
                .hasValue("a frog-leg winding has four layers and is put in as formed coils, not wound by hand: choose"
                        + " formed-coils");
        assertThat(WindingWay.FORMED_COILS.refusal(frogLeg)).isEmpty();
        var fourPoles = Winding.build(Armature.of(24, 24, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        assertThat(WindingWay.OPPOSITE_PAIRS.refusal(fourPoles))
                .hasValue("with 4 poles the coils span less than half the core, and opposite pairs suit two poles only:"
                        + " choose coil-by-coil or formed-coils");
        var three = Winding.build(Armature.of(3, 3, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
        assertThat(WindingWay.OPPOSITE_PAIRS.refusal(three))
                .hasValue("with 3 slots no two coils lie opposite each other: choose coil-by-coil");
        var four = Winding.build(Armature.of(4, 4, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
        assertThat(WindingWay.OPPOSITE_PAIRS.refusal(four)).isEmpty();
        assertThat(WindingWay.OPPOSITE_PAIRS.words()).isEqualTo("by hand, in opposite pairs");
    }

    @Test
    void limitsHaveAnEnd() {
        Source source = Source.practice();
        assertThatThrownBy(() ->
                        new Limit("own", "q", "a", OptionalDouble.empty(), OptionalDouble.empty(), "mm", source, ""))
                .hasMessage("limit own has neither a least nor a greatest value: give one");
        var between = new Limit("own", "q", "a", OptionalDouble.of(1), OptionalDouble.of(2), "mm", source, "");
        assertThat(between.words()).isEqualTo("1 to 2 mm");
        assertThat(new Limit("own", "q", "a", OptionalDouble.of(1), OptionalDouble.empty(), "mm", source, "").words())
                .isEqualTo("not under 1 mm");
        assertThat(new Limit("own", "q", "a", OptionalDouble.empty(), OptionalDouble.of(2), "mm", source, "").words())
                .isEqualTo("not over 2 mm");
        assertThatThrownBy(() -> Limit.of("none"))
                .hasMessageStartingWith("there is no limit \"none\": choose one of ir-");
    }
}
