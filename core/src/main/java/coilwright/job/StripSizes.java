package coilwright.job;

import coilwright.rewind.Conductor;
import java.util.Optional;

/**
 * Strip or bar copper.
 *
 * @param width over the copper
 * @param thickness over the copper
 * @param corner radius of its edges; sharp where empty
 * @param covering thickness of its covering on each side; bare where empty
 */
public record StripSizes(
        @Measure(Quantity.Kind.LENGTH) Quantity width,
        @Measure(Quantity.Kind.LENGTH) Quantity thickness,

        @Measure(value = Quantity.Kind.LENGTH, least = Measure.Least.ZERO)
        Optional<Quantity> corner,

        @Measure(value = Quantity.Kind.LENGTH, least = Measure.Least.ZERO)
        Optional<Quantity> covering) {
    /**
     * Checks the sizes together.
     *
     * @param width over the copper
     * @param thickness over the copper
     * @param corner radius of its edges; sharp where empty
     * @param covering thickness of its covering on each side; bare where empty
     * @throws IllegalArgumentException when the corners are rounder than the strip is thick
     */
    public StripSizes {
        conductor(width, thickness, corner, covering);
    }

    /** {@return the strip as a conductor} */
    public Conductor.Strip conductor() {
        return conductor(width, thickness, corner, covering);
    }

    private static Conductor.Strip conductor(
            Quantity width, Quantity thickness, Optional<Quantity> corner, Optional<Quantity> covering) {
        return new Conductor.Strip(
                width.in("mm"),
                thickness.in("mm"),
                corner.map(q -> q.in("mm")).orElse(0.0),
                covering.map(q -> q.in("mm")).orElse(0.0));
    }
}
