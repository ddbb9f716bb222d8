package coilwright.rewind;

import java.util.List;
import java.util.Objects;

/**
 * One step of the work. What it is made of stands in lists; {@link #text} says the same in words.
 *
 * @param number from 1, in order
 * @param kind what is done
 * @param coils with which coils; in a test of what is in so far, those tested
 * @param slots in which slots, each once
 * @param bars on which bars, each once
 * @param sides coil sides that come to lie in their slots in this step
 * @param lifted coil sides whose coil is put in now, while they themselves stay out of their slots
 * @param separators slots on whose lower layer a separator is laid before the next layer
 * @param leads leads that come on their bars in this step
 * @param loops bars for which a loop is left between two coils wound in one go, in order
 * @param tests what is tested
 * @param text what to do
 * @param remarks what to mind, each a sentence of its own
 */
public record WorkStep(
        int number,
        Kind kind,
        List<Integer> coils,
        List<Integer> slots,
        List<Integer> bars,
        List<Side> sides,
        List<Side> lifted,
        List<Integer> separators,
        List<Lead> leads,
        List<Integer> loops,
        List<WorkTest> tests,
        String text,
        List<String> remarks) {

    /** What is done in a step. */
    public enum Kind {
        /** Bare slots, core ends and shaft are insulated; or one layer of leads from the next. */
        INSULATE,
        /** Formed coils are put in; some sides may stay lifted. */
        PLACE,
        /** Coils are wound straight into their slots. */
        WIND,
        /** Lifted sides are lowered into their slots. */
        LOWER,
        /** Full slots are closed and wedged. */
        WEDGE,
        /** Ends of dead coils are cut back, insulated and tied down. */
        CUT_BACK,
        /** An equalizer is fitted. */
        EQUALIZE,
        /** Leads are laid in their bars. */
        CONNECT,
        /** Leads are soldered, brazed, welded or staked. */
        JOIN,
        /** Something is tested. */
        TEST,
        /** End turns and leads are banded. */
        BAND,
        /** The winding is varnished and baked. */
        VARNISH,
        /** The commutator is turned and undercut, the armature balanced. */
        FINISH
    }

    /** The two ends of a coil. */
    public enum End {
        /** The side next to the air gap in the plan, and its lead. */
        TOP("top"),
        /** The side at the slot's floor in the plan, and its lead. */
        BOTTOM("bottom");

        private final String word;

        End(String word) {
            this.word = word;
        }

        /** {@return the word printed} */
        public String word() {
            return word;
        }
    }

    /**
     * One side of one coil in its slot.
     *
     * @param coil its number
     * @param end which side
     * @param slot where it lies
     * @param layer its layer in the plan: 1 is next to the air gap
     * @param lies the layer in which it really comes to lie; differs from the plan in windings wound by hand
     */
    public record Side(int coil, End end, int slot, int layer, int lies) {
        /** {@return whether it lies in the layer of the plan} */
        public boolean asPlanned() {
            return lies == layer;
        }
    }

    /**
     * One lead on its bar.
     *
     * @param coil its coil
     * @param end from which side of the coil
     * @param slot in which that side lies
     * @param layer of that side in the plan
     * @param bar on which it lands
     */
    public record Lead(int coil, End end, int slot, int layer, int bar) {}

    /**
     * Copies the lists and checks the number.
     *
     * @param number from 1, in order
     * @param kind what is done
     * @param coils with which coils; in a test of what is in so far, those tested
     * @param slots in which slots, each once
     * @param bars on which bars, each once
     * @param sides coil sides that come to lie in their slots in this step
     * @param lifted coil sides whose coil is put in now, while they themselves stay out of their slots
     * @param separators slots on whose lower layer a separator is laid before the next layer
     * @param leads leads that come on their bars in this step
     * @param loops bars for which a loop is left between two coils wound in one go, in order
     * @param tests what is tested
     * @param text what to do
     * @param remarks what to mind, each a sentence of its own
     */
    public WorkStep {
        Require.atLeast("step number", number, 1);
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(text, "text");
        coils = List.copyOf(coils);
        slots = List.copyOf(slots);
        bars = List.copyOf(bars);
        sides = List.copyOf(sides);
        lifted = List.copyOf(lifted);
        separators = List.copyOf(separators);
        leads = List.copyOf(leads);
        loops = List.copyOf(loops);
        tests = List.copyOf(tests);
        remarks = List.copyOf(remarks);
    }
}
