package coilwright.bench;

import coilwright.network.Factorisation;
import coilwright.network.Feed;
import coilwright.network.Solution;

/**
 * The network of an armature with a supply at two of its bars.
 *
 * @param net the network
 * @param factorisation of it
 * @param in bar where current enters
 * @param out bar where it leaves
 */
record FedNetwork(BenchNetwork net, Factorisation factorisation, int in, int out) {
    /**
     * Makes the network ready.
     *
     * @throws IllegalArgumentException when the two bars are one
     */
    static FedNetwork of(BenchArmature armature, int in, int out) {
        if (in == out) {
            throw new IllegalArgumentException("feed in and out at bar " + in + ": name two different bars");
        }
        BenchNetwork net = BenchNetwork.of(armature);
        return new FedNetwork(net, net.network().factorised(), in, out);
    }

    /**
     * A bar that is to be fed.
     *
     * @throws IllegalArgumentException when the armature does not have it
     */
    static int checkBar(BenchArmature armature, int bar) {
        int bars = armature.winding().armature().bars();
        if (bar < 1 || bar > bars) {
            throw new IllegalArgumentException("feed at bar " + bar + ", but bars run from 1 to " + bars);
        }
        return bar;
    }

    /** Whether something joins the two bars. */
    boolean joined() {
        return joined(in, out);
    }

    boolean joined(int bar, int otherBar) {
        return factorisation.connected(BenchNetwork.node(bar), BenchNetwork.node(otherBar));
    }

    /**
     * The network fed; the two bars must be joined.
     *
     * @throws IllegalArgumentException when a voltage is fed to bars joined with no resistance
     */
    Solution solve(Supply supply) {
        return factorisation.solve(feed(supply));
    }

    private Feed feed(Supply supply) {
        int a = BenchNetwork.node(in);
        int b = BenchNetwork.node(out);
        if (supply instanceof Supply.Current c) {
            return Feed.current(a, b, c.amperes());
        }
        double volts = ((Supply.Voltage) supply).volts();
        if (factorisation.resistance(a, b).orElse(1) == 0) {
            throw new IllegalArgumentException("feed of " + volts + " V at bars " + in + " and " + out
                    + ", which are joined with no resistance: no voltage can stand there; feed a current, or other"
                    + " bars");
        }
        return Feed.voltage(a, b, volts);
    }
}
