package coilwright.rewind;

import java.util.Objects;

/**
 * A size of bare round wire.
 *
 * @param system gauge or metric
 * @param name number within the system, such as {@code 18}, {@code 4/0} or {@code 0.850}
 * @param bareDiameterMm nominal conductor diameter, mm; for AWG by the formula, unrounded
 * @param source where the diameter comes from
 */
public record WireSize(WireSystem system, String name, double bareDiameterMm, Source source) {
    /**
     * Checks the diameter.
     *
     * @param system gauge or metric
     * @param name number within the system, such as {@code 18}, {@code 4/0} or {@code 0.850}
     * @param bareDiameterMm nominal conductor diameter, mm; for AWG by the formula, unrounded
     * @param source where the diameter comes from
     * @throws IllegalArgumentException when it is not over 0
     */
    public WireSize {
        Objects.requireNonNull(system, "system");
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(source, "source");
        Require.positive("bare diameter", bareDiameterMm, "mm");
    }

    /** {@return name as spoken: {@code 18 AWG}, {@code 0.850 mm}} */
    public String label() {
        return name + " " + system.word();
    }

    /** {@return conductor area, mm²} */
    public double areaMm2() {
        return Math.PI / 4 * bareDiameterMm * bareDiameterMm;
    }

    /** {@return conductor area, circular mils: the square of the diameter in thousandths of an inch} */
    public double circularMils() {
        double mils = bareDiameterMm / WireSizes.MM_PER_INCH * 1000;
        return mils * mils;
    }

    /** {@return diameter as printed in tables, inches; for AWG by the rounding rule of ASTM B258} */
    public double printedInches() {
        double inches = bareDiameterMm / WireSizes.MM_PER_INCH;
        return system == WireSystem.AWG ? WireSizes.b258Rounded(inches, WireSizes.awgNumber(name)) : inches;
    }

    /**
     * {@return resistance per kilometre, Ω/km}
     *
     * @param celsius temperature, °C
     */
    public double ohmsPerKm(double celsius) {
        return Copper.resistance(1000, areaMm2(), celsius);
    }

    /** {@return bare mass per kilometre, kg/km, which is grams per metre} */
    public double kgPerKm() {
        return Copper.mass(1000, areaMm2());
    }
}
