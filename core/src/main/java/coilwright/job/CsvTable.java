package coilwright.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Readings in columns: a heading, then one row a line. Cells are parted by commas, or by semicolons or tabs where the
 * heading is, and may stand in quotation marks; columns may stand in any order; lines that are blank or begin with
 * {@code #} are passed over.
 */
final class CsvTable {
    /** Longest line taken, characters. */
    static final int MAX_LINE = 10_000;

    /** Most columns taken. */
    static final int MAX_COLUMNS = 100;

    private final Problems problems;
    private final List<String> names;
    private final int most;
    private final Map<String, Integer> columns = new HashMap<>();
    private char separator;
    private int width;
    private int pointLine;
    private int commaLine;
    private int bareLine;
    private int unitLine;

    /**
     * A table to be read.
     *
     * @param names of the columns, all needed
     * @param most rows taken
     */
    CsvTable(Problems problems, List<String> names, int most) {
        this.problems = problems;
        this.names = names;
        this.most = most;
    }

    /** What a row becomes. */
    interface Row<T> {
        /** Reads a row's cells by column, noting what is wrong. */
        Optional<T> read(Map<String, String> cells, int line);
    }

    /** Every row that could be read, in order. */
    <T> List<T> rows(String text, Row<T> row) throws BadInputException {
        List<T> out = new ArrayList<>();
        String[] lines = text.split("\r\n|\r|\n", -1);
        int headLine = 0;
        int rows = 0;
        for (int i = 0; i < lines.length; i++) {
            String line = lines[i].strip();
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            if (lines[i].length() > MAX_LINE) {
                throw problems.only(
                        i + 1, "", "is longer than " + MAX_LINE + " characters, the most that a line may have");
            }
            if (headLine == 0) {
                headLine = i + 1;
                header(lines[i], headLine);
                problems.throwIfAny();
                continue;
            }
            if (++rows > most) {
                throw problems.only(i + 1, "", "is too long: at most " + most + " readings are taken");
            }
            int at = i + 1;
            row(lines[i], at).flatMap(cells -> row.read(cells, at)).ifPresent(out::add);
        }
        if (headLine == 0) {
            throw problems.only(0, "", "is empty: it begins with the line " + String.join(",", names));
        }
        problems.throwIfAny();
        if (out.isEmpty()) {
            throw problems.only(headLine, "", "has a heading but no readings under it");
        }
        return out;
    }

    private void header(String line, int at) {
        separator = line.indexOf(';') >= 0 ? ';' : line.indexOf('\t') >= 0 ? '\t' : ',';
        Optional<List<String>> row = cells(line, at);
        if (row.isEmpty()) {
            return;
        }
        width = row.get().size();
        if (width > MAX_COLUMNS) {
            problems.add(at, "", "has " + width + " columns, but may have at most " + MAX_COLUMNS);
            return;
        }
        columns.putAll(columns(row.get(), at, names, names, problems));
    }

    /**
     * Where each column stands that a heading names; what is wrong with the heading is noted.
     *
     * @param needed columns that must be there
     * @param known columns that may be there, those needed among them
     */
    static Map<String, Integer> columns(
            List<String> heading, int line, List<String> needed, List<String> known, Problems problems) {
        Map<String, Integer> columns = new HashMap<>();
        String all = String.join(",", needed);
        if (heading.stream().noneMatch(c -> NearWord.of(c, known).isPresent())) {
            problems.add(line, "", "must be the heading " + all);
            return columns;
        }
        for (int i = 0; i < heading.size(); i++) {
            String name = heading.get(i);
            if (!known.contains(name)) {
                problems.add(
                        line,
                        Field.shown(name),
                        "unknown column: " + NearWord.question(name, known, "the columns are " + all));
            } else if (columns.putIfAbsent(name, i) != null) {
                problems.add(line, name, "is a column twice: keep one");
            }
        }
        for (String name : needed) {
            if (!columns.containsKey(name)) {
                problems.add(line, name, "this column is missing");
            }
        }
        return columns;
    }

    /** The cells of a line, out of their quotation marks. */
    private Optional<List<String>> cells(String line, int at) {
        List<String> out = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        boolean wasQuoted = false;
        boolean blank = true;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (quoted && c == '"' && i + 1 < line.length() && line.charAt(i + 1) == '"') {
                cell.append('"');
                blank = false;
                i++;
            } else if (c == '"' && (quoted || blank)) {
                quoted = !quoted;
                wasQuoted = true;
            } else if (c == separator && !quoted) {
                out.add(cell.toString().strip());
                cell.setLength(0);
                wasQuoted = false;
                blank = true;
            } else if (wasQuoted && !quoted && !Character.isWhitespace(c)) {
                problems.add(at, "", "has text after a closing quotation mark: a cell is quoted whole or not");
                return Optional.empty();
            } else {
                cell.append(c);
                blank &= Character.isWhitespace(c);
            }
        }
        if (quoted) {
            problems.add(at, "", "has a quotation mark that is not closed");
            return Optional.empty();
        }
        out.add(cell.toString().strip());
        return Optional.of(out);
    }

    private Optional<Map<String, String>> row(String line, int at) {
        Optional<List<String>> row = cells(line, at);
        if (row.isEmpty() || row.get().stream().allMatch(String::isEmpty)) {
            return Optional.empty();
        }
        if (row.get().size() != width) {
            String comma = separator == ',' && row.get().size() == width + 1
                    ? ": put a reading with a decimal comma in quotation marks"
                    : "";
            problems.add(at, "", "has " + row.get().size() + " cells, but the heading has " + width + comma);
            return Optional.empty();
        }
        Map<String, String> out = new HashMap<>();
        columns.forEach((name, i) -> out.put(name, row.get().get(i)));
        return Optional.of(out);
    }

    /** A cell with a point before its decimals; nothing, and a note, where the other way was used before. */
    Optional<String> withPoint(String column, String cell, int at) {
        String withPoint = cell;
        if (cell.matches("[+\\-\u2212]?[0-9]+,[0-9]+([^0-9.,].*)?")) {
            withPoint = cell.replaceFirst(",", ".");
            commaLine = commaLine == 0 ? at : commaLine;
        } else if (cell.matches("[+\\-\u2212]?[0-9]+\\.[0-9]+([^0-9.,].*)?")) {
            pointLine = pointLine == 0 ? at : pointLine;
        }
        if ((commaLine == at && pointLine > 0) || (pointLine == at && commaLine > 0)) {
            boolean comma = commaLine == at;
            problems.add(
                    at,
                    column,
                    "is \"" + Field.shown(cell) + "\", with a decimal " + (comma ? "comma" : "point") + ", but line "
                            + (comma ? pointLine : commaLine) + " has a decimal " + (comma ? "point" : "comma")
                            + ": keep to one");
            return Optional.empty();
        }
        return Optional.of(withPoint);
    }

    /**
     * Notes whether a number in a cell stands without a unit.
     *
     * @param numbers what the numbers are, for the message
     * @throws IllegalArgumentException when one before it was written the other way
     */
    void unitsAlike(String numbers, boolean bare, String cell, int at) {
        if (bare) {
            bareLine = bareLine == 0 ? at : bareLine;
        } else {
            unitLine = unitLine == 0 ? at : unitLine;
        }
        if ((bareLine == at && unitLine > 0) || (unitLine == at && bareLine > 0)) {
            throw new IllegalArgumentException(
                    "is \"" + Field.shown(cell) + (bare ? "\" without" : "\" with") + " a unit, but line "
                            + (bare ? unitLine : bareLine) + " has " + (bare ? "one" : "none") + ": give all " + numbers
                            + " their unit, or none");
        }
    }
}
