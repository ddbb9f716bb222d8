package coilwright.job;

import coilwright.file.SafeFiles;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.csv.CsvFactory;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;

/**
 * Connection lists as CSV, one coil a line: {@code coil,topSlot,bottomSlot,topBar,bottomBar}. A bar left blank means a
 * lead that lands on none. Columns may stand in any order, and a column {@code dead} (true or false) may be added.
 */
public final class ConnectionList {
    /** Longest file taken, bytes. */
    public static final int MAX_BYTES = 1024 * 1024;

    static final List<String> COLUMNS = JobReader.COIL_KEYS;
    private static final String DEAD = "dead";
    private static final int MOST_COILS = 2 * Armature.MAX_BARS;

    private ConnectionList() {}

    /**
     * Reads a connection list.
     *
     * @param file where it lies
     * @return the coils in the order of the file; slots, bars and numbers are at least 1, but whether the armature has
     *     them is for the rules to say
     * @throws BadInputException when the file cannot be read or anything in it is wrong, carrying every problem
     */
    public static List<ListedCoil> read(Path file) throws BadInputException {
        return parse(file.toString(), InputText.read(file, "a connection list", MAX_BYTES));
    }

    /**
     * Reads the text of a connection list.
     *
     * @param name how problems name the file
     * @param text the whole text
     * @return the coils in the order of the text
     * @throws BadInputException when anything in it is wrong, carrying every problem
     */
    public static List<ListedCoil> parse(String name, String text) throws BadInputException {
        return parse(name, text, false);
    }

    /**
     * Reads a connection list as it was taken down, in which a coil may stand twice.
     *
     * @param file where it lies
     * @return the lines in the order of the file
     * @throws BadInputException when the file cannot be read or anything else in it is wrong, carrying every problem
     */
    public static List<ListedCoil> readAsFound(Path file) throws BadInputException {
        return parse(file.toString(), InputText.read(file, "a connection list", MAX_BYTES), true);
    }

    private static List<ListedCoil> parse(String name, String text, boolean mayRepeat) throws BadInputException {
        var problems = new Problems(name);
        List<Row> rows = rows(text, problems);
        if (rows.isEmpty()) {
            throw problems.only(0, "", "is empty: it begins with the line " + String.join(",", COLUMNS));
        }
        List<String> known = new ArrayList<>(COLUMNS);
        known.add(DEAD);
        Row heading = rows.get(0);
        Map<String, Integer> columns = CsvTable.columns(heading.cells(), heading.line(), COLUMNS, known, problems);
        problems.throwIfAny();
        if (rows.size() == 1) {
            throw problems.only(heading.line(), "", "has a heading but no coils under it");
        }
        if (rows.size() - 1 > MOST_COILS) {
            throw problems.only(0, "", "lists " + (rows.size() - 1) + " coils, but may list at most " + MOST_COILS);
        }
        List<ListedCoil> coils = new ArrayList<>();
        Map<Integer, Integer> lineOfCoil = new HashMap<>();
        for (Row row : rows.subList(1, rows.size())) {
            if (row.cells().size() != heading.cells().size()) {
                problems.add(
                        row.line(),
                        "",
                        "has " + row.cells().size() + " cells, but the heading has "
                                + heading.cells().size());
                continue;
            }
            var cells = new Cells(row, columns, problems);
            OptionalInt coil = cells.whole("coil", MOST_COILS, false);
            OptionalInt topSlot = cells.whole("topSlot", Armature.MAX_SLOTS, false);
            OptionalInt bottomSlot = cells.whole("bottomSlot", Armature.MAX_SLOTS, false);
            OptionalInt topBar = cells.whole("topBar", Armature.MAX_BARS, true);
            OptionalInt bottomBar = cells.whole("bottomBar", Armature.MAX_BARS, true);
            cells.checkDead(topBar.isPresent() || bottomBar.isPresent());
            if (coil.isEmpty() || topSlot.isEmpty() || bottomSlot.isEmpty()) {
                continue;
            }
            Integer before = lineOfCoil.putIfAbsent(coil.getAsInt(), row.line());
            if (before != null && !mayRepeat) {
                problems.add(row.line(), "coil", "lists coil " + coil.getAsInt() + " again, first in line " + before);
            }
            coils.add(new ListedCoil(coil.getAsInt(), topSlot.getAsInt(), bottomSlot.getAsInt(), topBar, bottomBar));
        }
        problems.throwIfAny();
        return List.copyOf(coils);
    }

    /**
     * {@return a winding's coils as text, in order of number, with the column {@code dead}; lines end in a line feed}
     *
     * @param winding the winding
     */
    public static String toText(Winding winding) {
        StringBuilder out = new StringBuilder(String.join(",", COLUMNS))
                .append(",")
                .append(DEAD)
                .append('\n');
        for (Coil c : winding.coils()) {
            out.append(cells(ListedCoil.of(c))).append(',').append(c.isDead()).append('\n');
        }
        return out.toString();
    }

    /**
     * {@return a list as text, in its own order; lines end in a line feed}
     *
     * @param coils the coils, in the order to be kept
     */
    public static String toText(List<ListedCoil> coils) {
        StringBuilder out = new StringBuilder(String.join(",", COLUMNS)).append('\n');
        for (ListedCoil c : coils) {
            out.append(cells(c)).append('\n');
        }
        return out.toString();
    }

    private static String cells(ListedCoil c) {
        return c.coil() + "," + c.topSlot() + "," + c.bottomSlot() + "," + cell(c.topBar()) + "," + cell(c.bottomBar());
    }

    private static String cell(OptionalInt bar) {
        return bar.isPresent() ? Integer.toString(bar.getAsInt()) : "";
    }

    private record Row(int line, List<String> cells) {}

    private static List<Row> rows(String text, Problems problems) throws BadInputException {
        List<Row> rows = new ArrayList<>();
        var factory = CsvFactory.builder()
                .enable(CsvParser.Feature.TRIM_SPACES)
                .enable(CsvParser.Feature.SKIP_EMPTY_LINES)
                .build();
        try (CsvParser parser = factory.createParser(text.replace("\r\n", "\n"))) {
            List<String> cells = new ArrayList<>();
            int line = 1;
            for (JsonToken t = parser.nextToken(); t != null; t = parser.nextToken()) {
                if (t == JsonToken.START_ARRAY) {
                    cells = new ArrayList<>();
                } else if (t == JsonToken.END_ARRAY) {
                    rows.add(new Row(line, cells));
                } else {
                    line = cells.isEmpty() ? parser.currentTokenLocation().getLineNr() : line;
                    cells.add(parser.getText());
                }
                if (cells.size() > CsvTable.MAX_COLUMNS) {
                    throw problems.only(line, "", "has more than " + CsvTable.MAX_COLUMNS + " cells");
                }
                if (rows.size() > MOST_COILS + 1) {
                    throw problems.only(line, "", "is too long: at most " + MOST_COILS + " coils are taken");
                }
            }
        } catch (JsonProcessingException e) {
            int line = e.getLocation() == null ? 0 : e.getLocation().getLineNr();
            boolean open = e.getOriginalMessage().contains("closing quote");
            throw problems.only(
                    open ? InputText.lineAt(text, opened(text)) : line,
                    "",
                    open
                            ? "has a quotation mark that is not closed"
                            : "has text after a closing quotation mark: a cell is quoted whole or not");
        } catch (IOException e) {
            throw problems.only(0, "", "cannot be read: " + SafeFiles.reason(e));
        }
        return rows;
    }

    /** Where the last quotation mark opens. */
    private static int opened(String text) {
        int opened = 0;
        boolean quoted = false;
        boolean blank = true;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (quoted && text.startsWith("\"\"", i)) {
                i++;
            } else if (c == '"' && (quoted || blank)) {
                quoted = !quoted;
                opened = quoted ? i : opened;
                blank = false;
            } else if (!quoted) {
                blank = c == ',' || c == '\n' || c == '\r' || (blank && Character.isWhitespace(c));
            }
        }
        return opened;
    }

    /** One line's cells by column. */
    private record Cells(Row row, Map<String, Integer> columns, Problems problems) {
        OptionalInt whole(String column, int most, boolean mayBeBlank) {
            String cell = row.cells().get(columns.get(column));
            if (cell.isEmpty()) {
                if (!mayBeBlank) {
                    problems.add(row.line(), column, "is blank");
                }
                return OptionalInt.empty();
            }
            int value = cell.matches("[0-9]{1,9}") ? Integer.parseInt(cell) : 0;
            if (value < 1 || value > most) {
                problems.add(
                        row.line(),
                        column,
                        "is \"" + Field.shown(cell) + "\", but must be a whole number from 1 to " + most
                                + (mayBeBlank ? ", or blank where the lead lands on no bar" : ""));
                return OptionalInt.empty();
            }
            return OptionalInt.of(value);
        }

        void checkDead(boolean hasBar) {
            Integer at = columns.get(DEAD);
            if (at == null) {
                return;
            }
            String cell = row.cells().get(at).toLowerCase(Locale.ROOT);
            if (!cell.equals("true") && !cell.equals("false") && !cell.isEmpty()) {
                problems.add(row.line(), DEAD, "is \"" + Field.shown(cell) + "\", but must be true or false");
            } else if (cell.equals("true") && hasBar) {
                problems.add(row.line(), DEAD, "is true, but the coil has a lead on a bar: a dead coil has none");
            }
        }
    }
}
