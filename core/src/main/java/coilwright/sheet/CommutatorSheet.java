package coilwright.sheet;

import coilwright.commutator.CommutatorLimit;
import coilwright.commutator.CommutatorReport;
import coilwright.commutator.RunOut;
import coilwright.commutator.TruingCut;
import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.drawing.TraceChart;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A sheet to print for the run-out of a commutator: how to read it, every bar with room to write, and, where it has
 * been read, the trace, the cut and the limits.
 */
public final class CommutatorSheet {
    private final int bars;
    private final Sheet sheet;

    private CommutatorSheet(String title, int bars, Palette palette) {
        this.bars = bars;
        this.sheet = Sheet.titled(title, "Commutator: run-out, truing cut and undercut", palette);
    }

    /**
     * {@return the sheet before anything is read, to be filled in}
     *
     * @param title of the machine
     * @param bars on the commutator
     * @param given sizes known and limits chosen
     * @param palette colours, or black, white and grey
     */
    public static DrawingPages empty(String title, int bars, CommutatorReport.Given given, Palette palette) {
        return new CommutatorSheet(title, bars, palette).unread(given);
    }

    /**
     * {@return the sheet with what was read, and the trace behind it, long side across}
     *
     * @param title of the machine
     * @param report what was worked out
     * @param palette colours, or black, white and grey
     */
    public static DrawingPages of(String title, CommutatorReport report, Palette palette) {
        List<Drawing> pages =
                new ArrayList<>(new CommutatorSheet(title, report.runOut().bars(), palette)
                        .read(report)
                        .pages());
        pages.addAll(trace(title, report, palette).pages());
        return new DrawingPages(pages);
    }

    /**
     * {@return the trace of the readings, with the planned cut where the diameter is known}
     *
     * @param title of the machine
     * @param report what was worked out
     * @param palette colours, or black, white and grey
     */
    public static DrawingPages trace(String title, CommutatorReport report, Palette palette) {
        return TraceChart.pages(
                new TraceChart.Data(title + ": commutator run-out", report.runOut(), report.planned()), palette);
    }

    private DrawingPages unread(CommutatorReport.Given given) {
        head(given);
        sheet.heading("Found");
        sheet.fields(List.of("Total indicator reading", "High bar", "Low bar"));
        sheet.fields(List.of("Off centre by", "towards bar", "Largest step", "at bars"));
        sheet.heading("Cut");
        sheet.fields(List.of("Depth on the radius", "Diameter after", "Least diameter"));
        undercut(CommutatorReport.undercutLines(given));
        List<List<String>> rows = new ArrayList<>();
        for (int bar = 1; bar <= bars; bar++) {
            rows.add(List.of(Integer.toString(bar), "", "", ""));
        }
        table("Read", "Again", rows);
        limits(limitRows(given));
        return end();
    }

    private DrawingPages read(CommutatorReport report) {
        head(report.given());
        List<String> verdict = report.verdictLines();
        sheet.heading("Verdict").paragraph(verdict.get(0));
        sheet.items(verdict.subList(1, verdict.size()));
        sheet.heading("Found").facts(report.facts());
        sheet.items(report.notes());
        sheet.heading("Cut that cleans up").facts(report.cutLines());
        undercut(report.undercutLines());
        Map<Integer, RunOut.Bar> read = new LinkedHashMap<>();
        report.runOut().list().forEach(b -> read.put(b.bar(), b));
        List<List<String>> rows = new ArrayList<>();
        for (int bar = 1; bar <= bars; bar++) {
            Optional<RunOut.Bar> b = Optional.ofNullable(read.get(bar));
            rows.add(List.of(
                    Integer.toString(bar),
                    b.map(r -> signed(r.heightMm())).orElse(""),
                    b.map(r -> signed(r.residualMm())).orElse(""),
                    ""));
        }
        table("Read, mm", "Own shape, mm", rows);
        limits(report.judged().stream()
                .map(j -> row(j.limit(), j.chosen(), j.value(), j.word()))
                .toList());
        return end();
    }

    private void head(CommutatorReport.Given given) {
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Bars", Integer.toString(bars));
        facts.putAll(given.facts());
        sheet.facts(facts);
        sheet.fields(List.of("Date", "Done by", "Gauge", "Read on"));
        List<String> sizes = Stream.of(
                        given.diameterMm().isEmpty() ? "Diameter" : "",
                        given.minimumMm().isEmpty() ? "Least diameter" : "",
                        given.micaMm().isEmpty() ? "Mica" : "",
                        given.undercutMm().isEmpty() ? "Undercut" : "")
                .filter(s -> !s.isEmpty())
                .toList();
        if (!sizes.isEmpty()) {
            sheet.fields(sizes);
        }
        sheet.caution(TruingCut.cautions());
        sheet.heading("How to read it").steps(CommutatorReport.steps());
    }

    private void undercut(List<String> lines) {
        sheet.heading("Undercut").items(lines);
    }

    private static List<List<String>> limitRows(CommutatorReport.Given given) {
        return CommutatorLimit.all().stream()
                .filter(l -> l.quantity() != CommutatorLimit.Quantity.UNDERCUT_DEPTH
                        && l.quantity() != CommutatorLimit.Quantity.UNDERCUT_WIDTH)
                .map(l -> row(l, given.chosen().contains(l), "", ""))
                .toList();
    }

    private static List<String> row(CommutatorLimit l, boolean chosen, String value, String word) {
        return List.of(
                (chosen ? "● " : "") + l.machine(),
                l.quantity().words(),
                l.printed() + (l.note().isEmpty() ? "" : "; " + l.note()),
                l.cite(),
                value,
                word);
    }

    private void limits(List<List<String>> rows) {
        sheet.heading("Limits, each with its source; ● chosen for this machine");
        sheet.table(new Table(
                List.of(
                        new Table.Column("For", 30, Table.Align.LEFT),
                        new Table.Column("On", 26, Table.Align.LEFT),
                        new Table.Column("Printed", 34, Table.Align.LEFT),
                        new Table.Column("Source", 52, Table.Align.LEFT),
                        new Table.Column("Measured", 18, Table.Align.RIGHT),
                        new Table.Column("", 18, Table.Align.LEFT)),
                rows,
                1));
    }

    private void table(String second, String third, List<List<String>> rows) {
        sheet.heading("Bars, clockwise from the commutator end");
        sheet.table(new Table(
                List.of(
                        new Table.Column("Bar", 12, Table.Align.MIDDLE),
                        new Table.Column(second, 18, Table.Align.RIGHT),
                        new Table.Column(third, 18, Table.Align.RIGHT),
                        new Table.Column("After cut", 18, Table.Align.RIGHT)),
                rows,
                Math.max(1, Math.min(3, (rows.size() + 7) / 8))));
    }

    private static String signed(double mm) {
        String s = String.format(Locale.ROOT, "%.3f", Math.abs(mm));
        return s.equals("0.000") ? s : (mm < 0 ? "−" : "+") + s;
    }

    private DrawingPages end() {
        sheet.keepTogether(54).heading("After the work");
        sheet.ticks(List.of(
                "Bars clean all round; no copper bridges from bar to bar; edges bevelled lightly.",
                "Read again: run-out within the limit chosen.",
                "Tested bar to bar and to the shaft."));
        sheet.fields(List.of("Run-out after", "Diameter after", "Undercut after"));
        sheet.fields(List.of("Date", "Signed"));
        sheet.fields(List.of("Remarks"));
        return sheet.fewestPages();
    }
}
