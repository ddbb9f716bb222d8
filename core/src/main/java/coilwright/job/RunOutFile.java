package coilwright.job;

import coilwright.commutator.Reading;
import coilwright.file.SafeFiles;
import coilwright.winding.Armature;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Run-out readings round the bars as CSV, one a line: {@code bar,height}, the height with its unit ({@code 0.012 mm},
 * {@code 12 µm}, {@code 0.5 thou}) or all without. A blank height is a bar that was not read; a bar may be read more
 * than once. Columns may stand in any order, and lines that are blank or begin with {@code #} are passed over. Cells
 * are parted by commas, or by semicolons or tabs where the heading is; decimals may follow a point, or a comma (in
 * quotation marks where commas part the cells), but one way throughout.
 *
 * @param entries in the order of the file, bars that were not read left out
 */
public record RunOutFile(List<RunOutEntry> entries) {
    /** Longest file taken, bytes. */
    public static final int MAX_BYTES = 4 * 1024 * 1024;

    static final List<String> COLUMNS = List.of("bar", "height");

    /**
     * Copies the list.
     *
     * @param entries in the order of the file, bars that were not read left out
     */
    public RunOutFile {
        entries = List.copyOf(entries);
    }

    /**
     * Reads a run-out file.
     *
     * @param file where it lies
     * @param bars that the commutator has
     * @param unit of heights that have none of their own, such as {@code mm}; empty where each has its own
     * @return the heights in the order of the file
     * @throws BadInputException when the file cannot be read or anything in it is wrong, carrying every problem
     * @throws IllegalArgumentException when the unit is none of length
     */
    public static RunOutFile read(Path file, int bars, Optional<String> unit) throws BadInputException {
        checkUnit(unit);
        return parse(file.toString(), InputText.read(file, "a run-out file", MAX_BYTES), bars, unit);
    }

    /**
     * Reads the text of a run-out file.
     *
     * @param name how problems name the file
     * @param text the whole text
     * @param bars that the commutator has
     * @param unit of heights that have none of their own
     * @return the heights in the order of the text
     * @throws BadInputException when anything in it is wrong, carrying every problem
     * @throws IllegalArgumentException when the unit is none of length
     */
    public static RunOutFile parse(String name, String text, int bars, Optional<String> unit) throws BadInputException {
        checkUnit(unit);
        return new Parser(new Problems(name), Math.min(bars, Armature.MAX_BARS), unit).parse(text);
    }

    private static void checkUnit(Optional<String> unit) {
        if (unit.isPresent() && !Quantity.Kind.LENGTH.units().contains(unit.get())) {
            throw new IllegalArgumentException("the unit of the readings is \"" + Field.shown(unit.get())
                    + "\", but must be one of length: " + Quantity.Kind.plain(Quantity.Kind.LENGTH.units()));
        }
    }

    /** {@return the text of a run-out file, cells parted by commas; lines end in a line feed} */
    public String toText() {
        StringBuilder out = new StringBuilder(String.join(",", COLUMNS)).append('\n');
        entries.forEach(e -> out.append(e.bar()).append(',').append(e.height()).append('\n'));
        return out.toString();
    }

    /**
     * Writes a run-out file in one step.
     *
     * @param file where it lies
     * @throws IOException when it cannot be written
     */
    public void write(Path file) throws IOException {
        SafeFiles.write(file, toText());
    }

    /**
     * {@return readings in millimetres, as the commutator room takes them}
     *
     * @param entries heights with their units
     * @throws IllegalArgumentException when one is far out of a gauge's range
     */
    public static List<Reading> readings(List<RunOutEntry> entries) {
        return entries.stream()
                .map(e -> new Reading(e.bar(), e.height().in("mm")))
                .toList();
    }

    /** One pass over the lines. */
    private static final class Parser {
        private final Problems problems;
        private final int bars;
        private final Optional<String> unit;
        private final CsvTable table;

        Parser(Problems problems, int bars, Optional<String> unit) {
            this.problems = problems;
            this.bars = bars;
            this.unit = unit;
            this.table = new CsvTable(problems, COLUMNS, ReadingSet.MOST_READINGS);
        }

        RunOutFile parse(String text) throws BadInputException {
            List<Optional<RunOutEntry>> rows = table.rows(text, this::row);
            List<RunOutEntry> read = rows.stream().flatMap(Optional::stream).toList();
            if (read.isEmpty()) {
                throw problems.only(0, "", "has no heights: every one of them is blank");
            }
            return new RunOutFile(read);
        }

        /** An entry; an empty one for a bar that was not read; nothing where the row is wrong. */
        private Optional<Optional<RunOutEntry>> row(Map<String, String> row, int at) {
            String cell = row.get("bar");
            int bar = cell.matches("[0-9]{1,9}") ? Integer.parseInt(cell) : 0;
            if (bar < 1 || bar > bars) {
                problems.add(
                        at,
                        "bar",
                        (cell.isEmpty() ? "is blank" : "is \"" + Field.shown(cell) + "\"")
                                + ", but must be a bar from 1 to " + bars);
            }
            String height = row.get("height");
            if (height.isEmpty()) {
                return bar < 1 || bar > bars ? Optional.empty() : Optional.of(Optional.empty());
            }
            Optional<Quantity> quantity = height(height, at);
            if (bar < 1 || bar > bars || quantity.isEmpty()) {
                return Optional.empty();
            }
            return Optional.of(Optional.of(new RunOutEntry(bar, quantity.get())));
        }

        private Optional<Quantity> height(String cell, int at) {
            Optional<String> withPoint = table.withPoint("height", cell, at);
            if (withPoint.isEmpty()) {
                return Optional.empty();
            }
            String text = withPoint.get().replace('\u2212', '-');
            try {
                boolean bare = text.matches("[+-]?[0-9]+(\\.[0-9]+)?");
                if (bare && unit.isEmpty()) {
                    throw new IllegalArgumentException(
                            "is \"" + Field.shown(cell)
                                    + "\" without a unit: write it with the height, such as 0.012 mm, or give one unit for all");
                }
                table.unitsAlike("heights", bare, cell, at);
                Quantity height = Quantity.parse(bare ? text + " " + unit.orElseThrow() : text, Quantity.Kind.LENGTH);
                if (Math.abs(height.in("mm")) > Reading.MOST_MM) {
                    throw new IllegalArgumentException("is \"" + Field.shown(cell) + "\", but a gauge reads at most "
                            + (int) Reading.MOST_MM + " mm either way: check the unit");
                }
                return Optional.of(height);
            } catch (IllegalArgumentException e) {
                problems.add(at, "height", e.getMessage());
                return Optional.empty();
            }
        }
    }
}
