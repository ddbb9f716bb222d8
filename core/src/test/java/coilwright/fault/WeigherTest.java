package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.bench.PairReading;
import coilwright.bench.TestRun;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Weights against the formula written out: with n readings and S the sum of their squared relative errors, Student's t
 * of scale 1.5 % worth 4 readings weighs Γ((n + 4) / 2) π^(−n / 2) (4 · 0.015² + S)^(−(n + 4) / 2); each size costs √n,
 * each slip of N readings 0.01 / (2 N), and twenty times that where it looks like no slip.
 */
final class WeigherTest {
    private static final BenchArmature SOUND =
            BenchArmature.sound(Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE)), 1);
    private static final BenchTest DROP = new BenchTest.Drop(1, 4, 1);

    /** Γ of whole and half numbers, by products. */
    private static double gamma(double x) {
        double out = x == Math.rint(x) ? 1 : Math.sqrt(Math.PI);
        for (double y = x == Math.rint(x) ? 1 : 0.5; y < x - 0.25; y++) {
            out *= y;
        }
        return out;
    }

    private static double logT(int n, double squares) {
        return Math.log(gamma((n + 4) / 2.0) * Math.pow(Math.PI, -n / 2.0))
                - (n + 4) / 2.0 * Math.log(4 * 0.015 * 0.015 + squares);
    }

    /** Readings of an armature with an error of up to one in a hundred, one of them times a factor. */
    private static TestRun run(BenchTest test, BenchArmature armature, int spoilt, double factor) {
        List<PairReading> exact = test.readWalk(armature);
        List<PairReading> out = new ArrayList<>();
        for (int i = 0; i < exact.size(); i++) {
            PairReading r = exact.get(i);
            double error = 1 + 0.01 * ((i * 7) % 5 - 2) / 2;
            out.add(new PairReading(r.from(), r.to(), r.value() * error * (i == spoilt ? factor : 1)));
        }
        return new TestRun(test, out);
    }

    private static double squares(Weigher w, int run, List<Fault> faults, int without) {
        Evidence e = w.evidence().get(run);
        double[] predicted = w.predict(faults)[run];
        double dp = 0;
        double pp = 0;
        for (int i = 0; i < e.size(); i++) {
            if (i != without) {
                dp += e.weight(i) * e.data(i) * predicted[i];
                pp += e.weight(i) * predicted[i] * predicted[i];
            }
        }
        double sum = 0;
        for (int i = 0; i < e.size(); i++) {
            sum += i == without ? 0 : e.square(predicted, dp / pp, i);
        }
        return sum;
    }

    @Test
    void anExplanationWeighsItsPriorTimesStudentsT() {
        for (int pairs = 5; pairs <= 12; pairs++) {
            TestRun all = run(DROP, SOUND, -1, 1);
            var w = new Weigher(SOUND, List.of(new TestRun(DROP, all.readings().subList(0, pairs))));
            int n = w.evidence().get(0).measured();
            List<Fault> faults = List.of(new Fault.HighResistance(2, 0.3));
            double want = -3 + logT(n, squares(w, 0, faults, -1)) - 2 * 0.5 * Math.log(n);
            Weighed weighed = w.weigh(faults, -3, 2);
            assertThat(weighed.plain()).as("%d pairs", pairs).isCloseTo(want, within(1e-9));
            assertThat(weighed.faults()).isEqualTo(faults);
            Weighed sound = w.weigh(List.of(), Math.log(0.5), 0);
            double squares = squares(w, 0, List.of(), -1);
            assertThat(sound.logWeight()).isCloseTo(Math.log(0.5) + logT(n, squares), within(1e-9));
            assertThat(w.noise(sound)).isCloseTo(Math.sqrt(squares / (n - 1)), within(1e-12));
            assertThat(w.most(-3, 2, squares)).isCloseTo(-3 - Math.log(n) + logT(n, squares), within(1e-9));
            assertThat(w.squaresFor(w.most(-3, 0, squares), -3)).isCloseTo(squares, within(1e-9));
        }
    }

    @Test
    void severalRunsShareOneErrorButHaveScalesOfTheirOwn() {
        TestRun drop = run(DROP, SOUND, -1, 1);
        TestRun ohms = run(new BenchTest.Resistance(), SOUND, -1, 1);
        List<PairReading> louder = ohms.readings().stream()
                .map(r -> new PairReading(r.from(), r.to(), 5 * r.value()))
                .toList();
        var w = new Weigher(SOUND, List.of(drop, new TestRun(ohms.test(), louder)));
        int n = w.evidence().get(0).measured() + w.evidence().get(1).measured();
        double squares = squares(w, 0, List.of(), -1) + squares(w, 1, List.of(), -1);
        Weighed sound = w.weigh(List.of(), 0, 0);
        assertThat(sound.logWeight()).isCloseTo(logT(n, squares), within(1e-9));
        assertThat(sound.fits().get(0).gain()).isCloseTo(1, within(0.02));
        assertThat(sound.fits().get(1).gain()).isCloseTo(5, within(0.1));
        assertThat(w.noise(sound)).isCloseTo(Math.sqrt(squares / (n - 2)), within(1e-12));
    }

    @Test
    void aSlipCostsWhatSlipsAreRare() {
        for (double factor : new double[] {10, -1, 3}) {
            var w = new Weigher(SOUND, List.of(run(DROP, SOUND, 7, factor)));
            int n = w.evidence().get(0).measured();
            int readings = w.evidence().get(0).size();
            Weighed sound = w.weigh(List.of(), 0, 0);
            double rare = Math.log(0.01 / 2 / readings / (factor == 3 ? 20 : 1));
            assertThat(sound.fits().get(0).slip()).isEqualTo(7);
            assertThat(sound.logWeight()).isCloseTo(logT(n - 1, squares(w, 0, List.of(), 7)) + rare, within(1e-9));
            assertThat(sound.plain()).isCloseTo(logT(n, squares(w, 0, List.of(), -1)), within(1e-9));
            assertThat(sound.logWeight()).isGreaterThan(sound.plain());
            assertThat(w.noise(sound)).isCloseTo(Math.sqrt(squares(w, 0, List.of(), 7) / (n - 2)), within(1e-12));
        }
    }

    @Test
    void oneSizeIsSearchedAgainOnlyWhereASlipIsLeftOver() {
        List<String> asked = new ArrayList<>();
        Weighed smooth = weighed(2, 2);
        assertThat(Weigher.bestSize(worth -> note(asked, worth, smooth, smooth)))
                .isSameAs(smooth);
        assertThat(asked).containsExactly("plain");
        // A slip left over: without it another size may be better, and is then taken.
        Weighed left = weighed(3, 2);
        Weighed better = weighed(4, 1);
        Weighed worse = weighed(2.5, 1);
        asked.clear();
        assertThat(Weigher.bestSize(worth -> note(asked, worth, left, better))).isSameAs(better);
        assertThat(asked).containsExactly("plain", "robust");
        assertThat(Weigher.bestSize(worth -> note(asked, worth, left, worse))).isSameAs(left);
    }

    private static Weighed weighed(double logWeight, double plain) {
        return new Weighed(List.of(), logWeight, plain, List.of(), List.of());
    }

    private static Weighed note(List<String> asked, ToDoubleFunction<Weighed> worth, Weighed plain, Weighed robust) {
        boolean isPlain = worth.applyAsDouble(weighed(7, 8)) == 8;
        asked.add(isPlain ? "plain" : "robust");
        return isPlain ? plain : robust;
    }

    /** Whatever way is quick, faults read as on an armature that has them. */
    @Test
    void whatIsPredictedIsWhatAFaultyArmatureReads() {
        Fault ground = new Fault.Ground(new coilwright.bench.Point.Inside(4, 0.3));
        List<List<Fault>> all = List.of(
                List.of(new Fault.OpenCoil(3)),
                List.of(new Fault.ShortedCoil(3), new Fault.HighResistance(8, 0.7)),
                List.of(new Fault.ReversedCoil(5)),
                List.of(new Fault.CrossedLeads(4, 5, Fault.Leads.TOP)),
                List.of(new Fault.WrongBar(6, true, 8)),
                List.of(new Fault.BarShort(6, 7)),
                List.of(new Fault.SlotShort(4, 0.2, 1, 0.7)),
                List.of(new Fault.WrongTurns(4, 1.3)),
                List.of(ground),
                List.of(ground, new Fault.Ground(coilwright.bench.Point.bar(9))),
                List.of(ground, new Fault.OpenCoil(8)));
        List<BenchTest> tests = List.of(
                DROP,
                new BenchTest.Resistance(),
                new BenchTest.Polarity(),
                new BenchTest.Ground(),
                new BenchTest.GroundWalk(1, 4, 1));
        var w = new Weigher(
                SOUND,
                tests.stream().map(t -> new TestRun(t, t.readWalk(SOUND))).toList());
        for (List<Fault> faults : all) {
            compare(w, SOUND, tests, faults);
        }
    }

    private static void compare(Weigher w, BenchArmature sound, List<BenchTest> tests, List<Fault> faults) {
        BenchArmature faulty = Workshop.with(sound, faults);
        double[][] predicted = w.predict(faults);
        for (int r = 0; r < tests.size(); r++) {
            List<PairReading> read = tests.get(r).readWalk(faulty);
            for (int i : IntStream.range(0, read.size()).toArray()) {
                double should = read.get(i).value();
                if (Double.isInfinite(should)) {
                    assertThat(predicted[r][i]).as("%s %s", faults, read.get(i)).isEqualTo(should);
                } else {
                    assertThat(predicted[r][i])
                            .as("%s %s %s %s", sound.winding().type(), tests.get(r), faults, read.get(i))
                            .isCloseTo(should, within(1e-8));
                }
            }
        }
    }

    /** Every kind of fault at every place of small windings, and each beside another, under every test. */
    @Test
    void everyFaultReadsAsOnAnArmatureThatHasIt() {
        var shop = new Workshop(40);
        List<Winding> windings = List.of(
                Winding.build(Armature.of(6, 6, 2), WindingSpec.lap(1, Direction.PROGRESSIVE)),
                Winding.build(Armature.of(8, 8, 4), WindingSpec.lap(2, Direction.PROGRESSIVE)),
                Winding.build(Armature.of(7, 7, 4), WindingSpec.wave(1, Direction.RETROGRESSIVE)));
        for (Winding winding : windings) {
            BenchArmature sound = BenchArmature.sound(winding, 1);
            List<BenchTest> tests = List.of(
                    new BenchTest.Drop(1, 4, 2),
                    new BenchTest.Resistance(),
                    new BenchTest.GrowlerWalked(Growler.USUAL, 20),
                    new BenchTest.GrowlerTurned(Growler.USUAL, 75),
                    new BenchTest.Polarity(),
                    new BenchTest.Ground(),
                    new BenchTest.GroundWalk(2, 5, 1));
            var w = new Weigher(
                    sound,
                    tests.stream().map(t -> new TestRun(t, t.readWalk(sound))).toList());
            List<Fault> all = shop.everywhere(sound);
            for (int i = 0; i < all.size(); i++) {
                compare(w, sound, tests, List.of(all.get(i)));
                compare(w, sound, tests, List.of(all.get(i), all.get((i * 5 + 7) % all.size())));
            }
        }
    }
}
