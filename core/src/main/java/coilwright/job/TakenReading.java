package coilwright.job;

import coilwright.bench.BenchTest;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What a meter showed between two bars, as it was written down.
 *
 * @param from bar under the first probe, {@link BenchTest#SHAFT} for the shaft
 * @param to bar under the second probe, {@link BenchTest#SHAFT} for the shaft
 * @param shown what the meter showed
 */
public record TakenReading(int from, int to, Shown shown) {
    /** The word for the shaft in place of a bar's number. */
    static final String SHAFT = "shaft";

    /** How a reading off the meter's scale is written. */
    static final String OFF_SCALE = "OL";

    private static final Set<String> OFF_SCALE_WORDS =
            Set.of("ol", "o.l", "o.l.", "0l", "open", "inf", "infinity", "infinite", "∞", "overload");
    private static final Pattern FORM =
            Pattern.compile("([+-]?\\d{1,15}(?:\\.\\d{1,60})?(?:[eE][+-]?\\d{1,2})?)\\s*(\\S.*)?");
    private static final int MOST_DECIMALS = 60;
    private static final int MOST_DIGITS = 15;

    /** What a meter can show. */
    public sealed interface Shown {}

    /** Nothing was read here. */
    public record Gap() implements Shown {}

    /** Off the scale: an open circuit on an ohmmeter. */
    public record OffScale() implements Shown {}

    /**
     * A number.
     *
     * @param number as written, with its decimals
     * @param unit as written; empty where it was left to the heading
     */
    public record Value(BigDecimal number, Optional<String> unit) implements Shown {
        /**
         * Brings the number into plain digits.
         *
         * @param number as written, with its decimals
         * @param unit as written; empty where it was left to the heading
         * @throws IllegalArgumentException when the unit is not known or the number has more digits than a file holds
         */
        public Value {
            if (number.scale() > MOST_DECIMALS || number.precision() - number.scale() > MOST_DIGITS) {
                throw new IllegalArgumentException("is " + number + ", far out of range");
            }
            number = number.scale() < 0 ? number.setScale(0) : number;
            unit.ifPresent(u -> new Quantity(BigDecimal.ONE, u));
        }

        /** {@return the kind of its unit; empty where it has none} */
        public Optional<Quantity.Kind> kind() {
            return unit.map(u -> new Quantity(number, u).kind());
        }
    }

    /**
     * Checks the bars.
     *
     * @param from bar under the first probe, {@link BenchTest#SHAFT} for the shaft
     * @param to bar under the second probe, {@link BenchTest#SHAFT} for the shaft
     * @param shown what the meter showed
     * @throws IllegalArgumentException when they are the same, or not a bar's number or the shaft
     */
    public TakenReading {
        if (from < 0 || to < 0 || from == to) {
            throw new IllegalArgumentException("a reading between " + name(from) + " and " + name(to)
                    + ": name two different bars, or a bar and the shaft");
        }
    }

    /**
     * {@return a reading with no unit of its own}
     *
     * @param from bar under the first probe
     * @param to bar under the second probe
     * @param number what the meter showed, in plain digits
     */
    public static TakenReading of(int from, int to, String number) {
        return new TakenReading(from, to, new Value(new BigDecimal(number), Optional.empty()));
    }

    /** {@return where the probes went} */
    public BenchTest.Pair pair() {
        return new BenchTest.Pair(from, to);
    }

    /**
     * {@return a bar's number, or the word for the shaft}
     *
     * @param bar its number, or {@link coilwright.bench.BenchTest#SHAFT}
     */
    public static String name(int bar) {
        return bar == BenchTest.SHAFT ? SHAFT : Integer.toString(bar);
    }

    /**
     * {@return the number in a unit, infinite where the meter was off its scale; empty where nothing was read}
     *
     * @param unit wanted
     * @param unlessGiven unit of a number that has none of its own
     * @throws IllegalArgumentException when the reading is of another kind
     */
    public OptionalDouble in(String unit, String unlessGiven) {
        if (shown instanceof Value v) {
            return OptionalDouble.of(new Quantity(v.number(), v.unit().orElse(unlessGiven)).in(unit));
        }
        return shown instanceof OffScale ? OptionalDouble.of(Double.POSITIVE_INFINITY) : OptionalDouble.empty();
    }

    /** What was shown as files hold it: the number with its unit, OL off scale, nothing for a gap. */
    String written() {
        if (shown instanceof Value v) {
            return v.number().toPlainString() + v.unit().map(u -> " " + u).orElse("");
        }
        return shown instanceof OffScale ? OFF_SCALE : "";
    }

    /**
     * Reads what was shown.
     *
     * @param kinds of unit taken
     * @throws IllegalArgumentException saying what is wrong with it
     */
    static Shown parse(String text, List<Quantity.Kind> kinds) {
        String t = text.strip().replace('\u2126', 'Ω').replace('\u03BC', 'µ').replace('\u2212', '-');
        if (t.isEmpty()) {
            return new Gap();
        }
        if (OFF_SCALE_WORDS.contains(t.toLowerCase(Locale.ROOT))) {
            return new OffScale();
        }
        Matcher m = FORM.matcher(t);
        if (t.matches("[+-]?[0-9.]*,[0-9.,]*( .*)?")) {
            throw new IllegalArgumentException("is \"" + Field.shown(text)
                    + "\", with a comma: write a point before decimals, and nothing between thousands");
        }
        if (!m.matches()) {
            throw new IllegalArgumentException("is \"" + Field.shown(text) + "\", but must be a number, "
                    + (kinds.isEmpty()
                            ? ""
                            : "with or without a unit such as "
                                    + kinds.get(0).units().get(0) + ", ")
                    + OFF_SCALE + " for off the scale, or blank for a gap");
        }
        return new Value(
                new BigDecimal(m.group(1)), Optional.ofNullable(m.group(2)).map(u -> unit(text, u, kinds)));
    }

    private static String unit(String text, String written, List<Quantity.Kind> kinds) {
        String unit = written.equals("ohms") ? "ohm" : written;
        List<String> taken = new ArrayList<>();
        kinds.forEach(k -> taken.addAll(k.units()));
        if (taken.contains(unit)) {
            return unit;
        }
        for (Quantity.Kind kind : Quantity.Kind.values()) {
            if (kind.units().contains(unit)) {
                throw new IllegalArgumentException("is \"" + Field.shown(text) + "\", " + kind.words()
                        + ", but must be "
                        + (kinds.isEmpty()
                                ? "a number without a unit"
                                : kinds.stream().map(Quantity.Kind::words).collect(Collectors.joining(" or "))));
            }
        }
        throw new IllegalArgumentException("is \"" + Field.shown(text) + "\", but \"" + Field.shown(unit)
                + "\" is no unit known here: "
                + NearWord.question(
                        unit,
                        taken,
                        taken.isEmpty() ? "write the number alone" : "readings are in " + Quantity.Kind.plain(taken)));
    }
}
