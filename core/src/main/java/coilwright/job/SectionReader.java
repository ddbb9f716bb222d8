package coilwright.job;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.function.IntConsumer;

/**
 * Reads a section whose keys are the components of a record. The record's own constructor checks the values against one
 * another; its complaint is noted at the section.
 */
final class SectionReader {
    /** Most entries of a list. */
    static final int MOST_ENTRIES = 20_000;

    /** Longest line of text. */
    static final int MOST_CHARACTERS = 1000;

    /** Largest number of degrees. */
    static final int MOST_DEGREES = 360;

    private SectionReader() {}

    /** The section, or nothing where anything in it is wrong, which is then noted. */
    static <R extends Record> Optional<R> read(Field field, Class<R> type) {
        List<SectionKey> keys = SectionKey.of(type);
        List<String> names = new ArrayList<>(keys.size());
        for (SectionKey key : keys) {
            names.add(key.name());
        }
        Optional<Map<String, Field>> section = field.section(names);
        if (section.isEmpty()) {
            return Optional.empty();
        }
        Map<String, Field> fields = section.get();
        List<Object> values = new ArrayList<>();
        boolean complete = true;
        for (SectionKey key : keys) {
            Optional<Field> given = key.holder() == SectionKey.Holder.ONE
                    ? field.required(fields, key.name(), ": " + wanted(key))
                    : Optional.ofNullable(fields.get(key.name()));
            Optional<?> value = given.isEmpty() ? Optional.empty() : held(given.get(), key);
            complete &= value.isPresent() || (given.isEmpty() && key.holder() != SectionKey.Holder.ONE);
            values.add(value.isPresent() ? value.get() : nothing(key));
        }
        return complete ? make(field, type, values) : Optional.empty();
    }

    /** A list of lines of text. */
    static List<String> lines(Field field) {
        List<String> lines = new ArrayList<>();
        for (Field entry : field.list(MOST_ENTRIES).orElse(List.of())) {
            Optional<String> line = entry.text(new Line());
            if (line.isPresent()) {
                lines.add(line.get());
            }
        }
        return lines;
    }

    private static String wanted(SectionKey key) {
        if (key.type().isEnum()) {
            return "it is one of " + String.join(", ", Words.all(key.type()).keySet());
        }
        return key.type() == Quantity.class
                ? "write it with its unit, such as 1 "
                        + key.measure().value().units().get(0)
                : "write it down";
    }

    private static Object nothing(SectionKey key) {
        if (key.holder() == SectionKey.Holder.LIST) {
            return List.of();
        }
        return key.type() == int.class ? OptionalInt.empty() : Optional.empty();
    }

    /** The value as the record's constructor takes it. */
    private static Optional<?> held(Field field, SectionKey key) {
        if (key.holder() == SectionKey.Holder.LIST) {
            Optional<List<Field>> entries = field.list(MOST_ENTRIES);
            if (entries.isEmpty()) {
                return Optional.empty();
            }
            List<Object> values = new ArrayList<>();
            for (Field entry : entries.get()) {
                Optional<?> value = value(entry, key);
                if (value.isPresent()) {
                    values.add(value.get());
                }
            }
            return values.size() == entries.get().size() ? Optional.of(values) : Optional.empty();
        }
        Optional<?> value = value(field, key);
        if (key.holder() == SectionKey.Holder.ONE || value.isEmpty()) {
            return value;
        }
        return Optional.of(key.type() == int.class ? OptionalInt.of((Integer) value.get()) : value);
    }

    private static Optional<?> value(Field field, SectionKey key) {
        Class<?> type = key.type();
        if (type == Quantity.class) {
            return field.quantity(key.measure().value(), new Least(key.measure()));
        }
        if (type == int.class) {
            OptionalInt number = field.wholeNumber(new Range(key.count()));
            return number.isPresent() ? Optional.of(number.getAsInt()) : Optional.empty();
        }
        if (type.isEnum()) {
            return field.oneOf(Words.all(type));
        }
        if (type == String.class) {
            return field.text(new Line());
        }
        if (type == LocalDate.class) {
            return date(field);
        }
        if (type == BigDecimal.class) {
            return field.decimal("degrees", d -> Job.checkDegrees(d, MOST_DEGREES));
        }
        return read(field, type.asSubclass(Record.class));
    }

    /** A date as year, month and day. */
    static Optional<LocalDate> date(Field field) {
        String written = field.written().orElse("");
        try {
            return Optional.of(LocalDate.parse(written));
        } catch (DateTimeException e) {
            field.wrong("is \"" + Field.shown(written) + "\", but must be a date such as 2021-07-12");
            return Optional.empty();
        }
    }

    // Classes and loops, not lambdas, in all that every job file goes through: each lambda costs start-up time.

    private record Least(Measure measure) implements Consumer<Quantity> {
        @Override
        public void accept(Quantity quantity) {
            int sign = quantity.value().signum();
            if (measure.least() == Measure.Least.OVER_ZERO && sign <= 0) {
                throw new IllegalArgumentException(
                        "is " + quantity + ", but must be over 0: leave it out where it is not known");
            }
            if (measure.least() == Measure.Least.ZERO && sign < 0) {
                throw new IllegalArgumentException("is " + quantity + ", but must be 0 or more");
            }
        }
    }

    private record Range(Count count) implements IntConsumer {
        @Override
        public void accept(int number) {
            if (number < count.from() || number > count.to()) {
                throw new IllegalArgumentException(
                        "is " + number + ", but must be from " + count.from() + " to " + count.to());
            }
        }
    }

    private record Line() implements Consumer<String> {
        @Override
        public void accept(String text) {
            Job.checkLine(text, "is blank: write something or leave the key out", MOST_CHARACTERS);
        }
    }

    private static <R extends Record> Optional<R> make(Field field, Class<R> type, List<Object> values) {
        RecordComponent[] components = type.getRecordComponents();
        Class<?>[] types = new Class<?>[components.length];
        for (int i = 0; i < types.length; i++) {
            types[i] = components[i].getType();
        }
        try {
            return Optional.of(type.getDeclaredConstructor(types).newInstance(values.toArray()));
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof IllegalArgumentException wrong) {
                field.wrong(wrong.getMessage());
                return Optional.empty();
            }
            throw new IllegalStateException(e.getCause());
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }
}
