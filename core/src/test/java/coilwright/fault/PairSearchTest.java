package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;

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
import org.junit.jupiter.api.Test;

/** Two faults at once, of the kinds that the search looks for by themselves. */
final class PairSearchTest {
    private static final BenchTest OHMS = new BenchTest.Resistance();

    private static BenchArmature lap(int bars, int poles, int plex) {
        return BenchArmature.sound(
                Winding.build(Armature.of(bars, bars, poles), WindingSpec.lap(plex, Direction.PROGRESSIVE)), 1);
    }

    private static Fault bar(int number) {
        return new Fault.Ground(Point.bar(number));
    }

    private static Fault coil(int number, double along) {
        return new Fault.Ground(new Point.Inside(number, along));
    }

    /** Readings off by up to three thousandths. */
    private static List<TestRun> runs(BenchArmature sound, List<Fault> faults, BenchTest... tests) {
        BenchArmature faulty = Workshop.with(sound, faults);
        List<TestRun> out = new ArrayList<>();
        for (BenchTest test : tests) {
            List<PairReading> read = new ArrayList<>();
            for (PairReading r : test.readWalk(faulty)) {
                read.add(r.atScale(1 + 0.001 * ((read.size() * 5 + out.size()) % 7 - 3)));
            }
            out.add(new TestRun(test, read));
        }
        return out;
    }

    private static Diagnosis found(BenchArmature sound, List<Fault> faults, BenchTest... tests) {
        Diagnosis d = Diagnosis.of(sound, runs(sound, faults, tests));
        assertThat(d.verdict()).as("%s", faults).isEqualTo(Diagnosis.Verdict.FAULTY);
        assertThat(Workshop.names(d.ranked().get(0), faults))
                .as("%s told as %s", faults, d.ranked().get(0))
                .isTrue();
        return d;
    }

    /** Two circuits, of the odd and of the even bars: one joint between them shows nowhere within either. */
    @Test
    void twoJointsBetweenCircuits() {
        BenchArmature apart = lap(8, 2, 2);
        for (Fault second : List.of(new Fault.BarShort(4, 5), new Fault.BarShort(6, 7), new Fault.BarShort(8, 1))) {
            found(apart, List.of(new Fault.BarShort(2, 3), second), OHMS);
        }
        found(apart, List.of(new Fault.BarShort(8, 1), new Fault.BarShort(4, 5)), OHMS, new BenchTest.Drop(1, 5, 1));
    }

    @Test
    void aJointBetweenCircuitsBesideAnotherFault() {
        BenchArmature apart = lap(8, 2, 2);
        for (Fault other : List.of(
                new Fault.OpenCoil(4),
                new Fault.ShortedCoil(7),
                new Fault.HighResistance(1, 2),
                new Fault.OpenCoil(8))) {
            found(apart, List.of(new Fault.BarShort(2, 3), other), OHMS);
            found(apart, List.of(new Fault.BarShort(8, 1), other), OHMS);
        }
    }

    @Test
    void twoGroundsOfAFewBars() {
        BenchArmature sound = lap(10, 2, 1);
        BenchTest[] shaft = {OHMS, new BenchTest.GroundWalk(1, 4, 1)};
        found(sound, List.of(bar(3), bar(8)), shaft);
        found(sound, List.of(bar(1), bar(10)), shaft);
        found(sound, List.of(bar(3), coil(7, 0.4)), shaft);
        Diagnosis d = found(sound, List.of(coil(2, 0.3), coil(7, 0.6)), shaft);
        List<Double> along = d.ranked().get(0).faults().stream()
                .map(f -> ((Point.Inside) ((Fault.Ground) f).place()).fraction())
                .sorted()
                .toList();
        assertThat(along.get(0)).isBetween(0.25, 0.35);
        assertThat(along.get(1)).isBetween(0.55, 0.65);
    }

    /** Beyond sixty bars, coils are looked at only beside the likeliest bars. */
    @Test
    void twoGroundsOfManyBars() {
        BenchArmature sound = lap(62, 2, 1);
        BenchTest[] shaft = {new BenchTest.GroundWalk(1, 20, 1), new BenchTest.Ground()};
        found(sound, List.of(bar(9), bar(40)), shaft);
        found(sound, List.of(coil(30, 0.5), bar(50)), shaft);
    }

    /** One reading ten times too high, and two faults beside it. */
    @Test
    void twoFaultsBesideASlip() {
        BenchArmature sound = lap(12, 4, 1);
        List<Fault> faults = List.of(new Fault.ShortedCoil(3), new Fault.HighResistance(8, 3));
        List<TestRun> runs = runs(sound, faults, OHMS, new BenchTest.Drop(1, 4, 1));
        List<PairReading> slipped = new ArrayList<>(runs.get(0).readings());
        slipped.set(5, slipped.get(5).atScale(10));
        Diagnosis d = Diagnosis.of(sound, List.of(new TestRun(OHMS, slipped), runs.get(1)));
        assertThat(Workshop.names(d.ranked().get(0), faults)).isTrue();
        assertThat(d.suspects()).hasSize(1).allMatch(s -> s.reading().equals(slipped.get(5)));
    }
}
