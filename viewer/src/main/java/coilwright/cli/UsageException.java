package coilwright.cli;

/** Options that do not go together, or values out of range; the message is for the user. */
final class UsageException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    UsageException(String message) {
        super(message);
    }
}
