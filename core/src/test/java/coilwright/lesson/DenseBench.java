package coilwright.lesson;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/** A drop, resistance or growler test solved the long way: bars as nodes, one dense matrix, nothing of the bench room. */
final class DenseBench {
    /** What stands for no resistance, mΩ: little beside a coil, not so little that the matrix loses its last figures. */
    private static final double JOINED = 1e-5;

    private final int bars;
    private final List<double[]> branches = new ArrayList<>();

    DenseBench(int bars) {
        this.bars = bars;
    }

    /** A coil between two bars; a voltage drives current out at the second. */
    void coil(int from, int to, double ohms, double volts) {
        branches.add(new double[] {from - 1.0, to - 1.0, Math.max(ohms, JOINED), volts});
    }

    void join(int from, int to) {
        coil(from, to, 0, 0);
    }

    private int[] parts() {
        int[] part = new int[bars];
        for (int i = 0; i < bars; i++) {
            part[i] = i;
        }
        for (boolean changed = true; changed; ) {
            changed = false;
            for (double[] b : branches) {
                int low = Math.min(part[(int) b[0]], part[(int) b[1]]);
                changed |= part[(int) b[0]] != low || part[(int) b[1]] != low;
                part[(int) b[0]] = low;
                part[(int) b[1]] = low;
            }
        }
        return part;
    }

    private RealMatrix conductances(int[] part) {
        var m = new Array2DRowRealMatrix(bars, bars);
        for (double[] b : branches) {
            int i = (int) b[0];
            int j = (int) b[1];
            m.addToEntry(i, i, 1 / b[2]);
            m.addToEntry(j, j, 1 / b[2]);
            m.addToEntry(i, j, -1 / b[2]);
            m.addToEntry(j, i, -1 / b[2]);
        }
        for (int i = 0; i < bars; i++) {
            if (part[i] == i) {
                m.addToEntry(i, i, 1);
            }
        }
        return m;
    }

    /** Volts from the first bar to the second of each pair; infinite where no current can be driven between the feeds. */
    double[] drop(int in, int out, double amps, int[][] pairs) {
        int[] part = parts();
        double[] v = new double[bars];
        if (part[in - 1] == part[out - 1]) {
            var right = new ArrayRealVector(bars);
            right.addToEntry(in - 1, amps);
            right.addToEntry(out - 1, -amps);
            v = new LUDecomposition(conductances(part)).getSolver().solve(right).toArray();
        }
        double[] read = new double[pairs.length];
        for (int i = 0; i < pairs.length; i++) {
            int a = pairs[i][0] - 1;
            int b = pairs[i][1] - 1;
            boolean joined = part[a] == part[b];
            read[i] = joined ? v[a] - v[b] : 0;
            if (part[in - 1] != part[out - 1] && !joined) {
                boolean across = (part[a] == part[in - 1] && part[b] == part[out - 1])
                        || (part[b] == part[in - 1] && part[a] == part[out - 1]);
                read[i] = across ? Double.POSITIVE_INFINITY : 0;
            }
        }
        return read;
    }

    double[] resistance(int[][] pairs) {
        int[] part = parts();
        RealMatrix inverse = new LUDecomposition(conductances(part)).getSolver().getInverse();
        double[] read = new double[pairs.length];
        for (int i = 0; i < pairs.length; i++) {
            int a = pairs[i][0] - 1;
            int b = pairs[i][1] - 1;
            read[i] = part[a] != part[b]
                    ? Double.POSITIVE_INFINITY
                    : inverse.getEntry(a, a) + inverse.getEntry(b, b) - inverse.getEntry(a, b) - inverse.getEntry(b, a);
        }
        return read;
    }

    /** Size of the volts that the coils' own voltages make between the bars of each pair. */
    double[] induced(int[][] pairs) {
        int[] part = parts();
        var right = new ArrayRealVector(bars);
        for (double[] b : branches) {
            right.addToEntry((int) b[1], -b[3] / b[2]);
            right.addToEntry((int) b[0], b[3] / b[2]);
        }
        double[] v =
                new LUDecomposition(conductances(part)).getSolver().solve(right).toArray();
        double[] read = new double[pairs.length];
        for (int i = 0; i < pairs.length; i++) {
            int a = pairs[i][0] - 1;
            int b = pairs[i][1] - 1;
            read[i] = part[a] == part[b] ? Math.abs(v[a] - v[b]) : 0;
        }
        return read;
    }
}
