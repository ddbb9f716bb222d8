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
    /** Common practice. */
    private static final List<String> CARE = List.of(
            "Old insulation may hold asbestos, old solder and paint hold lead: do not burn, sand or blow them off; where"
                    + " asbestos is likely, leave it to those licensed for it.",
            "Burning enamel, varnish and solvents give off poisonous and explosive vapours: ventilate, keep flames and"
                    + " sparks away, dry as the maker says.",
            "Soldering irons, ovens and fresh castings burn; wire under tension cuts: gloves, eye protection.",
            "Local codes and the judgement of a qualified person go before this sheet.");

    private RewindSheet() {}

    /**
     * {@return the sheet in colour}
     *
     * @param report what was worked out
     */
    public static DrawingPages of(RewindReport report) {
        return of(report, Palette.COLOUR);
    }

    /**
     * {@return the sheet in other colours}
     *
     * @param report what was worked out
     * @param palette colours, or black, white and grey
     */
    public static DrawingPages of(RewindReport report, Palette palette) {
        Sheet sheet = Sheet.titled(report.job().title(), "Rewind plan", palette);
        sheet.fields(List.of("Date", "Planned by", "Job"));
        boolean drawn = false;
        for (RewindReportSection section : ordered(report)) {
            if (report.change().isPresent() && !section.planned() && !drawn) {
                slot(sheet, report, palette);
                drawn = true;
            }
            sheet.heading(section.title());
            if (!section.facts().isEmpty()) {
                Map<String, String> facts = new LinkedHashMap<>();
                section.facts().forEach((name, value) -> facts.put(WindingFacts.capital(name), value));
                sheet.facts(facts);
            }
            section.table().ifPresent(sheet::table);
            if (section.part() == Part.CAUTIONS) {
                sheet.caution(section.items());
            } else {
                sheet.items(section.items());
            }
        }
        if (!drawn) {
            slot(sheet, report, palette);
        }
        sheet.heading("Take care").caution(CARE);
        sheet.keepTogether(52).heading("While winding");
        sheet.ticks(List.of(
                "Wire gauged, bare and over the covering, and as planned.",
                "First coil wound, weighed and measured; it goes in with the wedge.",
                "Connections checked against the plan before soldering."));
        sheet.fields(List.of("Bare, mm", "Over covering, mm", "Turns wound"));
        sheet.fields(List.of("Coil resistance", "Brush to brush", "At °C"));
        sheet.fields(List.of("Wire used, kg", "Wound by", "Date"));
        return sheet.fewestPages();
    }

    private static void slot(Sheet sheet, RewindReport report, Palette palette) {
        report.slotSection(palette).ifPresent(d -> {
            sheet.heading("Slot in section").drawing(d, 120);
            sheet.paragraph("Reduced to the width of this page: the bar under the slot gives the scale.");
        });
    }

    /** What is to be wound first; where that is another thing than was found, without what else could be wound. */
    private static List<RewindReportSection> ordered(RewindReport report) {
        List<RewindReportSection> all = RewindReportText.of(report);
        if (report.change().isEmpty()) {
            return all;
        }
        List<RewindReportSection> out = new ArrayList<>(
                all.stream().filter(RewindReportSection::planned).toList());
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
