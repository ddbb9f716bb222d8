package coilwright.rewind;

/**
 * A measured value against one limit.
 *
 * @param limit with its source
 * @param value measured, in the limit's unit
 * @param pass whether it keeps to the limit
 */
public record AcceptanceVerdict(Limit limit, double value, boolean pass) {
    static AcceptanceVerdict of(Limit limit, double value) {
        return new AcceptanceVerdict(limit, value, limit.admits(value));
    }

    /** {@return the verdict in one line, with its source} */
    public String text() {
        return Format.number(value) + (limit.unit().isEmpty() ? "" : " " + limit.unit())
                + (pass ? " passes: " : " fails: ") + limit.words() + ", " + limit.applies() + "; "
                + limit.source().cite();
    }
}
