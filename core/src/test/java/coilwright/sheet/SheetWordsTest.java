package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.KeptText;
import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.drawing.Shape;
import coilwright.job.BadInputException;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.job.Quantity;
import coilwright.lesson.Exercise;
import coilwright.lesson.Kind;
import coilwright.lesson.Lesson;
import coilwright.lesson.Walk;
import coilwright.rewind.WindingWay;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.WindingSpec;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Sheets of small jobs word by word, each read through when it was set down. Where a change of a sheet is meant,
 * {@link #main} writes the files anew: read what differs.
 */
class SheetWordsTest {
    private static final Path SAMPLES = Path.of("../samples/jobs");

    private static Map<String, Supplier<DrawingPages>> all() {
        Palette p = Palette.COLOUR;
        Job full = RecordJobs.full();
        Job bare = RecordJobs.bare();
        Job before = asBefore();
        Job lap = Job.of("Lap", Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE))
                .withTurns(3)
                .withCoilResistance(Quantity.parse("12.5 mohm", Quantity.Kind.RESISTANCE));
        BenchArmature sound = BenchArmature.sound(lap.build(), 0.0125);
        TestSheet.Options usual = TestSheet.Options.usual();
        Map<String, Supplier<DrawingPages>> out = new LinkedHashMap<>();
        for (SheetKind kind : SheetKind.values()) {
            boolean ofThePlan = kind == SheetKind.RECORD || kind == SheetKind.AS_FOUND;
            out.put("full-" + kind.word(), () -> kind.pages(ofThePlan ? full : before, WindingWay.FORMED_COILS, p));
            if (kind != SheetKind.CHECKLIST) {
                out.put("bare-" + kind.word(), () -> kind.pages(bare, WindingWay.FORMED_COILS, p));
            }
        }
        out.put("full-rewind", () -> RewindSheet.of(RewindReport.of(full, RewindReport.Settings.USUAL)));
        out.put("bare-rewind", () -> RewindSheet.of(RewindReport.of(bare, RewindReport.Settings.USUAL)));
        for (String sample : List.of("quarry-winch-motor", "mountain-railway-motor", "plating-room-generator")) {
            out.put(
                    sample + "-rewind",
                    () -> RewindSheet.of(RewindReport.of(sample(sample), RewindReport.Settings.USUAL)));
        }
        out.put("test-drop", () -> TestSheet.of(lap, sound, new BenchTest.Drop(1, 4, 2), usual));
        out.put("test-resistance", () -> TestSheet.of(lap, sound, new BenchTest.Resistance(), usual));
        out.put("test-ground", () -> TestSheet.of(lap, sound, new BenchTest.Ground(), usual));
        out.put("test-polarity", () -> TestSheet.of(lap, sound, new BenchTest.Polarity(), usual));
        out.put(
                "test-growler-turned",
                () -> TestSheet.of(lap, sound, new BenchTest.GrowlerTurned(Growler.USUAL, 105), usual));
        out.put(
                "test-growler-walked",
                () -> TestSheet.of(lap, sound, new BenchTest.GrowlerWalked(Growler.USUAL, 20), usual));
        for (String sample : List.of("hill-tram-motor", "orchard-pump-dynamo", "pantry-mixer-motor")) {
            out.put(
                    sample + "-order",
                    () -> SheetKind.ORDER.pages(
                            sample(sample),
                            sample.startsWith("pantry") ? WindingWay.COIL_BY_COIL : WindingWay.FORMED_COILS,
                            p));
        }
        for (String sample : List.of("post-van-dynamo", "quarry-winch-motor")) {
            out.put(sample + "-record", () -> SheetKind.RECORD.pages(sample(sample), WindingWay.FORMED_COILS, p));
        }
        List<Exercise> exercises = Lesson.exercises(7, 2, List.of(Kind.values()), 1);
        out.put("lesson-questions", () -> LessonSheet.questions(7, exercises, p));
        out.put("lesson-key", () -> LessonSheet.key(7, exercises, p));
        out.put("lesson-walk", () -> LessonSheet.walk(Walk.chapters().subList(0, 4), p));
        out.put("test-blade", () -> TestSheet.blade(lap, sound, Growler.USUAL, usual));
        return out;
    }

    /** The job with every section but a plan. */
    private static Job asBefore() {
        String text = KeptText.of(SheetWordsTest.class, "full-job.yaml");
        try {
            return JobReader.parse("full-job.yaml", text.replaceFirst("(?m)^plan:.*\\R", ""));
        } catch (BadInputException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Job sample(String name) {
        try {
            return JobReader.read(SAMPLES.resolve(name + ".yaml"));
        } catch (BadInputException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The texts of each page from top to bottom, those of one height from left to right. */
    private static List<String> words(DrawingPages pages) {
        List<String> out = new ArrayList<>();
        for (Drawing page : pages.pages()) {
            out.add("---- " + page.title() + ": " + page.description());
            Map<Long, List<Shape.Text>> rows = new TreeMap<>();
            for (Shape.Text t : page.texts()) {
                rows.computeIfAbsent(Math.round(t.at().y() * 10), y -> new ArrayList<>())
                        .add(t);
            }
            for (List<Shape.Text> row : rows.values()) {
                out.add(row.stream()
                        .sorted(Comparator.comparingDouble(t -> t.bounds().left()))
                        .map(Shape.Text::text)
                        .collect(Collectors.joining(" | ")));
            }
        }
        return out;
    }

    static Stream<String> names() {
        return all().keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("names")
    void everyWordIsAsItWasRead(String name) {
        assertThat(words(all().get(name).get()))
                .containsExactlyElementsOf(KeptText.lines(SheetWordsTest.class, "/coilwright/sheet/" + name + ".txt"));
    }

    /** Writes the files into a folder. */
    public static void main(String[] args) throws IOException {
        for (Map.Entry<String, Supplier<DrawingPages>> e : all().entrySet()) {
            Files.write(
                    Path.of(args[0], e.getKey() + ".txt"), words(e.getValue().get()));
        }
    }
}
