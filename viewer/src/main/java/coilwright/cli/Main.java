package coilwright.cli;

import coilwright.file.SafeFiles;
import coilwright.job.Visible;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** Entry point of the command line. */
public final class Main {
    /** Name of the property that holds the command of a launcher which is given the rest alone. */
    private static final String COMMAND = "coilwright.command";

    private Main() {}

    /** Runs one command and leaves with its exit code. */
    public static void main(String[] given) {
        String[] args = whole(System.getProperty(COMMAND, ""), given);
        var stdout = new WatchedStream(new FileOutputStream(FileDescriptor.out));
        var stderr = new FileOutputStream(FileDescriptor.err);
        var out = new PrintStream(stdout, false, StandardCharsets.UTF_8);
        var err = new PrintStream(stderr, true, StandardCharsets.UTF_8);
        int code = run(args, out, err);
        out.flush();
        if (stdout.trouble().isPresent() && !stdout.isPipe()) {
            err.println("coilwright: cannot write the answer: "
                    + SafeFiles.reason(stdout.trouble().get()));
            code = Exit.BAD;
        }
        System.exit(code);
    }

    private static String[] whole(String command, String[] given) {
        if (command.isEmpty()) {
            return given;
        }
        String[] args = new String[given.length + 1];
        args[0] = command;
        System.arraycopy(given, 0, args, 1, given.length);
        return args;
    }

    /**
     * Runs one command.
     *
     * @param out where answers go
     * @param err where complaints go
     * @return 0 done; 1 done, and the answer is no; 2 bad input or usage
     */
    public static int run(String[] args, PrintStream out, PrintStream err) {
        try {
            return Commands.run(args, new Console(out, err));
        } catch (OutOfMemoryError e) {
            err.println("coilwright: not enough memory for this job; java -Xmx2g -jar … gives more");
            return Exit.BAD;
        } catch (RuntimeException | StackOverflowError e) {
            err.println(Visible.of(Complaints.unexpected(e)));
            return Exit.BAD;
        }
    }
}
