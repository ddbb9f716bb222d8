package coilwright.job;

/**
 * The growler that the armature lies on.
 *
 * @param halfGap angle from straight down to the middle of each face, degrees, over 0 and under 180
 * @param face angle that each face takes up, degrees, over 0; the two faces may touch but not overlap
 */
public record Growler(double halfGap, double face) {
    /** A V-block growler as met on most benches: faces 45° either side of straight down, each 60° wide. */
    public static final Growler USUAL = new Growler(45, 60);

    /**
     * Checks that the faces do not overlap.
     *
     * @throws IllegalArgumentException when an angle is out of range
     */
    public Growler {
        if (!(halfGap > 0 && halfGap < 180)) {
            throw new IllegalArgumentException(
                    "halfGap is " + words(halfGap) + ", but must be over 0 and under 180 degrees");
        }
        double most = Math.min(2 * halfGap, 360 - 2 * halfGap);
        if (!(face > 0 && face <= most)) {
            throw new IllegalArgumentException("face is " + words(face) + ", but with halfGap " + words(halfGap)
                    + " must be over 0 and at most " + words(most) + " degrees, or the faces would overlap");
        }
    }

    static String words(double x) {
        return x == Math.rint(x) && Math.abs(x) < 1e9 ? Long.toString((long) x) : Double.toString(x);
    }
}
