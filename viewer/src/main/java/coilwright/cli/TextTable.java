package coilwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Rows in columns, set flush by their widest cell. */
final class TextTable {
    private static final int WIDTH = 96;
    private static final int TEXT_WIDTH = 92;
    private static final String GAP = "  ";

    private final List<String> heads;
    private final boolean[] right;
    private final List<List<String>> rows = new ArrayList<>();

    /**
     * A table.
     *
     * @param heads of the columns; one that begins with {@code >} is set flush right
     */
    TextTable(String... heads) {
        this.heads = new ArrayList<>();
        this.right = new boolean[heads.length];
        for (int i = 0; i < heads.length; i++) {
            right[i] = heads[i].startsWith(">");
            this.heads.add(right[i] ? heads[i].substring(1) : heads[i]);
        }
    }

    void row(Object... cells) {
        List<String> row = new ArrayList<>();
        for (Object cell : cells) {
            row.add(String.valueOf(cell));
        }
        if (row.size() != heads.size()) {
            throw new IllegalArgumentException(row.size() + " cells for " + heads.size() + " columns");
        }
        rows.add(row);
    }

    boolean isEmpty() {
        return rows.isEmpty();
    }

    /** The table with its heads. */
    void appendTo(StringBuilder out) {
        int[] widths = widths();
        line(out, heads, widths);
        for (List<String> row : rows) {
            line(out, row, widths);
        }
    }

    /** The rows alone, their last column folded at the width of the page. */
    void appendRowsTo(StringBuilder out) {
        int[] widths = widths();
        int last = heads.size() - 1;
        int indent = 0;
        for (int i = 0; i < last; i++) {
            indent += widths[i] + GAP.length();
        }
        for (List<String> row : rows) {
            List<String> folded = fold(row.get(last), WIDTH - indent - GAP.length());
            List<String> first = new ArrayList<>(row);
            first.set(last, folded.get(0));
            line(out, first, widths);
            for (String more : folded.subList(1, folded.size())) {
                out.append(GAP).append(" ".repeat(indent)).append(more).append('\n');
            }
        }
    }

    private int[] widths() {
        int[] widths = new int[heads.size()];
        for (int i = 0; i < widths.length; i++) {
            widths[i] = length(heads.get(i));
            for (List<String> row : rows) {
                widths[i] = Math.max(widths[i], length(row.get(i)));
            }
        }
        return widths;
    }

    private void line(StringBuilder out, List<String> cells, int[] widths) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < widths.length; i++) {
            String pad = " ".repeat(Math.max(0, widths[i] - length(cells.get(i))));
            line.append(GAP).append(right[i] ? pad + cells.get(i) : cells.get(i) + pad);
        }
        out.append(line.toString().stripTrailing()).append('\n');
    }

    private static int length(String text) {
        return text.codePointCount(0, text.length());
    }

    /** A paragraph, set in a little. */
    static void paragraph(StringBuilder out, String text) {
        fold(text, TEXT_WIDTH).forEach(l -> out.append(GAP).append(l).append('\n'));
    }

    /** A paragraph, set in, its further lines a little more. */
    static void hanging(StringBuilder out, String indent, String text) {
        String lead = indent;
        for (String line : fold(text, WIDTH - indent.length() - GAP.length())) {
            out.append(lead).append(line).append('\n');
            lead = indent + GAP;
        }
    }

    /** Paragraphs, each with a dash before it. */
    static void items(StringBuilder out, List<String> texts) {
        var table = new TextTable("", "");
        texts.forEach(t -> table.row("-", t));
        table.appendRowsTo(out);
    }

    /** What each thing is, a line or more for each. */
    static void facts(StringBuilder out, Map<String, String> facts) {
        var table = new TextTable("", "");
        facts.forEach(table::row);
        table.appendRowsTo(out);
    }

    /** Breaks text at spaces into lines of at most that many characters, longer words left whole. */
    static List<String> fold(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ")) {
            if (line.length() > 0 && line.length() + 1 + word.length() > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() > 0 ? " " : "").append(word);
        }
        lines.add(line.toString());
        return lines;
    }
}
