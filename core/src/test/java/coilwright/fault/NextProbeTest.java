package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.bench.PairReading;
import coilwright.bench.TestRun;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The next reading proposed tells the explanations apart, and the walk from reading to reading ends. */
final class NextProbeTest {
    @Tag("long")
    @Test
    void readingAfterReadingLeadsToTheFault() {
        var shop = new Workshop(30_01);
        int right = 0;
        int tried = 0;
        for (int i = 0; i < 24; i++) {
            Winding w = shop.winding(20, true);
            BenchArmature sound = BenchArmature.sound(w, 1);
            Fault fault = shop.fault(w, i % 5).orElseThrow();
            BenchArmature faulty = fault.in(sound);
            var drop = new BenchTest.Drop(1, Math.max(3, w.armature().bars() / 2), 1);
            List<TestRun> runs = new ArrayList<>();
            List<BenchTest.Pair> some = drop.walk(w).subList(0, 5);
            List<PairReading> first = drop.read(faulty, some);
            if (first.stream().anyMatch(r -> Double.isInfinite(r.value()))
                    || first.stream().allMatch(r -> r.value() == 0)) {
                continue;
            }
            tried++;
            runs.add(new TestRun(drop, first));
            Diagnosis d = Diagnosis.of(sound, runs);
            int steps = 0;
            Optional<NextProbe> next = NextProbe.of(d, Growler.USUAL);
            while (next.isPresent() && steps++ < 40) {
                NextProbe n = next.get();
                if (n.information() > 0 && n.information() < Double.POSITIVE_INFINITY) {
                    assertThat(n.outcomes().stream()
                                    .map(NextProbe.Outcome::value)
                                    .distinct())
                            .as("what is read tells something")
                            .hasSizeGreaterThan(1);
                }
                add(runs, n.test(), n.test().read(faulty, List.of(n.pair())).get(0));
                d = Diagnosis.of(sound, runs);
                next = NextProbe.of(d, Growler.USUAL);
            }
            assertThat(steps).as("it ends").isLessThan(40);
            if (!d.ranked().isEmpty() && Workshop.names(d.ranked().get(0), List.of(fault))) {
                right++;
            }
        }
        assertThat(tried).isGreaterThan(15);
        assertThat(right).isGreaterThanOrEqualTo(tried * 8 / 10);
    }

    private static void add(List<TestRun> runs, BenchTest test, PairReading reading) {
        for (int i = 0; i < runs.size(); i++) {
            if (runs.get(i).test().equals(test)) {
                List<PairReading> more = new ArrayList<>(runs.get(i).readings());
                more.add(reading);
                runs.set(i, new TestRun(test, more));
                return;
            }
        }
        runs.add(new TestRun(test, List.of(reading)));
    }

    @Test
    void nothingIsProposedForASoundWinding() {
        Winding w = new Workshop(30_02).winding(20, true);
        BenchArmature sound = BenchArmature.sound(w, 1);
        var drop = new BenchTest.Drop(1, Math.max(3, w.armature().bars() / 2), 1);
        Diagnosis d = Diagnosis.of(sound, List.of(new TestRun(drop, drop.readWalk(sound))));
        assertThat(d.verdict()).isEqualTo(Diagnosis.Verdict.SOUND);
        assertThat(NextProbe.of(d, Growler.USUAL)).isEmpty();
    }

    @Test
    void aDoubtfulReadingIsTakenAgainFirst() {
        Winding w = new Workshop(30_03).winding(20, true);
        BenchArmature sound = BenchArmature.sound(w, 1);
        var drop = new BenchTest.Drop(1, Math.max(3, w.armature().bars() / 2), 1);
        List<PairReading> readings = new ArrayList<>(drop.readWalk(sound));
        PairReading was = readings.get(1);
        readings.set(1, new PairReading(was.from(), was.to(), -was.value()));
        Diagnosis d = Diagnosis.of(sound, List.of(new TestRun(drop, readings)));
        assertThat(d.suspects()).isNotEmpty();
        NextProbe next = NextProbe.of(d, Growler.USUAL).orElseThrow();
        assertThat(next.pair()).isEqualTo(was.pair());
        assertThat(next.instruction()).contains("again").contains("wrong sign");
    }
}
