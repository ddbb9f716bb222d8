package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whatever texts a job or a command line holds, the answers stay what they are: JSON, tables and plain lines. */
class HostileAnswersTest {
    private static final Path SAMPLES = Path.of("../samples");
    private static final List<String> PARTS = List.of(
            "=1+1",
            "@SUM(1)",
            "+1",
            "-1+1",
            "|cmd",
            "'",
            "\"",
            "\"\"",
            "\\",
            "\\u001b",
            "{",
            "}",
            "[",
            "]",
            ":",
            ",",
            ";",
            "</script>",
            "<!--",
            "]]>",
            "&",
            "%n",
            "%s",
            "$0",
            "# ",
            "- ",
            "? ",
            "א",
            "\u200f",
            "🧲",
            "a",
            " ",
            "`",
            "~",
            "null");
    private static final Pattern CELL = Pattern.compile("(\"(?:[^\"]|\"\")*\"|[^,\"\n]*)(,|\n)");

    @TempDir
    private static Path temp;

    /** More of them with {@code -Dfuzz=1000}. */
    static LongStream seeds() {
        return LongStream.rangeClosed(1, Integer.getInteger("fuzz", 2));
    }

    static Stream<List<String>> commands() {
        return Stream.of(
                        "table JOB",
                        "table JOB --explain",
                        "probe JOB --test drop --explain",
                        "probe JOB --test resistance --reading 0.1",
                        "probe JOB --test growler-blade",
                        "diagnose JOB DROP --test drop --feed 1,5",
                        "repair JOB --coil 3 --fault open",
                        "check JOB CONNECTIONS",
                        "rewind JOB --volts 24V",
                        "commutator JOB RUNOUT",
                        "accept JOB")
                .map(line -> List.of(line.split(" ")));
    }

    private static String hostile(Random random) {
        String text = random.ints(1 + random.nextInt(5), 0, PARTS.size())
                .mapToObj(PARTS::get)
                .collect(Collectors.joining());
        return text.isBlank() ? "=x" : text;
    }

    /** A sample with other texts: all that answers show of a job's texts. */
    private static Path job(long seed) throws IOException {
        var random = new Random(seed);
        String sample = Files.readString(SAMPLES.resolve("jobs/orchard-pump-dynamo.yaml"));
        String text = sample.replaceFirst("title: .*", Matcher.quoteReplacement("title: " + quoted(random)))
                .replaceFirst("speed: 3000 rpm", Matcher.quoteReplacement("speed: 3000 rpm, serial: " + quoted(random)))
                .replaceFirst("(?s)\nnotes:.*?\n(?=[a-z]|$)", "\n");
        text += "notes: [" + quoted(random) + ", " + quoted(random) + "]\n";
        return Files.writeString(temp.resolve("=job" + seed + ".yaml"), text);
    }

    private static String quoted(Random random) {
        return '"' + hostile(random).replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void everyFormStaysWhatItIs(long seed) throws IOException {
        Path job = job(seed);
        Path connections = Files.writeString(
                temp.resolve("connections.csv"),
                Run.of("table", job.toString(), "--format", "csv").out());
        Path runOut = Files.writeString(
                temp.resolve("run-out.csv"),
                IntStream.rangeClosed(1, 17)
                        .mapToObj(bar -> bar + ",0.01 mm\n")
                        .collect(Collectors.joining("", "bar,height\n", "")));
        Set<String> silent = new TreeSet<>();
        for (List<String> command : commands().toList()) {
            for (String form : List.of("text", "json", "csv")) {
                List<String> args = new ArrayList<>(command);
                args.replaceAll(a -> switch (a) {
                    case "JOB" -> job.toString();
                    case "CONNECTIONS" -> connections.toString();
                    case "RUNOUT" -> runOut.toString();
                    case "DROP" ->
                        SAMPLES.resolve("readings/orchard-pump-dynamo-drop.csv").toString();
                    default -> a;
                });
                args.addAll(List.of("--format", form));
                Run run = Run.of(args.toArray(String[]::new));
                assertThat(run.err()).as(args.toString()).doesNotContain("should not have happened");
                plain(run.out());
                plain(run.err());
                if (run.out().isEmpty()) {
                    silent.add(args + ": " + run.err());
                } else if (!form.equals("text")) {
                    if (form.equals("json")) {
                        json(run.out());
                    } else {
                        csv(run.out());
                    }
                }
            }
        }
        assertThat(silent).isEmpty();
    }

    private static void plain(String text) {
        assertThat(text.codePoints()
                        .filter(c -> (Character.isISOControl(c) && c != '\n')
                                || (c >= 0x202a && c <= 0x202e)
                                || (c >= 0x2066 && c <= 0x2069))
                        .mapToObj(Integer::toHexString))
                .isEmpty();
    }

    private static void json(String text) throws IOException {
        JsonFactory strict = JsonFactory.builder()
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .build();
        try (JsonParser parser = strict.createParser(text)) {
            parser.nextToken();
            parser.skipChildren();
            assertThat(parser.nextToken()).isNull();
        }
    }

    /** Every line has as many cells as the first, and none of them is a formula. */
    private static void csv(String text) {
        List<Integer> widths = new ArrayList<>();
        int width = 0;
        Matcher cell = CELL.matcher(text);
        int at = 0;
        while (at < text.length()) {
            assertThat(cell.region(at, text.length()).lookingAt())
                    .as(text.substring(at))
                    .isTrue();
            String held = cell.group(1).replaceAll("^\"|\"$", "");
            if (!held.isEmpty() && "=+-@\t\r".indexOf(held.charAt(0)) >= 0) {
                assertThat(held).matches("[+-]?[0-9.]+([eE][+-]?[0-9]+)?");
            }
            width++;
            if (cell.group(2).equals("\n")) {
                widths.add(width);
                width = 0;
            }
            at = cell.end();
        }
        assertThat(widths).allMatch(w -> w.equals(widths.get(0)));
    }

    @Test
    void aTextThatBeginsLikeAFormulaIsMadeATextAndANumberIsNot() {
        assertThat(List.of(
                        "=1+1", "+x", "-x", "@a", "\tx", "\rx", "＝1", "-1.5 m", "-", "1=2", "-1.5", "+2", "-3e-6",
                        "a,b", "a;b", "q\"q", ""))
                .extracting(Csv::cell)
                .containsExactly(
                        "'=1+1",
                        "'+x",
                        "'-x",
                        "'@a",
                        "\"'\tx\"",
                        "\"'\rx\"",
                        "'＝1",
                        "'-1.5 m",
                        "'-",
                        "1=2",
                        "-1.5",
                        "+2",
                        "-3e-6",
                        "\"a,b\"",
                        "\"a;b\"",
                        "\"q\"\"q\"",
                        "");
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void aComplaintAboutAnyWordsIsPlain(long seed) {
        var random = new Random(seed);
        String[] raw = {"\u001b]0;x\u0007", "\u009b31m", "\u202e", "\u2068", "\r", "\n", "\u0000", "\u2028", "\b"};
        for (int i = 0; i < 40; i++) {
            String word = hostile(random) + raw[random.nextInt(raw.length)] + hostile(random);
            Run run = Run.of(
                    switch (i % 5) {
                        case 0 -> new String[] {word};
                        case 1 -> new String[] {"table", word};
                        case 2 -> new String[] {"table", "--" + word, "x"};
                        case 3 -> new String[] {"rules", "--slots", word, "--poles", "4"};
                        default ->
                            new String[] {
                                "draw",
                                SAMPLES.resolve("jobs/tin-tram-toy-motor.yaml").toString(),
                                "--view",
                                word
                            };
                    });
            assertThat(run.code()).isEqualTo(2);
            plain(run.out());
            plain(run.err());
        }
    }
}
