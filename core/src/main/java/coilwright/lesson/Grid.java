package coilwright.lesson;

import java.util.List;

/**
 * A table of an exercise.
 *
 * @param heads of the columns, at least one
 * @param rows each with a text for every column; an empty text is to be filled in
 */
public record Grid(List<String> heads, List<List<String>> rows) {
    /** Heads of a winding table. */
    static final List<String> COILS = List.of("Coil", "Top slot", "Bottom slot", "Top bar", "Bottom bar");

    /**
     * Copies the lists.
     *
     * @param heads of the columns, at least one
     * @param rows each with a text for every column; an empty text is to be filled in
     * @throws IllegalArgumentException when a row has another number of texts than there are columns
     */
    public Grid {
        heads = List.copyOf(heads);
        rows = rows.stream().map(List::copyOf).toList();
        for (List<String> row : rows) {
            if (heads.isEmpty() || row.size() != heads.size()) {
                throw new IllegalArgumentException(
                        "a row has " + row.size() + " texts, but there are " + heads.size() + " columns");
            }
        }
    }
}
