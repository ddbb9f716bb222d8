package coilwright.commutator;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Run-out round the bars, and what is left when the commutator is taken as turning about its own centre.
 *
 * <p>The readings are fitted by least squares with mean + e·cos(θ − φ), θ the angle of a bar from bar 1. To the first
 * order in e over the radius that is a round commutator off centre by e towards φ; what remains is its own shape.
 */
public final class RunOut {
    /** Widest gap without a reading over which the centre is told, degrees. Common practice, from memory. */
    private static final double MOST_GAP = 180;

    private final int bars;
    private final Map<Integer, Double> heights;
    private final double mean;
    private final double eccentricity;
    private final double phase;
    private final List<Bar> list;

    /**
     * One bar read.
     *
     * @param bar number
     * @param heightMm reading, the mean of several where it was read more than once
     * @param residualMm reading less mean and eccentricity
     */
    public record Bar(int bar, double heightMm, double residualMm) {}

    /**
     * The step from one bar to the next.
     *
     * @param from bar
     * @param to the next bar, bar 1 after the last
     * @param stepMm how much further out the next one stands
     */
    public record Step(int from, int to, double stepMm) {}

    private RunOut(int bars, Map<Integer, Double> heights, double[] fit) {
        this.bars = bars;
        this.heights = heights;
        this.mean = fit[0];
        this.eccentricity = Math.hypot(fit[1], fit[2]);
        double degrees = Math.toDegrees(Math.atan2(fit[2], fit[1]));
        // The rest by 360 once more: a hair under nought comes out as 360 itself.
        this.phase = degrees < 0 ? (degrees + 360) % 360 : degrees;
        List<Bar> out = new ArrayList<>();
        heights.forEach((bar, h) -> {
            double a = angle(bar, bars);
            out.add(new Bar(bar, h, h - fit[0] - fit[1] * Math.cos(a) - fit[2] * Math.sin(a)));
        });
        this.list = List.copyOf(out);
    }

    /**
     * Fits readings round the bars.
     *
     * @param bars bars on the commutator, at least 3
     * @param readings of at least 3 bars; a bar read twice counts with the mean of its readings
     * @return the readings with the circle that fits them
     * @throws IllegalArgumentException when a bar does not exist, or too few are read to find the centre
     */
    public static RunOut of(int bars, List<Reading> readings) {
        if (bars < 3) {
            throw new IllegalArgumentException("bars is " + bars + ", but a centre needs at least 3");
        }
        Map<Integer, double[]> sums = new TreeMap<>();
        for (Reading r : readings) {
            if (r.bar() > bars) {
                throw new IllegalArgumentException("there is a reading of bar " + r.bar() + ", but there are only "
                        + bars + " bars: check the number of the bar");
            }
            double[] s = sums.computeIfAbsent(r.bar(), b -> new double[2]);
            s[0] += r.heightMm();
            s[1]++;
        }
        if (sums.size() < 3) {
            throw new IllegalArgumentException("only " + sums.size() + (sums.size() == 1 ? " bar is" : " bars are")
                    + " read, but a centre needs at least 3, well spread: read every bar");
        }
        Map<Integer, Double> heights = new TreeMap<>();
        sums.forEach((bar, s) -> heights.put(bar, s[0] / s[1]));
        return new RunOut(bars, heights, fit(bars, heights));
    }

    private static double angle(int bar, int bars) {
        return 2 * Math.PI * (bar - 1) / bars;
    }

    /** Normal equations of 1, cos θ and sin θ, by elimination; they are positive definite and need no pivoting. */
    private static double[] fit(int bars, Map<Integer, Double> heights) {
        double[][] m = new double[3][4];
        heights.forEach((bar, h) -> {
            double a = angle(bar, bars);
            double[] f = {1, Math.cos(a), Math.sin(a)};
            for (int i = 0; i < 3; i++) {
                for (int j = 0; j < 3; j++) {
                    m[i][j] += f[i] * f[j];
                }
                m[i][3] += f[i] * h;
            }
        });
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < 3; k++) {
                if (k != i) {
                    double f = m[k][i] / m[i][i];
                    for (int j = i; j < 4; j++) {
                        m[k][j] -= f * m[i][j];
                    }
                }
            }
        }
        return new double[] {m[0][3] / m[0][0], m[1][3] / m[1][1], m[2][3] / m[2][2]};
    }

    /** {@return bars on the commutator} */
    public int bars() {
        return bars;
    }

    /** {@return every bar read, in order} */
    public List<Bar> list() {
        return list;
    }

    /** {@return bars without a reading, in order} */
    public List<Integer> missing() {
        List<Integer> out = new ArrayList<>();
        for (int b = 1; b <= bars; b++) {
            if (!heights.containsKey(b)) {
                out.add(b);
            }
        }
        return List.copyOf(out);
    }

    /** {@return widest gap between neighbouring bars read, degrees; over about 120 the centre is not well found} */
    public double widestGapDegrees() {
        double widest = 0;
        int before = list.get(list.size() - 1).bar() - bars;
        for (Bar b : list) {
            widest = Math.max(widest, (b.bar() - before) * 360.0 / bars);
            before = b.bar();
        }
        return widest;
    }

    /**
     * {@return whether the bars read go round enough of the commutator to tell its centre: from less than half the
     * circle the fit can lie anywhere}
     */
    public boolean tellsCentre() {
        return widestGapDegrees() <= MOST_GAP;
    }

    /** {@return mean of the fit, mm on the gauge} */
    public double meanMm() {
        return mean;
    }

    /**
     * {@return e: how far the commutator's centre lies from the axis it was turned about, mm} It swings the gauge by
     * twice that.
     */
    public double eccentricityMm() {
        return eccentricity;
    }

    /**
     * {@return φ: where its high side lies, degrees from bar 1 in the direction of the bars' numbers, 0 to under 360}
     */
    public double highSideDegrees() {
        return phase;
    }

    /** {@return the bar nearest to the high side} */
    public int highSideBar() {
        return 1 + (int) Math.floorMod(Math.round(phase * bars / 360), (long) bars);
    }

    /**
     * {@return where the high side stands on a clock's face with bar 1 at 12 o'clock, to the half hour, such as 4:30}
     */
    public String highSideClock() {
        int halfHours = (int) (Math.round(phase / 15) % 24);
        int hour = halfHours / 2;
        return (hour == 0 ? 12 : hour) + (halfHours % 2 == 0 ? ":00" : ":30");
    }

    /** {@return total indicator reading as measured: highest less lowest, mm} */
    public double tirMm() {
        return highest(false).heightMm() - lowest(false).heightMm();
    }

    /** {@return total indicator reading with the eccentricity taken out, mm} */
    public double residualTirMm() {
        return highest(true).residualMm() - lowest(true).residualMm();
    }

    /** {@return whether its own shape is round to half a micrometre, less than a gauge shows} */
    public boolean isRound() {
        return residualTirMm() < 0.0005;
    }

    /**
     * {@return the bar that stands out most, as read or with the eccentricity taken out; the first of equals}
     *
     * @param recentred whether with the eccentricity taken out
     */
    public Bar highest(boolean recentred) {
        Bar best = list.get(0);
        for (Bar b : list) {
            if (value(b, recentred) > value(best, recentred)) {
                best = b;
            }
        }
        return best;
    }

    /**
     * {@return the bar that lies lowest, as read or with the eccentricity taken out; the first of equals}
     *
     * @param recentred whether with the eccentricity taken out
     */
    public Bar lowest(boolean recentred) {
        Bar best = list.get(0);
        for (Bar b : list) {
            if (value(b, recentred) < value(best, recentred)) {
                best = b;
            }
        }
        return best;
    }

    private static double value(Bar b, boolean recentred) {
        return recentred ? b.residualMm() : b.heightMm();
    }

    /**
     * {@return steps between neighbouring bars that were both read, in order, the last being from the last bar to bar
     * 1}
     */
    public List<Step> steps() {
        List<Step> out = new ArrayList<>();
        for (int b = 1; b <= bars; b++) {
            int next = b % bars + 1;
            if (heights.containsKey(b) && heights.containsKey(next)) {
                out.add(new Step(b, next, heights.get(next) - heights.get(b)));
            }
        }
        return List.copyOf(out);
    }

    /**
     * {@return the largest step between neighbours, up or down, the first of equals; empty where no neighbours were
     * read}
     */
    public Optional<Step> largestStep() {
        Optional<Step> largest = Optional.empty();
        for (Step s : steps()) {
            if (largest.isEmpty()
                    || Math.abs(s.stepMm()) > Math.abs(largest.get().stepMm())) {
                largest = Optional.of(s);
            }
        }
        return largest;
    }

    /** {@return largest step between neighbours, mm, unsigned; 0 where no neighbours were read} */
    public double largestStepMm() {
        return largestStep().map(s -> Math.abs(s.stepMm())).orElse(0.0);
    }

    /**
     * {@return the same bars with the eccentricity taken out: what a gauge reads when the commutator runs true to
     * itself}
     */
    public RunOut recentred() {
        return of(
                bars,
                list.stream().map(b -> new Reading(b.bar(), b.residualMm())).toList());
    }

    /**
     * {@return largest total indicator reading within a run of neighbouring bars, mm}
     *
     * @param span bars in the run, 2 or more, such as 6
     */
    public double largestChangeWithinMm(int span) {
        if (span < 2) {
            throw new IllegalArgumentException("span is " + span + " bars, but must be at least 2");
        }
        double worst = 0;
        for (int start = 1; start <= bars; start++) {
            double high = Double.NEGATIVE_INFINITY;
            double low = Double.POSITIVE_INFINITY;
            for (int k = 0; k < Math.min(span, bars); k++) {
                Double h = heights.get((start - 1 + k) % bars + 1);
                if (h != null) {
                    high = Math.max(high, h);
                    low = Math.min(low, h);
                }
            }
            worst = Math.max(worst, high - low);
        }
        return Math.max(0, worst);
    }

    /**
     * {@return bars that do not go with the others: their residual is more than three and a half times the scatter
     * (1.4826 times the median of the unsigned residuals) and over 0.005 mm} Read them again, and look for a lifted
     * bar.
     */
    public List<Bar> standouts() {
        List<Double> sorted =
                list.stream().map(b -> Math.abs(b.residualMm())).sorted().toList();
        int n = sorted.size();
        double median = n % 2 == 1 ? sorted.get(n / 2) : (sorted.get(n / 2 - 1) + sorted.get(n / 2)) / 2;
        double limit = Math.max(3.5 * 1.4826 * median, 0.005);
        return list.stream().filter(b -> Math.abs(b.residualMm()) > limit).toList();
    }
}
