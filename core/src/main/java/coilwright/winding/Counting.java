package coilwright.winding;

/**
 * How the numbers of a connection list lie on those of a plan.
 *
 * @param slotOfOne the list's number for the plan's slot 1
 * @param barOfOne the list's number for the plan's bar 1
 * @param mirrored whether the list counts counter-clockwise, or from the back end
 */
public record Counting(int slotOfOne, int barOfOne, boolean mirrored) {
    /**
     * {@return a slot of the plan in the list's numbers}
     *
     * @param armature core and commutator
     * @param planned the plan's number
     */
    public int slot(Armature armature, int planned) {
        return armature.wrapSlot(slotOfOne + (mirrored ? 1 - planned : planned - 1));
    }

    /**
     * {@return a bar of the plan in the list's numbers}
     *
     * @param armature core and commutator
     * @param planned the plan's number
     */
    public int bar(Armature armature, int planned) {
        return armature.wrapBar(barOfOne + (mirrored ? 1 - planned : planned - 1));
    }
}
