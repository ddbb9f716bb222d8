package coilwright.cli;

import coilwright.job.Visible;
import coilwright.winding.Finding;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;

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
        out.print(Visible.answer(text));
        out.flush();
    }
}
