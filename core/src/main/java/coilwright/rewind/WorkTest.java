package coilwright.rewind;

/** A test named in the order of work. Those done with a growler, a feed or a lamp bear the titles of their procedures. */
public enum WorkTest {
    /** The bare commutator: no two neighbouring bars joined, none joined to the shaft. */
    BARE_COMMUTATOR("Bare commutator"),
    /** Each coil lets a current through. */
    OPEN("Open circuit"),
    /** No coil joined to one that lies in the same slot. */
    BETWEEN_COILS("Between coils"),
    /** No coil or bar joined to the core or shaft. */
    GROUND("Ground"),
    /** Growler with a steel blade. */
    BLADE("Growler and blade"),
    /** Growler with a meter. */
    GROWLER_METER("Growler and meter, probes walked"),
    /** Direct current, millivolts bar to bar. */
    DROP("Drop test"),
    /** Insulation resistance to the shaft. */
    INSULATION("Insulation resistance"),
    /** Raised voltage to the shaft. */
    HIGH_POTENTIAL("High-potential test");

    private final String title;

    WorkTest(String title) {
        this.title = title;
    }

    /** {@return the name of the test} */
    public String title() {
        return title;
    }
}
