package coilwright.rewind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class CoilCopperTest {
    private static Conductor round(double bareMm) {
        var size = new WireSize(WireSystem.METRIC, "test", bareMm, Source.arithmetic());
        return Conductor.of(RoundWire.of(size, InsulationBuild.BARE));
    }

    /**
     * Rolls-Royce experimental archive, X.1005, 12 July 1921: a 4-pole dynamo with 14 slots, 28 coils of 12 turns, throw
     * 1-4, "19 SWG", 0.041 in; 0.418 ohm between two bars 90 degrees apart at 18 °C.
     *
     * <p>The note gives no core sizes, so the mean turn cannot be had from it. Assumed: two equal paths (the wave has one
     * coil connected lapwise, so they may differ by a coil or two, under 1 % in resistance), bars 90° apart standing for
     * the brushes, pure copper at 1/58, and 0.041 in as the bare diameter.
     */
    @Test
    void dynamoOf1921() {
        Conductor wire = round(0.041 * 25.4);
        double perMetre = Copper.resistance(1, wire.areaMm2(), 18);
        double meanTurn = 0.418 * 4 / 28 / 12 / perMetre * 1000;
        // Then the mean turn must have been 247.8 mm.
        assertThat(meanTurn).isCloseTo(247.8, within(0.5));
        var coil = new CoilCopper(12, wire, MeanTurn.measured(meanTurn), 0);
        assertThat(new ArmatureCopper(coil, 28, 28, 2).brushToBrush(18)).isCloseTo(0.418, within(1e-9));
        assertThat(new ArmatureCopper(coil, 28, 28, 2).brushToBrush(75)).isCloseTo(0.418 * 309.5 / 252.5, within(1e-9));
        // A core 75 mm long and 75 mm over the teeth, as such dynamos have (assumed), gives that within 10 % by the
        // model of a hand-wound coil.
        var core = new CoreSize(75, 75, 14, 22);
        MeanTurn model = MeanTurn.of(core, 14, 3, new EndTurn.HandWound(4));
        assertThat(model.lengthMm()).isCloseTo(meanTurn, within(meanTurn * 0.10));
        // With the nominal 0.040 in the copper is a twentieth less, and the mean turn with it.
        double nominal =
                0.418 * 4 / 28 / 12 / Copper.resistance(1, round(0.040 * 25.4).areaMm2(), 18) * 1000;
        assertThat(nominal / meanTurn).isCloseTo(Math.pow(40.0 / 41, 2), within(1e-9));
    }

    @Test
    void endTurnsByHand() {
        // Two-pole, half the slots: the string is the diameter of the slot pitch circle where no shaft is in the way.
        var thin = new CoreSize(50, 60, 10, 0);
        assertThat(new EndTurn.HandWound(5).lengthMm(thin, 12, 6)).isCloseTo(10 + 50, within(1e-9));
        // Four poles: a chord of 90° on the pitch circle.
        assertThat(new EndTurn.HandWound(0).lengthMm(thin, 12, 3)).isCloseTo(50 / Math.sqrt(2), within(1e-9));
        // Round a shaft of 30 mm: tangents of 20 mm and what is left of half a turn, 180° − 2·acos(15/25).
        var thick = new CoreSize(50, 60, 10, 30);
        assertThat(new EndTurn.HandWound(0).lengthMm(thick, 12, 6))
                .isCloseTo(40 + 15 * (Math.PI - 2 * Math.acos(0.6)), within(1e-9));
        assertThat(MeanTurn.of(thin, 12, 6, new EndTurn.HandWound(5)).lengthMm())
                .isCloseTo(100 + 120, within(1e-9));
    }

    @Test
    void endTurnsOfAFormedCoil() {
        var core = new CoreSize(50, 60, 10, 0);
        double arc = Math.PI * 50 / 4;
        assertThat(new EndTurn.Diamond(8, 0, 12).lengthMm(core, 12, 3)).isCloseTo(28 + arc, within(1e-9));
        assertThat(new EndTurn.Diamond(8, 60, 12).lengthMm(core, 12, 3)).isCloseTo(28 + 2 * arc, within(1e-9));
    }

    @Property
    void aThickerShaftNeverShortensTheTurn(
            @ForAll @DoubleRange(min = 0, max = 20) double shaft,
            @ForAll @DoubleRange(min = 0, max = 19) double more,
            @ForAll @IntRange(min = 1, max = 23) int throwSlots) {
        var hand = new EndTurn.HandWound(3);
        double thin = hand.lengthMm(new CoreSize(50, 60, 10, shaft), 24, throwSlots);
        double thick = hand.lengthMm(new CoreSize(50, 60, 10, shaft + more), 24, throwSlots);
        assertThat(thick).isGreaterThanOrEqualTo(thin - 1e-9);
        // The way back is the same length as the way there.
        assertThat(hand.lengthMm(new CoreSize(50, 60, 10, shaft), 24, 24 - throwSlots))
                .isCloseTo(thin, within(1e-9));
    }

    @Property
    void strandsInHandShareTheResistance(
            @ForAll @IntRange(min = 1, max = 8) int strands, @ForAll @IntRange(min = 1, max = 200) int turns) {
        var wire = RoundWire.of(WireSizes.metric(0.5), InsulationBuild.IEC_GRADE_2);
        var one = new CoilCopper(turns, new Conductor.Round(wire, 1), MeanTurn.measured(200), 60);
        var many = new CoilCopper(turns, new Conductor.Round(wire, strands), MeanTurn.measured(200), 60);
        assertThat(many.resistance(20)).isCloseTo(one.resistance(20) / strands, within(1e-9));
        assertThat(many.massKg()).isCloseTo(one.massKg() * strands, within(1e-9));
        assertThat(many.wireM()).isCloseTo(one.wireM() * strands, within(1e-9));
    }

    @Property
    void brushToBrushIsPathsInParallel(
            @ForAll @IntRange(min = 1, max = 10) int perPath, @ForAll @IntRange(min = 1, max = 6) int halfPaths) {
        int paths = 2 * halfPaths;
        int coils = paths * perPath;
        Assume.that(coils >= 2);
        var coil = new CoilCopper(5, round(1), MeanTurn.measured(300), 0);
        double path = perPath * coil.resistance(20);
        assertThat(new ArmatureCopper(coil, coils, coils, paths).brushToBrush(20))
                .isCloseTo(path / paths, within(1e-12));
    }

    @Test
    void whatToBuyAndDensity() {
        var coil = new CoilCopper(
                10,
                Conductor.of(RoundWire.of(WireSizes.metric(1), InsulationBuild.IEC_GRADE_1)),
                MeanTurn.measured(250),
                100);
        var armature = new ArmatureCopper(coil, 22, 21, 2);
        // The dead coil is wound too.
        assertThat(armature.wireToBuyM(0.1)).isCloseTo(22 * 2.6 * 1.1, within(1e-9));
        assertThat(armature.massToBuyKg(0)).isCloseTo(22 * 2.6 * Math.PI / 4 * 8.89 / 1000, within(1e-9));
        assertThat(armature.currentDensity(10)).isCloseTo(5 / (Math.PI / 4), within(1e-9));
    }

    @Test
    void stripConductor() {
        var strip = new Conductor.Strip(4, 2, 0.5, 0.1);
        assertThat(strip.areaMm2()).isCloseTo(8 - (4 - Math.PI) * 0.25, within(1e-12));
        assertThat(strip.roomMm2()).isCloseTo(4.2 * 2.2, within(1e-12));
        assertThatThrownBy(() -> new Conductor.Strip(4, 2, 1.5, 0)).hasMessageContaining("1 mm");
    }

    @Test
    void refusals() {
        var coil = new CoilCopper(10, round(1), MeanTurn.measured(250), 0);
        assertThatThrownBy(() -> new ArmatureCopper(coil, 20, 20, 3))
                .hasMessageContaining("must be even")
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ArmatureCopper(coil, 19, 20, 2)).hasMessageContaining("at least 20");
        assertThatThrownBy(() -> new CoreSize(50, 60, 25, 15)).hasMessageContaining("leaves 10 mm");
        assertThatThrownBy(() -> new EndTurn.HandWound(1).lengthMm(new CoreSize(50, 60, 10, 0), 12, 12))
                .hasMessageContaining("from 1 to 11");
    }
}
