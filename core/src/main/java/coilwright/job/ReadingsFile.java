package coilwright.job;

import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import coilwright.file.SafeFiles;
import coilwright.winding.Armature;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;

/**
 * Readings as CSV, one a line: {@code from,to,reading}. A probe on the shaft is {@code shaft}. A reading is a number,
 * with its unit or without; {@code OL} where the meter was off its scale; blank where nothing was read. Pairs may
 * repeat and stand either way round. Columns may stand in any order, and lines that are blank or begin with {@code #}
 * are passed over. Cells are parted by commas, or by semicolons or tabs where the heading is; decimals may follow a
 * point, or a comma (in quotation marks where commas part the cells), but one way throughout.
 *
 * @param readings in the order of the file
 */
public record ReadingsFile(List<TakenReading> readings) {
    /** Longest file taken, bytes. */
    public static final int MAX_BYTES = 4 * 1024 * 1024;

    static final List<String> COLUMNS = ReadingsSection.READING_KEYS;
    private static final List<Quantity.Kind> KINDS =
            List.of(Quantity.Kind.VOLTAGE, Quantity.Kind.RESISTANCE, Quantity.Kind.CURRENT);

    /**
     * Copies the list.
     *
     * @param readings in the order of the file
     */
    public ReadingsFile {
        readings = List.copyOf(readings);
    }

    /**
     * {@return expected readings, to be written}
     *
     * @param expected readings in the base unit of their test
     */
    public static ReadingsFile of(List<PairReading> expected) {
        return new ReadingsFile(expected.stream()
                .map(r -> new TakenReading(
                        r.from(),
                        r.to(),
                        Double.isFinite(r.value())
                                ? new TakenReading.Value(BigDecimal.valueOf(r.value()), Optional.empty())
                                : new TakenReading.OffScale()))
                .toList());
    }

    /**
     * Reads a readings file.
     *
     * @param file where it lies
     * @param bars that the armature has
     * @return the readings in the order of the file
     * @throws BadInputException when the file cannot be read or anything in it is wrong, carrying every problem
     */
    public static ReadingsFile read(Path file, int bars) throws BadInputException {
        return parse(file.toString(), InputText.read(file, "a readings file", MAX_BYTES), bars);
    }

    /**
     * Reads the text of a readings file.
     *
     * @param name how problems name the file
     * @param text the whole text
     * @param bars that the armature has
     * @return the readings in the order of the text
     * @throws BadInputException when anything in it is wrong, carrying every problem
     */
    public static ReadingsFile parse(String name, String text, int bars) throws BadInputException {
        return parse(new Problems(name), text, bars, r -> {});
    }

    /**
     * Reads the text of a readings file.
     *
     * @param check throws {@link IllegalArgumentException} with the reason when a reading does not fit
     */
    static ReadingsFile parse(Problems problems, String text, int bars, Consumer<TakenReading> check)
            throws BadInputException {
        return new Parser(problems, Math.min(bars, Armature.MAX_BARS), check).parse(text);
    }

    /** {@return the text of a readings file, cells parted by commas; lines end in a line feed} */
    public String toText() {
        StringBuilder out = new StringBuilder(String.join(",", COLUMNS)).append('\n');
        for (TakenReading r : readings) {
            out.append(TakenReading.name(r.from()))
                    .append(',')
                    .append(TakenReading.name(r.to()))
                    .append(',')
                    .append(r.written())
                    .append('\n');
        }
        return out.toString();
    }

    /**
     * Writes a readings file in one step.
     *
     * @param file where it lies
     * @throws IOException when it cannot be written
     */
    public void write(Path file) throws IOException {
        SafeFiles.write(file, toText());
    }

    /**
     * {@return the readings as numbers in the base unit of a test (volts, amperes or ohms), gaps left out, infinite
     * where the meter was off its scale}
     *
     * @param test which test
     * @param unit of numbers that have none of their own; empty for the base unit
     * @throws IllegalArgumentException when a reading does not fit the test
     */
    public List<PairReading> numbers(TestKind test, Optional<String> unit) {
        unit.ifPresent(u -> ReadingSet.checkUnit(u, test));
        Optional<String> given = unit.isPresent() || test.kinds().isEmpty()
                ? unit
                : Optional.of(test.kinds().get(0).units().get(0));
        for (TakenReading r : readings) {
            try {
                ReadingSet.checkReading(r, test, given);
            } catch (IllegalArgumentException e) {
                throw new IllegalArgumentException(
                        "reading " + TakenReading.name(r.from()) + "-" + TakenReading.name(r.to()) + " "
                                + e.getMessage(),
                        e);
            }
        }
        return ReadingSet.pairReadings(readings, test, given);
    }

    /** One pass over the lines. */
    private static final class Parser {
        private final Problems problems;
        private final int bars;
        private final CsvTable table;
        private final Consumer<TakenReading> check;
        private Optional<Quantity.Kind> kind = Optional.empty();
        private int kindLine;

        Parser(Problems problems, int bars, Consumer<TakenReading> check) {
            this.problems = problems;
            this.bars = bars;
            this.check = check;
            this.table = new CsvTable(problems, COLUMNS, ReadingSet.MOST_READINGS);
        }

        ReadingsFile parse(String text) throws BadInputException {
            return new ReadingsFile(table.rows(text, this::row));
        }

        private Optional<TakenReading> row(Map<String, String> row, int at) {
            OptionalInt from = bar(row, "from", at);
            OptionalInt to = bar(row, "to", at);
            Optional<TakenReading.Shown> shown = shown(row.get("reading"), at);
            if (from.isEmpty() || to.isEmpty() || shown.isEmpty()) {
                return Optional.empty();
            }
            if (from.getAsInt() == to.getAsInt()) {
                String name = TakenReading.name(from.getAsInt());
                problems.add(
                        at, "to", "is " + name + " as well: a reading is between two bars, or a bar and the shaft");
                return Optional.empty();
            }
            var reading = new TakenReading(from.getAsInt(), to.getAsInt(), shown.get());
            try {
                check.accept(reading);
            } catch (IllegalArgumentException e) {
                problems.add(at, "", e.getMessage());
                return Optional.empty();
            }
            return Optional.of(reading);
        }

        private OptionalInt bar(Map<String, String> row, String column, int at) {
            String cell = row.get(column);
            if (cell.equalsIgnoreCase(TakenReading.SHAFT)) {
                return OptionalInt.of(BenchTest.SHAFT);
            }
            int value = cell.matches("[0-9]{1,9}") ? Integer.parseInt(cell) : 0;
            if (value < 1 || value > bars) {
                problems.add(
                        at,
                        column,
                        (cell.isEmpty() ? "is blank" : "is \"" + Field.shown(cell) + "\"")
                                + ", but must be a bar from 1 to " + bars + ", or shaft");
                return OptionalInt.empty();
            }
            return OptionalInt.of(value);
        }

        private Optional<TakenReading.Shown> shown(String cell, int at) {
            Optional<String> withPoint = table.withPoint("reading", cell, at);
            if (withPoint.isEmpty()) {
                return Optional.empty();
            }
            try {
                TakenReading.Shown shown = TakenReading.parse(withPoint.get(), KINDS);
                if (shown instanceof TakenReading.Value v) {
                    table.unitsAlike("readings", v.unit().isEmpty(), cell, at);
                    kind(v, cell, at);
                }
                return Optional.of(shown);
            } catch (IllegalArgumentException e) {
                problems.add(at, "reading", e.getMessage());
                return Optional.empty();
            }
        }

        /** All readings that have a unit are of one kind. */
        private void kind(TakenReading.Value v, String cell, int at) {
            if (v.unit().isEmpty()) {
                return;
            }
            Quantity.Kind its = v.kind().orElseThrow();
            if (kind.isPresent() && kind.get() != its) {
                throw new IllegalArgumentException("is \"" + Field.shown(cell) + "\", " + its.words() + ", but line "
                        + kindLine + " has " + kind.get().words() + ": one file holds one kind");
            }
            kindLine = kind.isEmpty() ? at : kindLine;
            kind = Optional.of(its);
        }
    }
}
