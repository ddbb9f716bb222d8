package coilwright.job;

import coilwright.rewind.CoreSize;
import coilwright.rewind.MeanTurn;
import java.util.Optional;

/**
 * The core as measured, with the length of a turn on it.
 *
 * @param length stack length along the shaft, vents and end insulation included
 * @param diameter over the teeth
 * @param shaft diameter over the shaft and its insulation at the end turns
 * @param slotDepth from the core's surface to the slot's floor; that of the slot's shape where empty
 * @param slot section of a slot
 * @param endTurn sizes of the end turns
 * @param meanTurn length of a turn measured on the old coil, which takes over from any reckoning
 * @param leads both leads of a coil together, from the slots to the risers
 */
public record CoreSizes(
        @Measure(Quantity.Kind.LENGTH) Optional<Quantity> length,
        @Measure(Quantity.Kind.LENGTH) Optional<Quantity> diameter,

        @Measure(value = Quantity.Kind.LENGTH, least = Measure.Least.ZERO)
        Optional<Quantity> shaft,

        @Measure(Quantity.Kind.LENGTH) Optional<Quantity> slotDepth,
        Optional<SlotSizes> slot,
        Optional<EndTurnSizes> endTurn,
        @Measure(Quantity.Kind.LENGTH) Optional<Quantity> meanTurn,

        @Measure(value = Quantity.Kind.LENGTH, least = Measure.Least.ZERO)
        Optional<Quantity> leads) {
    /**
     * Checks the sizes together.
     *
     * @param length stack length along the shaft, vents and end insulation included
     * @param diameter over the teeth
     * @param shaft diameter over the shaft and its insulation at the end turns
     * @param slotDepth from the core's surface to the slot's floor; that of the slot's shape where empty
     * @param slot section of a slot
     * @param endTurn sizes of the end turns
     * @param meanTurn length of a turn measured on the old coil, which takes over from any reckoning
     * @param leads both leads of a coil together, from the slots to the risers
     * @throws IllegalArgumentException when the slots leave no room for the shaft, or the slot's depth is given twice
     *     and differently
     */
    public CoreSizes {
        if (slot.isPresent() && slotDepth.isPresent()) {
            double shape = slot.get().slotShape().depthMm();
            if (Math.abs(slotDepth.get().in("mm") - shape) > 0.02 * shape) {
                throw new IllegalArgumentException("slotDepth is " + slotDepth.get()
                        + ", but the sizes of the slot come to another depth: leave slotDepth out, or measure again");
            }
        }
        size(length, diameter, shaft, slotDepth, slot);
    }

    /** {@return the core in millimetres, where length, diameter and depth are known} */
    public Optional<CoreSize> size() {
        return size(length, diameter, shaft, slotDepth, slot);
    }

    private static Optional<CoreSize> size(
            Optional<Quantity> length,
            Optional<Quantity> diameter,
            Optional<Quantity> shaft,
            Optional<Quantity> slotDepth,
            Optional<SlotSizes> slot) {
        if (length.isEmpty() || diameter.isEmpty() || (slotDepth.isEmpty() && slot.isEmpty())) {
            return Optional.empty();
        }
        double deep = slotDepth.isPresent()
                ? slotDepth.get().in("mm")
                : slot.get().slotShape().depthMm();
        return Optional.of(new CoreSize(
                length.get().in("mm"),
                diameter.get().in("mm"),
                deep,
                shaft.isPresent() ? shaft.get().in("mm") : 0));
    }

    /**
     * {@return mean length of a turn: as measured, or reckoned where core and end turn are known}
     *
     * @param slots of the core
     * @param throwSlots slots spanned by a coil
     */
    public Optional<MeanTurn> meanTurn(int slots, int throwSlots) {
        if (meanTurn.isPresent()) {
            return Optional.of(MeanTurn.measured(meanTurn.get().in("mm")));
        }
        Optional<CoreSize> core = size();
        return core.isEmpty() || endTurn.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        MeanTurn.of(core.get(), slots, throwSlots, endTurn.get().endTurn()));
    }
}
