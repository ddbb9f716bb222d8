package coilwright.rewind;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * A published limit or usual value. Kept as data; which one holds for a job is the user's choice.
 *
 * @param id short name, unique
 * @param quantity what is limited, such as {@code insulation-resistance}
 * @param applies to what
 * @param low least value, where there is one
 * @param high greatest value, where there is one
 * @param unit of both
 * @param source where it is printed
 * @param note conditions, misprints and the like; may be empty
 */
public record Limit(
        String id,
        String quantity,
        String applies,
        OptionalDouble low,
        OptionalDouble high,
        String unit,
        Source source,
        String note) {

    private static final class Table {
        static final List<Limit> ALL = Psv.load("limits.psv").rows().stream()
                .map(r -> new Limit(
                        r.text("id"),
                        r.text("quantity"),
                        r.text("applies"),
                        r.maybeNumber("low"),
                        r.maybeNumber("high"),
                        r.text("unit"),
                        r.source(),
                        r.text("note")))
                .toList();

        private Table() {}
    }

    /**
     * Checks that there is a limit.
     *
     * @param id short name, unique
     * @param quantity what is limited, such as {@code insulation-resistance}
     * @param applies to what
     * @param low least value, where there is one
     * @param high greatest value, where there is one
     * @param unit of both
     * @param source where it is printed
     * @param note conditions, misprints and the like; may be empty
     * @throws IllegalArgumentException when neither end is given
     */
    public Limit {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(source, "source");
        if (low.isEmpty() && high.isEmpty()) {
            throw new IllegalArgumentException("limit " + id + " has neither a least nor a greatest value: give one");
        }
    }

    /** {@return every limit shipped, in order} */
    public static List<Limit> all() {
        return Table.ALL;
    }

    /**
     * {@return those on one quantity, in order}
     *
     * @param quantity what the limits are on
     */
    public static List<Limit> on(String quantity) {
        return Table.ALL.stream().filter(l -> l.quantity().equals(quantity)).toList();
    }

    /**
     * {@return one limit}
     *
     * @param id its short name
     * @throws IllegalArgumentException when there is none of that name
     */
    public static Limit of(String id) {
        return Table.ALL.stream()
                .filter(l -> l.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("there is no limit \"" + id + "\": choose one of "
                        + String.join(", ", Table.ALL.stream().map(Limit::id).toList())));
    }

    /**
     * {@return the limits on one quantity that say something else for the same thing, by what they apply to; editions
     * differ}
     *
     * @param quantity what the limits are on
     */
    public static Map<String, List<Limit>> conflicts(String quantity) {
        Map<String, List<Limit>> byThing = new LinkedHashMap<>();
        on(quantity)
                .forEach(l -> byThing.computeIfAbsent(l.applies(), k -> new ArrayList<>())
                        .add(l));
        byThing.values()
                .removeIf(same -> same.stream()
                                .map(l -> l.low() + "/" + l.high())
                                .distinct()
                                .count()
                        < 2);
        return byThing;
    }

    /** The same limit with both ends raised. */
    Limit raisedBy(double more) {
        return new Limit(id, quantity, applies, raise(low, more), raise(high, more), unit, source, note);
    }

    private static OptionalDouble raise(OptionalDouble value, double more) {
        return value.isEmpty() ? value : OptionalDouble.of(value.getAsDouble() + more);
    }

    /**
     * {@return whether a value keeps to the limit, but for the rounding of what was worked out}
     *
     * @param value in the unit of the limit
     */
    public boolean admits(double value) {
        double rounding = 1e-9 * Math.abs(value);
        return (low.isEmpty() || value >= low.getAsDouble() - rounding)
                && (high.isEmpty() || value <= high.getAsDouble() + rounding);
    }

    /** {@return the limit in words, without its source} */
    public String words() {
        if (low.isPresent() && high.isPresent()) {
            return Format.number(low.getAsDouble()) + " to " + shown(high.getAsDouble());
        }
        return low.isPresent() ? "not under " + shown(low.getAsDouble()) : "not over " + shown(high.getAsDouble());
    }

    /**
     * {@return a value with the unit of the limit, where it has one}
     *
     * @param value measured or allowed
     */
    public String shown(double value) {
        String number = Format.number(value);
        return unit.isEmpty() ? number : number + " " + (unit.equals("percent") ? "%" : unit);
    }
}
