package coilwright.fault;

import coilwright.winding.Armature;
import coilwright.winding.Counting;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * Compares the connections as they were taken down with the winding as planned, before anything is soldered. The list
 * may be wrong in any way: coils may be missing, stand twice, lie in slots or land on bars that do not exist.
 */
public final class ConnectionCheck {
    private ConnectionCheck() {}

    /** What can differ. */
    public enum Kind {
        /** Two coils have exchanged leads. */
        SWAPPED_LEADS,
        /** A lead lands on a bar that is not its own. */
        SHIFTED_BAR,
        /** The two leads of a coil are changed over. */
        REVERSED_COIL,
        /** A planned coil is not in the list. */
        MISSING,
        /** A coil stands in the list once more, or is not in the plan. */
        DOUBLED,
        /** A coil side lies in a slot that is not its own. */
        WRONG_SLOT,
        /** One lead of a coil lands on no bar. */
        LEAD_OFF,
        /** A coil that should be connected lands on no bar. */
        DEAD_INSTEAD_OF_LIVE,
        /** A coil that should be dead has a lead on a bar. */
        LIVE_INSTEAD_OF_DEAD,
        /** The whole winding is progressive instead of retrogressive, or the other way. */
        WRONG_DIRECTION;

        /** {@return the word for it in output} */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * One thing about one coil. A coil that differs in two ways has two of them.
     *
     * @param kind what differs
     * @param coil number of the coil, in the numbers of the list
     * @param expected where it should lie and land, in the numbers of the list; empty for a coil not in the plan
     * @param found its line of the list; empty where it is missing
     * @param with the coils it has exchanged leads with
     * @param words in words, with the way out
     */
    public record Difference(
            Kind kind,
            int coil,
            Optional<ListedCoil> expected,
            Optional<ListedCoil> found,
            List<Integer> with,
            String words) {
        /**
         * Copies the list.
         *
         * @param kind what differs
         * @param coil number of the coil, in the numbers of the list
         * @param expected where it should lie and land, in the numbers of the list; empty for a coil not in the plan
         * @param found its line of the list; empty where it is missing
         * @param with the coils it has exchanged leads with
         * @param words in words, with the way out
         */
        public Difference {
            Objects.requireNonNull(kind);
            with = List.copyOf(with);
        }
    }

    /**
     * One thing about the winding as a whole; the differences of single coils are then those from this whole.
     *
     * @param kind {@link Kind#WRONG_DIRECTION}, {@link Kind#SHIFTED_BAR} or {@link Kind#REVERSED_COIL}
     * @param expectedStep bars from a coil's top lead to its bottom lead by the plan, signed
     * @param foundStep the same as found
     * @param barsShifted bars clockwise by which all top leads stand from where they should, −K/2 to K/2
     * @param coils the coils it holds for
     * @param words in words, with what follows
     */
    public record Whole(
            Kind kind, int expectedStep, int foundStep, int barsShifted, List<Integer> coils, String words) {
        /**
         * Copies the list.
         *
         * @param kind {@link Kind#WRONG_DIRECTION}, {@link Kind#SHIFTED_BAR} or {@link Kind#REVERSED_COIL}
         * @param expectedStep bars from a coil's top lead to its bottom lead by the plan, signed
         * @param foundStep the same as found
         * @param barsShifted bars clockwise by which all top leads stand from where they should, −K/2 to K/2
         * @param coils the coils it holds for
         * @param words in words, with what follows
         */
        public Whole {
            Objects.requireNonNull(kind);
            coils = List.copyOf(coils);
        }
    }

    /**
     * How the numbers of a list lie on those of the plan.
     *
     * @param slotOfOne the list's number for the plan's slot 1
     * @param barOfOne the list's number for the plan's bar 1
     * @param mirrored whether the list counts counter-clockwise, or from the back end
     * @param mayBeOtherDirection whether the same list, counted the other way, is the winding of the other direction:
     *     only knowing which way it was counted can tell
     * @param agreeing lines that agree with the plan in everything
     */
    public record Alignment(int slotOfOne, int barOfOne, boolean mirrored, boolean mayBeOtherDirection, int agreeing) {
        /** {@return the way of counting alone} */
        public Counting counting() {
            return new Counting(slotOfOne, barOfOne, mirrored);
        }

        /**
         * {@return a slot of the plan in the list's numbers}
         *
         * @param armature core and commutator
         * @param planned the plan's number
         */
        public int slot(Armature armature, int planned) {
            return counting().slot(armature, planned);
        }

        /**
         * {@return a bar of the plan in the list's numbers}
         *
         * @param armature core and commutator
         * @param planned the plan's number
         */
        public int bar(Armature armature, int planned) {
            return counting().bar(armature, planned);
        }
    }

    /**
     * What was found.
     *
     * @param whole what is wrong with the winding as a whole; empty where nothing is
     * @param differences of single coils, in order of number
     * @param alignment of a numbering-free check; empty otherwise
     */
    public record Result(Optional<Whole> whole, List<Difference> differences, Optional<Alignment> alignment) {
        /**
         * Copies the list.
         *
         * @param whole what is wrong with the winding as a whole; empty where nothing is
         * @param differences of single coils, in order of number
         * @param alignment of a numbering-free check; empty otherwise
         */
        public Result {
            differences = List.copyOf(differences);
        }

        /** {@return whether the list is the plan} */
        public boolean same() {
            return whole.isEmpty() && differences.isEmpty();
        }

        /**
         * {@return numbers of the coils that differ, in the numbers of the list, without those only the whole is wrong
         * with}
         */
        public List<Integer> coils() {
            List<Integer> out = new ArrayList<>();
            differences.forEach(d -> out.add(d.coil()));
            return out.stream().distinct().sorted().toList();
        }
    }

    /**
     * Compares coil by coil, each with the planned coil of its number.
     *
     * @param plan the winding as it should be
     * @param found the lines of the list, in any order
     * @return what differs, line by line
     */
    public static Result of(Winding plan, List<ListedCoil> found) {
        return new CoilComparison(plan.armature(), Layout.of(plan), Layout.reversed(plan), n -> n)
                .compare(found, Optional.empty());
    }

    /**
     * Compares whatever slot and bar the list calls 1, whichever way round it counts, and however it numbers its coils:
     * first finds the way of counting in which most of it agrees, then gives the differences in the list's own numbers.
     *
     * @param plan the winding as it should be
     * @param found the lines of the list, in any order
     * @return how the list counts, and what differs then
     */
    public static Result free(Winding plan, List<ListedCoil> found) {
        return new FreeComparison(plan, found).compare();
    }
}
