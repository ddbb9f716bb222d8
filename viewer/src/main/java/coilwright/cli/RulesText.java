package coilwright.cli;

import coilwright.winding.Finding;
import coilwright.winding.Severity;
import coilwright.winding.Winding;
import coilwright.winding.WindingSearch;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The windings that fit a core, for a person and for a spreadsheet. */
final class RulesText {
    private RulesText() {}

    static String of(WindingSearch.Query query, WindingSearch.Result result, boolean explain) {
        StringBuilder out = new StringBuilder();
        out.append(query.slots()).append(" slots, ").append(query.poles()).append(" poles");
        query.bars().ifPresent(k -> out.append(", ").append(k).append(" bars"));
        out.append('\n');
        if (result.possible().isEmpty()) {
            out.append("\nNo winding fits.\n");
        } else {
            out.append("\nWindings that fit, best first\n");
            possible(out, result.possible());
            if (explain) {
                explain(out, result.possible());
            } else {
                out.append("\n--explain shows what the rules say of each.\n");
            }
        }
        refused(out, result.refused());
        return out.toString();
    }

    private static void possible(StringBuilder out, List<WindingSearch.Candidate> candidates) {
        var table = new TextTable(
                ">no.",
                "winding",
                ">plex",
                "direction",
                ">bars",
                ">dead coils",
                "throw",
                ">bar pitch",
                ">circuits",
                ">paths",
                ">warnings");
        int number = 0;
        for (WindingSearch.Candidate c : candidates) {
            Winding w = c.winding();
            table.row(
                    ++number,
                    w.type().word(),
                    c.plex(),
                    c.direction().word(),
                    w.armature().bars(),
                    w.deadCoils().size(),
                    "1-" + (1 + c.throwSlots()),
                    w.pitches().orElseThrow().commutator(),
                    w.closures().orElseThrow(),
                    w.parallelPaths().orElseThrow(),
                    c.findings().stream()
                            .filter(f -> f.severity() == Severity.WARNING)
                            .count());
        }
        table.appendTo(out);
    }

    private static void explain(StringBuilder out, List<WindingSearch.Candidate> candidates) {
        int number = 0;
        for (WindingSearch.Candidate c : candidates) {
            out.append('\n').append(++number).append(". ");
            out.append(c.winding().type().word())
                    .append(", plex ")
                    .append(c.plex())
                    .append(", ");
            out.append(c.direction().word()).append(", ");
            out.append(c.winding().armature().bars()).append(" bars\n");
            var table = new TextTable("", "");
            if (!c.otherThrows().isEmpty()) {
                List<String> throwsWritten = new ArrayList<>();
                c.otherThrows().forEach(t -> throwsWritten.add("1-" + (1 + t)));
                table.row("throw", "also possible: " + String.join(", ", throwsWritten));
            }
            for (Finding f : c.findings()) {
                table.row(f.severity().word(), f.message());
            }
            table.appendRowsTo(out);
        }
    }

    private static void refused(StringBuilder out, List<WindingSearch.Refusal> refusals) {
        if (refusals.isEmpty()) {
            return;
        }
        // Both directions of a winding are mostly refused for one reason: say it once.
        Map<String, List<String>> byReason = new LinkedHashMap<>();
        for (WindingSearch.Refusal r : refusals) {
            String what = r.bars() + " bars, " + r.type().word() + " of plex " + r.plex();
            byReason.computeIfAbsent(what + ": " + r.reason(), key -> new ArrayList<>())
                    .add(r.direction().word());
        }
        out.append("\nWhat does not fit, and why\n");
        byReason.forEach((what, directions) -> {
            String which = directions.size() == 1 ? directions.get(0) : "either way";
            List<String> lines = TextTable.fold(what.replaceFirst(": ", ", " + which + ": "), 94);
            for (int i = 0; i < lines.size(); i++) {
                out.append(i == 0 ? "  " : "    ").append(lines.get(i)).append('\n');
            }
        });
    }

    static String csv(WindingSearch.Result result) {
        StringBuilder out = new StringBuilder(
                "type,plex,direction,commutator,throw,bars,deadCoils,closures,parallelPaths,warnings\n");
        for (WindingSearch.Candidate c : result.possible()) {
            Winding w = c.winding();
            List<String> cells = new ArrayList<>();
            cells.add(w.type().word());
            cells.add(String.valueOf(c.plex()));
            cells.add(c.direction().word());
            cells.add(String.valueOf(w.pitches().orElseThrow().commutator()));
            cells.add(String.valueOf(c.throwSlots()));
            cells.add(String.valueOf(w.armature().bars()));
            cells.add(String.valueOf(w.deadCoils().size()));
            cells.add(String.valueOf(w.closures().orElseThrow()));
            cells.add(String.valueOf(w.parallelPaths().orElseThrow()));
            cells.add(String.valueOf(c.findings().stream()
                    .filter(f -> f.severity() == Severity.WARNING)
                    .count()));
            Csv.line(out, cells);
        }
        return out.toString();
    }
}
