package coilwright.fault;

import coilwright.bench.PairReading;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How well predicted readings explain those of a run, whatever the supply's or meter's scale: each run has a gain of
 * its own, fitted by least squares. Errors are taken relative to each reading, with a floor of a fifth of the run's
 * typical reading, since a meter is read to a part of its scale.
 */
final class Evidence {
    private static final double FLOOR = 0.2;
    /** Readings beyond this many times their neighbours' error are looked at as slips. */
    private static final double FAR = 6;

    private final double[] data;
    private final double[] weight;
    private final int n;
    private final double typical;

    Evidence(List<PairReading> readings) {
        data = readings.stream().mapToDouble(PairReading::value).toArray();
        n = data.length;
        double[] sizes = Arrays.stream(data)
                .map(Math::abs)
                .filter(x -> x > 0 && !Double.isInfinite(x))
                .sorted()
                .toArray();
        typical = sizes.length == 0 ? 1 : sizes[sizes.length / 2];
        weight = new double[n];
        for (int i = 0; i < n; i++) {
            double size = Double.isInfinite(data[i]) ? typical : Math.abs(data[i]);
            weight[i] = 1 / (size * size + FLOOR * FLOOR * typical * typical);
        }
    }

    int size() {
        return n;
    }

    double data(int i) {
        return data[i];
    }

    double weight(int i) {
        return weight[i];
    }

    /** Best gain, least-squares; 0 where the prediction is all zeros. */
    double gain(double[] predicted, int without) {
        double dp = 0;
        double pp = 0;
        for (int i = 0; i < n; i++) {
            if (i != without && usable(i, predicted[i])) {
                dp += weight[i] * data[i] * predicted[i];
                pp += weight[i] * predicted[i] * predicted[i];
            }
        }
        return pp == 0 ? 0 : dp / pp;
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
     * @param count readings counted
     * @param gain scale of the run
     * @param slip reading taken for a slip, or −1
     * @param likeSlip whether the slip is a clear one: ten times too much or too little, or the wrong sign
     */
    record Fit(double squares, int count, double gain, int slip, boolean likeSlip) {}

    /** The fit of all readings. */
    Fit fit(double[] predicted) {
        double gain = gain(predicted, -1);
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += square(predicted, gain, i);
        }
        return new Fit(sum, n, gain, -1, false);
    }

    /** The fit with the worst reading left out, where it stands far off all others. */
    Fit fitWithoutWorst(double[] predicted) {
        Fit all = fit(predicted);
        if (n < 5) {
            return all;
        }
        Fit best = all;
        // The reading that spoils the gain need not be the one furthest from it, so the two largest are tried.
        for (int i : largest(predicted, all.gain())) {
            double gain = gain(predicted, i);
            double sum = 0;
            for (int k = 0; k < n; k++) {
                if (k != i) {
                    sum += square(predicted, gain, k);
                }
            }
            if (sum < best.squares()) {
                best = new Fit(sum, n - 1, gain, i, likeSlip(predicted[i] * gain, i));
            }
        }
        double own = best.slip() < 0 ? 0 : square(predicted, best.gain(), best.slip());
        return best.slip() >= 0 && own > FAR * FAR * Math.max(best.squares() / Math.max(1, best.count()), 1e-6)
                ? best
                : all;
    }

    private int[] largest(double[] predicted, double gain) {
        List<double[]> all = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            all.add(new double[] {i, square(predicted, gain, i), Math.abs(data[i])});
        }
        double[] worst = all.stream().max((x, y) -> Double.compare(x[1], y[1])).orElseThrow();
        double[] biggest =
                all.stream().max((x, y) -> Double.compare(x[2], y[2])).orElseThrow();
        return new int[] {(int) worst[0], (int) biggest[0]};
    }

    private boolean likeSlip(double should, int i) {
        double ratio = data[i] / should;
        return near(ratio, 10) || near(ratio, 0.1) || near(ratio, 100) || near(ratio, 0.01) || near(ratio, -1);
    }

    private static boolean near(double ratio, double slip) {
        return Math.abs(ratio / slip - 1) < 0.15;
    }
}
