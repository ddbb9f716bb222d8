package coilwright.job;

import coilwright.file.SafeFiles;
import java.io.FileInputStream;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;

/** Reads a whole input file as UTF-8 text, within bounds. */
final class InputText {
    private InputText() {}

    /**
     * The text of a file, without its byte order mark where it has one.
     *
     * @param what the kind of file, with its article, for messages
     * @param mostBytes bound on its length
     */
    static String read(Path path, String what, int mostBytes) throws BadInputException {
        return decode(bytes(path, what, mostBytes), new Problems(path.toString()));
    }

    /**
     * The lines of a file that end in a line feed.
     *
     * @param bytes that the file has, with what follows the last line feed
     * @param cut whether anything follows it
     */
    record Lines(String text, long bytes, boolean cut) {}

    /** The whole lines of a file, as {@link #read} reads it; what was left unfinished may end within a character. */
    static Lines wholeLines(Path path, String what, int mostBytes) throws BadInputException {
        byte[] all = bytes(path, what, mostBytes);
        int end = all.length;
        while (end > 0 && all[end - 1] != '\n') {
            end--;
        }
        return new Lines(decode(Arrays.copyOf(all, end), new Problems(path.toString())), all.length, end < all.length);
    }

    /** A plain stream, which the Java machine has at hand; a channel, which takes longer to load, tells why not. */
    private static InputStream open(Path path) throws IOException {
        try {
            return new FileInputStream(path.toFile());
        } catch (FileNotFoundException | UnsupportedOperationException e) {
            return Files.newInputStream(path);
        }
    }

    private static byte[] bytes(Path path, String what, int mostBytes) throws BadInputException {
        var problems = new Problems(path.toString());
        byte[] bytes;
        if (Files.isDirectory(path)) {
            throw problems.only(0, "", "is a folder, not " + what);
        }
        try (InputStream in = open(path)) {
            bytes = in.readNBytes(mostBytes + 1);
        } catch (NoSuchFileException e) {
            throw problems.only(0, "", "there is no such file");
        } catch (AccessDeniedException e) {
            throw problems.only(0, "", "may not be read: permission denied");
        } catch (IOException e) {
            throw problems.only(0, "", "cannot be read: " + SafeFiles.reason(e));
        }
        if (bytes.length > mostBytes) {
            throw problems.only(0, "", "is longer than " + mostBytes + " bytes, the most that " + what + " may have");
        }
        return bytes;
    }

    private static String decode(byte[] bytes, Problems problems) throws BadInputException {
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(bytes.length);
        boolean bad = decoder.decode(in, out, true).isError();
        out.flip();
        String text = out.toString();
        if (bad) {
            throw problems.only(lineAt(text, text.length()), "", "is not UTF-8 text from here on: save it as UTF-8");
        }
        return text.startsWith("\uFEFF") ? text.substring(1) : text;
    }

    /** The line of a place in a text, counted from 1; lines end as in {@link String#lines}. */
    static int lineAt(String text, int at) {
        int line = 1;
        for (int i = 0; i < at; i++) {
            char c = text.charAt(i);
            if (c == '\n' || (c == '\r' && !(i + 1 < text.length() && text.charAt(i + 1) == '\n'))) {
                line++;
            }
        }
        return line;
    }
}
