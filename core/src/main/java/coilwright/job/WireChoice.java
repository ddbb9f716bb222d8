package coilwright.job;

import coilwright.rewind.Conductor;
import coilwright.rewind.InsulationBuild;
import coilwright.rewind.RoundWire;
import coilwright.rewind.WireSize;
import coilwright.rewind.WireSizes;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What one turn is wound with: round wire by its size, or strip by its sizes.
 *
 * @param size of round wire, such as {@code 18 AWG}, {@code 0.85 mm} or {@code 19 SWG}
 * @param insulation covering of the round wire; empty where not known
 * @param overall diameter over the covering as measured; empty for the largest that the covering's standard allows
 * @param inHand wires side by side in one turn; one where empty
 * @param strip its sizes, in place of a size of round wire
 */
public record WireChoice(
        Optional<String> size,
        Optional<InsulationBuild> insulation,
        @Measure(Quantity.Kind.LENGTH) Optional<Quantity> overall,
        @Count(to = MOST_IN_HAND) OptionalInt inHand,
        Optional<StripSizes> strip) {
    /** Most wires in hand taken. */
    public static final int MOST_IN_HAND = 100;

    /**
     * Checks that it is one thing and that it is made.
     *
     * @param size of round wire, such as {@code 18 AWG}, {@code 0.85 mm} or {@code 19 SWG}
     * @param insulation covering of the round wire; empty where not known
     * @param overall diameter over the covering as measured; empty for the largest that the covering's standard allows
     * @param inHand wires side by side in one turn; one where empty
     * @param strip its sizes, in place of a size of round wire
     * @throws IllegalArgumentException when it is neither or both, when there is no such size, or when the covering is
     *     not made for it
     */
    public WireChoice {
        if (size.isPresent() == strip.isPresent()) {
            throw new IllegalArgumentException(
                    size.isPresent()
                            ? "gives both a size of round wire and a strip: keep the one that is wound"
                            : "gives neither size nor strip: write size: 18 AWG, or strip: {width: 6 mm, thickness: 2 mm}");
        }
        if (strip.isPresent() && (insulation.isPresent() || overall.isPresent() || inHand.isPresent())) {
            throw new IllegalArgumentException(
                    "insulation, overall and inHand are of round wire, but strip is given: give the strip's covering"
                            + " in strip.covering");
        }
        if (size.isPresent()) {
            round(size.get(), insulation, overall);
        }
    }

    /**
     * {@return round wire of a size in a covering, one in hand}
     *
     * @param size as {@link coilwright.rewind.WireSizes#parse} takes it
     * @param insulation the covering
     */
    public static WireChoice of(String size, InsulationBuild insulation) {
        return new WireChoice(
                Optional.of(size), Optional.of(insulation), Optional.empty(), OptionalInt.empty(), Optional.empty());
    }

    /** {@return the conductor; round wire of unknown covering is taken as bare} */
    public Conductor conductor() {
        return strip.<Conductor>map(StripSizes::conductor)
                .orElseGet(() -> new Conductor.Round(round(size.orElseThrow(), insulation, overall), inHand.orElse(1)));
    }

    /** {@return whether the thickness over the covering is known, so that a slot's fill can be told} */
    public boolean isCoveringKnown() {
        return strip.isPresent() || insulation.isPresent() || overall.isPresent();
    }

    private static RoundWire round(String size, Optional<InsulationBuild> insulation, Optional<Quantity> overall) {
        WireSize bare = WireSizes.parse(size);
        InsulationBuild build = insulation.orElse(InsulationBuild.BARE);
        return overall.isPresent()
                ? RoundWire.measured(bare, build, overall.get().in("mm"))
                : RoundWire.of(bare, build);
    }
}
