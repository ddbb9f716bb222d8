package coilwright.fault;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.stream.IntStream;

/**
 * A quick bound on how well one or two faults between bars can explain the readings, whatever their sizes. With
 * alterations of conductances G between pairs of bars, reading i is v(i) − Σ B(j,k) seen(i,j) push(i,k), where v is the
 * sound reading, seen what the reading shows of one ampere between the bars of j, push what drives current between
 * those of k, and B = (1 + G M)⁻¹ G a symmetric matrix that holds all sizes, M being what the places show of each other.
 * The readings are so linear in the elements of B, and least squares over them, run by run, is no more than the faults
 * themselves can reach. Where a run keeps one state, the push is the same for all readings, and one unknown for each
 * place is left. The bound holds for readings that are not taken for slips. Where a meter shows no sign, that of the
 * sound reading is taken, so that it holds as long as no large reading changes its sign.
 */
final class Screen {
    /** Unsigned readings below this share of the typical one may have either sign, and are left out. */
    private static final double EITHER_SIGN = 0.25;
    /** Readings below this share of the typical one are nothing, whatever their sign. */
    private static final double NOTHING = 1e-3;

    private static final double SINGULAR = 1e-12;

    /** A run ready for least squares: every row is multiplied by the root of its weight. */
    private static final class Run {
        final RunModel model;
        final boolean still;
        final double[] root;
        final double[] sound;
        final double[] data;
        final double[][] seen;
        final double[][][] push;
        double[][] gram = {};

        Run(RunModel model, Evidence e, List<Place> places) {
            this.model = model;
            still = model.oneState();
            int n = e.size();
            boolean signed = signed(model);
            double[] expected = model.signedExpected();
            root = new double[n];
            data = new double[n];
            double sure = signed ? 0 : EITHER_SIGN * e.typical();
            for (int i = 0; i < n; i++) {
                double size = Math.abs(e.data(i));
                boolean out = Double.isInfinite(size) || (size < sure && size > NOTHING * e.typical());
                root[i] = out ? 0 : Math.sqrt(e.weight(i));
                data[i] = out ? 0 : root[i] * (signed || expected[i] >= 0 ? e.data(i) : -e.data(i));
            }
            sound = scaled(expected);
            seen = new double[places.size()][];
            push = new double[places.size()][][];
            for (int p = 0; p < seen.length; p++) {
                Place place = places.get(p);
                seen[p] = scaled(model.pattern(place.from(), place.to()));
                push[p] = new double[place.modes().size()][];
                for (int m = 0; m < push[p].length && !still; m++) {
                    push[p][m] = model.push(
                            place.from(), place.to(), place.modes().get(m).coil());
                }
            }
        }

        private double[] scaled(double[] v) {
            double[] out = new double[v.length];
            for (int i = 0; i < v.length; i++) {
                out[i] = v[i] * root[i];
            }
            return out;
        }

        double[] column(int place, int mode) {
            if (still) {
                return seen[place];
            }
            double[] out = new double[data.length];
            for (int i = 0; i < out.length; i++) {
                out[i] = seen[place][i] * push[place][mode][i];
            }
            return out;
        }
    }

    private final List<Place> places;
    private final boolean twoBreaks;
    private final List<Run> runs = new ArrayList<>();

    private Screen(List<Place> places, boolean twoBreaks) {
        this.places = places;
        this.twoBreaks = twoBreaks;
    }

    static Screen of(List<RunModel> models, List<Evidence> evidence, List<Place> places) {
        return of(models, evidence, places, false, false);
    }

    /**
     * A screen.
     *
     * @param twoBreaks whether it is for two coils that are open or have bad joints, and only for these: what lies
     *     between the parts that two breaks leave reads nothing, so that such readings are left out
     * @param onlySigned whether only runs are used in which no reading can change its sign unseen
     */
    static Screen of(
            List<RunModel> models, List<Evidence> evidence, List<Place> places, boolean twoBreaks, boolean onlySigned) {
        var out = new Screen(places, twoBreaks);
        // Runs of one state first: they are the quickest to bound.
        for (boolean still : new boolean[] {true, false}) {
            for (int r = 0; r < models.size(); r++) {
                if (models.get(r).quick()
                        && models.get(r).oneState() == still
                        && (signed(models.get(r)) || !onlySigned)) {
                    out.runs.add(new Run(models.get(r), evidence.get(r), places));
                }
            }
        }
        return out;
    }

    /** Ohms are never under 0. */
    private static boolean signed(RunModel model) {
        return model.run().test().signed() || model.run().test().ohms();
    }

    boolean empty() {
        return runs.isEmpty();
    }

    /** Least squares that one fault can reach. */
    double single(int place, int mode) {
        double left = 0;
        for (Run run : runs) {
            double[] s = run.sound;
            double[] c = run.column(place, mode);
            double ss = dot(s, s);
            double cc = dot(c, c);
            double were = cc;
            double cd = dot(c, run.data);
            left += dot(run.data, run.data);
            if (ss > 0) {
                double sc = dot(s, c);
                double sd = dot(s, run.data);
                left -= sd * sd / ss;
                cc -= sc * sc / ss;
                cd -= sc * sd / ss;
            }
            left -= cc > SINGULAR * were ? cd * cd / cc : 0;
        }
        return Math.max(0, left);
    }

    /** Two places with the modes there, and the least squares they can reach. */
    record Hit(int first, int firstMode, int second, int secondMode, double squares) {}

    /** The pairs that can get below a limit of squares, best first, at most a number. */
    List<Hit> pairs(double limit, int most) {
        var best = new Best(limit, most);
        runs.stream().filter(r -> r.still && !twoBreaks).forEach(Screen::fillGram);
        IntStream.range(0, places.size()).parallel().forEach(j -> {
            if (twoBreaks) {
                breaks(j, best);
            } else {
                others(j, best);
            }
        });
        return best.sorted();
    }

    /** The best hits so far. Several threads add to it; what is left does not depend on their order. */
    private static final class Best {
        private final PriorityQueue<Hit> heap = new PriorityQueue<>(ORDER.reversed());
        private final double limit;
        private final int most;
        /** What a further hit must not exceed. */
        private volatile double top;

        Best(double limit, int most) {
            this.limit = limit;
            this.most = most;
            top = limit;
        }

        double top() {
            return top;
        }

        synchronized void add(Hit hit) {
            if (hit.squares() < limit) {
                heap.add(hit);
                if (heap.size() > most) {
                    heap.poll();
                    top = Math.min(limit, heap.element().squares());
                }
            }
        }

        synchronized List<Hit> sorted() {
            List<Hit> out = new ArrayList<>(heap);
            out.sort(ORDER);
            return out;
        }
    }

    /** Pairs of a place with those after it, two coils with breaks aside. */
    private void others(int j, Best best) {
        double[][] work = new double[5][5];
        for (int k = j + 1; k < places.size(); k++) {
            double still = 0;
            for (int r = 0; r < runs.size() && runs.get(r).still && still <= best.top(); r++) {
                still += least(runs.get(r).gram, j, k);
            }
            for (int a = 0; a < places.get(j).modes().size() && still <= best.top(); a++) {
                for (int b = 0; b < places.get(k).modes().size(); b++) {
                    if (places.get(j).modes().get(a).coil() > 0
                            && places.get(k).modes().get(b).coil() > 0) {
                        continue;
                    }
                    double squares = still;
                    for (int r = 0; r < runs.size() && squares <= best.top(); r++) {
                        squares += runs.get(r).still ? 0 : least(runs.get(r), j, a, k, b, new int[0], work);
                    }
                    if (squares <= best.top()) {
                        best.add(new Hit(j, a, k, b, squares));
                    }
                }
            }
        }
    }

    /** Pairs of coils with breaks, the first at a place, the second at one after it. */
    private void breaks(int j, Best best) {
        double[][] work = new double[5][5];
        for (int a = 0; a < places.get(j).modes().size(); a++) {
            int coil = places.get(j).modes().get(a).coil();
            if (coil == 0) {
                continue;
            }
            Openings.One open = runs.get(0).model.openings().without(coil);
            for (int k = j + 1; k < places.size(); k++) {
                for (int b = 0; b < places.get(k).modes().size(); b++) {
                    int other = places.get(k).modes().get(b).coil();
                    if (other == 0) {
                        continue;
                    }
                    int[] parts = open.partsWithout(other);
                    double squares = 0;
                    for (int r = 0; r < runs.size() && squares <= best.top(); r++) {
                        squares += least(runs.get(r), j, a, k, b, parts, work);
                    }
                    if (squares <= best.top()) {
                        best.add(new Hit(j, a, k, b, squares));
                    }
                }
            }
        }
    }

    private static final Comparator<Hit> ORDER = Comparator.comparingDouble(Hit::squares)
            .thenComparingInt(Hit::first)
            .thenComparingInt(Hit::second)
            .thenComparingInt(Hit::firstMode)
            .thenComparingInt(Hit::secondMode);

    private static void fillGram(Run run) {
        int p = run.seen.length;
        double[][] rows = new double[p + 2][];
        System.arraycopy(run.seen, 0, rows, 0, p);
        rows[p] = run.sound;
        rows[p + 1] = run.data;
        run.gram = new double[p + 2][p + 2];
        for (int j = 0; j < p + 2; j++) {
            for (int k = 0; k <= j; k++) {
                run.gram[j][k] = dot(rows[j], rows[k]);
                run.gram[k][j] = run.gram[j][k];
            }
        }
    }

    private static double dot(double[] x, double[] y) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum += x[i] * y[i];
        }
        return sum;
    }

    /** Least squares of the data over the sound reading and two patterns, by elimination. */
    private static double least(double[][] g, int j, int k) {
        int s = g.length - 2;
        int d = g.length - 1;
        double left = g[d][d];
        double ss = g[s][s];
        double jj = g[j][j];
        double kk = g[k][k];
        double jk = g[j][k];
        double jd = g[j][d];
        double kd = g[k][d];
        if (ss > 0) {
            jj -= g[s][j] * g[s][j] / ss;
            kk -= g[s][k] * g[s][k] / ss;
            jk -= g[s][j] * g[s][k] / ss;
            jd -= g[s][j] * g[s][d] / ss;
            kd -= g[s][k] * g[s][d] / ss;
            left -= g[s][d] * g[s][d] / ss;
        }
        if (jj > SINGULAR * g[j][j]) {
            left -= jd * jd / jj;
            kk -= jk * jk / jj;
            kd -= jk * jd / jj;
        }
        if (kk > SINGULAR * g[k][k]) {
            left -= kd * kd / kk;
        }
        return Math.max(0, left);
    }

    /**
     * Least squares of the data over the sound reading and the three elements of B, or the two that a still run has.
     *
     * @param parts the part that each bar belongs to, readings across which are left out; empty for all one part
     */
    private static double least(Run run, int j, int a, int k, int b, int[] parts, double[][] g) {
        double[] seenJ = run.seen[j];
        double[] seenK = run.seen[k];
        double[] pushJ = run.push[j][a];
        double[] pushK = run.push[k][b];
        for (double[] row : g) {
            Arrays.fill(row, 0);
        }
        for (int i = 0; i < seenJ.length; i++) {
            if (parts.length > 0 && run.model.across(i, parts)) {
                continue;
            }
            double s = run.sound[i];
            double x = run.still ? seenJ[i] : seenJ[i] * pushJ[i];
            double y = run.still ? seenK[i] : seenK[i] * pushK[i];
            double z = run.still ? 0 : seenJ[i] * pushK[i] + seenK[i] * pushJ[i];
            double d = run.data[i];
            g[0][0] += s * s;
            g[0][1] += s * x;
            g[0][2] += s * y;
            g[0][3] += s * z;
            g[0][4] += s * d;
            g[1][1] += x * x;
            g[1][2] += x * y;
            g[1][3] += x * z;
            g[1][4] += x * d;
            g[2][2] += y * y;
            g[2][3] += y * z;
            g[2][4] += y * d;
            g[3][3] += z * z;
            g[3][4] += z * d;
            g[4][4] += d * d;
        }
        double[] were = {g[0][0], g[1][1], g[2][2], g[3][3]};
        for (int c = 0; c < 4; c++) {
            if (g[c][c] <= SINGULAR * were[c]) {
                continue;
            }
            for (int p = c + 1; p < 5; p++) {
                double f = g[c][p] / g[c][c];
                for (int q = p; q < 5; q++) {
                    g[p][q] -= f * g[c][q];
                }
            }
        }
        return Math.max(0, g[4][4]);
    }
}
