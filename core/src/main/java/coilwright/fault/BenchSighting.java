package coilwright.fault;

import java.util.Locale;
import java.util.OptionalInt;

/** One thing seen or measured on an armature whose winding is not known. */
public sealed interface BenchSighting {
    /** {@return the sighting in words} */
    String words();

    /**
     * Both leads of one coil traced.
     *
     * @param topSlot slot of its top side; empty where the slots were not traced
     * @param bottomSlot slot of its bottom side; given with the top slot or not at all
     * @param topBar bar of the lead of the side next to the air gap
     * @param bottomBar bar of the lead of the side at the slot's floor
     */
    record TracedCoil(OptionalInt topSlot, OptionalInt bottomSlot, int topBar, int bottomBar) implements BenchSighting {
        /**
         * Checks that the slots are given together.
         *
         * @param topSlot slot of its top side; empty where the slots were not traced
         * @param bottomSlot slot of its bottom side; given with the top slot or not at all
         * @param topBar bar of the lead of the side next to the air gap
         * @param bottomBar bar of the lead of the side at the slot's floor
         * @throws IllegalArgumentException when only one is
         */
        public TracedCoil {
            if (topSlot.isPresent() != bottomSlot.isPresent()) {
                throw new IllegalArgumentException("a traced coil has one slot only: give both or none");
            }
        }

        /**
         * {@return a coil traced from bar to bar only}
         *
         * @param topBar bar of its top lead
         * @param bottomBar bar of its bottom lead
         */
        public static TracedCoil onBars(int topBar, int bottomBar) {
            return new TracedCoil(OptionalInt.empty(), OptionalInt.empty(), topBar, bottomBar);
        }

        @Override
        public String words() {
            return "a coil from bar " + topBar + " to bar " + bottomBar
                    + (topSlot.isPresent() ? " in slots " + topSlot.getAsInt() + " and " + bottomSlot.getAsInt() : "");
        }
    }

    /**
     * Whether a test lamp or an ohmmeter finds two bars joined, on a sound armature with the brushes off.
     *
     * @param bar one
     * @param otherBar the other
     * @param joined whether it does
     */
    record Continuity(int bar, int otherBar, boolean joined) implements BenchSighting {
        @Override
        public String words() {
            return "bars " + bar + " and " + otherBar + (joined ? " joined" : " not joined");
        }
    }

    /**
     * Resistance between two bars, in any unit that is the same for all: only the ratios of several are used.
     *
     * @param bar one
     * @param otherBar the other
     * @param value over 0
     */
    record Resistance(int bar, int otherBar, double value) implements BenchSighting {
        /**
         * Checks the value.
         *
         * @param bar one
         * @param otherBar the other
         * @param value over 0
         * @throws IllegalArgumentException when it is not over 0
         */
        public Resistance {
            if (!(value > 0) || Double.isInfinite(value)) {
                throw new IllegalArgumentException("the resistance between bars " + bar + " and " + otherBar + " is "
                        + value + ", but must be over 0: where the meter shows open, give the two as not joined");
            }
        }

        @Override
        public String words() {
            return String.format(Locale.ROOT, "%.4g between bars %d and %d", value, bar, otherBar);
        }
    }

    /**
     * Over how many slots the growler's blade hums while two neighbouring bars are joined by a piece of wire.
     *
     * @param slots 0 and up
     */
    record BladeSlots(int slots) implements BenchSighting {
        /**
         * Checks the count.
         *
         * @param slots 0 and up
         * @throws IllegalArgumentException when it is under 0
         */
        public BladeSlots {
            if (slots < 0) {
                throw new IllegalArgumentException("the blade hums over " + slots + " slots, but 0 is the fewest");
            }
        }

        @Override
        public String words() {
            return "the blade hums over " + slots + " slots with two neighbouring bars joined";
        }
    }
}
