package coilwright.winding;

import java.util.OptionalInt;

/**
 * One line of a connection list, as found on an armature or as planned.
 *
 * @param coil its number, at least 1
 * @param topSlot slot of the side next to the air gap
 * @param bottomSlot slot of the side at the slot's floor
 * @param topBar bar of the top side's lead; empty where the lead lands on none
 * @param bottomBar bar of the bottom side's lead; empty where the lead lands on none
 */
public record ListedCoil(int coil, int topSlot, int bottomSlot, OptionalInt topBar, OptionalInt bottomBar) {
    /**
     * {@return a coil with both leads on bars}
     *
     * @param coil its number
     * @param topSlot slot of its top side
     * @param bottomSlot slot of its bottom side
     * @param topBar bar of its top lead
     * @param bottomBar bar of its bottom lead
     */
    public static ListedCoil of(int coil, int topSlot, int bottomSlot, int topBar, int bottomBar) {
        return new ListedCoil(coil, topSlot, bottomSlot, OptionalInt.of(topBar), OptionalInt.of(bottomBar));
    }

    /**
     * {@return where a coil lies and lands}
     *
     * @param coil of a winding
     */
    public static ListedCoil of(Coil coil) {
        return new ListedCoil(coil.number(), coil.top().slot(), coil.bottom().slot(), coil.topBar(), coil.bottomBar());
    }

    /**
     * {@return a coil with both leads cut off}
     *
     * @param coil its number
     * @param topSlot slot of its top side
     * @param bottomSlot slot of its bottom side
     */
    public static ListedCoil dead(int coil, int topSlot, int bottomSlot) {
        return new ListedCoil(coil, topSlot, bottomSlot, OptionalInt.empty(), OptionalInt.empty());
    }

    /** {@return whether neither lead lands on a bar: dead, or not yet connected} */
    public boolean isOffBars() {
        return topBar.isEmpty() && bottomBar.isEmpty();
    }

    /**
     * {@return how alike two coils lie and land, whatever their numbers: two for each slot and bar that is the same, one
     * for each bar that is the other's other; 8 at most}
     *
     * @param other of the same armature
     */
    public int likeness(ListedCoil other) {
        return (topSlot == other.topSlot ? 2 : 0)
                + (bottomSlot == other.bottomSlot ? 2 : 0)
                + (topBar.equals(other.topBar) ? 2 : 0)
                + (bottomBar.equals(other.bottomBar) ? 2 : 0)
                + (topBar.isPresent() && topBar.equals(other.bottomBar) ? 1 : 0)
                + (bottomBar.isPresent() && bottomBar.equals(other.topBar) ? 1 : 0);
    }

    /**
     * {@return the same under another number}
     *
     * @param number of the coil
     */
    public ListedCoil withNumber(int number) {
        return new ListedCoil(number, topSlot, bottomSlot, topBar, bottomBar);
    }
}
