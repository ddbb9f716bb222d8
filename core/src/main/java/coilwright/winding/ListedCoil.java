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
    /** A coil with both leads on bars. */
    public static ListedCoil of(int coil, int topSlot, int bottomSlot, int topBar, int bottomBar) {
        return new ListedCoil(coil, topSlot, bottomSlot, OptionalInt.of(topBar), OptionalInt.of(bottomBar));
    }

    /** A coil with both leads cut off. */
    public static ListedCoil dead(int coil, int topSlot, int bottomSlot) {
        return new ListedCoil(coil, topSlot, bottomSlot, OptionalInt.empty(), OptionalInt.empty());
    }
}
