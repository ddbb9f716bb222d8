package coilwright.job;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What was found before anything was stripped, beside the winding data that have sections of their own.
 *
 * @param date when
 * @param by who
 * @param measured values of the whole winding
 * @param insulation part by part
 * @param banding as it was
 */
public record AsFound(
        Optional<LocalDate> date,
        Optional<String> by,
        Optional<Measured> measured,
        List<InsulationState> insulation,
        Optional<Banding> banding) {
    /**
     * Copies the list.
     *
     * @param date when
     * @param by who
     * @param measured values of the whole winding
     * @param insulation part by part
     * @param banding as it was
     */
    public AsFound {
        insulation = List.copyOf(insulation);
    }
}
