package coilwright.rewind;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Tables shipped as text: one header line, fields parted by a bar, {@code -} for nothing, {@code #} for comments. */
final class Psv {
    private final String name;
    private final List<String> header;
    private final List<String[]> rows;

    private Psv(String name, List<String> header, List<String[]> rows) {
        this.name = name;
        this.header = header;
        this.rows = rows;
    }

    static Psv load(String name) {
        try (InputStream in = Psv.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("table " + name + " is missing from the library");
            }
            List<String> header = List.of();
            List<String[]> rows = new ArrayList<>();
            for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n")) {
                if (line.isBlank() || line.startsWith("#")) {
                    continue;
                }
                String[] fields = fields(line);
                if (header.isEmpty()) {
                    header = List.of(fields);
                } else if (fields.length != header.size()) {
                    throw new IllegalStateException("table " + name + ": " + fields.length + " fields instead of "
                            + header.size() + " in \"" + line + "\"");
                } else {
                    rows.add(fields);
                }
            }
            return new Psv(name, header, rows);
        } catch (IOException e) {
            throw new UncheckedIOException("table " + name, e);
        }
    }

    private static String[] fields(String line) {
        String[] fields = line.split("\\|", -1);
        for (int i = 0; i < fields.length; i++) {
            fields[i] = fields[i].strip();
        }
        return fields;
    }

    List<Row> rows() {
        List<Row> all = new ArrayList<>(rows.size());
        for (String[] fields : rows) {
            all.add(new Row(fields));
        }
        return all;
    }

    final class Row {
        private final String[] fields;

        private Row(String[] fields) {
            this.fields = fields;
        }

        String text(String column) {
            return maybe(column).orElse("");
        }

        Optional<String> maybe(String column) {
            int i = header.indexOf(column);
            if (i < 0) {
                throw new IllegalStateException("table " + name + " has no column " + column);
            }
            return fields[i].isEmpty() || fields[i].equals("-") ? Optional.empty() : Optional.of(fields[i]);
        }

        double number(String column) {
            return Double.parseDouble(text(column));
        }

        OptionalDouble maybeNumber(String column) {
            Optional<String> s = maybe(column);
            return s.isPresent() ? OptionalDouble.of(Double.parseDouble(s.get())) : OptionalDouble.empty();
        }

        Source source() {
            return new Source(text("source"), text("edition"), Trust.of(text("trust")));
        }
    }
}
