package coilwright.commutator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RunOutTest {
    private static RunOut readings(int bars, IntToDoubleFunction height) {
        return RunOut.of(
                bars,
                IntStream.rangeClosed(1, bars)
                        .mapToObj(b -> new Reading(b, height.applyAsDouble(b)))
                        .toList());
    }

    private static double angle(int bar, int bars) {
        return 2 * Math.PI * (bar - 1) / bars;
    }

    @Property
    void recoversAMadeEccentricity(
            @ForAll @IntRange(min = 3, max = 200) int bars,
            @ForAll @DoubleRange(min = 0.01, max = 0.5) double e,
            @ForAll @DoubleRange(min = 0, max = 359.9) double phase,
            @ForAll @DoubleRange(min = -2, max = 2) double mean) {
        RunOut r = readings(bars, b -> mean + e * Math.cos(angle(b, bars) - Math.toRadians(phase)));
        assertThat(r.eccentricityMm()).isCloseTo(e, within(1e-9));
        assertThat(r.meanMm()).isCloseTo(mean, within(1e-9));
        assertThat(Math.abs(Math.IEEEremainder(r.highSideDegrees() - phase, 360)))
                .isLessThan(1e-5);
        assertThat(r.residualTirMm()).isLessThan(1e-9);
        assertThat(r.highSideDegrees()).isBetween(0.0, 360.0);
    }

    @Property
    void recoversItUnderNoiseAndWithBarsMissing(
            @ForAll @IntRange(min = 24, max = 120) int bars,
            @ForAll @DoubleRange(min = 0.02, max = 0.5) double e,
            @ForAll @DoubleRange(min = 0, max = 359.9) double phase,
            @ForAll long seed) {
        var random = new Random(seed);
        double sigma = e / 20;
        List<Reading> list = new ArrayList<>();
        for (int b = 1; b <= bars; b++) {
            double noise = random.nextGaussian() * sigma;
            if (b % 7 != 3) {
                list.add(new Reading(b, e * Math.cos(angle(b, bars) - Math.toRadians(phase)) + noise));
            }
        }
        RunOut r = RunOut.of(bars, list);
        // Least squares scatters by about σ·√(2/n) in each of the two parts; six times that never happens.
        double scatter = 6 * sigma * Math.sqrt(2.0 / list.size()) * 1.3;
        assertThat(r.eccentricityMm()).isCloseTo(e, within(scatter));
        assertThat(Math.abs(Math.IEEEremainder(r.highSideDegrees() - phase, 360)))
                .isLessThan(Math.toDegrees(1.2 * scatter / e));
        assertThat(r.missing()).hasSize(bars - list.size());
    }

    /** Exact geometry, not the first order: a round commutator off centre, read by a gauge at a fixed place. */
    @Test
    void offCentreMountingDisappears() {
        double radius = 20;
        double e = 0.1;
        int bars = 28;
        RunOut r = readings(
                bars,
                b -> e * Math.cos(angle(b, bars) - 1)
                        + Math.sqrt(radius * radius - Math.pow(e * Math.sin(angle(b, bars) - 1), 2)));
        assertThat(r.tirMm()).isCloseTo(0.2, within(0.002));
        assertThat(r.eccentricityMm()).isCloseTo(0.1, within(1e-6));
        // What is left is of the second order, e²/2R = 0.00025 mm.
        assertThat(r.residualTirMm()).isLessThan(0.00026);
    }

    @Test
    void oneHighBar() {
        int bars = 24;
        RunOut r = readings(bars, b -> 0.05 * Math.cos(angle(b, bars)) + (b == 7 ? 0.04 : 0));
        assertThat(r.highest(true).bar()).isEqualTo(7);
        assertThat(r.highest(false).bar()).isEqualTo(1);
        assertThat(r.standouts()).extracting(RunOut.Bar::bar).containsExactly(7);
        assertThat(r.steps()).hasSize(24);
        RunOut.Step worst = r.steps().stream()
                .max(java.util.Comparator.comparingDouble(s -> Math.abs(s.stepMm())))
                .orElseThrow();
        assertThat(List.of(worst.from(), worst.to())).containsExactly(7, 8);
        assertThat(r.largestStepMm()).isCloseTo(Math.abs(worst.stepMm()), within(1e-15));
        assertThat(r.highSideBar()).isBetween(1, 2);
    }

    @Test
    void stepsGoRoundAndSkipWhatWasNotRead() {
        RunOut r = RunOut.of(
                5, List.of(new Reading(1, 0.00), new Reading(2, 0.01), new Reading(3, 0.03), new Reading(5, 0.10)));
        assertThat(r.steps())
                .extracting(RunOut.Step::from, RunOut.Step::to)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(1, 2),
                        org.assertj.core.groups.Tuple.tuple(2, 3),
                        org.assertj.core.groups.Tuple.tuple(5, 1));
        assertThat(r.steps().get(2).stepMm()).isCloseTo(-0.10, within(1e-12));
        assertThat(r.missing()).containsExactly(4);
        assertThat(r.widestGapDegrees()).isEqualTo(144);
    }

    @Test
    void repeatedReadingsCountOnceWithTheirMean() {
        RunOut once = readings(6, b -> b == 2 ? 0.03 : 0);
        RunOut twice = RunOut.of(
                6,
                List.of(
                        new Reading(1, 0),
                        new Reading(2, 0.02),
                        new Reading(2, 0.04),
                        new Reading(3, 0),
                        new Reading(4, 0),
                        new Reading(5, 0),
                        new Reading(6, 0)));
        assertThat(twice.tirMm()).isCloseTo(once.tirMm(), within(1e-12));
        assertThat(twice.eccentricityMm()).isCloseTo(once.eccentricityMm(), within(1e-12));
    }

    @Test
    void changeWithinASpan() {
        // A ramp of 0.01 mm a bar: six bars span five steps.
        RunOut r = readings(40, b -> 0.01 * Math.min(b - 1, 41 - b));
        assertThat(r.largestChangeWithinMm(6)).isCloseTo(0.05, within(1e-12));
        assertThat(r.largestChangeWithinMm(1000)).isCloseTo(r.tirMm(), within(1e-12));
    }

    @Test
    void cutAsRead() {
        // Swings ±0.1 about the mean: 0.2 on the radius from first touch, 0.2 off the mean diameter.
        RunOut r = readings(36, b -> 0.1 * Math.cos(angle(b, 36)));
        TruingCut cut = TruingCut.plan(r, TruingCut.Centring.AS_READ, 40, 0, OptionalDouble.of(38));
        assertThat(cut.depthMm()).isCloseTo(0.2, within(1e-9));
        assertThat(cut.depthMm()).isCloseTo(r.tirMm(), within(1e-9));
        assertThat(cut.offDiameterMm()).isCloseTo(0.2, within(1e-9));
        assertThat(cut.diameterAfterMm()).isCloseTo(39.8, within(1e-9));
        assertThat(cut.leftMm().orElseThrow()).isCloseTo(1.8, within(1e-9));
        assertThat(cut.keepsMinimum()).hasValue(true);
        // Set true to itself there is nothing to cut.
        TruingCut own = TruingCut.plan(r, TruingCut.Centring.RECENTRED, 40, 0, OptionalDouble.empty());
        assertThat(own.depthMm()).isCloseTo(0, within(1e-9));
        assertThat(own.keepsMinimum()).isEmpty();
    }

    @Property
    void theCutCleansEveryBarAndIsTheSmallest(
            @ForAll @IntRange(min = 6, max = 60) int bars, @ForAll long seed, @ForAll TruingCut.Centring centring) {
        var random = new Random(seed);
        double[] h = new double[bars + 1];
        for (int b = 1; b <= bars; b++) {
            h[b] = random.nextDouble() * 0.2;
        }
        RunOut r = readings(bars, b -> h[b]);
        TruingCut cut = TruingCut.plan(r, centring, 50, 0, OptionalDouble.empty());
        double tool = cut.diameterAfterMm() / 2;
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (RunOut.Bar bar : r.list()) {
            double radius =
                    25 + (centring == TruingCut.Centring.RECENTRED ? bar.residualMm() : bar.heightMm() - r.meanMm());
            lowest = Math.min(lowest, radius);
            highest = Math.max(highest, radius);
        }
        // The tool just touches the lowest bar: none is left uncut, and no more is taken.
        assertThat(tool).isCloseTo(lowest, within(1e-9));
        assertThat(cut.depthMm()).isCloseTo(highest - lowest, within(1e-9));
    }

    @Test
    void cutUnderTheMinimum() {
        RunOut r = readings(36, b -> b == 5 ? -0.6 : 0);
        TruingCut cut = TruingCut.plan(r, TruingCut.Centring.AS_READ, 40, 0.05, OptionalDouble.of(39));
        assertThat(cut.keepsMinimum()).hasValue(false);
        assertThat(cut.text()).contains("under the minimum of 39 mm: renew the commutator");
        assertThat(cut.lowestCutMm()).isEqualTo(0.05);
    }

    @Test
    void refusals() {
        assertThatThrownBy(() -> RunOut.of(4, List.of(new Reading(5, 0)))).hasMessageContaining("only 4 bars");
        assertThatThrownBy(() -> RunOut.of(24, List.of(new Reading(1, 0), new Reading(1, 1), new Reading(2, 0))))
                .hasMessageContaining("only 2 bars are read");
        assertThatThrownBy(() -> new Reading(0, 0)).hasMessageContaining("bars count from 1");
        assertThatThrownBy(() -> new Reading(3, Double.NaN)).hasMessageContaining("bar 3");
        RunOut r = readings(12, b -> b);
        assertThatThrownBy(() -> TruingCut.plan(r, TruingCut.Centring.AS_READ, 10, 0, OptionalDouble.empty()))
                .hasMessageContaining("unit of the readings");
    }

    /** Five neighbours of twelve bars hold all three unknowns, though far from evenly. */
    @Test
    void aFewNeighboursHoldTheCentre() {
        double phase = Math.toRadians(200);
        RunOut r = RunOut.of(
                12,
                IntStream.rangeClosed(1, 5)
                        .mapToObj(b -> new Reading(b, 0.3 + 0.1 * Math.cos(angle(b, 12) - phase)))
                        .toList());
        assertThat(r.meanMm()).isCloseTo(0.3, within(1e-9));
        assertThat(r.eccentricityMm()).isCloseTo(0.1, within(1e-9));
        assertThat(r.highSideDegrees()).isCloseTo(200, within(1e-6));
        assertThat(r.list()).allSatisfy(b -> assertThat(b.residualMm()).isCloseTo(0, within(1e-9)));
    }

    /** Four bars: a = (h1 − h3)/2, b = (h2 − h4)/2, and ±(h1 − h2 + h3 − h4)/4 is left over. */
    @Test
    void whatIsLeftOfFourBars() {
        double[] h = {0, 0.11, 0.02, 0.05, 0.08};
        RunOut r = readings(4, b -> h[b]);
        assertThat(r.meanMm()).isCloseTo(0.065, within(1e-12));
        assertThat(r.eccentricityMm()).isCloseTo(Math.hypot(0.03, -0.03), within(1e-12));
        assertThat(r.highSideDegrees()).isCloseTo(315, within(1e-9));
        assertThat(r.list())
                .extracting(b -> Math.round(b.residualMm() * 1e6))
                .containsExactly(15_000L, -15_000L, 15_000L, -15_000L);
        assertThat(r.residualTirMm()).isCloseTo(0.03, within(1e-12));
        assertThat(r.isRound()).isFalse();
        assertThat(r.recentred().tirMm()).isCloseTo(0.03, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({
        "0, 1, 12:00",
        "7.4, 1, 12:00",
        "7.6, 2, 12:30",
        "97, 7, 3:00",
        "98, 8, 3:30",
        "180, 13, 6:00",
        "352, 24, 11:30",
        "353, 1, 12:00"
    })
    void theHighSideOfTwentyFourBars(double phase, int bar, String clock) {
        RunOut r = readings(24, b -> 0.05 * Math.cos(angle(b, 24) - Math.toRadians(phase)));
        assertThat(r.highSideBar()).isEqualTo(bar);
        assertThat(r.highSideClock()).isEqualTo(clock);
    }

    @Test
    void aHighSideAHairBeforeBarOneIsNotAWholeTurnOn() {
        for (int bars = 3; bars <= 90; bars++) {
            int n = bars;
            assertThat(readings(n, b -> 0.05 * Math.cos(angle(b, n))).highSideDegrees())
                    .as("%s bars", n)
                    .isLessThan(360);
        }
    }

    @Test
    void theFirstOfEqualsIsTold() {
        double[] h = {0, 0.25, 0.5, 0.25, 0.5, 0.25, 0};
        RunOut r = readings(6, b -> h[b]);
        assertThat(r.highest(false).bar()).isEqualTo(2);
        assertThat(r.largestStep()).hasValue(new RunOut.Step(1, 2, 0.25));
        assertThat(readings(6, b -> -h[b]).lowest(false).bar()).isEqualTo(2);
    }

    @Test
    void aSpanReachesFromTheLastBarToTheFirst() {
        // A ramp all round that falls back between the last bar and the first.
        RunOut r = readings(8, b -> 0.01 * (b - 1));
        assertThat(r.largestChangeWithinMm(2)).isCloseTo(0.07, within(1e-12));
        // Bars far apart: no span of two holds a change.
        RunOut apart = RunOut.of(6, List.of(new Reading(1, 0), new Reading(3, 0.1), new Reading(5, 0.2)));
        assertThat(apart.largestChangeWithinMm(2)).isZero();
        assertThat(apart.largestStep()).isEmpty();
        assertThat(apart.largestStepMm()).isZero();
        assertThatThrownBy(() -> r.largestChangeWithinMm(1)).hasMessage("span is 1 bars, but must be at least 2");
    }

    /**
     * An alternating ripple, and two bars out with two others in, leave the mean and the eccentricity alone: the
     * residuals are the heights, the scatter is the ripple, and the bound 3.5 · 1.4826 · 0.01 mm = 0.0519 mm.
     */
    @Test
    void standingOutIsMeasuredByTheScatter() {
        RunOut r = readings(
                24, b -> (b % 2 == 1 ? 0.01 : -0.01) + (b == 3 || b == 15 ? 0.05 : 0) - (b == 9 || b == 21 ? 0.05 : 0));
        assertThat(r.standouts()).extracting(RunOut.Bar::bar).containsExactly(3, 15);
        assertThat(r.standouts().get(0).residualMm()).isCloseTo(0.06, within(1e-9));
        // Where all is still, 5 µm is the bound.
        assertThat(readings(24, b -> b == 3 || b == 15 ? 0.0049 : b == 9 || b == 21 ? -0.0049 : 0)
                        .standouts())
                .isEmpty();
        assertThat(readings(24, b -> b == 3 || b == 15 ? 0.0051 : b == 9 || b == 21 ? -0.0051 : 0)
                        .standouts())
                .extracting(RunOut.Bar::bar)
                .containsExactly(3, 9, 15, 21);
    }

    @Test
    void theScatterIsTheMedianOfOddAndEvenNumbersOfBars() {
        var random = new Random(3);
        int out = 0;
        for (int round = 0; round < 300; round++) {
            int bars = 7 + round % 8;
            RunOut r = readings(bars, b -> 0.02 * Math.pow(random.nextGaussian(), 5));
            double median = r.list().stream()
                    .mapToDouble(b -> Math.abs(b.residualMm()))
                    .sorted()
                    .skip((bars - 1) / 2)
                    .limit(2 - bars % 2)
                    .average()
                    .orElseThrow();
            assertThat(r.standouts())
                    .containsExactlyElementsOf(r.list().stream()
                            .filter(b -> Math.abs(b.residualMm()) > Math.max(3.5 * 1.4826 * median, 0.005))
                            .toList());
            out += r.standouts().size();
        }
        assertThat(out).isBetween(100, 900);
    }

    @Test
    void theCutTakesTheAllowanceOffTheLowestBar() {
        // Bar 5 of 36 lies 0.6 mm low: 0.6 · 35/36 mm under the mean.
        RunOut r = readings(36, b -> b == 5 ? -0.6 : 0);
        TruingCut cut = TruingCut.plan(r, TruingCut.Centring.AS_READ, 40, 0.05, OptionalDouble.of(39));
        double under = 0.6 * 35 / 36;
        assertThat(cut.depthMm()).isCloseTo(0.65, within(1e-12));
        assertThat(cut.diameterAfterMm()).isCloseTo(40 - 2 * (under + 0.05), within(1e-12));
        assertThat(cut.leftMm().orElseThrow()).isCloseTo(1 - 2 * (under + 0.05), within(1e-12));
        assertThat(cut.text())
                .isEqualTo("cut 0.65 mm on the radius from first touch; mean diameter from 40 mm to 38.733 mm;"
                        + " 0.267 mm under the minimum of 39 mm: renew the commutator");
        // To the very minimum is still kept.
        double after = cut.diameterAfterMm();
        TruingCut just = TruingCut.plan(r, TruingCut.Centring.AS_READ, 40, 0.05, OptionalDouble.of(after));
        assertThat(just.keepsMinimum()).hasValue(true);
        assertThat(just.text()).endsWith("; 0 mm of diameter left above the minimum of 38.733 mm");
        assertThat(TruingCut.plan(r, TruingCut.Centring.AS_READ, 40, 0, OptionalDouble.empty())
                        .text())
                .endsWith("; no minimum is given");
    }

    @Test
    void cutsOfSizesThatCannotBeAreRefused() {
        RunOut r = readings(4, b -> b == 1 ? -2 : b == 2 ? 2 : 0);
        assertThatThrownBy(() -> TruingCut.plan(r, TruingCut.Centring.AS_READ, 4, 0, OptionalDouble.empty()))
                .hasMessage(
                        "the lowest bar lies 2 mm under the mean of a commutator of 4 mm: check the diameter and the"
                                + " unit of the readings");
        assertThatThrownBy(() -> TruingCut.plan(
                        r, TruingCut.Centring.AS_READ, Double.POSITIVE_INFINITY, 0, OptionalDouble.empty()))
                .hasMessage("commutator diameter is no number, but must be over 0: measure it again");
        assertThatThrownBy(() -> TruingCut.plan(
                        r, TruingCut.Centring.AS_READ, 40, Double.POSITIVE_INFINITY, OptionalDouble.empty()))
                .hasMessage("allowance is no number, but must be 0 or more");
        assertThatThrownBy(() -> TruingCut.plan(r, TruingCut.Centring.AS_READ, 40, 0, OptionalDouble.of(0)))
                .hasMessage("minimum diameter is 0 mm, but must be over 0: measure it again");
    }

    @Test
    void fewBarsAreRefused() {
        assertThatThrownBy(() -> RunOut.of(2, List.of())).hasMessage("bars is 2, but a centre needs at least 3");
        assertThatThrownBy(() -> RunOut.of(3, List.of(new Reading(2, 0))))
                .hasMessageStartingWith("only 1 bar is read, but a centre needs at least 3");
        assertThat(new Reading(1, -Reading.MOST_MM).heightMm()).isEqualTo(-100);
        assertThatThrownBy(() -> new Reading(2, Double.NEGATIVE_INFINITY))
                .hasMessage("reading of bar 2 is no number: measure it again");
    }
}
