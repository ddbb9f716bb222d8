package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import coilwright.bench.TestRun;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The signatures that the trade's tables print, written down as readings, lead the diagnosis to the fault they stand
 * for. Sources: Identification and Testing of DC Armatures, training module JQR 251.36/.37/.41, p. 5; values for a
 * supply V by arithmetic from it.
 */
final class HandbookDiagnosisTest {
    /** 2 poles, 16 bars, fed with 1 V at bars 1 and 9. */
    private static final BenchArmature LAP =
            BenchArmature.sound(Winding.build(Armature.of(16, 16, 2), WindingSpec.lap(1, Direction.PROGRESSIVE)), 1);

    private static final BenchTest FED = new BenchTest.Drop(1, 9, 1);

    /** 4 poles, 13 bars. */
    private static final BenchArmature WAVE =
            BenchArmature.sound(Winding.build(Armature.of(13, 13, 4), WindingSpec.wave(1, Direction.PROGRESSIVE)), 1);

    private static Diagnosis walk(BenchArmature armature, BenchTest test, double... volts) {
        List<PairReading> readings = new ArrayList<>();
        for (int i = 0; i < volts.length; i++) {
            readings.add(new PairReading(i + 1, (i + 1) % volts.length + 1, volts[i]));
        }
        return Diagnosis.of(armature, List.of(new TestRun(test, readings)));
    }

    private static List<List<Fault>> group(Diagnosis d) {
        Diagnosis.Explanation first = d.ranked().get(0);
        return Stream.concat(Stream.of(first.faults()), first.sameReadings().stream())
                .toList();
    }

    @Test
    void equalDropsAreASoundWinding() {
        double v = 1.0 / 8;
        Diagnosis d = walk(LAP, FED, v, v, v, v, v, v, v, v, -v, -v, -v, -v, -v, -v, -v, -v);
        assertThat(d.verdict()).isEqualTo(Diagnosis.Verdict.SOUND);
        assertThat(d.unseen()).contains("reversed-coil", "ground");
    }

    @Test
    void oneReadingOfNothingIsAShortedCoilOrTouchingBars() {
        double up = 1.0 / 7;
        double v = 1.0 / 8;
        Diagnosis d = walk(LAP, FED, up, up, 0, up, up, up, up, up, -v, -v, -v, -v, -v, -v, -v, -v);
        assertThat(d.verdict()).isEqualTo(Diagnosis.Verdict.FAULTY);
        assertThat(group(d)).contains(List.of(new Fault.ShortedCoil(3)), List.of(new Fault.BarShort(3, 4)));
    }

    @Test
    void oneHighReadingBetweenZerosIsAnOpenCoil() {
        double v = 1.0 / 8;
        Diagnosis d = walk(LAP, FED, 0, 0, 1, 0, 0, 0, 0, 0, -v, -v, -v, -v, -v, -v, -v, -v);
        assertThat(d.verdict()).isEqualTo(Diagnosis.Verdict.FAULTY);
        assertThat(group(d)).contains(List.of(new Fault.OpenCoil(3)));
    }

    /** From memory of the workshop books: double, reversed, double. */
    @Test
    void doubleReversedDoubleIsCrossedLeads() {
        double v = 1.0 / 8;
        Diagnosis d = walk(LAP, FED, v, v, 2 * v, -v, 2 * v, v, v, v, -v, -v, -v, -v, -v, -v, -v, -v);
        assertThat(d.ranked().get(0).faults()).isEqualTo(List.of(new Fault.CrossedLeads(4, 5, Fault.Leads.BOTH)));
    }

    /**
     * The module says P/2 readings of nothing for a shorted coil of a wave winding; by the strings of P/2 coils between
     * neighbouring bars they are about half here, and a single reading of nothing is two bars touching. Ohms: a coil of
     * 1 ohm left in the string beside 11 others, and strings of 2 beside 10.
     */
    @Test
    void halfOnTwoPairsOfAFourPoleWaveIsAShortedCoil() {
        double half = 11.0 / 12;
        double rest = 20.0 / 12;
        Diagnosis d = walk(
                WAVE,
                new BenchTest.Resistance(),
                rest,
                rest,
                half,
                rest,
                rest,
                rest,
                rest,
                rest,
                half,
                rest,
                rest,
                rest,
                rest);
        assertThat(group(d)).contains(List.of(new Fault.ShortedCoil(3)));
        assertThat(group(d)).doesNotContain(List.of(new Fault.BarShort(3, 4)));
    }

    @Test
    void nothingOnOnePairOfAWaveIsTwoBarsTouching() {
        List<PairReading> touching = new BenchTest.Resistance().readWalk(new Fault.BarShort(5, 6).in(WAVE));
        assertThat(touching.stream().filter(r -> r.value() == 0)).hasSize(1);
        Diagnosis d = Diagnosis.of(WAVE, List.of(new TestRun(new BenchTest.Resistance(), touching)));
        assertThat(d.ranked().get(0).faults()).isEqualTo(List.of(new Fault.BarShort(5, 6)));
    }

    /** A lap winding shows two places of nothing to the shaft; the true one stays when the feed is moved. */
    @Test
    void theTrueGroundIsToldFromThePhantom() {
        double v = 1.0 / 8;
        List<PairReading> first = new ArrayList<>();
        for (int bar = 1; bar <= 16; bar++) {
            // Bars 5 and 13 stand at one potential, half way down each side.
            double potential = bar <= 9 ? 1 - (bar - 1) * v : (bar - 9) * v;
            first.add(new PairReading(bar, BenchTest.SHAFT, potential - 0.5));
        }
        Diagnosis once = Diagnosis.of(LAP, List.of(new TestRun(new BenchTest.GroundWalk(1, 9, 1), first)));
        assertThat(group(once))
                .contains(
                        List.of(new Fault.Ground(new coilwright.bench.Point.Bar(5))),
                        List.of(new Fault.Ground(new coilwright.bench.Point.Bar(13))));
        List<PairReading> second = new ArrayList<>();
        for (int bar = 1; bar <= 16; bar++) {
            int from = Math.floorMod(bar - 3, 16) + 1;
            double potential = from <= 9 ? 1 - (from - 1) * v : (from - 9) * v;
            second.add(new PairReading(bar, BenchTest.SHAFT, potential - (1 - 2 * v)));
        }
        Diagnosis twice = Diagnosis.of(
                LAP,
                List.of(
                        new TestRun(new BenchTest.GroundWalk(1, 9, 1), first),
                        new TestRun(new BenchTest.GroundWalk(3, 11, 1), second)));
        assertThat(group(twice)).containsExactly(List.of(new Fault.Ground(new coilwright.bench.Point.Bar(5))));
    }
}
