package coilwright.cli;

import coilwright.job.Plan;
import coilwright.job.WireChoice;
import coilwright.rewind.ArmatureCopper;
import coilwright.rewind.Caution;
import coilwright.rewind.CoilCopper;
import coilwright.rewind.Conductor;
import coilwright.rewind.InsulationBuild;
import coilwright.rewind.OtherWinding;
import coilwright.rewind.Redesign;
import coilwright.rewind.RoundWire;
import coilwright.rewind.SlotFill;
import coilwright.sheet.RewindReport;
import coilwright.sheet.RewindReportState;
import coilwright.winding.WindingSpec;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/** A rewind worked out, as JSON. */
final class RewindJson {
    private final RewindReport report;
    private final JsonGenerator json;

    private RewindJson(RewindReport report, JsonGenerator json) {
        this.report = report;
        this.json = json;
    }

    static String of(RewindReport report) {
        return Json.object(json -> new RewindJson(report, json).write());
    }

    /** A winding by plex, kind and direction. */
    static String name(OtherWinding w) {
        return WindingSpec.plexWord(w.candidate().plex()) + " " + w.type().word() + " "
                + w.candidate().direction().word();
    }

    private void write() throws IOException {
        json.writeStringField("title", report.job().title());
        json.writeBooleanField("canBeWound", report.canBeWound());
        state(report.found());
        json.writeArrayFieldStart("measured");
        for (RewindReport.Compared c : report.compared()) {
            json.writeStartObject();
            json.writeStringField("key", c.key());
            Json.number(json, "ohms", c.ohms());
            Json.number(json, "celsius", c.celsius());
            Json.number(json, "workedOut", c.expected());
            Json.number(json, "difference", c.difference());
            json.writeEndObject();
        }
        json.writeEndArray();
        substitutes("substitutes", report.substitutes());
        if (report.change().isPresent()) {
            json.writeObjectFieldStart("plan");
            change(report.change().get());
            json.writeEndObject();
        } else {
            json.writeNullField("plan");
        }
        json.writeArrayFieldStart("otherWindings");
        for (OtherWinding o : report.others()) {
            json.writeStartObject();
            winding(o);
            Json.number(json, "voltsFactor", o.voltsFactor());
            Json.number(json, "ampsFactor", o.ampsFactor());
            Json.number(json, "resistanceFactor", o.resistanceFactor());
            json.writeEndObject();
        }
        json.writeEndArray();
        Json.strings(json, "missing", report.missing());
    }

    private void winding(OtherWinding o) throws IOException {
        json.writeStringField("type", o.type().word());
        json.writeNumberField("plex", o.candidate().plex());
        json.writeStringField("direction", o.candidate().direction().word());
        json.writeNumberField("throw", o.candidate().throwSlots());
        json.writeNumberField(
                "commutator", o.candidate().winding().pitches().orElseThrow().commutator());
        json.writeNumberField("parallelPaths", o.paths());
    }

    private void change(RewindReport.Change c) throws IOException {
        Plan plan = c.plan();
        json.writeBooleanField("possible", c.refused().isEmpty());
        if (c.refused().isPresent()) {
            json.writeStringField("reason", c.refused().get());
        } else {
            json.writeNullField("reason");
        }
        json.writeBooleanField("wireGiven", plan.wire().isPresent());
        json.writeBooleanField("wireProposed", c.proposed());
        if (c.winding().isPresent()) {
            json.writeObjectFieldStart("winding");
            winding(c.winding().get());
            json.writeEndObject();
        } else {
            json.writeNullField("winding");
        }
        Optional<Redesign> r = c.redesign();
        numberOrNull("idealTurns", r.map(Redesign::idealTurns));
        numberOrNull("idealAreaMm2", c.ideal().map(Conductor::areaMm2));
        numberOrNull("emfAtSpeed", r.map(Redesign::emfAtSpeed));
        numberOrNull("rpmForVolts", r.map(Redesign::rpmForVolts));
        numberOrNull("samePowerAmps", c.samePowerAmps());
        substitutes("proposals", c.proposals());
        if (c.after().isPresent()) {
            state(c.after().get());
        }
        json.writeArrayFieldStart("cautions");
        for (Caution x : r.map(Redesign::cautions).orElse(List.of())) {
            json.writeStartObject();
            json.writeStringField("id", x.id());
            json.writeStringField("message", x.text());
            json.writeStringField("source", x.source().cite());
            json.writeEndObject();
        }
        json.writeEndArray();
        Json.strings(json, "missing", c.missing());
    }

    private void state(RewindReportState s) throws IOException {
        Json.numberOrNull(json, "turns", s.turns());
        numberOrNull("volts", s.volts());
        numberOrNull("rpm", s.rpm());
        numberOrNull("amps", s.amps());
        object("wire", s.conductor(), c -> wire(s, c));
        object("coil", s.coil(), this::coil);
        object("armature", s.copper(), this::armature);
        object("slot", s.fill(), this::slot);
        numberOrNull("currentDensity", s.currentDensity());
        numberOrNull("barVolts", s.barVolts());
        json.writeArrayFieldStart("limits");
        for (RewindReportState.Check c : s.checks()) {
            json.writeStartObject();
            json.writeStringField("id", c.id());
            json.writeStringField("what", c.what());
            Json.number(json, "value", c.value());
            numberOrNull("low", c.limit().low());
            numberOrNull("high", c.limit().high());
            json.writeStringField("unit", c.limit().unit());
            json.writeStringField("verdict", c.verdict());
            json.writeStringField("source", c.limit().source().cite());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private interface Body<T> {
        void write(T value) throws IOException;
    }

    private <T> void object(String key, Optional<T> value, Body<T> body) throws IOException {
        if (value.isEmpty()) {
            json.writeNullField(key);
            return;
        }
        json.writeObjectFieldStart(key);
        body.write(value.get());
        json.writeEndObject();
    }

    private void numberOrNull(String key, OptionalDouble value) throws IOException {
        numberOrNull(key, value.isPresent() ? Optional.of(value.getAsDouble()) : Optional.empty());
    }

    private void numberOrNull(String key, Optional<Double> value) throws IOException {
        if (value.isPresent()) {
            Json.number(json, key, value.get());
        } else {
            json.writeNullField(key);
        }
    }

    private void wire(RewindReportState s, Conductor c) throws IOException {
        json.writeStringField("label", s.label().orElseThrow());
        json.writeBooleanField(
                "coveringKnown", s.wire().map(WireChoice::isCoveringKnown).orElse(true));
        json.writeNumberField("inHand", c.strands());
        Json.number(json, "areaMm2", c.areaMm2());
        if (c instanceof Conductor.Round round) {
            RoundWire w = round.wire();
            json.writeStringField("size", w.size().label());
            Json.number(json, "bareMm", w.size().bareDiameterMm());
            json.writeStringField("bareSource", w.size().source().cite());
            Optional<InsulationBuild> build =
                    s.wire().isPresent() ? s.wire().get().insulation() : Optional.of(w.build());
            if (build.isPresent()) {
                json.writeStringField("insulation", Given.word(build.get()));
            } else {
                json.writeNullField("insulation");
            }
            Json.number(json, "overallMm", w.overallDiameterMm());
            json.writeStringField("overallSource", w.overallSource().cite());
            Json.number(json, "ohmsPerKm20", w.size().ohmsPerKm(20));
            Json.number(json, "kgPerKm", w.size().kgPerKm());
        } else if (c instanceof Conductor.Strip strip) {
            Json.number(json, "widthMm", strip.widthMm());
            Json.number(json, "thicknessMm", strip.thicknessMm());
            Json.number(json, "insulationMm", strip.insulationMm());
        }
    }

    private void resistances(String key, DoubleUnaryOperator ohms) throws IOException {
        json.writeArrayFieldStart(key);
        for (double t : report.settings().celsius()) {
            json.writeStartObject();
            Json.number(json, "celsius", t);
            Json.number(json, "ohms", ohms.applyAsDouble(t));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void coil(CoilCopper c) throws IOException {
        Json.number(json, "meanTurnMm", c.meanTurn().lengthMm());
        json.writeStringField("meanTurnModel", c.meanTurn().model());
        Json.number(json, "leadsMm", c.leadsMm());
        Json.number(json, "lengthM", c.lengthM());
        resistances("resistance", c::resistance);
        Json.number(json, "copperKg", c.massKg());
    }

    private void armature(ArmatureCopper c) throws IOException {
        json.writeNumberField("coils", c.woundCoils());
        json.writeNumberField("liveCoils", c.liveCoils());
        json.writeNumberField("parallelPaths", c.paths());
        resistances("brushToBrush", c::brushToBrush);
        Json.number(json, "copperKg", c.massKg());
        double allowance = report.settings().allowance();
        Json.number(json, "allowance", allowance);
        Json.number(json, "wireToBuyM", c.wireToBuyM(allowance));
        Json.number(json, "copperToBuyKg", c.massToBuyKg(allowance));
    }

    private void slot(SlotFill f) throws IOException {
        Json.number(json, "bareMm2", f.slotAreaMm2());
        Json.number(json, "windingMm2", f.windingAreaMm2());
        json.writeNumberField("wires", f.wires());
        Json.number(json, "copperFactor", f.copperFactor());
        Json.number(json, "fill", f.fill());
        Json.number(json, "circleFill", f.circleFill());
        if (f.packing().isPresent()) {
            SlotFill.Placed p = f.packing().get();
            json.writeObjectFieldStart("packing");
            json.writeNumberField("wantedPerLayer", p.wiresPerLayer());
            json.writeNumberField("mostInBottom", p.bottomRoom().count());
            json.writeStringField("bottomPattern", p.bottomRoom().pattern().word());
            json.writeNumberField("mostInTop", p.topRoom().count());
            json.writeStringField("topPattern", p.topRoom().pattern().word());
            json.writeBooleanField("passesOpening", p.passesOpening());
            json.writeEndObject();
        } else {
            json.writeNullField("packing");
        }
        json.writeBooleanField("fits", f.fits());
    }

    private void substitutes(String key, List<RewindReport.Substitute> list) throws IOException {
        json.writeArrayFieldStart(key);
        for (RewindReport.Substitute s : list) {
            Conductor.Round c = s.option().conductor();
            json.writeStartObject();
            json.writeStringField("label", c.label());
            json.writeStringField("size", c.wire().size().label());
            json.writeStringField("insulation", Given.word(c.wire().build()));
            json.writeNumberField("inHand", c.strands());
            Json.number(json, "areaMm2", c.areaMm2());
            Json.number(json, "areaDifference", s.option().areaDifference());
            Json.number(json, "roomDifference", s.option().roomDifference());
            Json.number(json, "resistanceFactor", s.option().resistanceFactor());
            json.writeNumberField("rankByArea", s.byArea());
            json.writeNumberField("rankByFit", s.byFit());
            numberOrNull("fill", s.fill().map(SlotFill::fill));
            if (s.fill().isPresent()) {
                json.writeBooleanField("fits", s.fill().get().fits());
            } else {
                json.writeNullField("fits");
            }
            json.writeEndObject();
        }
        json.writeEndArray();
    }
}
