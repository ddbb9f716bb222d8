package coilwright.bench;

import coilwright.network.Solution;
import java.util.ArrayList;
import java.util.List;

/** Potentials of all bars against one bar; not a number where nothing joins the two. */
final class Potentials {
    private Potentials() {}

    static List<Double> ofBars(BenchNetwork net, Solution solution, int reference) {
        int bars = net.armature().winding().armature().bars();
        List<Double> out = new ArrayList<>(bars);
        for (int bar = 1; bar <= bars; bar++) {
            out.add(solution.voltage(BenchNetwork.node(bar), BenchNetwork.node(reference))
                    .orElse(Double.NaN));
        }
        return out;
    }

    static double difference(List<Double> potentials, int from, int to) {
        double v = potentials.get(from - 1) - potentials.get(to - 1);
        return Double.isNaN(v) || v == 0 ? 0 : v;
    }

    /** What stands between two bars, signed; 0 where nothing joins them. */
    interface Between {
        double volts(int from, int to);
    }

    /** Largest potential, by which rounding is measured. */
    static double scale(List<Double> potentials) {
        return potentials.stream()
                .filter(Double::isFinite)
                .mapToDouble(Math::abs)
                .max()
                .orElse(0);
    }

    static List<PairReading> where(
            int bars, Between between, double scale, double value, double tolerance, boolean signed) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("reading is " + value + ", but must be a number");
        }
        if (!(tolerance >= 0 && tolerance <= 1)) {
            throw new IllegalArgumentException("tolerance is " + tolerance * 100 + " %, but must be from 0 % to 100 %");
        }
        double slack = tolerance * Math.abs(value) + 1e-9 * scale;
        List<PairReading> out = new ArrayList<>();
        for (int i = 1; i <= bars; i++) {
            for (int j = i + 1; j <= bars; j++) {
                double v = between.volts(i, j);
                double read = signed ? v : Math.abs(v);
                double wanted = signed ? value : Math.abs(value);
                if (Math.abs(read - wanted) <= slack) {
                    out.add(new PairReading(i, j, read));
                } else if (signed && Math.abs(-read - wanted) <= slack) {
                    out.add(new PairReading(j, i, -read));
                }
            }
        }
        return out;
    }
}
