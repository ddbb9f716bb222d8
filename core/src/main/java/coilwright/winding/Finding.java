package coilwright.winding;

import java.util.List;
import java.util.Objects;

/**
 * What a rule says of a winding.
 *
 * @param rule id of the rule, such as {@code commutator-pitch-whole}
 * @param severity how much it matters
 * @param reason the value and the rule it meets or breaks
 * @param wayOut what would do instead; empty where nothing needs doing
 * @param coils numbers of the coils concerned; empty where it is the whole winding
 * @param bars the bars concerned; empty where it is the whole winding
 * @param source where the rule is written
 */
public record Finding(
        String rule,
        Severity severity,
        String reason,
        String wayOut,
        List<Integer> coils,
        List<Integer> bars,
        References source) {
    /**
     * Copies the lists.
     *
     * @param rule id of the rule, such as {@code commutator-pitch-whole}
     * @param severity how much it matters
     * @param reason the value and the rule it meets or breaks
     * @param wayOut what would do instead; empty where nothing needs doing
     * @param coils numbers of the coils concerned; empty where it is the whole winding
     * @param bars the bars concerned; empty where it is the whole winding
     * @param source where the rule is written
     */
    public Finding {
        Objects.requireNonNull(rule);
        Objects.requireNonNull(severity);
        Objects.requireNonNull(source);
        coils = List.copyOf(coils);
        bars = List.copyOf(bars);
    }

    static Finding error(String rule, String reason, String wayOut, References source) {
        return new Finding(rule, Severity.ERROR, reason, wayOut, List.of(), List.of(), source);
    }

    static Finding warning(String rule, String reason, String wayOut, References source) {
        return new Finding(rule, Severity.WARNING, reason, wayOut, List.of(), List.of(), source);
    }

    static Finding note(String rule, String reason, References source) {
        return new Finding(rule, Severity.NOTE, reason, "", List.of(), List.of(), source);
    }

    Finding at(List<Integer> coilNumbers, List<Integer> barNumbers) {
        return new Finding(rule, severity, reason, wayOut, coilNumbers, barNumbers, source);
    }

    /** {@return reason and way out in one sentence} */
    public String message() {
        return wayOut.isEmpty() ? reason : reason + ": " + wayOut;
    }
}
