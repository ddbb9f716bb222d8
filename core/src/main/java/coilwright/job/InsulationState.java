package coilwright.job;

import java.util.Optional;

/**
 * One part of the insulation, what was found of it and what it needs.
 *
 * @param part such as slot liners, leads, end windings, wedges, commutator end rings
 * @param verdict what is to be done
 * @param note what is worn, burnt, soaked or missing, and where
 */
public record InsulationState(String part, Verdict verdict, Optional<String> note) {
    /** What a part of the insulation needs. */
    public enum Verdict {
        /** Nothing. */
        SOUND,
        /** Mending where it is: varnish, tape, sleeve. */
        TOUCH_UP,
        /** Replacing. */
        RENEW
    }
}
