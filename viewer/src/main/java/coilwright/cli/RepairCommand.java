package coilwright.cli;

import coilwright.drawing.CutOut;
import coilwright.drawing.DrawingFiles;
import coilwright.drawing.DrawingView;
import coilwright.drawing.OverlayDrawings;
import coilwright.drawing.ViewOptions;
import coilwright.fault.EmergencyRepair;
import coilwright.job.BadInputException;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.job.Visible;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.Winding;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** How to cut out a coil. */
@Command(
        name = "repair",
        header = "Say how to cut out a faulty coil in an emergency, and what it costs.",
        description = {
            "Gives the leads to lift, the bars to join, and what the armature is like then: paths, unbalance, volts "
                    + "between bars. The field is taken as a sine wave, the brushes at the neutral, no load."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  coilwright repair orchard-pump-dynamo.yaml --coil 3 --fault open",
            "  coilwright repair hill-tram-motor.yaml --coil 7 --fault shorted --drawing repair.pdf --view round"
        })
final class RepairCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "JOB", description = "Job file (YAML or JSON).")
    private Path jobFile;

    @Option(names = "--coil", paramLabel = "N", required = true, description = "Number of the faulty coil.")
    private int coil;

    @Option(names = "--fault", paramLabel = "FAULT", required = true, description = "open or shorted.")
    private String fault;

    @Option(
            names = "--drawing",
            paramLabel = "FILE",
            description = "Also draw the leads lifted, the coil cut through and the bars joined into this .svg, .png "
                    + "or .pdf.")
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

    RepairCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws BadInputException {
        DrawingView shown = Drawings.overlayView(view, drawing);
        EmergencyRepair.Trouble trouble = switch (fault) {
            case "open" -> EmergencyRepair.Trouble.OPEN;
            case "shorted" -> EmergencyRepair.Trouble.SHORTED;
            default ->
                throw new UsageException("--fault is \"" + Visible.cut(fault) + "\", but must be open or shorted");
        };
        Job job = JobReader.read(jobFile);
        Winding winding;
        try {
            winding = job.build();
        } catch (ImpossibleWindingException e) {
            return console.impossible(jobFile, e.findings());
        }
        EmergencyRepair.Plan plan = Given.valid(() -> EmergencyRepair.of(winding, coil, trouble));
        drawing.ifPresent(file -> draw(job, plan, shown, file));
        output.answer(
                console,
                switch (output.format()) {
                    case TEXT -> RepairText.of(job, plan);
                    case JSON -> RepairJson.of(plan);
                    case CSV -> RepairText.csv(plan);
                });
        return Exit.DONE;
    }

    private void draw(Job job, EmergencyRepair.Plan plan, DrawingView view, Path file) {
        EmergencyRepair.Option best = plan.best();
        var cutOut = new CutOut(
                plan.coil().number(), plan.trouble() == EmergencyRepair.Trouble.SHORTED, best.lost(), best.bridge());
        Drawings.write(
                console,
                OverlayDrawings.cutOut(
                        view,
                        plan.winding(),
                        cutOut,
                        ViewOptions.of(job.title()).withFormat(DrawingFiles.usualFormat(file))),
                file,
                OptionalDouble.empty());
    }
}
