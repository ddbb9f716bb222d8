package coilwright.job;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What was wound, and what the finished winding measured.
 *
 * @param date when
 * @param by who
 * @param turns per coil as wound; as planned where empty
 * @param wire as wound; as planned where empty
 * @param copper mass of wire used
 * @param measured values of the whole winding
 * @param highPotential the high-potential test
 * @param polarity whether it turns, or its output is, the right way round
 * @param banding as it is now
 * @param varnish which, and how it was cured
 */
public record AsRewound(
        Optional<LocalDate> date,
        Optional<String> by,
        @Count(to = Job.MAX_TURNS) OptionalInt turns,
        Optional<WireChoice> wire,
        @Measure(Quantity.Kind.MASS) Optional<Quantity> copper,
        Optional<Measured> measured,
        Optional<HighPotentialDone> highPotential,
        Optional<Polarity> polarity,
        Optional<Banding> banding,
        Optional<String> varnish) {
    /** Sense of turning or of the output. */
    public enum Polarity {
        /** As it should be. */
        RIGHT,
        /** The other way round. */
        REVERSED
    }
}
