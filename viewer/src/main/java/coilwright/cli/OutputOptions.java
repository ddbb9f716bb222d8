package coilwright.cli;

import coilwright.job.SafeFiles;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Option;

/** In what form an answer is given, and where to. */
final class OutputOptions {
    /** Forms of answer. */
    enum Format {
        /** For a person. */
        TEXT,
        /** For scripts. */
        JSON,
        /** For a spreadsheet. */
        CSV;

        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    @Option(
            names = "--format",
            paramLabel = "FORM",
            defaultValue = "text",
            description = "text, json or csv; text unless given.")
    private Format format;

    @Option(names = "--out", paramLabel = "FILE", description = "Write the answer into this file.")
    private Optional<Path> out;

    Format format() {
        return format;
    }

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
