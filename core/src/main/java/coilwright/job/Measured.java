package coilwright.job;

import coilwright.rewind.InsulationTest;
import java.util.Optional;

/**
 * What was measured on the whole winding.
 *
 * @param temperature of the winding when it was measured
 * @param coilResistance mean from bar to neighbouring bar's coil, of one coil
 * @param brushToBrush resistance of the armature between the brushes' bars
 * @param insulationOneMinute insulation resistance to the shaft after one minute
 * @param insulationTenMinutes the same after ten minutes
 * @param testVolts direct voltage that the insulation resistance was measured with
 */
public record Measured(
        @Measure(value = Quantity.Kind.TEMPERATURE, least = Measure.Least.NONE)
        Optional<Quantity> temperature,

        @Measure(Quantity.Kind.RESISTANCE) Optional<Quantity> coilResistance,
        @Measure(Quantity.Kind.RESISTANCE) Optional<Quantity> brushToBrush,

        @Measure(value = Quantity.Kind.RESISTANCE, least = Measure.Least.ZERO)
        Optional<Quantity> insulationOneMinute,

        @Measure(value = Quantity.Kind.RESISTANCE, least = Measure.Least.ZERO)
        Optional<Quantity> insulationTenMinutes,

        @Measure(Quantity.Kind.VOLTAGE) Optional<Quantity> testVolts) {
    /**
     * Checks the values together.
     *
     * @param temperature of the winding when it was measured
     * @param coilResistance mean from bar to neighbouring bar's coil, of one coil
     * @param brushToBrush resistance of the armature between the brushes' bars
     * @param insulationOneMinute insulation resistance to the shaft after one minute
     * @param insulationTenMinutes the same after ten minutes
     * @param testVolts direct voltage that the insulation resistance was measured with
     * @throws IllegalArgumentException when the temperature is out of range, or a ten-minute value has no one-minute
     *     value beside it
     */
    public Measured {
        temperature.ifPresent(t -> {
            double celsius = t.in("°C");
            if (!(celsius > -100 && celsius < 500)) {
                throw new IllegalArgumentException(
                        "temperature is " + t + ", but must be over -100 °C and under 500 °C: read it again");
            }
        });
        if (insulationTenMinutes.isPresent() && insulationOneMinute.isEmpty()) {
            throw new IllegalArgumentException(
                    "gives insulationTenMinutes without insulationOneMinute: the index is the one over the other");
        }
    }

    /** {@return temperature in °C, {@link Job#COLD} where it is not given} */
    public double celsius() {
        return temperature.map(t -> t.in("°C")).orElse(Job.COLD);
    }

    /** {@return the test of the insulation, where it was done} */
    public Optional<InsulationTest> insulationTest() {
        return insulationOneMinute.map(
                one -> new InsulationTest(one.in("Mohm"), Quantity.in("Mohm", insulationTenMinutes), celsius()));
    }
}
