package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is made of weighed explanations, their weights chosen by hand. */
final class ReportTest {
    private static final BenchArmature SOUND =
            BenchArmature.sound(Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE)), 1);
    private static final BenchTest DROP = new BenchTest.Drop(1, 4, 1);
    private static final List<PairReading> EXACT = DROP.readWalk(SOUND);

    private final List<TestRun> runs = List.of(new TestRun(DROP, scattered()));
    private final Weigher weigher = new Weigher(SOUND, runs);
    private final Weighed nothing = weigh(weigher, 1);
    private final Report report = new Report(SOUND, runs, weigher, nothing);

    /** An error of one in a hundred, up and down by turns. */
    private static List<PairReading> scattered() {
        return IntStream.range(0, EXACT.size())
                .mapToObj(i -> new PairReading(
                        EXACT.get(i).from(), EXACT.get(i).to(), EXACT.get(i).value() * (i % 2 == 0 ? 1.01 : 0.99)))
                .toList();
    }

    /** What it predicts is right, how much it weighs is told. */
    private static Weighed weigh(Weigher weigher, double mass, Fault... faults) {
        Weighed w = weigher.weigh(List.of(faults), 0, 0);
        return new Weighed(w.faults(), Math.log(mass), Math.log(mass), w.predicted(), w.fits());
    }

    private Weighed weigh(double mass, Fault... faults) {
        return weigh(weigher, mass, faults);
    }

    @ParameterizedTest
    @CsvSource({"1, UNCLEAR", "0.4286, UNCLEAR", "0.4285, SOUND", "18.9, UNCLEAR", "19.1, FAULTY"})
    void theVerdictIsByTheProbabilityThatNothingIsWrong(double mass, Diagnosis.Verdict verdict) {
        Diagnosis d = report.of(List.of(nothing, weigh(mass, new Fault.OpenCoil(3))), List.of("ground"));
        assertThat(d.soundProbability()).isCloseTo(1 / (1 + mass), within(1e-12));
        assertThat(d.verdict()).isEqualTo(verdict);
        assertThat(d.ranked()).hasSize(1);
        assertThat(d.ranked().get(0).probability()).isCloseTo(mass / (1 + mass), within(1e-12));
        assertThat(d.ranked().get(0).faults()).containsExactly(new Fault.OpenCoil(3));
        assertThat(d.ranked().get(0).sameReadings()).isEmpty();
        assertThat(d.likeliest()).isEqualTo(mass > 1 ? List.of(new Fault.OpenCoil(3)) : List.of());
        assertThat(d.unseen()).containsExactly("ground");
        assertThat(d.runs()).isEqualTo(runs);
    }

    @Test
    void explanationsThatReadAlikeStandTogetherLikeliestFirst() {
        var shorted = new Fault.ShortedCoil(3);
        var touching = new Fault.BarShort(3, 4);
        var turns = new Fault.ShortedTurns(8, 0.5);
        var other = new Fault.OpenCoil(11);
        // On a lap winding a coil shorted and its two bars touching read the same.
        Diagnosis d = report.of(
                List.of(weigh(10), weigh(2, touching), weigh(4, other), weigh(1, turns), weigh(3, shorted)), List.of());
        assertThat(d.soundProbability()).isCloseTo(10.0 / 20, within(1e-12));
        assertThat(d.ranked())
                .extracting(Diagnosis.Explanation::faults)
                .containsExactly(List.of(shorted), List.of(other), List.of(turns));
        assertThat(d.ranked().get(0).probability()).isCloseTo(5.0 / 20, within(1e-12));
        assertThat(d.ranked().get(0).sameReadings()).containsExactly(List.of(touching));
        assertThat(d.ranked().get(0).covers(List.of(touching))).isTrue();
        assertThat(d.ranked().get(0).covers(List.of(shorted))).isTrue();
        assertThat(d.ranked().get(0).covers(List.of(other))).isFalse();
        assertThat(d.ranked().get(1).probability()).isCloseTo(4.0 / 20, within(1e-12));
        assertThat(d.ranked().get(2).probability()).isCloseTo(1.0 / 20, within(1e-12));
        assertThat(d.likeliest()).isEmpty();
    }

    @Test
    void whatAddsNothingIsNoExplanation() {
        var open = new Fault.OpenCoil(3);
        // Coil 7 is a joint of a hundred-millionth of an ohm: it reads like a sound coil.
        var nought = new Fault.HighResistance(7, 1e-9);
        Diagnosis d = report.of(
                List.of(nothing, weigh(4, nought), weigh(10, open), weigh(5, open, nought), weigh(7, nought, nought)),
                List.of());
        // A single fault that reads like none counts as sound; with another it counts for nothing.
        assertThat(d.soundProbability()).isCloseTo(5.0 / 15, within(1e-12));
        assertThat(d.ranked()).hasSize(1);
        assertThat(d.ranked().get(0).probability()).isCloseTo(10.0 / 15, within(1e-12));
        assertThat(d.ranked().get(0).sameReadings()).isEmpty();
    }

    @Test
    void whatIsAMillionTimesLessLikelyIsLetGo() {
        var open = new Fault.OpenCoil(3);
        Diagnosis d = report.of(List.of(nothing, weigh(0.9e-6, open)), List.of());
        assertThat(d.ranked()).isEmpty();
        assertThat(d.soundProbability()).isEqualTo(1);
        assertThat(report.of(List.of(nothing, weigh(1.1e-6, open)), List.of()).ranked())
                .hasSize(1);
        assertThat(report.of(List.of(weigh(0.9e-6), weigh(1, open)), List.of()).soundProbability())
                .isZero();
    }

    /** Two explanations are told apart by three times the error of the readings, all taken together. */
    @Test
    void whatTheErrorHidesIsToldTogether() {
        double noise = weigher.noise(nothing);
        assertThat(noise).isCloseTo(0.01, within(1e-3));
        for (double ohms = 0.21; ohms < 0.4; ohms += 0.01) {
            var a = new Fault.HighResistance(3, 0.2);
            var b = new Fault.HighResistance(3, ohms);
            Weighed first = weigh(6, a);
            Weighed second = weigh(5, b);
            double off = Math.sqrt(weigher.evidence()
                    .get(0)
                    .apart(
                            second.predicted().get(0),
                            first.predicted().get(0),
                            first.fits().get(0).gain()));
            int groups = report.of(List.of(nothing, first, second), List.of())
                    .ranked()
                    .size();
            double error = weigher.noise(first);
            assertThat(groups).as("%s ohm", ohms).isEqualTo(off > 3 * error ? 2 : 1);
        }
    }

    @Test
    void theThreeReadingsThatSpeakMostAreGiven() {
        var open = new Fault.OpenCoil(3);
        List<PairReading> read = DROP.readWalk(open.in(SOUND));
        var own = new Weigher(SOUND, List.of(new TestRun(DROP, read)));
        Weighed sound = weigh(own, 1);
        Weighed w = weigh(own, 50, open);
        Diagnosis d = new Report(SOUND, List.of(new TestRun(DROP, read)), own, sound).of(List.of(sound, w), List.of());
        List<Diagnosis.Because> because = d.ranked().get(0).because();
        assertThat(because).hasSize(3);
        double last = Double.POSITIVE_INFINITY;
        Evidence e = own.evidence().get(0);
        List<Double> all = new ArrayList<>();
        for (int i = 0; i < read.size(); i++) {
            all.add(e.square(sound.predicted().get(0), 1, i)
                    - e.square(w.predicted().get(0), 1, i));
        }
        all.sort((a, b) -> Double.compare(b, a));
        for (int i = 0; i < 3; i++) {
            Diagnosis.Because b = because.get(i);
            int at = read.indexOf(b.reading());
            assertThat(b.test()).isEqualTo(DROP);
            assertThat(b.explained()).isCloseTo(read.get(at).value(), within(1e-9));
            assertThat(b.sound()).isCloseTo(EXACT.get(at).value(), within(1e-9));
            double score = Math.pow(b.reading().value() - b.sound(), 2) * e.weight(at);
            assertThat(score).isLessThanOrEqualTo(last + 1e-9).isCloseTo(all.get(i), within(1e-9));
            last = score;
        }
        assertThat(d.suspects()).isEmpty();
        assertThat(d.gains()).hasSize(1);
        assertThat(d.gains().get(0)).isCloseTo(1, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "10 | about 10 times too much: a decimal point or a meter range?; read this pair again",
                "11.4 | about 10 times too much: a decimal point or a meter range?; read this pair again",
                "8.6 | about 10 times too much: a decimal point or a meter range?; read this pair again",
                "0.1 | about 10 times too little: a decimal point or a meter range?; read this pair again",
                "0.01 | about 100 times too little: a decimal point or a meter range?; read this pair again",
                "100 | about 100 times too much: a decimal point or a meter range?; read this pair again",
                "1000 | about 1000 times too much: a decimal point or a meter range?; read this pair again",
                "-1 | the wrong sign: probes changed over?; read this pair again",
                "-1.14 | the wrong sign: probes changed over?; read this pair again",
                "-1.3 | it fits no fault that explains the others; read this pair again",
                "12 | it fits no fault that explains the others; read this pair again",
                "3 | it fits no fault that explains the others; read this pair again"
            })
    void aReadingOutOfLineIsToBeTakenAgain(double factor, String advice) {
        List<PairReading> read = new ArrayList<>(scattered());
        PairReading was = EXACT.get(5);
        read.set(5, new PairReading(was.from(), was.to(), was.value() * factor));
        List<TestRun> spoilt = List.of(new TestRun(DROP, read));
        var own = new Weigher(SOUND, spoilt);
        Weighed sound = weigh(own, 1);
        Diagnosis d = new Report(SOUND, spoilt, own, sound).of(List.of(sound), List.of());
        assertThat(d.suspects()).hasSize(1);
        Diagnosis.Suspect s = d.suspects().get(0);
        assertThat(s.reading()).isEqualTo(read.get(5));
        assertThat(s.test()).isEqualTo(DROP);
        assertThat(s.expected()).isCloseTo(was.value(), within(0.01 * Math.abs(was.value())));
        assertThat(s.advice()).isEqualTo(advice);
    }

    @Test
    void readingsOfOneShapeAreProportional() {
        double open = Double.POSITIVE_INFINITY;
        double[] x = {1, -2, 3};
        assertThat(Report.proportional(x, new double[] {2, -4, 6})).isTrue();
        assertThat(Report.proportional(x, new double[] {-2, 4, -6}))
                .as("turned over")
                .isFalse();
        assertThat(Report.proportional(x, new double[] {2, -4, 6.0001})).isFalse();
        assertThat(Report.proportional(x, new double[] {2, -4, 6.000001})).isTrue();
        assertThat(Report.proportional(x, new double[] {2, 4, 6})).isFalse();
        assertThat(Report.proportional(x, new double[3])).isFalse();
        assertThat(Report.proportional(new double[3], x)).isFalse();
        assertThat(Report.proportional(new double[3], new double[3])).isTrue();
        assertThat(Report.proportional(new double[] {open, 1, 2}, new double[] {open, 2, 4}))
                .isTrue();
        assertThat(Report.proportional(new double[] {open, 1, 2}, new double[] {1, 2, 4}))
                .isFalse();
        assertThat(Report.proportional(new double[] {1, 1, 2}, new double[] {open, 1, 2}))
                .isFalse();
        assertThat(Report.proportional(new double[] {open, open}, new double[] {open, open}))
                .isTrue();
    }
}
