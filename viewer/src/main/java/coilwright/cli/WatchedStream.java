package coilwright.cli;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
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
