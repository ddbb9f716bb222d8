package coilwright.bench;

/** What feeds a drop test. */
public sealed interface Supply {
    /**
     * A steady current.
     *
     * @param amperes over 0
     */
    record Current(double amperes) implements Supply {
        /**
         * Checks the current.
         *
         * @param amperes over 0
         * @throws IllegalArgumentException when it is not over 0 or without end
         */
        public Current {
            if (!(amperes > 0) || Double.isInfinite(amperes)) {
                throw new IllegalArgumentException("feed current is " + amperes + " A, but must be more than 0");
            }
        }
    }

    /**
     * A steady voltage.
     *
     * @param volts over 0
     */
    record Voltage(double volts) implements Supply {
        /**
         * Checks the voltage.
         *
         * @param volts over 0
         * @throws IllegalArgumentException when it is not over 0 or without end
         */
        public Voltage {
            if (!(volts > 0) || Double.isInfinite(volts)) {
                throw new IllegalArgumentException("feed voltage is " + volts + " V, but must be more than 0");
            }
        }
    }
}
