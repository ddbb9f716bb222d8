package coilwright.drawing;

import coilwright.winding.Counting;
import coilwright.winding.ListedCoil;
import java.util.List;
import java.util.Optional;

/**
 * Connections as found beside the plan, for {@link OverlayDrawings#connections}. Slots and bars may be numbers that do
 * not exist.
 *
 * @param found the lines of the list
 * @param differences what differs of single coils, in the numbers of the list
 * @param whole what differs of the winding as a whole, in a few words; empty where nothing does
 * @param numbering how the numbers of the list lie on those of the plan; empty where they are the same
 */
public record Comparison(
        List<ListedCoil> found, List<Difference> differences, Optional<String> whole, Optional<Counting> numbering) {
    /**
     * Copies the lists.
     *
     * @param found the lines of the list
     * @param differences what differs of single coils, in the numbers of the list
     * @param whole what differs of the winding as a whole, in a few words; empty where nothing does
     * @param numbering how the numbers of the list lie on those of the plan; empty where they are the same
     */
    public Comparison {
        found = List.copyOf(found);
        differences = List.copyOf(differences);
    }

    /**
     * One thing about one coil.
     *
     * @param coil its number in the list
     * @param kind what differs, in two or three words, as in "reversed coil"
     * @param planned where it should lie and land; empty for a coil not in the plan
     * @param found its line of the list; empty where it is missing
     * @param extra whether the line is one too many
     */
    public record Difference(
            int coil, String kind, Optional<ListedCoil> planned, Optional<ListedCoil> found, boolean extra) {}
}
