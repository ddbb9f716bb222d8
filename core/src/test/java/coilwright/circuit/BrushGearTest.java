package coilwright.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BrushGearTest {
    private static double centred(double degrees, double period) {
        return degrees - period * Math.rint(degrees / period);
    }

    private static void everyCoilOnce(BrushGear gear) {
        Set<Coil> met = new HashSet<>();
        for (CurrentPath path : gear.paths()) {
            int bar = path.steps().get(0).fromBar();
            for (Step s : path.steps()) {
                assertThat(met.add(s.coil())).isTrue();
                assertThat(s.fromBar()).isEqualTo(bar);
                bar = s.toBar();
            }
            Brush from = gear.brushes().get(path.fromBrush() - 1);
            Brush to = gear.brushes().get(path.toBrush() - 1);
            assertThat(from.positive()).isTrue();
            assertThat(to.positive()).isFalse();
            assertThat(from.bars()).contains(path.bars().get(0));
            assertThat(to.bars()).contains(bar);
        }
        for (Coil c : gear.shorted()) {
            assertThat(met.add(c)).isTrue();
        }
        for (Coil c : gear.idle()) {
            assertThat(met.add(c)).isTrue();
        }
        assertThat(met).hasSameSizeAs(gear.winding().liveCoils());
    }

    @Test
    void pathsAreAsManyAsTheRuleSaysAtEveryRotorPosition() {
        int seen = 0;
        for (Winding w : WindingGraphTest.some(30, 2, 6)) {
            int m = w.sets().get(0).plex().getAsInt();
            double pitch = w.armature().polePitchBars();
            // Room for a brush of m bars and one coil between brushes on every pole.
            if (w.type() == WindingType.FROG_LEG
                    || pitch < m + 2
                    || w.armature().slots() % 4 == 3) {
                continue;
            }
            double bar = w.armature().barAngle();
            for (int i = 0; i < 9; i++) {
                var gear = BrushGear.at(w, i * 0.37 * bar + i * 41, m);
                everyCoilOnce(gear);
                assertThat(gear.idle())
                        .as("%s on %s at %s", w.spec(), w.armature(), gear.rotorAngle())
                        .isEmpty();
                assertThat(gear.paths())
                        .as("%s on %s at %s", w.spec(), w.armature(), gear.rotorAngle())
                        .hasSize(w.parallelPaths().getAsInt());
                seen++;
            }
        }
        assertThat(seen).isGreaterThan(4_000);
    }

    @Test
    void aFrogLegHasTwiceThePathsOfItsLap() {
        for (int pairs = 1; pairs <= 3; pairs++) {
            for (Direction direction : Direction.values()) {
                for (int u = 1; u <= 2; u++) {
                    int slots = pairs * 12;
                    var w = Winding.build(
                            Armature.of(slots, slots * u, 2 * pairs),
                            new WindingSpec.FrogLeg(1, direction, CoilSpan.usual(), 0));
                    for (int i = 0; i < 7; i++) {
                        var gear = BrushGear.at(w, i * 11.3, 1);
                        everyCoilOnce(gear);
                        assertThat(gear.idle()).isEmpty();
                        assertThat(gear.paths())
                                .as("%s on %s at %s", w.spec(), w.armature(), gear.rotorAngle())
                                .hasSize(w.parallelPaths().getAsInt());
                    }
                }
            }
        }
    }

    @Test
    void pathsOfASymmetricalLapAreAlike() {
        var w = Winding.build(Armature.of(24, 24, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        for (int i = 0; i < 24; i++) {
            var gear = BrushGear.at(w, i * 7.5, 1.5);
            assertThat(gear.paths().stream().map(p -> p.steps().size()).distinct())
                    .hasSize(1);
        }
    }

    /** Coil voltage in a sinusoidal field of pole centres at 0, 360/P, ... degrees from straight up, peak 1 a side. */
    private static double volts(Winding w, Step s, double rotorAngle) {
        int p = w.armature().polePairs();
        double top = Math.cos(
                Math.toRadians(p * (w.armature().slotCentre(s.coil().top().slot()) + rotorAngle)));
        double bottom = Math.cos(
                Math.toRadians(p * (w.armature().slotCentre(s.coil().bottom().slot()) + rotorAngle)));
        return s.forward() ? top - bottom : bottom - top;
    }

    /**
     * Brushes at the neutral collect all the voltage there is: K/A coils, each 2·sin(chord) at its peak, averaged over
     * half a wave, 2/π. Brushes anywhere else would collect less, by the cosine of the shift.
     */
    @ParameterizedTest
    @CsvSource({
        "LAP, PROGRESSIVE, 96, 1, 4, 24, 0",
        "LAP, PROGRESSIVE, 96, 1, 4, 20, 5",
        "LAP, RETROGRESSIVE, 96, 1, 4, 23, -9",
        "LAP, PROGRESSIVE, 60, 1, 2, 30, 11",
        "LAP, RETROGRESSIVE, 48, 2, 6, 8, 3",
        "WAVE, PROGRESSIVE, 97, 1, 4, 24, 0",
        "WAVE, RETROGRESSIVE, 97, 1, 4, 22, 13",
        "WAVE, PROGRESSIVE, 101, 1, 6, 16, -4",
        "WAVE, RETROGRESSIVE, 91, 1, 6, 15, 7"
    })
    void brushesAtTheNeutralCollectTheFullVoltage(
            WindingType type, Direction direction, int slots, int u, int poles, int span, int offset) {
        var spec = new WindingSpec.Regular(type, 1, direction, CoilSpan.ofThrow(span), List.of(), offset);
        var w = Winding.build(Armature.of(slots, slots * u, poles), spec);
        double chord = Math.sin(Math.PI / 2 * span / w.armature().polePitchSlots());
        double full = (double) slots * u / w.parallelPaths().getAsInt() * 2 / Math.PI * 2 * chord;
        for (int i = 0; i < 5; i++) {
            var gear = BrushGear.at(w, 13.7 * i, 1);
            for (CurrentPath path : gear.paths()) {
                double sum = path.steps().stream()
                        .mapToDouble(s -> volts(w, s, gear.rotorAngle()))
                        .sum();
                assertThat(Math.abs(sum) / full).isCloseTo(1, within(0.06));
            }
            long signs = gear.paths().stream()
                    .map(path -> Math.signum(path.steps().stream()
                            .mapToDouble(s -> volts(w, s, gear.rotorAngle()))
                            .sum()))
                    .distinct()
                    .count();
            assertThat(signs).as("all paths push the same way").isEqualTo(1);
        }
    }

    @Test
    void aCoilIsShortedWhileItsMiddlePassesAPoleCentre() {
        int seen = 0;
        for (Winding w : WindingGraphTest.some(40, 1, 6)) {
            if (w.type() == WindingType.FROG_LEG
                    || w.sets().get(0).plex().getAsInt() > 1
                    || w.armature().slots() < 24) {
                continue;
            }
            double pole = 360.0 / w.armature().poles();
            for (int i = 0; i < 5; i++) {
                var gear = BrushGear.at(w, 17.3 * i, 1);
                for (Coil c : gear.shorted()) {
                    int span = Math.floorMod(
                            c.bottom().slot() - c.top().slot(), w.armature().slots());
                    double middle = w.armature().slotCentre(c.top().slot())
                            + span * w.armature().slotAngle() / 2
                            + gear.rotorAngle();
                    // In a wave the coils in series between neighbouring brushes of a sign are shorted together, each
                    // off by its share of a bar.
                    assertThat(Math.abs(centred(middle, pole)))
                            .as("coil %d of %s", c.number(), w.spec())
                            .isLessThanOrEqualTo(w.armature().barAngle() * 1.01);
                    seen++;
                }
            }
        }
        assertThat(seen).isGreaterThan(1_000);
    }

    @ParameterizedTest
    @CsvSource({
        // alignment, throw, offset, angle from pole centre: 24 slots, 24 bars, 4 poles, coil 1 under slots 1 and 1 + t.
        "BAR, 5, 2, 0",
        "BAR, 6, 0, -37.5",
        "BAR, 6, 3, 7.5",
        "BAR, 6, 2, -7.5",
        "MICA, 6, 2, 0",
        "MICA, 6, -4, 0",
        "MICA, 4, 1, 0",
        "BAR, 5, -1, 45",
        "BAR, 7, 3, 0"
    })
    void neutralOfKnownLeadThrows(SlotAlignment alignment, int span, int offset, double angle) {
        // Leads symmetrical about the coil bring the brush under the pole's centre, whatever the throw: the middle of
        // bars 1 + offset and 2 + offset at 15°·(offset + ½) (and half a bar more with slot 1 on mica), the coil's
        // middle at 15°·span/2.
        var armature = new Armature(24, 24, 4, alignment);
        var w = Winding.build(
                armature,
                new WindingSpec.Regular(
                        WindingType.LAP, 1, Direction.PROGRESSIVE, CoilSpan.ofThrow(span), List.of(), offset));
        var neutral = Neutral.of(w);

        assertThat(neutral.fromPoleCentre()).isCloseTo(angle, within(1e-9));
        assertThat(neutral.spread()).isZero();
        assertThat(Math.abs(centred(neutral.fromBetweenPoles() - angle - 45, 90)))
                .isLessThan(1e-9);
    }

    @Test
    void oneBarMoreOfLeadOffsetTurnsTheNeutralByOneBar() {
        for (Winding w : WindingGraphTest.some(20, 3, 6)) {
            double pitch = 360.0 / w.armature().poles();
            WindingSpec more = w.spec() instanceof WindingSpec.Regular r
                    ? r.withLeadOffset(1)
                    : new WindingSpec.FrogLeg(
                            ((WindingSpec.FrogLeg) w.spec()).plex(),
                            ((WindingSpec.FrogLeg) w.spec()).direction(),
                            CoilSpan.usual(),
                            1);
            double before = Neutral.of(w).fromPoleCentre();
            double after = Neutral.of(Winding.build(w.armature(), more)).fromPoleCentre();
            assertThat(Math.abs(centred(after - before - w.armature().barAngle(), pitch)))
                    .as("%s on %s", w.spec(), w.armature())
                    .isLessThan(1e-6);
            assertThat(before).isGreaterThan(-pitch / 2).isLessThanOrEqualTo(pitch / 2 + 1e-9);
        }
    }

    @Test
    void brushesCoverTheirWidth() {
        var w = Winding.build(Armature.of(24, 24, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        for (double width : new double[] {0.5, 1, 1.5, 2.5}) {
            for (int i = 0; i < 60; i++) {
                var gear = BrushGear.at(w, 0.9 * i, width);
                assertThat(gear.brushes()).hasSize(4);
                for (Brush b : gear.brushes()) {
                    assertThat(b.bars())
                            .hasSizeBetween(
                                    (int) Math.ceil(width), (int) Math.floor(width) + 1 + (width % 1 == 0 ? 0 : 1));
                    for (int bar = 1; bar <= 24; bar++) {
                        double off = Math.abs(centred(w.armature().barCentre(bar) + gear.rotorAngle() - b.angle(), 360))
                                / 15;
                        assertThat(b.bars().contains(bar)).isEqualTo(off < (width + 1) / 2 - 1e-6);
                    }
                }
            }
        }
    }

    @Test
    void refusesImpossibleBrushes() {
        var w = Winding.build(Armature.of(24, 24, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        assertThatIllegalArgumentException().isThrownBy(() -> BrushGear.at(w, 0, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> BrushGear.at(w, 0, 6.1));
        assertThatIllegalArgumentException().isThrownBy(() -> BrushGear.at(w, 0, Double.NaN));
        assertThatIllegalArgumentException().isThrownBy(() -> BrushGear.at(w, Double.POSITIVE_INFINITY, 1));
        List<ListedCoil> dead = new ArrayList<>(List.of(ListedCoil.dead(1, 1, 7)));
        var none = Winding.build(Armature.of(24, 24, 4), new WindingSpec.Listed(dead));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> BrushGear.at(none, 0, 1))
                .withMessage("no coil has both leads on bars, so no neutral can be given");
        assertThat(BrushGear.leastWidth(w)).isEqualTo(1);
        assertThat(BrushGear.leastBrushes(w)).isEqualTo(4);
    }

    private static final Winding LAP = Winding.build(Armature.of(24, 24, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));

    /** A lap of 24 coils with one put in otherwise. */
    private static Winding lapWith(ListedCoil other) {
        List<ListedCoil> list = new ArrayList<>(LAP.asListed().coils());
        list.set(other.coil() - 1, other);
        return Winding.build(LAP.armature(), new WindingSpec.Listed(list));
    }

    private static List<List<Integer>> coils(BrushGear gear) {
        return gear.paths().stream()
                .map(p -> p.steps().stream().map(s -> s.coil().number()).toList())
                .toList();
    }

    /**
     * Coil 1 lies in slots 1 and 7, its middle at 45°, on bars 1 and 2, their middle at 7.5°: the brushes stand 37.5°
     * before the pole centres, at 322.5°, 52.5°, 142.5° and 232.5°. Bars are 15° apart.
     */
    @Test
    void wherePolesPutTheBrushes() {
        var still = BrushGear.at(LAP, 0, 1);
        assertThat(still.brushes())
                .containsExactly(
                        new Brush(1, true, 322.5, List.of(22, 23)),
                        new Brush(2, false, 52.5, List.of(4, 5)),
                        new Brush(3, true, 142.5, List.of(10, 11)),
                        new Brush(4, false, 232.5, List.of(16, 17)));
        assertThat(BrushGear.at(LAP, 7.5, 1).brushes())
                .extracting(Brush::bars)
                .containsExactly(List.of(22), List.of(4), List.of(10), List.of(16));
        assertThat(still.brushes()).extracting(Brush::sign).containsExactly("+", "−", "+", "−");
        // Slot 1 on mica: bar b at 15°·(b − ½); leads three bars on bring the brush to the middle of bars 4 and 5 for a
        // coil at 45°, 15° past the pole centre.
        var mica = Winding.build(
                new Armature(24, 24, 4, SlotAlignment.MICA),
                WindingSpec.lap(1, Direction.PROGRESSIVE).withLeadOffset(3));
        assertThat(BrushGear.at(mica, 0, 1).brushes())
                .containsExactly(
                        new Brush(1, true, 15, List.of(1, 2)),
                        new Brush(2, false, 105, List.of(7, 8)),
                        new Brush(3, true, 195, List.of(13, 14)),
                        new Brush(4, false, 285, List.of(19, 20)));
    }

    @Test
    void pathsAreNumberedAndToldBarByBar() {
        var gear = BrushGear.at(LAP, 7.5, 1);
        assertThat(gear.paths()).extracting(CurrentPath::number).containsExactly(1, 2, 3, 4);
        assertThat(coils(gear))
                .containsExactly(
                        List.of(21, 20, 19, 18, 17, 16),
                        List.of(22, 23, 24, 1, 2, 3),
                        List.of(9, 8, 7, 6, 5, 4),
                        List.of(10, 11, 12, 13, 14, 15));
        assertThat(gear.paths().get(1).bars()).containsExactly(22, 23, 24, 1, 2, 3, 4);
    }

    @Test
    void aPathGoesThroughACoilConnectedBackwards() {
        var gear = BrushGear.at(lapWith(ListedCoil.of(5, 5, 11, 6, 5)), 7.5, 1);
        assertThat(coils(gear)).isEqualTo(coils(BrushGear.at(LAP, 7.5, 1)));
        assertThat(gear.paths().get(2).steps())
                .filteredOn(Step::forward)
                .extracting(s -> s.coil().number())
                .containsExactly(5);
    }

    @Test
    void whereThreeLeadsMeetThePathKeepsItsSense() {
        // The bottom lead of coil 7 on bar 9 instead of 8: coil 8 hangs on bar 9 by its bottom lead. The neutral moves
        // a
        // little with it, and each brush touches two bars.
        var gear = BrushGear.at(lapWith(ListedCoil.of(7, 7, 13, 7, 9)), 7.5, 1);
        assertThat(coils(gear))
                .containsExactly(
                        List.of(21, 20, 19, 18, 17),
                        List.of(23, 24, 1, 2, 3),
                        List.of(11, 12, 13, 14, 15),
                        List.of(5, 6, 7, 9));
        assertThat(gear.idle()).extracting(Coil::number).containsExactly(8);
    }

    @Test
    void leastBrushesAndWidths() {
        var wave = Winding.build(Armature.of(17, 17, 4), WindingSpec.wave(1, Direction.PROGRESSIVE));
        assertThat(BrushGear.leastBrushes(wave)).isEqualTo(2);
        var duplex = Winding.build(Armature.of(24, 24, 4), WindingSpec.lap(2, Direction.PROGRESSIVE));
        assertThat(BrushGear.leastWidth(duplex)).isEqualTo(2);
        assertThat(BrushGear.leastWidth(Winding.build(LAP.armature(), LAP.asListed())))
                .isEqualTo(1);
        assertThat(BrushGear.at(LAP, 0, 6).brushes()).hasSize(4);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> BrushGear.at(LAP, 0, 6.5))
                .withMessage("brush width is 6.5 bars, but must be over 0 and at most a pole pitch (6.0 bars)");
    }

    @Test
    void aCoilsOwnNeutralLiesWithinHalfAPolePitchOfThePole() {
        for (Winding w : WindingGraphTest.some(12, 3, 6)) {
            double half = 180.0 / w.armature().poles();
            Neutral all = Neutral.of(w);
            double widest = 0;
            for (Coil c : w.liveCoils()) {
                double own = Neutral.ofCoil(w.armature(), c);
                assertThat(own).isGreaterThan(-half - 1e-12).isLessThanOrEqualTo(half + 1e-9);
                widest = Math.max(widest, Math.abs(centred(own - all.fromPoleCentre(), 2 * half)));
            }
            assertThat(all.spread()).isCloseTo(widest, within(1e-9));
            // Where each slot holds one coil side a layer, every coil has the same neutral, to the last digit.
            if (w.sidesPerSlot() == 1) {
                assertThat(all.spread()).isZero();
            }
            assertThat(all.fromPoleCentre()).matches(x -> x == 0 || Math.abs(x) > 1e-6);
        }
    }

    /** A list tells no rule: its circuits are traced, and come to those of the winding it was made from. */
    @Test
    void pathsAndCircuitsOfAListAreTraced() {
        var duplex = Winding.build(Armature.of(24, 24, 4), WindingSpec.lap(2, Direction.PROGRESSIVE));
        assertThat(Circuits.closures(duplex)).isEqualTo(2);
        assertThat(Circuits.parallelPaths(duplex)).hasValue(8);
        var listed = Winding.build(duplex.armature(), duplex.asListed());
        assertThat(Circuits.closures(listed)).isEqualTo(2);
        assertThat(Circuits.parallelPaths(Winding.build(LAP.armature(), LAP.asListed())))
                .hasValue(4);
        var dead = Winding.build(Armature.of(24, 24, 4), new WindingSpec.Listed(List.of(ListedCoil.dead(1, 1, 7))));
        assertThat(Circuits.closures(dead)).isZero();
        assertThat(Circuits.parallelPaths(dead)).isEmpty();
    }
}
