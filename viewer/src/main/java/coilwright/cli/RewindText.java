package coilwright.cli;

import coilwright.sheet.RewindReport;
import coilwright.sheet.RewindReportSection;
import coilwright.sheet.RewindReportText;
import coilwright.sheet.Table;

/** A rewind worked out, for a person. */
final class RewindText {
    private RewindText() {}

    static String of(RewindReport report) {
        StringBuilder out = new StringBuilder(report.job().title()).append('\n');
        for (RewindReportSection section : RewindReportText.of(report)) {
            out.append('\n').append(section.title()).append('\n');
            TextTable.facts(out, section.facts());
            section.table().ifPresent(t -> table(out, t));
            TextTable.items(out, section.items());
        }
        return out.toString();
    }

    private static void table(StringBuilder out, Table table) {
        var text = new TextTable(table.columns().stream()
                .map(c -> (c.align() == Table.Align.RIGHT ? ">" : "") + c.head())
                .toArray(String[]::new));
        table.rows().forEach(row -> text.row(row.toArray()));
        text.appendTo(out);
    }
}
