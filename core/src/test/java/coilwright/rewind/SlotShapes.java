package coilwright.rewind;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** Slots of every shape, at random. */
public final class SlotShapes {
    private SlotShapes() {}

    /** Slots within bounds of width and depth, mm; corners and openings up to what the shape takes. */
    public static Arbitrary<SlotShape> between(
            double leastWidth, double mostWidth, double leastDepth, double mostDepth) {
        Arbitrary<Double> width = Arbitraries.doubles().between(leastWidth, mostWidth);
        Arbitrary<Double> depth = Arbitraries.doubles().between(leastDepth, mostDepth);
        Arbitrary<Double> part = Arbitraries.doubles().between(0.1, 0.95);
        return Arbitraries.oneOf(
                Combinators.combine(width, depth).as(SlotShape.Rectangular::new),
                Combinators.combine(width, depth, part, part)
                        .as((w, d, p, r) -> new SlotShape.ParallelTooth(w, w * p, d, w * p / 2 * r)),
                Combinators.combine(width, depth).as(SlotShape.RoundBottom::new),
                Combinators.combine(width, depth, part, part)
                        .as((w, d, p, r) -> new SlotShape.SemiClosed(w * p, 0.5, w * 0.2, w, w * r, d, w * r * 0.4)));
    }
}
