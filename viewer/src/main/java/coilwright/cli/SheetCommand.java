package coilwright.cli;

import coilwright.drawing.Palette;
import coilwright.job.BadInputException;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.rewind.WindingWay;
import coilwright.sheet.RecordHtml;
import coilwright.sheet.SheetKind;
import coilwright.winding.ImpossibleWindingException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes a document to print. */
@Command(
        name = "sheet",
        header = "Make a sheet to print and fill in, or the record of a whole job.",
        description = {
            "The ending of FILE tells the format: .pdf holds all pages, .svg and .png become FILE-1, FILE-2 and so on, "
                    + ".html (as-found and record) is one file for a browser that holds everything. What the job file tells is filled in; "
                    + "what it does not tell is left to be written in by hand. --kind list shows the kinds there are."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  coilwright sheet samples/jobs/orchard-pump-dynamo.yaml --kind as-found --out as-found.pdf",
            "  coilwright sheet samples/jobs/orchard-pump-dynamo.yaml --kind record --out record.html",
            "  coilwright sheet --kind list"
        })
final class SheetCommand implements Callable<Integer> {
    private static final String LIST = "list";
    private static final Set<SheetKind> WITH_HTML = EnumSet.of(SheetKind.AS_FOUND, SheetKind.RECORD);

    /** The words for the kinds, for completion. */
    static final class Words extends ArrayList<String> {
        private static final long serialVersionUID = 1L;

        Words() {
            super(Arrays.stream(SheetKind.values()).map(SheetKind::word).toList());
            add(LIST);
        }
    }

    private final Console console;

    @Parameters(index = "0", arity = "0..1", paramLabel = "JOB", description = "Job file (YAML or JSON).")
    private Optional<Path> jobFile = Optional.empty();

    @Option(
            names = "--kind",
            paramLabel = "KIND",
            defaultValue = "record",
            completionCandidates = Words.class,
            description = "Which sheet: ${COMPLETION-CANDIDATES} (shows them all); record unless given.")
    private String kind;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description = "File to write, ending in .pdf, .svg or .png; .html too with as-found and record.")
    private Optional<Path> out;

    @Option(
            names = "--way",
            paramLabel = "WAY",
            defaultValue = "formed-coils",
            description = "With order: formed-coils, coil-by-coil or opposite-pairs; formed-coils unless given.")
    private String way;

    @Option(names = "--mono", description = "Black, white and grey.")
    private boolean mono;

    @Option(names = "--dpi", paramLabel = "N", description = "Resolution of PNG; 150 unless given.")
    private Optional<Double> dpi;

    SheetCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws BadInputException {
        if (kind.equals(LIST)) {
            for (SheetKind k : SheetKind.values()) {
                console.answer(String.format(
                                Locale.ROOT,
                                "%-12s %s%n",
                                k.word(),
                                k.words() + (k == SheetKind.ORDER ? " (--way)" : ""))
                        .replace("\r", ""));
            }
            return Exit.DONE;
        }
        SheetKind wanted = Given.valid(() -> SheetKind.named(kind));
        Path file = jobFile.orElseThrow(() -> new UsageException("no job file was given: name it after the command"));
        Path to = out.orElseThrow(() -> new UsageException(
                "no file to write was given: name it with --out, ending in .pdf, .svg, .png or .html"));
        boolean html = to.toString().toLowerCase(Locale.ROOT).endsWith(".html");
        if (html && !WITH_HTML.contains(wanted)) {
            throw new UsageException(
                    "a sheet of kind " + wanted.word() + " comes on pages only: name the file .pdf, .svg or .png");
        }
        Job job = JobReader.read(file);
        Palette palette = mono ? Palette.MONOCHROME : Palette.COLOUR;
        try {
            if (html) {
                console.files()
                        .write(to, RecordHtml.of(wanted.document(job, palette).orElseThrow()));
            } else {
                Drawings.write(console, wanted.pages(job, WindingWay.named(way), palette), to, Given.number(dpi));
            }
            return Exit.DONE;
        } catch (ImpossibleWindingException e) {
            return console.impossible(file, e.findings());
        } catch (IllegalArgumentException e) {
            throw new UsageException(file + ": " + e.getMessage());
        }
    }
}
