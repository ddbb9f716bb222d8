package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.bench.PairReading;
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
            shop.fault(w, i % 11).ifPresent(faults::add);
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
}
