package coilwright.cli;

import coilwright.job.SafeFiles;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Where an answer that has but one form goes to. */
final class FileOption {
    @Option(names = "--out", paramLabel = "FILE", description = "Write the answer into this file.")
    private Optional<Path> out;

    void answer(Console console, String text) {
        if (out.isEmpty()) {
            console.answer(text);
            return;
        }
        try {
            SafeFiles.write(out.get(), text);
        } catch (IOException e) {
            throw new UsageException(out.get() + ": cannot be written: " + SafeFiles.reason(e));
        }
    }
}
