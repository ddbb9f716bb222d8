package coilwright.fault;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * A quick bound on how well two faults can explain the readings. In a run where the network keeps one state, whatever
 * two faults between bars do is the sound reading plus a multiple of each place's own pattern; the least squares over
 * those multiples is no more than the faults themselves can reach. All pairs are tried, each from sums made once.
 */
final class PairScreen {
    private final int places;
    private final List<double[][]> grams;
    private final double[] total;

    /** A pair of places and the least squares it can reach. */
    record Hit(int first, int second, double squares) {}

    private PairScreen(int places, List<double[][]> grams, double[] total) {
        this.places = places;
        this.grams = grams;
        this.total = total;
    }

    static PairScreen of(List<RunModel> models, List<Evidence> evidence, List<int[]> bars) {
        List<double[][]> grams = new ArrayList<>();
        List<Double> totals = new ArrayList<>();
        for (int r = 0; r < models.size(); r++) {
            RunModel model = models.get(r);
            if (!model.oneState()) {
                continue;
            }
            Evidence e = evidence.get(r);
            int n = e.size();
            double[] expected = model.signedExpected();
            boolean signed = model.run().test().signed();
            double[] data = new double[n];
            double[] root = new double[n];
            double sum = 0;
            for (int i = 0; i < n; i++) {
                root[i] = Double.isInfinite(e.data(i)) ? 0 : Math.sqrt(e.weight(i));
                double d = root[i] == 0 ? 0 : e.data(i);
                data[i] = root[i] * (signed || expected[i] >= 0 ? d : -d);
                sum += data[i] * data[i];
            }
            int p = bars.size();
            double[][] rows = new double[p + 2][];
            rows[p] = scaled(expected, root);
            rows[p + 1] = data;
            for (int j = 0; j < p; j++) {
                rows[j] = scaled(model.pattern(bars.get(j)[0], bars.get(j)[1]), root);
            }
            double[][] gram = new double[p + 2][p + 2];
            for (int j = 0; j < p + 2; j++) {
                for (int k = 0; k <= j; k++) {
                    double dot = 0;
                    double[] x = rows[j];
                    double[] y = rows[k];
                    for (int i = 0; i < n; i++) {
                        dot += x[i] * y[i];
                    }
                    gram[j][k] = dot;
                    gram[k][j] = dot;
                }
            }
            grams.add(gram);
            totals.add(sum);
        }
        return new PairScreen(
                bars.size(),
                grams,
                totals.stream().mapToDouble(Double::doubleValue).toArray());
    }

    private static double[] scaled(double[] v, double[] by) {
        double[] out = new double[v.length];
        for (int i = 0; i < v.length; i++) {
            out[i] = v[i] * by[i];
        }
        return out;
    }

    boolean empty() {
        return grams.isEmpty();
    }

    /** The pairs that can get below a limit of squares, best first, at most a number. */
    List<Hit> best(double limit, int most) {
        PriorityQueue<Hit> heap = new PriorityQueue<>(
                Comparator.comparingDouble((Hit h) -> -h.squares()).thenComparing(h -> -h.first()));
        for (int j = 0; j < places; j++) {
            for (int k = j + 1; k < places; k++) {
                double squares = 0;
                for (int r = 0; r < grams.size() && squares < limit; r++) {
                    squares += least(grams.get(r), total[r], j, k);
                }
                if (squares < limit
                        && (heap.size() < most || squares < heap.peek().squares())) {
                    heap.add(new Hit(j, k, squares));
                    if (heap.size() > most) {
                        heap.poll();
                    }
                }
            }
        }
        List<Hit> out = new ArrayList<>(heap);
        out.sort(Comparator.comparingDouble(Hit::squares)
                .thenComparingInt(Hit::first)
                .thenComparingInt(Hit::second));
        return out;
    }

    /** Least squares of the data over the sound reading and two patterns, by elimination. */
    private double least(double[][] g, double total, int j, int k) {
        int s = places;
        int d = places + 1;
        double left = total;
        double ss = g[s][s];
        if (ss <= 0) {
            return left;
        }
        double jj = g[j][j] - g[s][j] * g[s][j] / ss;
        double kk = g[k][k] - g[s][k] * g[s][k] / ss;
        double jk = g[j][k] - g[s][j] * g[s][k] / ss;
        double jd = g[j][d] - g[s][j] * g[s][d] / ss;
        double kd = g[k][d] - g[s][k] * g[s][d] / ss;
        left -= g[s][d] * g[s][d] / ss;
        if (jj > 1e-12 * g[j][j]) {
            left -= jd * jd / jj;
            kk -= jk * jk / jj;
            kd -= jk * jd / jj;
        }
        if (kk > 1e-12 * g[k][k]) {
            left -= kd * kd / kk;
        }
        return Math.max(0, left);
    }
}
