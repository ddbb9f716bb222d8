package coilwright.winding;

import java.util.List;
import java.util.stream.Collectors;

/** Thrown when a winding cannot be built; carries every rule it breaks. */
public final class ImpossibleWindingException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient List<Finding> findings;

    /**
     * Makes the exception.
     *
     * @param findings the rules broken, at least one
     */
    public ImpossibleWindingException(List<Finding> findings) {
        super(findings.stream().map(Finding::message).collect(Collectors.joining("; ")));
        this.findings = List.copyOf(findings);
    }

    /** {@return the rules broken} */
    public List<Finding> findings() {
        return findings;
    }
}
