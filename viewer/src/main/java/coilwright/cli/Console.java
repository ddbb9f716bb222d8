package coilwright.cli;

import coilwright.winding.Finding;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;

/**
 * Where a command speaks.
 *
 * @param out answers
 * @param err complaints
 */
record Console(PrintStream out, PrintStream err) {
    void complain(String line) {
        err.print(line + "\n");
        err.flush();
    }

    /** Says why a winding cannot be wound, and gives the exit code for that. */
    int impossible(Path jobFile, List<Finding> findings) {
        findings.forEach(f -> complain(jobFile + ": " + f.message()));
        return Exit.NO;
    }

    void answer(String text) {
        out.print(text);
        out.flush();
    }
}
