package coilwright.cli;

import coilwright.job.BadInputException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** The commands there are. Only the one asked for is made, since making one costs start-up time. */
final class Commands {
    private static final List<String> NAMES = List.of(
            "table",
            "rules",
            "draw",
            "probe",
            "diagnose",
            "check",
            "identify",
            "repair",
            "rewind",
            "commutator",
            "accept",
            "sheet",
            "view",
            "page",
            "lesson",
            "completion",
            "man");

    private Commands() {}

    static List<String> names() {
        return NAMES;
    }

    private static Object make(String name, Console console) {
        return switch (name) {
            case "table" -> new TableCommand(console);
            case "rules" -> new RulesCommand(console);
            case "draw" -> new DrawCommand(console);
            case "probe" -> new ProbeCommand(console);
            case "diagnose" -> new DiagnoseCommand(console);
            case "check" -> new CheckCommand(console);
            case "identify" -> new IdentifyCommand(console);
            case "repair" -> new RepairCommand(console);
            case "rewind" -> new RewindCommand(console);
            case "commutator" -> new CommutatorCommand(console);
            case "accept" -> new AcceptCommand(console);
            case "sheet" -> new SheetCommand(console);
            case "view" -> new ViewCommand(console);
            case "page" -> new PageCommand(console);
            case "lesson" -> new LessonCommand(console);
            case "completion" -> new CompletionCommand(console);
            case "man" -> new ManCommand(console);
            default -> throw new IllegalArgumentException("there is no command " + name);
        };
    }

    static int run(String[] args, Console console) {
        Optional<TableCommand> plain = TableCommand.plain(args, console);
        return plain.isPresent()
                ? run(plain.get(), console)
                : line(args, console).execute(args);
    }

    private static int run(TableCommand table, Console console) {
        try {
            return table.call();
        } catch (BadInputException | RuntimeException e) {
            return Complaints.of(e, console);
        }
    }

    /** The command line for these arguments: with one command where they name it, else with all. */
    private static CommandLine line(String[] args, Console console) {
        if (args.length == 0 || !NAMES.contains(args[0])) {
            return line(NAMES, console);
        }
        // The options of coilwright itself come before a command, so that here they need not be known.
        return line(CommandSpec.create().name(CoilwrightCommand.NAME), List.of(args[0]), console);
    }

    static CommandLine line(List<String> names, Console console) {
        return line(CommandSpec.forAnnotatedObject(new CoilwrightCommand()), names, console);
    }

    private static CommandLine line(CommandSpec coilwright, List<String> names, Console console) {
        var line = new CommandLine(coilwright);
        for (String name : names) {
            var command = new CommandLine(make(name, console));
            command.getCommandSpec().addOption(helpOption());
            line.addSubcommand(name, command);
        }
        line.setOut(new PrintWriter(console.out(), true, StandardCharsets.UTF_8));
        line.setErr(new PrintWriter(console.err(), true, StandardCharsets.UTF_8));
        line.setUsageHelpWidth(100);
        line.setExpandAtFiles(false);
        Values.register(line);
        line.setExecutionStrategy(new FilesNoted(console.files()));
        var complaints = new Complaints(console);
        line.setParameterExceptionHandler(complaints);
        line.setExecutionExceptionHandler(complaints);
        return line;
    }

    private static OptionSpec helpOption() {
        return OptionSpec.builder("-h", "--help")
                .usageHelp(true)
                .description("Show this help.")
                .build();
    }
}
