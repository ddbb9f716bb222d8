package coilwright.sheet;

import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.sheet.RewindReportSection.Part;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

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
        for (RewindReportSection section : ordered(report)) {
            sheet.heading(section.title());
            if (!section.facts().isEmpty()) {
                Map<String, String> facts = new LinkedHashMap<>();
                section.facts().forEach((name, value) -> facts.put(TestSheet.capital(name), value));
                sheet.facts(facts);
            }
            section.table().ifPresent(sheet::table);
            if (section.part() == Part.CAUTIONS) {
                sheet.caution(section.items());
            } else {
                sheet.items(section.items());
            }
        }
        report.slotSection(palette).ifPresent(d -> sheet.heading("Slot in section").drawing(d, 130));
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

    /** What is to be wound first; where that is another thing than was found, without what else could be wound. */
    private static List<RewindReportSection> ordered(RewindReport report) {
        List<RewindReportSection> all = RewindReportText.of(report);
        if (report.change().isEmpty()) {
            return all;
        }
        List<RewindReportSection> out =
                new ArrayList<>(all.stream().filter(RewindReportSection::planned).toList());
        all.stream()
                .filter(s -> !s.planned() && s.part() != Part.SUBSTITUTES && s.part() != Part.OTHERS)
                .map(s -> s.part() == Part.MISSING
                        ? s
                        : new RewindReportSection(
                                s.part(), false, s.title() + " as found", s.facts(), s.table(), s.items()))
                .forEach(out::add);
        return out;
    }
}
