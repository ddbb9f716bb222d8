package coilwright.job;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;

/** Writes a section whose keys are the components of a record, such that {@link SectionReader} reads the same back. */
final class SectionWriter {
    private SectionWriter() {}

    /** The lines of a section, set in by some spaces under its name; nothing where it holds nothing. */
    static void write(Consumer<String> line, String name, Record section, int setIn) {
        List<String> lines = new ArrayList<>();
        keys(lines::add, section, setIn + 2);
        String head = " ".repeat(setIn) + name + ":";
        if (lines.isEmpty()) {
            line.accept(head + " {}");
        } else {
            line.accept(head);
            lines.forEach(line);
        }
    }

    private static void keys(Consumer<String> line, Record section, int setIn) {
        for (SectionKey key : SectionKey.of(section.getClass())) {
            Object held = held(section, key.component());
            if (key.holder() == SectionKey.Holder.LIST) {
                entries(line, key, (List<?>) held, setIn);
            } else {
                value(held).ifPresent(v -> {
                    if (key.isSection()) {
                        write(line, key.name(), (Record) v, setIn);
                    } else {
                        line.accept(" ".repeat(setIn) + key.name() + ": " + scalar(v));
                    }
                });
            }
        }
    }

    private static void entries(Consumer<String> line, SectionKey key, List<?> entries, int setIn) {
        if (entries.isEmpty()) {
            return;
        }
        line.accept(" ".repeat(setIn) + key.name() + ":");
        for (Object entry : entries) {
            String written = key.isSection() ? "{" + flow((Record) entry) + "}" : scalar(entry);
            line.accept(" ".repeat(setIn + 2) + "- " + written);
        }
    }

    /** An entry of a list on one line. */
    private static String flow(Record entry) {
        List<String> parts = new ArrayList<>();
        for (SectionKey key : SectionKey.of(entry.getClass())) {
            value(held(entry, key.component())).ifPresent(v -> parts.add(key.name() + ": " + inBraces(scalar(v))));
        }
        return String.join(", ", parts);
    }

    /** A comma would end the value there. */
    private static String inBraces(String scalar) {
        return scalar.startsWith("\"") || scalar.indexOf(',') < 0 ? scalar : '"' + scalar + '"';
    }

    private static Optional<?> value(Object held) {
        if (held instanceof Optional<?> o) {
            return o;
        }
        if (held instanceof OptionalInt i) {
            return i.isPresent() ? Optional.of(i.getAsInt()) : Optional.empty();
        }
        return Optional.of(held);
    }

    private static String scalar(Object value) {
        if (value instanceof Enum<?> word) {
            return Words.of(word);
        }
        if (value instanceof BigDecimal number) {
            return number.toPlainString();
        }
        return value instanceof String text ? JobWriter.text(text) : value.toString();
    }

    private static Object held(Record section, RecordComponent component) {
        try {
            return component.getAccessor().invoke(section);
        } catch (InvocationTargetException | IllegalAccessException e) {
            throw new IllegalStateException(e);
        }
    }
}
