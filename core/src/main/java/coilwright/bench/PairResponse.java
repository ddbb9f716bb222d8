package coilwright.bench;

import coilwright.network.Factorisation;
import coilwright.network.Feed;
import coilwright.network.Solution;
import java.util.function.IntToDoubleFunction;

/**
 * How much of each coil's voltage shows between two bars. By reciprocity it is the current that one ampere fed to the
 * two bars drives through that coil, so one solution serves every position of the armature.
 */
final class PairResponse {
    private final BenchNetwork net;
    private final Factorisation factorisation;

    PairResponse(BenchArmature armature) {
        net = BenchNetwork.of(armature);
        factorisation = net.network().factorised();
    }

    /** Shares of every stretch of wire in what the meter reads. */
    final class Weights {
        private final double[] shares;

        private Weights(double[] shares) {
            this.shares = shares;
        }

        double volts(IntToDoubleFunction soundCoilVolts) {
            double sum = 0;
            for (int i = 0; i < shares.length; i++) {
                var s = net.segments().get(i);
                if (shares[i] != 0) {
                    sum += shares[i] * soundCoilVolts.applyAsDouble(s.coil());
                }
            }
            return sum;
        }
    }

    Weights weights(int from, int to) {
        double[] shares = new double[net.segments().size()];
        int a = BenchNetwork.node(from);
        int b = BenchNetwork.node(to);
        if (factorisation.connected(a, b)) {
            Solution s = factorisation.solve(Feed.current(a, b, 1));
            for (int i = 0; i < shares.length; i++) {
                var segment = net.segments().get(i);
                double turns = net.armature().coil(segment.coil()).turns();
                shares[i] = s.current(segment.branch()) * segment.share() * turns;
            }
        }
        return new Weights(shares);
    }

    double volts(int from, int to, IntToDoubleFunction soundCoilVolts) {
        return weights(from, to).volts(soundCoilVolts);
    }
}
