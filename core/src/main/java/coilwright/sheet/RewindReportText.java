package coilwright.sheet;

import coilwright.rewind.Conductor;
import coilwright.rewind.Format;
import coilwright.rewind.OtherWinding;
import coilwright.rewind.Redesign;
import coilwright.rewind.SlotFill;
import coilwright.sheet.RewindReportSection.Part;
import coilwright.winding.Pitches;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A rewind report in words. */
public final class RewindReportText {
    private final RewindReport report;
    private final RewindReportFacts told;
    private final List<RewindReportSection> out = new ArrayList<>();

    private RewindReportText(RewindReport report) {
        this.report = report;
        this.told = new RewindReportFacts(report.settings());
    }

    /**
     * {@return the report's parts in order, those that there is nothing to say on left out}
     *
     * @param report what was worked out
     */
    public static List<RewindReportSection> of(RewindReport report) {
        return new RewindReportText(report).sections();
    }

    private List<RewindReportSection> sections() {
        RewindReportState found = report.found();
        if (found.conductor().isPresent()) {
            add(Part.WIRE, false, "Wire", RewindReportFacts.wire(found));
        }
        if (!report.substitutes().isEmpty()) {
            out.add(RewindReportSection.table(
                    Part.SUBSTITUTES,
                    false,
                    "What could be wound in its place",
                    substitutes(report.substitutes(), RewindReportFacts.isCovered(found))));
        }
        state(found, false, report.compared());
        report.change().ifPresent(this::change);
        String others = "Other windings on this core, with the same coils";
        if (!report.others().isEmpty()) {
            out.add(new RewindReportSection(
                    Part.OTHERS,
                    false,
                    others,
                    Map.of(),
                    Optional.of(others(report.others())),
                    List.of("Frog-leg windings are left out: they take twice as many coils.")));
        } else if (report.winding().type() == WindingType.FROG_LEG) {
            out.add(
                    RewindReportSection.items(
                            Part.OTHERS,
                            false,
                            others,
                            List.of(
                                    "None: lap and wave windings take half as many coils. Write a job file of its own for one.")));
        }
        if (!report.missing().isEmpty()) {
            out.add(RewindReportSection.items(
                    Part.MISSING, false, "Not known, and the key of the job file that tells it", report.missing()));
        }
        return List.copyOf(out);
    }

    private void add(Part part, boolean planned, String title, Map<String, String> facts) {
        if (!facts.isEmpty()) {
            out.add(RewindReportSection.facts(part, planned, planned ? title + " as planned" : title, facts));
        }
    }

    private static Table substitutes(List<RewindReport.Substitute> substitutes, boolean covered) {
        boolean slot = substitutes.stream().anyMatch(s -> s.fill().isPresent());
        List<Table.Column> columns = new ArrayList<>(List.of(
                new Table.Column("wire", 42, Table.Align.LEFT),
                new Table.Column("copper area", 17, Table.Align.RIGHT),
                new Table.Column("room", 17, Table.Align.RIGHT),
                new Table.Column("resistance", 17, Table.Align.RIGHT),
                new Table.Column("by area", 13, Table.Align.RIGHT),
                new Table.Column("by fit", 13, Table.Align.RIGHT)));
        if (slot) {
            columns.add(new Table.Column("slot fill", 15, Table.Align.RIGHT));
            columns.add(new Table.Column("goes in", 22, Table.Align.LEFT));
        }
        List<List<String>> rows = new ArrayList<>();
        for (RewindReport.Substitute s : substitutes) {
            List<String> row = new ArrayList<>(List.of(
                    s.option().conductor().label(),
                    signed(s.option().areaDifference()),
                    covered ? signed(s.option().roomDifference()) : "",
                    signed(s.option().resistanceFactor() - 1),
                    Integer.toString(s.byArea()),
                    Integer.toString(s.byFit())));
            if (slot) {
                row.add(s.fill().map(f -> RewindReportFacts.share(f.fill())).orElse(""));
                row.add(s.fill().map(RewindReportText::goesIn).orElse(""));
            }
            rows.add(row);
        }
        return new Table(columns, rows, 1);
    }

    private static String goesIn(SlotFill fill) {
        if (fill.fits()) {
            return "yes";
        }
        return fill.packing()
                .map(p -> p.mostPerLayer() < p.wiresPerLayer()
                        ? "no, " + 2 * p.mostPerLayer() + " of " + fill.wires()
                        : "no, opening too narrow")
                .orElse("no");
    }

    /** Coil, armature, slot and load of one way of winding. */
    private void state(RewindReportState state, boolean planned, List<RewindReport.Compared> compared) {
        state.coil().ifPresent(c -> add(Part.COIL, planned, "Coil", told.coil(c, compared)));
        state.copper().ifPresent(c -> add(Part.ARMATURE, planned, "Armature", told.armature(c, compared)));
        state.fill().ifPresent(f -> add(Part.SLOT, planned, "Slot", RewindReportFacts.slot(state, f)));
        add(Part.LOAD, planned, "Load", RewindReportFacts.load(state));
    }

    private void change(RewindReport.Change c) {
        if (c.refused().isPresent()) {
            out.add(RewindReportSection.items(
                    Part.PLAN,
                    true,
                    "Plan",
                    List.of("It cannot be wound: " + c.refused().get() + ".")));
            return;
        }
        RewindReportState after = c.after().orElseThrow();
        out.add(RewindReportSection.facts(Part.PLAN, true, "Plan", plan(c, after)));
        if (!c.proposals().isEmpty()) {
            out.add(RewindReportSection.table(
                    Part.PROPOSALS,
                    true,
                    "Wire that comes near the ideal",
                    substitutes(c.proposals(), RewindReportFacts.isCovered(report.found()))));
        }
        if (after.wire().isPresent() && !after.wire().equals(report.found().wire())) {
            add(Part.WIRE, true, "Wire", RewindReportFacts.wire(after));
        }
        state(after, true, List.of());
        List<String> touched = new ArrayList<>();
        c.redesign()
                .ifPresent(r -> r.cautions()
                        .forEach(x -> touched.add(x.text() + "; " + x.source().cite())));
        if (!touched.isEmpty()) {
            out.add(RewindReportSection.items(Part.CAUTIONS, true, "What else the plan touches", touched));
        }
        if (!c.missing().isEmpty()) {
            out.add(RewindReportSection.items(Part.MISSING, true, "Not known for the plan", c.missing()));
        }
    }

    private Map<String, String> plan(RewindReport.Change c, RewindReportState after) {
        Map<String, String> facts = new LinkedHashMap<>();
        RewindReportState found = report.found();
        after.volts()
                .ifPresent(v -> facts.put(
                        "voltage",
                        was(
                                Format.number(v) + " V",
                                found.volts().isPresent()
                                        ? Format.number(found.volts().getAsDouble()) + " V"
                                        : "")));
        after.rpm()
                .ifPresent(n -> facts.put(
                        "speed",
                        was(
                                Format.number(n) + " r/min",
                                found.rpm().isPresent()
                                        ? Format.number(found.rpm().getAsDouble()) + " r/min"
                                        : "")));
        c.winding()
                .ifPresent(w -> facts.put(
                        "winding",
                        kind(w) + ", throw 1-" + (1 + w.candidate().throwSlots()) + ", " + w.paths() + " parallel paths"
                                + found.copper()
                                        .map(x -> x.paths() == w.paths() ? " as before" : " instead of " + x.paths())
                                        .orElse("")));
        after.turns()
                .ifPresent(n -> facts.put(
                        "turns per coil",
                        was(
                                        Integer.toString(n),
                                        found.turns().isPresent()
                                                ? Integer.toString(found.turns().getAsInt())
                                                : "")
                                + c.redesign()
                                        .map(r -> "; " + Format.number(r.idealTurns()) + " before rounding")
                                        .orElse("")));
        c.ideal().ifPresent(i -> facts.put("ideal wire", ideal(i)));
        after.label().ifPresent(w -> facts.put("wire", planned(c, after, w)));
        c.redesign().ifPresent(r -> emf(facts, r));
        c.redesign().filter(r -> after.amps().isPresent()).ifPresent(r -> current(facts, c, after));
        return facts;
    }

    private static String planned(RewindReport.Change c, RewindReportState after, String label) {
        if (after.wire().isPresent()) {
            if (!c.proposed()) {
                return label;
            }
            return label + "; nearest size made" + (after.fill().isPresent() ? " that goes in" : "");
        }
        return after.conductor().filter(w -> w instanceof Conductor.Strip).isPresent()
                ? label + ", as ideal: rolled to order, or the next that fits the slot's width"
                : "as ideal; nothing made comes within a tenth of it and goes in";
    }

    private static String was(String now, String before) {
        return now + (before.isEmpty() ? "" : now.equals(before) ? ", as before" : " instead of " + before);
    }

    private static String ideal(Conductor i) {
        String size = i instanceof Conductor.Round r
                ? Format.number(r.wire().size().bareDiameterMm()) + " mm bare"
                        + (r.strands() > 1 ? ", " + r.strands() + " in hand" : "")
                : i.label();
        return size + ", " + Format.number(i.areaMm2()) + " mm²: as much copper in the slot as before";
    }

    private static void emf(Map<String, String> facts, Redesign r) {
        facts.put(
                "EMF",
                Format.number(r.emfAtSpeed()) + " V at "
                        + Format.number(r.after().rpm()) + " r/min, field as before");
        facts.put("speed for " + Format.number(r.after().volts()) + " V", Format.number(r.rpmForVolts()) + " r/min");
    }

    private static void current(Map<String, String> facts, RewindReport.Change c, RewindReportState after) {
        double same = after.amps().getAsDouble();
        facts.put(
                "current",
                Format.number(same) + " A at the current density of before"
                        + (c.samePowerAmps().isPresent()
                                ? "; " + Format.number(c.samePowerAmps().getAsDouble()) + " A at the power of before"
                                        + after.copper()
                                                .map(x -> ", "
                                                        + Format.number(x.currentDensity(c.samePowerAmps()
                                                                .getAsDouble()))
                                                        + " A/mm²")
                                                .orElse("")
                                : ""));
    }

    private static String kind(OtherWinding w) {
        return WindingSpec.plexWord(w.candidate().plex()) + " " + w.type().word() + ", "
                + w.candidate().direction().word();
    }

    private Table others(List<OtherWinding> others) {
        List<List<String>> rows = new ArrayList<>();
        for (OtherWinding w : others) {
            Winding winding = w.candidate().winding();
            rows.add(List.of(
                    kind(w) + asFound(winding),
                    "1-" + (1 + w.candidate().throwSlots()),
                    winding.pitches()
                            .map(p -> (p.commutator() > 0 ? "+" : "") + p.commutator())
                            .orElse(""),
                    Integer.toString(w.paths()),
                    "× " + Format.number(w.voltsFactor()),
                    "× " + Format.number(w.ampsFactor()),
                    "× " + Format.number(w.resistanceFactor())));
        }
        return new Table(
                List.of(
                        new Table.Column("winding", 50, Table.Align.LEFT),
                        new Table.Column("throw", 15, Table.Align.LEFT),
                        new Table.Column("bar pitch", 15, Table.Align.RIGHT),
                        new Table.Column("paths", 13, Table.Align.RIGHT),
                        new Table.Column("voltage", 18, Table.Align.RIGHT),
                        new Table.Column("current", 18, Table.Align.RIGHT),
                        new Table.Column("resistance", 20, Table.Align.RIGHT)),
                rows,
                1);
    }

    private String asFound(Winding other) {
        Winding found = report.winding();
        if (other.type() != found.type()
                || !other.pitches()
                        .map(Pitches::commutator)
                        .equals(found.pitches().map(Pitches::commutator))) {
            return "";
        }
        return other.pitches().map(Pitches::coilThrow).equals(found.pitches().map(Pitches::coilThrow))
                ? " (as it is)"
                : " (as it is, other throw)";
    }

    private static String signed(double fraction) {
        String percent = RewindReportFacts.share(fraction);
        return fraction > 0 && !percent.equals("0 %") ? "+" + percent : percent;
    }
}
