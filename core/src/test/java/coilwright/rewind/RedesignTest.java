package coilwright.rewind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.winding.Armature;
import coilwright.winding.WindingType;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class RedesignTest {
    private static final SlotShape SLOT = new SlotShape.RoundBottom(8, 20);
    private static final SlotInsulation INSULATION = new SlotInsulation(0.25, 0.3, 1.5);

    private static Machine machine(int turns, double bareMm, int paths, double volts, double rpm) {
        var size = new WireSize(WireSystem.METRIC, "test", bareMm, Source.arithmetic());
        var wire = RoundWire.of(size, InsulationBuild.IEC_GRADE_2);
        var coil = new CoilCopper(turns, Conductor.of(wire), MeanTurn.measured(240), 80);
        return new Machine(
                4,
                28,
                new ArmatureCopper(coil, 28, 28, paths),
                volts,
                rpm,
                OptionalDouble.of(12),
                Optional.of(new Machine.Slot(SLOT, INSULATION, 2)));
    }

    /** U. A. Bakshi and M. V. Bakshi, Electrical Machines I / DC Machines, examples 1.1 and 1.2. */
    @Test
    void publishedEmf() {
        assertThat(Emf.volts(4, 0.07, 440, 900, 4)).isCloseTo(462, within(1e-9));
        assertThat(Emf.volts(4, 0.07, 440, 900, 2)).isCloseTo(924, within(1e-9));
        assertThat(Emf.volts(4, 0.021, 2 * 42 * 8, 1120, 4)).isCloseTo(263.424, within(1e-9));
        assertThat(Emf.volts(4, 0.021, 672, 560, 2)).isCloseTo(263.424, within(1e-9));
    }

    @Property
    void fluxAndEmfAreInverse(
            @ForAll @DoubleRange(min = 0.01, max = 1) double flux,
            @ForAll @IntRange(min = 1, max = 10) int pairs,
            @ForAll @DoubleRange(min = 50, max = 20000) double rpm) {
        double volts = Emf.volts(2 * pairs, flux, 672, rpm, 2);
        assertThat(Emf.flux(2 * pairs, volts, 672, rpm, 2)).isCloseTo(flux, within(flux * 1e-12));
    }

    /**
     * Twice the turns at half the area: the same fill and mass, four times the resistance; a rewinding discussion prints
     * the reverse case (half the volts: half the turns, double the area, a quarter of the resistance).
     */
    @Property(tries = 60)
    void scalingLaws(
            @ForAll @IntRange(min = 2, max = 30) int turns,
            @ForAll @IntRange(min = 2, max = 4) int factor,
            @ForAll @DoubleRange(min = 0.3, max = 0.9) double bare) {
        Machine before = machine(turns, bare, 2, 6, 1500);
        Redesign plan = Redesign.plan(before, Redesign.Target.same().withVolts(6.0 * factor));
        Machine after = plan.after();
        assertThat(after.copper().coil().turns()).isEqualTo(factor * turns);
        assertThat(plan.idealAreaMm2())
                .isCloseTo(before.copper().coil().conductor().areaMm2() / factor, within(1e-9));
        assertThat(plan.emfAtSpeed()).isCloseTo(6.0 * factor, within(1e-9));
        // Leads keep their length, so the law is exact for the turns alone.
        double leads = before.copper().coil().leadsMm() / 1000;
        double turnsOnly = 1 - leads / before.copper().coil().lengthM();
        double turnsOnlyAfter = 1 - leads / after.copper().coil().lengthM();
        assertThat(after.copper().massKg() * turnsOnlyAfter)
                .isCloseTo(before.copper().massKg() * turnsOnly, within(1e-9));
        assertThat(after.copper().brushToBrush(75) * turnsOnlyAfter)
                .isCloseTo(factor * factor * before.copper().brushToBrush(75) * turnsOnly, within(1e-9));
        assertThat(after.fill().orElseThrow().copperFactor())
                .isCloseTo(before.fill().orElseThrow().copperFactor(), within(1e-9));
        assertThat(after.fill().orElseThrow().roomMm2())
                .isCloseTo(before.fill().orElseThrow().roomMm2(), within(1e-9));
        assertThat(after.amps().orElseThrow()).isCloseTo(12.0 / factor, within(1e-9));
        assertThat(after.currentDensity().orElseThrow())
                .isCloseTo(before.currentDensity().orElseThrow(), within(1e-9));
    }

    @Test
    void sixToTwelveAndBack() {
        Machine six = machine(6, 1.2, 2, 6, 1450);
        Redesign up = Redesign.plan(six, Redesign.Target.same().withVolts(12));
        assertThat(up.after().copper().coil().turns()).isEqualTo(12);
        assertThat(up.after().meanVoltsBetweenBars()).isCloseTo(2 * six.meanVoltsBetweenBars(), within(1e-12));
        assertThat(up.cautions()).extracting(Caution::id).contains("field", "regulator", "brushes");
        Redesign back = Redesign.plan(up.after(), Redesign.Target.same().withVolts(6));
        assertThat(back.after().copper().coil().turns()).isEqualTo(6);
        assertThat(back.idealAreaMm2())
                .isCloseTo(six.copper().coil().conductor().areaMm2(), within(1e-9));
        assertThat(back.after().copper().brushToBrush(20))
                .isCloseTo(six.copper().brushToBrush(20), within(1e-9));
        // A wire that is sold: 0.850 mm is the preferred size next to 1.2/√2 = 0.849 mm.
        Conductor ideal = up.after().copper().coil().conductor();
        var options = Substitution.options(
                new Substitution.Wanted(
                        ideal.areaMm2(),
                        ideal.roomMm2(),
                        Map.of(WireSystem.METRIC, InsulationBuild.IEC_GRADE_2),
                        1,
                        0.1),
                Substitution.Rank.AREA);
        assertThat(options.get(0).conductor().wire().size().label()).isEqualTo("0.850 mm");
    }

    @Test
    void sixToTwelveByThreeGaugeNumbers() {
        var wire = RoundWire.of(WireSizes.awg(16), InsulationBuild.NEMA_HEAVY);
        Machine six = machine(6, 1.2, 2, 6, 1450);
        Machine awg = new Machine(
                4,
                28,
                new ArmatureCopper(six.copper().coil().withConductor(Conductor.of(wire)), 28, 28, 2),
                6,
                1450,
                OptionalDouble.empty(),
                Optional.empty());
        Redesign up = Redesign.plan(awg, Redesign.Target.same().withVolts(12));
        assertThat(WireSizes.nearest(WireSystem.AWG, Math.sqrt(up.idealAreaMm2() * 4 / Math.PI))
                        .label())
                .isEqualTo("19 AWG");
        // No current and no slot known: nothing is said of brushes, density or fill.
        assertThat(up.cautions()).extracting(Caution::id).containsExactly("field", "regulator");
    }

    /** As far as voltage between bars goes, the second coil on each bar of a frog-leg winding is an equalizer. */
    @Test
    void voltsBetweenBarsGoByTheBarsNotByTheCoils() {
        Machine lap = machine(1, 1.2, 4, 48, 2000);
        Machine frogLeg = new Machine(
                4,
                28,
                new ArmatureCopper(lap.copper().coil(), 56, 56, 8),
                48,
                2000,
                OptionalDouble.of(200),
                Optional.empty());
        // 48 V over the 7 bars of a pole pitch.
        assertThat(frogLeg.meanVoltsBetweenBars()).isCloseTo(48.0 / 7, within(1e-12));
        // 120 V over 7 bars are 17.1 V, over the 15 V that are usual at most.
        assertThat(Redesign.plan(frogLeg, Redesign.Target.same().withVolts(120)).cautions())
                .extracting(Caution::id)
                .contains("bar-volts");
    }

    @Test
    void turnsAreWholeAndTheResultIsTold() {
        Machine before = machine(7, 0.8, 2, 6, 1500);
        Redesign plan = Redesign.plan(before, Redesign.Target.same().withVolts(8));
        assertThat(plan.idealTurns()).isCloseTo(28.0 / 3, within(1e-12));
        assertThat(plan.after().copper().coil().turns()).isEqualTo(9);
        assertThat(plan.emfAtSpeed()).isCloseTo(6.0 * 9 / 7, within(1e-9));
        assertThat(plan.rpmForVolts()).isCloseTo(1500 * (28.0 / 3) / 9, within(1e-9));
        assertThat(plan.cautions())
                .filteredOn(c -> c.id().equals("whole-turns"))
                .singleElement()
                .extracting(Caution::text)
                .asString()
                .contains("9.333", "with 9", "7.714 V instead of 8 V");
        Redesign ten = Redesign.plan(before, Redesign.Target.same().withVolts(8).withTurns(10));
        assertThat(ten.emfAtSpeed()).isCloseTo(6.0 * 10 / 7, within(1e-9));
    }

    @Test
    void fasterMeansFewerTurnsAndTighterBands() {
        Redesign plan = Redesign.plan(
                machine(12, 0.8, 2, 12, 1500), Redesign.Target.same().withRpm(3000));
        assertThat(plan.after().copper().coil().turns()).isEqualTo(6);
        assertThat(plan.cautions()).extracting(Caution::id).contains("speed").doesNotContain("field", "regulator");
    }

    /** Lap to wave on four poles: twice the voltage, half the current (example 1.1 of Bakshi). */
    @Test
    void sameCoilsLapToWave() {
        List<OtherWinding> all = OtherWinding.on(Armature.of(21, 21, 4), 4);
        assertThat(all).extracting(OtherWinding::type).contains(WindingType.LAP, WindingType.WAVE);
        OtherWinding wave = all.stream()
                .filter(w -> w.type() == WindingType.WAVE && w.candidate().plex() == 1)
                .findFirst()
                .orElseThrow();
        assertThat(wave.voltsFactor()).isEqualTo(2);
        assertThat(wave.ampsFactor()).isEqualTo(0.5);
        assertThat(wave.resistanceFactor()).isEqualTo(4);
        // No simplex wave fits 20 bars on four poles.
        assertThat(OtherWinding.on(Armature.of(20, 20, 4), 4))
                .noneMatch(w -> w.type() == WindingType.WAVE && w.candidate().plex() == 1);
        // The rewind that keeps the voltage halves the turns instead.
        Redesign keep = Redesign.plan(
                machine(12, 0.8, 4, 12, 1500), Redesign.Target.same().withPaths(2));
        assertThat(keep.after().copper().coil().turns()).isEqualTo(6);
        assertThat(keep.cautions()).extracting(Caution::id).contains("winding-type");
        assertThat(keep.emfAtSpeed()).isCloseTo(12, within(1e-9));
    }

    @Test
    void warnsOfWireThatDoesNotGoIn() {
        Machine before = machine(12, 0.8, 2, 12, 1500);
        Conductor thick = Conductor.of(RoundWire.of(WireSizes.metric(1.8), InsulationBuild.IEC_GRADE_2));
        Redesign plan = Redesign.plan(before, Redesign.Target.same().withConductor(thick));
        assertThat(plan.cautions()).extracting(Caution::id).contains("does-not-fit");
        assertThat(plan.after().fill().orElseThrow().fits()).isFalse();
        Conductor heavy = Conductor.of(RoundWire.of(WireSizes.awg(7), InsulationBuild.NEMA_HEAVY));
        assertThat(Redesign.plan(before, Redesign.Target.same().withConductor(heavy))
                        .cautions())
                .extracting(Caution::id)
                .contains("heavy-wire");
    }

    private static List<String> cautions(Machine before, Redesign.Target target, String id) {
        return Redesign.plan(before, target).cautions().stream()
                .filter(c -> c.id().equals(id))
                .map(Caution::text)
                .toList();
    }

    @Test
    void cautionsGiveTheirNumbers() {
        Machine before = machine(12, 0.8, 2, 12, 1500);
        Redesign.Target twice = Redesign.Target.same().withVolts(24);
        assertThat(cautions(before, twice, "field"))
                .containsExactly(
                        "voltage changes by a factor of 2: a shunt field needs that factor in turns and its inverse in"
                                + " wire area for the same ampere-turns, or a reconnection; a series field goes by the current");
        assertThat(cautions(before, twice, "regulator"))
                .containsExactly("regulator, cut-out and battery must suit 24 V: a regulator for 12 V will not do");
        assertThat(cautions(before, twice, "brushes"))
                .containsExactly(
                        "armature current goes from 12 to 6 A at the same current density: brush area, grade and leads"
                                + " must suit");
        assertThat(cautions(before, Redesign.Target.same().withRpm(3000), "speed"))
                .containsExactly(
                        "speed rises from 1500 to 3000 r/min: the pull on banding and wedges grows by a factor of 4;"
                                + " check banding, balance, bearings and commutator");
        assertThat(cautions(before, Redesign.Target.same().withRpm(1000), "speed"))
                .isEmpty();
        // Two paths become four: 24 turns, twice the current for each path of half the area.
        Redesign paths = Redesign.plan(before, Redesign.Target.same().withPaths(4));
        assertThat(paths.after().copper().coil().turns()).isEqualTo(24);
        assertThat(paths.after().amps().orElseThrow()).isCloseTo(12, within(1e-9));
        assertThat(cautions(before, Redesign.Target.same().withPaths(4), "winding-type"))
                .containsExactly(
                        "parallel paths change from 2 to 4: lead throw, number of live brush arms and equalizers change"
                                + " with them");
        assertThat(cautions(before, Redesign.Target.same().withPaths(4), "brushes"))
                .isEmpty();
    }

    @Test
    void currentUpByMoreThanATenthAsksForOtherBrushes() {
        Machine before = machine(12, 1.0, 2, 12, 1500);
        for (double thicker : new double[] {1.06, 0.94}) {
            assertThat(cautions(before, Redesign.Target.same().withConductor(round(thicker)), "brushes"))
                    .as("%s mm", thicker)
                    .hasSize(1);
        }
        for (double alike : new double[] {1.04, 0.96}) {
            assertThat(cautions(before, Redesign.Target.same().withConductor(round(alike)), "brushes"))
                    .as("%s mm", alike)
                    .isEmpty();
        }
    }

    private static Conductor round(double bareMm) {
        var size = new WireSize(WireSystem.METRIC, "test", bareMm, Source.arithmetic());
        return Conductor.of(RoundWire.of(size, InsulationBuild.IEC_GRADE_2));
    }

    @Test
    void fillDensityAndBarVoltsOutOfTheUsual() {
        // 28 bars and 4 poles: 250 V are 35.7 V from bar to bar, 125 V half of that.
        Machine low = machine(12, 0.8, 2, 125, 1500);
        assertThat(cautions(low, Redesign.Target.same().withVolts(250), "bar-volts"))
                .containsExactly("mean voltage between bars is 35.71 V; usual is "
                        + Limit.of("bar-volts").words() + ": more bars would be needed");
        // No worse than it was.
        assertThat(cautions(
                        machine(12, 0.8, 2, 250, 1500), Redesign.Target.same().withRpm(1600), "bar-volts"))
                .isEmpty();
        Limit fill = Limit.of("fill-usual");
        Machine before = machine(12, 0.8, 2, 12, 1500);
        Redesign full = Redesign.plan(before, Redesign.Target.same().withConductor(round(1.33)));
        double now = full.after().fill().orElseThrow().fill();
        assertThat(full.after().fill().orElseThrow().fits()).isTrue();
        assertThat(now).isGreaterThan(fill.high().orElseThrow());
        assertThat(cautions(before, Redesign.Target.same().withConductor(round(1.33)), "slot-fill"))
                .containsExactly("slot fill is " + Format.percent(now) + "; above "
                        + Format.percent(fill.high().orElseThrow()) + " is hard to wind");
        assertThat(cautions(before, Redesign.Target.same(), "slot-fill")).isEmpty();
        // 12 A in two paths of 0.503 mm²: 11.94 A/mm².
        Limit density = Limit.of("density-continuous");
        assertThat(cautions(before, Redesign.Target.same(), "current-density"))
                .containsExactly("current density is 11.94 A/mm²; usual for continuous duty is "
                        + Format.number(density.low().orElseThrow()) + " to "
                        + Format.number(density.high().orElseThrow()) + " A/mm²");
        assertThat(cautions(machine(6, 1.8, 2, 12, 1500), Redesign.Target.same(), "current-density"))
                .isEmpty();
    }

    @Test
    void refusals() {
        Machine before = machine(12, 0.8, 2, 12, 1500);
        assertThatThrownBy(() -> Redesign.plan(before, Redesign.Target.same().withVolts(0)))
                .hasMessageContaining("new voltage is 0 V");
        assertThatThrownBy(() -> Redesign.plan(before, Redesign.Target.same().withPaths(3)))
                .hasMessageContaining("even");
        assertThatThrownBy(() -> Redesign.plan(before, Redesign.Target.same().withVolts(1e9)))
                .hasMessageContaining("turns per coil is 1000000000, but must be from 1 to 100000");
        assertThatThrownBy(() -> Redesign.plan(before, Redesign.Target.same().withTurns(0)))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
