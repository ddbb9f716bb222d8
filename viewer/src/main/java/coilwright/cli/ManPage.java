package coilwright.cli;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.Model.UsageMessageSpec;

/** The manual page in the man macros of roff, made from the commands and their options. */
final class ManPage {
    private static final Help.ColorScheme PLAIN = Help.defaultColorScheme(Help.Ansi.OFF);

    private final StringBuilder page = new StringBuilder();

    private ManPage() {}

    /**
     * The page for a command and all its subcommands.
     *
     * @param line the whole command line
     * @return lines of roff in ASCII
     */
    static String of(CommandLine line) {
        var man = new ManPage();
        man.write(line);
        return man.page.toString();
    }

    private void write(CommandLine line) {
        CommandSpec all = line.getCommandSpec();
        String name = all.name();
        // No date: the same program gives the same page.
        page.append(".TH ")
                .append(name.toUpperCase(Locale.ROOT))
                .append(" 1 \"\" \"")
                .append(escaped(String.join(" ", line.getCommandSpec().version())))
                .append("\" \"User Commands\"\n")
                // No word is broken, and no line stretched: names of options stay as they are typed.
                .append(".nh\n.ad l\n");
        section("NAME");
        text(name + " - " + withoutStop(said(all.usageMessage().header())));
        section("SYNOPSIS");
        bold(name + " COMMAND [OPTION]... [FILE]...");
        for (OptionSpec option : all.options()) {
            page.append(".br\n");
            bold(name + " " + option.longestName());
        }
        section("DESCRIPTION");
        text("Works out the winding of a commutator armature from a job file: where each coil lies and lands, what the"
                + " probes should read, what a deviation means, what a rewind takes; and draws and prints it for the"
                + " bench. Each command says how it is used with --help.");
        section("OPTIONS");
        var help = new Help(all, PLAIN);
        all.options().forEach(o -> option(o, help));
        section("COMMANDS");
        line.getSubcommands().forEach((word, command) -> command(word, command));
        section("EXIT STATUS");
        item("0", "Done.");
        item("1", "Done, and the answer is no: not possible, differs, faulty.");
        item("2", "Bad input or usage. The message on standard error names file, line or field and the way out.");
        section("FILES");
        item("JOB.TEST.csv", "Readings of a test, written beside the job by the window as they are taken.");
        item("JOB.order.csv", "Steps of the order of work that are ticked in the window.");
        item(".JOB.yaml.autosave", "Changes that were not saved; the window offers them again.");
        section("EXAMPLES");
        examples(all);
    }

    private void command(String word, CommandLine command) {
        CommandSpec spec = command.getCommandSpec();
        UsageMessageSpec usage = spec.usageMessage();
        page.append(".SS ").append(quoted(spec.root().name() + " " + word)).append('\n');
        text(said(usage.header()));
        page.append(".PP\n");
        text(said(usage.description()));
        page.append(".PP\n");
        var help = new Help(spec, PLAIN);
        bold(joined(help.synopsis(0)));
        for (PositionalParamSpec parameter : spec.positionalParameters()) {
            item(label(parameter, help), joined(parameter.description()));
        }
        spec.options().stream()
                .sorted((a, b) -> a.longestName().compareTo(b.longestName()))
                .forEach(o -> option(o, help));
        page.append(".PP\nExamples:\n");
        examples(spec);
    }

    private void option(OptionSpec option, Help help) {
        String names = Arrays.stream(option.names()).collect(Collectors.joining(", "));
        item(names + label(option, help), joined(option.description()));
    }

    private static String label(ArgSpec argument, Help help) {
        return help.parameterLabelRenderer()
                .renderParameterLabel(argument, PLAIN.ansi(), List.of())
                .plainString();
    }

    private void examples(CommandSpec spec) {
        page.append(".nf\n.RS\n");
        Arrays.stream(spec.usageMessage().footer())
                .filter(l -> l.startsWith("  "))
                .forEach(l -> text(said(l)));
        page.append(".RE\n.fi\n");
    }

    private void section(String title) {
        page.append(".SH ").append(quoted(title)).append('\n');
    }

    private void item(String tag, String body) {
        page.append(".TP\n");
        bold(tag);
        text(body);
    }

    private void bold(String text) {
        page.append(".B ").append(quoted(text)).append('\n');
    }

    private void text(String text) {
        String escaped = escaped(text);
        // A full stop or apostrophe at the start of a line would be taken for a request.
        page.append(escaped.startsWith(".") || escaped.startsWith("'") ? "\\&" : "")
                .append(escaped)
                .append('\n');
    }

    private static String quoted(String text) {
        return "\"" + escaped(text).replace("\"", "\\(dq") + "\"";
    }

    private static String joined(String... texts) {
        return Arrays.stream(texts)
                .map(t -> PLAIN.text(t).plainString())
                .collect(Collectors.joining(" "))
                .replaceAll("\\s+", " ")
                .strip();
    }

    /** What a command says of itself; there a per cent sign is doubled, in an option it no longer is. */
    private static String said(String... lines) {
        return String.format(Locale.ROOT, joined(lines));
    }

    private static String withoutStop(String sentence) {
        String s = sentence.endsWith(".") ? sentence.substring(0, sentence.length() - 1) : sentence;
        return s.substring(0, 1).toLowerCase(Locale.ROOT) + s.substring(1);
    }

    /** Roff in ASCII: hyphens as they are typed, other letters by their number. */
    private static String escaped(String text) {
        Map<Integer, String> special =
                Map.of((int) '\\', "\\e", (int) '-', "\\-", (int) '^', "\\(ha", (int) '~', "\\(ti");
        var out = new StringBuilder();
        text.codePoints().forEach(c -> {
            if (special.containsKey(c)) {
                out.append(special.get(c));
            } else if (c < 128) {
                out.appendCodePoint(c);
            } else {
                out.append(String.format(Locale.ROOT, "\\[u%04X]", c));
            }
        });
        return out.toString();
    }
}
