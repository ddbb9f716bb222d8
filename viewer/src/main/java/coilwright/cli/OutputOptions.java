package coilwright.cli;

import coilwright.job.SafeFiles;
import coilwright.job.Visible;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

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

        String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** The words for the forms, for completion. */
    static final class Words extends ArrayList<String> {
        private static final long serialVersionUID = 1L;

        Words() {
            super(Arrays.stream(Format.values()).map(Format::word).toList());
        }
    }

    /** Reads a form. */
    static final class Converter implements ITypeConverter<Format> {
        @Override
        public Format convert(String word) {
            return Arrays.stream(Format.values())
                    .filter(f -> f.word().equals(word))
                    .findFirst()
                    .orElseThrow(() -> new TypeConversionException(
                            "is \"" + Visible.cut(word) + "\", but must be one of " + String.join(", ", new Words())));
        }
    }

    @Option(
            names = "--format",
            paramLabel = "FORM",
            defaultValue = "text",
            converter = Converter.class,
            completionCandidates = Words.class,
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
