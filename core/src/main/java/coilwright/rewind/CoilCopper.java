package coilwright.rewind;

import java.util.Objects;

/**
 * The copper of one coil.
 *
 * @param turns 1 to {@value #MAX_TURNS}
 * @param conductor of one turn
 * @param meanTurn of one turn
 * @param leadsMm both leads together, from the slots to the risers
 */
public record CoilCopper(int turns, Conductor conductor, MeanTurn meanTurn, double leadsMm) {
    /** Most turns taken. */
    public static final int MAX_TURNS = 100_000;

    /**
     * Checks the ranges.
     *
     * @param turns 1 to {@value #MAX_TURNS}
     * @param conductor of one turn
     * @param meanTurn of one turn
     * @param leadsMm both leads together, from the slots to the risers
     * @throws IllegalArgumentException when one is out of range
     */
    public CoilCopper {
        Require.inRange("turns per coil", turns, 1, MAX_TURNS);
        Objects.requireNonNull(conductor, "conductor");
        Objects.requireNonNull(meanTurn, "meanTurn");
        Require.notNegative("leads", leadsMm, "mm");
    }

    /** {@return length of the conductor from bar to bar, m} */
    public double lengthM() {
        return (turns * meanTurn.lengthMm() + leadsMm) / 1000;
    }

    /** {@return length of wire, every strand counted, m} */
    public double wireM() {
        return lengthM() * conductor.strands();
    }

    /**
     * {@return resistance from bar to bar at a temperature, Ω}
     *
     * @param celsius temperature, °C
     */
    public double resistance(double celsius) {
        return Copper.resistance(lengthM(), conductor.areaMm2(), celsius);
    }

    /** {@return bare mass, kg} */
    public double massKg() {
        return Copper.mass(lengthM(), conductor.areaMm2());
    }

    /**
     * {@return the same coil with other turns}
     *
     * @param other turns per coil, at least 1
     */
    public CoilCopper withTurns(int other) {
        return new CoilCopper(other, conductor, meanTurn, leadsMm);
    }

    /**
     * {@return the same coil in another conductor}
     *
     * @param other what one turn is wound of
     */
    public CoilCopper withConductor(Conductor other) {
        return new CoilCopper(turns, other, meanTurn, leadsMm);
    }
}
