package coilwright.rewind;

import java.util.List;

/**
 * Temperature rise by resistance.
 *
 * @param hotCelsius mean temperature of the hot winding
 * @param riseK over the ambient at the end of the run
 */
public record TemperatureRise(double hotCelsius, double riseK) {
    /**
     * From two resistances of the same winding.
     *
     * @param coldOhms with the whole winding at {@code coldCelsius}
     * @param coldCelsius temperature then
     * @param hotOhms at the end of the run
     * @param ambientCelsius of the air at the end of the run
     * @return the rise of the winding over the air
     */
    public static TemperatureRise of(double coldOhms, double coldCelsius, double hotOhms, double ambientCelsius) {
        Require.temperature("ambient temperature", ambientCelsius);
        double hot = Copper.temperature(coldOhms, coldCelsius, hotOhms);
        return new TemperatureRise(hot, hot - ambientCelsius);
    }

    /** {@return the rise against the limit of every thermal class} */
    public List<AcceptanceVerdict> verdicts() {
        return Limit.on("temperature-rise").stream()
                .map(l -> AcceptanceVerdict.of(l, riseK))
                .toList();
    }
}
