package coilwright.cli;

import coilwright.job.Visible;
import coilwright.winding.Finding;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * Where a command speaks.
 *
 * @param out answers
 * @param err complaints
 * @param files what it writes
 */
record Console(PrintStream out, PrintStream err, OutFiles files) {
    private static final int LONGEST = 5000;

    Console(PrintStream out, PrintStream err) {
        this(out, err, new OutFiles());
    }

    /** Complains in one line, whatever the words of the user in it hold. */
    void complain(String line) {
        err.print(Visible.cut(line, LONGEST) + "\n");
        err.flush();
    }

    /** Says why a winding cannot be wound, and gives the exit code for that. */
    int impossible(Path jobFile, List<Finding> findings) {
        findings.forEach(f -> complain(jobFile + ": " + f.message()));
        return Exit.NO;
    }

    void answer(String text) {
        out.print(shown(text));
        out.flush();
    }

    /**
     * Text without anything that could command a terminal or turn other text about: such characters are shown as their
     * numbers, the way JSON has them, so that an answer in JSON says the same as before.
     */
    static String shown(String text) {
        int plain = 0;
        while (plain < text.length() && isPlain(text.charAt(plain))) {
            plain++;
        }
        if (plain == text.length()) {
            return text;
        }
        StringBuilder to = new StringBuilder(text.substring(0, plain));
        for (int i = plain; i < text.length(); i++) {
            char c = text.charAt(i);
            if (isPlain(c)) {
                to.append(c);
            } else {
                to.append(String.format(Locale.ROOT, "\\u%04x", (int) c));
            }
        }
        return to.toString();
    }

    private static boolean isPlain(char c) {
        boolean turnsOrBreaks = (c >= '\u2028' && c <= '\u202e') || (c >= '\u2066' && c <= '\u2069');
        return c == '\n' || c == '\t' || !(Character.isISOControl(c) || turnsOrBreaks);
    }
}
