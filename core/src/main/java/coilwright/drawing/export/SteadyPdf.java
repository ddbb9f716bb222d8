package coilwright.drawing.export;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Takes the date and the random file number out of a PDF, so that the same pages give the same bytes. */
final class SteadyPdf {
    private static final Pattern DATE = Pattern.compile("/CreationDate \\([^)]*\\)\\n?");
    private static final Pattern ENTRY = Pattern.compile("(?m)^(\\d{10}) (\\d{5} n)");
    private static final Pattern START = Pattern.compile("startxref\\n(\\d+)");
    private static final Pattern ID = Pattern.compile("/ID \\[<([0-9A-Fa-f]{32})> <([0-9A-Fa-f]{32})>\\]");

    private SteadyPdf() {}

    static byte[] withoutDate(byte[] pdf) throws IOException {
        // One character a byte, so that places in the text are places in the file.
        String text = new String(pdf, StandardCharsets.ISO_8859_1);
        int table = text.lastIndexOf("\nxref\n");
        int info = text.lastIndexOf("/CreationDate (");
        Matcher date = DATE.matcher(text);
        if (table < 0 || info < 0 || !date.find(info) || date.start() > table) {
            throw new IOException("the PDF has no date of creation where one was looked for");
        }
        int from = date.start();
        int gone = date.end() - from;
        String body = text.substring(0, from) + text.substring(date.end(), table);
        String tail = text.substring(table);
        tail = ENTRY.matcher(tail).replaceAll(m -> {
            long at = Long.parseLong(m.group(1));
            return String.format(Locale.ROOT, "%010d %s", at > from ? at - gone : at, m.group(2));
        });
        tail = START.matcher(tail).replaceAll(m -> "startxref\n" + (Long.parseLong(m.group(1)) - gone));
        Matcher id = ID.matcher(tail);
        if (!id.find()) {
            throw new IOException("the PDF has no file number where one was looked for");
        }
        String own = digest(body);
        tail = id.replaceFirst("/ID [<" + own + "> <" + own + ">]");
        return (body + tail).getBytes(StandardCharsets.ISO_8859_1);
    }

    private static String digest(String body) {
        try {
            byte[] sum = MessageDigest.getInstance("MD5").digest(body.getBytes(StandardCharsets.ISO_8859_1));
            return HexFormat.of().withUpperCase().formatHex(sum);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("this Java has no MD5, which every Java must have", e);
        }
    }
}
