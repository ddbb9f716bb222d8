package coilwright.winding;

import java.util.OptionalInt;

/**
 * One coil in its slots with its leads on the bars. The positive sense of its voltage is from its top lead to its
 * bottom lead.
 *
 * @param number its number, that of the position of its top side (wave coils of a frog-leg winding go on from Q)
 * @param set index of its {@link CoilSet} within the winding
 * @param top the side next to the air gap
 * @param bottom the side at the floor
 * @param topBar bar of the top lead, 1..K; empty where it lands on none
 * @param bottomBar bar of the bottom lead, 1..K; empty where it lands on none
 */
public record Coil(int number, int set, CoilSide top, CoilSide bottom, OptionalInt topBar, OptionalInt bottomBar) {
    /** {@return whether both leads land on bars, so that the coil can carry current} */
    public boolean isLive() {
        return topBar.isPresent() && bottomBar.isPresent();
    }

    /** {@return whether neither lead lands on a bar: a dead (dummy) coil} */
    public boolean isDead() {
        return topBar.isEmpty() && bottomBar.isEmpty();
    }

    /**
     * {@return whether a lead of this coil lands on the bar}
     *
     * @param bar its number
     */
    public boolean touches(int bar) {
        return (topBar.isPresent() && topBar.getAsInt() == bar)
                || (bottomBar.isPresent() && bottomBar.getAsInt() == bar);
    }

    /**
     * {@return whether a side of this coil lies in the slot}
     *
     * @param slot its number
     */
    public boolean lies(int slot) {
        return top.slot() == slot || bottom.slot() == slot;
    }
}
