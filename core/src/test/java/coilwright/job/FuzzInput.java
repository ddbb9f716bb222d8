package coilwright.job;

import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** What a fuzzer feeds in; shown with everything unseen escaped. */
final class FuzzInput {
    private static final int MOST_SHOWN = 4000;

    private final byte[] bytes;
    private final String text;

    private FuzzInput(byte[] bytes, String text) {
        this.bytes = bytes;
        this.text = text;
    }

    static FuzzInput of(byte[] bytes) {
        return new FuzzInput(bytes.clone(), new String(bytes, StandardCharsets.UTF_8));
    }

    static FuzzInput of(String text) {
        return new FuzzInput(text.getBytes(StandardCharsets.UTF_8), text);
    }

    byte[] bytes() {
        return bytes.clone();
    }

    /** The same as text, lone surrogates and all. */
    String text() {
        return text;
    }

    @Override
    public String toString() {
        var out = new StringBuilder(text.length() + " characters: ");
        text.chars().limit(MOST_SHOWN).forEach(c -> {
            if (c >= ' ' && c < 0x7f && c != '\\') {
                out.append((char) c);
            } else {
                out.append(c == '\n' ? "\\n" : String.format(Locale.ROOT, "\\u%04x", c));
            }
        });
        return out.toString();
    }
}
