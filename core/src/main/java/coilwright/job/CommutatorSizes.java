package coilwright.job;

import java.util.List;
import java.util.Optional;

/**
 * The commutator as measured.
 *
 * @param diameter over the bars
 * @param minimum least diameter that its maker or its construction allows
 * @param mica thickness of the mica between bars
 * @param undercut depth of the mica under the bars
 * @param brushWidth width of a brush along the bars' circle
 * @param runOut readings of a gauge round the bars, in any order, with repeats and gaps
 */
public record CommutatorSizes(
        @Measure(Quantity.Kind.LENGTH) Optional<Quantity> diameter,
        @Measure(Quantity.Kind.LENGTH) Optional<Quantity> minimum,
        @Measure(Quantity.Kind.LENGTH) Optional<Quantity> mica,

        @Measure(value = Quantity.Kind.LENGTH, least = Measure.Least.ZERO)
        Optional<Quantity> undercut,

        @Measure(Quantity.Kind.LENGTH) Optional<Quantity> brushWidth,
        List<RunOutEntry> runOut) {
    /**
     * Copies the list and checks the diameters.
     *
     * @param diameter over the bars
     * @param minimum least diameter that its maker or its construction allows
     * @param mica thickness of the mica between bars
     * @param undercut depth of the mica under the bars
     * @param brushWidth width of a brush along the bars' circle
     * @param runOut readings of a gauge round the bars, in any order, with repeats and gaps
     * @throws IllegalArgumentException when the minimum is over the diameter
     */
    public CommutatorSizes {
        runOut = List.copyOf(runOut);
        if (diameter.isPresent()
                && minimum.isPresent()
                && minimum.get().in("mm") > diameter.get().in("mm")) {
            throw new IllegalArgumentException("minimum is " + minimum.get() + ", over the diameter of "
                    + diameter.get() + ": one of the two is wrong, or the commutator is worn out");
        }
    }

    /** Checks that every bar read is there. */
    void checkBars(int bars) {
        for (RunOutEntry entry : runOut) {
            if (entry.bar() > bars) {
                throw new IllegalArgumentException(
                        "runOut names bar " + entry.bar() + ", but bars run from 1 to " + bars);
            }
        }
    }

    /**
     * {@return the same with other readings of run-out}
     *
     * @param readings heights round the bars
     */
    public CommutatorSizes withRunOut(List<RunOutEntry> readings) {
        return new CommutatorSizes(diameter, minimum, mica, undercut, brushWidth, readings);
    }
}
