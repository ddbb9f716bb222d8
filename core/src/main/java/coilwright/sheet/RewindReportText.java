package coilwright.sheet;

import coilwright.job.WireChoice;
import coilwright.rewind.ArmatureCopper;
import coilwright.rewind.CoilCopper;
import coilwright.rewind.Conductor;
import coilwright.rewind.Copper;
import coilwright.rewind.Format;
import coilwright.rewind.Limit;
import coilwright.rewind.OtherWinding;
import coilwright.rewind.Redesign;
import coilwright.rewind.RoundWire;
import coilwright.rewind.SlotFill;
import coilwright.rewind.WireSize;
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
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;

/** A rewind report in words. */
public final class RewindReportText {
    /** Difference of a measured resistance from the one worked out that calls for another look. Common practice. */
    private static final double APART = 0.10;

    private final RewindReport report;
    private final List<RewindReportSection> out = new ArrayList<>();

    private RewindReportText(RewindReport report) {
        this.report = report;
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
            add(Part.WIRE, false, "Wire", wire(found));
        }
        if (!report.substitutes().isEmpty()) {
            out.add(RewindReportSection.table(
                    Part.SUBSTITUTES,
                    false,
                    "What could be wound in its place",
                    substitutes(report.substitutes(), isCovered(found))));
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

    private static boolean isCovered(RewindReportState state) {
        return state.wire().map(WireChoice::isCoveringKnown).orElse(true);
    }

    private static Map<String, String> wire(RewindReportState state) {
        Conductor conductor = state.conductor().orElseThrow();
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("wire", state.label().orElseThrow());
        if (conductor instanceof Conductor.Round r) {
            round(
                    facts,
                    r,
                    isCovered(state),
                    state.wire().flatMap(WireChoice::overall).isPresent());
        } else if (conductor instanceof Conductor.Strip s) {
            facts.put(
                    "over the covering",
                    number(s.widthMm() + 2 * s.insulationMm()) + " × " + number(s.thicknessMm() + 2 * s.insulationMm())
                            + " mm");
            facts.put("copper area", number(s.areaMm2()) + " mm²");
        }
        facts.put(
                "resistance",
                number(Copper.resistance(1000, conductor.areaMm2(), 20)) + " Ω/km at 20 °C" + all(conductor));
        facts.put("mass", number(Copper.mass(1000, conductor.areaMm2())) + " kg/km, bare copper" + all(conductor));
        return facts;
    }

    private static String all(Conductor conductor) {
        return conductor.strands() == 1 ? "" : ", " + conductor.strands() + " in hand";
    }

    private static void round(Map<String, String> facts, Conductor.Round r, boolean covered, boolean measured) {
        RoundWire wire = r.wire();
        WireSize size = wire.size();
        facts.put(
                "bare diameter",
                number(size.bareDiameterMm()) + " mm (" + number(size.printedInches()) + " in); "
                        + size.source().cite());
        if (covered) {
            facts.put(
                    "over the covering",
                    number(wire.overallDiameterMm()) + " mm"
                            + (measured
                                    ? ", measured"
                                    : " at most; " + wire.overallSource().cite()));
        }
        facts.put(
                "copper area",
                number(size.areaMm2()) + " mm² (" + number(size.circularMils()) + " circular mils)"
                        + (r.strands() == 1
                                ? ""
                                : " each, " + number(r.areaMm2()) + " mm² for " + r.strands() + " in hand"));
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
                row.add(s.fill().map(f -> share(f.fill())).orElse(""));
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
        state.coil().ifPresent(c -> add(Part.COIL, planned, "Coil", coil(c, compared)));
        state.copper().ifPresent(c -> add(Part.ARMATURE, planned, "Armature", armature(c, compared)));
        state.fill().ifPresent(f -> add(Part.SLOT, planned, "Slot", slot(state, f)));
        add(Part.LOAD, planned, "Load", load(state));
    }

    private String temperatures(DoubleUnaryOperator ohms) {
        return report.settings().celsius().stream()
                .map(t -> ohms(ohms.applyAsDouble(t)) + " at " + number(t) + " °C")
                .collect(Collectors.joining(", "));
    }

    private Map<String, String> coil(CoilCopper coil, List<RewindReport.Compared> compared) {
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("turns", Integer.toString(coil.turns()));
        boolean measured = coil.meanTurn().inCoreMm() >= coil.meanTurn().lengthMm();
        facts.put(
                "mean turn",
                number(coil.meanTurn().lengthMm()) + " mm"
                        + (measured ? "" : ", of that " + number(coil.meanTurn().inCoreMm()) + " mm in the core")
                        + "; " + coil.meanTurn().model());
        facts.put(
                "length",
                number(coil.lengthM()) + " m from bar to bar, with " + number(coil.leadsMm()) + " mm of leads"
                        + (coil.conductor().strands() > 1
                                ? "; " + number(coil.wireM()) + " m of wire, "
                                        + coil.conductor().strands() + " in hand"
                                : ""));
        facts.put("resistance", temperatures(coil::resistance));
        compared.stream()
                .filter(c -> c.key().endsWith("coilResistance"))
                .forEach(c -> facts.put(measuredName(c), measured(c)));
        facts.put("copper", mass(coil.massKg()));
        return facts;
    }

    private static String measuredName(RewindReport.Compared c) {
        return c.key().startsWith("asFound") ? "measured as found" : "given";
    }

    private static String measured(RewindReport.Compared c) {
        String how = Math.abs(c.difference()) < 0.0005
                ? "as worked out"
                : share(Math.abs(c.difference())) + (c.difference() > 0 ? " over" : " under") + " the value worked out";
        return ohms(c.ohms()) + " at " + number(c.celsius()) + " °C, " + how
                + (Math.abs(c.difference()) > APART
                        ? ": count the turns, gauge the wire and measure a turn again"
                        : "");
    }

    private Map<String, String> armature(ArmatureCopper copper, List<RewindReport.Compared> compared) {
        Map<String, String> facts = new LinkedHashMap<>();
        int dead = copper.woundCoils() - copper.liveCoils();
        facts.put("coils", copper.woundCoils() + (dead == 0 ? "" : ", " + dead + " of them dead"));
        facts.put("parallel paths", Integer.toString(copper.paths()));
        facts.put("brush to brush", temperatures(copper::brushToBrush) + "; brushes and their drop left out");
        compared.stream()
                .filter(c -> c.key().endsWith("brushToBrush"))
                .forEach(c -> facts.put(measuredName(c), measured(c)));
        facts.put("copper", mass(copper.massKg()));
        double allowance = report.settings().allowance();
        facts.put(
                "to buy",
                number(copper.wireToBuyM(allowance)) + " m, " + mass(copper.massToBuyKg(allowance))
                        + " of bare copper, with " + share(allowance)
                        + " for waste and joints; the covering adds a few percent");
        return facts;
    }

    private static Map<String, String> slot(RewindReportState state, SlotFill fill) {
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put(
                "section",
                number(fill.slotAreaMm2()) + " mm² bare, " + number(fill.windingAreaMm2())
                        + " mm² left by liner, separator and wedge");
        boolean strip =
                state.conductor().filter(c -> c instanceof Conductor.Strip).isPresent();
        int sides = state.slot().orElseThrow().sidesPerLayer();
        facts.put(
                strip ? "conductors" : "wires",
                fill.wires() + ": 2 layers of " + fill.wires() / 2
                        + (sides > 1 ? ", " + sides + " coil sides in each" : ""));
        state.checks().stream().filter(c -> c.id().equals("copper-factor")).forEach(c -> facts.put(c.what(), about(c)));
        checks(facts, state, "fill-usual");
        if (strip) {
            facts.put("copper factor", share(fill.copperFactor()) + " of the bare slot is copper");
            facts.put("square fill", share(fill.fill()) + ", every conductor with its covering");
        }
        if (!strip) {
            facts.put("circle fill", share(fill.circleFill()) + ", every wire as a circle");
        }
        fill.packing().ifPresent(p -> {
            facts.put(
                    "by count",
                    p.bottomRoom().count() + " wires would go into the bottom layer ("
                            + p.bottomRoom().pattern().word() + "), "
                            + p.topRoom().count() + " into the top layer ("
                            + p.topRoom().pattern().word() + "); " + p.wiresPerLayer() + " wanted in each");
            facts.put(
                    "opening",
                    number(state.slot().orElseThrow().shape().openingMm()) + " mm: "
                            + (p.passesOpening() ? "a wire passes" : "a wire does not pass"));
        });
        facts.put("verdict", verdict(state, fill));
        return facts;
    }

    private static String verdict(RewindReportState state, SlotFill fill) {
        String how = fill.packing().isEmpty() ? ", by area alone" : "";
        if (!fill.fits()) {
            return "it does not go in" + how;
        }
        if (fill.strips().filter(l -> l.count() < fill.wires()).isPresent()) {
            return "it goes in by area alone, but laid in straight rows only "
                    + fill.strips().orElseThrow().count() + " of " + fill.wires() + " find a place";
        }
        boolean easy = state.checks().stream()
                .filter(c -> c.id().equals("fill-usual"))
                .allMatch(RewindReportState.Check::usual);
        return easy ? "it goes in" + how : "it goes in" + how + ", but only if every wire lies in its place";
    }

    private static Map<String, String> load(RewindReportState state) {
        Map<String, String> facts = new LinkedHashMap<>();
        List<String> rated = new ArrayList<>();
        state.volts().ifPresent(v -> rated.add(number(v) + " V"));
        state.amps().ifPresent(a -> rated.add(number(a) + " A"));
        state.rpm().ifPresent(n -> rated.add(number(n) + " r/min"));
        if (!rated.isEmpty()) {
            facts.put("at", String.join(", ", rated));
        }
        checks(facts, state, "density-continuous", "bar-volts", "heavy-wire");
        return facts;
    }

    private static void checks(Map<String, String> facts, RewindReportState state, String... ids) {
        for (String id : ids) {
            state.checks().stream()
                    .filter(c -> c.id().equals(id))
                    // A thin wire needs no word on how thick it may be.
                    .filter(c -> !id.equals("heavy-wire") || !c.usual())
                    .forEach(c -> facts.put(c.what(), check(c)));
        }
    }

    private static String check(RewindReportState.Check c) {
        Limit limit = c.limit();
        String side =
                c.usual() ? "; usual is " : c.verdict().equals("high") ? ", above the usual " : ", below the usual ";
        return value(c.value(), limit) + side + limits(limit) + " (" + limit.applies() + "); "
                + limit.source().cite()
                + (c.usual() || limit.note().isEmpty() ? "" : "; " + limit.note());
    }

    /** Of a limit that says about how much is usual, not how much at most. */
    private static String about(RewindReportState.Check c) {
        return share(c.value()) + " of the bare slot is copper; usual is about "
                + value(c.limit().high().orElseThrow(), c.limit()) + " ("
                + c.limit().applies() + "); "
                + c.limit().source().cite();
    }

    private static String value(double value, Limit limit) {
        return limit.unit().isEmpty() ? share(value) : number(value) + " " + unit(limit);
    }

    private static String unit(Limit limit) {
        return limit.unit().replace("mm2", "mm²");
    }

    private static String limits(Limit limit) {
        if (limit.low().isPresent() && limit.high().isPresent()) {
            return number(limit.low().getAsDouble()) + " to "
                    + value(limit.high().getAsDouble(), limit);
        }
        return limit.high().isPresent()
                ? value(limit.high().getAsDouble(), limit) + " at most"
                : value(limit.low().orElseThrow(), limit) + " at least";
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
                    substitutes(c.proposals(), isCovered(report.found()))));
        }
        if (after.wire().isPresent() && !after.wire().equals(report.found().wire())) {
            add(Part.WIRE, true, "Wire", wire(after));
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
                                number(v) + " V",
                                found.volts().isPresent() ? number(found.volts().getAsDouble()) + " V" : "")));
        after.rpm()
                .ifPresent(n -> facts.put(
                        "speed",
                        was(
                                number(n) + " r/min",
                                found.rpm().isPresent() ? number(found.rpm().getAsDouble()) + " r/min" : "")));
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
                                        .map(r -> "; " + number(r.idealTurns()) + " before rounding")
                                        .orElse("")));
        c.ideal().ifPresent(i -> facts.put("ideal wire", ideal(i)));
        after.label().ifPresent(w -> facts.put("wire", planned(c, after, w)));
        c.redesign().ifPresent(r -> emf(facts, r));
        c.redesign().filter(r -> after.amps().isPresent()).ifPresent(r -> current(facts, c, after));
        return facts;
    }

    private static String planned(RewindReport.Change c, RewindReportState after, String label) {
        if (after.wire().isPresent()) {
            return label + (c.proposed() ? "; nearest size made that goes in" : "");
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
                ? number(r.wire().size().bareDiameterMm()) + " mm bare"
                        + (r.strands() > 1 ? ", " + r.strands() + " in hand" : "")
                : i.label();
        return size + ", " + number(i.areaMm2()) + " mm²: as much copper in the slot as before";
    }

    private static void emf(Map<String, String> facts, Redesign r) {
        facts.put("EMF", number(r.emfAtSpeed()) + " V at " + number(r.after().rpm()) + " r/min, field as before");
        facts.put("speed for " + number(r.after().volts()) + " V", number(r.rpmForVolts()) + " r/min");
    }

    private static void current(Map<String, String> facts, RewindReport.Change c, RewindReportState after) {
        double same = after.amps().getAsDouble();
        facts.put(
                "current",
                number(same) + " A at the current density of before"
                        + (c.samePowerAmps().isPresent()
                                ? "; " + number(c.samePowerAmps().getAsDouble()) + " A at the power of before"
                                        + after.copper()
                                                .map(x -> ", "
                                                        + number(x.currentDensity(c.samePowerAmps()
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
                    kind(w) + (isPresent(winding) ? " (as it is)" : ""),
                    "1-" + (1 + w.candidate().throwSlots()),
                    winding.pitches()
                            .map(p -> (p.commutator() > 0 ? "+" : "") + p.commutator())
                            .orElse(""),
                    Integer.toString(w.paths()),
                    "× " + number(w.voltsFactor()),
                    "× " + number(w.ampsFactor()),
                    "× " + number(w.resistanceFactor())));
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

    private boolean isPresent(Winding winding) {
        return winding.type() == report.winding().type()
                && winding.pitches()
                        .map(Pitches::commutator)
                        .equals(report.winding().pitches().map(Pitches::commutator));
    }

    private static String mass(double kg) {
        return kg < 1 ? number(kg * 1000) + " g" : number(kg) + " kg";
    }

    private static String ohms(double ohms) {
        if (ohms >= 1) {
            return number(ohms) + " Ω";
        }
        return ohms >= 1e-3 ? number(ohms * 1e3) + " mΩ" : number(ohms * 1e6) + " µΩ";
    }

    /** A share that is no use beyond ten times the whole. */
    private static String share(double fraction) {
        return fraction > 10 ? "over 1000 %" : Format.percent(fraction);
    }

    private static String signed(double fraction) {
        String percent = share(fraction);
        return fraction > 0 && !percent.equals("0 %") ? "+" + percent : percent;
    }

    private static String number(double x) {
        return Format.number(x);
    }
}
