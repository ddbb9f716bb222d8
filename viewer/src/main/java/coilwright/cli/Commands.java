package coilwright.cli;

import coilwright.job.BadInputException;
import coilwright.job.NearWord;
import coilwright.job.Problem;
import coilwright.file.SafeFiles;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
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
        ALL.put("man", ManCommand::new);
    }

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
        line.setExecutionStrategy(parsed -> {
            noteFiles(parsed, console.files());
            return new CommandLine.RunLast().execute(parsed);
        });
        line.setParameterExceptionHandler((e, a) -> badUsage(e, console));
        line.setExecutionExceptionHandler((e, command, parsed) -> failed(e, console));
        return line;
    }

    /** Files to read stand by themselves, files to write behind options. */
    private static void noteFiles(ParseResult parsed, OutFiles files) {
        if (parsed.hasSubcommand()) {
            noteFiles(parsed.subcommand(), files);
            return;
        }
        parsed.matchedPositionals().forEach(a -> paths(a).forEach(files::reads));
        Map<String, Path> written = new LinkedHashMap<>();
        for (OptionSpec option : parsed.matchedOptions()) {
            for (Path file : paths(option)) {
                written.forEach((name, other) -> {
                    if (OutFiles.same(file, other) && (Files.isRegularFile(file) || !Files.exists(file))) {
                        throw new ParameterException(
                                parsed.commandSpec().commandLine(),
                                name + " and " + option.longestName() + " both name " + file
                                        + ": name a file of its own for each");
                    }
                });
                written.put(option.longestName(), file);
            }
        }
    }

    private static List<Path> paths(ArgSpec given) {
        boolean path = given.type() == Path.class
                || Arrays.asList(given.auxiliaryTypes()).contains(Path.class);
        return path ? given.originalStringValues().stream().map(Path::of).toList() : List.of();
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
            console.complain("coilwright: there is no " + what + " \"" + oneLine(unknown.get()) + "\" here"
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
        return String.valueOf(text).replaceAll("\\s*\\R\\s*", " ");
    }
}
