package coilwright.sheet;

import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.job.Job;
import coilwright.rewind.Checklist;
import coilwright.rewind.Checklist.Item;
import coilwright.rewind.Checklist.Section;
import coilwright.rewind.Limit;
import coilwright.winding.Armature;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Cleaning and inspection of an armature, to print and tick off, in the order in which it is done. */
public final class ChecklistSheet {
    private ChecklistSheet() {}

    /**
     * {@return the sheet of one armature; the winding need not be one that can be wound}
     *
     * @param job what the armature is
     * @param palette colours, or black, white and grey
     */
    public static DrawingPages of(Job job, Palette palette) {
        boolean equalized = job.equalizers().isPresent() || job.winding().type() == WindingType.FROG_LEG;
        Checklist list = Checklist.of(equalized);
        Sheet sheet = Sheet.titled(job.title(), "Cleaning and inspection", palette);
        Armature a = job.armature();
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Slots, bars, poles", a.slots() + ", " + a.bars() + ", " + a.poles());
        facts.put("Winding", job.winding().type().word() + (equalized ? ", equalized" : ""));
        sheet.facts(facts);
        sheet.fields(List.of("Date", "Done by", "Customer", "Job"));
        sheet.caution(texts(list, Section.CAUTION));
        sheet.paragraph(
                "Source of this list: " + list.source().cite() + ". What the maker of the machine says comes first.");
        sheet.heading("1. Clean and dry, before any test").ticks(texts(list, Section.CLEAN));
        look(sheet, list);
        test(sheet, list);
        insulation(sheet, list);
        sheet.heading("5. Before stripping: what to note").ticks(texts(list, Section.RECORD));
        sheet.keepTogether(44).heading("Verdict");
        sheet.ticks(List.of(
                "Good: back into service.",
                "Clean, touch up and varnish.",
                "Repair single coils or the commutator.",
                "Rewind."));
        sheet.fields(List.of("Remarks"));
        return sheet.fewestPages();
    }

    private static List<String> texts(Checklist list, Section section) {
        return list.items(section).stream()
                .map(i -> i.text().endsWith(".") ? i.text() : i.text() + ".")
                .toList();
    }

    private static void look(Sheet sheet, Checklist list) {
        List<List<String>> rows = new ArrayList<>();
        for (Item i : list.items(Section.LOOK)) {
            rows.add(List.of(i.text(), i.sound(), "", "", i.touchUp(), ""));
        }
        sheet.heading("2. Look")
                .table(new Table(
                        List.of(
                                left("What", 43),
                                left("Sound", 31),
                                tick("Yes"),
                                tick("No"),
                                left("If not", 55),
                                left("Found", 27)),
                        rows,
                        1));
    }

    private static void test(Sheet sheet, Checklist list) {
        List<List<String>> rows = new ArrayList<>();
        for (Item i : list.items(Section.TEST)) {
            rows.add(List.of("", i.text(), i.sound(), i.touchUp(), ""));
        }
        Limit limit = Limit.of("ir-ieee43-2013");
        sheet.heading("3. Test, in this order")
                .table(new Table(
                        List.of(tick(""), left("Test", 48), left("Sound", 32), left("If not", 46), left("Read", 40)),
                        rows,
                        1));
        sheet.paragraph("Insulation resistance of a DC armature: " + limit.words() + " " + limit.note() + " ("
                + limit.source().cite() + "). Other machines and editions have other limits.");
        sheet.fields(List.of("Test voltage", "Megohms", "Temperature", "Run-out"));
    }

    private static void insulation(Sheet sheet, Checklist list) {
        List<List<String>> rows = new ArrayList<>();
        for (Item i : list.items(Section.INSULATION)) {
            rows.add(List.of(i.text(), "", i.sound(), "", i.touchUp(), "", i.renew()));
        }
        sheet.heading("4. Insulation, part by part: tick one of three")
                .table(new Table(
                        List.of(
                                left("Part", 34),
                                tick(""),
                                left("Sound", 32),
                                tick(""),
                                left("Touch up", 46),
                                tick(""),
                                left("Renew", 40)),
                        rows,
                        1));
    }

    private static Table.Column left(String head, double share) {
        return new Table.Column(head, share, Table.Align.LEFT);
    }

    private static Table.Column tick(String head) {
        return new Table.Column(head, 9, Table.Align.TICK);
    }
}
