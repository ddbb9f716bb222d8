package coilwright.fault;

import java.util.function.BiFunction;
import java.util.function.ToDoubleFunction;

/**
 * Looks for the best sizes of one or two faults at once, each size a share from 0 to 1 of its range: coarsely over a few
 * of them, then near the best of these, one size after the other.
 */
final class TwoSizes {
    private static final int ROUNDS = 4;
    private static final int STEPS = 11;
    private static final double REACH = 0.25;
    /** How much nearer each round looks than the one before. */
    private static final double NEARER = 2.5;

    private TwoSizes() {}

    /**
     * The best of a coarse look.
     *
     * @param x share of the first
     * @param y share of the second
     * @param weighed both at these sizes
     */
    record Rough(double x, double y, Weighed weighed) {}

    /** The best at some shares of the first and some of the second. */
    static Rough coarse(double[] firsts, double[] seconds, BiFunction<Double, Double, Weighed> weigh) {
        Rough top = null;
        for (double x : firsts) {
            for (double y : seconds) {
                Weighed w = weigh.apply(x, y);
                if (top == null || w.plain() > top.weighed().plain()) {
                    top = new Rough(x, y, w);
                }
            }
        }
        return top;
    }

    /**
     * The best near a coarse look.
     *
     * @param firstSized whether the size of the first is free
     * @param secondSized whether that of the second is
     */
    static Weighed fine(
            Rough rough, boolean firstSized, boolean secondSized, BiFunction<Double, Double, Weighed> weigh) {
        return Weigher.bestSize(worth -> refine(rough, firstSized, secondSized, weigh, worth));
    }

    private static Weighed refine(
            Rough rough,
            boolean firstSized,
            boolean secondSized,
            BiFunction<Double, Double, Weighed> weigh,
            ToDoubleFunction<Weighed> worth) {
        double[] at = {rough.x(), rough.y()};
        Weighed top = rough.weighed();
        double reach = REACH;
        for (int round = 0; round < ROUNDS; round++) {
            for (int side = 0; side < 2; side++) {
                if (!(side == 0 ? firstSized : secondSized)) {
                    continue;
                }
                int s = side;
                double[] here = at.clone();
                double[] found = new double[1];
                Weighed w = Golden.best(
                        Math.max(0, at[s] - reach),
                        Math.min(1, at[s] + reach),
                        STEPS,
                        v -> weigh.apply(s == 0 ? v : here[0], s == 1 ? v : here[1]),
                        worth,
                        found);
                if (worth.applyAsDouble(w) > worth.applyAsDouble(top)) {
                    top = w;
                    at[s] = found[0];
                }
            }
            reach /= NEARER;
        }
        return top;
    }
}
