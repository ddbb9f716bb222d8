package coilwright.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.GroundTest.ZeroPlace;
import coilwright.circuit.WindingGraph;
import coilwright.fault.Fault;
import coilwright.network.Solution;
import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.References;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Published indications and figures of the bench tests, each with its source. */
class HandbookBenchTest {
    private static final double EXACT = 1e-12;

    /** A 2-pole lap winding of 16 slots and bars. */
    private static Winding lap16() {
        return Winding.build(Armature.of(16, 16, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
    }

    private static Winding wave(int slots, int bars, int poles, Direction direction) {
        return Winding.build(Armature.of(slots, bars, poles), WindingSpec.wave(1, direction));
    }

    /** 4-pole, 13 slots, progressive wave: {@link References#BAKSHI}, Ex. 1.23. */
    private static Winding wave13() {
        return wave(13, 13, 4, Direction.PROGRESSIVE);
    }

    private static BenchArmature sound(Winding w) {
        return BenchArmature.sound(w, 1);
    }

    private static double[] values(List<PairReading> readings) {
        return readings.stream().mapToDouble(PairReading::value).toArray();
    }

    private static void assertAll(List<PairReading> readings, int count, double value) {
        assertThat(readings)
                .hasSize(count)
                .allSatisfy(r -> assertThat(r.value()).isCloseTo(value, within(EXACT)));
    }

    /** Numbers, from 1, of the readings that are a value; reading n is of the pair n, n+1. */
    private static List<Integer> pairsReading(List<PairReading> readings, double value) {
        return readings.stream()
                .filter(r -> Math.abs(r.value() - value) < 1e-9)
                .map(PairReading::from)
                .toList();
    }

    private static List<Integer> range(int from, int to) {
        return IntStream.rangeClosed(from, to).boxed().toList();
    }

    /** Positions of the growler blade. */
    @Nested
    class Blade {
        /** Lap: two slots, those of the two sides of the one shorted coil. From memory: Rosenberg, Croft. */
        @Test
        void lapShortPullsAtTwoSlots() {
            var w = Winding.build(Armature.of(16, 16, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
            var shorted = new Fault.ShortedCoil(3).in(sound(w));
            assertThat(GrowlerBlade.slots(shorted, Growler.USUAL)).containsExactly(3, 7);
            assertThat(GrowlerBlade.slots(sound(w), Growler.USUAL)).isEmpty();
        }

        /**
         * Wave, two neighbouring bars joined: P slots, since P/2 coils lie between the bars ({@link
         * References#KHARAGPUR_NOTES}, whose 17-slot winding this is) and each has two sides. From memory: Rosenberg,
         * Croft.
         */
        @Test
        void waveBarShortPullsAtAsManySlotsAsPoles() {
            var four = new Fault.BarShort(1, 2).in(sound(wave(17, 17, 4, Direction.PROGRESSIVE)));
            // Coils 1 (bars 1-10, slots 1-5) and 10 (bars 10-2, slots 10-14).
            assertThat(GrowlerBlade.slots(four, Growler.USUAL)).containsExactly(1, 5, 10, 14);

            var six = new Fault.BarShort(31, 1).in(sound(wave(31, 31, 6, Direction.RETROGRESSIVE)));
            // Coils 1, 11 and 21 lead from bar 1 by bars 11 and 21 to bar 31.
            assertThat(GrowlerBlade.slots(six, Growler.USUAL)).containsExactly(1, 6, 11, 16, 21, 26);
        }

        /**
         * Workshop books count 2 slots for lap and 4 for a 4-pole wave and do not say which short they mean. The
         * circulating current flows only in the loop that the short closes. A short inside one coil closes that coil's
         * turns and nothing else, so the blade pulls at 2 slots in a wave winding too; two bars joined close P/2 coils
         * in series, which makes up to P slots. So the books' 4 is right for a short between bars alone.
         */
        @Test
        void shortInsideOneWaveCoilPullsAtTwoSlots() {
            var w = wave(17, 17, 4, Direction.PROGRESSIVE);
            for (int coil = 1; coil <= 17; coil++) {
                int other = 1 + (coil + 3) % 17;
                for (Fault f : List.of(new Fault.ShortedTurns(coil, 0.5), new Fault.ShortedCoil(coil))) {
                    assertThat(GrowlerBlade.slots(f.in(sound(w)), Growler.USUAL))
                            .as(f.words())
                            .containsExactlyInAnyOrder(coil, other);
                }
            }
        }

        /**
         * A cross-connected armature pulls the blade at every slot: NIMI, Electrician (CITS) Trade Theory, vol. 2
         * (armature tests), and NAVEDTRA 14273, Construction Mechanic Basic, vol. 2 (without the reason). A frog-leg
         * winding is cross-connected by its own coils (Swiss patent CH 124206: 8 poles, 32 slots, 32 bars).
         */
        @Test
        void equalizedArmaturePullsAtEverySlot() {
            var lap = Winding.build(Armature.of(16, 16, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
            var rings = WindingGraph.of(lap).equipotentialBars();
            assertThat(rings).hasSize(8).allMatch(ring -> ring.size() == 2);
            var equalized = sound(lap).withEqualizers(rings);
            assertThat(GrowlerBlade.slots(equalized, Growler.USUAL)).isEqualTo(range(1, 16));
            assertThat(GrowlerBlade.useless(equalized, Growler.USUAL)).isTrue();

            var frog = Winding.build(
                    Armature.of(32, 32, 8), new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.usual(), 0));
            assertThat(GrowlerBlade.slots(sound(frog), Growler.USUAL)).isEqualTo(range(1, 32));
            assertThat(GrowlerBlade.useless(sound(frog), Growler.USUAL)).isTrue();
            assertThat(GrowlerBlade.useless(sound(lap), Growler.USUAL)).isFalse();
        }

        /**
         * The remedy the books give, the bar-to-bar test, does find a short in an equalized armature: two neighbouring
         * bars joined read nothing; and with them the pair joined to them by rings.
         */
        @Test
        void barToBarTestServesAnEqualizedArmature() {
            var lap = Winding.build(Armature.of(16, 16, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
            var a = new Fault.ShortedCoil(3)
                    .in(sound(lap).withEqualizers(WindingGraph.of(lap).equipotentialBars()));
            var feed = FeedBars.advised(lap, true).get(0);
            var readings =
                    DropTest.at(a, feed.in(), feed.out(), new Supply.Current(1)).neighbours();
            assertThat(pairsReading(readings, 0)).containsExactly(3, 11);
        }
    }

    /** Growler with a meter. */
    @Nested
    class Meter {
        /** Every adjacent pair reads the same on the growler, armature turned: NIMI, vol. 2 (armature tests). */
        @Test
        void soundReadsEvenly() {
            var meter = GrowlerMeter.of(sound(lap16()), Growler.USUAL);
            assertAll(meter.turned(meter.bestClock()), 16, 1);
        }

        /** A shorted coil takes its pair's reading away. NIMI, vol. 2 (armature tests). */
        @Test
        void shortedCoilReadsNothing() {
            var meter = GrowlerMeter.of(new Fault.ShortedCoil(5).in(sound(lap16())), Growler.USUAL);
            assertThat(meter.turned(meter.bestClock()).get(4).value()).isCloseTo(0, within(EXACT));
        }

        /**
         * NIMI, vol. 2 (armature tests; the last words from memory): the pair with an open coil gives no deflection.
         * That holds for an ammeter and not for a voltmeter. The voltages of all coils of a closed winding add up to
         * nothing, so the K − 1 coils left read across the break what the broken coil would have read. Behind them
         * stand (K − 1)·r ohms, though, in place of r·(K − 1)/K: an ammeter without resistance shows 1/K of the
         * current.
         */
        @Test
        void openCoilShowsOnAnAmmeterOnly() {
            var good = sound(lap16());
            var bad = new Fault.OpenCoil(5).in(good);
            var meter = GrowlerMeter.of(bad, Growler.USUAL);
            double clock = meter.bestClock();
            double[] volts = values(meter.turned(clock));
            assertAll(meter.turned(clock), 16, 1);
            double[] before = values(GrowlerMeter.of(good, Growler.USUAL).turned(clock));
            for (int bar = 1; bar <= 16; bar++) {
                int next = bar % 16 + 1;
                double amperes = volts[bar - 1]
                        / ResistanceTest.of(bad).between(bar, next).orElseThrow();
                double usual = before[bar - 1]
                        / ResistanceTest.of(good).between(bar, next).orElseThrow();
                assertThat(amperes / usual).isCloseTo(bar == 5 ? 1 / 16.0 : 15 / 16.0, within(EXACT));
            }
            assertThat(String.join(" ", Procedures.growlerMeterWalked(lap16()).meaning()))
                    .contains("ammeter of low resistance")
                    .doesNotContain("the coil between is open");
        }

        /**
         * Growler, meter from bar to shaft: it moves on good bars, and the bar where it does not carries the ground.
         * NIMI, vol. 2 (armature tests).
         */
        @Test
        void groundedBarGivesNoDeflectionToTheShaft() {
            var w = lap16();
            var a = new Fault.Ground(Point.bar(7)).in(sound(w));
            BenchNetwork net = BenchNetwork.of(a, c -> Growler.USUAL.coilVolts(w.armature(), w.coil(c.coil()), 20));
            Solution s = net.network().solve();
            double[] toShaft = IntStream.rangeClosed(1, 16)
                    .mapToDouble(b -> Math.abs(
                            s.voltage(BenchNetwork.node(b), net.shaftNode()).orElseThrow()))
                    .toArray();
            assertThat(toShaft[6]).isZero();
            assertThat(IntStream.range(0, 16).filter(i -> toShaft[i] > 0.2).count())
                    .isGreaterThan(8);
            // Not grounded: nothing is joined to the shaft and the meter rests everywhere.
            assertThat(BenchNetwork.of(sound(w)).network().factorised().connected(0, 16))
                    .isFalse();
        }
    }

    /** The drop test on a lap winding; indications from {@link References#TRAINING_MODULE}, numbers by arithmetic. */
    @Nested
    class LapDrop {
        private static final double V = 8;

        private List<PairReading> fedOpposite(Fault... faults) {
            BenchArmature a = sound(lap16());
            for (Fault f : faults) {
                a = f.in(a);
            }
            return DropTest.at(a, 1, 9, new Supply.Voltage(V)).neighbours();
        }

        private void assertWalk(List<PairReading> readings, double[] expected) {
            assertThat(values(readings)).containsExactly(expected, within(1e-10));
        }

        private double[] walk(double firstHalf, double secondHalf) {
            double[] out = new double[16];
            for (int i = 0; i < 16; i++) {
                out[i] = i < 8 ? firstHalf : secondHalf;
            }
            return out;
        }

        /** Good: V/8 on all 16 pairs; the sign turns at the feed. */
        @Test
        void good() {
            assertWalk(fedOpposite(), walk(V / 8, -V / 8));
        }

        /** One coil shorted: its pair nothing, the other 7 of its half V/7, the other half V/8. */
        @Test
        void shortedCoil() {
            double[] expected = walk(V / 7, -V / 8);
            expected[2] = 0;
            assertWalk(fedOpposite(new Fault.ShortedCoil(3)), expected);
        }

        /** One coil open: V across it, nothing on the 7 pairs before and after, the other half V/8. */
        @Test
        void openCoil() {
            double[] expected = walk(0, -V / 8);
            expected[2] = V;
            assertWalk(fedOpposite(new Fault.OpenCoil(3)), expected);
        }

        /** Bars touching: silent between them; Hawkins Electrical Guide, vol. 3, fig. 703. */
        @Test
        void touchingBars() {
            assertThat(pairsReading(fedOpposite(new Fault.BarShort(12, 13)), 0)).containsExactly(12);
        }

        /** High resistance: suddenly louder; Hawkins Electrical Guide, vol. 3, fig. 702. */
        @Test
        void badJoint() {
            var readings = fedOpposite(new Fault.HighResistance(3, 0.5));
            // Half of 8 coils and half an ohm more: 8/8.5 A through 1.5 ohm.
            assertThat(readings.get(2).value()).isCloseTo(1.5 * V / 8.5, within(EXACT));
            assertThat(readings.get(3).value()).isCloseTo(V / 8.5, within(EXACT));
        }

        /**
         * Three bars straddled read twice what two bars do, and less at a fault between the two coils: Hawkins
         * Electrical Guide, vol. 3, fig. 703.
         */
        @Test
        void threeBarStraddle() {
            var good = DropTest.at(sound(lap16()), 1, 9, new Supply.Current(2));
            var bad = DropTest.at(new Fault.ShortedCoil(4).in(sound(lap16())), 1, 9, new Supply.Current(2));
            for (int bar = 1; bar <= 7; bar++) {
                double two = good.between(bar, bar + 1).value();
                assertThat(good.between(bar, bar + 2).value()).isCloseTo(2 * two, within(EXACT));
                double badTwo = bad.between(1, 2).value();
                assertThat(bad.between(bar, bar + 2).value())
                        .isCloseTo(bar == 3 || bar == 4 ? badTwo : 2 * badTwo, within(EXACT));
            }
        }

        /**
         * Leads crossed on two bars: the pair itself of the usual size and wrong sign, the pairs on either side double.
         * From memory: Braymer, Rosenberg.
         */
        @Test
        void crossedLeads() {
            double[] expected = walk(V / 8, -V / 8);
            expected[3] = V / 8 * 2;
            expected[4] = -V / 8;
            expected[5] = V / 8 * 2;
            assertWalk(fedOpposite(new Fault.CrossedLeads(5, 6, Fault.Leads.BOTH)), expected);
        }

        /**
         * 20 to 100 A through the brushes, voltmeter from bar to bar; a shorted coil gives little or nothing: Hawkins
         * Electrical Guide, vol. 3, fig. 700.
         */
        @Test
        void throughTheBrushes() {
            var w = Winding.build(Armature.of(16, 16, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
            var gear = coilwright.circuit.BrushGear.at(w, 3, 1);
            var good = DropTest.throughBrushes(sound(w), gear, new Supply.Current(40));
            var bad = DropTest.throughBrushes(new Fault.ShortedCoil(5).in(sound(w)), gear, new Supply.Current(40));
            assertThat(gear.shorted()).extracting(c -> c.number()).doesNotContain(5);
            // Each brush touches 1 or 2 bars; every coil that no brush shorts carries a quarter of 40 A.
            long carrying = good.neighbours().stream()
                    .filter(r -> Math.abs(Math.abs(r.value()) - 10) < 1e-9)
                    .count();
            assertThat(carrying).isEqualTo(16 - gear.shorted().size());
            assertThat(bad.neighbours().get(4).value()).isCloseTo(0, within(EXACT));
            assertThat(pairsReading(bad.neighbours(), 0))
                    .hasSize(1 + gear.shorted().size());
        }

        /** Compass on each coil fed with low direct current; a reversed coil turns it: Hawkins, vol. 2, p. 16. */
        @Test
        void compass() {
            var senses = PolarityTest.senses(new Fault.ReversedCoil(6).in(sound(lap16())));
            assertThat(senses)
                    .allSatisfy(s ->
                            assertThat(s.sense()).isCloseTo(s.coil() == 6 ? -15 / 16.0 : 15 / 16.0, within(EXACT)));
        }
    }

    /** Duplex windings on the drop test: {@link References#TRAINING_MODULE}. */
    @Nested
    class DuplexDrop {
        /** Equal among odd bars, equal among even bars; each circuit is fed by itself. */
        @Test
        void doublyReEntrantReadsEvenlyWithinEachCircuit() {
            for (Winding w : List.of(
                    Winding.build(Armature.of(24, 24, 4), WindingSpec.lap(2, Direction.PROGRESSIVE)),
                    Winding.build(Armature.of(26, 26, 4), WindingSpec.wave(2, Direction.PROGRESSIVE)))) {
                var feeds = FeedBars.advised(w, false);
                assertThat(feeds).hasSize(2);
                for (FeedBars feed : feeds) {
                    var test = new BenchTest.Drop(feed.in(), feed.out(), 1);
                    var readings = test.readWalk(sound(w));
                    for (PairReading r : readings) {
                        assertThat(r.to()).isEqualTo(w.armature().wrapBar(r.from() + 2));
                        boolean fed = r.from() % 2 == feed.in() % 2;
                        assertThat(Math.abs(r.value()) > 1e-6)
                                .as("%s %s", feed, r)
                                .isEqualTo(fed);
                    }
                    if (w.type() == WindingType.LAP) {
                        assertThat(readings.stream().filter(r -> r.value() != 0))
                                .allSatisfy(r -> assertThat(Math.abs(r.value())).isCloseTo(0.5, within(1e-9)));
                    }
                }
            }
        }
    }

    /** The drop test on a wave winding. */
    @Nested
    class WaveDrop {
        /**
         * A training module ({@link References#TRAINING_MODULE}) gives P/2 zero or very low readings for a shorted coil
         * in a wave winding. P/2 coils lie in series between neighbouring bars ({@link References#KHARAGPUR_NOTES}).
         * A coil shorted within itself is one of the P/2 in each of P/2 strings, so P/2 pairs read low, but the other
         * coils of each string still carry the current: each reads (P/2 − 1)/(P/2) of its like, half for 4 poles, two
         * thirds for 6. Nothing is read only where two bars are joined, at that one pair. So the module is right about
         * how many readings are low and wrong about their size.
         */
        @Test
        void coilShortedWithinItselfLowersAsManyReadingsAsPolePairs() {
            record Case(Winding winding, int out, double share) {}
            for (Case c : List.of(
                    new Case(wave(49, 49, 4, Direction.PROGRESSIVE), 13, 1 / 2.0),
                    new Case(wave(31, 31, 6, Direction.RETROGRESSIVE), 6, 2 / 3.0),
                    new Case(wave(33, 33, 8, Direction.RETROGRESSIVE), 5, 3 / 4.0))) {
                Winding w = c.winding();
                int pairs = w.armature().polePairs();
                // A coil half way from feed to feed, so that its strings lie wholly within one path.
                var path = WindingGraph.of(w).between(1, c.out()).get(0);
                int coil = path.get(path.size() / 2).coil().number();
                var good =
                        DropTest.at(sound(w), 1, c.out(), new Supply.Current(1)).neighbours();
                var bad = DropTest.at(new Fault.ShortedCoil(coil).in(sound(w)), 1, c.out(), new Supply.Current(1))
                        .neighbours();
                // The current of the path is read off a coil beside the shorted one.
                var coilBeside = path.get(path.size() / 2 + pairs);
                double i = Math.abs(
                        DropTest.at(new Fault.ShortedCoil(coil).in(sound(w)), 1, c.out(), new Supply.Current(1))
                                .between(coilBeside.fromBar(), coilBeside.toBar())
                                .value());
                List<Integer> low = new ArrayList<>();
                for (int n = 0; n < bad.size(); n++) {
                    boolean through = stringHolds(w, n + 1, coil);
                    double read = Math.abs(bad.get(n).value());
                    if (through) {
                        assertThat(read).as("%s pair %s", w.spec(), n + 1).isCloseTo((pairs - 1) * i, within(1e-9));
                        assertThat(read / (pairs * i)).isCloseTo(c.share(), within(1e-9));
                        assertThat(Math.abs(good.get(n).value())).isGreaterThan(read);
                        low.add(n + 1);
                    } else {
                        assertThat(read).as("%s pair %s", w.spec(), n + 1).isGreaterThan(1e-3);
                    }
                }
                assertThat(low).hasSize(pairs);
            }
        }

        /** Whether the coils in series between a bar and the next hold a coil. */
        private boolean stringHolds(Winding w, int bar, int coil) {
            var string = WindingGraph.of(w)
                    .between(bar, w.armature().wrapBar(bar + 1))
                    .get(0);
            assertThat(string).hasSize(w.armature().polePairs());
            return string.stream().anyMatch(s -> s.coil().number() == coil);
        }

        /** Two neighbouring bars joined: nothing at that one pair; half at the two pairs that share a coil with it. */
        @Test
        void joinedBarsReadNothingAtOnePlace() {
            Winding w = wave(49, 49, 4, Direction.PROGRESSIVE);
            var bad = DropTest.at(new Fault.BarShort(30, 31).in(sound(w)), 1, 13, new Supply.Current(1))
                    .neighbours();
            assertThat(pairsReading(bad, 0)).containsExactly(30);
            // Coils 30 (bars 30-6) and 6 (bars 6-31) carry nothing.
            var low = bad.stream()
                    .filter(r -> r.from() != 30)
                    .filter(r -> WindingGraph.of(w).between(r.from(), r.to()).get(0).stream()
                            .anyMatch(s -> s.coil().number() == 30 || s.coil().number() == 6))
                    .toList();
            assertThat(low).hasSize(2);
            double most =
                    bad.stream().mapToDouble(r -> Math.abs(r.value())).max().orElseThrow();
            assertThat(low).allSatisfy(r -> assertThat(Math.abs(r.value())).isLessThan(0.6 * most));
        }

        /**
         * Open coil: P/2 high readings with zeros before and after, {@link References#TRAINING_MODULE}; by arithmetic
         * the whole supply stands across each.
         */
        @Test
        void openCoilReadsHighAtAsManyPairsAsPolePairs() {
            for (Winding w :
                    List.of(wave(49, 49, 4, Direction.PROGRESSIVE), wave(31, 31, 6, Direction.RETROGRESSIVE))) {
                int out = 1 + (int) w.armature().polePitchBars();
                var path = WindingGraph.of(w).between(1, out).get(0);
                int coil = path.get(path.size() / 2).coil().number();
                var bad = DropTest.at(new Fault.OpenCoil(coil).in(sound(w)), 1, out, new Supply.Voltage(6))
                        .neighbours();
                List<Integer> high = bad.stream()
                        .filter(r -> Math.abs(r.value()) > 3)
                        .map(PairReading::from)
                        .toList();
                assertThat(high).hasSize(w.armature().polePairs()).allMatch(bar -> stringHolds(w, bar, coil));
                for (int bar : high) {
                    assertThat(Math.abs(bad.get(bar - 1).value())).isCloseTo(6, within(1e-9));
                    assertThat(bad.get(w.armature().wrapBar(bar - 1) - 1).value())
                            .isCloseTo(0, within(1e-9));
                    assertThat(bad.get(w.armature().wrapBar(bar + 1) - 1).value())
                            .isCloseTo(0, within(1e-9));
                }
            }
        }
    }

    /** Resistance from bar to bar, by arithmetic. */
    @Nested
    class Ohms {
        /** Lap, 2 poles: one coil beside the rest, r(K − 1)/K; 0.9375 r for 16 bars; nothing over a shorted coil. */
        @Test
        void lapGoodAndShorted() {
            assertAll(ResistanceTest.of(sound(lap16())).neighbours(), 16, 0.9375);
            var shorted = ResistanceTest.of(new Fault.ShortedCoil(3).in(sound(lap16())));
            assertThat(shorted.between(3, 4).orElseThrow()).isZero();
            assertThat(shorted.between(4, 5).orElseThrow()).isCloseTo(14 / 15.0, within(EXACT));
        }

        /** Lap, one coil open: 15 r across it for 16 bars, r elsewhere. */
        @Test
        void lapOpen() {
            double[] expected = new double[16];
            java.util.Arrays.fill(expected, 1);
            expected[2] = 15;
            assertThat(values(ResistanceTest.of(new Fault.OpenCoil(3).in(sound(lap16())))
                            .neighbours()))
                    .containsExactly(expected, within(1e-10));
        }

        /** Wave, 4 poles: two coils beside the other K − 2, 2r(K − 2)/K; 1.692 r for 13 bars. */
        @Test
        void wave() {
            var readings = ResistanceTest.of(sound(wave13())).neighbours();
            assertAll(readings, 13, 2 * 11 / 13.0);
            assertThat(readings.get(0).value()).isCloseTo(1.692, within(0.0005));
        }

        /**
         * Wave, one coil shorted within itself: two pairs read about half for 4 poles, three pairs two thirds for 6.
         * Beside the fewer coils left the share is (p − 1)/p · K/(K − 1), a little over.
         */
        @Test
        void waveShortedWithinItself() {
            for (Winding w : List.of(wave13(), HandbookBenchTest.wave(31, 31, 6, Direction.RETROGRESSIVE))) {
                int p = w.armature().polePairs();
                double k = w.armature().bars();
                double usual = ResistanceTest.of(sound(w)).between(1, 2).orElseThrow();
                assertThat(usual).isCloseTo(p * (k - p) / k, within(EXACT));
                var readings =
                        ResistanceTest.of(new Fault.ShortedCoil(1).in(sound(w))).neighbours();
                double share = (p - 1.0) / p * k / (k - 1);
                assertThat(pairsReading(readings, share * usual)).hasSize(p);
                assertThat(readings.stream().filter(r -> r.value() < 0.9 * usual))
                        .hasSize(p);
                assertThat(pairsReading(readings, 0)).isEmpty();
            }
        }

        /** Two bars joined: nothing at one place. */
        @Test
        void waveBarsJoined() {
            var readings = ResistanceTest.of(new Fault.BarShort(4, 5).in(sound(wave13())))
                    .neighbours();
            assertThat(pairsReading(readings, 0)).containsExactly(4);
        }

        /** Factors to 20 °C by 234.5 + t, the constant of copper: formulas for winding temperature. */
        @Test
        void temperature() {
            assertThat(ResistanceTest.at(1, 20, 25)).isCloseTo(1.0196, within(0.00005));
            assertThat(ResistanceTest.at(1, 20, 40)).isCloseTo(1.0786, within(0.00005));
            assertThat(ResistanceTest.at(1, 20, 75)).isCloseTo(1.2161, within(0.00005));
            assertThat(ResistanceTest.at(1, 20, 100)).isCloseTo(1.3143, within(0.00005));
            assertThat(ResistanceTest.at(1, 20, 150)).isCloseTo(1.5108, within(0.00005));
            // Back to 20 °C, 0.927 from 40 °C and 0.822 from 75 °C.
            assertThat(ResistanceTest.at(1, 40, 20)).isCloseTo(0.927, within(0.0005));
            assertThat(ResistanceTest.at(1, 75, 20)).isCloseTo(0.822, within(0.0005));
        }

        /**
         * A 12 V dynamo of 1921 (Rolls-Royce experimental archive, X.1005, 12 July 1921): 4 poles, 28 coils of 12 turns,
         * a wave winding with one coil connected lapwise. Printed: 0.418 ohm between bars 90° apart. Seven bars of 28
         * apart; had all coils been one ring, the two ways round would hold n and 28 − n coils. The source does not
         * give a coil's resistance, so only the sense is checked: a quarter of the bars apart lie about half the coils
         * of a wave ring, 7 r, the most that any pair reads.
         */
        @Test
        void ninetyDegreesApartIsAboutHalfOfAWaveRing() {
            var test = ResistanceTest.of(sound(HandbookBenchTest.wave(27, 27, 4, Direction.RETROGRESSIVE)));
            double most = 0;
            for (int d = 1; d < 27; d++) {
                most = Math.max(most, test.between(1, 1 + d).orElseThrow());
            }
            assertThat(test.between(1, 8).orElseThrow()).isCloseTo(most, within(EXACT));
            assertThat(most).isCloseTo(13 * 14 / 27.0, within(EXACT));
        }
    }

    /** Grounds: {@link References#TRAINING_MODULE}. */
    @Nested
    class Grounds {
        private List<ZeroPlace> places(BenchArmature a, int in, int out) {
            return GroundTest.zeroPlaces(GroundTest.walk(a, in, out, new Supply.Current(1)));
        }

        /** Not grounded: nothing between any bar and the shaft, and the lamp stays dark. */
        @Test
        void notGrounded() {
            assertThat(GroundTest.walk(sound(lap16()), 1, 9, new Supply.Current(1)))
                    .hasSize(16)
                    .containsOnly(0.0);
            assertThat(GroundTest.grounded(sound(lap16()))).isFalse();
            assertThat(places(sound(lap16()), 1, 9)).isEmpty();
        }

        /** Lap: two places where the reading falls to nothing and returns with the other sign, one true, one phantom. */
        @Test
        void lapShowsTwoPlaces() {
            for (int bar = 2; bar <= 8; bar++) {
                var a = new Fault.Ground(Point.bar(bar)).in(sound(lap16()));
                assertThat(GroundTest.grounded(a)).isTrue();
                assertThat(places(a, 1, 9)).containsExactly(new ZeroPlace(bar, bar), new ZeroPlace(18 - bar, 18 - bar));
                var walk = GroundTest.walk(a, 1, 9, new Supply.Current(1));
                assertThat(walk.get(bar - 2) * walk.get(bar)).isNegative();
            }
        }

        /** Within a coil the sign changes between that coil's two bars. */
        @Test
        void lapCoilShowsBetweenItsBars() {
            var a = new Fault.Ground(new Point.Inside(4, 0.5)).in(sound(lap16()));
            assertThat(places(a, 1, 9)).containsExactly(new ZeroPlace(4, 5), new ZeroPlace(13, 14));
        }

        /** Move the feed: the place that stays is the true ground, the ones that move are phantoms. */
        @Test
        void trueGroundStaysWhenTheFeedMoves() {
            var a = new Fault.Ground(Point.bar(4)).in(sound(lap16()));
            var first = places(a, 1, 9);
            var second = places(a, 3, 11);
            assertThat(first).hasSize(2);
            assertThat(second).hasSize(2);
            assertThat(GroundTest.staying(first, second)).containsExactly(new ZeroPlace(4, 4));
        }

        /**
         * In a wave winding the coils on either side of the grounded bar end two pole pitches away, next to one
         * another, so that the sign changes there wherever the feed stands: P/2 places stay, of which the grounded bar
         * alone reads nothing. The module's rule of the one place that stays holds for lap.
         */
        @Test
        void inAWaveWindingTheImagesOfTheTrueGroundStayToo() {
            var w = wave(49, 49, 4, Direction.PROGRESSIVE);
            var a = new Fault.Ground(Point.bar(20)).in(sound(w));
            List<ZeroPlace> staying = places(a, 1, 13);
            assertThat(staying).hasSize(4);
            for (int in : new int[] {6, 11, 30}) {
                staying = GroundTest.staying(staying, places(a, in, w.armature().wrapBar(in + 12)));
            }
            assertThat(staying).containsExactly(new ZeroPlace(20, 20), new ZeroPlace(44, 45));
        }

        /** Wave: as many such places as main poles. */
        @Test
        void waveShowsAsManyPlacesAsPoles() {
            record Case(Winding winding, int ground) {}
            for (Case c : List.of(
                    new Case(wave(49, 49, 4, Direction.PROGRESSIVE), 20),
                    new Case(wave(49, 49, 4, Direction.RETROGRESSIVE), 33),
                    new Case(wave(61, 61, 6, Direction.RETROGRESSIVE), 6),
                    new Case(wave(65, 65, 8, Direction.RETROGRESSIVE), 37))) {
                Winding w = c.winding();
                var feed = FeedBars.advised(w, false).get(0);
                var a = new Fault.Ground(Point.bar(c.ground())).in(sound(w));
                assertThat(places(a, feed.in(), feed.out()))
                        .as("%s", w.armature())
                        .hasSize(w.armature().poles())
                        .contains(new ZeroPlace(c.ground(), c.ground()));
            }
        }
    }

    /** Where direct current is fed in, by winding: {@link References#TRAINING_MODULE}, p. 4. */
    @Nested
    class FeedPoints {
        private List<String> feeds(int bars, int poles, WindingSpec spec) {
            var w = Winding.build(Armature.of(bars, bars, poles), spec);
            return FeedBars.advised(w, false).stream()
                    .map(f -> f.in() + "-" + f.out())
                    .toList();
        }

        /** Simplex lap: bar 1 and the bar directly opposite. */
        @Test
        void simplexLap() {
            assertThat(feeds(16, 2, WindingSpec.lap(1, Direction.PROGRESSIVE))).containsExactly("1-9");
            assertThat(feeds(24, 4, WindingSpec.lap(1, Direction.RETROGRESSIVE)))
                    .containsExactly("1-13");
        }

        /** Duplex lap, singly re-entrant: bars 1 and 2. */
        @Test
        void duplexSinglyReEntrantLap() {
            assertThat(feeds(25, 4, WindingSpec.lap(2, Direction.PROGRESSIVE))).containsExactly("1-2");
        }

        /** Duplex lap, doubly re-entrant: bar 1 and the opposite odd bar, then bar 2 and the opposite even bar. */
        @Test
        void duplexDoublyReEntrantLap() {
            assertThat(feeds(24, 4, WindingSpec.lap(2, Direction.PROGRESSIVE))).containsExactly("1-13", "2-14");
            // No odd bar stands straight across 22 bars; the one before it is taken.
            assertThat(feeds(22, 4, WindingSpec.lap(2, Direction.PROGRESSIVE))).containsExactly("1-11", "2-12");
        }

        /** Simplex wave: bar 1 and a bar one pole pitch away. */
        @Test
        void simplexWave() {
            assertThat(feeds(13, 4, WindingSpec.wave(1, Direction.PROGRESSIVE))).containsExactly("1-4");
            assertThat(feeds(31, 6, WindingSpec.wave(1, Direction.RETROGRESSIVE)))
                    .containsExactly("1-6");
        }

        /** Duplex wave, singly re-entrant: bars 1 and 2. */
        @Test
        void duplexSinglyReEntrantWave() {
            assertThat(feeds(28, 4, WindingSpec.wave(2, Direction.PROGRESSIVE))).containsExactly("1-2");
        }

        /** Duplex wave, doubly re-entrant: bar 1 and an odd bar a pole pitch away; then bar 2 and an even one. */
        @Test
        void duplexDoublyReEntrantWave() {
            assertThat(feeds(26, 4, WindingSpec.wave(2, Direction.PROGRESSIVE))).containsExactly("1-7", "2-8");
        }

        /**
         * By arithmetic: in a singly re-entrant duplex winding bars 1 and 2 lie half way round from one another, which
         * is why they are the feed, as the opposite bar is in a simplex one.
         */
        @Test
        void barsOneAndTwoAreHalfWayRoundASinglyReEntrantDuplexWinding() {
            for (Winding w : List.of(
                    Winding.build(Armature.of(25, 25, 4), WindingSpec.lap(2, Direction.PROGRESSIVE)),
                    Winding.build(Armature.of(28, 28, 4), WindingSpec.wave(2, Direction.PROGRESSIVE)))) {
                int k = w.armature().bars();
                var ways = WindingGraph.of(w).between(1, 2);
                assertThat(ways.get(0).size() + ways.get(1).size()).isEqualTo(k);
                assertThat(ways.get(1).size() - ways.get(0).size()).isLessThanOrEqualTo(2);
            }
        }

        /** A duplex frog-leg winding on even numbers falls into two parts, each of which needs its own feed. */
        @Test
        void frogLeg() {
            assertThat(feeds(32, 8, new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.usual(), 0)))
                    .containsExactly("1-5");
            assertThat(feeds(24, 4, new WindingSpec.FrogLeg(2, Direction.PROGRESSIVE, CoilSpan.usual(), 0)))
                    .containsExactly("1-7", "2-8");
        }
    }
}
