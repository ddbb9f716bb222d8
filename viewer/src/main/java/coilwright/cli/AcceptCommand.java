package coilwright.cli;

import coilwright.drawing.Palette;
import coilwright.job.AcceptanceBasis;
import coilwright.job.BadInputException;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.job.Quantity;
import coilwright.rewind.Acceptance;
import coilwright.rewind.HighPotential.MachineKind;
import coilwright.rewind.HighPotential.Work;
import coilwright.sheet.AcceptanceSheet;
import coilwright.winding.ImpossibleWindingException;
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

/** Acceptance of a finished winding. */
@Command(
        name = "accept",
        header = "Judge a finished winding: insulation, high potential, evenness, polarity, temperature rise.",
        description = {
            "Takes rating and asRewound of the job, and its readings of stage as-rewound; options stand in their "
                    + "place. Every limit and voltage is shown with its source; which hold is yours to choose. Tells "
                    + "accepted, not accepted (leaves with 1) or incomplete, with what is still to do."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  coilwright accept orchard-pump-dynamo.yaml --insulation-one-minute 120Mohm --temperature 20°C",
            "  coilwright accept orchard-pump-dynamo.yaml --limit ir-car-dynamo --scheme iec",
            "  coilwright accept orchard-pump-dynamo.yaml --sheet acceptance.pdf"
        })
final class AcceptCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "JOB", description = "Job file (YAML or JSON).")
    private Path jobFile;

    @Option(names = "--kind", paramLabel = "KIND", description = "dc-motor, dc-generator, universal or portable-tool.")
    private Optional<String> kind;

    @Option(names = "--volts", paramLabel = "VOLTAGE", description = "Rated voltage, such as \"12 V\".")
    private Optional<String> volts;

    @Option(names = "--power", paramLabel = "POWER", description = "Rated output, such as \"250 W\" or \"0.5 hp\".")
    private Optional<String> power;

    @Option(
            names = "--work",
            paramLabel = "STATE",
            defaultValue = "rewound",
            description = "new, rewound, reconditioned or in-service; rewound unless given.")
    private String work;

    @Option(names = "--insulation-one-minute", paramLabel = "OHMS", description = "After one minute: 120Mohm.")
    private Optional<String> oneMinute;

    @Option(names = "--insulation-ten-minutes", paramLabel = "OHMS", description = "After ten minutes.")
    private Optional<String> tenMinutes;

    @Option(names = "--temperature", paramLabel = "TEMP", description = "Of the winding when measured: \"20 degC\".")
    private Optional<String> temperature;

    @Option(names = "--cold-resistance", paramLabel = "OHMS", description = "At that temperature, brush to brush.")
    private Optional<String> cold;

    @Option(
            names = "--hot-resistance",
            paramLabel = "OHMS",
            description = "Between the same points at the end of a run under load; needs --ambient.")
    private Optional<String> hot;

    @Option(names = "--ambient", paramLabel = "TEMP", description = "Temperature of the air at the end of that run.")
    private Optional<String> ambient;

    @Option(
            names = "--limit",
            paramLabel = "ID",
            description = "A limit that decides in place of the usual one, by its name in the answer; may be repeated.")
    private List<String> limits = new ArrayList<>();

    @Option(
            names = "--scheme",
            paramLabel = "NAME",
            description = "The high-potential scheme that decides, by a part of its name; any of them unless given.")
    private Optional<String> scheme;

    @Option(
            names = "--sheet",
            paramLabel = "FILE",
            description = "Instead write a sheet to print and sign, ending in .pdf, .svg or .png.")
    private Optional<Path> sheet;

    @Mixin
    private OutputOptions output;

    AcceptCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws BadInputException {
        Job job = JobReader.read(jobFile);
        Acceptance acceptance;
        try {
            acceptance = Acceptance.of(AcceptanceBasis.of(job, options()));
        } catch (ImpossibleWindingException e) {
            return console.impossible(jobFile, e.findings());
        } catch (IllegalArgumentException e) {
            throw new UsageException(e.getMessage());
        }
        if (sheet.isPresent()) {
            Drawings.write(
                    console,
                    AcceptanceSheet.of(job.title(), acceptance, Palette.COLOUR),
                    sheet.get(),
                    OptionalDouble.empty());
        } else {
            output.answer(
                    console,
                    switch (output.format()) {
                        case TEXT -> AcceptText.of(job.title(), acceptance);
                        case JSON -> AcceptJson.of(acceptance);
                        case CSV -> AcceptText.csv(acceptance);
                    });
        }
        return acceptance.verdict() == Acceptance.Verdict.NOT_ACCEPTED ? Exit.NO : Exit.DONE;
    }

    private AcceptanceBasis.Options options() {
        return new AcceptanceBasis.Options(
                kind.map(k -> Given.oneOf("--kind", k, List.of(MachineKind.values()), MachineKind::key)),
                quantity("--volts", volts, Quantity.Kind.VOLTAGE),
                quantity("--power", power, Quantity.Kind.POWER),
                Given.oneOf("--work", work, List.of(Work.values()), Work::key),
                quantity("--insulation-one-minute", oneMinute, Quantity.Kind.RESISTANCE),
                quantity("--insulation-ten-minutes", tenMinutes, Quantity.Kind.RESISTANCE),
                quantity("--temperature", temperature, Quantity.Kind.TEMPERATURE),
                quantity("--cold-resistance", cold, Quantity.Kind.RESISTANCE),
                quantity("--hot-resistance", hot, Quantity.Kind.RESISTANCE),
                quantity("--ambient", ambient, Quantity.Kind.TEMPERATURE),
                limits,
                scheme);
    }

    private static Optional<Quantity> quantity(String option, Optional<String> text, Quantity.Kind kind) {
        return text.map(t -> Given.quantity(option, t, kind));
    }
}
