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
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * What the next reading is worth, for explanations and probabilities chosen by hand. Explanations that a reading tells
 * apart for sure are worth their entropy −Σ p ln p.
 */
final class ProbeWorthTest {
    private static final BenchArmature SOUND =
            BenchArmature.sound(Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE)), 1);
    private static final BenchTest DROP = new BenchTest.Drop(1, 4, 1);
    private static final BenchTest OHMS = new BenchTest.Resistance();

    private static TestRun run(BenchTest test, int pairs) {
        return new TestRun(test, test.readWalk(SOUND).subList(0, pairs));
    }

    private static Diagnosis.Explanation explained(double p, Fault first, Fault... alike) {
        return new Diagnosis.Explanation(
                List.of(first), p, java.util.Arrays.stream(alike).map(List::of).toList(), List.of());
    }

    /** Half the scale of the job's own values in every run. */
    private static Diagnosis diagnosis(List<TestRun> runs, double sound, Diagnosis.Explanation... ranked) {
        return new Diagnosis(
                SOUND,
                runs,
                Diagnosis.Verdict.UNCLEAR,
                sound,
                List.of(ranked),
                List.of(),
                List.of(),
                0.01,
                runs.stream().map(r -> 0.5).toList(),
                ranked.length == 0 ? List.of() : ranked[0].faults());
    }

    private static NextProbe next(Diagnosis d) {
        return NextProbe.of(d, Growler.USUAL).orElseThrow();
    }

    private static double reads(BenchTest test, BenchTest.Pair pair, List<Fault> faults) {
        BenchArmature a = SOUND;
        for (Fault f : faults) {
            a = f.in(a);
        }
        return test.read(a, List.of(pair)).get(0).value();
    }

    private static double entropy(double... p) {
        double sum = 0;
        for (double x : p) {
            sum -= x * Math.log(x);
        }
        return sum;
    }

    @Test
    void aSureAnswerIsWorthTheEntropy() {
        var first = explained(0.75, new Fault.OpenCoil(3));
        var second = explained(0.25, new Fault.ShortedCoil(9));
        NextProbe here = next(diagnosis(List.of(run(OHMS, 1)), 0, first, second));
        assertThat(here.test()).isEqualTo(OHMS);
        assertThat(here.information()).isCloseTo(entropy(0.75, 0.25), within(1e-4));
        assertThat(here.instruction())
                .isEqualTo("probes on bars " + here.pair().from() + " and "
                        + here.pair().to() + "; " + OHMS.setUp());
        assertThat(here.outcomes())
                .extracting(NextProbe.Outcome::faults)
                .containsExactly(first.faults(), second.faults());
        for (NextProbe.Outcome o : here.outcomes()) {
            // In the scale of this run.
            assertThat(o.value()).isCloseTo(0.5 * reads(OHMS, here.pair(), o.faults()), within(1e-9));
        }
        // All of the walk read already, and the pairs beside it: another test, in the scale of a sound winding.
        List<PairReading> all = new ArrayList<>(OHMS.readWalk(SOUND));
        IntStream.rangeClosed(1, 12)
                .mapToObj(b -> new BenchTest.Pair(b, SOUND.winding().armature().wrapBar(b + 2)))
                .forEach(p -> all.addAll(OHMS.read(SOUND, List.of(p))));
        NextProbe there = next(diagnosis(List.of(new TestRun(OHMS, all)), 0, first, second));
        assertThat(there.test()).isNotEqualTo(OHMS);
        assertThat(there.information()).isCloseTo(entropy(0.75, 0.25), within(1e-4));
        for (NextProbe.Outcome o : there.outcomes()) {
            double value = reads(there.test(), there.pair(), o.faults());
            assertThat(o.value()).isEqualTo(value);
        }
    }

    /** −Σ p ln Σ q exp(−d² / 8), d the difference of two readings over the noise of the larger. */
    @Test
    void aDoubtfulAnswerIsWorthLessTheLessItStandsOutOfTheNoise() {
        double last = Double.POSITIVE_INFINITY;
        for (double ohms : new double[] {0.5, 0.1, 0.05, 0.02, 0.01, 0.005, 0.003, 0.002}) {
            var joint = new Fault.HighResistance(3, ohms);
            Diagnosis d = diagnosis(List.of(run(OHMS, 1)), 0.4, explained(0.6, joint));
            NextProbe n = next(d);
            double a = reads(n.test(), n.pair(), List.of());
            double b = reads(n.test(), n.pair(), List.of(joint));
            // A meter reads a fifth of the usual no finer: of 0.5 V where two ways share 1 A.
            double floor = n.test() instanceof BenchTest.Drop ? 0.2 * 0.5 : 0;
            double error = 0.01 * Math.max(floor, Math.max(Math.abs(a), Math.abs(b)));
            double alike = Math.exp(-Math.pow((a - b) / error, 2) / 8);
            double want = -0.4 * Math.log(0.4 + 0.6 * alike) - 0.6 * Math.log(0.6 + 0.4 * alike);
            // What is set up already is favoured by a tenth.
            double favour = n.test().equals(OHMS) ? 1.1 : 1;
            assertThat(n.information()).as("%s ohm", ohms).isCloseTo(want, within(5e-4));
            assertThat(favour * n.information()).isLessThanOrEqualTo(last);
            last = favour * n.information();
            // No pair of the walk would tell more.
            for (BenchTest.Pair p : OHMS.walk(SOUND.winding())) {
                double c = reads(OHMS, p, List.of());
                double e = reads(OHMS, p, List.of(joint));
                double same = Math.exp(-Math.pow((c - e) / (0.01 * Math.max(c, e)), 2) / 8);
                double worth = 1.1 * (-0.4 * Math.log(0.4 + 0.6 * same) - 0.6 * Math.log(0.6 + 0.4 * same));
                assertThat(worth).isLessThanOrEqualTo(favour * n.information() * 1.0002);
            }
        }
        assertThat(NextProbe.of(
                        diagnosis(List.of(run(OHMS, 1)), 0.4, explained(0.6, new Fault.HighResistance(3, 0.001))),
                        Growler.USUAL))
                .as("nothing to be seen")
                .isEmpty();
    }

    @Test
    void unlikelyExplanationsAreLeftOutAndLikeOnesShareTheirProbability() {
        var likely = explained(0.6, new Fault.OpenCoil(3), new Fault.OpenCoil(4));
        var unlikely = explained(0.009, new Fault.ShortedCoil(9));
        NextProbe n = next(diagnosis(List.of(run(OHMS, 1)), 0.4, likely, unlikely));
        assertThat(n.outcomes())
                .extracting(NextProbe.Outcome::faults)
                .containsExactly(
                        List.of(), likely.faults(), likely.sameReadings().get(0));
        // Of 0.4, 0.3 and 0.3 the best pair tells at most all three apart.
        assertThat(n.information())
                .isLessThanOrEqualTo(1.1 * entropy(0.4, 0.3, 0.3) + 1e-9)
                .isGreaterThan(0.6);
        Fault[] many =
                IntStream.rangeClosed(1, 12).mapToObj(Fault.OpenCoil::new).toArray(Fault[]::new);
        Fault[] more =
                IntStream.rangeClosed(1, 12).mapToObj(Fault.ReversedCoil::new).toArray(Fault[]::new);
        assertThat(next(diagnosis(
                                List.of(run(OHMS, 1)),
                                0.005,
                                explained(0.6, new Fault.ShortedCoil(9), many),
                                explained(0.3, new Fault.ShortedCoil(5), more)))
                        .outcomes())
                .hasSize(16);
    }

    @Test
    void aGroundIsSoughtAtTheShaft() {
        NextProbe n = next(diagnosis(
                List.of(run(DROP, 12)),
                0,
                explained(0.5, new Fault.Ground(Point.bar(5))),
                explained(0.5, new Fault.Ground(Point.bar(9)))));
        assertThat(n.test()).isEqualTo(new BenchTest.Ground());
        assertThat(n.pair().to()).isEqualTo(BenchTest.SHAFT);
        assertThat(n.instruction())
                .isEqualTo("probes on bar " + n.pair().from() + " and the shaft; "
                        + n.test().setUp());
        assertThat(n.information()).isCloseTo(Math.log(2), within(1e-6));
    }

    @Test
    void aWalkThatIsNotCompleteIsReadOn() {
        NextProbe n = next(diagnosis(List.of(run(DROP, 12), run(OHMS, 5)), 1));
        BenchTest.Pair sixth = OHMS.walk(SOUND.winding()).get(5);
        assertThat(n.test()).isEqualTo(OHMS);
        assertThat(n.pair()).isEqualTo(sixth);
        assertThat(n.information()).isZero();
        assertThat(n.instruction())
                .isEqualTo("read on, the walk is not complete: probes on bars " + sixth.from() + " and " + sixth.to()
                        + "; " + OHMS.setUp());
        assertThat(n.outcomes()).containsExactly(new NextProbe.Outcome(List.of(), 0.5 * reads(OHMS, sixth, List.of())));
        // Probes the other way round have read the pair as well.
        List<PairReading> turned = OHMS.readWalk(SOUND).stream()
                .map(r -> new PairReading(r.to(), r.from(), r.value()))
                .toList();
        assertThat(NextProbe.of(diagnosis(List.of(new TestRun(OHMS, turned)), 1), Growler.USUAL))
                .isEmpty();
        // One fault and no other: nothing is left to ask.
        assertThat(NextProbe.of(
                        diagnosis(List.of(run(OHMS, 5)), 0, explained(1, new Fault.OpenCoil(3))), Growler.USUAL))
                .isEmpty();
    }
}
