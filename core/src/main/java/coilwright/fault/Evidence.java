package coilwright.fault;

import coilwright.bench.PairReading;
import java.util.Arrays;
import java.util.List;

/**
 * How well predicted readings explain those of a run, whatever the supply's or meter's scale: each run has a gain of
 * its own, fitted by least squares. Errors are taken relative to each reading, with a floor of a fifth of the run's
 * typical reading, since a meter is read to a part of its scale.
 */
final class Evidence {
    private static final double FLOOR = 0.2;
    /** Readings below this share of the largest are rounding, and count as nothing. */
    private static final double NOTHING = 1e-9;
    /** Readings beyond this many times their neighbours' error are looked at as slips. */
    private static final double FAR = 6;
    /** A reading with more than this share in the gain cannot be judged by the others. */
    private static final double MOST_SHARE = 1 - 1e-9;

    /** With fewer readings than this none can be told to be a slip. */
    private static final int FEWEST = 5;
    /** How near a reading must come to a slip's usual ratios: a decimal place or two, or the sign. */
    private static final double SLIPPED = 0.15;

    private final double[] data;
    private final double[] weight;
    private final int n;
    private final double typical;
    private final int measured;
    private final double nothing;
    /** The reading of greatest size. */
    private final int biggest;

    Evidence(List<PairReading> readings) {
        data = readings.stream().mapToDouble(PairReading::value).toArray();
        n = data.length;
        double[] finite = Arrays.stream(data)
                .map(Math::abs)
                .filter(x -> !Double.isInfinite(x))
                .toArray();
        nothing = NOTHING * Arrays.stream(finite).max().orElse(0);
        double[] sizes = Arrays.stream(finite).filter(x -> x > nothing).sorted().toArray();
        typical = sizes.length == 0 ? 1 : sizes[sizes.length / 2];
        measured = sizes.length;
        int most = 0;
        for (int i = 1; i < n; i++) {
            most = Math.abs(data[i]) > Math.abs(data[most]) ? i : most;
        }
        biggest = most;
        weight = new double[n];
        for (int i = 0; i < n; i++) {
            double size = Double.isInfinite(data[i]) ? typical : Math.abs(data[i]);
            weight[i] = 1 / (size * size + FLOOR * FLOOR * typical * typical);
        }
    }

    int size() {
        return n;
    }

    /** The middle one of the readings' sizes, those of nothing and infinite ones aside. */
    double typical() {
        return typical;
    }

    /** How many readings are neither nothing nor infinite: only these show the error of the meter. */
    int measured() {
        return measured;
    }

    double data(int i) {
        return data[i];
    }

    double weight(int i) {
        return weight[i];
    }

    private boolean usable(int i, double p) {
        return !Double.isInfinite(data[i]) && !Double.isInfinite(p);
    }

    /** Squared relative error of one reading. */
    double square(double[] predicted, double gain, int i) {
        boolean open = Double.isInfinite(data[i]);
        boolean predictedOpen = Double.isInfinite(predicted[i]);
        if (open || predictedOpen) {
            return open == predictedOpen ? 0 : 1;
        }
        double r = data[i] - gain * predicted[i];
        return r * r * weight[i];
    }

    /**
     * The explanation of a run by one prediction.
     *
     * @param squares sum of the squared relative errors, slips left out
     * @param count readings that show the error of the meter, slips left out
     * @param gain scale of the run
     * @param slip reading taken for a slip, or −1
     * @param likeSlip whether the slip is a clear one: ten times too much or too little, or the wrong sign
     */
    record Fit(double squares, int count, double gain, int slip, boolean likeSlip) {}

    /**
     * Two fits of one prediction.
     *
     * @param plain of all readings
     * @param robust with the worst reading left out, where it stands far off all others; else the same
     */
    record Fits(Fit plain, Fit robust) {}

    /** The fits of a prediction. */
    Fits fits(double[] predicted) {
        double dp = 0;
        double pp = 0;
        for (int i = 0; i < n; i++) {
            if (usable(i, predicted[i])) {
                dp += weight[i] * data[i] * predicted[i];
                pp += weight[i] * predicted[i] * predicted[i];
            }
        }
        double gain = pp == 0 ? 0 : dp / pp;
        double sum = 0;
        int worst = 0;
        double most = -1;
        for (int i = 0; i < n; i++) {
            double square = square(predicted, gain, i);
            sum += square;
            if (square > most) {
                most = square;
                worst = i;
            }
        }
        Fit all = new Fit(sum, measured, gain, -1, false);
        return new Fits(all, n < FEWEST || sum == 0 ? all : withoutWorst(predicted, all, worst, pp));
    }

    private Fit withoutWorst(double[] predicted, Fit all, int worst, double pp) {
        // The reading that spoils the gain need not be the one furthest from it, so the two largest are tried.
        Fit best = all;
        double own = 0;
        for (int i : worst == biggest ? new int[] {worst} : new int[] {worst, biggest}) {
            // What a least-squares fit becomes without one reading follows from that reading's share in the gain.
            double share = usable(i, predicted[i]) && pp > 0 ? weight[i] * predicted[i] * predicted[i] / pp : 0;
            double square = square(predicted, all.gain(), i);
            double squares = Math.max(0, all.squares() - square / (1 - share));
            if (share < MOST_SHARE && squares < best.squares()) {
                double gain = share == 0
                        ? all.gain()
                        : all.gain() - (data[i] - all.gain() * predicted[i]) * share / (1 - share) / predicted[i];
                own = square / ((1 - share) * (1 - share));
                best = new Fit(squares, measured - counted(i), gain, i, likeSlip(predicted[i] * gain, i));
            }
        }
        return best.slip() >= 0 && own > FAR * FAR * Math.max(best.squares() / Math.max(1, best.count()), 1e-6)
                ? best
                : all;
    }

    /** Squared relative difference of what two predictions read, the second at its gain and the first at what is nearest. */
    double apart(double[] first, double[] second, double gain) {
        double xx = 0;
        double xy = 0;
        for (int i = 0; i < n; i++) {
            if (!Double.isInfinite(first[i]) && !Double.isInfinite(second[i])) {
                xx += weight[i] * first[i] * first[i];
                xy += weight[i] * first[i] * second[i];
            }
        }
        // Against a run turned over, the nearest is nothing at all.
        double scale = xx == 0 ? 0 : Math.max(0, xy / xx);
        double sum = 0;
        for (int i = 0; i < n; i++) {
            if (Double.isInfinite(first[i]) || Double.isInfinite(second[i])) {
                sum += first[i] == second[i] ? 0 : 1;
            } else {
                double r = gain * (scale * first[i] - second[i]);
                sum += r * r * weight[i];
            }
        }
        return sum;
    }

    private int counted(int i) {
        return Math.abs(data[i]) <= nothing || Double.isInfinite(data[i]) ? 0 : 1;
    }

    private boolean likeSlip(double should, int i) {
        double ratio = data[i] / should;
        return near(ratio, 10) || near(ratio, 0.1) || near(ratio, 100) || near(ratio, 0.01) || near(ratio, -1);
    }

    private static boolean near(double ratio, double slip) {
        return Math.abs(ratio / slip - 1) < SLIPPED;
    }
}
