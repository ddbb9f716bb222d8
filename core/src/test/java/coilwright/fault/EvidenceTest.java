package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.PairReading;
import coilwright.fault.Evidence.Fit;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Fits of predictions to readings, against sums written out. */
final class EvidenceTest {
    private static final double OPEN = Double.POSITIVE_INFINITY;

    private static Evidence of(double... values) {
        List<PairReading> out = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            out.add(new PairReading(i + 1, i + 2, values[i]));
        }
        return new Evidence(out);
    }

    /** Relative to the reading, with a floor of a fifth of the typical one. */
    private static double weight(double size, double typical) {
        return 1 / (size * size + 0.04 * typical * typical);
    }

    @Test
    void theTypicalReadingIsTheMiddleOneOfThoseThatShowSomething() {
        // In order of size 1, 2, 3, 4, 5; zero, rounding beside the largest, and an open pair aside.
        Evidence e = of(1, -5, 0, 2, OPEN, 4, 4e-9, -3);
        assertThat(e.typical()).isEqualTo(3);
        assertThat(e.measured()).isEqualTo(5);
        assertThat(e.size()).isEqualTo(8);
        assertThat(e.data(1)).isEqualTo(-5);
        assertThat(e.weight(1)).isCloseTo(weight(5, 3), within(1e-15));
        assertThat(e.weight(2)).isCloseTo(weight(0, 3), within(1e-15));
        assertThat(e.weight(4)).as("an open pair weighs as the typical").isCloseTo(weight(3, 3), within(1e-15));
        assertThat(of(1, 1e-9).measured()).as("a thousand-millionth is nothing").isEqualTo(1);
        assertThat(of(1, 1.1e-9).measured()).isEqualTo(2);
        assertThat(of(0, OPEN).typical()).isEqualTo(1);
        assertThat(of(0, OPEN).measured()).isZero();
    }

    @Test
    void theGainIsThatOfLeastSquares() {
        Evidence e = of(1, 2, 4);
        double a = weight(1, 2);
        double b = weight(2, 2);
        double c = weight(4, 2);
        double gain = (a * 1 * 3 + b * 2 * 5 + c * 4 * -1) / (a * 9 + b * 25 + c * 1);
        assertThat(e.fits(new double[] {3, 5, -1}).plain().gain()).isCloseTo(gain, within(1e-12));
        assertThat(e.fits(new double[] {0.5, 1, 2}).plain().gain()).isCloseTo(2, within(1e-12));
        assertThat(e.fits(new double[3]).plain().gain()).isZero();
        // What is open, read or predicted, has no say.
        assertThat(of(OPEN, 2, 4).fits(new double[] {7, 1, OPEN}).plain().gain())
                .isCloseTo(2, within(1e-12));
    }

    @Test
    void squaresAreRelativeAndOpenAgainstNotOpenCountsOne() {
        Evidence e = of(1, 2, OPEN, OPEN);
        double[] predicted = {OPEN, 3, OPEN, 4};
        assertThat(e.square(predicted, 0.5, 0)).isEqualTo(1);
        // Of 1 and 2 the typical is 2.
        assertThat(e.square(predicted, 0.5, 1)).isCloseTo(0.25 * weight(2, 2), within(1e-15));
        assertThat(e.square(predicted, 0.5, 2)).isZero();
        assertThat(e.square(predicted, 0.5, 3)).isEqualTo(1);
        Fit fit = e.fits(predicted).plain();
        assertThat(fit.gain()).isCloseTo(2.0 / 3, within(1e-12));
        assertThat(fit.squares()).isCloseTo(2, within(1e-12));
        assertThat(fit.count()).isEqualTo(2);
        assertThat(fit.slip()).isEqualTo(-1);
        assertThat(fit.likeSlip()).isFalse();
    }

    /** Leaving a reading out is fitting the others by themselves, their weights as they were. */
    private static Fit without(Evidence e, double[] predicted, int left) {
        double dp = 0;
        double pp = 0;
        for (int i = 0; i < e.size(); i++) {
            if (i != left) {
                dp += e.weight(i) * e.data(i) * predicted[i];
                pp += e.weight(i) * predicted[i] * predicted[i];
            }
        }
        double gain = dp / pp;
        double squares = 0;
        for (int i = 0; i < e.size(); i++) {
            squares += i == left ? 0 : e.square(predicted, gain, i);
        }
        return new Fit(squares, e.measured() - 1, gain, left, false);
    }

    @ParameterizedTest
    @ValueSource(doubles = {10, 0.1, 100, 0.01, -1, 11.4, 0.086, 3, 8.4, 11.6, -1.16})
    void aReadingFarOffTheOthersIsTakenForASlip(double factor) {
        double[] predicted = {1, 1.5, 2, 2.5, 3, 3.5};
        double[] read = new double[6];
        for (int i = 0; i < 6; i++) {
            read[i] = 0.8 * predicted[i] * (i % 2 == 0 ? 1.004 : 0.996);
        }
        read[2] = 0.8 * predicted[2] * factor;
        Evidence e = of(read);
        Fit fit = e.fits(predicted).robust();
        Fit others = without(e, predicted, 2);
        assertThat(fit.slip()).isEqualTo(2);
        assertThat(fit.count()).isEqualTo(5);
        assertThat(fit.gain()).isCloseTo(others.gain(), within(1e-9));
        assertThat(fit.squares()).isCloseTo(others.squares(), within(1e-9));
        // A decimal point or a sign to within 15 %.
        boolean like = List.of(10.0, 0.1, 100.0, 0.01, -1.0, 11.4, 0.086).contains(factor);
        assertThat(fit.likeSlip()).isEqualTo(like);
    }

    @Test
    void theReadingThatSpoilsTheGainIsFoundToo() {
        // A far too large reading draws the gain to itself: the others, not it, then stand furthest off.
        double[] predicted = {1, 1, 1, 1, 1, 5};
        double[] read = {1.001, 0.999, 1.001, 0.999, 1, 500};
        Evidence e = of(read);
        Fit fit = e.fits(predicted).robust();
        assertThat(fit.slip()).isEqualTo(5);
        assertThat(fit.likeSlip()).isTrue();
        assertThat(fit.gain()).isCloseTo(1, within(1e-3));
    }

    @Test
    void nothingIsLeftOutOfFewReadingsOrAPerfectFitOrOrdinaryScatter() {
        double[] four = {1, 1, 1, 1};
        Evidence few = of(1, 1, 10, 1);
        assertThat(few.fits(four).robust()).isEqualTo(few.fits(four).plain());
        double[] five = {1, 1, 1, 1, 1};
        Evidence many = of(1, 1, 10, 1, 1);
        assertThat(many.fits(five).robust().slip()).isEqualTo(2);
        Evidence perfect = of(2, 2, 2, 2, 2);
        assertThat(perfect.fits(five).robust()).isEqualTo(perfect.fits(five).plain());
        Evidence scattered = of(1.02, 0.98, 1.05, 0.97, 0.99);
        assertThat(scattered.fits(five).robust()).isEqualTo(scattered.fits(five).plain());
    }

    /**
     * Six readings of one size, five of which scatter by a hundredth: the sixth is a slip once it stands more than six
     * times their error from them. Errors are relative to the square root of size² and (size / 5)².
     */
    @Test
    void aSlipStandsSixTimesTheErrorOff() {
        double[] same = {1, 1, 1, 1, 1, 1};
        for (boolean far : new boolean[] {false, true}) {
            double last = far ? 1.072 : 1.055;
            Evidence e = of(1.01, 0.99, 1.01, 0.99, 1, last);
            Fit others = without(e, same, 5);
            double error = Math.sqrt(others.squares() / 5);
            double off = Math.abs(last - others.gain()) * Math.sqrt(e.weight(5));
            assertThat(off > 6 * error).isEqualTo(far);
            assertThat(e.fits(same).robust().slip()).isEqualTo(far ? 5 : -1);
        }
    }

    @Test
    void aReadingThatAloneSetsTheGainCannotBeJudged() {
        // Only one pair is predicted to read anything: without it there is no gain.
        double[] one = {0, 0, 1, 0, 0};
        Evidence e = of(0.001, 0, 5, 0, 0.001);
        assertThat(e.fits(one).robust().slip()).isNotEqualTo(2);
    }

    @Test
    void aPairReadWhereNothingIsPredictedMayBeASlip() {
        double[] predicted = {1, 1, 1, 1, 1, 0};
        Evidence e = of(1.001, 0.999, 1.001, 0.999, 1, 3);
        Fit fit = e.fits(predicted).robust();
        assertThat(fit.slip()).isEqualTo(5);
        assertThat(fit.gain()).isCloseTo(e.fits(predicted).plain().gain(), within(1e-12));
        assertThat(fit.count()).isEqualTo(5);
        // An open pair where something is predicted, too, but it is no reading that shows the error of the meter.
        double[] all1 = {1, 1, 1, 1, 1, 1};
        Evidence open = of(1.001, 0.999, 1.001, 0.999, 1, OPEN);
        Fit without = open.fits(all1).robust();
        assertThat(without.slip()).isEqualTo(5);
        assertThat(without.count()).isEqualTo(5);
        assertThat(without.squares())
                .isCloseTo(without(open, new double[] {1, 1, 1, 1, 1, OPEN}, 5).squares(), within(1e-9));
    }

    @Test
    void theDistanceOfTwoPredictionsIsThatOfTheNearestScale() {
        Evidence e = of(1, 2, 4);
        double[] x = {1, 1, 2};
        double[] y = {2, 1, 3};
        double a = weight(1, 2);
        double b = weight(2, 2);
        double c = weight(4, 2);
        double scale = (a * 2 + b + c * 6) / (a + b + c * 4);
        double want = a * Math.pow(scale - 2, 2) + b * Math.pow(scale - 1, 2) + c * Math.pow(2 * scale - 3, 2);
        assertThat(e.apart(x, y, 1)).isCloseTo(want, within(1e-12));
        assertThat(e.apart(x, y, 3)).isCloseTo(9 * want, within(1e-12));
        assertThat(e.apart(x, new double[] {5, 5, 10}, 1)).isCloseTo(0, within(1e-12));
        // Turned over, the nearest is nothing at all.
        assertThat(e.apart(x, new double[] {-1, -1, -2}, 1)).isCloseTo(a + b + 4 * c, within(1e-12));
        assertThat(e.apart(new double[3], y, 1)).isCloseTo(4 * a + b + 9 * c, within(1e-12));
        // Open in one only counts one each; open in both, nothing.
        assertThat(e.apart(new double[] {OPEN, OPEN, 1}, new double[] {OPEN, 1, 1}, 1))
                .isCloseTo(1, within(1e-12));
        assertThat(e.apart(new double[] {1, OPEN, 1}, new double[] {OPEN, OPEN, 1}, 1))
                .isCloseTo(1, within(1e-12));
    }
}
