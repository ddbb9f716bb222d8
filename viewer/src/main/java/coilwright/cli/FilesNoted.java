package coilwright.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionStrategy;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/**
 * Runs a command after noting its files: those to read stand by themselves, those to write behind options.
 *
 * @param files where they are noted
 */
record FilesNoted(OutFiles files) implements IExecutionStrategy {
    @Override
    public int execute(ParseResult parsed) {
        ParseResult command = parsed;
        while (command.hasSubcommand()) {
            command = command.subcommand();
        }
        note(command);
        return new CommandLine.RunLast().execute(parsed);
    }

    private void note(ParseResult command) {
        for (ArgSpec given : command.matchedPositionals()) {
            for (Path file : paths(given)) {
                files.reads(file);
            }
        }
        Map<String, Path> written = new LinkedHashMap<>();
        for (OptionSpec option : command.matchedOptions()) {
            for (Path file : paths(option)) {
                for (Map.Entry<String, Path> other : written.entrySet()) {
                    if (OutFiles.same(file, other.getValue()) && (Files.isRegularFile(file) || !Files.exists(file))) {
                        throw new ParameterException(
                                command.commandSpec().commandLine(),
                                other.getKey() + " and " + option.longestName() + " both name " + file
                                        + ": name a file of its own for each");
                    }
                }
                written.put(option.longestName(), file);
            }
        }
    }

    private static List<Path> paths(ArgSpec given) {
        List<Path> paths = new ArrayList<>();
        if (given.type() == Path.class || Arrays.asList(given.auxiliaryTypes()).contains(Path.class)) {
            for (String path : given.originalStringValues()) {
                paths.add(Path.of(path));
            }
        }
        return paths;
    }
}
