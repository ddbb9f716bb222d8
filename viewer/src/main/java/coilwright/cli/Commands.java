package coilwright.cli;

import coilwright.job.BadInputException;
import coilwright.job.NearWord;
import coilwright.job.Problem;
import coilwright.job.SafeFiles;
import coilwright.job.Visible;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** The commands there are. Only the one asked for is made, since making one costs start-up time. */
final class Commands {
    private static final Map<String, Function<Console, Object>> ALL = new LinkedHashMap<>();

    static {
        ALL.put("table", TableCommand::new);
        ALL.put("rules", RulesCommand::new);
        ALL.put("draw", DrawCommand::new);
        ALL.put("probe", ProbeCommand::new);
        ALL.put("diagnose", DiagnoseCommand::new);
        ALL.put("check", CheckCommand::new);
        ALL.put("identify", IdentifyCommand::new);
        ALL.put("repair", RepairCommand::new);
        ALL.put("rewind", RewindCommand::new);
        ALL.put("commutator", CommutatorCommand::new);
        ALL.put("accept", AcceptCommand::new);
        ALL.put("sheet", SheetCommand::new);
        ALL.put("view", ViewCommand::new);
        ALL.put("page", PageCommand::new);
        ALL.put("lesson", LessonCommand::new);
        ALL.put("completion", CompletionCommand::new);
    }

    private static final int LONGEST = 1000;

    private Commands() {}

    static List<String> names() {
        return List.copyOf(ALL.keySet());
    }

    /** The command line for these arguments: with one command where they name it, else with all. */
    static CommandLine line(String[] args, PrintStream out, PrintStream err) {
        Optional<String> named = Arrays.stream(args).findFirst().filter(ALL::containsKey);
        return line(named.map(List::of).orElseGet(Commands::names), new Console(out, err));
    }

    static CommandLine line(List<String> names, Console console) {
        var line = new CommandLine(new CoilwrightCommand());
        for (String name : names) {
            var command = new CommandLine(ALL.get(name).apply(console));
            command.getCommandSpec().addOption(helpOption());
            line.addSubcommand(name, command);
        }
        line.setOut(new PrintWriter(console.out(), true, StandardCharsets.UTF_8));
        line.setErr(new PrintWriter(console.err(), true, StandardCharsets.UTF_8));
        line.setUsageHelpWidth(100);
        line.setExpandAtFiles(false);
        Values.register(line);
        line.setParameterExceptionHandler((e, a) -> badUsage(e, console));
        line.setExecutionExceptionHandler((e, command, parsed) -> failed(e, console));
        return line;
    }

    private static OptionSpec helpOption() {
        return OptionSpec.builder("-h", "--help")
                .usageHelp(true)
                .description("Show this help.")
                .build();
    }

    private static int badUsage(ParameterException e, Console console) {
        CommandSpec command = e.getCommandLine().getCommandSpec();
        Optional<String> unknown =
                e instanceof UnmatchedArgumentException u && !u.getUnmatched().isEmpty()
                        ? Optional.of(u.getUnmatched().get(0))
                        : Optional.empty();
        if (unknown.isPresent()) {
            boolean option = unknown.get().startsWith("-");
            String what = option ? "option" : command.subcommands().isEmpty() ? "argument" : "command";
            var known = option
                    ? command.optionsMap().keySet()
                    : command.subcommands().keySet();
            console.complain("coilwright: there is no " + what + " \"" + Visible.cut(unknown.get()) + "\" here"
                    + NearWord.of(unknown.get(), known)
                            .map(near -> ": did you mean " + near + "?")
                            .orElse(""));
        } else {
            console.complain("coilwright: " + oneLine(e.getMessage()));
        }
        console.complain("\"" + command.qualifiedName() + " --help\" shows how it is used");
        return Exit.BAD;
    }

    private static int failed(Exception e, Console console) {
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
