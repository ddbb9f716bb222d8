package coilwright.sheet;

import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import java.util.List;

/** A rewind plan to print: the report in words and tables, and lines to fill in while winding. */
public final class RewindSheet {
    private RewindSheet() {}

    /** The sheet in colour. */
    public static DrawingPages of(RewindReport report) {
        return of(report, Palette.COLOUR);
    }

    /** The sheet in other colours. */
    public static DrawingPages of(RewindReport report, Palette palette) {
        Sheet sheet = Sheet.titled(report.job().title(), "Rewind plan", palette);
        sheet.fields(List.of("Date", "Planned by", "Job"));
        for (RewindReportSection section : RewindReportText.of(report)) {
            sheet.heading(section.title());
            if (!section.facts().isEmpty()) {
                sheet.facts(section.facts());
            }
            section.table().ifPresent(sheet::table);
            if (section.part() == RewindReportSection.Part.CAUTIONS) {
                sheet.caution(section.items());
            } else {
                sheet.items(section.items());
            }
        }
        sheet.keepTogether(52).heading("While winding");
        sheet.ticks(List.of(
                "Wire gauged, bare and over the covering, and as planned.",
                "First coil wound, weighed and measured; it goes in with the wedge.",
                "Connections checked against the plan before soldering."));
        sheet.fields(List.of("Bare, mm", "Over covering, mm", "Turns wound"));
        sheet.fields(List.of("Coil resistance", "Brush to brush", "At °C"));
        sheet.fields(List.of("Wire used, kg", "Wound by", "Date"));
        return sheet.pages();
    }
}
