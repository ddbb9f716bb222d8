package coilwright.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import picocli.CommandLine.Option;

/** Where an answer that has but one form goes to. */
final class FileOption {
    private static final Set<Path> STDOUT =
            Set.of(Path.of("/dev/stdout"), Path.of("/dev/fd/1"), Path.of("/proc/self/fd/1"));

    @Option(names = "--out", paramLabel = "FILE", description = "Write the answer into this file.")
    private Optional<Path> out;

    /** No file: the answer goes to standard output. */
    static FileOption none() {
        var option = new FileOption();
        option.out = Optional.empty();
        return option;
    }

    void answer(Console console, String text) {
        if (out.isEmpty() || STDOUT.contains(out.get())) {
            console.answer(text);
        } else {
            console.files().write(out.get(), text);
        }
    }
}
