package coilwright.sheet;

import coilwright.commutator.CommutatorReport;
import coilwright.commutator.Reading;
import coilwright.commutator.RunOut;
import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.drawing.TraceChart;
import coilwright.job.CommutatorBasis;
import coilwright.job.CommutatorSizes;
import coilwright.job.Job;
import coilwright.job.RunOutFile;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a job file tells of its commutator, judged on the centres it was read on, with no limit chosen. */
public final class CommutatorPages {
    /** Least bars read that a centre can be told from. */
    private static final int LEAST_BARS = 3;

    /**
     * How far a reading has come.
     *
     * @param trace of the bars read; empty where fewer than three are
     * @param report the run-out judged; empty before the bars read go round half the commutator
     */
    public record Progress(Optional<DrawingPages> trace, Optional<CommutatorReport> report) {}

    static final Progress NOTHING_READ = new Progress(Optional.empty(), Optional.empty());

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
            return NOTHING_READ;
        }
        RunOut runOut = RunOut.of(job.armature().bars(), readings(job));
        if (!runOut.tellsCentre()) {
            return new Progress(
                    Optional.of(TraceChart.begun(job.title() + ": commutator run-out", runOut, palette)),
                    Optional.empty());
        }
        CommutatorReport report = CommutatorReport.of(job.armature().bars(), readings(job), given(job));
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
     * {@return the sheet of a job's commutator, and the trace after it; a sheet to fill in where the bars read do not
     * tell the centre yet}
     *
     * @param job what the armature is
     * @param palette colours, or black, white and grey
     * @throws IllegalArgumentException when sizes do not go together
     */
    public static DrawingPages of(Job job, Palette palette) {
        Progress progress = progress(job, palette);
        if (progress.report().isPresent()) {
            return CommutatorSheet.of(job.title(), progress.report().get(), palette);
        }
        List<Drawing> pages = new ArrayList<>(
                CommutatorSheet.empty(job.title(), job.armature().bars(), given(job), palette)
                        .pages());
        progress.trace().ifPresent(t -> pages.addAll(t.pages()));
        return new DrawingPages(pages);
    }

    private static CommutatorReport.Given given(Job job) {
        return CommutatorBasis.of(job, CommutatorBasis.Options.none());
    }
}
