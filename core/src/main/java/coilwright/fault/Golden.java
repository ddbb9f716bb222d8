package coilwright.fault;

import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;

/** Golden-section search for the best of a function with one peak, to within a thousandth of its worth or so. */
final class Golden {
    private static final double SECTION = (Math.sqrt(5) - 1) / 2;

    /** Worths that differ by less than this, so many times one after the other, end the search. */
    private static final double ALIKE = 1e-3;

    private static final int LEVEL = 3;

    private Golden() {}

    static <T> T best(double low, double high, int steps, DoubleFunction<T> at, ToDoubleFunction<T> worth) {
        return best(low, high, steps, at, worth, new double[1]);
    }

    static <T> T best(
            double low, double high, int steps, DoubleFunction<T> at, ToDoubleFunction<T> worth, double[] where) {
        double a = low;
        double b = high;
        double x1 = b - SECTION * (b - a);
        double x2 = a + SECTION * (b - a);
        T t1 = at.apply(x1);
        T t2 = at.apply(x2);
        int level = 0;
        for (int i = 0; i < steps && level < LEVEL; i++) {
            // Two places alike may lie on both sides of the peak, but hardly so again and again.
            level = Math.abs(worth.applyAsDouble(t1) - worth.applyAsDouble(t2)) < ALIKE ? level + 1 : 0;
            if (worth.applyAsDouble(t1) >= worth.applyAsDouble(t2)) {
                b = x2;
                x2 = x1;
                t2 = t1;
                x1 = b - SECTION * (b - a);
                t1 = at.apply(x1);
            } else {
                a = x1;
                x1 = x2;
                t1 = t2;
                x2 = a + SECTION * (b - a);
                t2 = at.apply(x2);
            }
        }
        boolean first = worth.applyAsDouble(t1) >= worth.applyAsDouble(t2);
        where[0] = first ? x1 : x2;
        return first ? t1 : t2;
    }
}
