package coilwright.drawing;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Widths of text in DejaVu Sans by a fixed table, so that layouts need no font of the platform. */
public final class TextWidths {
    private static final float[] REGULAR = new float[0x2600];
    private static final float[] BOLD = new float[0x2600];

    static {
        // Characters outside the table are taken as one em wide, the width of the widest letters.
        Arrays.fill(REGULAR, 1f);
        Arrays.fill(BOLD, 1f);
        try (var in = new BufferedReader(new InputStreamReader(
                TextWidths.class.getResourceAsStream("fonts/widths.txt"), StandardCharsets.US_ASCII))) {
            String line;
            while ((line = in.readLine()) != null) {
                if (line.startsWith("#")) {
                    continue;
                }
                String[] part = line.split(" ");
                int c = Integer.parseInt(part[0], 16);
                if (c < REGULAR.length) {
                    REGULAR[c] = Integer.parseInt(part[1]) / 2048f;
                    BOLD[c] = Integer.parseInt(part[2]) / 2048f;
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private TextWidths() {}

    /**
     * {@return width of a line of text in em}
     *
     * @param text one line
     * @param bold whether the letters are bold
     */
    public static double em(String text, boolean bold) {
        float[] table = bold ? BOLD : REGULAR;
        double sum = 0;
        for (int i = 0; i < text.length(); ) {
            int c = text.codePointAt(i);
            sum += c < table.length ? table[c] : 1;
            i += Character.charCount(c);
        }
        return sum;
    }

    /**
     * {@return the text, cut with an ellipsis where it is wider than the room}
     *
     * @param text one line
     * @param size of the letters, mm
     * @param bold whether the letters are bold
     * @param room mm
     */
    public static String fit(String text, double size, boolean bold, double room) {
        if (em(text, bold) * size <= room) {
            return text;
        }
        int end = text.length();
        while (end > 0) {
            end = text.offsetByCodePoints(end, -1);
            String cut = text.substring(0, end).strip() + "…";
            if (em(cut, bold) * size <= room) {
                return cut;
            }
        }
        return "";
    }

    /**
     * {@return the text in lines no wider than the room, as many as asked for; what is left over is cut with an
     * ellipsis}
     *
     * @param text words with spaces between
     * @param size of the letters, mm
     * @param bold whether the letters are bold
     * @param room mm
     * @param most lines, at least 1
     */
    public static List<String> wrap(String text, double size, boolean bold, double room, int most) {
        List<String> lines = new ArrayList<>();
        String line = "";
        String[] words = text.strip().split("\\s+");
        for (int i = 0; i < words.length; i++) {
            String longer = line.isEmpty() ? words[i] : line + " " + words[i];
            if (line.isEmpty() || em(longer, bold) * size <= room) {
                line = longer;
                continue;
            }
            if (lines.size() == most - 1) {
                line = line + " " + String.join(" ", Arrays.asList(words).subList(i, words.length));
                break;
            }
            lines.add(fit(line, size, bold, room));
            line = words[i];
        }
        if (!line.isEmpty()) {
            lines.add(fit(line, size, bold, room));
        }
        return lines;
    }
}
