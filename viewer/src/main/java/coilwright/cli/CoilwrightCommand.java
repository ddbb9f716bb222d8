package coilwright.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command that holds the others. */
@Command(
        name = CoilwrightCommand.NAME,
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        header = "Testing, repairing and rewinding commutator armatures.",
        synopsisSubcommandLabel = "COMMAND",
        commandListHeading = "%nCommands:%n",
        footer = {
            "",
            "Each command says more with --help. Examples:",
            "  coilwright table samples/jobs/orchard-pump-dynamo.yaml",
            "  coilwright rules --slots 24 --poles 4",
            "",
            "Exit codes: 0 done; 1 done, and the answer is no; 2 bad input or usage."
        })
final class CoilwrightCommand implements Runnable {
    static final String NAME = "coilwright";

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(), "a command is missing: one of " + String.join(", ", Commands.names()));
    }
}
