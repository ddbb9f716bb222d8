package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchNetwork;
import coilwright.network.Factorisation;
import coilwright.network.Feed;
import coilwright.network.Solution;

/**
 * The armature as it should be, factorised once, with the potentials of every bar under one ampere fed to every other.
 * All that a fault changes follows from these by small systems of equations.
 */
final class SoundNetwork {
    private final BenchArmature armature;
    private final int bars;
    private final int[] part;
    private final double[][] transfer;

    SoundNetwork(BenchArmature armature) {
        this.armature = armature;
        this.bars = armature.winding().armature().bars();
        Factorisation f = BenchNetwork.of(armature).network().factorised();
        part = new int[bars + 1];
        transfer = new double[bars + 1][];
        for (int bar = 1; bar <= bars; bar++) {
            part[bar] = bar;
            for (int first = 1; first < bar; first++) {
                if (part[first] == first && f.connected(BenchNetwork.node(first), BenchNetwork.node(bar))) {
                    part[bar] = first;
                    break;
                }
            }
            double[] row = new double[bars + 1];
            int ground = part[bar];
            if (ground != bar) {
                Solution s = f.solve(Feed.current(BenchNetwork.node(bar), BenchNetwork.node(ground), 1));
                double zero = s.voltage(BenchNetwork.node(ground));
                int reference = s.reference(BenchNetwork.node(ground));
                for (int other = 1; other <= bars; other++) {
                    int node = BenchNetwork.node(other);
                    row[other] = s.reference(node) == reference ? s.voltage(node) - zero : 0;
                }
            }
            transfer[bar] = row;
        }
    }

    BenchArmature armature() {
        return armature;
    }

    int bars() {
        return bars;
    }

    boolean joined(int a, int b) {
        return part[a] == part[b];
    }

    /** Volts of a bar over its part's first bar, under one ampere into another and out at that first bar. */
    double transfer(int fed, int read) {
        return transfer[fed][read];
    }

    /** Volts from c to d under one ampere in at a and out at b; all in one part. */
    double mutual(int a, int b, int c, int d) {
        return transfer[a][c] - transfer[a][d] - transfer[b][c] + transfer[b][d];
    }
}
