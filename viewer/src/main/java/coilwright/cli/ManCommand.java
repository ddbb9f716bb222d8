package coilwright.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Prints the manual page. */
@Command(
        name = "man",
        header = "Print the manual page with every command and option, for man.",
        description = "It is made from the commands themselves, as a page of section 1 in the man macros of roff.",
        footerHeading = "%nExamples:%n",
        footer = {"  coilwright man | man -l -", "  coilwright man --out coilwright.1"})
final class ManCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private FileOption file;

    ManCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        file.answer(console, ManPage.of(Commands.line(Commands.names(), console)));
        return Exit.DONE;
    }
}
