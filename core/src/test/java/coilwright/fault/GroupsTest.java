package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.bench.PairReading;
import coilwright.bench.Point;
import coilwright.bench.TestRun;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Which faults read the same, by solving every one from the beginning; and that the quick way reads like the long. */
final class GroupsTest {
    private static final List<Winding> SMALL = List.of(
            Winding.build(Armature.of(6, 6, 2), WindingSpec.lap(1, Direction.PROGRESSIVE)),
            Winding.build(Armature.of(8, 8, 4), WindingSpec.lap(1, Direction.RETROGRESSIVE)),
            Winding.build(Armature.of(9, 9, 4), WindingSpec.wave(1, Direction.PROGRESSIVE)),
            Winding.build(Armature.of(11, 11, 6), WindingSpec.wave(1, Direction.PROGRESSIVE)),
            Winding.build(
                    Armature.of(6, 11, 4),
                    WindingSpec.wave(1, Direction.PROGRESSIVE).withDeadCoils(List.of(12))),
            Winding.build(Armature.of(7, 7, 2), WindingSpec.lap(2, Direction.PROGRESSIVE)));

    private static List<Fault> fixed(Winding w) {
        List<Fault> out = new ArrayList<>();
        for (Coil c : w.liveCoils()) {
            out.add(new Fault.OpenCoil(c.number()));
            out.add(new Fault.ShortedCoil(c.number()));
            out.add(new Fault.ReversedCoil(c.number()));
            for (int off : new int[] {-2, -1, 1, 2}) {
                out.add(new Fault.WrongBar(
                        c.number(), true, w.armature().wrapBar(c.topBar().getAsInt() + off)));
                out.add(new Fault.WrongBar(
                        c.number(), false, w.armature().wrapBar(c.bottomBar().getAsInt() + off)));
            }
        }
        for (int bar = 1; bar <= w.armature().bars(); bar++) {
            int next = w.armature().wrapBar(bar + 1);
            out.add(new Fault.BarShort(bar, next));
            for (Fault.Leads leads : Fault.Leads.values()) {
                out.add(new Fault.CrossedLeads(bar, next, leads));
            }
        }
        return out;
    }

    @Test
    void aGroupHoldsExactlyTheFaultsThatReadTheSame() {
        for (Winding w : SMALL) {
            BenchArmature sound = BenchArmature.sound(w, 1);
            List<BenchTest> tests = List.of(new BenchTest.Drop(1, 3, 1));
            List<Fault> all = fixed(w);
            List<double[]> readings =
                    all.stream().map(f -> values(tests.get(0), f.in(sound))).toList();
            double[] none = values(tests.get(0), sound);
            for (int i = 0; i < all.size(); i++) {
                if (Double.isInfinite(max(readings.get(i))) || max(readings.get(i)) == 0) {
                    // A feed broken, or shorted, reads nothing that could be explained.
                    continue;
                }
                Set<Fault> same = new LinkedHashSet<>();
                for (int k = 0; k < all.size(); k++) {
                    if (proportional(readings.get(i), readings.get(k))) {
                        same.add(all.get(k));
                    }
                }
                Diagnosis d = Diagnosis.of(
                        sound,
                        List.of(new TestRun(
                                tests.get(0), tests.get(0).readWalk(all.get(i).in(sound)))));
                String what = w.type() + " " + w.armature() + " " + all.get(i);
                if (proportional(readings.get(i), none)) {
                    assertThat(d.verdict()).as(what).isEqualTo(Diagnosis.Verdict.SOUND);
                    continue;
                }
                Set<Fault> found = new LinkedHashSet<>();
                Diagnosis.Explanation first = d.ranked().get(0);
                List<List<Fault>> group = new ArrayList<>(first.sameReadings());
                group.add(first.faults());
                for (List<Fault> g : group) {
                    if (g.size() == 1 && all.contains(g.get(0))) {
                        found.add(g.get(0));
                    }
                }
                assertThat(found).as(what).containsExactlyInAnyOrderElementsOf(same);
            }
        }
    }

    private static double[] values(BenchTest test, BenchArmature armature) {
        return test.readWalk(armature).stream().mapToDouble(PairReading::value).toArray();
    }

    private static double max(double[] v) {
        double most = 0;
        for (double x : v) {
            most = Math.max(most, Math.abs(x));
        }
        return most;
    }

    private static boolean proportional(double[] x, double[] y) {
        double xx = 0;
        double xy = 0;
        for (int i = 0; i < x.length; i++) {
            xx += x[i] * x[i];
            xy += x[i] * y[i];
        }
        double scale = xx == 0 ? 0 : xy / xx;
        if (!(scale > 0)) {
            return max(x) == 0 && max(y) == 0;
        }
        for (int i = 0; i < x.length; i++) {
            if (!(Math.abs(scale * x[i] - y[i]) <= 1e-9 * max(y))) {
                return false;
            }
        }
        return true;
    }

    @Test
    void theQuickWayReadsLikeTheLongWay() {
        var shop = new Workshop(7);
        int quick = 0;
        for (int i = 0; i < 400; i++) {
            Winding w = i % 8 < SMALL.size() ? SMALL.get(i % 8) : shop.winding(40, false);
            BenchArmature sound = BenchArmature.sound(w, 0.37);
            List<Fault> faults = new ArrayList<>();
            shop.fault(w, i % Workshop.KINDS).ifPresent(faults::add);
            if (i % 3 == 0) {
                // A break that a short within the same coil bridges is another matter for each place of the two.
                shop.fault(w, shop.random().nextInt(5))
                        .filter(f -> faults.stream()
                                .noneMatch(o -> f.coils().stream().anyMatch(o.coils()::contains)))
                        .ifPresent(faults::add);
            }
            Optional<Alterations.Altered> altered = new Alterations(sound).of(faults);
            if (faults.isEmpty() || altered.isEmpty()) {
                continue;
            }
            var network = new SoundNetwork(sound);
            for (BenchTest test : List.of(
                    new BenchTest.Drop(1, w.armature().bars() / 2 + 1, 2.5),
                    new BenchTest.Resistance(),
                    new BenchTest.GrowlerWalked(Growler.USUAL, 33),
                    new BenchTest.GrowlerTurned(new Growler(50, 70), 200))) {
                var model = new RunModel(network, new TestRun(test, test.readWalk(sound)));
                Optional<double[]> fast =
                        model.predict(altered.get().list(), altered.get().alone());
                if (fast.isEmpty()) {
                    continue;
                }
                quick++;
                double[] slow = model.slow(Workshop.with(sound, faults));
                double most = 0;
                for (double x : slow) {
                    most = Double.isInfinite(x) ? most : Math.max(most, Math.abs(x));
                }
                for (int k = 0; k < slow.length; k++) {
                    if (Double.isInfinite(slow[k])) {
                        assertThat(fast.get()[k]).as("%s %s", faults, test).isInfinite();
                    } else {
                        assertThat(fast.get()[k])
                                .as("%s %s %s reading %d", w.type(), faults, test, k)
                                .isCloseTo(slow[k], within(1e-9 * Math.max(most, 1e-3)));
                    }
                }
            }
        }
        assertThat(quick).isGreaterThan(900);
    }

    /** Two circuits, which bars joined by mistake can link. */
    private static final List<Winding> TWO_CIRCUITS = List.of(
            Winding.build(Armature.of(8, 8, 2), WindingSpec.lap(2, Direction.PROGRESSIVE)),
            Winding.build(Armature.of(10, 10, 4), WindingSpec.lap(2, Direction.RETROGRESSIVE)),
            Winding.build(Armature.of(9, 9, 2), WindingSpec.lap(3, Direction.PROGRESSIVE)));

    private static List<BenchTest> allTests() {
        return List.of(
                new BenchTest.Drop(1, 4, 2.5),
                new BenchTest.Drop(1, 3, 1),
                new BenchTest.Resistance(),
                new BenchTest.GrowlerWalked(Growler.USUAL, 33),
                new BenchTest.GrowlerTurned(new Growler(50, 70), 200),
                new BenchTest.Ground(),
                new BenchTest.GroundWalk(2, 5, 1));
    }

    private static List<List<Fault>> acrossCircuits(Winding w) {
        List<List<Fault>> out = new ArrayList<>();
        for (int a = 1; a <= w.armature().bars(); a++) {
            for (int b = a + 1; b <= w.armature().bars(); b++) {
                out.add(List.of(
                        new Fault.BarShort(a, w.armature().wrapBar(a + 1)),
                        new Fault.BarShort(b, w.armature().wrapBar(b + 1))));
            }
        }
        return out;
    }

    private static List<List<Fault>> twoGrounds(Winding w) {
        List<Fault> places = new ArrayList<>();
        for (int bar = 1; bar <= w.armature().bars(); bar++) {
            places.add(new Fault.Ground(Point.bar(bar)));
            places.add(new Fault.Ground(new Point.Inside(bar, 0.1 + 0.8 / bar)));
        }
        places.add(new Fault.Ground(new Point.Inside(1, 0.15)));
        List<List<Fault>> out = new ArrayList<>();
        for (int a = 0; a < places.size(); a++) {
            for (int b = a + 1; b < places.size(); b++) {
                out.add(List.of(places.get(a), places.get(b)));
            }
        }
        return out;
    }

    private static List<List<Fault>> mixed(Winding w) {
        List<List<Fault>> out = new ArrayList<>();
        for (int bar = 1; bar <= w.armature().bars(); bar++) {
            var joint = new Fault.BarShort(bar, w.armature().wrapBar(bar + 1));
            for (Coil c : w.liveCoils()) {
                out.add(List.of(new Fault.OpenCoil(c.number()), joint));
                out.add(List.of(joint, new Fault.ShortedTurns(c.number(), 0.4)));
                out.add(List.of(joint, new Fault.HighResistance(c.number(), 0.7)));
                if (bar <= 2) {
                    for (Coil other : w.liveCoils()) {
                        if (c.number() != other.number()) {
                            out.add(List.of(new Fault.SlotShort(c.number(), 0.3, other.number(), 0.65)));
                        }
                    }
                }
            }
            out.add(List.of(joint));
        }
        for (Fault f : fixed(w)) {
            out.add(List.of(f));
        }
        return out;
    }

    @Test
    void jointsAcrossCircuitsAndGroundsReadLikeTheLongWay() {
        List<Winding> windings = new ArrayList<>(TWO_CIRCUITS);
        windings.addAll(SMALL.subList(0, 3));
        for (Winding w : windings) {
            BenchArmature sound = BenchArmature.sound(w, 0.37);
            List<TestRun> runs = allTests().stream()
                    .map(t -> new TestRun(t, t.readWalk(sound)))
                    .toList();
            var weigher = new Weigher(sound, runs);
            List<List<Fault>> all = new ArrayList<>(acrossCircuits(w));
            all.addAll(twoGrounds(w));
            all.addAll(mixed(w));
            for (List<Fault> faults : all) {
                double[][] quick = weigher.predict(faults);
                for (int r = 0; r < quick.length; r++) {
                    double[] slow = weigher.models().get(r).slow(Workshop.with(sound, faults));
                    double most = 1e-3;
                    for (double x : slow) {
                        most = Double.isInfinite(x) ? most : Math.max(most, Math.abs(x));
                    }
                    for (int k = 0; k < slow.length; k++) {
                        String what = w.type() + " " + w.armature() + " " + faults + " "
                                + runs.get(r).test() + " reading " + k;
                        if (Double.isInfinite(slow[k])) {
                            assertThat(quick[r][k]).as(what).isInfinite();
                        } else {
                            assertThat(quick[r][k]).as(what).isCloseTo(slow[k], within(1e-8 * most));
                        }
                    }
                }
            }
        }
    }

    @Tag("long")
    @Test
    void twoJointsAcrossCircuitsOrTwoGroundsComeFirstWithTheirLikes() {
        for (Winding w : TWO_CIRCUITS.subList(0, 2)) {
            BenchArmature sound = BenchArmature.sound(w, 1);
            List<BenchTest> tests =
                    List.of(new BenchTest.Resistance(), new BenchTest.Drop(1, 5, 1), new BenchTest.Ground());
            List<List<Fault>> all = new ArrayList<>(acrossCircuits(w));
            twoGrounds(w).stream()
                    .filter(f -> f.stream().allMatch(g -> !g.bars().isEmpty()))
                    .forEach(all::add);
            for (List<Fault> faults : all) {
                BenchArmature faulty = Workshop.with(sound, faults);
                List<TestRun> runs = tests.stream()
                        .map(t -> new TestRun(t, t.readWalk(faulty)))
                        .toList();
                Diagnosis d = Diagnosis.of(sound, runs);
                Diagnosis.Explanation first = d.ranked().get(0);
                String what = w.armature() + " " + faults + " gave " + first.faults();
                assertThat(Workshop.names(first, faults)).as(what).isTrue();
                List<List<Fault>> group = new ArrayList<>(first.sameReadings());
                group.add(first.faults());
                for (List<Fault> g : group) {
                    for (BenchTest t : tests) {
                        if (g.stream().allMatch(f -> fixed(w).contains(f) || f instanceof Fault.Ground)) {
                            assertThat(Report.proportional(values(t, faulty), values(t, Workshop.with(sound, g))))
                                    .as(what + " with " + g + " " + t)
                                    .isTrue();
                        }
                    }
                }
            }
        }
    }
}
