package coilwright.job;

import coilwright.bench.BenchTest;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** Reads the section {@code readings} of a job file. */
final class ReadingsSection {
    static final List<String> SET_KEYS =
            List.of("test", "stage", "date", "feed", "angle", "clock", "unit", "meter", "temperature", "readings");
    static final List<String> FEED_KEYS = List.of("in", "out", "amps");
    static final List<String> READING_KEYS = List.of("from", "to", "reading");
    static final Map<String, TestKind> TESTS = new LinkedHashMap<>();
    static final Map<String, ReadingSet.Stage> STAGES = new LinkedHashMap<>();

    /** Most sets taken. */
    private static final int MOST_SETS = 1000;

    static {
        Arrays.stream(TestKind.values()).forEach(t -> TESTS.put(t.word(), t));
        Arrays.stream(ReadingSet.Stage.values()).forEach(s -> STAGES.put(Words.of(s), s));
    }

    private final int bars;

    private ReadingsSection(int bars) {
        this.bars = bars;
    }

    /**
     * The sets of readings; those with anything wrong are left out.
     *
     * @param bars that the armature has
     */
    static List<ReadingSet> read(Field field, int bars) {
        var section = new ReadingsSection(bars);
        List<ReadingSet> sets = new ArrayList<>();
        field.list(MOST_SETS).orElse(List.of()).forEach(f -> section.set(f).ifPresent(sets::add));
        return sets;
    }

    private Optional<ReadingSet> set(Field field) {
        Optional<Map<String, Field>> section = field.section(SET_KEYS);
        if (section.isEmpty()) {
            return Optional.empty();
        }
        Map<String, Field> f = section.get();
        Optional<TestKind> test = field.required(f, "test", ": it is one of " + String.join(", ", TESTS.keySet()))
                .flatMap(t -> t.oneOf(TESTS));
        Optional<LocalDate> date = Optional.ofNullable(f.get("date")).flatMap(SectionReader::date);
        Optional<ReadingSet.Stage> stage =
                f.containsKey("stage") ? f.get("stage").oneOf(STAGES) : Optional.of(ReadingSet.Stage.AS_FOUND);
        Optional<ReadingSet.GivenFeed> feed = Optional.ofNullable(f.get("feed")).flatMap(this::feed);
        Optional<BigDecimal> angle = Optional.ofNullable(f.get("angle")).flatMap(ReadingsSection::degrees);
        Optional<BigDecimal> clock = Optional.ofNullable(f.get("clock")).flatMap(ReadingsSection::degrees);
        Optional<String> meter = Optional.ofNullable(f.get("meter")).flatMap(m -> m.text(ReadingSet::checkMeter));
        Optional<Quantity> temperature =
                Optional.ofNullable(f.get("temperature")).flatMap(t -> t.quantity(Quantity.Kind.TEMPERATURE, q -> {}));
        Optional<Field> list = field.required(f, "readings", ": list each as {from, to, reading}");
        if (test.isEmpty()) {
            return Optional.empty();
        }
        TestKind t = test.get();
        given(field, f, "feed", t.fed(), "{in, out, amps}", t);
        given(field, f, "angle", t == TestKind.GROWLER, "where slot 1 stood, degrees", t);
        given(field, f, "clock", t == TestKind.GROWLER_TURNED, "where the probes were held, degrees", t);
        Optional<String> unit =
                Optional.ofNullable(f.get("unit")).flatMap(u -> u.text(word -> ReadingSet.checkUnit(word, t)));
        List<TakenReading> readings = new ArrayList<>();
        list.flatMap(l -> l.list(ReadingSet.MOST_READINGS))
                .orElse(List.of())
                .forEach(r -> reading(r, t, unit, f.containsKey("unit")).ifPresent(readings::add));
        if (field.anyWrong()) {
            return Optional.empty();
        }
        return Optional.of(
                new ReadingSet(date, t, feed, angle, clock, unit, meter, temperature, readings, stage.get()));
    }

    private static void given(
            Field set, Map<String, Field> fields, String key, boolean needed, String what, TestKind test) {
        if (needed) {
            set.required(fields, key, ": a " + test.word() + " test needs it, " + what);
        } else if (fields.containsKey(key)) {
            fields.get(key).wrong("is not used by a " + test.word() + " test: leave it out");
        }
    }

    private static Optional<BigDecimal> degrees(Field field) {
        return field.decimal("degrees", ReadingSet::checkDegrees);
    }

    private Optional<ReadingSet.GivenFeed> feed(Field field) {
        Optional<Map<String, Field>> section = field.section(FEED_KEYS);
        if (section.isEmpty()) {
            return Optional.empty();
        }
        Map<String, Field> f = section.get();
        OptionalInt in = feedBar(field, f, "in");
        OptionalInt out = feedBar(field, f, "out");
        Optional<BigDecimal> amps = field.required(f, "amps", ": how much current was fed")
                .flatMap(a -> a.decimal("amperes", ReadingSet.GivenFeed::checkAmps));
        if (in.isEmpty() || out.isEmpty() || amps.isEmpty()) {
            return Optional.empty();
        }
        return field.made(() -> new ReadingSet.GivenFeed(in.getAsInt(), out.getAsInt(), amps.get()));
    }

    private OptionalInt feedBar(Field feed, Map<String, Field> fields, String key) {
        Optional<Field> field = feed.required(fields, key, ": at which bar current went " + key);
        return field.isEmpty() ? OptionalInt.empty() : field.get().wholeNumber(n -> Job.checkBar(n, bars));
    }

    private Optional<TakenReading> reading(Field entry, TestKind test, Optional<String> unit, boolean unitWritten) {
        Optional<Map<String, Field>> section = entry.section(READING_KEYS);
        if (section.isEmpty()) {
            return Optional.empty();
        }
        Map<String, Field> f = section.get();
        OptionalInt from = place(entry, f, "from");
        OptionalInt to = place(entry, f, "to");
        Optional<TakenReading.Shown> shown = shown(f, test);
        if (from.isEmpty() || to.isEmpty() || shown.isEmpty()) {
            return Optional.empty();
        }
        return entry.made(() -> {
            var reading = new TakenReading(from.getAsInt(), to.getAsInt(), shown.get());
            // A unit that was written but is wrong was complained of already, once.
            if (unit.isPresent() || !unitWritten) {
                ReadingSet.checkReading(reading, test, unit);
            }
            return reading;
        });
    }

    private OptionalInt place(Field entry, Map<String, Field> fields, String key) {
        Optional<Field> field = entry.required(fields, key, "");
        if (field.isEmpty()) {
            return OptionalInt.empty();
        }
        if (field.get().written().filter(TakenReading.SHAFT::equals).isPresent()) {
            return OptionalInt.of(BenchTest.SHAFT);
        }
        return field.get().wholeNumber(n -> Job.checkBar(n, bars));
    }

    private static Optional<TakenReading.Shown> shown(Map<String, Field> fields, TestKind test) {
        Field field = fields.get("reading");
        if (field == null || field.isNull()) {
            return Optional.of(new TakenReading.Gap());
        }
        if (field.written().isEmpty()) {
            field.wrong("is a list or section, but must be a number, OL or nothing");
            return Optional.empty();
        }
        return field.made(() -> TakenReading.parse(field.written().get(), test.kinds()));
    }
}
