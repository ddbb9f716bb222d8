package coilwright.cli;

import coilwright.desktop.Desktop;
import coilwright.job.BadInputException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Opens the window. */
@Command(
        name = "view",
        header = "Open a window that shows and changes a job and guides through readings at the bench.",
        description = {
            "Opens JOB, or a new job, and comes back when the window is closed. Without a display it leaves with 2."
        },
        footerHeading = "%nExamples:%n",
        footer = {"  coilwright view samples/jobs/orchard-pump-dynamo.yaml", "  coilwright view"})
final class ViewCommand implements Callable<Integer> {
    @Parameters(index = "0", arity = "0..1", paramLabel = "JOB", description = "Job file (YAML or JSON).")
    private Optional<Path> jobFile;

    ViewCommand(Console console) {}

    @Override
    public Integer call() throws BadInputException, InterruptedException {
        Optional<String> whyNot = Desktop.whyNot();
        if (whyNot.isPresent()) {
            throw new UsageException(whyNot.get());
        }
        Desktop.open(jobFile);
        return Exit.DONE;
    }
}
