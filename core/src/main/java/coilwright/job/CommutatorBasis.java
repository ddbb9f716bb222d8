package coilwright.job;

import coilwright.commutator.CommutatorLimit;
import coilwright.commutator.CommutatorReport;
import coilwright.commutator.TruingCut;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Puts together what a job tells of its commutator for a {@link CommutatorReport}. */
public final class CommutatorBasis {
    private CommutatorBasis() {}

    /**
     * Values that stand in place of the job's, and choices.
     *
     * @param diameter over the bars
     * @param newDiameter when new
     * @param minimum least diameter allowed
     * @param mica its thickness
     * @param undercut depth of the mica under the bars now
     * @param allowance to take off the lowest bar beyond a bare clean-up, on the radius; nothing where empty
     * @param centring how it is to run in the lathe
     * @param limits that hold, by name
     */
    public record Options(
            Optional<Quantity> diameter,
            Optional<Quantity> newDiameter,
            Optional<Quantity> minimum,
            Optional<Quantity> mica,
            Optional<Quantity> undercut,
            Optional<Quantity> allowance,
            TruingCut.Centring centring,
            List<String> limits) {
        /**
         * Copies the list.
         *
         * @param diameter over the bars
         * @param newDiameter when new
         * @param minimum least diameter allowed
         * @param mica its thickness
         * @param undercut depth of the mica under the bars now
         * @param allowance to take off the lowest bar beyond a bare clean-up, on the radius; nothing where empty
         * @param centring how it is to run in the lathe
         * @param limits that hold, by name
         */
        public Options {
            limits = List.copyOf(limits);
        }

        /** {@return nothing in place of the job's; turned on the centres it was read on, no limit chosen} */
        public static Options none() {
            return new Options(
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    TruingCut.Centring.AS_READ,
                    List.of());
        }
    }

    /**
     * {@return what is known and chosen}
     *
     * @param job what the armature is
     * @param options what is chosen
     * @throws IllegalArgumentException when sizes are out of range or do not go together, or there is no limit of a
     *     name
     */
    public static CommutatorReport.Given of(Job job, Options options) {
        Optional<CommutatorSizes> sizes = job.particulars().commutator();
        var given = new CommutatorReport.Given(
                mm(options.diameter().or(() -> sizes.flatMap(CommutatorSizes::diameter))),
                mm(options.newDiameter()),
                mm(options.minimum().or(() -> sizes.flatMap(CommutatorSizes::minimum))),
                mm(options.mica().or(() -> sizes.flatMap(CommutatorSizes::mica))),
                mm(options.undercut().or(() -> sizes.flatMap(CommutatorSizes::undercut))),
                mm(options.allowance()).orElse(0),
                options.centring(),
                options.limits().stream().map(CommutatorLimit::of).toList());
        given.checkMica(job.armature().bars());
        return given;
    }

    private static OptionalDouble mm(Optional<Quantity> length) {
        return Quantity.in("mm", length);
    }
}
