package coilwright.rewind;

/** The systems by which round wire is sold. */
public enum WireSystem {
    /** American wire gauge, by the formula of ASTM B258. */
    AWG("AWG"),
    /** Nominal diameters of IEC 60317, preferred numbers R20 and R40. */
    METRIC("mm"),
    /** British standard wire gauge, BS 3737. */
    SWG("SWG");

    private final String word;

    WireSystem(String word) {
        this.word = word;
    }

    /** {@return the word printed beside a size} */
    public String word() {
        return word;
    }
}
