package coilwright.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.BenchTest.Pair;
import coilwright.fault.Fault;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The growler with a meter: where the probes go, and what the flux of two faces gives. */
class GrowlerTest {
    private static final double EXACT = 1e-9;
    private static final List<Growler> GROWLERS =
            List.of(Growler.USUAL, new Growler(40, 50), new Growler(45, 90), new Growler(30, 20), new Growler(60, 60));

    private static GrowlerMeter meter(Winding w, Growler g) {
        return GrowlerMeter.of(BenchArmature.sound(w, 1), g);
    }

    private static Winding lap(int slots, int bars, int poles) {
        return Winding.build(Armature.of(slots, bars, poles), WindingSpec.lap(1, Direction.PROGRESSIVE));
    }

    private static double apart(double a, double b) {
        double d = Math.abs(a - b) % 360;
        return Math.min(d, 360 - d);
    }

    /** Where a coil's other side stands while the probes are at its bars' place, armature turned. */
    private static double otherSide(Winding w, Pair p, Coil coil, double clock) {
        return clock
                - GrowlerMeter.middle(w.armature(), p.from(), p.to())
                + w.armature().slotCentre(coil.bottom().slot());
    }

    /**
     * Common practice: on an armature whose coils go about a quarter turn, the probes find their reading about a quarter
     * turn from where the coil's other side lies. Here "about" is within half a bar, half a slot and the half degree to
     * which the best place is given. A quarter turn further on, off the side that the growler does not reach, the pair
     * reads nothing.
     */
    @Test
    void probesFindTheirReadingAQuarterTurnFromTheOtherSide() {
        for (int[] sizes : new int[][] {{16, 16}, {24, 24}, {20, 20}, {21, 21}, {16, 32}, {14, 42}}) {
            Winding w = lap(sizes[0], sizes[1], 4);
            Armature a = w.armature();
            double clock = meter(w, Growler.USUAL).bestClock();
            double itsThrow = w.pitches().orElseThrow().backSpan() * 360.0 / w.positions();
            double about = a.barAngle() / 2 + (a.slotAngle() - a.barAngle()) + Math.abs(90 - itsThrow) + 0.5;
            for (int bar = 1; bar <= a.bars(); bar++) {
                Pair p = new Pair(bar, a.wrapBar(bar + 1));
                assertThat(apart(otherSide(w, p, w.coil(bar), clock), clock))
                        .as("%s, bar %s", a, bar)
                        .isCloseTo(90, within(about));
            }
            double best = mean(meter(w, Growler.USUAL).turned(clock));
            assertThat(best).isGreaterThan(0.9);
            assertThat(mean(meter(w, Growler.USUAL).turned(clock - 90))).isLessThan(0.1 * best);
            // The place comes from the search over half degrees: nothing else does better.
            for (int d = 0; d < 360; d += 3) {
                assertThat(mean(meter(w, Growler.USUAL).turned(d))).isLessThanOrEqualTo(best + EXACT);
            }
        }
    }

    private static double mean(List<PairReading> readings) {
        return readings.stream().mapToDouble(PairReading::value).average().orElseThrow();
    }

    /**
     * A full-pitch coil on 2 poles, its top side d degrees from straight up or down: while both sides are clear of the
     * faces it takes in one whole face; from d = halfGap − face/2 a face passes over evenly, until at halfGap + face/2
     * both faces lie on one side and cancel. From the assumption of even flux.
     */
    @Test
    void fullPitchOnTwoPolesFollowsTheClosedForm() {
        Winding w = lap(24, 24, 2);
        for (Growler g : GROWLERS) {
            for (double angle = -200; angle < 400; angle += 7.3) {
                var readings = meter(w, g).walked(angle);
                for (int bar = 1; bar <= 24; bar++) {
                    double top = angle + (bar - 1) * 15;
                    double d = Math.abs(top - 180 * Math.rint(top / 180));
                    double whole = (g.halfGap() + g.face() / 2 - d) / g.face();
                    assertThat(readings.get(bar - 1).value())
                            .as("%s, top side %s° off", g, d)
                            .isCloseTo(Math.max(0, Math.min(1, whole)), within(EXACT));
                }
            }
        }
    }

    /** A quarter-turn coil takes in a whole face where its middle is over the face and the face is no wider. */
    @Test
    void quarterTurnCoilTakesInOneFace() {
        Winding w = lap(16, 16, 4);
        for (Growler g : List.of(Growler.USUAL, new Growler(45, 90))) {
            for (double middle : new double[] {g.rightFace(), g.leftFace()}) {
                // Coil 1 lies from slot 1 to slot 5.
                var readings = meter(w, g).walked(middle - 45);
                assertThat(readings.get(0).value()).isCloseTo(1, within(EXACT));
                // Its middle straight up, or straight down between the faces.
                assertThat(meter(w, g).walked(-45).get(0).value()).isCloseTo(0, within(EXACT));
                assertThat(meter(w, g).walked(135).get(0).value()).isCloseTo(0, within(EXACT));
            }
        }
    }

    /** The reading of a pair under held probes is the reading of the walk with the armature where it then stands. */
    @Test
    void turnedAndWalkedAgree() {
        for (int i = 0; i < 80; i++) {
            Random random = new Random(500 + i);
            var sample = BenchSamples.nth(i, random);
            Winding w = sample.armature().winding();
            Growler g = GROWLERS.get(i % GROWLERS.size());
            double clock = 360 * random.nextDouble();
            List<Pair> pairs = new BenchTest.GrowlerTurned(g, clock).walk(w);
            var turned = new BenchTest.GrowlerTurned(g, clock).read(sample.armature(), pairs);
            for (int n = 0; n < pairs.size(); n++) {
                Pair p = pairs.get(n);
                double angle = clock - GrowlerMeter.middle(w.armature(), p.from(), p.to());
                var still = new BenchTest.GrowlerWalked(g, angle).read(sample.armature(), List.of(p));
                assertThat(turned.get(n).from()).isEqualTo(p.from());
                assertThat(turned.get(n).value())
                        .as("%s, pair %s", sample, p)
                        .isCloseTo(still.get(0).value(), within(EXACT));
            }
        }
    }

    /** In line with mica instead of bar: every bar stands half a bar further on, and so does the best place. */
    @Test
    void alignmentShiftsByHalfABar() {
        for (int poles : new int[] {2, 4}) {
            Winding bar = lap(24, 24, poles);
            Winding mica = Winding.build(
                    new Armature(24, 24, poles, SlotAlignment.MICA), WindingSpec.lap(1, Direction.PROGRESSIVE));
            shiftedBy(bar, mica, 7.5, 0);
        }
    }

    /** All leads one bar further on: the same reading one bar further on, on the pair one bar up. */
    @Test
    void leadOffsetShiftsByWholeBars() {
        for (int offset : new int[] {-4, -1, 1, 3, 6}) {
            for (int poles : new int[] {2, 4}) {
                Winding straight = lap(24, 24, poles);
                Winding led = Winding.build(
                        Armature.of(24, 24, poles),
                        WindingSpec.lap(1, Direction.PROGRESSIVE).withLeadOffset(offset));
                shiftedBy(straight, led, offset * 15.0, offset);
            }
        }
    }

    private static void shiftedBy(Winding before, Winding after, double degrees, int bars) {
        for (Growler g : GROWLERS) {
            var one = meter(before, g);
            var other = meter(after, g);
            double shifted = one.bestClock() + degrees;
            double best = mean(one.turned(one.bestClock()));
            assertThat(mean(other.turned(shifted))).isCloseTo(best, within(EXACT));
            assertThat(mean(other.turned(other.bestClock()))).isCloseTo(best, within(EXACT));
            if (g.equals(Growler.USUAL)) {
                // On 2 poles the place opposite is as good; the first from straight up is given.
                double off = apart(other.bestClock(), shifted);
                double same = before.armature().poles() == 2 ? Math.min(off, 180 - off) : off;
                assertThat(same).isCloseTo(0, within(EXACT));
            }
            for (double clock = 0; clock < 360; clock += 11.3) {
                var first = one.turned(clock);
                var second = other.turned(clock + degrees);
                for (int i = 0; i < first.size(); i++) {
                    int j = Math.floorMod(i + bars, first.size());
                    assertThat(second.get(j).value()).isCloseTo(first.get(i).value(), within(EXACT));
                }
            }
        }
    }

    /** The best pair of a still armature stands where its clock place says, and the walk has nothing better. */
    @Test
    void bestPairStandsWhereItSays() {
        for (int i = 0; i < 30; i++) {
            Random random = new Random(900 + i);
            Winding w = BenchSamples.winding(BenchSamples.KINDS.get(i % 4), random);
            double angle = 720 * random.nextDouble() - 360;
            var meter = meter(w, Growler.USUAL);
            int step = BenchTest.stepWithinCircuit(w);
            if (2 * step == w.armature().bars()) {
                // Two ways round are equally short.
                continue;
            }
            var walked = new BenchTest.GrowlerWalked(Growler.USUAL, angle).readWalk(BenchArmature.sound(w, 1));
            double most = walked.stream().mapToDouble(PairReading::value).max().orElseThrow();
            for (var placed : meter.best(angle)) {
                assertThat(placed.reading().value()).isCloseTo(most, within(2e-6 * most));
                double first = angle + w.armature().barCentre(placed.reading().from());
                assertThat(placed.clockDegrees()).isBetween(0.0, 360.0);
                assertThat(apart(
                                placed.clockDegrees(),
                                first + step * w.armature().barAngle() / 2))
                        .isCloseTo(0, within(EXACT));
            }
            assertThat(meter.best(angle).isEmpty()).isEqualTo(most == 0);
        }
    }

    /**
     * Several coils in a slot: with the armature turned, readings repeat from slot to slot and differ within one, which
     * a novice takes for a fault. The procedure says so.
     */
    @Test
    void coilsOfOneSlotMakeARepeatingPattern() {
        for (int u = 1; u <= 4; u++) {
            Winding w = lap(12, 12 * u, 4);
            // On the flank, where a face is part covered.
            var readings = meter(w, Growler.USUAL).turned(60);
            for (int i = 0; i < readings.size(); i++) {
                assertThat(readings.get((i + u) % readings.size()).value())
                        .isCloseTo(readings.get(i).value(), within(EXACT));
            }
            long different = readings.stream()
                    .limit(u)
                    .mapToLong(r -> Math.round(r.value() * 1e6))
                    .distinct()
                    .count();
            assertThat(different).isEqualTo(u);
            String groups = "groups of " + u;
            boolean told =
                    Procedures.growlerMeterTurned(w, 60).meaning().stream().anyMatch(line -> line.contains(groups));
            assertThat(told).isEqualTo(u > 1);
        }
    }

    /** Walked round a still armature the same winding reads by place, evenly from place to place a slot on. */
    @Test
    void walkedPatternTurnsWithTheArmature() {
        Winding w = lap(12, 36, 4);
        var here = meter(w, Growler.USUAL).walked(10);
        var aSlotOn = meter(w, Growler.USUAL).walked(10 + 30);
        for (int i = 0; i < 36; i++) {
            assertThat(aSlotOn.get(i).value()).isCloseTo(here.get((i + 3) % 36).value(), within(EXACT));
        }
    }

    /** Circuits apart from that of bar 1 read as well as its own. */
    @Test
    void everyCircuitOfADuplexWindingReads() {
        Winding w = Winding.build(Armature.of(24, 24, 2), WindingSpec.lap(2, Direction.PROGRESSIVE));
        var readings = new BenchTest.GrowlerWalked(Growler.USUAL, 0).readWalk(BenchArmature.sound(w, 1));
        assertThat(readings).extracting(PairReading::to).startsWith(3, 4, 5);
        assertThat(readings.get(0).value()).isCloseTo(1, within(EXACT));
        assertThat(readings.get(1).value()).isCloseTo(1, within(EXACT));
        // Between the two circuits a meter reads nothing.
        assertThat(meter(w, Growler.USUAL).walked(0)).allMatch(r -> r.value() == 0);
    }

    /** The place for held probes is the best of all half degrees, in windings of every kind. */
    @Test
    void bestClockIsTheBestOfAll() {
        for (int i = 0; i < 28; i++) {
            Random random = new Random(40 + i);
            Winding w = BenchSamples.winding(BenchSamples.KINDS.get(i % BenchSamples.KINDS.size()), random);
            var meter = meter(w, Growler.USUAL);
            double found = meter.bestClock();
            double best = mean(meter.turned(found));
            for (double clock = 0.5; clock < 360; clock += 14.5) {
                assertThat(mean(meter.turned(clock)))
                        .as("%s %s at %s instead of %s", w.armature(), w.spec(), clock, found)
                        .isLessThanOrEqualTo(best + EXACT);
            }
        }
    }

    /** Readings in the meter's unit from one known-good pair. */
    @Test
    void placesOfThePullOverAShortedCoil() {
        // A coil over a quarter turn takes in a whole face while its first side stands 75° to 105° or 165° to 195° from
        // straight up. Half slots are tried in turn from slot 1 straight up, 11.25° each.
        var sound = BenchArmature.sound(lap(16, 16, 4), 1);
        var first = GrowlerBlade.pulls(new Fault.ShortedCoil(1).in(sound), Growler.USUAL);
        assertThat(first.stream().filter(GrowlerBlade.SlotPull::felt))
                .extracting(p -> List.of((double) p.slot(), p.clockDegrees()))
                .containsExactly(List.of(1.0, 78.75), List.of(5.0, 168.75));
        var last = GrowlerBlade.pulls(new Fault.ShortedCoil(13).in(sound), Growler.USUAL);
        assertThat(last.stream().filter(GrowlerBlade.SlotPull::felt))
                .extracting(p -> List.of((double) p.slot(), p.clockDegrees()))
                .containsExactly(List.of(1.0, 168.75), List.of(13.0, 78.75));
    }

    @Test
    void thePullIsThatOfTheShortedTurns() {
        // Half of a coil of half the turns, by itself: a quarter of the ampere-turns of a whole shorted coil.
        Winding w = Winding.build(
                Armature.of(16, 15, 4),
                WindingSpec.lap(1, Direction.PROGRESSIVE).withDeadCoils(List.of(16)));
        // The ring lacks a coil's voltage; open, it carries no current of its own.
        BenchArmature sound = new Fault.OpenCoil(1).in(BenchArmature.sound(w, 3));
        BenchArmature shorted = sound.with(sound.coil(16).withTurns(0.5))
                .with(Bond.direct(new Point.Inside(16, 0.25), new Point.Inside(16, 0.75)));
        assertThat(GrowlerBlade.pulls(shorted, Growler.USUAL))
                .filteredOn(p -> p.pull() > 1e-9)
                .extracting(GrowlerBlade.SlotPull::slot)
                .containsExactly(4, 16);
        assertThat(GrowlerBlade.pulls(shorted, Growler.USUAL).get(3).pull()).isCloseTo(0.25, within(EXACT));
    }

    @Test
    void turnedAndWalkedAgreeWhateverIsWrong() {
        for (int i = 0; i < 60; i++) {
            var sample = BenchSamples.nth(i, new Random(i));
            GrowlerMeter meter = GrowlerMeter.of(sample.armature(), Growler.USUAL);
            Armature a = sample.armature().winding().armature();
            for (int bar = 1; bar <= a.bars(); bar += 3) {
                List<Pair> pair = List.of(new Pair(bar, a.wrapBar(bar + 2)));
                double clock = 17.0 * i + bar;
                double angle = clock - GrowlerMeter.middle(a, bar, a.wrapBar(bar + 2));
                assertThat(meter.turned(clock, pair).get(0).value())
                        .as("%s, bar %s", sample, bar)
                        .isCloseTo(meter.walked(angle, pair).get(0).value(), within(1e-7));
            }
        }
    }

    @Test
    void anglesAreNumbersOfDegrees() {
        GrowlerMeter meter = meter(lap(16, 16, 4), Growler.USUAL);
        assertThat(meter.walked(1e6)).hasSize(16);
        for (double wrong : new double[] {Double.NaN, Double.NEGATIVE_INFINITY, 1000001, -1000001}) {
            String message = " is " + wrong + ", but must be a number of degrees";
            assertThatThrownBy(() -> meter.walked(wrong)).hasMessage("armature angle" + message);
            assertThatThrownBy(() -> meter.potentials(wrong)).hasMessage("armature angle" + message);
            assertThatThrownBy(() -> meter.turned(wrong)).hasMessage("probe position" + message);
        }
    }

    @Test
    void potentialsAgainstTheFirstBarOfEachPart() {
        Winding duplex = Winding.build(Armature.of(16, 16, 4), WindingSpec.lap(2, Direction.PROGRESSIVE));
        GrowlerMeter meter = meter(duplex, Growler.USUAL);
        List<Double> grounded = meter.groundedPotentials(20);
        assertThat(grounded).hasSize(16).anyMatch(v -> Math.abs(v) > 0.5);
        assertThat(grounded.subList(0, 2)).containsExactly(0.0, 0.0);
        for (Coil c : duplex.coils()) {
            double between = grounded.get(c.topBar().getAsInt() - 1)
                    - grounded.get(c.bottomBar().getAsInt() - 1);
            assertThat(between).isCloseTo(Growler.USUAL.coilVolts(duplex.armature(), c, 20), within(EXACT));
        }
    }

    @Test
    void nothingReadsMostWhereNothingReads() {
        BenchArmature open = BenchArmature.sound(lap(6, 6, 2), 1);
        for (int coil = 1; coil <= 6; coil++) {
            open = new Fault.OpenCoil(coil).in(open);
        }
        assertThat(GrowlerMeter.of(open, Growler.USUAL).best(30)).isEmpty();
    }

    @Test
    void scalingNeedsAMeterThatMoves() {
        List<PairReading> readings = List.of(new PairReading(2, 3, 4), new PairReading(1, 2, 10));
        assertThat(GrowlerMeter.scaled(readings, 3, 2))
                .containsExactly(new PairReading(1, 2, 15), new PairReading(2, 3, 6));
        assertThatThrownBy(() -> GrowlerMeter.scaled(readings, 0, 2))
                .hasMessage(
                        "the known-good reading is 0.0 where 2.0 is expected: choose a pair on which the meter moves");
        assertThatThrownBy(() -> GrowlerMeter.scaled(readings, 3, 0))
                .hasMessage(
                        "the known-good reading is 3.0 where 0.0 is expected: choose a pair on which the meter moves");
    }

    @Test
    void scaledByAKnownGoodReading() {
        var readings = meter(lap(16, 16, 4), Growler.USUAL).walked(90);
        var scaled = GrowlerMeter.scaled(readings, 35, readings.get(0).value());
        assertThat(scaled.get(0).value()).isCloseTo(35, within(EXACT));
        for (int i = 0; i < 16; i++) {
            assertThat(scaled.get(i).value() * readings.get(0).value())
                    .isCloseTo(35 * readings.get(i).value(), within(EXACT));
        }
        assertThatThrownBy(() -> GrowlerMeter.scaled(readings, 35, 0)).hasMessageContaining("choose a pair");
    }

    @Test
    void facesThatCannotBeAreRefused() {
        assertThatThrownBy(() -> new Growler(0, 10)).hasMessageContaining("halfGap is 0.0");
        assertThatThrownBy(() -> new Growler(180, 10)).hasMessageContaining("under 180");
        assertThatThrownBy(() -> new Growler(45, 90.5))
                .hasMessageContaining("at most 90.0")
                .hasMessageContaining("overlap");
        assertThatThrownBy(() -> new Growler(45, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> meter(lap(16, 16, 4), Growler.USUAL).walked(Double.POSITIVE_INFINITY))
                .hasMessageContaining("armature angle");
    }

    /** The blade: what slots, how strong, and where. */
    @Test
    void bladePullsOverBothSidesOfAShortedCoilAlike() {
        Winding w = lap(24, 24, 4);
        var shorted = new Fault.ShortedCoil(5).in(BenchArmature.sound(w, 0.3));
        var pulls = GrowlerBlade.pulls(shorted, Growler.USUAL);
        assertThat(pulls).hasSize(24);
        for (var p : pulls) {
            boolean side = p.slot() == 5 || p.slot() == 11;
            assertThat(p.felt()).as("slot %s", p.slot()).isEqualTo(side);
            // A coil with a whole face's flux makes the unit of current; as much voltage drives the other 23 round.
            if (side) {
                assertThat(p.pull()).isBetween(1 - 2 / 23.0, 1 + 2 / 23.0);
            } else {
                assertThat(p.pull()).isBetween(0.0, 2 / 23.0 + EXACT);
            }
        }
        // Felt while the coil's middle is over a face.
        double clock = pulls.get(4).clockDegrees();
        assertThat(Math.min(apart(clock + 45, 135), apart(clock + 45, 225))).isLessThan(20);
    }

    /** No short, no pull: round the one ring of a sound simplex winding without equalizers the voltages cancel. */
    @Test
    void bladeLiesStillOverSoundWindings() {
        for (int i = 0; i < 40; i++) {
            Random random = new Random(300 + i);
            var kind = i % 2 == 0 ? BenchSamples.Kind.LAP : BenchSamples.Kind.WAVE;
            Winding w = BenchSamples.winding(kind, random);
            assertThat(GrowlerBlade.slots(BenchArmature.sound(w, 1), Growler.USUAL))
                    .as("%s %s", w.armature(), w.spec())
                    .isEmpty();
            assertThat(GrowlerBlade.useless(BenchArmature.sound(w, 1), Growler.USUAL))
                    .isFalse();
        }
    }

    /** A dead coil has no bars, and a short within it pulls all the same. */
    @Test
    void bladeFindsAShortInADeadCoil() {
        Winding w = Winding.build(
                Armature.of(12, 35, 4),
                WindingSpec.wave(1, Direction.PROGRESSIVE).withDeadCoils(List.of(1)));
        var shorted = new Fault.ShortedTurns(1, 0.6).in(BenchArmature.sound(w, 1));
        assertThat(GrowlerBlade.slots(shorted, Growler.USUAL)).containsExactly(1, 4);
    }

    /** Two bars joined in a wave winding: never more slots than poles, whatever the winding. */
    @Test
    void bladePullsOverAtMostAsManySlotsAsPolesForJoinedBars() {
        int seen = 0;
        for (int i = 0; i < 60; i++) {
            Random random = new Random(100 + i);
            Winding w = BenchSamples.winding(BenchSamples.Kind.WAVE, random);
            if (w.armature().bars() < 10 * w.armature().poles()) {
                continue;
            }
            int bar = 1 + random.nextInt(w.armature().bars());
            var a = new Fault.BarShort(bar, w.armature().wrapBar(bar + 1)).in(BenchArmature.sound(w, 1));
            List<Integer> slots = GrowlerBlade.slots(a, Growler.USUAL);
            assertThat(slots)
                    .as("%s", w.armature())
                    .hasSizeBetween(2, w.armature().poles());
            List<Integer> ofTheLoop = new ArrayList<>();
            coilwright.circuit.WindingGraph.of(w)
                    .between(bar, w.armature().wrapBar(bar + 1))
                    .get(0)
                    .forEach(s -> {
                        ofTheLoop.add(s.coil().top().slot());
                        ofTheLoop.add(s.coil().bottom().slot());
                    });
            assertThat(ofTheLoop).containsAll(slots);
            seen++;
        }
        assertThat(seen).isGreaterThan(8);
    }

    /** The narrower the throw, the less flux: a check of the model against one coil of each span. */
    @Test
    void readingGrowsWithTheThrowUpToOneFace() {
        double before = 0;
        for (int span : IntStream.rangeClosed(1, 6).toArray()) {
            Winding w = Winding.build(
                    Armature.of(24, 24, 4),
                    WindingSpec.lap(1, Direction.PROGRESSIVE).withSpan(CoilSpan.ofThrow(span)));
            var meter = meter(w, Growler.USUAL);
            double best = mean(meter.turned(meter.bestClock()));
            // A slot is 15°, a face 60°.
            assertThat(best).isCloseTo(Math.min(1, span * 15 / 60.0), within(EXACT));
            assertThat(best).isGreaterThanOrEqualTo(before);
            before = best;
        }
    }
}
