package coilwright.network;

/** A supply from outside, connected to two nodes. */
public sealed interface Feed permits Feed.Current, Feed.Voltage {
    /** {@return the node the supply's positive lead touches} */
    int in();

    /** {@return the node the supply's negative lead touches} */
    int out();

    /**
     * A supply of known current: enters at one node and leaves at another.
     *
     * @param in node where the current enters the network
     * @param out node where it leaves
     * @param amperes the current, finite
     */
    record Current(int in, int out, double amperes) implements Feed {
        /**
         * Checks the values.
         *
         * @param in node where the current enters the network
         * @param out node where it leaves
         * @param amperes the current, finite
         * @throws IllegalArgumentException if the nodes are the same or the current is not a finite number
         */
        public Current {
            check(in, out, amperes, "A");
        }
    }

    /**
     * A supply of known voltage and no resistance: holds v<sub>in</sub> − v<sub>out</sub>.
     *
     * @param in node held higher when the voltage is positive
     * @param out the other node
     * @param volts the voltage, finite
     */
    record Voltage(int in, int out, double volts) implements Feed {
        /**
         * Checks the values.
         *
         * @param in node held higher when the voltage is positive
         * @param out the other node
         * @param volts the voltage, finite
         * @throws IllegalArgumentException if the nodes are the same or the voltage is not a finite number
         */
        public Voltage {
            check(in, out, volts, "V");
        }
    }

    /**
     * {@return current in at one node and out at another, in amperes}
     *
     * @param in node where the current enters
     * @param out node where it leaves
     * @param amperes the current
     */
    static Feed current(int in, int out, double amperes) {
        return new Current(in, out, amperes);
    }

    /**
     * {@return a voltage held between two nodes, in volts}
     *
     * @param in node held at the higher voltage where {@code volts} is positive
     * @param out the other node
     * @param volts voltage of {@code in} over {@code out}
     */
    static Feed voltage(int in, int out, double volts) {
        return new Voltage(in, out, volts);
    }

    private static void check(int in, int out, double value, String unit) {
        if (in < 0 || out < 0) {
            throw new IllegalArgumentException("feed at nodes " + in + " and " + out + ": nodes are numbered from 0");
        }
        if (in == out) {
            throw new IllegalArgumentException("feed in and out at node " + in + ": a feed needs two nodes");
        }
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(
                    "feed at nodes " + in + " and " + out + " of " + value + " " + unit + ": give a number");
        }
    }
}
