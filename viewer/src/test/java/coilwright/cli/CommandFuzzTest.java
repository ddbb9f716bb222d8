package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import coilwright.drawing.DrawingView;
import coilwright.job.TestKind;
import coilwright.winding.WindingType;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamReader;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whatever stands on the command line, the answer is one of three exit codes, complaints are lines in words, and what is
 * written is whole. As many cases are tried as the system property {@code fuzz} says, a few hundred unless given; the
 * case of a seed is always the same.
 */
class CommandFuzzTest {
    private static final int USUAL = 300;
    private static final Duration HANGS = Duration.ofSeconds(60);

    @TempDir
    private Path temp;

    @Test
    void whateverIsGivenIsAnsweredOrRefusedInWords() throws IOException {
        Optional<Integer> wanted = Optional.ofNullable(Integer.getInteger("fuzz"));
        long first = Long.getLong("fuzz.seed", 1);
        Fuzzed fuzzed = new Fuzzed(temp);
        long slowest = 0;
        String slowestCase = "";
        for (int i = 0; i < wanted.orElse(USUAL); i++) {
            List<String> args = fuzzed.args(first + i);
            long begun = System.nanoTime();
            assertTimeoutPreemptively(HANGS, () -> fuzzed.check(args), () -> "hangs: " + Fuzzed.shown(args));
            if (System.nanoTime() - begun > slowest) {
                slowest = System.nanoTime() - begun;
                slowestCase = Fuzzed.shown(args);
            }
        }
        if (wanted.isPresent()) {
            System.out.printf(
                    Locale.ROOT,
                    "command line: %d cases, the slowest took %.3f s: %s%n",
                    wanted.get(),
                    slowest / 1e9,
                    slowestCase);
        }
    }

    /** Makes command lines of the commands and options there are, and looks at what comes of them. */
    static final class Fuzzed {
        private static final List<String> SAMPLE_JOBS = List.of(
                "tin-tram-toy-motor",
                "orchard-pump-dynamo",
                "ferry-lantern-dynamo",
                "pantry-mixer-motor",
                "post-van-dynamo",
                "landing-stage-light-dynamo");

        private static final List<String> WILD = List.of(
                "",
                " ",
                "0",
                "-1",
                "1",
                "2",
                "3",
                "4",
                "12",
                "007",
                "1.5",
                "1,5",
                "1e999",
                "-1e308",
                "1e-320",
                "NaN",
                "Infinity",
                "0x10",
                "1d",
                "99999999999",
                "2147483647",
                "-2147483648",
                "9223372036854775808",
                "\u0663",
                "\u22125",
                "null",
                "true",
                "OL",
                "shaft",
                "\u001b[31m",
                "\u0007",
                "\n",
                "a\r\nb",
                "\u202e",
                "\u2028",
                "\ud83e\uddf2",
                "\ud800",
                "\ufeff",
                "\uffff",
                "e\u0301",
                "%s%n",
                "${user.home}",
                "$(id)",
                "--",
                "-",
                "=",
                "@",
                "@x",
                "'",
                "\"",
                "1,2",
                "2,1",
                "1-2",
                "1,shaft",
                "shaft,shaft",
                "1,1",
                "1,99",
                "1,2,3",
                ",",
                "5%",
                "101%",
                "5 %",
                "-5%",
                "12 V",
                "12V",
                "1 ohm",
                "0 ohm",
                "1 furlong",
                "20 \u00b0C",
                "-300 degC",
                "1e2 V",
                "999999999999 kV",
                "0.000000000001 mm",
                "2 x 0.85 mm",
                "0 x 1 mm",
                "18 AWG",
                "0.85 mm",
                "a".repeat(5000),
                "..",
                "/",
                "~",
                "<b>&amp;",
                "open-coil:3",
                "x:y:z");

        private static List<String> option(String name, Stream<String> values) {
            return Stream.concat(Stream.of(name), values).toList();
        }

        private static final List<List<String>> BY_NAME = List.of(
                option("--view", Arrays.stream(DrawingView.values()).map(DrawingView::word)),
                option(
                        "--test",
                        Stream.concat(
                                Arrays.stream(TestKind.values()).map(TestKind::word), Stream.of("growler-blade"))),
                List.of("--also", "drop", "resistance,ground", "growler", "polarity"),
                List.of("--feed", "1,2", "1,5", "5,1", "2,3"),
                List.of("--pair", "1,2", "3,1", "1,5", "1,shaft", "1,3"),
                List.of("--lead", "1,2", "1,12", "1-5:1,9", "1-4:23,12", "2,1"),
                List.of("--continuity", "1,2=yes", "1,2=no", "1,3=yes"),
                List.of("--resistance", "1,2=0.14 ohm", "2,3=0.14 ohm", "1,2=1", "1,3=2"),
                List.of(
                        "--fault",
                        "open-coil:3",
                        "open",
                        "shorted",
                        "bar-short:1,2",
                        "shorted-turns:2:50%",
                        "ground:1",
                        "ground:2:50%",
                        "reversed-coil:1",
                        "crossed-leads:1,2",
                        "high-resistance:2:1 ohm",
                        "wrong-turns:2:110%"),
                List.of("--short", "shorted-coil:3", "bar-short:1,2", "shorted-turns:1:30%"),
                List.of("--known", "1,2=0.5 V", "1,2=0", "2,3=100 mV"),
                List.of("--reading", "0.1", "0.02", "20 mV", "0.1 ohm", "0", "OL", "1"),
                List.of("--tolerance", "5%", "0%", "100%"),
                List.of("--allowance", "10%", "0%", "0.1 mm"),
                List.of("--unit", "mV", "V", "ohm", "mm", "\u00b5m", "thou"),
                option("--type", Arrays.stream(WindingType.values()).map(WindingType::word)),
                List.of("--way", "formed-coils", "coil-by-coil", "opposite-pairs"),
                List.of(
                        "--kind",
                        "as-found",
                        "checklist",
                        "order",
                        "commutator",
                        "acceptance",
                        "record",
                        "list",
                        "dc-motor",
                        "dc-generator",
                        "universal",
                        "portable-tool",
                        "pitches",
                        "feasible",
                        "fault",
                        "all"),
                List.of("--work", "new", "rewound", "reconditioned", "in-service"),
                List.of("--format", "text", "json", "csv"),
                List.of("--insulation", "bare", "iec-grade-1", "nema-heavy", "double-cotton"),
                List.of("--wire", "18 AWG", "2 x 0.85 mm", "19 SWG", "0.5 mm"),
                List.of("--centring", "as-read", "recentred"),
                List.of("--limit", "ir-ieee43-2013", "ir-car-dynamo"),
                List.of("--scheme", "iec", "ieee"),
                List.of("--slots", "12", "17", "14", "3", "24"),
                List.of("--bars", "12", "17", "28", "23", "24"),
                List.of("--poles", "2", "4", "6"));

        private static final List<String> NUMBERS =
                List.of("1", "2", "3", "5", "0", "10", "45", "90", "0.5", "1.5", "30", "300");
        private static final List<String> QUANTITIES = List.of(
                "12 V",
                "500 mA",
                "20 \u00b0C",
                "120 Mohm",
                "1.2 ohm",
                "48 mm",
                "0.6 mm",
                "250 W",
                "1500 rpm",
                "75 degC",
                "1 A",
                "0.3 ohm",
                "24V");

        /** Names of options whose value is a file to be written. */
        private static final List<String> WRITTEN =
                List.of("--out", "--sheet", "--key-sheet", "--chart", "--drawing", "--drawings");

        private static final Pattern FROM_WITHIN = Pattern.compile(
                "should not have happened|\\b(java|javax|org|com|coilwright|picocli)(\\.[a-z]\\w*)*\\.[A-Z]|Exception"
                        + "|For input string|Comparison method|@[0-9a-f]{6}");
        private static final Pattern QUOTED = Pattern.compile("\"[^\"]*\"|'[^']*'");
        private static final int LONGEST = 5500;

        private final Path in;
        private final Path out;
        private final List<Path> jobs = new ArrayList<>();
        private final List<String> texts = new ArrayList<>();
        private final List<Path> tables = new ArrayList<>();
        private final picocli.CommandLine line = Commands.line(Commands.names(), new Console(System.out, System.err));

        Fuzzed(Path folder) throws IOException {
            in = Files.createDirectory(folder.resolve("in"));
            out = Files.createDirectory(folder.resolve("out"));
            for (String name : SAMPLE_JOBS) {
                jobs.add(TableCommandTest.SAMPLES.resolve(name + ".yaml"));
                texts.add(Files.readString(jobs.get(jobs.size() - 1)));
            }
            try (Stream<Path> readings = Files.list(TableCommandTest.SAMPLES.resolveSibling("readings"))) {
                tables.addAll(readings.sorted().toList());
            }
            table("ground.csv", "from,to,reading\n1,shaft,12 Mohm\n2,shaft,OL\n");
            table("resistance.csv", "from,to,reading\n1,2,1.2\n2,3,1.2\n3,1,1.2\n");
            table("growler.csv", "from,to,reading\n1,2,0.9\n2,3,0.1\n3,4,0\n4,5,-0.5\n");
            table("run-out.csv", "bar,height\n1,0.01\n2,0.02\n3,0.01\n");
            table("coils.csv", "coil,topSlot,bottomSlot,topBar,bottomBar\n1,1,2,1,2\n2,2,3,2,3\n3,3,1,3,1\n");
            for (Path p : tables) {
                texts.add(Files.readString(p));
            }
        }

        private void table(String name, String text) throws IOException {
            tables.add(Files.writeString(in.resolve(name), text));
        }

        private static <T> T one(Random random, List<T> of) {
            return of.get(random.nextInt(of.size()));
        }

        private boolean tame;

        /** The command line of a seed; a mangled file it may name is written anew. */
        List<String> args(long seed) throws IOException {
            // Neighbouring seeds begin alike: they are set apart first.
            Random random = new Random(seed * 0x9E3779B97F4A7C15L);
            tame = random.nextInt(3) == 0;
            String name = one(random, Commands.names());
            List<String> args = new ArrayList<>();
            if (!tame && random.nextInt(40) == 0) {
                args.add(one(random, WILD));
            }
            args.add(!tame && random.nextInt(60) == 0 ? one(random, WILD) : name);
            var spec = line.getSubcommands().get(name).getCommandSpec();
            for (var p : spec.positionalParameters()) {
                for (int i = p.index().min() > 0 && p.arity().max() > 1 ? random.nextInt(3) : 1; i > 0; i--) {
                    if (tame || random.nextInt(25) > 0) {
                        args.add(file(random, p.index().min() == 0 ? jobs : tables));
                    }
                }
            }
            for (var o : spec.options()) {
                if (random.nextInt(100) < percent(o, !spec.optionsMap().containsKey("--format"))) {
                    option(random, name, o, args);
                }
            }
            if (!tame && random.nextInt(30) == 0) {
                args.add(random.nextInt(args.size() + 1), one(random, WILD));
            }
            return args;
        }

        /** How often an option is given. */
        private int percent(picocli.CommandLine.Model.OptionSpec o, boolean onlyWrites) {
            return switch (o.longestName()) {
                case "--help", "--drawings" -> 1;
                case "--test" -> 70;
                case "--out" -> onlyWrites ? 80 : 10;
                default -> o.required() ? (tame ? 100 : 90) : tame ? 7 : 12;
            };
        }

        private void option(Random random, String command, picocli.CommandLine.Model.OptionSpec o, List<String> args) {
            String option = o.longestName();
            for (int i = o.isMultiValue() ? 1 + random.nextInt(2) : 1; i > 0; i--) {
                String value = value(random, command, option);
                if (o.arity().max() == 0) {
                    args.add(option);
                } else if (random.nextInt(4) == 0) {
                    args.add(option + "=" + value);
                } else {
                    args.add(option);
                    args.add(value);
                }
            }
        }

        private String value(Random random, String command, String option) {
            if (WRITTEN.contains(option)) {
                return written(random, command);
            }
            if (!tame && random.nextInt(6) == 0) {
                return one(random, WILD);
            }
            return BY_NAME.stream()
                    .filter(l -> l.get(0).equals(option))
                    .findFirst()
                    .map(l -> l.get(1 + random.nextInt(l.size() - 1)))
                    .orElseGet(() -> one(random, random.nextInt(3) == 0 ? QUANTITIES : NUMBERS));
        }

        /** Mostly drawings and pages that are quickly made. */
        private String written(Random random, String command) {
            String ending = random.nextInt(40) == 0
                    ? one(random, List.of(".pdf", ".png", ".PDF", ".PNG"))
                    : one(
                            random,
                            List.of(
                                    ".svg",
                                    ".svg",
                                    ".svg",
                                    command.equals("page") ? ".html" : ".svg",
                                    ".html",
                                    ".txt",
                                    "",
                                    ".csv"));
            return switch (tame ? 5 : random.nextInt(30)) {
                case 0 -> out.resolve("none").resolve("a" + ending).toString();
                case 1 -> out.toString();
                case 2 -> one(random, WILD).replace('/', 'x').replace("..", "x").isBlank() ? "" : "/dev/null";
                case 3 -> out.resolve("a\u001b[1m\n") + ending;
                case 4 -> "\0" + ending;
                default -> out.resolve("a" + random.nextInt(3)) + ending;
            };
        }

        private String file(Random random, List<Path> usual) throws IOException {
            return switch (tame ? (random.nextInt(5) == 0 ? 0 : 7) : random.nextInt(24)) {
                case 0, 1, 2, 3 -> mangled(random);
                case 4 ->
                    one(
                            random,
                            List.of(
                                    "/dev/null",
                                    "/dev/zero",
                                    "/",
                                    in.toString(),
                                    in.resolve("none.yaml").toString(),
                                    ""));
                case 5 -> one(random, WILD);
                case 6 -> one(random, random.nextBoolean() ? jobs : tables).toString();
                default -> one(random, usual).toString();
            };
        }

        private String mangled(Random random) throws IOException {
            StringBuilder text = new StringBuilder(one(random, texts));
            for (int i = 1 + random.nextInt(3); i > 0; i--) {
                int at = random.nextInt(text.length() + 1);
                int to = Math.min(text.length(), at + random.nextInt(12));
                switch (random.nextInt(4)) {
                    case 0 -> text.delete(at, to);
                    case 1 -> text.insert(at, one(random, WILD));
                    case 2 -> text.replace(at, to, one(random, WILD));
                    default -> number(random, text, at);
                }
            }
            Path file = in.resolve(random.nextBoolean() ? "mangled.yaml" : "mangled\u001b[7m.csv");
            byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
            if (random.nextInt(8) == 0 && bytes.length > 0) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            }
            return Files.write(file, bytes).toString();
        }

        /** Another number in the place of one: the file mostly stays readable. */
        private static void number(Random random, StringBuilder text, int from) {
            for (int i = from; i < text.length(); i++) {
                if (Character.isDigit(text.charAt(i))) {
                    text.replace(i, i + 1, Integer.toString(random.nextInt(30)));
                    return;
                }
            }
        }

        static Run last;

        void check(List<String> args) throws Exception {
            Run run;
            try {
                run = Run.of(args.toArray(String[]::new));
                last = run;
            } catch (Throwable e) {
                throw new AssertionError(shown(args) + " ended in " + e, e);
            }
            try {
                look(run);
            } catch (AssertionError | Exception e) {
                throw new AssertionError(
                        shown(args) + "\n left with " + run.code() + "\n and said " + shown(List.of(run.err())) + "\n"
                                + e.getMessage(),
                        e);
            } finally {
                clear();
            }
        }

        private void look(Run run) throws Exception {
            assertThat(run.code()).isBetween(0, 2);
            assertThat(run.err().isEmpty() || run.err().endsWith("\n")).isTrue();
            for (String line : run.err().lines().toList()) {
                assertThat(line).isNotBlank().hasSizeLessThan(LONGEST);
                assertNone(line, c -> harms(c) || Character.getType(c) == Character.FORMAT);
                assertThat(QUOTED.matcher(line).replaceAll("")).doesNotContainPattern(FROM_WITHIN);
                assertThat(line).doesNotEndWith(": null");
            }
            assertThat(run.err().lines().distinct().count())
                    .as("complaints told once")
                    .isEqualTo(run.err().lines().count());
            assertNone(run.out(), c -> c != '\n' && harms(c));
            if (run.code() == Exit.BAD) {
                assertThat(run.err()).isNotEmpty();
                assertThat(run.out()).isEmpty();
            } else if (run.out().startsWith("{")) {
                assertThat(new ObjectMapper().readTree(run.out()).isObject()).isTrue();
            }
            try (Stream<Path> files = Files.walk(out)) {
                for (Path p : files.filter(Files::isRegularFile).toList()) {
                    whole(p);
                }
            }
        }

        private static boolean harms(int c) {
            int type = Character.getType(c);
            return type == Character.CONTROL
                    || type == Character.SURROGATE
                    || type == Character.LINE_SEPARATOR
                    || type == Character.PARAGRAPH_SEPARATOR
                    || (c >= 0x202a && c <= 0x202e)
                    || (c >= 0x2066 && c <= 0x2069)
                    || (c & 0xfffe) == 0xfffe;
        }

        private static void assertNone(String text, IntPredicate wrong) {
            text.codePoints()
                    .filter(wrong)
                    .findFirst()
                    .ifPresent(c -> Assertions.fail("U+%04X in %s", c, shown(List.of(text))));
        }

        /** No file is left half written. */
        private static void whole(Path file) throws Exception {
            String name = file.toString().toLowerCase(Locale.ROOT);
            byte[] bytes = Files.readAllBytes(file);
            assertThat(bytes).as(name).isNotEmpty();
            String text = new String(bytes, StandardCharsets.ISO_8859_1);
            String end = text.substring(Math.max(0, text.length() - 20));
            assertThat(name).doesNotEndWith(".part");
            if (text.startsWith("%PDF")) {
                assertThat(end).contains("%%EOF");
            } else if (text.startsWith("\u0089PNG")) {
                assertThat(end).contains("IEND");
            } else if (text.startsWith("<?xml")) {
                XMLStreamReader reader = XMLInputFactory.newDefaultFactory()
                        .createXMLStreamReader(new StringReader(new String(bytes, StandardCharsets.UTF_8)));
                while (reader.hasNext()) {
                    reader.next();
                }
            } else if (text.startsWith("<!DOCTYPE")) {
                assertThat(end).contains("</html>");
            }
        }

        private void clear() throws IOException {
            try (Stream<Path> files = Files.walk(out)) {
                for (Path p : files.sorted(java.util.Comparator.reverseOrder()).toList()) {
                    if (!p.equals(out)) {
                        Files.delete(p);
                    }
                }
            }
        }

        static String shown(List<String> args) {
            return args.stream()
                    .map(a -> a.length() > 300 ? a.substring(0, 300) + "…" : a)
                    .map(a -> a.codePoints()
                            .mapToObj(c -> c < ' ' || c > '~'
                                    ? String.format(Locale.ROOT, "\\u%04x", c)
                                    : Character.toString(c))
                            .collect(Collectors.joining()))
                    .map(a -> a.isEmpty() || a.contains(" ") ? "'" + a + "'" : a)
                    .collect(Collectors.joining(" "));
        }
    }
}
