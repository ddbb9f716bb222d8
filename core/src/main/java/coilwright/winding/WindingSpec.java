package coilwright.winding;

import java.util.List;
import java.util.TreeSet;

/** What is to be wound, before it is known whether it can be. */
public sealed interface WindingSpec {
    /** Largest plex taken. */
    int MAX_PLEX = 12;

    /** {@return the kind of winding} */
    WindingType type();

    /**
     * A lap or wave winding.
     *
     * @param type {@link WindingType#LAP} or {@link WindingType#WAVE}
     * @param plex m: 1 simplex, 2 duplex, 3 triplex, …
     * @param direction progressive or retrogressive
     * @param span reach of a coil at the back
     * @param deadCoils numbers of the coils that lie in the slots with their leads cut off, ascending
     * @param leadOffset bars by which all leads are shifted from slot 1's own bar, any sign
     */
    record Regular(
            WindingType type, int plex, Direction direction, CoilSpan span, List<Integer> deadCoils, int leadOffset)
            implements WindingSpec {
        /**
         * Checks each field by itself.
         *
         * @param type {@link WindingType#LAP} or {@link WindingType#WAVE}
         * @param plex m: 1 simplex, 2 duplex, 3 triplex, …
         * @param direction progressive or retrogressive
         * @param span reach of a coil at the back
         * @param deadCoils numbers of the coils that lie in the slots with their leads cut off, ascending
         * @param leadOffset bars by which all leads are shifted from slot 1's own bar, any sign
         * @throws IllegalArgumentException when the type is neither lap nor wave, the plex is out of range, or a dead
         *     coil is named twice
         */
        public Regular {
            if (type != WindingType.LAP && type != WindingType.WAVE) {
                throw new IllegalArgumentException("a regular winding is lap or wave, not " + type.word());
            }
            checkPlex(plex);
            var sorted = new TreeSet<>(deadCoils);
            if (sorted.size() != deadCoils.size()) {
                throw new IllegalArgumentException(
                        "deadCoils names a coil twice: " + deadCoils + "; name each dead coil once");
            }
            deadCoils = List.copyOf(sorted);
            checkOffset(leadOffset);
        }

        /**
         * {@return the same winding with other dead coils}
         *
         * @param dead their numbers
         */
        public Regular withDeadCoils(List<Integer> dead) {
            return new Regular(type, plex, direction, span, dead, leadOffset);
        }

        /**
         * {@return the same winding with another lead offset}
         *
         * @param offset bars by which all leads are shifted, clockwise
         */
        public Regular withLeadOffset(int offset) {
            return new Regular(type, plex, direction, span, deadCoils, offset);
        }

        /**
         * {@return the same winding with another coil span}
         *
         * @param other span at the back
         */
        public Regular withSpan(CoilSpan other) {
            return new Regular(type, plex, direction, other, deadCoils, leadOffset);
        }
    }

    /**
     * A frog-leg winding: a lap winding of plex m and a wave winding of plex p·m on the same slots and bars, in four
     * layers.
     *
     * @param plex m of the lap part
     * @param direction of the lap part; the wave part goes the other way
     * @param span reach of a lap coil at the back; the wave coil spans the rest of two pole pitches
     * @param leadOffset of the lap part, in bars
     */
    record FrogLeg(int plex, Direction direction, CoilSpan span, int leadOffset) implements WindingSpec {
        /**
         * Checks each field by itself.
         *
         * @param plex m of the lap part
         * @param direction of the lap part; the wave part goes the other way
         * @param span reach of a lap coil at the back; the wave coil spans the rest of two pole pitches
         * @param leadOffset of the lap part, in bars
         * @throws IllegalArgumentException when the plex or lead offset is out of range
         */
        public FrogLeg {
            checkPlex(plex);
            checkOffset(leadOffset);
        }

        @Override
        public WindingType type() {
            return WindingType.FROG_LEG;
        }
    }

    /**
     * Any connection list.
     *
     * @param coils the coils as found, at least one
     */
    record Listed(List<ListedCoil> coils) implements WindingSpec {
        /**
         * Copies the list.
         *
         * @param coils the coils as found, at least one
         * @throws IllegalArgumentException when the list is empty
         */
        public Listed {
            coils = List.copyOf(coils);
            if (coils.isEmpty()) {
                throw new IllegalArgumentException(
                        "a listed winding has no coils: list each as {coil, topSlot, bottomSlot, topBar, bottomBar}");
            }
        }

        @Override
        public WindingType type() {
            return WindingType.LISTED;
        }
    }

    /**
     * The trade's word for a plex: simplex, duplex, triplex, quadruplex, 5-plex, …
     *
     * @param m 1 or more
     * @return the word
     */
    static String plexWord(int m) {
        return switch (m) {
            case 1 -> "simplex";
            case 2 -> "duplex";
            case 3 -> "triplex";
            case 4 -> "quadruplex";
            default -> m + "-plex";
        };
    }

    private static void checkPlex(int plex) {
        if (plex < 1 || plex > MAX_PLEX) {
            throw new IllegalArgumentException("plex is " + plex + ", but must be from 1 (simplex) to " + MAX_PLEX);
        }
    }

    private static void checkOffset(int leadOffset) {
        if (Math.abs((long) leadOffset) > Armature.MAX_BARS) {
            throw new IllegalArgumentException("leadOffset is " + leadOffset + ", but must be from -"
                    + Armature.MAX_BARS + " to " + Armature.MAX_BARS + " bars");
        }
    }

    /**
     * {@return a lap winding of usual span, to be changed by the {@code with} methods}
     *
     * @param plex 1 for simplex
     * @param direction progressive or retrogressive
     */
    static Regular lap(int plex, Direction direction) {
        return new Regular(WindingType.LAP, plex, direction, CoilSpan.usual(), List.of(), 0);
    }

    /**
     * {@return a wave winding of usual span, to be changed by the {@code with} methods}
     *
     * @param plex 1 for simplex
     * @param direction progressive or retrogressive
     */
    static Regular wave(int plex, Direction direction) {
        return new Regular(WindingType.WAVE, plex, direction, CoilSpan.usual(), List.of(), 0);
    }
}
