package coilwright.sheet;

import coilwright.commutator.CommutatorReport;
import coilwright.commutator.Reading;
import coilwright.commutator.TruingCut;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.job.CommutatorSizes;
import coilwright.job.Job;
import coilwright.job.Quantity;
import coilwright.job.RunOutFile;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a job file tells of its commutator, judged on the centres it was read on, with no limit chosen. */
public final class CommutatorPages {
    /** Least bars read that a centre can be told from. */
    private static final int LEAST_BARS = 3;

    private CommutatorPages() {}

    /**
     * The sheet of a job's commutator, and the trace after it; a sheet to fill in where fewer than three bars are read.
     *
     * @throws IllegalArgumentException when sizes do not go together
     */
    public static DrawingPages of(Job job, Palette palette) {
        Optional<CommutatorReport> report = report(job);
        return report.isPresent()
                ? CommutatorSheet.of(job.title(), report.get(), palette)
                : CommutatorSheet.empty(job.title(), job.armature().bars(), given(job), palette);
    }

    /**
     * The run-out judged; empty where too few bars are read or the commutator has too few.
     *
     * @throws IllegalArgumentException when sizes do not go together
     */
    public static Optional<CommutatorReport> report(Job job) {
        List<Reading> readings = RunOutFile.readings(
                job.particulars().commutator().map(CommutatorSizes::runOut).orElse(List.of()));
        boolean enough = job.armature().bars() >= LEAST_BARS
                && readings.stream().map(Reading::bar).distinct().count() >= LEAST_BARS;
        return enough
                ? Optional.of(CommutatorReport.of(job.armature().bars(), readings, given(job)))
                : Optional.empty();
    }

    private static CommutatorReport.Given given(Job job) {
        Optional<CommutatorSizes> sizes = job.particulars().commutator();
        CommutatorReport.Given given = new CommutatorReport.Given(
                mm(sizes.flatMap(CommutatorSizes::diameter)),
                OptionalDouble.empty(),
                mm(sizes.flatMap(CommutatorSizes::minimum)),
                mm(sizes.flatMap(CommutatorSizes::mica)),
                mm(sizes.flatMap(CommutatorSizes::undercut)),
                0,
                TruingCut.Centring.AS_READ,
                List.of());
        given.checkMica(job.armature().bars());
        return given;
    }

    private static OptionalDouble mm(Optional<Quantity> length) {
        return length.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(length.get().in("mm"));
    }
}
