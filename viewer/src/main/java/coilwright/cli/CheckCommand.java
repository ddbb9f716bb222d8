package coilwright.cli;

import coilwright.drawing.Comparison;
import coilwright.drawing.DrawingFiles;
import coilwright.drawing.DrawingView;
import coilwright.drawing.OverlayDrawings;
import coilwright.drawing.ViewOptions;
import coilwright.fault.ConnectionCheck;
import coilwright.job.BadInputException;
import coilwright.job.ConnectionList;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Compares connections with the plan. */
@Command(
        name = "check",
        header = "Compare a connection list with the winding as planned, before soldering.",
        description = {
            "CONNECTIONS has the heading coil,topSlot,bottomSlot,topBar,bottomBar and one coil a line; a bar left blank "
                    + "is a lead on no bar. Leaves with 1 where anything differs."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  coilwright check orchard-pump-dynamo.yaml connections.csv",
            "  coilwright check orchard-pump-dynamo.yaml connections.csv --free",
            "  coilwright check orchard-pump-dynamo.yaml connections.csv --drawing differences.pdf --view round"
        })
final class CheckCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "JOB", description = "Job file (YAML or JSON).")
    private Path jobFile;

    @Parameters(index = "1", paramLabel = "CONNECTIONS", description = "Connection list (CSV).")
    private Path connections;

    @Option(
            names = "--free",
            description = "Whatever slot and bar the list calls 1, whichever way round it counts and however it "
                    + "numbers its coils.")
    private boolean free;

    @Option(
            names = "--drawing",
            paramLabel = "FILE",
            description = "Also draw the leads as planned and as found over one another into this .svg, .png or .pdf: "
                    + "thin where they agree, dashed where planned and not found, heavy where found instead.")
    private Optional<Path> drawing;

    @Option(
            names = "--view",
            paramLabel = "VIEW",
            description =
                    "View of the drawing: developed (rolled out flat, unless given) or round (from the commutator "
                            + "end).")
    private Optional<String> view;

    @Mixin
    private OutputOptions output;

    CheckCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws BadInputException {
        DrawingView shown = Drawings.overlayView(view, drawing);
        Job job = JobReader.read(jobFile);
        List<ListedCoil> found = ConnectionList.readAsFound(connections);
        Winding plan;
        try {
            plan = job.build();
        } catch (ImpossibleWindingException e) {
            return console.impossible(jobFile, e.findings());
        }
        ConnectionCheck.Result result = free ? ConnectionCheck.free(plan, found) : ConnectionCheck.of(plan, found);
        drawing.ifPresent(file -> draw(job, plan, found, result, shown, file));
        output.answer(
                console,
                switch (output.format()) {
                    case TEXT -> CheckText.of(job, plan, found, result);
                    case JSON -> CheckJson.of(result);
                    case CSV -> CheckText.csv(result);
                });
        return result.same() ? Exit.DONE : Exit.NO;
    }

    private void draw(
            Job job, Winding plan, List<ListedCoil> list, ConnectionCheck.Result result, DrawingView view, Path file) {
        List<Comparison.Difference> differences = result.differences().stream()
                .map(d -> new Comparison.Difference(
                        d.coil(),
                        d.kind().word().replace('-', ' '),
                        d.expected(),
                        d.found(),
                        d.kind() == ConnectionCheck.Kind.DOUBLED))
                .toList();
        var comparison = new Comparison(
                list,
                differences,
                result.whole().map(w -> w.kind().word().replace('-', ' ')),
                result.alignment().map(ConnectionCheck.Alignment::counting));
        Drawings.write(
                console,
                OverlayDrawings.connections(
                        view, plan, comparison, ViewOptions.of(job.title()).withFormat(DrawingFiles.usualFormat(file))),
                file,
                OptionalDouble.empty());
    }
}
