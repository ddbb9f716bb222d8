package coilwright.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.BenchSamples.Sample;
import coilwright.bench.BenchTest.Pair;
import coilwright.circuit.Circuit;
import coilwright.circuit.WindingGraph;
import coilwright.fault.Fault;
import coilwright.fault.FaultKinds;
import coilwright.network.Branch;
import coilwright.network.Feed;
import coilwright.network.Solution;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** Laws that every reading keeps, whatever the winding and its faults. */
class BenchLawsTest {
    private static final double EXACT = 1e-9;

    @Provide
    Arbitrary<Sample> armatures() {
        return BenchSamples.samples();
    }

    @Provide
    Arbitrary<Sample> symmetric() {
        return BenchSamples.soundAndSymmetric();
    }

    @Provide
    Arbitrary<Sample> simplex() {
        return BenchSamples.soundAndSimplex();
    }

    @Provide
    Arbitrary<Growler> growlers() {
        return Arbitraries.integers()
                .between(10, 85)
                .flatMap(gap -> Arbitraries.integers().between(1, 2 * gap).map(face -> new Growler(gap, face)));
    }

    private static int bars(Sample s) {
        return s.armature().winding().armature().bars();
    }

    private static int bar(Sample s, int any) {
        return 1 + Math.floorMod(any, bars(s));
    }

    private static double scale(DropTest test) {
        return test.potentials().stream()
                .filter(Double::isFinite)
                .mapToDouble(Math::abs)
                .max()
                .orElse(0);
    }

    @Example
    void everyKindOfFaultIsAmongTheSamples() {
        Set<Class<?>> made = new LinkedHashSet<>();
        for (int kind = 1; kind <= BenchSamples.FAULT_KINDS; kind++) {
            made.add(BenchSamples.sample(0, kind, new Random(kind))
                    .faults()
                    .get(0)
                    .getClass());
        }
        assertThat(made).isEqualTo(FaultKinds.all());
    }

    // Kirchhoff's laws

    /**
     * From the readings alone: the current of every coil by its resistance and the voltage between its bars; at every
     * group of joined bars, what comes in goes out. Faults that join places inside coils are left to the test of all
     * branches.
     */
    @Property(tries = 400)
    void currentsBalanceAtEveryBar(@ForAll("armatures") Sample s, @ForAll int one, @ForAll int two) {
        BenchArmature a = s.armature();
        Assume.that(a.bonds().stream().allMatch(b -> b.a() instanceof Point.Bar && b.b() instanceof Point.Bar));
        int in = bar(s, one);
        int out = bar(s, two);
        Assume.that(in != out);
        OptionalDouble ohms = ResistanceTest.of(a).between(in, out);
        Assume.that(ohms.isPresent());
        DropTest test = DropTest.at(a, in, out, new Supply.Current(3));
        int[] group = new int[bars(s) + 1];
        for (int b = 1; b <= bars(s); b++) {
            group[b] = b;
        }
        List<Bond> direct = a.bonds().stream().filter(b -> b.ohms() == 0).toList();
        for (Bond bond : direct) {
            int gone = group[((Point.Bar) bond.b()).number()];
            int stays = group[((Point.Bar) bond.a()).number()];
            for (int b = 1; b <= bars(s); b++) {
                group[b] = group[b] == gone ? stays : group[b];
            }
        }
        Map<Integer, Double> surplus = new TreeMap<>();
        surplus.merge(group[in], 3.0, Double::sum);
        surplus.merge(group[out], -3.0, Double::sum);
        for (CoilState c : a.coils()) {
            if (c.connected() && !c.open()) {
                int top = c.topBar().getAsInt();
                int bottom = c.bottomBar().getAsInt();
                double amperes = test.between(top, bottom).value() / (c.ohms() + c.jointOhms());
                surplus.merge(group[top], -amperes, Double::sum);
                surplus.merge(group[bottom], amperes, Double::sum);
            }
        }
        for (Bond bond : a.bonds()) {
            if (bond.ohms() > 0) {
                int from = ((Point.Bar) bond.a()).number();
                int to = ((Point.Bar) bond.b()).number();
                double amperes = test.between(from, to).value() / bond.ohms();
                surplus.merge(group[from], -amperes, Double::sum);
                surplus.merge(group[to], amperes, Double::sum);
            }
        }
        assertThat(surplus.values()).allSatisfy(x -> assertThat(x).isCloseTo(0, within(1e-8)));
        for (Bond bond : direct) {
            double across = test.between(((Point.Bar) bond.a()).number(), ((Point.Bar) bond.b()).number())
                    .value();
            assertThat(across).isCloseTo(0, within(EXACT * Math.max(scale(test), 1e-3)));
        }
    }

    /** In the whole network: currents balance at every node, and every branch keeps Ohm's law with its source. */
    @Property(tries = 300)
    void bothLawsHoldInTheWholeNetwork(
            @ForAll("armatures") Sample s,
            @ForAll("growlers") Growler g,
            @ForAll @DoubleRange(min = -360, max = 360) double angle,
            @ForAll int one,
            @ForAll int two) {
        BenchArmature a = s.armature();
        Winding w = a.winding();
        var net = BenchNetwork.of(a, c -> g.coilVolts(w.armature(), w.coil(c.coil()), angle));
        List<Feed> feeds = new ArrayList<>();
        var factorised = net.network().factorised();
        int in = bar(s, one);
        int out = bar(s, two);
        if (in != out && factorised.connected(in - 1, out - 1)) {
            feeds.add(Feed.current(in - 1, out - 1, 2));
        }
        Solution solution = factorised.solve(feeds);
        double[] into = new double[net.network().nodeCount()];
        for (Feed f : feeds) {
            into[f.in()] += 2;
            into[f.out()] -= 2;
        }
        double most = 1;
        for (int b = 0; b < net.network().branchCount(); b++) {
            Branch branch = net.network().branch(b);
            double i = solution.current(b);
            most = Math.max(most, Math.abs(i));
            into[branch.from()] -= i;
            into[branch.to()] += i;
            OptionalDouble v = solution.voltage(branch.from(), branch.to());
            if (branch.isOpen()) {
                assertThat(i).isZero();
            } else {
                double source = branch.emf();
                assertThat(v.orElseThrow() + source)
                        .isCloseTo(i * branch.resistance(), within(EXACT * (1 + Math.abs(source) + Math.abs(i))));
            }
        }
        for (double x : into) {
            assertThat(x).isCloseTo(0, within(1e-9 * most));
        }
    }

    /** Round every closure of the winding the signed readings of a drop test add up to nothing. */
    @Property(tries = 300)
    void dropReadingsAddUpToNothingRoundEveryClosure(@ForAll("armatures") Sample s, @ForAll int one, @ForAll int two) {
        int in = bar(s, one);
        int out = bar(s, two);
        Assume.that(in != out);
        Assume.that(ResistanceTest.of(s.armature()).between(in, out).isPresent());
        var readings = new BenchTest.Drop(in, out, 1);
        for (Circuit c : WindingGraph.of(s.armature().winding()).circuits()) {
            if (c.kind() != Circuit.Kind.CLOSED || c.bars().size() < 2) {
                continue;
            }
            List<Pair> round = new ArrayList<>();
            for (int i = 0; i < c.bars().size(); i++) {
                round.add(new Pair(
                        c.bars().get(i), c.bars().get((i + 1) % c.bars().size())));
            }
            double sum = 0;
            double size = 0;
            boolean whole = true;
            for (PairReading r : readings.read(s.armature(), round)) {
                sum += r.value();
                size += Math.abs(r.value());
                whole &= ResistanceTest.of(s.armature())
                        .between(r.from(), r.to())
                        .isPresent();
            }
            // A break leaves a gap over which the meter reads nothing and the sum means nothing.
            if (whole) {
                assertThat(sum).isCloseTo(0, within(EXACT * (1 + size)));
            }
        }
    }

    /** A whole walk round the commutator in a closed winding of one circuit, faults or not, comes back to its start. */
    @Property(tries = 200)
    void aWholeWalkAddsUpToNothing(@ForAll("armatures") Sample s, @ForAll int one, @ForAll int two) {
        int in = bar(s, one);
        int out = bar(s, two);
        Assume.that(in != out);
        var resistance = ResistanceTest.of(s.armature());
        Assume.that(resistance.neighbours().stream().allMatch(r -> Double.isFinite(r.value())));
        var readings = DropTest.at(s.armature(), in, out, new Supply.Current(1)).neighbours();
        double sum = readings.stream().mapToDouble(PairReading::value).sum();
        double size = readings.stream().mapToDouble(r -> Math.abs(r.value())).sum();
        assertThat(sum).isCloseTo(0, within(EXACT * (1 + size)));
    }

    /** Round one ring without faults the coils' growler voltages are the differences that a meter reads. */
    @Property(tries = 100)
    void growlerPotentialsAreTheCoilVoltagesInASoundSimplexWinding(
            @ForAll("simplex") Sample s,
            @ForAll("growlers") Growler g,
            @ForAll @DoubleRange(min = -360, max = 360) double angle) {
        Winding w = s.armature().winding();
        var meter = GrowlerMeter.of(s.armature(), g);
        List<Double> v = meter.potentials(angle);
        w.liveCoils().forEach(c -> {
            double read = v.get(c.topBar().getAsInt() - 1) - v.get(c.bottomBar().getAsInt() - 1);
            assertThat(read).isCloseTo(g.coilVolts(w.armature(), c, angle), within(EXACT));
        });
    }

    // Reciprocity, symmetry, scale

    /** Feed at one pair and read at another: the same as feed at the other and read at the one. */
    @Property(tries = 400)
    void feedAndMeterMayChangePlaces(
            @ForAll("armatures") Sample s, @ForAll int a, @ForAll int b, @ForAll int c, @ForAll int d) {
        int in = bar(s, a);
        int out = bar(s, b);
        int from = bar(s, c);
        int to = bar(s, d);
        Assume.that(in != out && from != to);
        var resistance = ResistanceTest.of(s.armature());
        Assume.that(resistance.between(in, out).isPresent()
                && resistance.between(from, to).isPresent());
        var one = new Supply.Current(1);
        double there = DropTest.at(s.armature(), in, out, one).between(from, to).value();
        double back = DropTest.at(s.armature(), from, to, one).between(in, out).value();
        double size = resistance.between(in, out).getAsDouble()
                + resistance.between(from, to).getAsDouble();
        assertThat(there).isCloseTo(back, within(EXACT * (size + 1e-3)));
        // No reading exceeds the feed's own voltage.
        assertThat(Math.abs(there))
                .isLessThanOrEqualTo(resistance.between(in, out).getAsDouble() * (1 + EXACT) + EXACT);
    }

    /** Resistance is the drop at the feed bars per ampere, both ways alike. */
    @Property(tries = 200)
    void resistanceIsTheDropPerAmpere(@ForAll("armatures") Sample s, @ForAll int a, @ForAll int b) {
        int from = bar(s, a);
        int to = bar(s, b);
        Assume.that(from != to);
        var resistance = ResistanceTest.of(s.armature());
        OptionalDouble ohms = resistance.between(from, to);
        assertThat(resistance.between(to, from).isPresent()).isEqualTo(ohms.isPresent());
        if (ohms.isPresent()) {
            double size = EXACT * (ohms.getAsDouble() + 1e-3);
            assertThat(resistance.between(to, from).getAsDouble()).isCloseTo(ohms.getAsDouble(), within(size));
            assertThat(DropTest.at(s.armature(), from, to, new Supply.Current(1))
                            .between(from, to)
                            .value())
                    .isCloseTo(ohms.getAsDouble(), within(size));
        }
    }

    /** A sound regular winding reads alike everywhere, any number of bars apart, without equalizers or with even ones. */
    @Property(tries = 150)
    void symmetricWindingsReadEqual(@ForAll("symmetric") Sample s, @ForAll @IntRange(min = 1, max = 44) int apart) {
        Winding w = s.armature().winding();
        Assume.that(!s.equalized() || ringsAreEven(w));
        var readings = ResistanceTest.of(s.armature()).apart(apart);
        double first = readings.get(0).value();
        assertThat(readings).hasSize(bars(s)).allSatisfy(r -> {
            if (Double.isInfinite(first)) {
                assertThat(r.value()).isEqualTo(first);
            } else {
                assertThat(r.value()).isCloseTo(first, within(EXACT * (first + 1e-3)));
            }
        });
        // By arithmetic, simplex: n coils beside the rest.
        if (!s.equalized()
                && w.type() == WindingType.LAP
                && w.sets().get(0).plex().getAsInt() == 1) {
            double k = bars(s);
            int n = apart % bars(s);
            assertThat(first).isCloseTo(s.armature().soundOhms() * n * (k - n) / k, within(EXACT));
        }
    }

    /** Whether the equalizer rings moved on by one bar are the same rings. */
    private static boolean ringsAreEven(Winding w) {
        Set<Set<Integer>> rings = new LinkedHashSet<>();
        Set<Set<Integer>> moved = new LinkedHashSet<>();
        for (List<Integer> ring : WindingGraph.of(w).equipotentialBars()) {
            rings.add(new LinkedHashSet<>(ring));
            Set<Integer> next = new LinkedHashSet<>();
            ring.forEach(b -> next.add(w.armature().wrapBar(b + 1)));
            moved.add(next);
        }
        return rings.equals(moved);
    }

    /** Readings go with the supply: a voltage drives as many amperes as the resistance between the feed bars lets it. */
    @Property(tries = 200)
    void readingsScaleWithTheSupply(
            @ForAll("armatures") Sample s,
            @ForAll int a,
            @ForAll int b,
            @ForAll @DoubleRange(min = 0.1, max = 100) double size) {
        int in = bar(s, a);
        int out = bar(s, b);
        Assume.that(in != out);
        OptionalDouble ohms = ResistanceTest.of(s.armature()).between(in, out);
        Assume.that(ohms.isPresent() && ohms.getAsDouble() > 0);
        var unit = DropTest.at(s.armature(), in, out, new Supply.Current(1)).neighbours();
        var amperes =
                DropTest.at(s.armature(), in, out, new Supply.Current(size)).neighbours();
        var volts = DropTest.at(s.armature(), in, out, new Supply.Voltage(size)).neighbours();
        for (int i = 0; i < unit.size(); i++) {
            double v = unit.get(i).value();
            assertThat(amperes.get(i).value()).isCloseTo(size * v, within(EXACT * size * (Math.abs(v) + 1e-3)));
            assertThat(volts.get(i).value()).isCloseTo(size / ohms.getAsDouble() * v, within(EXACT * size));
        }
        var back = DropTest.at(s.armature(), out, in, new Supply.Current(1)).neighbours();
        for (int i = 0; i < unit.size(); i++) {
            assertThat(back.get(i).value()).isCloseTo(-unit.get(i).value(), within(EXACT));
        }
    }

    // Meters that float

    /** A meter between places that nothing joins reads nothing, in the drop test, the growler and the ground walk. */
    @Property(tries = 300)
    void aFloatingMeterReadsNothing(
            @ForAll("armatures") Sample s, @ForAll("growlers") Growler g, @ForAll int a, @ForAll int b) {
        int in = bar(s, a);
        int out = bar(s, b);
        Assume.that(in != out);
        var resistance = ResistanceTest.of(s.armature());
        boolean fed = resistance.between(in, out).isPresent();
        var drop = DropTest.at(s.armature(), in, out, new Supply.Current(1));
        var meter = GrowlerMeter.of(s.armature(), g);
        var shaft = GroundTest.barToShaft(s.armature());
        var walk = GroundTest.walk(s.armature(), in, out, new Supply.Current(1));
        for (int i = 1; i <= bars(s); i++) {
            int j = 1 + (i + Math.floorMod(a, Math.max(1, bars(s) - 1))) % bars(s);
            if (i != j && resistance.between(i, j).isEmpty()) {
                assertThat(meter.walked(a % 360, List.of(new Pair(i, j))).get(0).value())
                        .isZero();
                assertThat(meter.turned(b % 360, List.of(new Pair(i, j))).get(0).value())
                        .isZero();
                if (fed) {
                    assertThat(drop.between(i, j).value()).isZero();
                }
            }
            if (Double.isInfinite(shaft.get(i - 1))) {
                assertThat(walk.get(i - 1)).isZero();
            }
        }
        if (!fed) {
            assertThat(drop.between(in, out).value()).isInfinite();
            var held = DropTest.at(s.armature(), in, out, new Supply.Voltage(6));
            assertThat(held.between(in, out).value()).isEqualTo(6);
            assertThat(held.potentials()).allMatch(v -> v.isNaN() || v == 0 || v == 6);
        }
    }

    // The inverse

    private static Set<Pair> unordered(List<PairReading> readings) {
        Set<Pair> out = new LinkedHashSet<>();
        for (PairReading r : readings) {
            assertThat(out.add(new Pair(Math.min(r.from(), r.to()), Math.max(r.from(), r.to()))))
                    .as("%s given once", r)
                    .isTrue();
        }
        return out;
    }

    /** Every pair of a drop test that reads a value, found as by trying all, each the way round that shows it. */
    @Property(tries = 200)
    void whereFindsWhatTryingAllPairsFinds(
            @ForAll("armatures") Sample s,
            @ForAll int a,
            @ForAll int b,
            @ForAll int c,
            @ForAll int d,
            @ForAll @DoubleRange(min = 0, max = 0.3) double tolerance) {
        int in = bar(s, a);
        int out = bar(s, b);
        Assume.that(in != out);
        DropTest test = DropTest.at(s.armature(), in, out, new Supply.Current(1));
        double wanted = test.between(bar(s, c), bar(s, d)).value();
        Assume.that(Double.isFinite(wanted));
        var found = test.where(wanted, tolerance);
        for (PairReading r : found) {
            assertThat(r.value()).isEqualTo(test.between(r.from(), r.to()).value());
        }
        double slack = tolerance * Math.abs(wanted);
        double rounding = 2e-9 * scale(test);
        compare(
                s,
                unordered(found),
                (i, j) -> {
                    double v = test.between(i, j).value();
                    return Math.min(Math.abs(v - wanted), Math.abs(-v - wanted));
                },
                slack,
                rounding);
    }

    /** The same in a growler, where a reading has no sign. */
    @Property(tries = 200)
    void whereFindsWhatTryingAllPairsFindsInAGrowler(
            @ForAll("armatures") Sample s,
            @ForAll("growlers") Growler g,
            @ForAll @DoubleRange(min = -360, max = 360) double angle,
            @ForAll int c,
            @ForAll int d,
            @ForAll @DoubleRange(min = 0, max = 0.3) double tolerance) {
        int k = bars(s);
        var meter = GrowlerMeter.of(s.armature(), g);
        List<Pair> all = new ArrayList<>();
        for (int i = 1; i <= k; i++) {
            for (int j = 1; j <= k; j++) {
                all.add(new Pair(i, j));
            }
        }
        List<PairReading> each = meter.walked(angle, all);
        double wanted = each.get((bar(s, c) - 1) * k + bar(s, d) - 1).value();
        double size = each.stream().mapToDouble(PairReading::value).max().orElse(0);
        compare(
                s,
                unordered(meter.where(angle, wanted, tolerance)),
                (i, j) -> Math.abs(each.get((i - 1) * k + j - 1).value() - wanted),
                tolerance * wanted,
                2e-9 * size);
    }

    /** The same with an ohmmeter. */
    @Property(tries = 150)
    void whereFindsWhatTryingAllPairsFindsInOhms(
            @ForAll("armatures") Sample s,
            @ForAll int c,
            @ForAll int d,
            @ForAll @DoubleRange(min = 0, max = 0.3) double tolerance) {
        var test = ResistanceTest.of(s.armature());
        OptionalDouble wanted = test.between(bar(s, c), bar(s, d));
        Assume.that(wanted.isPresent());
        double ohms = wanted.getAsDouble();
        compare(
                s,
                unordered(test.where(ohms, tolerance)),
                (i, j) -> Math.abs(test.between(i, j).orElse(Double.POSITIVE_INFINITY) - ohms),
                tolerance * ohms,
                2e-9 * s.armature().soundOhms());
    }

    private interface Off {
        double by(int i, int j);
    }

    /** All pairs within the slack are found and none beyond; on its very edge rounding decides. */
    private static void compare(Sample s, Set<Pair> found, Off off, double slack, double rounding) {
        for (int i = 1; i <= bars(s); i++) {
            for (int j = i + 1; j <= bars(s); j++) {
                double by = off.by(i, j);
                if (found.contains(new Pair(i, j))) {
                    assertThat(by).isLessThanOrEqualTo(slack + rounding);
                } else {
                    assertThat(by).isGreaterThanOrEqualTo(slack * (1 - 1e-12));
                }
            }
        }
    }

    @Example
    void whereAsksForAReadingAndATolerance() {
        var a = BenchArmature.sound(
                Winding.build(Armature.of(16, 16, 2), WindingSpec.lap(1, Direction.PROGRESSIVE)), 1);
        var drop = DropTest.at(a, 1, 9, new Supply.Current(1));
        assertThatThrownBy(() -> drop.where(Double.NaN, 0.1)).hasMessageContaining("must be a number");
        assertThatThrownBy(() -> drop.where(1, 1.5)).hasMessageContaining("0 % to 100 %");
        assertThatThrownBy(() -> ResistanceTest.of(a).where(Double.POSITIVE_INFINITY, 0.1))
                .hasMessageContaining("give at least 0 ohm");
        assertThatThrownBy(() -> ResistanceTest.of(a).where(-1, 0.1)).hasMessageContaining("-1.0 ohm");
        assertThatThrownBy(() -> DropTest.at(a, 1, 17, new Supply.Current(1)))
                .hasMessageContaining("bars run from 1 to 16");
        assertThatThrownBy(() -> DropTest.at(a, 4, 4, new Supply.Current(1)))
                .hasMessageContaining("two different bars");
        var joined = new Fault.BarShort(1, 9).in(a);
        assertThatThrownBy(() -> DropTest.at(joined, 1, 9, new Supply.Voltage(6)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("6.0 V at bars 1 and 9")
                .hasMessageContaining("feed a current");
        assertThatThrownBy(() -> GroundTest.walk(joined, 1, 9, new Supply.Voltage(6)))
                .hasMessageContaining("joined with no resistance");
        assertThatThrownBy(() -> GroundTest.walk(a, 0, 9, new Supply.Voltage(6)))
                .hasMessageContaining("bars run from 1 to 16");
        // An off-scale feed: two opens leave bars 3 to 8 apart, and a search for a reading finds that reading only.
        var parted = new Fault.OpenCoil(8).in(new Fault.OpenCoil(2).in(a));
        var off = DropTest.at(parted, 1, 5, new Supply.Current(1));
        assertThat(off.between(1, 5).value()).isInfinite();
        assertThat(off.where(0.5, 0.1)).isEmpty();
        // 15 pairs among bars 3 to 8 and 45 among the other ten.
        assertThat(off.where(0, 0)).hasSize(60);
    }

    // Feeds

    /** The advised feeds, taken together, reach every circuit, and no feed stands on bars that nothing joins. */
    @Property(tries = 200)
    void advisedFeedsReachEveryCoil(@ForAll("symmetric") Sample s) {
        Winding w = s.armature().winding();
        Set<Integer> reached = new LinkedHashSet<>();
        for (FeedBars feed : FeedBars.advised(w, s.equalized())) {
            assertThat(ResistanceTest.of(s.armature()).between(feed.in(), feed.out()))
                    .as("%s", feed)
                    .isPresent();
            DropTest test = DropTest.at(s.armature(), feed.in(), feed.out(), new Supply.Current(1));
            if (w.type() == WindingType.FROG_LEG || s.equalized()) {
                // Equalizers and the coils that do their work need carry nothing.
                for (int b = 1; b <= bars(s); b++) {
                    if (!test.potentials().get(b - 1).isNaN()) {
                        reached.add(b);
                    }
                }
                continue;
            }
            w.liveCoils().forEach(c -> {
                double v = test.between(c.topBar().getAsInt(), c.bottomBar().getAsInt())
                        .value();
                if (Math.abs(v) > 1e-6) {
                    reached.add(c.number());
                }
            });
        }
        assertThat(reached).hasSize(bars(s));
    }

    /** Two faults at what is one place but for rounding: no wire lies between, and currents stay true. */
    @Example
    void placesThatDifferByRoundingAreOne() {
        var a = BenchArmature.sound(
                Winding.build(Armature.of(16, 16, 2), WindingSpec.lap(1, Direction.PROGRESSIVE)), 1);
        double rounded = 0.5 - 0.8 / 2;
        assertThat(rounded).isNotEqualTo(0.1);
        var both = new Fault.SlotShort(3, 0.1, 11, 0.5).in(new Fault.ShortedTurns(3, 0.8).in(a));
        var net = BenchNetwork.of(both);
        assertThat(net.segments().stream().filter(x -> x.coil() == 3).mapToDouble(BenchNetwork.Segment::share))
                .containsExactly(rounded, 0.8, 1 - 0.9);
        assertThat(net.node(new Point.Inside(3, 0.1))).isEqualTo(net.node(new Point.Inside(3, rounded)));
        assertThat(net.network().solve(Feed.current(0, 8, 1)).residual()).isLessThan(1e-12);
    }

    /** A listed winding is fed circuit by circuit. */
    @Example
    void listedWindingsAreFedWhereTheirCoilsAreJoined() {
        for (int i = 0; i < 60; i++) {
            Winding w = BenchSamples.winding(BenchSamples.Kind.LISTED, new Random(i));
            var a = BenchArmature.sound(w, 1);
            var feeds = FeedBars.advised(w, false);
            long circuits = WindingGraph.of(w).circuits().stream()
                    .filter(c -> !c.steps().isEmpty() && c.bars().size() > 1)
                    .count();
            assertThat(feeds).hasSize((int) circuits);
            for (FeedBars f : feeds) {
                assertThat(ResistanceTest.of(a).between(f.in(), f.out())).isPresent();
            }
        }
    }
}
