package coilwright.commutator;

import java.util.Locale;

/**
 * Advice on undercutting the mica.
 *
 * @param depthNowMm mica under the bars before the truing cut
 * @param depthAfterCutMm mica under the bars after it, where most was taken off; under 0 the mica stands proud
 * @param needed whether it must be cut, by the chosen limit
 * @param lowMm least depth to cut to, 0 where only a most is given
 * @param highMm greatest depth to cut to, infinite where only a least is given
 * @param widthLowMm least width of the saw: the mica's
 * @param widthHighMm greatest width of the saw
 * @param text the advice in words, with its source
 */
public record Undercut(
        double depthNowMm,
        double depthAfterCutMm,
        boolean needed,
        double lowMm,
        double highMm,
        double widthLowMm,
        double widthHighMm,
        String text) {
    /** Room beside the mica that the saw may take from the bars, mm: 0.003 in, common practice (from memory). */
    public static final double SAW_OVER_MICA = 0.0762;

    /**
     * Advises by a chosen limit on depth, and a least depth.
     *
     * @param depthNowMm mica under the bars now, mm
     * @param cutMm depth of the truing cut on the radius where it takes off most, mm; 0 for none
     * @param micaMm thickness of the mica, mm
     * @param depth limit on the depth to cut to, such as {@code practice-depth}
     * @param least limit under which it is cut again, such as {@code car-starter-1997-undercut}
     * @return what to do about the mica
     * @throws IllegalArgumentException when a size is out of range or a limit is on something else
     */
    public static Undercut advise(
            double depthNowMm, double cutMm, double micaMm, CommutatorLimit depth, CommutatorLimit least) {
        Text.notNegative("undercut depth", depthNowMm);
        Text.notNegative("cut", cutMm);
        Text.positive("mica thickness", micaMm);
        mustBe(depth, CommutatorLimit.Quantity.UNDERCUT_DEPTH);
        mustBe(least, CommutatorLimit.Quantity.UNDERCUT_LIMIT);
        double after = depthNowMm - cutMm;
        boolean needed = !least.admits(after);
        double high = depth.highMm().orElse(Double.POSITIVE_INFINITY);
        double low = depth.lowMm().orElse(0);
        String text = (needed
                        ? "undercut: after the cut the mica lies " + lies(after) + ", and "
                                + Text.mm(least.lowMm().orElseThrow()) + " is the least (" + least.cite() + "). Cut "
                        : "no undercut needed: after the cut the mica lies " + lies(after) + " (" + least.cite()
                                + "). If it is cut, cut ")
                + depthText(depth)
                + ", the full width of the mica, leaving no fins at the walls; a"
                + " saw of " + Text.mm(micaMm) + " to " + Text.mm(micaMm + SAW_OVER_MICA)
                + " (common practice). Then bevel the bar edges lightly and brush out the slots.";
        return new Undercut(depthNowMm, after, needed, low, high, micaMm, micaMm + SAW_OVER_MICA, text);
    }

    /** How deep to cut by a limit, with its source. */
    static String depthText(CommutatorLimit depth) {
        return depthWords(depth.lowMm().orElse(0), depth.highMm().orElse(Double.POSITIVE_INFINITY)) + " deep ("
                + depth.printed() + ", " + depth.cite() + ")";
    }

    /** Mica that the tool reaches is turned with the bars. */
    private static String lies(double depth) {
        return depth > 0 ? Text.mm(depth) + " under the bars" : "level with the bars where most is taken off";
    }

    private static String depthWords(double low, double high) {
        if (low == high) {
            return Text.mm(low);
        }
        if (Double.isInfinite(high)) {
            return "at least " + Text.mm(low);
        }
        return low == 0 ? "not more than " + Text.mm(high) : Text.mm(low) + " to " + Text.mm(high);
    }

    private static void mustBe(CommutatorLimit limit, CommutatorLimit.Quantity quantity) {
        if (limit.quantity() != quantity) {
            throw new IllegalArgumentException("limit " + limit.id() + " is on "
                    + limit.quantity().name().toLowerCase(Locale.ROOT).replace('_', ' ') + ", not on "
                    + quantity.name().toLowerCase(Locale.ROOT).replace('_', ' ') + ": choose another");
        }
    }
}
