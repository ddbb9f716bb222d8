package coilwright.cli;

import java.io.PrintStream;

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

    void answer(String text) {
        out.print(text);
        out.flush();
    }
}
