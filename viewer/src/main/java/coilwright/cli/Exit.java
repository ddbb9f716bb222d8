package coilwright.cli;

/** Exit codes. */
final class Exit {
    /** Done. */
    static final int DONE = 0;

    /** Done, and the answer is no: not possible, differs, faulty. */
    static final int NO = 1;

    /** Bad input or usage. */
    static final int BAD = 2;

    private Exit() {}
}
