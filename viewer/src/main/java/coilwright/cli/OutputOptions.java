package coilwright.cli;

import coilwright.job.Visible;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Locale;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
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

    @Mixin
    private FileOption file;

    /** What is taken where neither is given. */
    static OutputOptions usual() {
        var options = new OutputOptions();
        options.format = Format.TEXT;
        options.file = FileOption.none();
        return options;
    }

    Format format() {
        return format;
    }

    void answer(Console console, String text) {
        file.answer(console, text);
    }
}
