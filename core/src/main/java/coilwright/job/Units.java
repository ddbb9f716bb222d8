package coilwright.job;

import static javax.measure.MetricPrefix.CENTI;
import static javax.measure.MetricPrefix.KILO;
import static javax.measure.MetricPrefix.MEGA;
import static javax.measure.MetricPrefix.MICRO;
import static javax.measure.MetricPrefix.MILLI;
import static tech.units.indriya.unit.Units.AMPERE;
import static tech.units.indriya.unit.Units.CELSIUS;
import static tech.units.indriya.unit.Units.GRAM;
import static tech.units.indriya.unit.Units.HERTZ;
import static tech.units.indriya.unit.Units.HOUR;
import static tech.units.indriya.unit.Units.KELVIN;
import static tech.units.indriya.unit.Units.KILOGRAM;
import static tech.units.indriya.unit.Units.METRE;
import static tech.units.indriya.unit.Units.MINUTE;
import static tech.units.indriya.unit.Units.OHM;
import static tech.units.indriya.unit.Units.SECOND;
import static tech.units.indriya.unit.Units.VOLT;
import static tech.units.indriya.unit.Units.WATT;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.Map;
import javax.measure.IncommensurableException;
import javax.measure.Unit;
import tech.units.indriya.function.MultiplyConverter;
import tech.units.indriya.unit.TransformedUnit;

/** Unit symbols and what they mean; a class of its own so that the unit library loads only where one is converted. */
final class Units {
    private static final Map<String, Unit<?>> BY_SYMBOL = new HashMap<>();

    static {
        put(OHM, "ohm", "Ω");
        put(MILLI(OHM), "mohm", "mΩ");
        put(MICRO(OHM), "µohm", "uohm", "µΩ", "uΩ");
        put(KILO(OHM), "kohm", "kΩ");
        put(MEGA(OHM), "Mohm", "MΩ");

        put(METRE, "m");
        put(MILLI(METRE), "mm");
        put(CENTI(METRE), "cm");
        put(KILO(METRE), "km");
        put(MICRO(METRE), "µm", "um");
        // The inch is 25.4 mm exactly, by international agreement of 1959.
        Unit<?> inch = METRE.multiply(254).divide(10_000);
        put(inch, "in");
        put(inch.divide(1000), "mil", "thou");
        put(inch.multiply(12), "ft");

        put(VOLT, "V");
        put(MILLI(VOLT), "mV");
        put(MICRO(VOLT), "µV", "uV");
        put(KILO(VOLT), "kV");
        put(AMPERE, "A");
        put(MILLI(AMPERE), "mA");
        put(KILO(AMPERE), "kA");
        put(WATT, "W");
        put(KILO(WATT), "kW");
        // One horsepower is 550 foot-pounds force a second: 745.69987158227022 W.
        put(WATT.multiply(745.6998715822702), "hp");
        put(HERTZ.divide(60), "rpm", "rev/min");

        put(CELSIUS, "°C", "degC");
        put(KELVIN, "K");
        put(new TransformedUnit<>(KELVIN, MultiplyConverter.ofRational(5, 9)).shift(459.67), "°F", "degF");

        // The avoirdupois pound is 0.45359237 kg exactly.
        Unit<?> pound = KILOGRAM.multiply(45_359_237).divide(100_000_000);
        put(KILOGRAM, "kg");
        put(GRAM, "g");
        put(pound, "lb");
        put(pound.divide(16), "oz");

        put(SECOND, "s");
        put(MINUTE, "min");
        put(HOUR, "h");
    }

    private Units() {}

    private static void put(Unit<?> unit, String... symbols) {
        for (String symbol : symbols) {
            BY_SYMBOL.put(symbol, unit);
        }
    }

    static boolean knows(String symbol) {
        return BY_SYMBOL.containsKey(symbol);
    }

    static double convert(BigDecimal value, String from, String to) {
        try {
            return BY_SYMBOL
                    .get(from)
                    .getConverterToAny(BY_SYMBOL.get(to))
                    .convert(value)
                    .doubleValue();
        } catch (IncommensurableException e) {
            throw new IllegalArgumentException(value + " " + from + " cannot be given in " + to, e);
        }
    }
}
