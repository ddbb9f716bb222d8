package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchNetwork;
import coilwright.network.Factorisation;
import coilwright.network.Feed;
import coilwright.network.Solution;
import java.util.Optional;

/**
 * The armature as it should be, factorised once, with the potentials of every bar under one ampere fed to every other.
 * All that a fault changes follows from these by small systems of equations.
 */
final class SoundNetwork {
    private final BenchArmature armature;
    private final int bars;
    private final int[] part;
    private final double[][] transfer;
    /** Of the armature as it should be; empty where bars of different parts are linked. */
    private final Optional<Openings> openings;

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
        openings = Optional.of(new Openings(armature));
    }

    /** The same network with two bars of different parts linked: the second's part hangs on the first's. */
    SoundNetwork(SoundNetwork apart, Alteration link) {
        int a = link.from();
        int b = link.to();
        if (apart.joined(a, b)) {
            throw new IllegalArgumentException("bars " + a + " and " + b + " are joined as it is");
        }
        armature = apart.armature;
        bars = apart.bars;
        part = apart.part.clone();
        transfer = new double[bars + 1][];
        for (int fed = 1; fed <= bars; fed++) {
            double[] row = apart.transfer[fed].clone();
            boolean beyond = apart.joined(fed, b);
            boolean before = apart.joined(fed, a);
            for (int read = 1; read <= bars && (beyond || before); read++) {
                if (before && apart.joined(read, b)) {
                    row[read] = apart.transfer[fed][a];
                } else if (beyond && apart.joined(read, a)) {
                    row[read] = apart.transfer[a][read];
                } else if (beyond && apart.joined(read, b)) {
                    row[read] = apart.transfer[a][a] + 1 / link.conductance() + apart.mutual(fed, b, read, b);
                }
            }
            transfer[fed] = row;
        }
        for (int bar = 1; bar <= bars; bar++) {
            if (apart.joined(bar, b)) {
                part[bar] = apart.part[a];
            }
        }
        openings = Optional.empty();
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

    /** Potentials of the bars over their part's first bar, by number, under one ampere into a bar; not to be changed. */
    double[] transfer(int fed) {
        return transfer[fed];
    }

    /** The like for one ampere into a place. */
    double[] transfer(Tap fed) {
        if (fed.coil() == 0) {
            return transfer[fed.top()];
        }
        double[] out = new double[bars + 1];
        for (int bar = 1; bar <= bars; bar++) {
            out[bar] = (1 - fed.along()) * transfer[fed.top()][bar] + fed.along() * transfer[fed.bottom()][bar];
        }
        return out;
    }

    /** Volts from c to d under one ampere in at a and out at b; all in one part. */
    double mutual(int a, int b, int c, int d) {
        return transfer[a][c] - transfer[a][d] - transfer[b][c] + transfer[b][d];
    }

    /** The parts that the bars fall into once coils are open; empty where bars of different parts are linked. */
    Optional<Openings> openings() {
        return openings;
    }
}
