package coilwright.job;

import coilwright.winding.Armature;

/**
 * One reading of a gauge on the commutator.
 *
 * @param bar that it stood on
 * @param height shown by the gauge; further out is more
 */
public record RunOutEntry(
        @Count(to = Armature.MAX_BARS) int bar,

        @Measure(value = Quantity.Kind.LENGTH, least = Measure.Least.NONE)
        Quantity height) {}
