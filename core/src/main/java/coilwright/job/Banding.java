package coilwright.job;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * What holds the windings down against the pull of turning.
 *
 * @param material of the bands
 * @param bands number of bands
 * @param turns in each band
 * @param wire diameter of wire or cord, or thickness of tape
 * @param width of a band
 * @param note where the bands lie, clips, solder, insulation under them
 */
public record Banding(
        Material material,
        @Count(to = 100) OptionalInt bands,
        @Count(to = 10_000) OptionalInt turns,
        @Measure(Quantity.Kind.LENGTH) Optional<Quantity> wire,
        @Measure(Quantity.Kind.LENGTH) Optional<Quantity> width,
        Optional<String> note) {
    /** What bands are made of. */
    public enum Material {
        /** No banding: wedges hold the coils. */
        NONE,
        /** Tinned steel wire, soldered under clips. */
        STEEL_WIRE,
        /** Glass tape with resin. */
        GLASS_TAPE,
        /** Cord. */
        CORD
    }
}
