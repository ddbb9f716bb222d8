package coilwright.cli;

import coilwright.file.SafeFiles;
import coilwright.job.BadInputException;
import coilwright.job.NearWord;
import coilwright.job.Problem;
import coilwright.job.Visible;
import java.io.IOException;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** Says what is wrong with the arguments or the input, and gives the exit code for it. */
final class Complaints implements IParameterExceptionHandler, IExecutionExceptionHandler {
    private static final int LONGEST = 1000;

    private final Console console;

    Complaints(Console console) {
        this.console = console;
    }

    @Override
    public int handleParseException(ParameterException e, String[] args) {
        CommandSpec command = e.getCommandLine().getCommandSpec();
        if (e instanceof UnmatchedArgumentException u && !u.getUnmatched().isEmpty()) {
            String unknown = u.getUnmatched().get(0);
            boolean option = unknown.startsWith("-");
            String what = option ? "option" : command.subcommands().isEmpty() ? "argument" : "command";
            var known = option
                    ? command.optionsMap().keySet()
                    : command.subcommands().keySet();
            console.complain("coilwright: there is no " + what + " \"" + Visible.cut(unknown) + "\" here"
                    + NearWord.of(unknown, known)
                            .map(near -> ": did you mean " + near + "?")
                            .orElse(""));
        } else {
            console.complain("coilwright: " + oneLine(e.getMessage()));
        }
        console.complain("\"" + command.qualifiedName() + " --help\" shows how it is used");
        return Exit.BAD;
    }

    @Override
    public int handleExecutionException(Exception e, CommandLine command, ParseResult parsed) {
        return of(e, console);
    }

    /** Says why a command failed. */
    static int of(Exception e, Console console) {
        if (e instanceof BadInputException bad) {
            for (Problem problem : bad.problems()) {
                console.complain(problem.toString());
            }
        } else if (e instanceof UsageException) {
            console.complain("coilwright: " + e.getMessage());
        } else if (e instanceof IOException io) {
            console.complain("coilwright: " + SafeFiles.reason(io));
        } else {
            console.complain(unexpected(e));
        }
        return Exit.BAD;
    }

    /** One line for what should never happen. */
    static String unexpected(Throwable e) {
        StackTraceElement[] trace = e.getStackTrace();
        String where = trace.length == 0 ? "" : " at " + trace[0];
        String what = e.getClass().getSimpleName() + (e.getMessage() == null ? "" : ": " + oneLine(e.getMessage()));
        return "coilwright: this should not have happened; please report it with the input that caused it: " + what
                + where;
    }

    private static String oneLine(String text) {
        return Visible.cut(String.valueOf(text).replaceAll("\\s*\\R\\s*", " "), LONGEST);
    }
}
