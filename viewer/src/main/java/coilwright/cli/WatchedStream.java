package coilwright.cli;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Keeps the first trouble in writing, which a print stream would swallow. */
final class WatchedStream extends FilterOutputStream {
    private Optional<IOException> trouble = Optional.empty();

    WatchedStream(OutputStream out) {
        super(out);
    }

    Optional<IOException> trouble() {
        return trouble;
    }

    /**
     * Whether it is standard output and leads into a pipe. A reader such as head that has seen enough closes it; that is
     * no fault of ours. The system words the trouble in the language of its user, so that the words do not tell.
     */
    boolean isPipe() {
        boolean named = trouble.map(e -> String.valueOf(e.getMessage()).contains("pipe"))
                .orElse(false);
        try {
            return named
                    || Files.readSymbolicLink(Path.of("/proc/self/fd/1"))
                            .getFileName()
                            .toString()
                            .matches("(pipe|socket):.*");
        } catch (IOException | UnsupportedOperationException e) {
            return named;
        }
    }

    @Override
    public void write(int b) throws IOException {
        write(new byte[] {(byte) b}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
        try {
            out.write(bytes, from, length);
        } catch (IOException e) {
            if (trouble.isEmpty()) {
                trouble = Optional.of(e);
            }
            throw e;
        }
    }
}
