package coilwright.cli;

import coilwright.commutator.CommutatorLimit;
import coilwright.commutator.CommutatorReport;
import coilwright.commutator.RunOut;
import coilwright.commutator.TruingCut;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** A judged commutator, for a person and for a spreadsheet. */
final class CommutatorText {
    private CommutatorText() {}

    static String of(String title, CommutatorReport report) {
        StringBuilder out = new StringBuilder();
        out.append(title).append('\n');
        if (!report.given().facts().isEmpty()) {
            TextTable.facts(out, report.given().facts());
        }
        out.append("\nVerdict\n");
        List<String> verdict = report.verdictLines();
        TextTable.paragraph(out, verdict.get(0));
        TextTable.items(out, verdict.subList(1, verdict.size()));
        out.append("\nRun-out\n");
        TextTable.facts(out, report.facts());
        out.append("\nCut that cleans up\n");
        TextTable.facts(out, report.cutLines());
        out.append("\nUndercut\n");
        TextTable.items(out, report.undercutLines());
        limits(out, report);
        out.append("\nMind\n");
        List<String> mind = new ArrayList<>(report.notes());
        mind.addAll(TruingCut.cautions());
        TextTable.items(out, mind);
        return out.toString();
    }

    private static void limits(StringBuilder out, CommutatorReport report) {
        for (CommutatorLimit.Quantity q : CommutatorLimit.Quantity.values()) {
            List<CommutatorReport.Judged> here = report.judged().stream()
                    .filter(j -> j.limit().quantity() == q)
                    .toList();
            if (here.isEmpty()) {
                continue;
            }
            String value = here.get(0).value();
            out.append('\n').append(heading(q));
            out.append(
                    value.isEmpty() ? ": not known (* chosen)\n" : ": " + value + " against every limit (* chosen)\n");
            var table = new TextTable("", "", "", "");
            for (CommutatorReport.Judged j : here) {
                table.row(j.chosen() ? "*" : "", j.limit().id(), value.isEmpty() ? "-" : j.word(), words(j.limit()));
            }
            table.appendRowsTo(out);
        }
    }

    private static String heading(CommutatorLimit.Quantity q) {
        return q.words().substring(0, 1).toUpperCase(Locale.ROOT) + q.words().substring(1);
    }

    private static String words(CommutatorLimit l) {
        return l.printed() + "; " + l.machine() + "; " + l.cite() + (l.note().isEmpty() ? "" : "; " + l.note());
    }

    private static String number(OptionalDouble mm) {
        return mm.isEmpty() ? "" : plain(mm.getAsDouble());
    }

    /** Millimetres to the tenth of a micrometre, no trailing zeros. */
    static String plain(double mm) {
        String s = String.format(Locale.ROOT, "%.4f", mm).replaceAll("\\.?0+$", "");
        return s.equals("-0") ? "0" : s;
    }

    static String limits() {
        StringBuilder out = new StringBuilder("Limits on commutators, for --limit\n");
        for (CommutatorLimit.Quantity q : CommutatorLimit.Quantity.values()) {
            out.append('\n').append(heading(q)).append('\n');
            var table = new TextTable("", "");
            CommutatorLimit.on(q).forEach(l -> table.row(l.id(), words(l)));
            table.appendRowsTo(out);
        }
        return out.toString();
    }

    static String limitsCsv() {
        StringBuilder out = new StringBuilder("id,machine,quantity,lowMm,highMm,printed,source,edition,trust,note\n");
        for (CommutatorLimit l : CommutatorLimit.all()) {
            Csv.line(
                    out,
                    List.of(
                            l.id(),
                            l.machine(),
                            l.quantity().word(),
                            number(l.lowMm()),
                            number(l.highMm()),
                            l.printed(),
                            l.source(),
                            l.edition(),
                            l.trust().word(),
                            l.note()));
        }
        return out.toString();
    }

    static String csv(CommutatorReport report) {
        StringBuilder out = new StringBuilder("bar,heightMm,residualMm,standsOut\n");
        for (RunOut.Bar b : report.runOut().list()) {
            out.append(b.bar())
                    .append(',')
                    .append(plain(b.heightMm()))
                    .append(',')
                    .append(plain(b.residualMm()))
                    .append(',')
                    .append(report.runOut().standouts().contains(b))
                    .append('\n');
        }
        return out.toString();
    }
}
