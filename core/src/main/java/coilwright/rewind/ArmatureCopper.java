package coilwright.rewind;

import coilwright.winding.Armature;
import java.util.Objects;

/**
 * The copper of a whole armature.
 *
 * @param coil one coil
 * @param woundCoils coils in the slots, dead ones included
 * @param liveCoils coils joined to bars
 * @param paths parallel paths A, even
 */
public record ArmatureCopper(CoilCopper coil, int woundCoils, int liveCoils, int paths) {
    /**
     * Checks the counts.
     *
     * @param coil one coil
     * @param woundCoils coils in the slots, dead ones included
     * @param liveCoils coils joined to bars
     * @param paths parallel paths A, even
     * @throws IllegalArgumentException when one is out of range
     */
    public ArmatureCopper {
        Objects.requireNonNull(coil, "coil");
        Require.inRange("live coils", liveCoils, 2, Armature.MAX_BARS);
        Require.atLeast("coils", woundCoils, liveCoils);
        if (paths < 2 || paths % 2 != 0) {
            throw new IllegalArgumentException("parallel paths are " + paths
                    + ", but must be even and at least 2: lap has poles × plex, wave has 2 × plex");
        }
    }

    /**
     * {@return resistance between the brushes without them, Ω: liveCoils · r/A², for equal paths with no coil under a
     * brush} Where the coils do not divide equally the paths differ by a coil and the true value is a little less.
     *
     * @param celsius temperature, °C
     */
    public double brushToBrush(double celsius) {
        return coil.resistance(celsius) * liveCoils / ((double) paths * paths);
    }

    /** {@return bare copper in the armature, kg} */
    public double massKg() {
        return coil.massKg() * woundCoils;
    }

    /**
     * {@return length of wire to buy, m, every strand counted}
     *
     * @param allowance for waste and joints, as a fraction, such as 0.10
     */
    public double wireToBuyM(double allowance) {
        Require.notNegative("allowance", allowance, "");
        return coil.wireM() * woundCoils * (1 + allowance);
    }

    /**
     * {@return mass of wire to buy, kg of bare copper; enamel adds a few percent, most on thin wire}
     *
     * @param allowance for waste and joints, as a share: 0.1 for a tenth
     */
    public double massToBuyKg(double allowance) {
        Require.notNegative("allowance", allowance, "");
        return massKg() * (1 + allowance);
    }

    /**
     * {@return current density, A/mm²}
     *
     * @param armatureAmps current at the brushes, A
     */
    public double currentDensity(double armatureAmps) {
        Require.notNegative("armature current", armatureAmps, "A");
        return armatureAmps / paths / coil.conductor().areaMm2();
    }
}
