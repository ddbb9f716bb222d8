package coilwright.bench;

/** A place that can be touched or joined electrically. */
public sealed interface Point {
    /**
     * A commutator bar.
     *
     * @param number 1..K
     */
    record Bar(int number) implements Point {
        @Override
        public String toString() {
            return "bar " + number;
        }
    }

    /**
     * A place along a coil's wire.
     *
     * @param coil number of the coil
     * @param fraction of the wire from its top lead, over 0 and under 1
     */
    record Inside(int coil, double fraction) implements Point {
        /**
         * Checks the fraction.
         *
         * @param coil number of the coil
         * @param fraction of the wire from its top lead, over 0 and under 1
         * @throws IllegalArgumentException when it is not over 0 and under 1
         */
        public Inside {
            if (!(fraction > 0 && fraction < 1)) {
                throw new IllegalArgumentException(
                        "the place along coil " + coil + " is " + fraction + ", but must be over 0 and under 1");
            }
        }

        @Override
        public String toString() {
            return "coil " + coil + " at " + Math.round(fraction * 100) + " %";
        }
    }

    /** The shaft, and the core with it. */
    record Shaft() implements Point {
        @Override
        public String toString() {
            return "shaft";
        }
    }

    /**
     * {@return bar of a number}
     *
     * @param number its number, from 1
     */
    static Point bar(int number) {
        return new Bar(number);
    }

    /** {@return the shaft and core} */
    static Point shaft() {
        return new Shaft();
    }
}
