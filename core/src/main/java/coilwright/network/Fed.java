package coilwright.network;

import java.util.List;

/** A factorised network under given feeds, without its voltage feeds, which are put in as unknown currents. */
final class Fed {
    private static final double ROUNDING = 1e-12;

    final List<Feed> feeds;
    /** Whether the network's own sources are at work. */
    final boolean sources;
    /** Voltages of the contracted nodes under the current feeds. */
    final double[] voltages;
    /** Current fed into each part, or {@code balanced}. */
    final double[] intoPart;
    /** Whether every current feed enters and leaves the same part and every voltage feed lies within one. */
    final boolean balanced;

    final int held;
    final int[] heldIn;
    final int[] heldOut;
    final double[] volts;
    final double[][] heldColumns;
    /** Current entering each contracted node from the current feeds, and the sum of their sizes. */
    final double[] injected;

    final double injectedSize;

    Fed(Factorisation base, List<Feed> feeds, boolean sources) {
        this.feeds = List.copyOf(feeds);
        this.sources = sources;
        int n = base.joinedCount();
        held = (int) feeds.stream().filter(Feed.Voltage.class::isInstance).count();
        heldIn = new int[held];
        heldOut = new int[held];
        volts = new double[held];
        heldColumns = new double[held][];
        double[] x = sources ? base.ownVoltages().clone() : new double[n];
        injected = new double[n];
        intoPart = new double[base.partCount()];
        boolean within = true;
        double size = 0;
        int at = 0;
        for (Feed feed : this.feeds) {
            int p = base.joined(feed.in());
            int q = base.joined(feed.out());
            within &= base.part(p) == base.part(q);
            if (feed instanceof Feed.Current current) {
                double i = current.amperes();
                if (p != q && i != 0) {
                    double[] column = base.pairColumn(p, q);
                    for (int v = 0; v < n; v++) {
                        x[v] += i * column[v];
                    }
                    injected[p] += i;
                    injected[q] -= i;
                    intoPart[base.part(p)] += i;
                    intoPart[base.part(q)] -= i;
                    size += Math.abs(i);
                }
            } else if (feed instanceof Feed.Voltage voltage) {
                heldIn[at] = p;
                heldOut[at] = q;
                volts[at] = voltage.volts();
                heldColumns[at] = base.pairColumn(p, q);
                at++;
            }
        }
        voltages = x;
        balanced = within;
        injectedSize = size;
    }

    /** Whether a part takes in as much as it gives out, but for rounding of the sum. */
    boolean isZero(double sum) {
        return Math.abs(sum) <= ROUNDING * injectedSize;
    }

    /** A feed in words. */
    static String words(Feed feed) {
        return feed instanceof Feed.Current current
                ? "feed of " + current.amperes() + " A in at node " + feed.in() + " and out at node " + feed.out()
                : "feed of " + ((Feed.Voltage) feed).volts() + " V at nodes " + feed.in() + " and " + feed.out();
    }
}
