package coilwright.sheet;

import java.util.List;

/**
 * A table whose head is repeated wherever it goes on.
 *
 * @param columns in order, at least one
 * @param rows each with a text for every column
 * @param strips how many times side by side the table runs down the page, 1 to 6
 */
public record Table(List<Column> columns, List<List<String>> rows, int strips) {
    /** Where the text of a column stands. */
    public enum Align {
        /** At the left. */
        LEFT,
        /** In the middle. */
        MIDDLE,
        /** At the right, as numbers. */
        RIGHT,
        /** A small square to tick in place of any text. */
        TICK
    }

    /**
     * A column.
     *
     * @param head its heading
     * @param share of the width, relative to the others, over 0
     * @param align where its text stands
     */
    public record Column(String head, double share, Align align) {
        /**
         * Checks the share.
         *
         * @param head its heading
         * @param share of the width, relative to the others, over 0
         * @param align where its text stands
         * @throws IllegalArgumentException when it is not over 0
         */
        public Column {
            if (!(share > 0) || Double.isInfinite(share)) {
                throw new IllegalArgumentException(
                        "column \"" + head + "\" has a share of " + share + ", but must have more than 0");
            }
        }
    }

    /**
     * Copies the lists.
     *
     * @param columns in order, at least one
     * @param rows each with a text for every column
     * @param strips how many times side by side the table runs down the page, 1 to 6
     * @throws IllegalArgumentException when a row has another number of texts than there are columns
     */
    public Table {
        columns = List.copyOf(columns);
        rows = rows.stream().map(List::copyOf).toList();
        if (columns.isEmpty()) {
            throw new IllegalArgumentException("a table has no columns, but needs one");
        }
        if (strips < 1 || strips > 6) {
            throw new IllegalArgumentException("a table in " + strips + " strips, but 1 to 6 fit side by side");
        }
        for (List<String> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException(
                        "a row has " + row.size() + " texts, but there are " + columns.size() + " columns");
            }
        }
    }
}
