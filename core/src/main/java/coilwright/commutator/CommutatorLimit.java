package coilwright.commutator;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * A published limit for commutators. Kept as data; which one holds for a job is the user's choice.
 *
 * @param id short name, unique
 * @param machine it was printed for
 * @param quantity what is limited
 * @param lowMm least value, where there is one
 * @param highMm greatest value, where there is one
 * @param printed as printed, with its own units and misprints
 * @param source title
 * @param edition year or edition; may be empty
 * @param trust how far it may be trusted
 * @param note conditions and misprints; may be empty
 */
public record CommutatorLimit(
        String id,
        String machine,
        Quantity quantity,
        OptionalDouble lowMm,
        OptionalDouble highMm,
        String printed,
        String source,
        String edition,
        Trust trust,
        String note) {

    /** What is limited. */
    public enum Quantity {
        /** Total indicator reading of a new commutator. */
        RUN_OUT_NEW("run-out when new"),
        /** Total indicator reading above which it is turned. */
        RUN_OUT_LIMIT("run-out"),
        /** Total indicator reading after turning. */
        RUN_OUT_AFTER_TURNING("run-out after turning"),
        /** Largest change within a run of six bars. */
        RUN_OUT_SIX_BARS("change within six bars"),
        /** Depth of the mica under the bars below which it is cut again. */
        UNDERCUT_LIMIT("least undercut"),
        /** Depth to cut the mica to. */
        UNDERCUT_DEPTH("undercut, cut to depth"),
        /** Width to cut the mica to. */
        UNDERCUT_WIDTH("undercut, cut to width"),
        /** What may be turned off the diameter in all. */
        DIAMETER_WEAR("wear of the diameter");

        private final String words;

        Quantity(String words) {
            this.words = words;
        }

        /** {@return what is limited, in words} */
        public String words() {
            return words;
        }

        /** {@return the word in files and scripts} */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }

        /** {@return whether it limits a gauge reading} */
        public boolean isRunOut() {
            return name().startsWith("RUN_OUT");
        }
    }

    /** How far a published value may be trusted. */
    public enum Trust {
        /** Read in the named source. */
        READ("read in the source"),
        /** Read in part. */
        READ_IN_PART("read in part"),
        /** From memory of the named source, not read again. */
        FROM_MEMORY("from memory");

        private final String word;

        Trust(String word) {
            this.word = word;
        }

        /** {@return the words printed beside the value} */
        public String word() {
            return word;
        }
    }

    private static final class Table {
        static final List<CommutatorLimit> ALL = load();

        private Table() {}

        private static List<CommutatorLimit> load() {
            try (InputStream in = CommutatorLimit.class.getResourceAsStream("limits.psv")) {
                if (in == null) {
                    throw new IllegalStateException("table limits.psv is missing from the library");
                }
                var reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
                List<CommutatorLimit> out = new ArrayList<>();
                boolean header = true;
                String line;
                while ((line = reader.readLine()) != null) {
                    if (line.isBlank() || line.startsWith("#")) {
                        continue;
                    }
                    if (!header) {
                        out.add(parse(line));
                    }
                    header = false;
                }
                return List.copyOf(out);
            } catch (IOException e) {
                throw new UncheckedIOException("table limits.psv", e);
            }
        }

        private static CommutatorLimit parse(String line) {
            String[] f = line.split("\\|", -1);
            if (f.length != 10) {
                throw new IllegalStateException(
                        "table limits.psv: " + f.length + " fields instead of 10 in \"" + line + "\"");
            }
            return new CommutatorLimit(
                    f[0],
                    f[1],
                    Quantity.valueOf(key(f[2])),
                    number(f[3]),
                    number(f[4]),
                    f[5],
                    f[6],
                    f[7],
                    Trust.valueOf(key(f[8])),
                    f[9]);
        }

        private static String key(String s) {
            return s.toUpperCase(Locale.ROOT).replace('-', '_');
        }

        private static OptionalDouble number(String s) {
            return s.equals("-") ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(s));
        }
    }

    /**
     * Checks that there is a limit.
     *
     * @param id short name, unique
     * @param machine it was printed for
     * @param quantity what is limited
     * @param lowMm least value, where there is one
     * @param highMm greatest value, where there is one
     * @param printed as printed, with its own units and misprints
     * @param source title
     * @param edition year or edition; may be empty
     * @param trust how far it may be trusted
     * @param note conditions and misprints; may be empty
     * @throws IllegalArgumentException when neither end is given
     */
    public CommutatorLimit {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(quantity, "quantity");
        Objects.requireNonNull(trust, "trust");
        if (lowMm.isEmpty() && highMm.isEmpty()) {
            throw new IllegalArgumentException("limit " + id + " has neither a least nor a greatest value: give one");
        }
    }

    /** {@return every limit shipped, in order} */
    public static List<CommutatorLimit> all() {
        return Table.ALL;
    }

    /**
     * {@return those on one quantity, in order}
     *
     * @param quantity what the limit is on
     */
    public static List<CommutatorLimit> on(Quantity quantity) {
        return Table.ALL.stream().filter(l -> l.quantity() == quantity).toList();
    }

    /**
     * {@return one limit}
     *
     * @param id its short name
     * @throws IllegalArgumentException when there is none of that name
     */
    public static CommutatorLimit of(String id) {
        return Table.ALL.stream()
                .filter(l -> l.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("there is no limit \"" + id + "\": choose one of "
                        + String.join(
                                ", ",
                                Table.ALL.stream().map(CommutatorLimit::id).toList())));
    }

    /**
     * {@return whether a value keeps to the limit, to a tenth of a micrometre}
     *
     * @param mm the value, mm
     */
    public boolean admits(double mm) {
        return (lowMm.isEmpty() || mm >= lowMm.getAsDouble() - 1e-4)
                && (highMm.isEmpty() || mm <= highMm.getAsDouble() + 1e-4);
    }

    /** {@return title, edition and trust as printed beside a value} */
    public String cite() {
        return source + (edition.isEmpty() ? "" : ", " + edition) + " (" + trust.word() + ")";
    }
}
