package coilwright.job;

import coilwright.winding.Direction;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What is to be wound, as far as it differs from what was found.
 *
 * @param volts planned voltage
 * @param speed planned speed
 * @param turns per coil
 * @param wire planned
 * @param type another kind of winding on the same core: lap or wave
 * @param plex of it; 1 where empty
 * @param direction of it; the better one where empty
 */
public record Plan(
        @Measure(Quantity.Kind.VOLTAGE) Optional<Quantity> volts,
        @Measure(Quantity.Kind.SPEED) Optional<Quantity> speed,
        @Count(to = Job.MAX_TURNS) OptionalInt turns,
        Optional<WireChoice> wire,
        Optional<WindingType> type,
        @Count(to = WindingSpec.MAX_PLEX) OptionalInt plex,
        Optional<Direction> direction) {
    /**
     * Checks the kind of winding.
     *
     * @param volts planned voltage
     * @param speed planned speed
     * @param turns per coil
     * @param wire planned
     * @param type another kind of winding on the same core: lap or wave
     * @param plex of it; 1 where empty
     * @param direction of it; the better one where empty
     * @throws IllegalArgumentException when it is neither lap nor wave, or plex or direction is given without it
     */
    public Plan {
        type.ifPresent(t -> {
            if (t != WindingType.LAP && t != WindingType.WAVE) {
                throw new IllegalArgumentException("type is " + t.word()
                        + ", but a plan is for lap or wave: write another job file for other windings");
            }
        });
        if (type.isEmpty() && (plex.isPresent() || direction.isPresent())) {
            throw new IllegalArgumentException("gives plex or direction without type: write type: lap or type: wave");
        }
    }

    /** {@return no change} */
    public static Plan same() {
        return new Plan(
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                Optional.empty());
    }
}
