package coilwright.cli;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Prints a completion script. */
@Command(
        name = "completion",
        header = "Print a script with which bash or zsh completes commands and options.",
        description = "It completes a command named coilwright, such as the alias of the first example.",
        footerHeading = "%nExamples:%n",
        footer = {"  alias coilwright='java -jar viewer/target/coilwright.jar'", "  source <(coilwright completion)"})
final class CompletionCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private FileOption file;

    CompletionCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        file.answer(console, AutoComplete.bash("coilwright", Commands.line(Commands.names(), console)));
        return Exit.DONE;
    }
}
