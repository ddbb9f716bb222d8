package coilwright.job;

import coilwright.bench.BenchTest;
import coilwright.file.SafeFiles;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Readings on their way in, each on disk before the next is asked for. The file is a readings file ({@link
 * ReadingsFile}) whose first lines, behind {@code #}, hold the set-up as a job file writes it:
 *
 * <pre>
 * # test: drop
 * # feed: {in: 1, out: 5, amps: 1}
 * # unit: mV
 * from,to,reading
 * 1,2,172.2 mV
 * </pre>
 *
 * <p>A pair read again stands in the file twice; the later reading counts. A line that a power cut left unfinished is
 * dropped when the file is taken up again. Where another program changed the file meanwhile, nothing more is noted in
 * it. Not for use by several threads at a time.
 */
public final class ReadingsJournal {
    private static final String HEADING = "from,to,reading";

    private final Path file;
    private final ReadingSet setUp;
    private final List<TakenReading> taken;

    /** Bytes that the file has when nobody else wrote into it. */
    private long length;

    private ReadingsJournal(Path file, ReadingSet setUp, List<TakenReading> taken) {
        this.file = file;
        this.setUp = setUp;
        this.taken = new ArrayList<>(taken);
    }

    /**
     * Begins a file.
     *
     * @param file which must not be there yet
     * @param setUp test and set-up; readings in it are left out
     * @return the file, with its head written and no reading yet
     * @throws IOException when it is there, or cannot be written
     */
    public static ReadingsJournal begin(Path file, ReadingSet setUp) throws IOException {
        var journal = new ReadingsJournal(file, setUp.withReadings(List.of()), List.of());
        String text = journal.toText();
        SafeFiles.create(file, text);
        journal.length = bytes(text);
        return journal;
    }

    /**
     * Takes up a file where it stopped.
     *
     * @param file where it lies
     * @param bars that the armature has
     * @return the file with the readings in it, ready for the next
     * @throws BadInputException when it cannot be read or anything in it is wrong, carrying every problem
     * @throws IOException when an unfinished line cannot be dropped
     */
    public static ReadingsJournal resume(Path file, int bars) throws BadInputException, IOException {
        InputText.Lines read = InputText.wholeLines(file, "a readings file", ReadingsFile.MAX_BYTES);
        String whole = read.text();
        var problems = new Problems(file.toString());
        StringBuilder yaml = new StringBuilder();
        List<Integer> lines = new ArrayList<>();
        boolean any = false;
        int at = 0;
        for (String line : whole.split("\n")) {
            at++;
            if (line.startsWith("# ")) {
                lines.add(at);
                yaml.append(yaml.length() == 0 ? "- " : "  ")
                        .append(line.substring(2))
                        .append('\n');
            } else if (!line.isBlank() && !line.strip().equals(HEADING)) {
                any = true;
            }
        }
        if (yaml.length() == 0) {
            throw problems.only(
                    1, "", "does not begin with its set-up, such as \"# test: drop\": begin a new run instead");
        }
        yaml.append("  readings: []\n");
        ReadingSet setUp;
        try {
            var root = new Field(problems, "", YamlText.compose(yaml.toString(), "readings", "# test: drop", problems));
            List<ReadingSet> sets = ReadingsSection.read(root, bars);
            problems.throwIfAny();
            setUp = sets.get(0);
        } catch (BadInputException e) {
            throw new BadInputException(
                    e.problems().stream().map(p -> inFile(p, lines)).toList());
        }
        List<TakenReading> taken = any
                ? ReadingsFile.parse(problems, whole, bars, r -> ReadingSet.checkReading(r, setUp.test(), setUp.unit()))
                        .readings()
                : List.of();
        var journal = new ReadingsJournal(file, setUp, taken);
        journal.length = read.bytes();
        if (read.cut()) {
            journal.rewrite();
        }
        return journal;
    }

    /** A problem of the set-up at its line in the file; the set-up is read as the one set of a list. */
    private static Problem inFile(Problem p, List<Integer> lines) {
        int line = p.line() == 0 ? lines.get(0) : lines.get(Math.min(p.line(), lines.size()) - 1);
        return new Problem(p.file(), line, p.field().replaceFirst("^\\[1]\\.?", ""), p.message());
    }

    /** {@return the file} */
    public Path file() {
        return file;
    }

    /** {@return test and set-up with the readings that count, gaps included, in the order first read} */
    public ReadingSet readings() {
        Map<BenchTest.Pair, TakenReading> latest = new LinkedHashMap<>();
        taken.forEach(r -> latest.put(r.pair(), r));
        return setUp.withReadings(List.copyOf(latest.values()));
    }

    /**
     * Notes a reading, and comes back when it is on disk.
     *
     * @param from bar under the first probe, {@link coilwright.bench.BenchTest#SHAFT} for the shaft
     * @param to bar under the second probe
     * @param shown what the meter showed: a number in the unit of the set-up or with its own, OL, or blank for a gap
     * @return the reading as it was noted
     * @throws IllegalArgumentException saying what is wrong with it; nothing is noted then
     * @throws IOException when it cannot be written; nothing is noted then
     */
    public TakenReading note(int from, int to, String shown) throws IOException {
        TakenReading.Shown read = TakenReading.parse(shown, setUp.test().kinds());
        if (read instanceof TakenReading.Value v
                && v.unit().isEmpty()
                && setUp.unit().isPresent()) {
            read = new TakenReading.Value(v.number(), setUp.unit());
        }
        var reading = new TakenReading(from, to, read);
        ReadingSet.checkReading(reading, setUp.test(), setUp.unit());
        append(line(reading));
        taken.add(reading);
        return reading;
    }

    /**
     * Takes back the last reading noted.
     *
     * @return what was taken back; empty where there was none
     * @throws IOException when the file cannot be written; nothing is taken back then
     */
    public Optional<TakenReading> takeBack() throws IOException {
        if (taken.isEmpty()) {
            return Optional.empty();
        }
        TakenReading last = taken.remove(taken.size() - 1);
        try {
            rewrite();
        } catch (IOException e) {
            taken.add(last);
            throw e;
        }
        return Optional.of(last);
    }

    private void append(String line) throws IOException {
        unchanged();
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE, StandardOpenOption.APPEND)) {
            try {
                ByteBuffer bytes = StandardCharsets.UTF_8.encode(line);
                while (bytes.hasRemaining()) {
                    channel.write(bytes);
                }
                channel.force(true);
            } catch (IOException e) {
                // A part of a line must not become the beginning of the next.
                channel.truncate(length);
                throw e;
            }
        }
        length += bytes(line);
    }

    private void rewrite() throws IOException {
        unchanged();
        String text = toText();
        SafeFiles.write(file, text);
        length = bytes(text);
    }

    private void unchanged() throws IOException {
        if (Files.size(file) != length) {
            throw new FileSystemException(
                    file.toString(),
                    null,
                    "another program changed it: end this run, look at the file and go on with it again");
        }
    }

    private static long bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8).length;
    }

    private String toText() {
        StringBuilder out = new StringBuilder();
        for (String line : JobWriter.setUp(setUp)) {
            out.append("# ").append(oneCell(line)).append('\n');
        }
        out.append(HEADING).append('\n');
        taken.forEach(r -> out.append(line(r)));
        return out.toString();
    }

    /**
     * A spreadsheet parts also these lines into cells, and takes a cell that begins with an equals sign for a formula:
     * what parts cells is written so that only the reader of these lines sees it. It can stand in text alone, which is in
     * quotation marks then.
     */
    private static String oneCell(String setUp) {
        if (!setUp.startsWith("meter: ")) {
            return setUp;
        }
        String text = setUp.substring("meter: ".length());
        String quoted = text.startsWith("\"") ? text : '"' + text + '"';
        return "meter: "
                + (text.matches("[^,;]*") ? text : quoted.replace(",", "\\x2C").replace(";", "\\x3B"));
    }

    private static String line(TakenReading r) {
        return TakenReading.name(r.from()) + "," + TakenReading.name(r.to()) + "," + r.written() + "\n";
    }
}
