package coilwright.network;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealVector;

/**
 * Solves a network the long way: modified nodal analysis with the current of each link and voltage feed as an unknown,
 * by one dense LU decomposition. Shares nothing with the code under test but {@link Network}.
 */
public final class DenseOracle {
    private final int[] part;
    private final double[] voltage;
    private final double[] feedCurrent;

    private DenseOracle(int[] part, double[] voltage, double[] feedCurrent) {
        this.part = part;
        this.voltage = voltage;
        this.feedCurrent = feedCurrent;
    }

    /** Solves; the feeds must be satisfiable. */
    public static DenseOracle solve(Network network, List<Feed> feeds) {
        int n = network.nodeCount();
        int[] part = colours(network, feeds, true);
        int[] tied = new int[n];
        for (int v = 0; v < n; v++) {
            tied[v] = v;
        }
        List<int[]> ideal = new ArrayList<>();
        List<Double> volts = new ArrayList<>();
        for (Branch branch : network.branches()) {
            if (branch.isLink() && tied[branch.from()] != tied[branch.to()]) {
                recolour(tied, tied[branch.from()], tied[branch.to()]);
                ideal.add(new int[] {branch.from(), branch.to()});
                volts.add(0.0);
            }
        }
        int firstFeed = ideal.size();
        for (Feed feed : feeds) {
            if (feed instanceof Feed.Voltage voltage) {
                ideal.add(new int[] {voltage.in(), voltage.out()});
                volts.add(voltage.volts());
            }
        }
        int size = n + ideal.size();
        double[][] m = new double[size][size];
        double[] right = new double[size];
        for (Branch branch : network.branches()) {
            if (branch.isLink() || branch.isOpen()) {
                continue;
            }
            double g = 1 / branch.resistance();
            int p = branch.from();
            int q = branch.to();
            m[p][p] += g;
            m[q][q] += g;
            m[p][q] -= g;
            m[q][p] -= g;
            right[p] -= g * branch.emf();
            right[q] += g * branch.emf();
        }
        for (Feed feed : feeds) {
            if (feed instanceof Feed.Current current) {
                right[current.in()] += current.amperes();
                right[current.out()] -= current.amperes();
            }
        }
        for (int k = 0; k < ideal.size(); k++) {
            int p = ideal.get(k)[0];
            int q = ideal.get(k)[1];
            m[p][n + k] += 1;
            m[q][n + k] -= 1;
            m[n + k][p] += 1;
            m[n + k][q] -= 1;
            right[n + k] = volts.get(k);
        }
        for (int v = 0; v < n; v++) {
            if (part[v] == v) {
                m[v] = new double[size];
                m[v][v] = 1;
                right[v] = 0;
            }
        }
        double[] voltage = new double[n];
        double[] feedCurrent = new double[feeds.size()];
        if (size > 0) {
            RealVector x = new LUDecomposition(new Array2DRowRealMatrix(m, false), 1e-300)
                    .getSolver()
                    .solve(new ArrayRealVector(right, false));
            for (int v = 0; v < n; v++) {
                voltage[v] = x.getEntry(v);
            }
            int k = n + firstFeed;
            for (int f = 0; f < feedCurrent.length; f++) {
                feedCurrent[f] = feeds.get(f) instanceof Feed.Current current ? current.amperes() : -x.getEntry(k++);
            }
        }
        return new DenseOracle(part, voltage, feedCurrent);
    }

    /** Whether the feeds can be satisfied: no ring of ideal sources, and current feeds within parts. */
    public static boolean solvable(Network network, List<Feed> feeds) {
        int n = network.nodeCount();
        int[] tied = new int[n];
        for (int v = 0; v < n; v++) {
            tied[v] = v;
        }
        for (Branch branch : network.branches()) {
            if (branch.isLink()) {
                recolour(tied, tied[branch.from()], tied[branch.to()]);
            }
        }
        for (Feed feed : feeds) {
            if (feed instanceof Feed.Voltage) {
                if (tied[feed.in()] == tied[feed.out()]) {
                    return false;
                }
                recolour(tied, tied[feed.in()], tied[feed.out()]);
            }
        }
        int[] part = colours(network, feeds, true);
        double[] into = new double[n];
        double size = 0;
        for (Feed feed : feeds) {
            if (feed instanceof Feed.Current current) {
                into[part[current.in()]] += current.amperes();
                into[part[current.out()]] -= current.amperes();
                size += Math.abs(current.amperes());
            }
        }
        for (double sum : into) {
            if (Math.abs(sum) > 1e-12 * size) {
                return false;
            }
        }
        return true;
    }

    /** For each node the lowest node of its part. */
    static int[] colours(Network network, List<Feed> feeds, boolean withVoltageFeeds) {
        int[] colour = new int[network.nodeCount()];
        for (int v = 0; v < colour.length; v++) {
            colour[v] = v;
        }
        for (Branch branch : network.branches()) {
            if (!branch.isOpen()) {
                recolour(colour, colour[branch.from()], colour[branch.to()]);
            }
        }
        for (Feed feed : feeds) {
            if (withVoltageFeeds && feed instanceof Feed.Voltage) {
                recolour(colour, colour[feed.in()], colour[feed.out()]);
            }
        }
        return colour;
    }

    private static void recolour(int[] colour, int one, int other) {
        int low = Math.min(one, other);
        int high = Math.max(one, other);
        for (int v = 0; v < colour.length; v++) {
            if (colour[v] == high) {
                colour[v] = low;
            }
        }
    }

    public OptionalDouble voltage(int a, int b) {
        return part[a] == part[b] ? OptionalDouble.of(voltage[a] - voltage[b]) : OptionalDouble.empty();
    }

    public double feedCurrent(int feed) {
        return feedCurrent[feed];
    }

    /** The greatest voltage between a node and the lowest node of its part. */
    public double greatest() {
        double most = 0;
        for (double v : voltage) {
            most = Math.max(most, Math.abs(v));
        }
        return most;
    }
}
