package coilwright.sheet;

import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.rewind.Acceptance;
import coilwright.rewind.Caution;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A sheet to print for the acceptance of a finished winding: every check with what was found or room to write it, what
 * is acceptable and by whom, boxes to tick and lines to sign.
 */
public final class AcceptanceSheet {
    private AcceptanceSheet() {}

    /**
     * {@return the sheet}
     *
     * @param title of the machine
     * @param acceptance what was judged
     * @param palette colours, or black, white and grey
     */
    public static DrawingPages of(String title, Acceptance acceptance, Palette palette) {
        Sheet sheet = Sheet.titled(title, "Acceptance of the finished winding", palette);
        sheet.facts(acceptance.facts());
        sheet.fields(List.of("Date", "Tested by", "Instruments"));
        sheet.caution(Acceptance.cautions().stream()
                .map(Caution::text)
                .map(AcceptanceSheet::sentence)
                .toList());
        sheet.heading("Verdict").paragraph(acceptance.verdictText());
        for (Acceptance.Check check : acceptance.checks()) {
            check(sheet, acceptance, check);
        }
        if (!acceptance.conflicts().isEmpty()) {
            sheet.heading("Where sources differ").items(acceptance.conflicts());
        }
        sheet.keepTogether(52).heading("Result");
        sheet.ticks(List.of(
                "Accepted: every check passed by the limits marked ●.",
                "Not accepted: the checks that failed are marked above.",
                "Discharged, joins removed, ready for assembly."));
        sheet.fields(List.of("Tested by", "Date"));
        sheet.fields(List.of("Released by", "Date"));
        sheet.fields(List.of("Remarks"));
        return sheet.fewestPages();
    }

    private static void check(Sheet sheet, Acceptance acceptance, Acceptance.Check check) {
        sheet.keepTogether(42);
        sheet.heading(check.title() + ": " + word(check.status()));
        List<String> items = new ArrayList<>();
        check.found().forEach(f -> items.add(sentence("found: " + f)));
        check.wanted().forEach(w -> items.add(sentence(w)));
        sheet.items(items);
        if (check.found().isEmpty() || check.status() == Acceptance.Status.TO_DO) {
            sheet.fields(check.fields());
        }
        if (check.id().equals("insulation-resistance")
                && !acceptance.leastReadings().isEmpty()) {
            leastReadings(sheet, acceptance.leastReadings());
        }
        if (!check.lines().isEmpty()) {
            limits(sheet, check.lines());
        }
        sheet.ticks(
                switch (check.status()) {
                    case PASSED -> List.of("Seen and agreed.");
                    case FAILED -> List.of("Put right and measured again: passed.");
                    case TO_DO, NOT_JUDGED -> List.of("Passed.", "Not passed.");
                });
    }

    private static String word(Acceptance.Status status) {
        return switch (status) {
            case PASSED -> "passed";
            case FAILED -> "FAILED";
            case TO_DO -> "to do";
            case NOT_JUDGED -> "not judged";
        };
    }

    private static void leastReadings(Sheet sheet, Map<String, String> readings) {
        List<Table.Column> columns = new ArrayList<>();
        columns.add(new Table.Column("Winding at", 30, Table.Align.LEFT));
        readings.keySet().forEach(k -> columns.add(new Table.Column(k, 20, Table.Align.MIDDLE)));
        List<String> row = new ArrayList<>();
        row.add("Meter at least");
        row.addAll(readings.values());
        sheet.table(new Table(columns, List.of(row), 1));
    }

    private static void limits(Sheet sheet, List<Acceptance.Line> lines) {
        List<List<String>> rows = new ArrayList<>();
        for (Acceptance.Line l : lines) {
            rows.add(List.of(
                    (l.chosen() ? "● " : "") + l.limit().applies(),
                    l.limit().words(),
                    l.limit().source().cite()
                            + (l.limit().note().isEmpty()
                                    ? ""
                                    : "; " + l.limit().note()),
                    l.found(),
                    l.word()));
        }
        sheet.table(new Table(
                List.of(
                        new Table.Column("For (● decides)", 36, Table.Align.LEFT),
                        new Table.Column("Acceptable", 30, Table.Align.LEFT),
                        new Table.Column("Source", 74, Table.Align.LEFT),
                        new Table.Column("Found", 20, Table.Align.RIGHT),
                        new Table.Column("", 16, Table.Align.LEFT)),
                rows,
                1));
    }

    private static String sentence(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + (words.endsWith(".") ? "" : ".");
    }
}
