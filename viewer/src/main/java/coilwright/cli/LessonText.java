package coilwright.cli;

import coilwright.lesson.Answer;
import coilwright.lesson.Chapter;
import coilwright.lesson.Exercise;
import coilwright.lesson.Grid;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Exercises and the walk, for a person and for a spreadsheet. */
final class LessonText {
    private static final int WIDTH = 94;

    private LessonText() {}

    static String of(long seed, List<Exercise> exercises, boolean key) {
        StringBuilder out = new StringBuilder();
        out.append("Exercises of grade ")
                .append(exercises.get(0).grade())
                .append(", seed ")
                .append(seed)
                .append('\n');
        int number = 0;
        for (Exercise e : exercises) {
            out.append('\n')
                    .append(++number)
                    .append(". ")
                    .append(e.kind().title())
                    .append('\n');
            e.question().forEach(p -> paragraph(out, p, "  "));
            Optional<Grid> table = key && e.filledTable().isPresent() ? e.filledTable() : e.table();
            table.ifPresent(t -> grid(out, t));
            if (key) {
                key(out, e);
            }
        }
        if (!key) {
            out.append("\n--key shows the answers and how they are come by.\n");
        }
        return out.toString();
    }

    private static void key(StringBuilder out, Exercise e) {
        out.append("  Working\n");
        int step = 0;
        for (String s : e.steps()) {
            List<String> lines = TextTable.fold(s, WIDTH - 5);
            step++;
            for (int i = 0; i < lines.size(); i++) {
                out.append(i == 0 ? String.format(Locale.ROOT, "  %2d. ", step) : "      ")
                        .append(lines.get(i))
                        .append('\n');
            }
        }
        if (e.filledTable().isPresent()) {
            return;
        }
        out.append("  Answers\n");
        var table = new TextTable("", "");
        e.answers().forEach(a -> table.row(a.what(), a.printed()));
        StringBuilder rows = new StringBuilder();
        table.appendRowsTo(rows);
        rows.toString().lines().forEach(l -> out.append("  ").append(l).append('\n'));
    }

    private static void paragraph(StringBuilder out, String words, String indent) {
        TextTable.fold(words, WIDTH).forEach(l -> out.append(indent).append(l).append('\n'));
    }

    private static void grid(StringBuilder out, Grid grid) {
        var table = new TextTable(grid.heads().stream().map(h -> ">" + h).toArray(String[]::new));
        grid.rows()
                .forEach(r ->
                        table.row(r.stream().map(c -> c.isEmpty() ? "__" : c).toArray()));
        table.appendTo(out);
    }

    static String walk(List<Chapter> chapters) {
        StringBuilder out = new StringBuilder("The rules of winding, step by step\n");
        int number = 0;
        for (Chapter c : chapters) {
            out.append('\n').append(++number).append(". ").append(c.title()).append('\n');
            c.cautions().forEach(words -> paragraph(out, "Caution: " + words, "  "));
            c.steps().forEach(s -> paragraph(out, s.words(), "  "));
        }
        out.append("\n--sheet FILE writes this with its drawings.\n");
        return out.toString();
    }

    /** One line an answer; without the key the lines to fill in. */
    static String csv(List<Exercise> exercises, boolean key) {
        StringBuilder out = new StringBuilder("exercise,kind,what,value,unit\n");
        int number = 0;
        for (Exercise e : exercises) {
            String start = ++number + "," + e.kind().word() + ",";
            if (!key) {
                e.asked()
                        .forEach(
                                what -> out.append(start).append(Csv.cell(what)).append(",,\n"));
                continue;
            }
            for (Answer a : e.answers()) {
                Csv.line(out.append(start), List.of(a.what(), a.value(), a.unit()));
            }
        }
        return out.toString();
    }
}
