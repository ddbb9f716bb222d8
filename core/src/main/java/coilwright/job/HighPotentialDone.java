package coilwright.job;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * A high-potential test that was done.
 *
 * @param volts applied, r.m.s. where alternating
 * @param current alternating or direct
 * @param seconds that the voltage was held; empty where not noted
 * @param result passed or failed
 */
public record HighPotentialDone(
        @Measure(Quantity.Kind.VOLTAGE) Quantity volts,
        Optional<Current> current,
        @Count(to = 3600) OptionalInt seconds,
        Result result) {
    /** Kind of current. */
    public enum Current {
        /** Alternating. */
        AC,
        /** Direct. */
        DC
    }

    /** How it ended. */
    public enum Result {
        /** The insulation held. */
        PASSED,
        /** It broke down. */
        FAILED
    }
}
