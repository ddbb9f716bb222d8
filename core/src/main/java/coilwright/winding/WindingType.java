package coilwright.winding;

/** The kinds of winding. */
public enum WindingType {
    /** Each coil's leads land on bars m apart. */
    LAP("lap"),
    /** Each coil's leads land on bars about two pole pitches apart. */
    WAVE("wave"),
    /** A lap and a wave winding on the same slots and bars, which equalize each other. */
    FROG_LEG("frog-leg"),
    /** Any connection list, right or wrong, as found on an armature. */
    LISTED("listed");

    private final String word;

    WindingType(String word) {
        this.word = word;
    }

    /** {@return the word used in job files and messages} */
    public String word() {
        return word;
    }
}
