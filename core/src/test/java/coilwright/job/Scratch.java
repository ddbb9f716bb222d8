package coilwright.job;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A file of a fuzzer, written over for each case. Its name holds what a name may hold. */
final class Scratch {
    private static final Path FOLDER = folder();

    private Scratch() {}

    private static Path folder() {
        try {
            Path folder = Files.createTempDirectory("fuzz");
            Runtime.getRuntime().addShutdownHook(new Thread(() -> delete(folder)));
            return folder;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void delete(Path folder) {
        try (var files = Files.list(folder)) {
            for (Path f : files.toList()) {
                Files.delete(f);
            }
            Files.delete(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Path with(FuzzInput input, String ending) throws IOException {
        return Files.write(FOLDER.resolve("a\u001b[31m\n" + ending), input.bytes());
    }
}
