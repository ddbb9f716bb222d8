package coilwright.cli;

import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.job.BadInputException;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.job.Plan;
import coilwright.job.Quantity;
import coilwright.job.Visible;
import coilwright.job.WireChoice;
import coilwright.rewind.InsulationBuild;
import coilwright.rewind.Substitution;
import coilwright.rewind.WireSizes;
import coilwright.sheet.RewindReport;
import coilwright.sheet.RewindSheet;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.WindingType;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The rewind worked out. */
@Command(
        name = "rewind",
        header = "Work out a rewind: wire, coils, slot fill, resistance, another voltage or winding.",
        description = {
            "Works out what the job's sections rating, wire and core allow, and says which keys would tell the rest. "
                    + "--volts to --plex take the place of the same keys of the job's plan. Leaves with 1 where what "
                    + "is to be wound does not go into the slots or cannot be wound."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  coilwright rewind samples/jobs/orchard-pump-dynamo.yaml",
            "  coilwright rewind samples/jobs/orchard-pump-dynamo.yaml --volts 24V --sheet plan.pdf",
            "  coilwright rewind samples/jobs/orchard-pump-dynamo.yaml --turns 7 --wire \"2 x 0.8 mm\""
                    + " --insulation iec-grade-2"
        })
final class RewindCommand implements Callable<Integer> {
    private static final Pattern IN_HAND = Pattern.compile("\\s*(\\d{1,3})\\s*[xX×]\\s*(.+)");

    private final Console console;

    @Parameters(index = "0", paramLabel = "JOB", description = "Job file (YAML or JSON).")
    private Path jobFile;

    @Option(names = "--volts", paramLabel = "V", description = "Planned voltage, such as 12V.")
    private Optional<String> volts;

    @Option(names = "--speed", paramLabel = "N", description = "Planned speed, such as \"1500 rpm\".")
    private Optional<String> speed;

    @Option(names = "--turns", paramLabel = "N", description = "Planned turns per coil.")
    private Optional<Integer> turns;

    @Option(
            names = "--wire",
            paramLabel = "WIRE",
            description = "Planned wire, such as \"18 AWG\", \"2 x 0.85 mm\" or \"19 SWG\".")
    private Optional<String> wire;

    @Option(
            names = "--insulation",
            paramLabel = "BUILD",
            completionCandidates = Given.Builds.class,
            description = "Covering of the planned wire: ${COMPLETION-CANDIDATES}; that nearest to the found wire's "
                    + "unless given.")
    private Optional<String> insulation;

    @Option(names = "--type", paramLabel = "TYPE", description = "Planned winding, lap or wave.")
    private Optional<String> type;

    @Option(names = "--plex", paramLabel = "M", description = "Its plex: 1 simplex, 2 duplex, 3 triplex.")
    private Optional<Integer> plex;

    @Option(
            names = "--temperature",
            paramLabel = "T",
            description = "Temperature at which resistances are told, such as \"75 °C\"; may be repeated; 20 and 75 °C "
                    + "unless given.")
    private List<String> temperatures = List.of();

    @Option(
            names = "--allowance",
            paramLabel = "SHARE",
            defaultValue = "10%",
            description = "Wire to buy for waste and joints; 10%% unless given.")
    private String allowance;

    @Option(
            names = "--substitutes",
            paramLabel = "N",
            defaultValue = "5",
            description = "How many wires to list by nearness in area, and as many by fit; 5 unless given.")
    private int substitutes;

    @Option(
            names = "--drawing",
            paramLabel = "FILE",
            description =
                    "Also draw a slot in section with the wire that is to be wound, ending in .pdf, .svg or .png.")
    private Optional<Path> drawing;

    @Option(
            names = "--sheet",
            paramLabel = "FILE",
            description = "Instead write a plan to print and take to the bench, ending in .pdf, .svg or .png.")
    private Optional<Path> sheet;

    @Mixin
    private OutputOptions output;

    RewindCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws BadInputException {
        Job job = JobReader.read(jobFile);
        RewindReport report;
        try {
            report = RewindReport.of(job, plan(job), settings());
        } catch (ImpossibleWindingException e) {
            return console.impossible(jobFile, e.findings());
        } catch (IllegalArgumentException e) {
            throw new UsageException(jobFile + ": " + e.getMessage());
        }
        refuseWhatCannotBeWorkedOut(report);
        drawing.ifPresent(file -> draw(report, file));
        if (sheet.isPresent()) {
            Drawings.write(console, RewindSheet.of(report), sheet.get(), OptionalDouble.empty());
        } else {
            output.answer(
                    console,
                    switch (output.format()) {
                        case TEXT -> RewindText.of(report);
                        case JSON -> RewindJson.of(report);
                        case CSV -> RewindCsv.of(report);
                    });
        }
        return report.canBeWound() ? Exit.DONE : Exit.NO;
    }

    private void draw(RewindReport report, Path file) {
        Drawing section = report.slotSection(Palette.COLOUR)
                .orElseThrow(() -> new UsageException("--drawing needs a slot, wire with its covering, and turns, but "
                        + jobFile + " does not tell them: core.slot, wire.insulation, winding.turns"));
        Drawings.write(console, DrawingPages.of(section), file, OptionalDouble.empty());
    }

    private RewindReport.Settings settings() {
        List<Double> celsius = temperatures.stream()
                .map(t -> Given.amount("--temperature", t, Quantity.Kind.TEMPERATURE, "°C"))
                .toList();
        return Given.valid(() -> new RewindReport.Settings(
                celsius.isEmpty() ? RewindReport.Settings.USUAL.celsius() : celsius,
                Given.share("--allowance", allowance),
                substitutes));
    }

    private Plan plan(Job job) {
        Plan own = job.particulars().plan().orElse(Plan.same());
        turns.filter(n -> n < 1 || n > Job.MAX_TURNS).ifPresent(n -> {
            throw new UsageException("--turns is " + n + ", but must be from 1 to " + Job.MAX_TURNS);
        });
        if (plex.isPresent() && type.isEmpty()) {
            throw new UsageException("--plex is given without --type: say lap or wave");
        }
        Optional<WindingType> kind = type.map(RewindCommand::kind);
        return new Plan(
                volts.map(v -> Given.positive("--volts", v, Quantity.Kind.VOLTAGE))
                        .or(own::volts),
                speed.map(n -> Given.positive("--speed", n, Quantity.Kind.SPEED))
                        .or(own::speed),
                turns.isPresent() ? OptionalInt.of(turns.get()) : own.turns(),
                wire(job).or(own::wire),
                kind.or(own::type),
                kind.isPresent() ? Given.whole(plex) : own.plex(),
                kind.isPresent() ? Optional.empty() : own.direction());
    }

    private static WindingType kind(String word) {
        return switch (word) {
            case "lap" -> WindingType.LAP;
            case "wave" -> WindingType.WAVE;
            default -> throw new UsageException("--type is \"" + Visible.cut(word) + "\", but must be lap or wave");
        };
    }

    private Optional<WireChoice> wire(Job job) {
        if (wire.isEmpty()) {
            if (insulation.isPresent()) {
                throw new UsageException("--insulation is given without --wire: name the wire it is on");
            }
            return Optional.empty();
        }
        Matcher m = IN_HAND.matcher(wire.get());
        String size = m.matches() ? m.group(2).strip() : wire.get().strip();
        int inHand = m.matches() ? Integer.parseInt(m.group(1)) : 1;
        if (inHand < 1 || inHand > WireChoice.MOST_IN_HAND) {
            throw new UsageException(
                    "--wire has " + inHand + " in hand, but must have from 1 to " + WireChoice.MOST_IN_HAND);
        }
        try {
            return Optional.of(new WireChoice(
                    Optional.of(size),
                    insulation.map(Given::build).or(() -> likeFound(job, size)),
                    Optional.empty(),
                    OptionalInt.of(inHand),
                    Optional.empty()));
        } catch (IllegalArgumentException e) {
            throw new UsageException("--wire: " + e.getMessage());
        }
    }

    /** The covering nearest to that of the wire found, where that is known. */
    private static Optional<InsulationBuild> likeFound(Job job, String size) {
        return job.particulars()
                .wire()
                .filter(WireChoice::isCoveringKnown)
                .map(w -> Substitution.Wanted.inPlaceOf(w.conductor())
                        .builds()
                        .get(WireSizes.parse(size).system()));
    }

    private void refuseWhatCannotBeWorkedOut(RewindReport report) {
        boolean asked = volts.isPresent() || speed.isPresent();
        boolean known = report.change()
                .map(c -> c.refused().isPresent() || c.redesign().isPresent())
                .orElse(true);
        if (asked && !known) {
            throw new UsageException(jobFile + " tells too little to plan another voltage or speed. It needs "
                    + String.join("; ", report.missing()));
        }
    }
}
