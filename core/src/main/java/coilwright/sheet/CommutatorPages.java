package coilwright.sheet;

import coilwright.commutator.CommutatorReport;
import coilwright.commutator.Reading;
import coilwright.commutator.RunOut;
import coilwright.commutator.TruingCut;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.drawing.TraceChart;
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

    /**
     * Widest gap without a reading over which the centre is not told, degrees: from readings on less than half the
     * circle the fit can lie anywhere. Common practice, from memory.
     */
    private static final double MOST_GAP = 180;

    /**
     * How far a reading has come.
     *
     * @param trace of the bars read; empty where fewer than three are
     * @param report the run-out judged; empty before the bars read go round more than half the commutator
     */
    public record Progress(Optional<DrawingPages> trace, Optional<CommutatorReport> report) {}

    private CommutatorPages() {}

    /**
     * {@return what can be told of a job's run-out while it is read}
     *
     * @param job what the armature is
     * @param palette colours, or black, white and grey
     * @throws IllegalArgumentException when sizes do not go together
     */
    public static Progress progress(Job job, Palette palette) {
        if (!enough(job)) {
            return new Progress(Optional.empty(), Optional.empty());
        }
        RunOut runOut = RunOut.of(job.armature().bars(), readings(job));
        if (runOut.widestGapDegrees() > MOST_GAP) {
            return new Progress(
                    Optional.of(TraceChart.begun(job.title() + ": commutator run-out", runOut, palette)),
                    Optional.empty());
        }
        CommutatorReport report = report(job).orElseThrow();
        return new Progress(Optional.of(CommutatorSheet.trace(job.title(), report, palette)), Optional.of(report));
    }

    private static List<Reading> readings(Job job) {
        return RunOutFile.readings(
                job.particulars().commutator().map(CommutatorSizes::runOut).orElse(List.of()));
    }

    private static boolean enough(Job job) {
        return job.armature().bars() >= LEAST_BARS
                && readings(job).stream().map(Reading::bar).distinct().count() >= LEAST_BARS;
    }

    /**
     * {@return the sheet of a job's commutator, and the trace after it; a sheet to fill in where fewer than three bars
     * are read}
     *
     * @param job what the armature is
     * @param palette colours, or black, white and grey
     * @throws IllegalArgumentException when sizes do not go together
     */
    public static DrawingPages of(Job job, Palette palette) {
        Optional<CommutatorReport> report = report(job);
        return report.isPresent()
                ? CommutatorSheet.of(job.title(), report.get(), palette)
                : CommutatorSheet.empty(job.title(), job.armature().bars(), given(job), palette);
    }

    /** The run-out judged; empty where too few bars are read or the commutator has too few. */
    static Optional<CommutatorReport> report(Job job) {
        return enough(job)
                ? Optional.of(CommutatorReport.of(job.armature().bars(), readings(job), given(job)))
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
