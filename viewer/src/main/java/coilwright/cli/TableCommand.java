package coilwright.cli;

import coilwright.job.BadInputException;
import coilwright.job.ConnectionList;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.winding.Finding;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.Rules;
import coilwright.winding.Winding;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Which bars each coil lands on. */
@Command(
        name = "table",
        header = "Print which slots each coil lies in and which bars its leads land on.",
        description = {
            "Reads a job file, builds the winding and prints its pitches, its circuits, every coil, and what the "
                    + "rules of the trade say of it. Leaves with 1 where it cannot be wound."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  coilwright table samples/jobs/orchard-pump-dynamo.yaml",
            "  coilwright table samples/jobs/orchard-pump-dynamo.yaml --explain",
            "  coilwright table samples/jobs/hill-tram-motor.yaml --drawings drawings",
            "  coilwright table samples/jobs/orchard-pump-dynamo.yaml --format csv --out coils.csv"
        })
final class TableCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "JOB", description = "Job file (YAML or JSON).")
    private Path jobFile;

    @Option(names = "--explain", description = "Show the arithmetic, step by step with this job's numbers.")
    private boolean explain;

    @Option(names = "--drawings", paramLabel = "DIR", description = "Also write every view as SVG and PNG into DIR.")
    private Optional<Path> drawings;

    @Mixin
    private OutputOptions output;

    TableCommand(Console console) {
        this.console = console;
    }

    private TableCommand(Console console, Path jobFile) {
        this(console);
        this.jobFile = jobFile;
        this.drawings = Optional.empty();
        this.output = OutputOptions.usual();
    }

    /**
     * The command where the arguments are its name and a file and no more, as scripts mostly have it. There is nothing
     * to parse then, and loading the parser takes longer than all else.
     */
    static Optional<TableCommand> plain(String[] args, Console console) {
        if (args.length != 2
                || !args[0].equals("table")
                || args[1].isEmpty()
                || args[1].startsWith("-")
                || args[1].startsWith("@")) {
            return Optional.empty();
        }
        try {
            return Optional.of(new TableCommand(console, Path.of(args[1])));
        } catch (InvalidPathException e) {
            return Optional.empty();
        }
    }

    @Override
    public Integer call() throws BadInputException {
        Job job = JobReader.read(jobFile);
        Winding winding;
        try {
            winding = job.build();
        } catch (ImpossibleWindingException e) {
            return impossible(job, e.findings());
        }
        List<Finding> findings = Rules.check(winding);
        List<Path> written = drawings.isPresent() ? Drawings.all(console, job, winding, drawings.get()) : List.of();
        String answer = switch (output.format()) {
            case TEXT -> TableText.of(job, winding, findings, explain, written);
            case JSON -> TableJson.of(winding, findings);
            case CSV -> ConnectionList.toText(winding);
        };
        output.answer(console, answer);
        return Exit.DONE;
    }

    private int impossible(Job job, List<Finding> findings) {
        if (output.format() == OutputOptions.Format.JSON) {
            output.answer(console, TableJson.impossible(job.armature(), findings));
        }
        return console.impossible(jobFile, findings);
    }
}
