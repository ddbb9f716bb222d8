package coilwright.winding;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A winding as the textbooks give it, by back and front pitch in conductors. One conductor is one coil side, whatever
 * its turns: top sides are odd, bottom sides even, Z = 2·K of them. The back pitch leads from the top side of a coil
 * to its own bottom side, away from the commutator; the front pitch from there, through a bar, to the top side of the
 * next coil.
 *
 * <p>Sources: {@link References#ROLLS_ROYCE_NOTES}, {@link References#THERAJA}, {@link References#HAWKINS}.
 *
 * @param type lap or wave
 * @param plex m, 1 to {@value WindingSpec#MAX_PLEX}
 * @param conductors Z, coil sides in all, 4 to 8000
 * @param poles P, even, 2 to {@value Armature#MAX_POLES}
 * @param back Yb, conductors counted onwards, at least 1
 * @param front Yf, conductors, with its sign: negative where it leads backwards, as in any lap winding
 */
public record ConductorPitches(WindingType type, int plex, int conductors, int poles, int back, int front) {
    static final String EVEN_CONDUCTORS = "conductors-even";
    static final String LAP_PITCHES = "lap-pitches-differ";
    static final String WAVE_PITCHES = "wave-average-pitch";
    static final String BACK_IN_RANGE = "back-pitch-in-range";

    /**
     * Checks each number by itself.
     *
     * @param type lap or wave
     * @param plex m, 1 to {@value WindingSpec#MAX_PLEX}
     * @param conductors Z, coil sides in all, 4 to 8000
     * @param poles P, even, 2 to {@value Armature#MAX_POLES}
     * @param back Yb, conductors counted onwards, at least 1
     * @param front Yf, conductors, with its sign: negative where it leads backwards, as in any lap winding
     * @throws IllegalArgumentException when the type is neither lap nor wave, or a number is out of its range
     */
    public ConductorPitches {
        Objects.requireNonNull(type, "type");
        if (type != WindingType.LAP && type != WindingType.WAVE) {
            throw new IllegalArgumentException(
                    "back and front pitch describe a lap or a wave winding, not " + type.word());
        }
        if (plex < 1 || plex > WindingSpec.MAX_PLEX) {
            throw new IllegalArgumentException(
                    "plex is " + plex + ", but must be from 1 (simplex) to " + WindingSpec.MAX_PLEX);
        }
        if (conductors < 4 || conductors > 2 * Armature.MAX_BARS) {
            throw new IllegalArgumentException(
                    "conductors is " + conductors + ", but must be from 4 to " + 2 * Armature.MAX_BARS);
        }
        Armature.of(2, 2, poles);
        if (back < 1 || back > 2 * Armature.MAX_BARS) {
            throw new IllegalArgumentException("back pitch is " + back + ", but must be from 1 to "
                    + 2 * Armature.MAX_BARS + ": it is counted onwards from the top side");
        }
        if (Math.abs((long) front) > 2 * Armature.MAX_BARS) {
            throw new IllegalArgumentException("front pitch is " + front + ", but must be from -"
                    + 2 * Armature.MAX_BARS + " to " + 2 * Armature.MAX_BARS);
        }
    }

    /**
     * {@return a simplex lap winding from the pitches as most books print them}
     *
     * @param conductors coil sides on the armature
     * @param poles main poles
     * @param back back pitch, conductors
     * @param printedFront size of the front pitch, which leads backwards
     */
    public static ConductorPitches lap(int conductors, int poles, int back, int printedFront) {
        return new ConductorPitches(WindingType.LAP, 1, conductors, poles, back, -printedFront);
    }

    /**
     * {@return a simplex wave winding, both pitches counted onwards}
     *
     * @param conductors coil sides on the armature
     * @param poles main poles
     * @param back back pitch, conductors
     * @param front front pitch, conductors
     */
    public static ConductorPitches wave(int conductors, int poles, int back, int front) {
        return new ConductorPitches(WindingType.WAVE, 1, conductors, poles, back, front);
    }

    /**
     * {@return the same pitches for another plex}
     *
     * @param other 1 for simplex
     */
    public ConductorPitches withPlex(int other) {
        return new ConductorPitches(type, other, conductors, poles, back, front);
    }

    /** {@return Y = Yb + Yf with its sign, conductors; twice the commutator pitch} */
    public int resultant() {
        return back + front;
    }

    /**
     * {@return every rule of the books that these pitches break, with what would do instead; empty where they make a
     * winding}
     */
    public List<Finding> check() {
        List<Finding> out = new ArrayList<>();
        if (conductors % 2 != 0) {
            out.add(Finding.error(
                    EVEN_CONDUCTORS,
                    conductors + " conductors make no whole number of coils, as each coil has two sides",
                    conductors - 1 + " or " + (conductors + 1) + " would do",
                    References.HAWKINS));
        }
        if (4 * plex > conductors) {
            out.add(Finding.error(
                    LeadsApart.ID,
                    Words.article(Words.plex(plex)) + " winding makes at least " + 2 * plex
                            + " paths, more than the coils that " + conductors + " conductors make",
                    "plex " + conductors / 4 + " or less would do",
                    References.ARITHMETIC));
        }
        parity(out, "back", back, "conductor 1, a top side, with conductor " + (1 + back) + ", a top side too");
        parity(
                out,
                "front",
                front,
                "one bottom side with another, " + Math.abs(front) + (front < 0 ? " conductors back" : " further on"));
        if (back % 2 != 0 && (back < 3 || back > conductors - 1)) {
            out.add(Finding.error(
                    BACK_IN_RANGE,
                    back < 3
                            ? "back pitch " + back + " joins a top side with the bottom side beneath it"
                            : "back pitch " + back + " leads once round " + conductors + " conductors and on",
                    "about " + odd(conductors / poles) + " (one pole pitch) would do",
                    References.ARITHMETIC));
        }
        if (back % 2 != 0 && front % 2 != 0) {
            if (type == WindingType.LAP) {
                checkLap(out);
            } else {
                checkWave(out);
            }
        }
        return List.copyOf(out);
    }

    private static int odd(int about) {
        return Math.max(3, about / 2 * 2 + 1);
    }

    private static void parity(List<Finding> out, String end, int pitch, String joins) {
        if (pitch % 2 == 0) {
            int size = Math.abs(pitch);
            out.add(Finding.error(
                    ConductorParity.ID,
                    end + " pitch " + size + " is even, so it would join " + joins,
                    (size > 1 ? size - 1 + " or " : "") + (size + 1) + " would do",
                    References.HAWKINS));
        }
    }

    private void checkLap(List<Finding> out) {
        int y = resultant();
        if (Math.abs(y) == 2 * plex) {
            return;
        }
        int size = Math.abs(front);
        String found = front > 0
                ? "front pitch " + front + " leads onwards, but a lap winding comes back at the front"
                : back == size
                        ? "back pitch and front pitch are both " + back
                                + ", so the winding would come back to its own top side"
                        : "back pitch " + back + " and front pitch " + size + " differ by " + Math.abs(y);
        out.add(Finding.error(
                LAP_PITCHES,
                found + "; those of " + Words.article(Words.plex(plex)) + " lap winding differ by " + 2 * plex,
                "back pitch " + back + " with front pitch " + (back > 2 * plex ? back - 2 * plex + " or " : "")
                        + (back + 2 * plex) + " would do",
                References.ROLLS_ROYCE_NOTES));
    }

    private void checkWave(List<Finding> out) {
        long whole = (long) poles / 2 * resultant();
        if (Math.abs(whole - conductors) == 2L * plex) {
            return;
        }
        String reason = "average pitch " + resultant() / 2 + " times " + poles + " poles is " + whole
                + (whole == conductors
                        ? ", all the conductors there are, so that the winding closes after " + poles / 2 + " coils"
                        : "; there are " + conductors + " conductors")
                + "; in " + Words.article(Words.plex(plex)) + " wave winding they differ by " + 2 * plex;
        out.add(Finding.error(WAVE_PITCHES, reason, waveWayOut(whole), References.ROLLS_ROYCE_NOTES));
    }

    private String waveWayOut(long whole) {
        List<String> ways = new ArrayList<>();
        List<String> averages = new ArrayList<>();
        for (int sign = -1; sign <= 1; sign += 2) {
            int product = conductors + sign * 2 * plex;
            if (product > 0 && product % poles == 0) {
                averages.add(Integer.toString(product / poles));
            }
        }
        if (!averages.isEmpty()) {
            ways.add("an average pitch of " + String.join(" or ", averages));
        }
        if (whole >= 2L * plex && whole + 2L * plex > back) {
            boolean less = whole >= 6L * plex && whole - 2L * plex > back;
            String progressive = less ? whole - 2L * plex + " (progressive) or " : "";
            ways.add("with these pitches " + progressive + (whole + 2L * plex) + " (retrogressive) conductors");
        }
        return ways.isEmpty()
                ? "back and front pitch must both lead onwards, and the conductors be a multiple of " + poles + ", "
                        + 2 * plex + " more or less"
                : String.join("; or ", ways) + " would do";
    }

    /** +m or −m as counted: progressive where the winding lands beyond the bar it started from. */
    private Direction direction() {
        boolean progressive = type == WindingType.LAP ? resultant() > 0 : (long) poles / 2 * resultant() > conductors;
        return progressive ? Direction.PROGRESSIVE : Direction.RETROGRESSIVE;
    }

    private void require() {
        List<Finding> broken = check();
        if (!broken.isEmpty()) {
            throw new ImpossibleWindingException(broken);
        }
    }

    /**
     * {@return the same winding by this library's terms: y1 = (Yb − 1)/2 positions, yc = (Yb + Yf)/2 bars}
     *
     * @throws ImpossibleWindingException when {@link #check} finds a rule broken
     */
    public WindingSpec.Regular spec() {
        require();
        return new WindingSpec.Regular(type, plex, direction(), CoilSpan.ofPositions((back - 1) / 2), List.of(), 0);
    }

    /**
     * {@return the core with one bar a coil, K = Z/2}
     *
     * @param slots in which the conductors lie
     * @throws ImpossibleWindingException when {@link #check} finds a rule broken
     * @throws IllegalArgumentException when a count is out of the range of {@link Armature}
     */
    public Armature armature(int slots) {
        require();
        return Armature.of(slots, conductors / 2, poles);
    }
}
