package coilwright.sheet;

import java.util.ArrayList;
import java.util.List;

/** Where the lines of a table break, and how wide and high that makes its columns and rows. */
final class TableLayout {
    /** Size of letters, mm. */
    static final double LETTER = 2.8;

    /** From line to line within a cell, mm. */
    static final double LINE = LETTER * 1.3;

    /** Between two strips, mm. */
    static final double STRIP_GAP = 5;

    private final Table table;
    private final double rowHigh;
    private final double stripWidth;
    private final double[] left;
    private final List<List<List<String>>> rows = new ArrayList<>();
    private final List<Double> heights = new ArrayList<>();
    private final List<List<String>> head = new ArrayList<>();
    private final double headHeight;

    /**
     * Breaks the lines.
     *
     * @param rowHigh of a row of one line, mm
     */
    TableLayout(Table table, double rowHigh) {
        this.table = table;
        this.rowHigh = rowHigh;
        int n = table.columns().size();
        this.stripWidth = (Sheet.ROOM - STRIP_GAP * (table.strips() - 1)) / table.strips();
        double total = table.columns().stream().mapToDouble(Table.Column::share).sum();
        this.left = new double[n + 1];
        double highest = rowHigh;
        for (int i = 0; i < n; i++) {
            left[i + 1] = left[i] + stripWidth * table.columns().get(i).share() / total;
            List<String> lines = Sheet.wrapped(table.columns().get(i).head(), LETTER, true, left[i + 1] - left[i] - 2);
            head.add(lines);
            highest = Math.max(highest, rowHeight(lines.size()));
        }
        headHeight = highest;
        for (List<String> row : table.rows()) {
            List<List<String>> cells = new ArrayList<>();
            double high = rowHigh;
            for (int i = 0; i < n; i++) {
                List<String> lines = Sheet.wrapped(row.get(i), LETTER, false, left[i + 1] - left[i] - 2);
                cells.add(lines);
                high = Math.max(high, rowHeight(lines.size()));
            }
            rows.add(cells);
            heights.add(high);
        }
    }

    private double rowHeight(int lines) {
        return rowHigh + (lines - 1) * LINE;
    }

    int rows() {
        return rows.size();
    }

    double stripWidth() {
        return stripWidth;
    }

    /** Where a column begins, from the left edge of its strip; one more than there are gives the right edge. */
    double left(int column) {
        return left[column];
    }

    double headHeight() {
        return headHeight;
    }

    List<String> head(int column) {
        return head.get(column);
    }

    double height(int row) {
        return heights.get(row);
    }

    /** The lines of a cell. */
    List<String> cell(int row, int column) {
        return rows.get(row).get(column);
    }

    /** The least height in which all that is left runs evenly over the strips; the room where it takes more. */
    double even(int from, double room) {
        double each = 0;
        for (int i = from; i < rows(); i++) {
            each += heights.get(i);
        }
        each /= table.strips();
        while (each < room) {
            int at = from;
            for (int s = 0; s < table.strips() && at < rows(); s++) {
                at = fill(at, each);
            }
            if (at == rows()) {
                return each;
            }
            each += rowHigh / 2;
        }
        return room;
    }

    int fill(int from, double room) {
        int end = from;
        double used = 0;
        while (end < rows() && (end == from || used + heights.get(end) <= room + 1e-6)) {
            used += heights.get(end);
            end++;
        }
        return end;
    }
}
