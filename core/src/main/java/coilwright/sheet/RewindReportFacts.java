package coilwright.sheet;

import coilwright.job.WireChoice;
import coilwright.rewind.ArmatureCopper;
import coilwright.rewind.CoilCopper;
import coilwright.rewind.Conductor;
import coilwright.rewind.Copper;
import coilwright.rewind.Format;
import coilwright.rewind.Limit;
import coilwright.rewind.RoundWire;
import coilwright.rewind.SlotFill;
import coilwright.rewind.WireSize;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;

/** What a rewind report tells of one way of winding, fact by fact: wire, coil, armature, slot and load. */
final class RewindReportFacts {
    /** Difference of a measured resistance from the one worked out that calls for another look. Common practice. */
    private static final double APART = 0.10;

    private final RewindReport.Settings settings;

    RewindReportFacts(RewindReport.Settings settings) {
        this.settings = settings;
    }

    static Map<String, String> wire(RewindReportState state) {
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
                    Format.number(s.widthMm() + 2 * s.insulationMm()) + " × "
                            + Format.number(s.thicknessMm() + 2 * s.insulationMm()) + " mm");
            facts.put("copper area", Format.number(s.areaMm2()) + " mm²");
        }
        facts.put(
                "resistance",
                Format.number(Copper.resistance(1000, conductor.areaMm2(), 20)) + " Ω/km at 20 °C" + all(conductor));
        facts.put(
                "mass", Format.number(Copper.mass(1000, conductor.areaMm2())) + " kg/km, bare copper" + all(conductor));
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
                Format.number(size.bareDiameterMm()) + " mm (" + Format.number(size.printedInches()) + " in); "
                        + size.source().cite());
        if (covered) {
            facts.put(
                    "over the covering",
                    Format.number(wire.overallDiameterMm()) + " mm"
                            + (measured
                                    ? ", measured"
                                    : " at most; " + wire.overallSource().cite()));
        }
        facts.put(
                "copper area",
                Format.number(size.areaMm2()) + " mm² (" + Format.number(size.circularMils()) + " circular mils)"
                        + (r.strands() == 1
                                ? ""
                                : " each, " + Format.number(r.areaMm2()) + " mm² for " + r.strands() + " in hand"));
    }

    private String temperatures(DoubleUnaryOperator ohms) {
        return settings.celsius().stream()
                .map(t -> ohms(ohms.applyAsDouble(t)) + " at " + Format.number(t) + " °C")
                .collect(Collectors.joining(", "));
    }

    Map<String, String> coil(CoilCopper coil, List<RewindReport.Compared> compared) {
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("turns", Integer.toString(coil.turns()));
        boolean measured = coil.meanTurn().inCoreMm() >= coil.meanTurn().lengthMm();
        facts.put(
                "mean turn",
                Format.number(coil.meanTurn().lengthMm()) + " mm"
                        + (measured
                                ? ""
                                : ", of that " + Format.number(coil.meanTurn().inCoreMm()) + " mm in the core")
                        + "; " + coil.meanTurn().model());
        facts.put(
                "length",
                Format.number(coil.lengthM()) + " m from bar to bar, with " + Format.number(coil.leadsMm())
                        + " mm of leads"
                        + (coil.conductor().strands() > 1
                                ? "; " + Format.number(coil.wireM()) + " m of wire, "
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
        return ohms(c.ohms()) + " at " + Format.number(c.celsius()) + " °C, " + how
                + (Math.abs(c.difference()) > APART
                        ? ": count the turns, gauge the wire and measure a turn again"
                        : "");
    }

    Map<String, String> armature(ArmatureCopper copper, List<RewindReport.Compared> compared) {
        Map<String, String> facts = new LinkedHashMap<>();
        int dead = copper.woundCoils() - copper.liveCoils();
        facts.put("coils", copper.woundCoils() + (dead == 0 ? "" : ", " + dead + " of them dead"));
        facts.put("parallel paths", Integer.toString(copper.paths()));
        facts.put("brush to brush", temperatures(copper::brushToBrush) + "; brushes and their drop left out");
        compared.stream()
                .filter(c -> c.key().endsWith("brushToBrush"))
                .forEach(c -> facts.put(measuredName(c), measured(c)));
        facts.put("copper", mass(copper.massKg()));
        double allowance = settings.allowance();
        facts.put(
                "to buy",
                Format.number(copper.wireToBuyM(allowance)) + " m, " + mass(copper.massToBuyKg(allowance))
                        + " of bare copper, with " + share(allowance)
                        + " for waste and joints; the covering adds a few percent");
        return facts;
    }

    static Map<String, String> slot(RewindReportState state, SlotFill fill) {
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put(
                "section",
                Format.number(fill.slotAreaMm2()) + " mm² bare, " + Format.number(fill.windingAreaMm2())
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
        } else {
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
                    Format.number(state.slot().orElseThrow().shape().openingMm()) + " mm: "
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

    static Map<String, String> load(RewindReportState state) {
        Map<String, String> facts = new LinkedHashMap<>();
        List<String> rated = new ArrayList<>();
        state.volts().ifPresent(v -> rated.add(Format.number(v) + " V"));
        state.amps().ifPresent(a -> rated.add(Format.number(a) + " A"));
        state.rpm().ifPresent(n -> rated.add(Format.number(n) + " r/min"));
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
        return limit.unit().isEmpty() ? share(value) : Format.number(value) + " " + unit(limit);
    }

    private static String unit(Limit limit) {
        return limit.unit().replace("mm2", "mm²");
    }

    private static String limits(Limit limit) {
        if (limit.low().isPresent() && limit.high().isPresent()) {
            return Format.number(limit.low().getAsDouble()) + " to "
                    + value(limit.high().getAsDouble(), limit);
        }
        return limit.high().isPresent()
                ? value(limit.high().getAsDouble(), limit) + " at most"
                : value(limit.low().orElseThrow(), limit) + " at least";
    }

    static boolean isCovered(RewindReportState state) {
        return state.wire().map(WireChoice::isCoveringKnown).orElse(true);
    }

    private static String mass(double kg) {
        return kg < 1 ? Format.number(kg * 1000) + " g" : Format.number(kg) + " kg";
    }

    private static String ohms(double ohms) {
        return Written.ohms(ohms, "Ω");
    }

    /** A share that is no use beyond ten times the whole. */
    static String share(double fraction) {
        return fraction > 10 ? "over 1000 %" : Format.percent(fraction);
    }
}
