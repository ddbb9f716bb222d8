package coilwright.cli;

import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.lesson.Exercise;
import coilwright.lesson.Kind;
import coilwright.lesson.Lesson;
import coilwright.lesson.Walk;
import coilwright.sheet.LessonSheet;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Exercises with worked answers. */
@Command(
        name = "lesson",
        header = "Set exercises with worked answers, or walk through the rules of winding.",
        description = {
            "The same seed, grade and kind give the same exercises on every machine. Questions go to the screen; with "
                    + "--key the answers and the working follow each. --sheet and --key-sheet write pages to print "
                    + "instead.",
            "With --walk the rules are explained one after the other on small armatures; --sheet writes it with "
                    + "drawings."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  coilwright lesson --seed 7 --kind pitches --count 3",
            "  coilwright lesson --seed 7 --grade 2 --kind fault --kind readings --key",
            "  coilwright lesson --seed 7 --grade 3 --sheet worksheet.pdf --key-sheet key.pdf",
            "  coilwright lesson --walk --sheet walk.pdf"
        })
final class LessonCommand implements Callable<Integer> {
    /** The words for the kinds, for completion. */
    static final class Words extends ArrayList<String> {
        private static final long serialVersionUID = 1L;

        Words() {
            super(Arrays.stream(Kind.values()).map(Kind::word).toList());
            add(ALL);
        }
    }

    private static final String ALL = "all";

    private final Console console;

    @Option(names = "--seed", paramLabel = "N", description = "Any whole number; 1 unless given.")
    private Optional<Long> seed;

    @Option(names = "--grade", paramLabel = "1|2|3", description = "1 easy, 2, 3 hard; 1 unless given.")
    private Optional<Integer> grade;

    @Option(
            names = "--kind",
            paramLabel = "KIND",
            completionCandidates = Words.class,
            description = "Kind of exercise, as often as wished: ${COMPLETION-CANDIDATES}; all unless given.")
    private List<String> kinds = new ArrayList<>();

    @Option(names = "--count", paramLabel = "N", description = "Exercises of each kind; 1 unless given.")
    private Optional<Integer> count;

    @Option(names = "--key", description = "Show answers and working too.")
    private boolean key;

    @Option(
            names = "--sheet",
            paramLabel = "FILE",
            description = "Write the questions as pages to print, ending in .pdf, .svg or .png.")
    private Optional<Path> sheet;

    @Option(names = "--key-sheet", paramLabel = "FILE", description = "Write the answers as pages to print.")
    private Optional<Path> keySheet;

    @Option(names = "--walk", description = "Instead of exercises, walk through the rules of winding.")
    private boolean walk;

    @Mixin
    private OutputOptions output;

    LessonCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        if (walk) {
            return walk();
        }
        long number = seed.orElse(1L);
        List<Exercise> exercises =
                Given.valid(() -> Lesson.exercises(number, grade.orElse(1), chosen(), count.orElse(1)));
        if (sheet.isPresent() || keySheet.isPresent()) {
            if (key) {
                throw new UsageException("--key is for the screen: name a file with --key-sheet instead");
            }
            sheet.ifPresent(file -> write(LessonSheet.questions(number, exercises, Palette.COLOUR), file));
            keySheet.ifPresent(file -> write(LessonSheet.key(number, exercises, Palette.COLOUR), file));
            return Exit.DONE;
        }
        output.answer(
                console,
                switch (output.format()) {
                    case TEXT -> LessonText.of(number, exercises, key);
                    case JSON -> LessonJson.of(number, exercises, key);
                    case CSV -> LessonText.csv(exercises, key);
                });
        return Exit.DONE;
    }

    private int walk() {
        if (seed.isPresent()
                || grade.isPresent()
                || count.isPresent()
                || !kinds.isEmpty()
                || key
                || keySheet.isPresent()) {
            throw new UsageException(
                    "--walk goes with --sheet, --out and --format alone: it has no exercises to choose");
        }
        if (sheet.isPresent()) {
            write(LessonSheet.walk(Walk.chapters(), Palette.COLOUR), sheet.get());
            return Exit.DONE;
        }
        output.answer(
                console,
                switch (output.format()) {
                    case TEXT -> LessonText.walk(Walk.chapters());
                    case JSON -> LessonJson.walk(Walk.chapters());
                    case CSV -> throw new UsageException("--walk has no table: ask for --format text or json");
                });
        return Exit.DONE;
    }

    private void write(DrawingPages pages, Path file) {
        Drawings.write(console, pages, file, OptionalDouble.empty());
    }

    private List<Kind> chosen() {
        if (kinds.isEmpty() || kinds.contains(ALL)) {
            return List.of(Kind.values());
        }
        return kinds.stream().map(Kind::named).distinct().toList();
    }
}
