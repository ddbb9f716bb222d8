package coilwright.cli;

import coilwright.fault.ConnectionCheck;
import coilwright.job.Job;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** How a connection list differs from the plan, for a person and for a spreadsheet. */
final class CheckText {
    private CheckText() {}

    static String of(Job job, Winding plan, List<ListedCoil> found, ConnectionCheck.Result result) {
        StringBuilder out = new StringBuilder();
        out.append(job.title()).append('\n');
        out.append("  ")
                .append(found.size())
                .append(" lines compared with ")
                .append(plan.coils().size())
                .append(" planned coils\n");
        result.alignment().ifPresent(a -> alignment(out, a));
        if (result.same()) {
            out.append("\nThe connections are as planned.\n");
            return out.toString();
        }
        result.whole().ifPresent(w -> {
            out.append("\nThe whole winding: ").append(w.kind().word()).append('\n');
            TextTable.paragraph(out, w.words());
        });
        if (!result.differences().isEmpty()) {
            out.append(result.whole().isPresent() ? "\nBesides, coil by coil\n" : "\nWhat differs, coil by coil\n");
            var table = new TextTable("", "", "");
            result.differences()
                    .forEach(d -> table.row("coil " + d.coil(), d.kind().word(), d.words()));
            table.appendRowsTo(out);
        }
        return out.toString();
    }

    private static void alignment(StringBuilder out, ConnectionCheck.Alignment a) {
        out.append("  best taken as counted ")
                .append(a.mirrored() ? "counter-clockwise (or from the back end)" : "clockwise from the commutator end")
                .append(", its slot ")
                .append(a.slotOfOne())
                .append(" being the plan's slot 1, its bar ")
                .append(a.barOfOne())
                .append(" the plan's bar 1;\n  ")
                .append(a.agreeing())
                .append(" lines agree so; all numbers below are the list's own\n");
        if (a.mayBeOtherDirection()) {
            out.append("  if it was counted ")
                    .append(a.mirrored() ? "clockwise" : "counter-clockwise")
                    .append(" after all, the winding is connected in the other direction: make sure which it was\n");
        }
    }

    static String csv(ConnectionCheck.Result result) {
        StringBuilder out = new StringBuilder(
                "coil,kind,topSlot,bottomSlot,topBar,bottomBar,foundTopSlot,foundBottomSlot,foundTopBar,foundBottomBar\n");
        result.whole().ifPresent(w -> out.append(",").append(w.kind().word()).append(",,,,,,,,\n"));
        for (ConnectionCheck.Difference d : result.differences()) {
            out.append(d.coil()).append(',').append(d.kind().word());
            out.append(cells(d.expected())).append(cells(d.found())).append('\n');
        }
        return out.toString();
    }

    private static String cells(Optional<ListedCoil> coil) {
        return coil.map(c ->
                        "," + c.topSlot() + "," + c.bottomSlot() + "," + cell(c.topBar()) + "," + cell(c.bottomBar()))
                .orElse(",,,,");
    }

    private static String cell(OptionalInt bar) {
        return bar.isPresent() ? Integer.toString(bar.getAsInt()) : "";
    }
}
