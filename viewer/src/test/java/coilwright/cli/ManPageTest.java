package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ManPageTest {
    private static final String PAGE = Run.of("man").out();

    /** What the page uses of roff. */
    private static final List<String> REQUESTS =
            List.of("TH", "nh", "ad", "SH", "SS", "PP", "TP", "B", "br", "nf", "fi", "RS", "RE");

    @TempDir
    private Path temp;

    static List<String> commands() {
        return Commands.names();
    }

    /** Names of options and of files, and examples, as the help screen of the command gives them. */
    @ParameterizedTest
    @MethodSource("commands")
    void everyOptionAndExampleOfEveryCommandIsInIt(String command) {
        String help = Run.of(command, "--help").out();
        String part = part(command);
        assertThat(words("--[a-z][a-z-]*", help)).isNotEmpty();
        assertThat(words("--[a-z][a-z-]*", part)).containsExactlyElementsOf(words("--[a-z][a-z-]*", help));
        String oneLine = part.replaceAll("\\s+", " ");
        String[] halves = help.split("\\R\\R?Examples:\\R", 2);
        // The help screen breaks long lines, even within a word.
        String examples = "Examples:\n.nf\n.RS\n" + halves[1] + ".RE\n.fi\n";
        assertThat(part.replaceAll("\\s+", "")).endsWith(examples.replaceAll("\\s+", ""));
        assertThat(oneLine).contains(help.substring(0, help.indexOf("Usage:")).replaceAll("\\s+", " "));
        // The last words of each description, which a cut or a swallowed line would lose.
        Matcher option =
                Pattern.compile("(?m)^ {2,6}(-|[A-Z]).*\\R(?: {20,}.*\\R)*").matcher(halves[0] + "\n");
        int seen = 0;
        while (option.find()) {
            String[] words = option.group().strip().split("\\s+");
            String end = String.join(" ", Arrays.copyOfRange(words, Math.max(words.length - 3, 1), words.length));
            assertThat(oneLine).contains(end);
            seen++;
        }
        assertThat(seen).isPositive();
    }

    @Test
    void mainHelpAndExitCodesAreInIt() {
        assertThat(PAGE).startsWith(".TH COILWRIGHT 1 \"\" \"coilwright ");
        assertThat(plain(PAGE))
                .contains("coilwright - testing, repairing and rewinding commutator armatures\n")
                .contains("--version")
                .contains(".SH \"EXIT STATUS\"\n.TP\n.B \"0\"\nDone.\n.TP\n.B \"1\"\n")
                .contains("JOB.order.csv");
    }

    @Test
    void isPlainRoff() {
        assertThat(PAGE).matches(Pattern.compile("[\\x20-\\x7e\\n]*"));
        assertThat(PAGE.lines()).allSatisfy(line -> {
            if (line.startsWith(".")) {
                assertThat(line.substring(1).split(" ")[0]).isIn(REQUESTS);
                assertThat(line.chars().filter(c -> c == '"').count() % 2).isZero();
            } else {
                assertThat(line).doesNotStartWith("'").isNotEmpty();
            }
            assertThat(line.replaceAll("\\\\(-|e|&|\\([a-z]{2}|\\[u[0-9A-F]{4,5}])", ""))
                    .doesNotContain("\\");
        });
    }

    @Test
    void groffTakesItWithoutAWarning() throws Exception {
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/groff")), "no groff here");
        Path page = Files.writeString(temp.resolve("coilwright.1"), PAGE);
        var groff = new ProcessBuilder("/usr/bin/groff", "-man", "-Tutf8", "-ww", "-z", page.toString())
                .redirectErrorStream(true)
                .start();
        String text = new String(groff.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(groff.waitFor()).isZero();
        assertThat(text).isEmpty();
    }

    private static String part(String command) {
        String plain = plain(PAGE);
        int from = plain.indexOf(".SS \"coilwright " + command + "\"\n");
        assertThat(from).as(command + " has a part of its own").isPositive();
        int to = plain.indexOf("\n.S", from + 1);
        return plain.substring(from, to + 1);
    }

    private static String plain(String roff) {
        Matcher number = Pattern.compile("\\\\\\[u([0-9A-F]+)]").matcher(roff);
        return number.replaceAll(m -> Matcher.quoteReplacement(Character.toString(Integer.parseInt(m.group(1), 16))))
                .replace("\\-", "-")
                .replace("\\(dq", "\"")
                .replace("\\(ha", "^")
                .replace("\\(ti", "~")
                .replace("\\&", "")
                .replace("\\e", "\\");
    }

    private static Set<String> words(String pattern, String text) {
        var words = new TreeSet<String>();
        Pattern.compile(pattern).matcher(text).results().forEach(r -> words.add(r.group()));
        return words;
    }
}
