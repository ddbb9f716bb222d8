package coilwright.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;

/** Compares solutions node by node. */
final class Compare {
    private static final double RELATIVE = 1e-9;
    private static final double ROUNDING = 1e-13;

    private Compare() {}

    /** Greatest voltage that the sources and feeds could set up: what rounding is measured by where all cancels. */
    static double drive(Network network, List<Feed> feeds) {
        double ohms = 0;
        double volts = 0;
        double amperes = 0;
        for (Branch branch : network.branches()) {
            if (!branch.isOpen()) {
                ohms = Math.max(ohms, branch.resistance());
                volts += Math.abs(branch.emf());
            }
        }
        for (Feed feed : feeds) {
            if (feed instanceof Feed.Current current) {
                amperes += Math.abs(current.amperes());
            } else if (feed instanceof Feed.Voltage voltage) {
                volts += Math.abs(voltage.volts());
            }
        }
        return volts + amperes * ohms;
    }

    static void same(Solution solution, DenseOracle dense) {
        same(solution, dense, drive(solution.network(), solution.feeds()));
    }

    static void same(Solution solution, DenseOracle dense, double drive) {
        int n = solution.network().nodeCount();
        for (int a = 0; a < n; a++) {
            for (int b = 0; b < n; b++) {
                same(solution.voltage(a, b), dense.voltage(a, b), dense.greatest(), drive);
            }
        }
        for (int f = 0; f < solution.feeds().size(); f++) {
            // A current is a difference of voltages over a resistance, here no less than a hundredth of an ohm.
            double i = dense.feedCurrent(f);
            close(solution.feedCurrent(f), i, RELATIVE * Math.abs(i) + 1e3 * ROUNDING * drive);
        }
    }

    /** The two agree to 1e-9 of {@code size}, but for rounding of what drives the network. */
    static void same(OptionalDouble found, OptionalDouble expected, double size, double drive) {
        if (found.isPresent() != expected.isPresent()) {
            assertThat(found).isEqualTo(expected);
        }
        if (expected.isPresent()) {
            close(found.getAsDouble(), expected.getAsDouble(), RELATIVE * size + ROUNDING * drive);
        }
    }

    static void close(double found, double expected, double tolerance) {
        if (!(Math.abs(found - expected) <= tolerance)) {
            throw new AssertionError(found + " is not within " + tolerance + " of " + expected + ", but off by "
                    + Math.abs(found - expected));
        }
    }
}
