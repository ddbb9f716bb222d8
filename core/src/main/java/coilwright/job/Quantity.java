package coilwright.job;

import coilwright.rewind.Quantities;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A number with its unit, kept as it was written: {@code 0.030 in} stays {@code 0.030 in}.
 *
 * @param value the number
 * @param unit one of the unit symbols of a {@link Kind}
 */
public record Quantity(BigDecimal value, String unit) {
    private static final Pattern FORM = Pattern.compile("([+-]?\\d{1,12}(?:\\.\\d{1,12})?)\\s*(\\S.*)?");

    /** Kinds of quantity, with the unit symbols that each takes; the first is the one that messages propose. */
    public enum Kind {
        /** Electrical resistance. */
        RESISTANCE("a resistance", "ohm", "mohm", "µohm", "uohm", "kohm", "Mohm", "Ω", "mΩ", "µΩ", "uΩ", "kΩ", "MΩ"),
        /** Length. */
        LENGTH("a length", "mm", "in", "cm", "m", "km", "µm", "um", "mil", "thou", "ft"),
        /** Electric potential. */
        VOLTAGE("a voltage", "V", "mV", "µV", "uV", "kV"),
        /** Electric current. */
        CURRENT("a current", "A", "mA", "kA"),
        /** Power. */
        POWER("a power", "W", "kW", "hp"),
        /** Speed of turning. */
        SPEED("a speed of turning", "rpm", "r/min", "rev/min"),
        /** Temperature. */
        TEMPERATURE("a temperature", "°C", "degC", "°F", "degF", "K"),
        /** Mass. */
        MASS("a mass", "kg", "g", "lb", "oz");

        private static final Map<String, Kind> BY_UNIT = new LinkedHashMap<>();

        static {
            for (Kind kind : values()) {
                for (String unit : kind.units) {
                    BY_UNIT.put(unit, kind);
                }
            }
        }

        private final String words;

        @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
        private final List<String> units;

        Kind(String words, String... units) {
            this.words = words;
            this.units = List.of(units);
        }

        /** {@return the kind in words, with its article} */
        public String words() {
            return words;
        }

        /** {@return the unit symbols taken} */
        public List<String> units() {
            return units;
        }

        /** Those of the symbols that any keyboard has, for messages. */
        static String plain(List<String> units) {
            return units.stream().filter(u -> u.chars().allMatch(c -> c < 128)).collect(Collectors.joining(", "));
        }
    }

    /**
     * Checks the unit.
     *
     * @param value the number
     * @param unit one of the unit symbols of a {@link Kind}
     * @throws IllegalArgumentException when the unit is not known
     */
    public Quantity {
        Objects.requireNonNull(value);
        if (!Kind.BY_UNIT.containsKey(unit)) {
            throw new IllegalArgumentException("\"" + Visible.cut(unit) + "\" is no unit known here");
        }
    }

    /**
     * Reads a quantity such as {@code 1.15 mm}; the space may be left out.
     *
     * @param text a number and its unit
     * @param kind what is measured
     * @return the quantity, in the unit it was given in
     * @throws IllegalArgumentException when it is not a number in plain digits followed by a unit of that kind
     */
    public static Quantity parse(String text, Kind kind) {
        String shown = Visible.cut(text.strip());
        String example = "such as \"1 " + kind.units.get(0) + "\"";
        Matcher m = FORM.matcher(text.strip().replace('\u2126', 'Ω').replace('\u03BC', 'µ'));
        if (text.indexOf(',') >= 0 && text.matches(".*\\d,\\d.*")) {
            throw new IllegalArgumentException(
                    "is \"" + shown + "\", with a comma: write a point before decimals, and nothing between thousands");
        }
        if (!m.matches()) {
            throw new IllegalArgumentException("is \"" + shown + "\", but must be " + kind.words + " " + example);
        }
        if (m.group(2) == null) {
            throw new IllegalArgumentException("is " + shown + " without a unit: write \"" + shown + " "
                    + kind.units.get(0) + "\" if that is what it is");
        }
        String unit = m.group(2);
        String singular = unit.equals("ohms") ? "ohm" : unit;
        Optional<Kind> found = Optional.ofNullable(Kind.BY_UNIT.get(singular));
        if (found.isEmpty()) {
            throw new IllegalArgumentException("is \"" + shown + "\", but \"" + Visible.cut(unit)
                    + "\" is no unit known here: "
                    + NearWord.question(unit, kind.units, kind.words + " is written in " + Kind.plain(kind.units)));
        }
        if (found.get() != kind) {
            throw new IllegalArgumentException(
                    "is \"" + shown + "\", " + found.get().words + ", but must be " + kind.words + " " + example);
        }
        return new Quantity(new BigDecimal(m.group(1)), singular);
    }

    /** {@return the kind that its unit belongs to} */
    public Kind kind() {
        return Kind.BY_UNIT.get(unit);
    }

    /**
     * {@return the number in another unit of the same kind}
     *
     * @param other symbol of the unit
     * @throws IllegalArgumentException when the other unit is not known or of another kind
     */
    public double in(String other) {
        if (Kind.BY_UNIT.get(other) != kind()) {
            throw new IllegalArgumentException(this + " cannot be given in \"" + other + "\"");
        }
        double number = value.doubleValue();
        // Not a field: the unit library is to load only where something is converted.
        return unit.equals(other)
                ? number
                : Quantities.convert(Quantities.Kind.valueOf(kind().name()), number, unit, other);
    }

    /**
     * {@return the number of a quantity in a unit; empty where there is no quantity}
     *
     * @param unit symbol of the unit
     * @param quantity the quantity, where there is one
     * @throws IllegalArgumentException when the unit is not known or of another kind
     */
    public static OptionalDouble in(String unit, Optional<Quantity> quantity) {
        return quantity.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(quantity.get().in(unit));
    }

    /** As it is written in a file: number, space, unit. */
    @Override
    public String toString() {
        return value.toPlainString() + " " + unit;
    }
}
