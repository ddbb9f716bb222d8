package coilwright.cli;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Writes the cells of answers for a spreadsheet. */
final class Csv {
    private static final Pattern NUMBER = Pattern.compile("[+-]?[0-9]+(\\.[0-9]+)?([eE][+-]?[0-9]+)?");
    private static final Pattern PLAIN = Pattern.compile("[^,;\"\\t\\r\\n]*");
    private static final String FORMULA = "=+-@\t\r＝＋－＠";

    private Csv() {}

    /** A line of cells. */
    static void line(StringBuilder out, List<String> cells) {
        out.append(cells.stream().map(Csv::cell).collect(Collectors.joining(",")))
                .append('\n');
    }

    /**
     * A cell, in quotation marks where it needs them. A spreadsheet takes a text for a formula that begins like one: an
     * apostrophe before it makes it a text, as is the common advice. Numbers stay numbers.
     */
    static String cell(String text) {
        boolean formula = !text.isEmpty()
                && FORMULA.indexOf(text.charAt(0)) >= 0
                && !NUMBER.matcher(text).matches();
        String shown = formula ? "'" + text : text;
        return PLAIN.matcher(shown).matches() ? shown : '"' + shown.replace("\"", "\"\"") + '"';
    }
}
