package coilwright.cli;

import coilwright.commutator.CommutatorReport;
import coilwright.commutator.TruingCut;
import coilwright.drawing.Palette;
import coilwright.job.BadInputException;
import coilwright.job.CommutatorBasis;
import coilwright.job.CommutatorSizes;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.job.Quantity;
import coilwright.job.RunOutEntry;
import coilwright.job.RunOutFile;
import coilwright.job.Visible;
import coilwright.sheet.CommutatorSheet;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Run-out, truing cut and undercut of a commutator. */
@Command(
        name = "commutator",
        header = "Judge the run-out of a commutator, and say what cut cleans it up and how to undercut.",
        description = {
            "RUNOUT has the heading bar,height and one gauge reading a line, with its unit (0.012 mm, 12 µm, 0.5 thou) "
                    + "or with --unit for all; without it the readings of the job's commutator.runOut are taken. "
                    + "Which limits hold is yours to choose, by --limit. Leaves with 1 where one of them is not kept, "
                    + "or where a cut that cleans up goes under the least diameter."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  coilwright commutator orchard-pump-dynamo.yaml run-out.csv --diameter \"48 mm\" --limit brush-maker",
            "  coilwright commutator orchard-pump-dynamo.yaml run-out.csv --centring recentred --chart trace.svg",
            "  coilwright commutator --limits",
            "  coilwright commutator orchard-pump-dynamo.yaml --sheet run-out.pdf"
        })
final class CommutatorCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", arity = "0..1", paramLabel = "JOB", description = "Job file (YAML or JSON).")
    private Optional<Path> jobFile;

    @Parameters(index = "1", arity = "0..1", paramLabel = "RUNOUT", description = "Gauge readings (CSV).")
    private Optional<Path> readings;

    @Option(names = "--unit", paramLabel = "UNIT", description = "Unit of the readings where they have none.")
    private Optional<String> unit;

    @Option(names = "--diameter", paramLabel = "LENGTH", description = "Over the bars, such as \"48 mm\".")
    private Optional<String> diameter;

    @Option(names = "--new-diameter", paramLabel = "LENGTH", description = "When new, for limits on wear.")
    private Optional<String> newDiameter;

    @Option(names = "--minimum", paramLabel = "LENGTH", description = "Least diameter allowed.")
    private Optional<String> minimum;

    @Option(names = "--mica", paramLabel = "LENGTH", description = "Thickness of the mica.")
    private Optional<String> mica;

    @Option(names = "--undercut", paramLabel = "LENGTH", description = "Depth of the mica under the bars now.")
    private Optional<String> undercut;

    @Option(
            names = "--allowance",
            paramLabel = "LENGTH",
            description = "Taken off the lowest bar beyond a bare clean-up, on the radius; none unless given.")
    private Optional<String> allowance;

    @Option(
            names = "--centring",
            paramLabel = "HOW",
            defaultValue = "as-read",
            description = "as-read: turned and judged on the centres it was read on; recentred: set true to itself. "
                    + "as-read unless given.")
    private String centring;

    @Option(
            names = "--limit",
            paramLabel = "ID",
            description = "A limit that holds for this machine, by its name in --limits; may be repeated.")
    private List<String> limits = new ArrayList<>();

    @Option(names = "--limits", description = "Instead list every limit with its source.")
    private boolean list;

    @Option(
            names = "--chart",
            paramLabel = "FILE",
            description = "Also draw the trace before and, where the diameter is known, after the planned cut, into "
                    + "this .svg, .png or .pdf.")
    private Optional<Path> chart;

    @Option(
            names = "--sheet",
            paramLabel = "FILE",
            description = "Instead write a sheet to print, ending in .pdf, .svg or .png; empty to fill in where there "
                    + "are no readings.")
    private Optional<Path> sheet;

    @Mixin
    private OutputOptions output;

    CommutatorCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws BadInputException {
        if (list) {
            output.answer(
                    console,
                    switch (output.format()) {
                        case TEXT -> CommutatorText.limits();
                        case JSON -> CommutatorJson.limits();
                        case CSV -> CommutatorText.limitsCsv();
                    });
            return Exit.DONE;
        }
        Path file =
                jobFile.orElseThrow(() -> new UsageException("commutator needs a JOB, or --limits to list the limits"));
        Job job = JobReader.read(file);
        try {
            return judge(file, job);
        } catch (IllegalArgumentException e) {
            throw new UsageException(e.getMessage());
        }
    }

    private int judge(Path file, Job job) throws BadInputException {
        CommutatorReport.Given given = CommutatorBasis.of(job, options());
        List<RunOutEntry> read = readings.isPresent()
                ? RunOutFile.read(readings.get(), job.armature().bars(), unit).entries()
                : job.particulars().commutator().map(CommutatorSizes::runOut).orElse(List.of());
        if (read.isEmpty() && chart.isPresent()) {
            throw new UsageException(file + ": there are no run-out readings to draw: --chart needs them");
        }
        if (read.isEmpty() && sheet.isPresent()) {
            Drawings.write(
                    console,
                    CommutatorSheet.empty(job.title(), job.armature().bars(), given, Palette.COLOUR),
                    sheet.get(),
                    OptionalDouble.empty());
            return Exit.DONE;
        }
        if (read.isEmpty()) {
            throw new UsageException(file + ": there are no run-out readings: name a file RUNOUT.csv with the heading"
                    + " bar,height, or write them in commutator.runOut; --sheet FILE.pdf gives a sheet to fill in");
        }
        CommutatorReport report = CommutatorReport.of(job.armature().bars(), RunOutFile.readings(read), given);
        chart.ifPresent(f -> Drawings.write(
                console, CommutatorSheet.trace(job.title(), report, Palette.COLOUR), f, OptionalDouble.empty()));
        if (sheet.isPresent()) {
            Drawings.write(
                    console,
                    CommutatorSheet.of(job.title(), report, Palette.COLOUR),
                    sheet.get(),
                    OptionalDouble.empty());
        } else {
            output.answer(
                    console,
                    switch (output.format()) {
                        case TEXT -> CommutatorText.of(job.title(), report);
                        case JSON -> CommutatorJson.of(report);
                        case CSV -> CommutatorText.csv(report);
                    });
        }
        return report.refused() ? Exit.NO : Exit.DONE;
    }

    private CommutatorBasis.Options options() {
        TruingCut.Centring how = switch (centring) {
            case "as-read" -> TruingCut.Centring.AS_READ;
            case "recentred" -> TruingCut.Centring.RECENTRED;
            default ->
                throw new UsageException(
                        "--centring is \"" + Visible.cut(centring) + "\", but must be as-read or recentred");
        };
        return new CommutatorBasis.Options(
                length("--diameter", diameter),
                length("--new-diameter", newDiameter),
                length("--minimum", minimum),
                length("--mica", mica),
                length("--undercut", undercut),
                length("--allowance", allowance),
                how,
                limits);
    }

    private static Optional<Quantity> length(String option, Optional<String> text) {
        return text.map(t -> Given.quantity(option, t, Quantity.Kind.LENGTH));
    }
}
