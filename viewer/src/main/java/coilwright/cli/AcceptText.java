package coilwright.cli;

import coilwright.rewind.Acceptance;
import coilwright.rewind.HighPotential.Voltage;
import coilwright.rewind.Limit;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** The acceptance of a winding, for a person and for a spreadsheet. */
final class AcceptText {
    private AcceptText() {}

    static String of(String title, Acceptance acceptance) {
        StringBuilder out = new StringBuilder(title).append('\n');
        TextTable.facts(out, acceptance.facts());
        out.append("\nVerdict (* decides; --limit and --scheme choose others)\n");
        TextTable.paragraph(out, acceptance.verdictText());
        for (Acceptance.Check check : acceptance.checks()) {
            out.append('\n').append(check.title()).append(": ");
            out.append(check.status().word().replace('-', ' ').toUpperCase(Locale.ROOT))
                    .append('\n');
            var lines = new TextTable("", "");
            check.found().forEach(f -> lines.row("found", f));
            check.wanted().forEach(w -> lines.row("asked", w));
            lines.appendRowsTo(out);
            if (!check.lines().isEmpty()) {
                limits(out, check.lines());
            }
        }
        if (!acceptance.conflicts().isEmpty()) {
            out.append("\nWhere sources differ\n");
            TextTable.items(out, acceptance.conflicts());
        }
        out.append("\nMind\n");
        TextTable.items(out, Acceptance.cautions().stream().map(c -> c.text()).toList());
        return out.toString();
    }

    private static void limits(StringBuilder out, List<Acceptance.Line> lines) {
        var table = new TextTable("", "", ">", "", "");
        for (Acceptance.Line l : lines) {
            Limit limit = l.limit();
            table.row(
                    l.chosen() ? "*" : "",
                    limit.id(),
                    l.found(),
                    l.word(),
                    limit.words() + ", " + limit.applies() + "; "
                            + limit.source().cite()
                            + (limit.note().isEmpty() ? "" : "; " + limit.note()));
        }
        table.appendRowsTo(out);
    }

    static String csv(Acceptance acceptance) {
        StringBuilder out = new StringBuilder("check,status,item,applies,low,high,unit,value,pass,decides,source\n");
        for (Acceptance.Check check : acceptance.checks()) {
            if (check.lines().isEmpty() && !check.id().equals("high-potential")) {
                Csv.line(out, List.of(check.id(), check.status().word(), "", "", "", "", "", "", "", "", ""));
            }
            for (Acceptance.Line l : check.lines()) {
                Csv.line(
                        out,
                        List.of(
                                check.id(),
                                check.status().word(),
                                l.limit().id(),
                                l.limit().applies(),
                                number(l.limit().low()),
                                number(l.limit().high()),
                                l.limit().unit(),
                                number(l.value()),
                                l.pass().map(String::valueOf).orElse(""),
                                String.valueOf(l.chosen()),
                                l.limit().source().cite()));
            }
            if (check.id().equals("high-potential")) {
                voltages(out, acceptance, check);
            }
        }
        return out.toString();
    }

    private static void voltages(StringBuilder out, Acceptance acceptance, Acceptance.Check check) {
        for (Voltage v : acceptance.voltages()) {
            Csv.line(
                    out,
                    List.of(
                            check.id(),
                            check.status().word(),
                            v.scheme(),
                            check.title(),
                            number(v.acLow()),
                            number(OptionalDouble.of(v.acHigh())),
                            "V AC r.m.s.",
                            acceptance
                                    .given()
                                    .highPotential()
                                    .map(a -> number(OptionalDouble.of(a.volts())))
                                    .orElse(""),
                            acceptance
                                    .given()
                                    .highPotential()
                                    .flatMap(a -> a.against(v))
                                    .map(o -> o.word())
                                    .orElse(""),
                            String.valueOf(acceptance.given().decides(v)),
                            v.factorSource().cite()));
        }
        if (acceptance.voltages().isEmpty()) {
            Csv.line(out, List.of(check.id(), check.status().word(), "", "", "", "", "", "", "", "", ""));
        }
    }

    private static String number(OptionalDouble value) {
        return value.isEmpty() ? "" : CommutatorText.plain(value.getAsDouble());
    }
}
