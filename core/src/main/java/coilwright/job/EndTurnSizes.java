package coilwright.job;

import coilwright.rewind.EndTurn;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * Sizes of the end turns, for a mean turn that is reckoned and not measured.
 *
 * @param form how the coils go from slot to slot
 * @param straight straight part out of each slot
 * @param legAngle angle between a leg and the core's end face, degrees, 0 to under 80; of a diamond coil only
 * @param nose length of the nose; of a diamond coil only
 */
public record EndTurnSizes(
        EndTurnForm form,

        @Measure(value = Quantity.Kind.LENGTH, least = Measure.Least.ZERO)
        Quantity straight,

        Optional<BigDecimal> legAngle,

        @Measure(value = Quantity.Kind.LENGTH, least = Measure.Least.ZERO)
        Optional<Quantity> nose) {
    /**
     * Checks that the form's own sizes are given.
     *
     * @param form how the coils go from slot to slot
     * @param straight straight part out of each slot
     * @param legAngle angle between a leg and the core's end face, degrees, 0 to under 80; of a diamond coil only
     * @param nose length of the nose; of a diamond coil only
     * @throws IllegalArgumentException when they are not, or when one is out of range
     */
    public EndTurnSizes {
        boolean diamond = form == EndTurnForm.DIAMOND;
        if (diamond && legAngle.isEmpty()) {
            throw new IllegalArgumentException(
                    "is a diamond coil without legAngle: measure the angle between a leg and the core's end face,"
                            + " commonly 30 to 45");
        }
        if (!diamond && (legAngle.isPresent() || nose.isPresent())) {
            throw new IllegalArgumentException("gives legAngle or nose, but hand-wound end turns have neither: leave"
                    + " them out, or choose form: diamond");
        }
        endTurn(form, straight, legAngle, nose);
    }

    /** {@return the end turn in millimetres} */
    public EndTurn endTurn() {
        return endTurn(form, straight, legAngle, nose);
    }

    private static EndTurn endTurn(
            EndTurnForm form, Quantity straight, Optional<BigDecimal> legAngle, Optional<Quantity> nose) {
        return switch (form) {
            case HAND_WOUND -> new EndTurn.HandWound(straight.in("mm"));
            case DIAMOND ->
                new EndTurn.Diamond(
                        straight.in("mm"),
                        legAngle.map(BigDecimal::doubleValue).orElse(0.0),
                        nose.map(q -> q.in("mm")).orElse(0.0));
        };
    }
}
