package coilwright.winding;

import java.util.Objects;

/**
 * The core and the commutator, without the winding.
 *
 * @param slots number of slots, 2 to {@value #MAX_SLOTS}
 * @param bars number of commutator bars, 2 to {@value #MAX_BARS}
 * @param poles number of main poles, even, 2 to {@value #MAX_POLES}
 * @param slotOneInLineWith what the centre line of slot 1 meets at the commutator
 */
public record Armature(int slots, int bars, int poles, SlotAlignment slotOneInLineWith) {
    /** Largest number of slots taken. */
    public static final int MAX_SLOTS = 1000;

    /** Largest number of bars taken. */
    public static final int MAX_BARS = 4000;

    /** Largest number of poles taken. */
    public static final int MAX_POLES = 100;

    /**
     * Checks the counts.
     *
     * @param slots number of slots, 2 to {@value #MAX_SLOTS}
     * @param bars number of commutator bars, 2 to {@value #MAX_BARS}
     * @param poles number of main poles, even, 2 to {@value #MAX_POLES}
     * @param slotOneInLineWith what the centre line of slot 1 meets at the commutator
     * @throws IllegalArgumentException when a count is out of its range or the number of poles is odd
     */
    public Armature {
        inRange("slots", slots, MAX_SLOTS);
        inRange("bars", bars, MAX_BARS);
        inRange("poles", poles, MAX_POLES);
        if (poles % 2 != 0) {
            throw new IllegalArgumentException("poles is " + poles
                    + ", but poles come in pairs of north and south: "
                    + (poles - 1) + " or " + (poles + 1) + " would do");
        }
        Objects.requireNonNull(slotOneInLineWith, "slotOneInLineWith");
    }

    /**
     * {@return an armature whose slot 1 is in line with bar 1}
     *
     * @param slots slots in the core
     * @param bars bars on the commutator
     * @param poles main poles, an even number
     */
    public static Armature of(int slots, int bars, int poles) {
        return new Armature(slots, bars, poles, SlotAlignment.BAR);
    }

    private static void inRange(String what, int value, int max) {
        if (value < 2 || value > max) {
            throw new IllegalArgumentException(
                    what + " is " + value + ", but must be from 2 to " + max + ": count them again");
        }
    }

    /** {@return pole pairs p, half the number of poles} */
    public int polePairs() {
        return poles / 2;
    }

    /** {@return pole pitch in slots, S/P; often not whole} */
    public double polePitchSlots() {
        return (double) slots / poles;
    }

    /** {@return pole pitch in bars, K/P; often not whole} */
    public double polePitchBars() {
        return (double) bars / poles;
    }

    /** {@return angle from one slot to the next, degrees} */
    public double slotAngle() {
        return 360.0 / slots;
    }

    /** {@return angle from one bar to the next, degrees} */
    public double barAngle() {
        return 360.0 / bars;
    }

    /**
     * {@return angle of a slot's centre line from slot 1's, clockwise from the commutator end, degrees, 0 to under 360}
     *
     * @param slot 1 to {@link #slots()}
     */
    public double slotCentre(int slot) {
        return (slot - 1) * 360.0 / slots;
    }

    /**
     * {@return angle of a bar's middle from slot 1's centre line, clockwise from the commutator end, degrees, 0 to
     * under 360}
     *
     * @param bar 1 to {@link #bars()}
     */
    public double barCentre(int bar) {
        double half = slotOneInLineWith == SlotAlignment.MICA ? 0.5 : 0.0;
        return (bar - 1 + half) * 360.0 / bars;
    }

    /**
     * Brings any whole number of bars into 1..K by going round.
     *
     * @param bar any whole number
     * @return the bar it comes to, 1 to K
     */
    public int wrapBar(int bar) {
        return 1 + Math.floorMod(bar - 1, bars);
    }

    /**
     * Brings any whole number of slots into 1..S by going round.
     *
     * @param slot any whole number
     * @return the slot it comes to, 1 to S
     */
    public int wrapSlot(int slot) {
        return 1 + Math.floorMod(slot - 1, slots);
    }
}
