package coilwright.rewind;

import java.util.Objects;
import java.util.Optional;

/**
 * A covered round wire.
 *
 * @param size bare
 * @param build covering
 * @param overallDiameterMm diameter over the covering, mm
 * @param overallSource where that comes from
 */
public record RoundWire(WireSize size, InsulationBuild build, double overallDiameterMm, Source overallSource) {
    /**
     * Checks that the covering does not shrink the wire.
     *
     * @param size bare
     * @param build covering
     * @param overallDiameterMm diameter over the covering, mm
     * @param overallSource where that comes from
     * @throws IllegalArgumentException when the overall diameter is under the bare one
     */
    public RoundWire {
        Objects.requireNonNull(size, "size");
        Objects.requireNonNull(build, "build");
        Objects.requireNonNull(overallSource, "overallSource");
        if (!(overallDiameterMm >= size.bareDiameterMm())) {
            throw new IllegalArgumentException("overall diameter is " + Format.number(overallDiameterMm)
                    + " mm, under the bare " + Format.number(size.bareDiameterMm())
                    + " mm of " + size.label() + ": one of the two is wrong");
        }
    }

    /**
     * {@return a wire with the largest overall diameter of its build}
     *
     * @param size the bare size
     * @param build the covering
     * @throws IllegalArgumentException when the build is not made, or not known, for the size
     */
    public static RoundWire of(WireSize size, InsulationBuild build) {
        Optional<InsulationBuild.Overall> overall = build.overall(size);
        if (overall.isEmpty()) {
            throw new IllegalArgumentException("no overall diameter is known for " + size.label() + " in "
                    + build.word() + ": measure it over the covering, or take another build");
        }
        return new RoundWire(
                size, build, overall.get().diameterMm(), overall.get().source());
    }

    /**
     * {@return the same wire as measured over its covering}
     *
     * @param overallMm over the covering, mm
     */
    public RoundWire measuredOverall(double overallMm) {
        return measured(size, build, overallMm);
    }

    /**
     * {@return a wire measured over its covering, whether or not its build is made for the size}
     *
     * @param size the bare size
     * @param build the covering
     * @param overallMm over the covering, mm
     * @throws IllegalArgumentException when the overall diameter is under the bare one
     */
    public static RoundWire measured(WireSize size, InsulationBuild build, double overallMm) {
        return new RoundWire(size, build, overallMm, new Source("measured", "", Trust.READ));
    }
}
