package coilwright.bench;

import coilwright.circuit.Brush;
import coilwright.circuit.BrushGear;
import coilwright.winding.Armature;
import java.util.ArrayList;
import java.util.List;

/**
 * The drop (bar-to-bar) test: direct current through the armature, a millivoltmeter from bar to bar. A meter between
 * two places that nothing joins reads nothing; where the supply can drive no current at all, its full voltage stands
 * between the two places it is connected to, infinite (off scale) for a supply of steady current.
 *
 * @param armature as it lies on the bench
 * @param potentials of bars 1..K, volts
 */
public record DropTest(BenchArmature armature, List<Double> potentials) {
    /**
     * Copies the list.
     *
     * @param armature as it lies on the bench
     * @param potentials of bars 1..K, volts
     */
    public DropTest {
        potentials = List.copyOf(potentials);
    }

    /**
     * {@return the test with two bars fed}
     *
     * @param armature the armature as it is on the bench
     * @param in bar where current enters
     * @param out bar where it leaves
     * @param supply current or voltage fed
     * @throws IllegalArgumentException when a bar does not exist, the two are one, or a voltage is fed to bars joined
     *     with no resistance
     */
    public static DropTest at(BenchArmature armature, int in, int out, Supply supply) {
        return solve(armature, armature, FedNetwork.checkBar(armature, in), FedNetwork.checkBar(armature, out), supply);
    }

    /**
     * {@return the test fed through the brushes: all + brushes together, all − brushes together}
     *
     * @param armature the armature as it is on the bench
     * @param gear the brushes
     * @param supply current or voltage fed
     */
    public static DropTest throughBrushes(BenchArmature armature, BrushGear gear, Supply supply) {
        BenchArmature joined = armature;
        int[] first = new int[2];
        for (Brush brush : gear.brushes()) {
            int side = brush.positive() ? 0 : 1;
            for (int bar : brush.bars()) {
                if (first[side] == 0) {
                    first[side] = bar;
                } else if (first[side] != bar) {
                    joined = joined.with(Bond.direct(Point.bar(first[side]), Point.bar(bar)));
                }
            }
        }
        return solve(armature, joined, first[0], first[1], supply);
    }

    private static DropTest solve(BenchArmature shown, BenchArmature armature, int in, int out, Supply supply) {
        FedNetwork fed = FedNetwork.of(armature, in, out);
        return new DropTest(
                shown,
                fed.joined()
                        ? Potentials.ofBars(fed.net(), fed.solve(supply), out)
                        : parted(fed, armature.winding().armature().bars(), supply));
    }

    /** No current flows: the whole supply stands between what is joined to one lead and to the other. */
    private static List<Double> parted(FedNetwork fed, int bars, Supply supply) {
        double high = supply instanceof Supply.Voltage v ? v.volts() : Double.POSITIVE_INFINITY;
        List<Double> volts = new ArrayList<>();
        for (int bar = 1; bar <= bars; bar++) {
            volts.add(fed.joined(bar, fed.in()) ? high : fed.joined(bar, fed.out()) ? 0 : Double.NaN);
        }
        return volts;
    }

    /**
     * {@return what a meter reads between two bars, V(from) − V(to)}
     *
     * @param from bar under the first probe
     * @param to bar under the second probe
     */
    public PairReading between(int from, int to) {
        return new PairReading(from, to, Potentials.difference(potentials, from, to));
    }

    /** {@return the walk 1-2, 2-3, … K-1} */
    public List<PairReading> neighbours() {
        Armature a = armature.winding().armature();
        List<PairReading> out = new ArrayList<>();
        for (int bar = 1; bar <= a.bars(); bar++) {
            out.add(between(bar, a.wrapBar(bar + 1)));
        }
        return out;
    }

    /**
     * {@return every pair of bars between which a meter reads a value, signed, within a relative tolerance}
     *
     * @param value V(from) − V(to), V
     * @param tolerance share of the value, 0 to 1
     */
    public List<PairReading> where(double value, double tolerance) {
        return Potentials.where(
                potentials.size(),
                (from, to) -> Potentials.difference(potentials, from, to),
                Potentials.scale(potentials),
                value,
                tolerance,
                true);
    }
}
