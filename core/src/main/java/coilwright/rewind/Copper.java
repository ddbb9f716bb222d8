package coilwright.rewind;

/**
 * Annealed copper: resistance, temperature and mass.
 *
 * <p>Sources: resistivity 1/58 Ω·mm²/m at 20 °C, IEC 60028 (from memory, universally quoted); temperature by
 * (234.5 + t), a winding-temperature page of the trade press, "Temperature rise" (read), which is 0.00393 per kelvin at
 * 20 °C; density 8.89 g/cm³, IEC 60028 (from memory). Wire under 0.5 mm may conduct 0.7 to 2 % worse (a resistance-meter
 * manual, appendix on fine annealed wire); that is not applied.
 */
public final class Copper {
    /** Resistivity at 20 °C, Ω·mm²/m. */
    public static final double RESISTIVITY_20 = 1.0 / 58.0;

    /** Degrees under 0 °C at which the straight line of resistance meets zero, °C. */
    public static final double INFERRED_ZERO = 234.5;

    /** Density, g/cm³. */
    public static final double DENSITY = 8.89;

    private Copper() {}

    /**
     * {@return resistance at one temperature over that at another, (234.5 + to)/(234.5 + from)}
     *
     * @param fromCelsius over −234.5
     * @param toCelsius over −234.5
     * @throws IllegalArgumentException when a temperature is out of range
     */
    public static double resistanceFactor(double fromCelsius, double toCelsius) {
        Require.temperature("temperature", fromCelsius);
        Require.temperature("temperature", toCelsius);
        return (INFERRED_ZERO + toCelsius) / (INFERRED_ZERO + fromCelsius);
    }

    /**
     * {@return resistivity at a temperature, Ω·mm²/m}
     *
     * @param celsius temperature, °C
     */
    public static double resistivity(double celsius) {
        return RESISTIVITY_20 * resistanceFactor(20, celsius);
    }

    /**
     * {@return resistance of a length of conductor, Ω}
     *
     * @param metres length
     * @param areaMm2 bare area
     * @param celsius its temperature
     */
    public static double resistance(double metres, double areaMm2, double celsius) {
        Require.notNegative("length", metres, "m");
        Require.positive("area", areaMm2, "mm²");
        return resistivity(celsius) * metres / areaMm2;
    }

    /**
     * {@return mass of a length of bare conductor, kg}
     *
     * @param metres length
     * @param areaMm2 bare cross-section, mm²
     */
    public static double mass(double metres, double areaMm2) {
        Require.notNegative("length", metres, "m");
        Require.positive("area", areaMm2, "mm²");
        return DENSITY * areaMm2 * metres / 1000;
    }

    /**
     * {@return temperature of a winding from its resistance, °C}
     *
     * @param cold resistance at {@code coldCelsius}
     * @param coldCelsius temperature of the whole winding when cold
     * @param hot resistance when hot
     */
    public static double temperature(double cold, double coldCelsius, double hot) {
        Require.positive("cold resistance", cold, "ohm");
        Require.positive("hot resistance", hot, "ohm");
        Require.temperature("cold temperature", coldCelsius);
        return hot / cold * (INFERRED_ZERO + coldCelsius) - INFERRED_ZERO;
    }
}
