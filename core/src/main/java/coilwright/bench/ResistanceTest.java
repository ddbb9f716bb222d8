package coilwright.bench;

import coilwright.network.Factorisation;
import coilwright.winding.Armature;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Resistance between bars, ohms at the temperature of the given coil resistance. */
public final class ResistanceTest {
    /** Constant of copper, °C: R2/R1 = (234.5 + t2)/(234.5 + t1). Source: winding temperature formulas, IEC 60034. */
    public static final double COPPER = 234.5;

    private final BenchArmature armature;
    private final Factorisation factorisation;

    private ResistanceTest(BenchArmature armature) {
        this.armature = armature;
        this.factorisation = BenchNetwork.of(armature).network().factorised();
    }

    /**
     * {@return an armature with nothing else connected}
     *
     * @param armature the armature as it is on the bench
     */
    public static ResistanceTest of(BenchArmature armature) {
        return new ResistanceTest(armature);
    }

    /**
     * {@return a resistance brought from one temperature to another}
     *
     * @param ohms the resistance at {@code fromCelsius}
     * @param fromCelsius over −234.5
     * @param toCelsius over −234.5
     */
    public static double at(double ohms, double fromCelsius, double toCelsius) {
        if (!(fromCelsius > -COPPER) || !(toCelsius > -COPPER)) {
            throw new IllegalArgumentException(
                    "temperatures " + fromCelsius + " and " + toCelsius + " °C must both be over -234.5 °C");
        }
        return ohms * (COPPER + toCelsius) / (COPPER + fromCelsius);
    }

    /**
     * {@return ohms between two bars; empty where nothing joins them}
     *
     * @param from bar under the first probe
     * @param to bar under the second probe
     */
    public OptionalDouble between(int from, int to) {
        int bars = armature.winding().armature().bars();
        for (int bar : new int[] {from, to}) {
            if (bar < 1 || bar > bars) {
                throw new IllegalArgumentException("there is no bar " + bar + ": bars run from 1 to " + bars);
            }
        }
        return factorisation.resistance(BenchNetwork.node(from), BenchNetwork.node(to));
    }

    /** {@return the walk 1-2, 2-3, … K-1; infinite where nothing joins the two} */
    public List<PairReading> neighbours() {
        return apart(1);
    }

    /**
     * {@return every bar with the one a number of bars on; infinite where nothing joins the two}
     *
     * @param bars how far apart, 1 to K − 1
     */
    public List<PairReading> apart(int bars) {
        Armature a = armature.winding().armature();
        List<PairReading> out = new ArrayList<>();
        for (int bar = 1; bar <= a.bars(); bar++) {
            int other = a.wrapBar(bar + bars);
            out.add(new PairReading(bar, other, between(bar, other).orElse(Double.POSITIVE_INFINITY)));
        }
        return out;
    }

    /**
     * {@return every pair of bars whose resistance is a value within a relative tolerance}
     *
     * @param ohms the value looked for
     * @param tolerance share of the value, 0 to 1
     */
    public List<PairReading> where(double ohms, double tolerance) {
        if (!(ohms >= 0) || Double.isInfinite(ohms) || !(tolerance >= 0 && tolerance <= 1)) {
            throw new IllegalArgumentException("reading " + ohms + " ohm with tolerance " + tolerance * 100
                    + " %: give at least 0 ohm and 0 to 100 %");
        }
        int bars = armature.winding().armature().bars();
        double slack = tolerance * ohms + 1e-9 * armature.soundOhms();
        List<PairReading> out = new ArrayList<>();
        for (int i = 1; i <= bars; i++) {
            for (int j = i + 1; j <= bars; j++) {
                double r = between(i, j).orElse(Double.POSITIVE_INFINITY);
                if (Math.abs(r - ohms) <= slack) {
                    out.add(new PairReading(i, j, r));
                }
            }
        }
        return out;
    }
}
