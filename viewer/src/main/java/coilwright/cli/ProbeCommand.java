package coilwright.cli;

import coilwright.bench.PairReading;
import coilwright.drawing.DrawingPages;
import coilwright.job.BadInputException;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.job.ReadingsFile;
import coilwright.sheet.TestSheet;
import coilwright.winding.ImpossibleWindingException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What a meter should read. */
@Command(
        name = "probe",
        header = "Tell where the probes go and what they should read there on a sound winding.",
        description = {
            "Reads a job file and works out the readings of one test, pair by pair. With --reading it tells where a "
                    + "probe should see that reading, and leaves with 1 where none should."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  coilwright probe samples/jobs/orchard-pump-dynamo.yaml --test drop --amps 2",
            "  coilwright probe samples/jobs/orchard-pump-dynamo.yaml --test growler --angle 10 --explain",
            "  coilwright probe samples/jobs/orchard-pump-dynamo.yaml --test resistance --pair 1,9",
            "  coilwright probe samples/jobs/quarry-winch-motor.yaml --test growler-blade",
            "  coilwright probe samples/jobs/orchard-pump-dynamo.yaml --test drop --sheet drop-test.pdf",
            "  coilwright probe samples/jobs/pantry-mixer-motor.yaml --test drop --fault open-coil:3"
        })
final class ProbeCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "JOB", description = "Job file (YAML or JSON).")
    private Path jobFile;

    @Mixin
    private ProbeOptions options;

    @Option(
            names = "--reading",
            paramLabel = "X",
            description = "Tell which bars should read this: 0.02, 20 mV, 0.1 ohm. Growler readings are relative "
                    + "unless --known is given.")
    private Optional<String> reading;

    @Option(
            names = "--tolerance",
            paramLabel = "SHARE",
            defaultValue = "5%",
            description = "How near it must be; 5%% unless given.")
    private String tolerance;

    @Option(names = "--explain", description = "Show the steps of the test and what a deviation means.")
    private boolean explain;

    @Option(
            names = "--sheet",
            paramLabel = "FILE",
            description = "Instead write a sheet to print and fill in at the bench, ending in .pdf, .svg or .png.")
    private Optional<Path> sheet;

    @Mixin
    private OutputOptions output;

    ProbeCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws BadInputException {
        Job job = JobReader.read(jobFile);
        try {
            if (options.blade()) {
                return blade(job);
            }
            Prober prober = new Prober(job, options);
            if (sheet.isPresent()) {
                refuseReadingOnASheet();
                return sheet(prober.sheet());
            }
            return reading.isPresent() ? inverse(prober, reading.get()) : forward(prober.probe());
        } catch (ImpossibleWindingException e) {
            return console.impossible(jobFile, e.findings());
        } catch (IllegalArgumentException e) {
            throw new UsageException(e.getMessage());
        }
    }

    private int forward(Probe probe) {
        output.answer(
                console,
                switch (output.format()) {
                    case TEXT -> ProbeText.of(probe, explain);
                    case JSON -> ProbeJson.of(probe);
                    case CSV -> ReadingsFile.of(probe.readings()).toText();
                });
        return Exit.DONE;
    }

    private int inverse(Prober prober, String wanted) {
        List<PairReading> pairs = prober.where(wanted, Given.share("--tolerance", tolerance));
        Probe probe = prober.probe();
        output.answer(
                console,
                switch (output.format()) {
                    case TEXT -> ProbeText.pairs(probe, wanted + " within " + tolerance, pairs);
                    case JSON -> ProbeJson.pairs(probe.test(), probe.key(), pairs);
                    case CSV -> ReadingsFile.of(pairs).toText();
                });
        return pairs.isEmpty() ? Exit.NO : Exit.DONE;
    }

    private int blade(Job job) {
        if (reading.isPresent()) {
            throw new UsageException(
                    "--reading is not used with --test " + ProbeBlade.WORD + ": a blade gives no number");
        }
        if (sheet.isPresent()) {
            return sheet(TestSheet.blade(job, job.benchArmature(), job.growler(), TestSheet.Options.usual()));
        }
        ProbeBlade blade = ProbeBlade.of(job, job.benchArmature(), options.shorts());
        output.answer(
                console,
                switch (output.format()) {
                    case TEXT -> ProbeText.blade(blade, explain);
                    case JSON -> ProbeJson.blade(blade);
                    case CSV -> bladeCsv(blade);
                });
        return Exit.DONE;
    }

    private void refuseReadingOnASheet() {
        if (reading.isPresent()) {
            throw new UsageException("--reading and --sheet were both given: a sheet lists every pair");
        }
    }

    private int sheet(DrawingPages pages) {
        Drawings.write(console, pages, sheet.orElseThrow(), OptionalDouble.empty());
        return Exit.DONE;
    }

    private static String bladeCsv(ProbeBlade blade) {
        StringBuilder out = new StringBuilder("short,slot,pull,clockDegrees\n");
        for (ProbeBlade.Case c : blade.cases()) {
            c.felt()
                    .forEach(s -> out.append(String.format(
                            Locale.ROOT, "%s,%d,%.6f,%.3f\n", c.words(), s.slot(), s.pull(), s.clockDegrees())));
        }
        return out.toString();
    }
}
