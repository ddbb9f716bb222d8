package coilwright.cli;

import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.DrawingView;
import coilwright.drawing.Highlight;
import coilwright.drawing.ViewOptions;
import coilwright.fault.ConnectionCheck;
import coilwright.job.BadInputException;
import coilwright.job.ConnectionList;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.ListedCoil;
import coilwright.winding.Rules;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
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
            "  coilwright check orchard-pump-dynamo.yaml connections.csv --drawing differences.pdf"
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
            description = "Also draw the connections as found, developed and round, the coils that differ in heavy "
                    + "lines, into this .svg, .png or .pdf (FILE-1 and FILE-2 unless a PDF).")
    private Optional<Path> drawing;

    @Mixin
    private OutputOptions output;

    CheckCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws BadInputException {
        Job job = JobReader.read(jobFile);
        List<ListedCoil> found = ConnectionList.readAsFound(connections);
        Winding plan;
        try {
            plan = job.build();
        } catch (ImpossibleWindingException e) {
            return console.impossible(jobFile, e.findings());
        }
        ConnectionCheck.Result result = free ? ConnectionCheck.free(plan, found) : ConnectionCheck.of(plan, found);
        drawing.ifPresent(file -> draw(job, plan, found, result, file));
        output.answer(
                console,
                switch (output.format()) {
                    case TEXT -> CheckText.of(job, plan, found, result);
                    case JSON -> CheckJson.of(result);
                    case CSV -> CheckText.csv(result);
                });
        return result.same() ? Exit.DONE : Exit.NO;
    }

    /** The list without the lines that are too many, where it can be drawn; else the plan. */
    private static void draw(Job job, Winding plan, List<ListedCoil> list, ConnectionCheck.Result result, Path file) {
        List<ListedCoil> found = new ArrayList<>(list);
        result.differences().stream()
                .filter(d -> d.kind() == ConnectionCheck.Kind.DOUBLED)
                .forEach(d -> found.remove(d.found().orElseThrow()));
        boolean drawable = !found.isEmpty()
                && Rules.blocking(plan.armature(), new WindingSpec.Listed(found))
                        .isEmpty();
        Winding shown = drawable ? Winding.build(plan.armature(), new WindingSpec.Listed(found)) : plan;
        Set<Integer> bars = new LinkedHashSet<>();
        for (ConnectionCheck.Difference d : result.differences()) {
            d.found().ifPresent(c -> {
                c.topBar().ifPresent(bars::add);
                c.bottomBar().ifPresent(bars::add);
            });
        }
        int coils = result.coils().size();
        String title = job.title()
                + (drawable ? ", as found: " : ", as planned: ")
                + (coils == 1 ? "1 coil differs" : coils + " coils differ");
        ViewOptions options =
                ViewOptions.of(title).withHighlight(new Highlight(new LinkedHashSet<>(result.coils()), bars, Set.of()));
        List<Drawing> pages =
                new ArrayList<>(DrawingView.DEVELOPED.draw(shown, options).pages());
        pages.addAll(DrawingView.ROUND.draw(shown, options).pages());
        Drawings.write(new DrawingPages(pages), file, OptionalDouble.empty());
    }
}
