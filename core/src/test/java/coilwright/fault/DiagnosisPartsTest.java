package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import coilwright.bench.Point;
import coilwright.bench.TestRun;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** The small parts that a diagnosis is made of. */
final class DiagnosisPartsTest {
    @Test
    void sizesRunOverTheRangeInEvenSteps() {
        Candidate turns = Candidate.shortedTurns(4, 0.1);
        assertThat(turns.kind()).isEqualTo("shorted-turns");
        assertThat(turns.prior()).isEqualTo(0.1);
        assertThat(turns.sized()).isTrue();
        assertThat(shorted(turns, 0)).isCloseTo(0.15, within(1e-12));
        assertThat(shorted(turns, 1)).isCloseTo(0.95, within(1e-12));
        // Half way, what is left has the geometric mean of the conductances 1/0.85 and 1/0.05.
        assertThat(shorted(turns, 0.5)).isCloseTo(1 - Math.sqrt(0.85 * 0.05), within(1e-12));

        Candidate joint = Candidate.highResistance(4, 0.2, 0.1);
        assertThat(joint.kind()).isEqualTo("high-resistance");
        assertThat(joint.sized()).isTrue();
        assertThat(ohms(joint, 0)).isCloseTo(0.2 * 0.25, within(1e-12));
        assertThat(ohms(joint, 1)).isCloseTo(0.2 * 50, within(1e-12));
        assertThat(ohms(joint, 0.5)).isCloseTo(0.2 * Math.sqrt(0.25 * 50), within(1e-12));

        Candidate few = Candidate.fewTurns(4, 0.1);
        assertThat(few.kind()).isEqualTo("wrong-turns");
        assertThat(few.sized()).isTrue();
        assertThat(relative(few, 0)).isCloseTo(0.5, within(1e-12));
        assertThat(relative(few, 1)).isCloseTo(0.85, within(1e-12));
        Candidate many = Candidate.manyTurns(4, 0.1);
        assertThat(many.kind()).isEqualTo("wrong-turns");
        assertThat(many.sized()).isTrue();
        assertThat(relative(many, 0)).isCloseTo(1.15, within(1e-12));
        assertThat(relative(many, 1)).isCloseTo(1.5, within(1e-12));

        Candidate ground = Candidate.groundedCoil(4, 0.1);
        assertThat(ground.kind()).isEqualTo("ground");
        assertThat(ground.sized()).isTrue();
        assertThat(along(ground, 0)).isCloseTo(0.02, within(1e-12));
        assertThat(along(ground, 1)).isCloseTo(0.98, within(1e-12));
        assertThat(along(ground, 0.5)).isCloseTo(0.5, within(1e-12));

        var open = new Fault.OpenCoil(4);
        Candidate fixed = Candidate.fixed(open, 0.3);
        assertThat(fixed.kind()).isEqualTo("open-coil");
        assertThat(fixed.sized()).isFalse();
        assertThat(fixed.fault().apply(0.7)).isEqualTo(open);
        var mode = new Place.Mode(4, List.of(turns, fixed, joint));
        assertThat(mode.prior()).isEqualTo(0.3);
        assertThat(new Place.Mode(4, List.of()).prior()).isZero();
    }

    private static double shorted(Candidate c, double share) {
        var f = (Fault.ShortedTurns) c.fault().apply(share);
        assertThat(f.coil()).isEqualTo(4);
        return f.fraction();
    }

    private static double ohms(Candidate c, double share) {
        return ((Fault.HighResistance) c.fault().apply(share)).ohms();
    }

    private static double relative(Candidate c, double share) {
        return ((Fault.WrongTurns) c.fault().apply(share)).relative();
    }

    private static double along(Candidate c, double share) {
        return ((Point.Inside) ((Fault.Ground) c.fault().apply(share)).place()).fraction();
    }

    @Test
    void thePeakOfACurveIsFoundToTheLastSteps() {
        for (double peak : new double[] {0, 0.13, 0.5, 0.77, 1}) {
            var where = new double[1];
            // A worth so steep that no two places are alike before the steps are used up.
            double x = Golden.best(0, 1, 24, v -> v, v -> -1e9 * (v - peak) * (v - peak), where);
            assertThat(x).isCloseTo(peak, within(2e-5));
            assertThat(where[0]).isEqualTo(x);
        }
        assertThat(Golden.<Double>best(2, 5, 24, v -> v, v -> -1e9 * (v - 4) * (v - 4)))
                .isCloseTo(4, within(1e-4));
    }

    @Test
    void theSearchEndsWhereNothingIsGainedAnyMore() {
        List<Double> tried = new ArrayList<>();
        Golden.best(
                0,
                1,
                24,
                v -> {
                    tried.add(v);
                    return v;
                },
                v -> 0.0);
        // Two to begin with, and one after each of three comparisons alike.
        assertThat(tried).hasSize(5);
        assertThat(tried.get(0)).isCloseTo(0.381966, within(1e-6));
        assertThat(tried.get(1)).isCloseTo(0.618034, within(1e-6));
        tried.clear();
        Golden.best(
                0,
                1,
                7,
                v -> {
                    tried.add(v);
                    return v;
                },
                v -> v);
        assertThat(tried).hasSize(9);
        // Alike now and then is not alike again and again.
        tried.clear();
        Golden.best(
                0,
                1,
                7,
                v -> {
                    tried.add(v);
                    return v;
                },
                v -> tried.size() % 2 == 0 ? 0.0 : 1e3 * v);
        assertThat(tried).hasSize(9);
    }

    @Test
    void smallMatricesAreInverted() {
        assertThat(SmallMatrix.inverse(new double[][] {{4}})).isDeepEqualTo(new double[][] {{0.25}});
        assertThat(SmallMatrix.inverse(new double[][] {{0}})).isEmpty();
        assertThat(SmallMatrix.inverse(new double[][] {{1e-12}})).isEmpty();
        assertThat(SmallMatrix.inverse(new double[][] {{-1e-10}})[0][0]).isCloseTo(-1e10, within(1.0));
        double[][] two = SmallMatrix.inverse(new double[][] {{2, 1}, {1, 3}});
        assertThat(two[0]).containsExactly(new double[] {0.6, -0.2}, within(1e-12));
        assertThat(two[1]).containsExactly(new double[] {-0.2, 0.4}, within(1e-12));
        assertThat(SmallMatrix.inverse(new double[][] {{1, 2}, {2, 4}})).isEmpty();
        assertThat(SmallMatrix.inverse(new double[][] {{0, 0}, {1, 2}})).isEmpty();
        assertThat(SmallMatrix.inverse(new double[][] {{1, 2}, {0, 0}})).isEmpty();
        // Nearly singular: the two rows differ by a million-millionth.
        assertThat(SmallMatrix.inverse(new double[][] {{1, 1}, {1, 1 + 1e-12}})).isEmpty();
        assertThat(SmallMatrix.inverse(new double[][] {{1, 1}, {1, 1 + 1e-9}})).hasDimensions(2, 2);
    }

    private static final Winding LAP = Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));

    @Test
    void aTapDrawsFromItsTwoBarsByItsPlaceAlongTheCoil() {
        BenchArmature sound = BenchArmature.sound(LAP, 2);
        Tap bar = Tap.of(sound, Point.bar(5)).orElseThrow();
        assertThat(bar).isEqualTo(new Tap(0, 5, 5, 0, 0));
        Tap tap = Tap.of(sound, new Point.Inside(3, 0.25)).orElseThrow();
        assertThat(tap).isEqualTo(new Tap(3, 3, 4, 0.25, 2));
        double[] volts = new double[13];
        volts[3] = 8;
        volts[4] = 4;
        volts[5] = 1;
        assertThat(tap.of(volts)).isCloseTo(7, within(1e-12));
        assertThat(bar.of(volts)).isEqualTo(1);
        // f(1 − f) of the coil's 2 ohm at the place itself; with another on the coil, the nearer end of each.
        assertThat(tap.common(tap)).isCloseTo(2 * 0.25 * 0.75, within(1e-12));
        Tap further = Tap.of(sound, new Point.Inside(3, 0.9)).orElseThrow();
        assertThat(tap.common(further)).isCloseTo(2 * 0.25 * 0.1, within(1e-12));
        assertThat(further.common(tap)).isCloseTo(2 * 0.25 * 0.1, within(1e-12));
        assertThat(tap.common(Tap.of(sound, new Point.Inside(4, 0.25)).orElseThrow()))
                .isZero();
        assertThat(bar.common(bar)).isZero();
        assertThat(Tap.of(sound, Point.shaft())).isEmpty();
    }

    @Test
    void aCoilThatCarriesNothingOrUnevenlyHasNoTap() {
        BenchArmature sound = BenchArmature.sound(LAP, 2);
        var inside = new Point.Inside(3, 0.25);
        assertThat(Tap.of(new Fault.OpenCoil(3).in(sound), inside)).isEmpty();
        assertThat(Tap.of(new Fault.HighResistance(3, 0.1).in(sound), inside)).isEmpty();
        assertThat(Tap.of(sound.with(sound.coil(3).onBars(OptionalInt.of(3), OptionalInt.empty())), inside))
                .isEmpty();
    }

    @Test
    void sightingsAreToldInWords() {
        assertThat(BenchSighting.TracedCoil.onBars(1, 10).words()).isEqualTo("a coil from bar 1 to bar 10");
        assertThat(new BenchSighting.TracedCoil(OptionalInt.of(2), OptionalInt.of(6), 1, 10).words())
                .isEqualTo("a coil from bar 1 to bar 10 in slots 2 and 6");
        assertThat(new BenchSighting.Continuity(1, 3, true).words()).isEqualTo("bars 1 and 3 joined");
        assertThat(new BenchSighting.Continuity(1, 3, false).words()).isEqualTo("bars 1 and 3 not joined");
        assertThat(new BenchSighting.Resistance(1, 3, 0.12345).words()).isEqualTo("0.1235 between bars 1 and 3");
        assertThat(new BenchSighting.BladeSlots(0).words())
                .isEqualTo("the blade hums over 0 slots with two neighbouring bars joined");
    }

    @Test
    void sightingsThatCannotBeAreRefused() {
        for (OptionalInt slot : List.of(OptionalInt.of(2), OptionalInt.empty())) {
            OptionalInt other = slot.isPresent() ? OptionalInt.empty() : OptionalInt.of(6);
            assertThatThrownBy(() -> new BenchSighting.TracedCoil(slot, other, 1, 10))
                    .hasMessage("a traced coil has one slot only: give both or none");
        }
        for (double ohms : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> new BenchSighting.Resistance(1, 3, ohms))
                    .hasMessage("the resistance between bars 1 and 3 is " + ohms
                            + ", but must be over 0: where the meter shows open, give the two as not joined");
        }
        assertThatThrownBy(() -> new BenchSighting.BladeSlots(-1))
                .hasMessage("the blade hums over -1 slots, but 0 is the fewest");
    }

    private static final BenchTest DROP = new BenchTest.Drop(1, 4, 1);

    private static BenchArmature lap(int bars) {
        return BenchArmature.sound(
                Winding.build(Armature.of(bars, bars, 2), WindingSpec.lap(1, Direction.PROGRESSIVE)), 1);
    }

    private static List<TestRun> run(BenchTest test, PairReading... readings) {
        return List.of(new TestRun(test, List.of(readings)));
    }

    @Test
    void readingsThatTellNothingOrCannotBeAreRefused() {
        BenchArmature sound = lap(6);
        var a = new PairReading(1, 2, 0.2);
        var b = new PairReading(2, 3, 0.2);
        refused(sound, run(DROP, a, b), "there are 2 readings, but a diagnosis needs at least 3: read more pairs");
        assertThat(Diagnosis.of(sound, List.of(new TestRun(DROP, List.of(a, b)), new TestRun(DROP, List.of(a))))
                        .runs())
                .hasSize(2);
        refused(
                sound,
                run(DROP, new PairReading(1, 2, 0), new PairReading(2, 3, 0), new PairReading(3, 4, 0)),
                "every reading is 0: see that the supply is on, the feed touches the bars and the meter's range is"
                        + " right, and read again");
        refused(
                sound,
                run(DROP, a, b, new PairReading(3, 4, Double.NaN)),
                "the reading between 3 and 4 is not a number");
        for (int[] pair : new int[][] {{7, 1}, {1, 7}, {0, 1}, {1, 0}, {3, 3}}) {
            refused(
                    sound,
                    run(DROP, a, b, new PairReading(pair[0], pair[1], 1)),
                    "a reading lies between " + pair[0] + " and " + pair[1] + ", but bars run from 1 to 6");
        }
        var toShaft = new BenchTest.Ground();
        refused(
                sound,
                run(toShaft, new PairReading(1, 0, 1), new PairReading(2, 0, 1), new PairReading(7, 0, 1)),
                "a reading lies between 7 and 0, but bars run from 1 to 6 and the shaft");
        assertThat(Diagnosis.of(
                                sound,
                                run(
                                        toShaft,
                                        new PairReading(1, 0, 1),
                                        new PairReading(2, 0, 1),
                                        new PairReading(6, 0, 1)))
                        .verdict())
                .isEqualTo(Diagnosis.Verdict.FAULTY);
    }

    private static void refused(BenchArmature sound, List<TestRun> runs, String message) {
        assertThatThrownBy(() -> Diagnosis.of(sound, runs))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(message);
    }

    /** Two leads on wrong bars are told apart only where there are bars enough. */
    @Test
    void fewBarsHaveFewWrongBars() {
        for (int bars = 3; bars <= 6; bars++) {
            BenchArmature sound = lap(bars);
            BenchTest test = new BenchTest.Resistance();
            List<Fault> open = List.of(new Fault.OpenCoil(1));
            List<PairReading> read = test.readWalk(Workshop.with(sound, open));
            Diagnosis d = Diagnosis.of(sound, List.of(new TestRun(test, read)));
            List<List<Fault>> told = new ArrayList<>();
            d.ranked().forEach(e -> {
                told.add(e.faults());
                told.addAll(e.sameReadings());
            });
            assertThat(told).as("%d bars", bars).contains(open);
            int mostOff = bars > 4 ? 2 : 1;
            assertThat(told.stream()
                            .flatMap(List::stream)
                            .filter(Fault.WrongBar.class::isInstance)
                            .map(Fault.WrongBar.class::cast)
                            .mapToInt(f -> off(sound, f))
                            .max()
                            .orElse(0))
                    .as("%d bars", bars)
                    .isLessThanOrEqualTo(mostOff);
            assertThat(told.stream().flatMap(List::stream))
                    .noneMatch(f -> f instanceof Fault.BarShort s && s.bar() == s.otherBar());
        }
    }

    private static int off(BenchArmature sound, Fault.WrongBar f) {
        var coil = sound.winding().coil(f.coil());
        int own = (f.top() ? coil.topBar() : coil.bottomBar()).getAsInt();
        int on = Math.floorMod(f.bar() - own, sound.winding().armature().bars());
        return Math.min(on, sound.winding().armature().bars() - on);
    }

    /** With both halves of a lap broken no current flows: all drops are nothing, and over the breaks the meter leaves its scale. */
    @Test
    void anOpenCircuitIsExplainedAsOneAtAnyScale() {
        BenchArmature sound = lap(8);
        BenchTest drop = new BenchTest.Drop(1, 5, 1);
        List<Fault> broken = List.of(new Fault.OpenCoil(2), new Fault.OpenCoil(7));
        List<PairReading> read = drop.readWalk(Workshop.with(sound, broken));
        assertThat(read.stream().filter(r -> Double.isInfinite(r.value()))).hasSize(2);
        assertThat(read.stream().filter(r -> r.value() == 0)).hasSize(6);
        Diagnosis d = Diagnosis.of(sound, List.of(new TestRun(drop, read)));
        assertThat(d.likeliest()).isEqualTo(broken);
        assertThat(d.ranked().get(0).because()).hasSize(2).allSatisfy(b -> {
            assertThat(b.explained()).isEqualTo(b.reading().value());
            assertThat(b.sound()).isZero();
        });
    }
}
