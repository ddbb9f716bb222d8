package coilwright.sheet;

import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.lesson.Chapter;
import coilwright.lesson.Exercise;
import coilwright.lesson.Grid;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Exercises to print and fill in, their key, and the walk through the rules. */
public final class LessonSheet {
    private static final double PICTURE = 115;
    private static final double KEY_PICTURE = 80;
    private static final double WALK_PICTURE = 115;
    private static final double ONE_PAGE = 250;
    private static final double WORDS = 14;
    private static final int WORKING_LINES = 4;

    private LessonSheet() {}

    /**
     * {@return the questions, with room to write}
     *
     * @param seed the exercises were made from
     * @param exercises at least one
     * @param palette colours, or black, white and grey
     */
    public static DrawingPages questions(long seed, List<Exercise> exercises, Palette palette) {
        Sheet sheet = Sheet.titled(title(exercises), "Worksheet, seed " + seed, palette);
        sheet.fields(List.of("Name", "Date"));
        int number = 0;
        for (Exercise e : exercises) {
            // What does not fit on one page anyway may begin on any.
            double high = height(e);
            sheet.keepTogether(high < ONE_PAGE ? high : 50)
                    .heading(++number + ". " + e.kind().title());
            e.question().forEach(sheet::paragraph);
            e.picture().ifPresent(p -> sheet.drawing(p, PICTURE));
            e.table().ifPresent(t -> sheet.table(table(t)));
            if (e.filledTable().isEmpty()) {
                sheet.writingLines("Working", WORKING_LINES);
                answerLines(sheet, e.asked());
            }
        }
        return sheet.fewestPages();
    }

    /** About how high a question is with all its room to write, mm. */
    private static double height(Exercise e) {
        double high = 10;
        for (String words : e.question()) {
            high += Sheet.paragraphHeight(words);
        }
        if (e.picture().isPresent()) {
            high += 4 + Sheet.height(e.picture().get(), PICTURE);
        }
        if (e.table().isPresent()) {
            high += height(e.table().get());
        }
        if (e.filledTable().isEmpty()) {
            high += 8 + 8.0 * WORKING_LINES + 10.0 * halves(e.asked().size());
        }
        return high;
    }

    private static double height(Grid grid) {
        int strips = strips(grid);
        int rows = (grid.rows().size() + strips - 1) / strips;
        return 14 + 6.1 * rows;
    }

    private static int halves(int n) {
        return (n + 1) / 2;
    }

    /** A line for every answer, two on a row. */
    private static void answerLines(Sheet sheet, List<String> names) {
        for (int i = 0; i < names.size(); i += 2) {
            sheet.fields(names.subList(i, Math.min(names.size(), i + 2)));
        }
    }

    /**
     * {@return the answers with their working}
     *
     * @param seed the exercises were made from
     * @param exercises at least one
     * @param palette colours, or black, white and grey
     */
    public static DrawingPages key(long seed, List<Exercise> exercises, Palette palette) {
        Sheet sheet = Sheet.titled(title(exercises), "Key, seed " + seed, palette);
        int number = 0;
        for (Exercise e : exercises) {
            sheet.keepTogether(40).heading(++number + ". " + e.kind().title());
            sheet.paragraph(e.question().get(0));
            sheet.steps(e.steps());
            Optional<Grid> filled = e.filledTable();
            if (filled.isPresent()) {
                sheet.keepTogether(height(filled.get())).table(table(filled.get()));
            } else {
                Map<String, String> answers = new LinkedHashMap<>();
                e.answers().forEach(a -> answers.put(a.what(), a.printed()));
                // Few answers stay on one page; many may run over.
                sheet.keepTogether(Math.min(60, 5.2 * answers.size() + 3)).facts(answers);
            }
            e.keyPicture().ifPresent(p -> sheet.drawing(p, KEY_PICTURE));
        }
        return sheet.fewestPages();
    }

    /**
     * {@return the walk through the rules}
     *
     * @param chapters in order
     * @param palette colours, or black, white and grey
     */
    public static DrawingPages walk(List<Chapter> chapters, Palette palette) {
        Sheet sheet = Sheet.titled("The rules of winding", "Step by step, on small armatures", palette);
        int number = 0;
        for (Chapter c : chapters) {
            sheet.keepTogether(90).heading(++number + ". " + c.title());
            sheet.caution(c.cautions());
            for (Chapter.Step s : c.steps()) {
                s.drawing().ifPresent(d -> sheet.keepTogether(Sheet.height(d, WALK_PICTURE) + WORDS));
                sheet.paragraph(s.words());
                s.drawing().ifPresent(d -> sheet.drawing(d, WALK_PICTURE));
            }
        }
        return sheet.fewestPages();
    }

    private static String title(List<Exercise> exercises) {
        return "Armature winding, exercises of grade " + exercises.get(0).grade();
    }

    private static Table table(Grid grid) {
        List<Table.Column> columns = new ArrayList<>();
        grid.heads().forEach(h -> columns.add(new Table.Column(h, 1, Table.Align.MIDDLE)));
        return new Table(columns, grid.rows(), strips(grid));
    }

    private static int strips(Grid grid) {
        if (grid.rows().size() <= 5) {
            return 1;
        }
        return grid.heads().size() <= 2 ? 3 : 2;
    }
}
