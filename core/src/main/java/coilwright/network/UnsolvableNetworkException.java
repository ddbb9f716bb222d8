package coilwright.network;

/**
 * Thrown when the feeds ask for what no voltages can give: a current driven between parts that nothing joins, or a
 * voltage held between nodes that links or other voltage feeds already tie together.
 */
public final class UnsolvableNetworkException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    UnsolvableNetworkException(String message) {
        super(message);
    }
}
