package coilwright;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Text set down among the test's resources when it was first seen to be right. Each test that keeps one can write it
 * anew, for a change that is meant.
 */
public final class KeptText {
    private KeptText() {}

    /** {@return a file kept beside a test} */
    public static String of(Class<?> test, String file) {
        try (InputStream in = test.getResourceAsStream(file)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** {@return its lines} */
    public static List<String> lines(Class<?> test, String file) {
        return of(test, file).lines().toList();
    }
}
