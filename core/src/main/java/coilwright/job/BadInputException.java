package coilwright.job;

import java.util.List;
import java.util.stream.Collectors;

/** Thrown when an input file cannot be used; carries every problem found in it. */
public final class BadInputException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<Problem> problems;

    /**
     * Makes the exception.
     *
     * @param problems what is wrong, at least one, in order of line
     */
    public BadInputException(List<Problem> problems) {
        super(problems.stream().map(Problem::toString).collect(Collectors.joining("\n")));
        this.problems = List.copyOf(problems);
    }

    /** {@return what is wrong, in order of line} */
    public List<Problem> problems() {
        return problems;
    }
}
