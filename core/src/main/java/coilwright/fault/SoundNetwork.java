package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchNetwork;
import coilwright.bench.Bond;
import coilwright.bench.CoilState;
import coilwright.bench.Point;
import coilwright.network.Factorisation;
import coilwright.network.Feed;
import coilwright.network.Solution;
import java.util.Arrays;
import java.util.List;

/**
 * The armature as it should be, factorised once, with the potentials of every bar under one ampere fed to every other.
 * All that a fault changes follows from these by small systems of equations.
 */
final class SoundNetwork {
    /** A determinant of 1 or so that stays above this is none of a network that falls apart. */
    private static final double PARTED = 1e-6;

    private final BenchArmature armature;
    private final List<CoilState> coils;
    private final int bars;
    private final int[] part;
    private final double[][] transfer;
    /** Parts with every coil in place. */
    private final int[] whole;

    SoundNetwork(BenchArmature armature) {
        this.armature = armature;
        coils = armature.coils();
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
        whole = findParts(0, 0);
    }

    /** The same network with two bars of different parts linked: the second's part hangs on the first's. */
    SoundNetwork(SoundNetwork apart, Alteration link) {
        int a = link.from();
        int b = link.to();
        if (apart.joined(a, b)) {
            throw new IllegalArgumentException("bars " + a + " and " + b + " are joined as it is");
        }
        armature = apart.armature;
        coils = apart.coils;
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
        whole = apart.whole;
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

    /** The part that each bar, by number, belongs to once two coils are open; not to be changed. */
    int[] partsWithout(int coil, int other) {
        return mayPart(coil, other) ? findParts(coil, other) : whole;
    }

    /**
     * Whether two coils may be all that holds two parts together: then, and only then, the determinant of the system
     * that takes both away is nothing.
     */
    private boolean mayPart(int coil, int other) {
        CoilState c = armature.coil(coil);
        CoilState o = armature.coil(other);
        if (!c.connected() || c.open() || !o.connected() || o.open()) {
            return true;
        }
        int a = c.topBar().getAsInt();
        int b = c.bottomBar().getAsInt();
        int x = o.topBar().getAsInt();
        int y = o.bottomBar().getAsInt();
        if (!joined(a, x)) {
            return true;
        }
        double g = RunModel.conductance(c);
        double h = RunModel.conductance(o);
        double both = mutual(a, b, x, y);
        double left = (1 - g * mutual(a, b, a, b)) * (1 - h * mutual(x, y, x, y)) - g * h * both * both;
        return !(left > PARTED);
    }

    private int[] findParts(int coil, int other) {
        int[] of = new int[bars + 1];
        Arrays.setAll(of, bar -> bar);
        for (CoilState c : coils) {
            if (c.coil() != coil && c.coil() != other && c.connected() && !c.open()) {
                join(of, c.topBar().getAsInt(), c.bottomBar().getAsInt());
            }
        }
        for (Bond b : armature.bonds()) {
            if (b.a() instanceof Point.Bar x && b.b() instanceof Point.Bar y) {
                join(of, x.number(), y.number());
            }
        }
        for (int bar = 1; bar <= bars; bar++) {
            of[bar] = root(of, bar);
        }
        return of;
    }

    private static void join(int[] of, int a, int b) {
        of[root(of, a)] = root(of, b);
    }

    private static int root(int[] of, int bar) {
        int at = bar;
        while (of[at] != at) {
            of[at] = of[of[at]];
            at = of[at];
        }
        return at;
    }
}
