package coilwright.cli;

import coilwright.job.BadInputException;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.rewind.WindingWay;
import coilwright.sheet.BenchPage;
import coilwright.winding.ImpossibleWindingException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes a page for the bench. */
@Command(
        name = "page",
        header = "Write one HTML page for a telephone or tablet at the bench.",
        description = {
            "The page needs no network: drawings that tell what is touched, expected readings with room for those "
                    + "taken, and steps to tick off. Readings stay in the browser and leave it as CSV for diagnose.",
            "Further tests go on the same page with --also, the order of work with --way."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  coilwright page samples/jobs/orchard-pump-dynamo.yaml --out bench.html --test drop --amps 2",
            "  coilwright page job.yaml --test drop --feed 1,9 --amps 2 --also resistance,ground --out bench.html",
            "  coilwright page samples/jobs/pantry-mixer-motor.yaml --test drop --way coil-by-coil --out rewind.html"
        })
final class PageCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "JOB", description = "Job file (YAML or JSON).")
    private Path jobFile;

    @Option(names = "--out", paramLabel = "FILE", required = true, description = "File to write, ending in .html.")
    private Path out;

    @Option(
            names = "--way",
            paramLabel = "WAY",
            description = "Also the order of work, wound this way: formed-coils, coil-by-coil or opposite-pairs.")
    private Optional<String> way;

    @Mixin
    private ProbeOptions options;

    @Option(
            names = "--also",
            paramLabel = "TEST",
            split = ",",
            description = "Further tests, each set up as usual, such as resistance,ground.")
    private List<String> also = new ArrayList<>();

    PageCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws BadInputException {
        String name = out.toString().toLowerCase(Locale.ROOT);
        if (!name.endsWith(".html") && !name.endsWith(".htm")) {
            throw new UsageException("--out is \"" + out + "\", but a page is named .html");
        }
        Job job = JobReader.read(jobFile);
        String page;
        try {
            page = BenchPage.of(
                    job,
                    new BenchPage.Contents(jobFile.getFileName().toString(), walks(job), way.map(WindingWay::named)));
        } catch (ImpossibleWindingException e) {
            return console.impossible(jobFile, e.findings());
        } catch (IllegalArgumentException e) {
            throw new UsageException(e.getMessage());
        }
        console.files().write(out, page);
        return Exit.DONE;
    }

    private List<BenchPage.Walk> walks(Job job) {
        List<ProbeOptions> tests = new ArrayList<>(List.of(options));
        also.forEach(word -> tests.add(ProbeOptions.usual(word)));
        List<BenchPage.Walk> out = new ArrayList<>();
        for (ProbeOptions test : tests) {
            if (test.blade()) {
                throw new UsageException("a blade gives no readings to enter: print its sheet with"
                        + " coilwright probe JOB --test " + ProbeBlade.WORD + " --sheet FILE.pdf");
            }
            out.add(new Prober(job, test).walk());
        }
        return out;
    }
}
