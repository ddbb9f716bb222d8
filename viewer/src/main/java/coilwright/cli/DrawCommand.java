package coilwright.cli;

import coilwright.drawing.DrawingPages;
import coilwright.drawing.DrawingView;
import coilwright.drawing.Highlight;
import coilwright.drawing.PageFormat;
import coilwright.drawing.Palette;
import coilwright.drawing.SvgWriter;
import coilwright.drawing.ViewOptions;
import coilwright.job.BadInputException;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.winding.Armature;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.Winding;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Draws a winding. */
@Command(
        name = "draw",
        header = "Draw a winding as SVG, PNG or PDF.",
        description = {
            "The ending of FILE tells the format. PDF comes on A4 pages; SVG and PNG on one page as large as it takes, "
                    + "or with --pages on A4 pages numbered FILE-1, FILE-2 and so on. Without --out the SVG is printed."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  coilwright draw samples/jobs/orchard-pump-dynamo.yaml --view developed --out developed.svg",
            "  coilwright draw samples/jobs/orchard-pump-dynamo.yaml --view coil --coil 3 --out card.pdf",
            "  coilwright draw samples/jobs/hill-tram-motor.yaml --view round --bar 1,2 --mono --out round.png"
        })
final class DrawCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "JOB", description = "Job file (YAML or JSON).")
    private Path jobFile;

    @Option(
            names = "--view",
            paramLabel = "VIEW",
            required = true,
            description =
                    "developed (rolled out flat), round (from the commutator end), coil (one coil as a lead-throw "
                            + "card), paths (from brush to brush) or growler (with probes where they read most).")
    private String view;

    @Option(names = "--out", paramLabel = "FILE", description = "File to write, ending in .svg, .png or .pdf.")
    private Optional<Path> out;

    @Option(
            names = "--coil",
            paramLabel = "N",
            split = ",",
            description = "Draw these coils heavily; the coil of the card.")
    private List<Integer> coils = List.of();

    @Option(names = "--bar", paramLabel = "N", split = ",", description = "Draw these bars heavily.")
    private List<Integer> bars = List.of();

    @Option(names = "--slot", paramLabel = "N", split = ",", description = "Draw these slots heavily.")
    private List<Integer> slots = List.of();

    @Option(
            names = "--angle",
            paramLabel = "DEG",
            defaultValue = "0",
            description = "Where slot 1 stands, degrees clockwise from the centre of pole 1, which is straight up; "
                    + "0 unless given.")
    private double angle;

    @Option(names = "--brush-width", paramLabel = "BARS", description = "Width of a brush in bars.")
    private Optional<Double> brushWidth;

    @Option(names = "--dpi", paramLabel = "N", description = "Resolution of PNG; 150 unless given.")
    private Optional<Double> dpi;

    @Option(names = "--pages", description = "A4 pages also for SVG and PNG.")
    private boolean onPages;

    @Option(names = "--mono", description = "Black, white and grey.")
    private boolean mono;

    DrawCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws BadInputException {
        DrawingView chosen = Given.valid(() -> DrawingView.named(view));
        Job job = JobReader.read(jobFile);
        Winding winding;
        try {
            winding = job.build();
        } catch (ImpossibleWindingException e) {
            return console.impossible(jobFile, e.findings());
        }
        DrawingPages pages = Given.valid(() -> chosen.draw(winding, options(job, winding)));
        if (out.isPresent()) {
            Drawings.write(console, pages, out.get(), Given.number(dpi));
        } else if (pages.pages().size() == 1) {
            console.answer(SvgWriter.write(pages.first()));
        } else {
            throw new UsageException("this view takes " + pages.pages().size() + " pages: name a file with --out");
        }
        return Exit.DONE;
    }

    private ViewOptions options(Job job, Winding winding) {
        Armature armature = winding.armature();
        coils.forEach(winding::coil);
        bars.forEach(n -> exists("bar", n, armature.bars()));
        slots.forEach(n -> exists("slot", n, armature.slots()));
        boolean pdf =
                out.isPresent() && out.get().toString().toLowerCase(Locale.ROOT).endsWith(".pdf");
        return new ViewOptions(
                job.title(),
                coils.isEmpty() ? OptionalInt.empty() : OptionalInt.of(coils.get(0)),
                angle,
                Given.number(brushWidth),
                new Highlight(set(coils), set(bars), set(slots)),
                mono ? Palette.MONOCHROME : Palette.COLOUR,
                pdf || onPages ? PageFormat.A4 : PageFormat.SINGLE,
                Drawings.bench(job));
    }

    private static void exists(String what, int number, int most) {
        if (number < 1 || number > most) {
            throw new UsageException("there is no " + what + " " + number + ": " + what + "s run from 1 to " + most);
        }
    }

    private static Set<Integer> set(List<Integer> numbers) {
        return new TreeSet<>(numbers);
    }
}
