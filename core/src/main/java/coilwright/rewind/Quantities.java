package coilwright.rewind;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.IncommensurableException;
import javax.measure.MetricPrefix;
import javax.measure.Unit;
import javax.measure.UnitConverter;
import tech.units.indriya.unit.Units;

/** Reads and writes values with their units; inside the library every kind has one unit. */
public final class Quantities {
    private static final Pattern TEXT =
            Pattern.compile("\\s*([-+]?(?:\\d+\\s+)?\\d+/\\d+|[-+]?\\d*\\.?\\d+(?:[eE][-+]?\\d+)?)\\s*(\\S.*?)?\\s*");

    /** Finding the way from unit to unit takes the library far longer than going it. */
    private static final Map<List<Object>, UnitConverter> CONVERTERS = new ConcurrentHashMap<>();

    /** Kinds of value, each with its unit inside the library and the units understood. */
    public enum Kind {
        /** Millimetres inside. */
        LENGTH("mm", "a length", "1.15 mm"),
        /** Square millimetres inside. */
        AREA("mm2", "an area", "1.04 mm2"),
        /** Ohms inside. */
        RESISTANCE("ohm", "a resistance", "0.08 ohm"),
        /** Volts inside. */
        VOLTAGE("V", "a voltage", "12 V"),
        /** Amperes inside. */
        CURRENT("A", "a current", "11 A"),
        /** Watts inside. */
        POWER("W", "a power", "250 W"),
        /** Revolutions a minute inside. */
        SPEED("rpm", "a speed", "1450 rpm"),
        /** Kilograms inside. */
        MASS("kg", "a mass", "0.35 kg"),
        /** Degrees Celsius inside. */
        TEMPERATURE("degC", "a temperature", "20 degC"),
        /** Webers inside. */
        FLUX("Wb", "a flux", "2.1 mWb");

        private final String base;
        private final String noun;
        private final String example;

        Kind(String base, String noun, String example) {
            this.base = base;
            this.noun = noun;
            this.example = example;
        }

        /** {@return the unit inside the library} */
        public String unit() {
            return base;
        }
    }

    private static final Map<Kind, Map<String, Unit<?>>> UNITS = new EnumMap<>(Kind.class);

    static {
        Unit<?> metre = Units.METRE;
        Unit<?> inch = metre.multiply(254).divide(10_000);
        Unit<?> mm = Units.METRE.prefix(MetricPrefix.MILLI);
        Unit<?> mil = inch.divide(1000);
        put(Kind.LENGTH, mm, "mm");
        put(Kind.LENGTH, Units.METRE.prefix(MetricPrefix.CENTI), "cm");
        put(Kind.LENGTH, metre, "m");
        put(Kind.LENGTH, Units.METRE.prefix(MetricPrefix.KILO), "km");
        put(Kind.LENGTH, Units.METRE.prefix(MetricPrefix.MICRO), "um", "µm", "micron");
        put(Kind.LENGTH, inch, "in", "inch", "\"");
        put(Kind.LENGTH, mil, "mil", "thou");
        put(Kind.LENGTH, inch.multiply(12), "ft");
        put(Kind.AREA, mm.multiply(mm), "mm2", "mm²");
        put(Kind.AREA, inch.multiply(inch), "in2", "in²");
        // A circular mil is the area of a circle of one mil.
        put(Kind.AREA, mil.multiply(mil).multiply(Math.PI / 4), "cmil");
        put(Kind.RESISTANCE, Units.OHM, "ohm", "Ω");
        put(Kind.RESISTANCE, Units.OHM.prefix(MetricPrefix.MILLI), "mohm", "mΩ");
        put(Kind.RESISTANCE, Units.OHM.prefix(MetricPrefix.MICRO), "uohm", "µohm", "uΩ", "µΩ");
        put(Kind.RESISTANCE, Units.OHM.prefix(MetricPrefix.KILO), "kohm", "kΩ");
        put(Kind.RESISTANCE, Units.OHM.prefix(MetricPrefix.MEGA), "Mohm", "MΩ");
        put(Kind.VOLTAGE, Units.VOLT, "V");
        put(Kind.VOLTAGE, Units.VOLT.prefix(MetricPrefix.MILLI), "mV");
        put(Kind.VOLTAGE, Units.VOLT.prefix(MetricPrefix.MICRO), "uV", "µV");
        put(Kind.VOLTAGE, Units.VOLT.prefix(MetricPrefix.KILO), "kV");
        put(Kind.CURRENT, Units.AMPERE, "A");
        put(Kind.CURRENT, Units.AMPERE.prefix(MetricPrefix.MILLI), "mA");
        put(Kind.CURRENT, Units.AMPERE.prefix(MetricPrefix.KILO), "kA");
        put(Kind.POWER, Units.WATT, "W");
        put(Kind.POWER, Units.WATT.prefix(MetricPrefix.KILO), "kW");
        put(Kind.POWER, Units.WATT.multiply(745.699_871_582_270_2), "hp");
        Unit<?> rpm = Units.HERTZ.divide(60);
        put(Kind.SPEED, rpm, "rpm", "r/min", "rev/min");
        put(Kind.MASS, Units.KILOGRAM, "kg");
        put(Kind.MASS, Units.KILOGRAM.divide(1000), "g");
        put(Kind.MASS, Units.KILOGRAM.multiply(0.453_592_37), "lb");
        put(Kind.MASS, Units.KILOGRAM.multiply(0.453_592_37 / 16), "oz");
        put(Kind.TEMPERATURE, Units.CELSIUS, "degC", "°C", "C");
        put(Kind.TEMPERATURE, Units.KELVIN.multiply(5).divide(9).shift(459.67), "degF", "°F", "F");
        put(Kind.TEMPERATURE, Units.KELVIN, "K");
        put(Kind.FLUX, Units.WEBER, "Wb");
        put(Kind.FLUX, Units.WEBER.prefix(MetricPrefix.MILLI), "mWb");
    }

    private Quantities() {}

    private static void put(Kind kind, Unit<?> unit, String... names) {
        for (String name : names) {
            UNITS.computeIfAbsent(kind, k -> new LinkedHashMap<>()).put(name, unit);
        }
    }

    /**
     * Reads a value such as {@code 1.15 mm}, {@code 0.030 in} or {@code 1/32 in} into the unit of its kind.
     *
     * @param kind what is measured
     * @param text a number, or a fraction, and its unit
     * @return the value in the kind's own unit
     * @throws IllegalArgumentException when there is no number, no unit, or the unit is of another kind
     */
    public static double parse(Kind kind, String text) {
        Matcher m = TEXT.matcher(text);
        if (!m.matches()) {
            throw new IllegalArgumentException(
                    "\"" + text + "\" is not " + kind.noun + ": write a number and a unit, such as " + kind.example);
        }
        String name = Optional.ofNullable(m.group(2)).orElse("");
        if (name.isEmpty()) {
            throw new IllegalArgumentException(
                    "\"" + text + "\" has no unit, and " + kind.noun + " needs one: write it as in " + kind.example);
        }
        double number = number(m.group(1));
        if (Double.isInfinite(number) || Double.isNaN(number)) {
            throw new IllegalArgumentException(
                    "\"" + text + "\" is out of range: write " + kind.noun + " as in " + kind.example);
        }
        return convert(kind, number, name, kind.base);
    }

    private static double number(String text) {
        int slash = text.indexOf('/');
        if (slash < 0) {
            return Double.parseDouble(text);
        }
        boolean minus = text.startsWith("-");
        String[] whole = text.substring(minus || text.startsWith("+") ? 1 : 0, slash)
                .strip()
                .split("\\s+");
        double value = Double.parseDouble(whole[whole.length - 1]) / Double.parseDouble(text.substring(slash + 1));
        if (whole.length > 1) {
            value += Double.parseDouble(whole[0]);
        }
        return minus ? -value : value;
    }

    /**
     * Brings a number from one unit to another of the same kind.
     *
     * @param kind what is measured
     * @param value the number
     * @param from symbol of its unit
     * @param to symbol of the unit wanted
     * @return the number in that unit
     * @throws IllegalArgumentException when a unit is not known for the kind
     */
    public static double convert(Kind kind, double value, String from, String to) {
        return CONVERTERS
                .computeIfAbsent(List.of(kind, from, to), k -> converter(kind, from, to))
                .convert(value);
    }

    private static UnitConverter converter(Kind kind, String from, String to) {
        try {
            return unit(kind, from).getConverterToAny(unit(kind, to));
        } catch (IncommensurableException e) {
            throw new IllegalStateException("units " + from + " and " + to + " of one kind do not agree", e);
        }
    }

    /**
     * Writes a value of the kind's own unit in another unit, with a fixed number of decimals.
     *
     * @param kind what is measured
     * @param value in the kind's own unit
     * @param unit symbol of the unit wanted
     * @param decimals 0 or more
     * @return number and unit
     */
    public static String format(Kind kind, double value, String unit, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f %s", convert(kind, value, kind.base, unit), unit);
    }

    private static Unit<?> unit(Kind kind, String name) {
        Unit<?> unit = UNITS.get(kind).get(name);
        if (unit == null) {
            throw new IllegalArgumentException("\"" + name + "\" is no unit of " + kind.noun + ": use one of "
                    + String.join(", ", UNITS.get(kind).keySet()));
        }
        return unit;
    }
}
