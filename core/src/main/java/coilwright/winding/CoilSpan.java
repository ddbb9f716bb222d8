package coilwright.winding;

/** How far a coil reaches at the back of the core. */
public sealed interface CoilSpan {
    /** Full pitch or just under it: floor(S/P) slots, at least 1. */
    record Usual() implements CoilSpan {}

    /**
     * All coils of a slot go to one slot.
     *
     * @param slots slots spanned, at least 1; the trade writes 1–(1 + slots)
     */
    record Throw(int slots) implements CoilSpan {
        /**
         * Checks the span.
         *
         * @param slots slots spanned, at least 1; the trade writes 1–(1 + slots)
         * @throws IllegalArgumentException when it is under 1
         */
        public Throw {
            if (slots < 1) {
                throw new IllegalArgumentException("throw is " + slots + ", but a coil spans at least 1 slot");
            }
        }
    }

    /**
     * A span in coil-side positions; a stepped (split-throw) coil where it is not a multiple of the sides per slot.
     *
     * @param positions positions spanned, at least 1
     */
    record Positions(int positions) implements CoilSpan {
        /**
         * Checks the span.
         *
         * @param positions positions spanned, at least 1
         * @throws IllegalArgumentException when it is under 1
         */
        public Positions {
            if (positions < 1) {
                throw new IllegalArgumentException(
                        "backSpan is " + positions + ", but a coil spans at least 1 position");
            }
        }
    }

    /** {@return span by rule: floor(S/P) slots, at least 1} */
    static CoilSpan usual() {
        return new Usual();
    }

    /**
     * {@return span in slots, "coil throw 1–(1 + slots)"}
     *
     * @param slots at least 1
     */
    static CoilSpan ofThrow(int slots) {
        return new Throw(slots);
    }

    /**
     * {@return span in positions}
     *
     * @param positions at least 1
     */
    static CoilSpan ofPositions(int positions) {
        return new Positions(positions);
    }
}
