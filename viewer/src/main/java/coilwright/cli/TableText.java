package coilwright.cli;

import coilwright.circuit.Circuits;
import coilwright.job.Job;
import coilwright.job.Visible;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.CoilSet;
import coilwright.winding.Finding;
import coilwright.winding.Pitches;
import coilwright.winding.Severity;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import coilwright.winding.WorkedPitches;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/** The coil table for a person. */
final class TableText {
    private TableText() {}

    static String of(Job job, Winding winding, List<Finding> findings, boolean explain, List<Path> drawings) {
        StringBuilder out = new StringBuilder();
        out.append(job.title()).append('\n');
        var facts = new TextTable("", "");
        core(facts, job, winding);
        for (CoilSet set : winding.sets()) {
            set(facts, winding, set);
        }
        circuits(facts, winding);
        facts.appendRowsTo(out);
        if (explain) {
            explain(out, winding);
        }
        coils(out, winding);
        findings(out, findings);
        if (!drawings.isEmpty()) {
            out.append("\nDrawings\n");
            for (Path drawing : drawings) {
                out.append("  ").append(Visible.of(drawing.toString())).append('\n');
            }
        }
        return out.toString();
    }

    private static void core(TextTable facts, Job job, Winding winding) {
        Armature a = winding.armature();
        facts.row("armature", a.slots() + " slots, " + a.bars() + " bars, " + a.poles() + " poles");
        facts.row(
                "slot 1",
                "in line with "
                        + (a.slotOneInLineWith() == SlotAlignment.BAR
                                ? "bar 1"
                                : "the mica between bar " + a.bars() + " and bar 1"));
        int u = winding.sidesPerSlot();
        String sides = winding.layers() + " layers, " + count(u, "coil side") + " in each";
        int dead = winding.deadCoils().size();
        String coils = winding.coils().size() + " coils" + (dead == 0 ? "" : ", " + dead + " of them dead");
        facts.row("slots hold", sides + "; " + coils);
        eachCoil(facts, job);
    }

    private static void eachCoil(TextTable facts, Job job) {
        List<String> known = new ArrayList<>();
        if (job.turns().isPresent()) {
            int n = job.turns().getAsInt();
            known.add(n + (n == 1 ? " turn" : " turns"));
        }
        if (job.coilResistance().isPresent()) {
            known.add(job.coilResistance().get().toString());
        }
        if (!known.isEmpty()) {
            facts.row("each coil", String.join(", ", known));
        }
    }

    private static void set(TextTable facts, Winding winding, CoilSet set) {
        if (set.type() == WindingType.LISTED) {
            facts.row("winding", "as listed");
        } else if (winding.sets().size() == 1) {
            facts.row("winding", kind(set));
        } else {
            int last = set.firstCoil() + set.coilCount() - 1;
            facts.row(
                    set.type().word() + " part",
                    kind(set) + "; coils " + set.firstCoil() + " to " + last + " of a "
                            + winding.type().word() + " winding");
        }
        if (set.pitches().isEmpty()) {
            return;
        }
        Pitches y = set.pitches().get();
        OptionalInt slots = y.throwSlots();
        facts.row(
                "coil throw",
                slots.isPresent()
                        ? "1-" + (1 + slots.getAsInt()) + " (spans " + count(slots.getAsInt(), "slot") + ")"
                        : "stepped: spans " + count(y.backSpan(), "position") + ", "
                                + BigDecimal.valueOf(y.meanThrow()).setScale(2, RoundingMode.HALF_UP)
                                + " slots on the mean");
        facts.row(
                "commutator pitch",
                (y.commutator() > 0 ? "+" : "") + y.commutator() + (Math.abs(y.commutator()) == 1 ? " bar" : " bars"));
        facts.row(
                "pitches",
                "back " + y.back() + ", front " + y.front() + ", resultant " + y.resultant() + " conductors");
    }

    private static String kind(CoilSet set) {
        return WindingSpec.plexWord(set.plex().orElseThrow()) + " " + set.type().word() + ", "
                + set.direction().orElseThrow().word();
    }

    private static String count(int n, String noun) {
        return n + " " + noun + (n == 1 ? "" : "s");
    }

    private static void circuits(TextTable facts, Winding winding) {
        facts.row("closed circuits", Circuits.closures(winding));
        OptionalInt paths = Circuits.parallelPaths(winding);
        facts.row("parallel paths", paths.isPresent() ? paths.getAsInt() : "none: no coil has both leads on bars");
        OptionalInt equalizer = winding.equalizerPitch();
        facts.row("equalizer pitch", equalizer.isPresent() ? equalizer.getAsInt() + " bars" : "none");
    }

    private static void explain(StringBuilder out, Winding winding) {
        var steps = new TextTable("", "");
        WorkedPitches.of(winding).forEach(s -> steps.row(s.what(), s.working()));
        out.append("\nThe arithmetic\n");
        if (steps.isEmpty()) {
            out.append("  none: every coil lies and lands where the list says\n");
        }
        steps.appendRowsTo(out);
    }

    private static void coils(StringBuilder out, Winding winding) {
        out.append("\nCoils, numbered clockwise from the commutator end\n");
        var table = new TextTable(">coil", ">top slot", ">bottom slot", ">top lead on bar", ">bottom lead on bar");
        for (Coil c : winding.coils()) {
            table.row(c.number(), c.top().slot(), c.bottom().slot(), bar(c, c.topBar()), bar(c, c.bottomBar()));
        }
        table.appendTo(out);
    }

    private static String bar(Coil coil, OptionalInt bar) {
        if (bar.isPresent()) {
            return Integer.toString(bar.getAsInt());
        }
        return coil.isDead() ? "dead" : "none";
    }

    static void findings(StringBuilder out, List<Finding> findings) {
        if (findings.isEmpty()) {
            return;
        }
        out.append("\nWhat the rules say\n");
        var table = new TextTable("", "");
        for (Severity severity : Severity.values()) {
            for (Finding f : findings) {
                if (f.severity() == severity) {
                    table.row(severity.word(), f.message());
                }
            }
        }
        table.appendRowsTo(out);
    }
}
