package coilwright.cli;

import coilwright.fault.Identification;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** The windings that fit what was seen, for a person and for a spreadsheet. */
final class IdentifyText {
    private static final int MOST_REASONS = 12;

    private IdentifyText() {}

    static String of(Identification.Known known, Identification.Answer answer) {
        StringBuilder out = new StringBuilder();
        out.append(known.slots()).append(" slots, ").append(known.bars()).append(" bars");
        known.poles().ifPresent(p -> out.append(", ").append(p).append(" poles"));
        known.throwSlots()
                .ifPresent(t -> out.append(", coils spanning ").append(t).append(" slots"));
        out.append('\n');
        known.sightings().forEach(s -> out.append("  ").append(s.words()).append('\n'));
        if (answer.fits().isEmpty()) {
            out.append("\nNo winding fits all of it: look again at what was counted and traced.\n");
        } else {
            fits(out, answer.fits());
        }
        answer.next().ifPresent(n -> next(out, n));
        if (answer.next().isEmpty() && answer.fits().size() > 1) {
            out.append("\nNothing on the bench tells these apart.\n");
        }
        excluded(out, answer.excluded(), answer.fits().isEmpty());
        return out.toString();
    }

    private static void fits(StringBuilder out, List<Identification.Fit> fits) {
        out.append("\nWindings that fit\n");
        int number = 0;
        for (Identification.Fit f : fits) {
            Winding w = f.winding();
            out.append("  ").append(++number).append(". ").append(f.words());
            out.append("; throw 1-").append(toSlot(w));
            out.append(", ").append(w.closures().orElseThrow()).append(" closed circuit");
            out.append(w.closures().orElseThrow() == 1 ? "" : "s");
            out.append(", ").append(w.parallelPaths().orElseThrow()).append(" paths\n");
            var table = new TextTable("", "");
            f.why().forEach(r -> table.row("  ", r));
            table.appendRowsTo(out);
        }
    }

    private static String toSlot(Winding w) {
        OptionalInt span = w.pitches().orElseThrow().throwSlots();
        return span.isPresent() ? Integer.toString(1 + span.getAsInt()) : "?";
    }

    private static void next(StringBuilder out, Identification.Next next) {
        out.append("\nWhat would decide best\n");
        TextTable.paragraph(out, next.words());
        var table = new TextTable("", "");
        for (Identification.Outcome o : next.outcomes()) {
            List<String> numbers = new ArrayList<>();
            o.fits().forEach(i -> numbers.add((i + 1) + "."));
            table.row("  " + o.words() + ":", "leaves " + String.join(" ", numbers));
        }
        table.appendRowsTo(out);
    }

    private static void excluded(StringBuilder out, List<Identification.Excluded> excluded, boolean all) {
        if (excluded.isEmpty()) {
            return;
        }
        out.append("\nWhat does not fit, and why\n");
        Map<String, List<String>> byReason = new LinkedHashMap<>();
        for (Identification.Excluded e : excluded) {
            byReason.computeIfAbsent(e.reason(), x -> new ArrayList<>())
                    .add(e.type().word() + " of plex " + e.plex() + " "
                            + e.direction().word() + " on " + e.poles() + " poles");
        }
        int shown = 0;
        for (Map.Entry<String, List<String>> e : byReason.entrySet()) {
            if (++shown > MOST_REASONS && !all) {
                out.append("  and ")
                        .append(byReason.size() - MOST_REASONS)
                        .append(" more reasons; --format json gives them all\n");
                return;
            }
            String which = e.getValue().size() <= 3
                    ? String.join(", ", e.getValue())
                    : e.getValue().get(0) + " and " + (e.getValue().size() - 1) + " more";
            TextTable.hanging(out, "  ", which + ": " + e.getKey());
        }
    }

    static String csv(Identification.Answer answer) {
        StringBuilder out =
                new StringBuilder("type,plex,direction,poles,commutator,throw,deadCoils,closures,parallelPaths\n");
        for (Identification.Fit f : answer.fits()) {
            Winding w = f.winding();
            List<String> cells = new ArrayList<>();
            cells.add(w.type().word());
            cells.add(Integer.toString(f.plex()));
            cells.add(f.direction().word());
            cells.add(Integer.toString(w.armature().poles()));
            cells.add(Integer.toString(w.pitches().orElseThrow().commutator()));
            OptionalInt span = w.pitches().orElseThrow().throwSlots();
            cells.add(span.isPresent() ? Integer.toString(span.getAsInt()) : "");
            cells.add(Integer.toString(w.deadCoils().size()));
            cells.add(Integer.toString(w.closures().orElseThrow()));
            cells.add(Integer.toString(w.parallelPaths().orElseThrow()));
            Csv.line(out, cells);
        }
        return out.toString();
    }
}
