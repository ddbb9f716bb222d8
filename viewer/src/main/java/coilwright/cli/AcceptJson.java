package coilwright.cli;

import coilwright.rewind.Acceptance;
import coilwright.rewind.Caution;
import coilwright.rewind.Evenness;
import coilwright.rewind.HighPotential;
import coilwright.rewind.HighPotential.Voltage;
import coilwright.rewind.InsulationTest;
import coilwright.rewind.Limit;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** The acceptance of a winding as JSON. */
final class AcceptJson {
    private AcceptJson() {}

    static String of(Acceptance a) {
        return Json.object(json -> {
            json.writeStringField("verdict", a.verdict().word());
            json.writeStringField("verdictText", a.verdictText());
            json.writeObjectFieldStart("machine");
            json.writeStringField(
                    "kind", a.given().kind().map(HighPotential.MachineKind::key).orElse(null));
            Json.fixed(json, "volts", a.given().volts());
            Json.fixed(json, "watts", a.given().watts());
            json.writeStringField("work", a.given().work().key());
            json.writeEndObject();
            json.writeArrayFieldStart("checks");
            for (Acceptance.Check c : a.checks()) {
                check(json, c);
            }
            json.writeEndArray();
            insulation(json, a);
            json.writeArrayFieldStart("voltages");
            for (Voltage v : a.voltages()) {
                voltage(json, a, v);
            }
            json.writeEndArray();
            json.writeBooleanField("voltagesDiffer", HighPotential.conflicting(a.voltages()));
            barToBar(json, a);
            if (a.given().rise().isPresent()) {
                json.writeObjectFieldStart("temperatureRise");
                Json.fixed(json, "hotCelsius", a.given().rise().get().hotCelsius());
                Json.fixed(json, "riseK", a.given().rise().get().riseK());
                json.writeEndObject();
            } else {
                json.writeNullField("temperatureRise");
            }
            Json.strings(
                    json, "toDo", a.toDo().stream().map(Acceptance.Check::id).toList());
            Json.strings(json, "conflicts", a.conflicts());
            Json.strings(
                    json,
                    "cautions",
                    Acceptance.cautions().stream().map(Caution::text).toList());
        });
    }

    private static void check(JsonGenerator json, Acceptance.Check c) throws IOException {
        json.writeStartObject();
        json.writeStringField("id", c.id());
        json.writeStringField("title", c.title());
        json.writeStringField("status", c.status().word());
        Json.strings(json, "found", c.found());
        Json.strings(json, "asked", c.wanted());
        json.writeArrayFieldStart("limits");
        for (Acceptance.Line l : c.lines()) {
            Limit limit = l.limit();
            json.writeStartObject();
            json.writeStringField("id", limit.id());
            json.writeStringField("applies", limit.applies());
            Json.fixed(json, "low", limit.low());
            Json.fixed(json, "high", limit.high());
            json.writeStringField("unit", limit.unit());
            Json.fixed(json, "value", l.value());
            if (l.pass().isPresent()) {
                json.writeBooleanField("pass", l.pass().get());
            } else {
                json.writeNullField("pass");
            }
            json.writeBooleanField("decides", l.chosen());
            json.writeStringField("source", limit.source().title());
            json.writeStringField("edition", limit.source().edition());
            json.writeStringField("trust", limit.source().trust().word());
            json.writeStringField("note", limit.note());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void insulation(JsonGenerator json, Acceptance a) throws IOException {
        if (a.given().insulation().isEmpty()) {
            json.writeNullField("insulation");
            return;
        }
        InsulationTest i = a.given().insulation().get();
        json.writeObjectFieldStart("insulation");
        Json.fixed(json, "oneMinuteMohm", i.oneMinuteMohm());
        Json.fixed(json, "tenMinutesMohm", i.tenMinuteMohm());
        Json.fixed(json, "celsius", i.celsius());
        json.writeBooleanField("celsiusNoted", a.given().temperatureNoted());
        Json.fixed(json, "at40Mohm", i.correctedMohm());
        Json.fixed(json, "polarizationIndex", i.polarizationIndex());
        json.writeEndObject();
    }

    private static void voltage(JsonGenerator json, Acceptance a, Voltage v) throws IOException {
        json.writeStartObject();
        json.writeStringField("scheme", v.scheme());
        Json.fixed(json, "acLow", v.acLow());
        Json.fixed(json, "acHigh", OptionalDouble.of(v.acHigh()));
        Json.fixed(json, "dcLow", v.dcLow());
        Json.fixed(json, "dcHigh", OptionalDouble.of(v.dcHigh()));
        json.writeNumberField("seconds", HighPotential.SECONDS);
        json.writeBooleanField("decides", a.given().decides(v));
        json.writeStringField(
                "applied",
                a.given()
                        .highPotential()
                        .flatMap(done -> done.against(v))
                        .map(HighPotential.Outcome::word)
                        .orElse(null));
        List<String> sources = new ArrayList<>();
        v.rule().ifPresent(r -> sources.add(r.cite()));
        sources.add(v.factorSource().cite());
        Json.strings(json, "sources", sources);
        json.writeEndObject();
    }

    private static void barToBar(JsonGenerator json, Acceptance a) throws IOException {
        json.writeArrayFieldStart("barToBar");
        for (Acceptance.Walk w : a.given().walks()) {
            json.writeStartObject();
            json.writeStringField("test", w.test());
            json.writeNumberField("readings", w.ratios().size());
            Json.strings(json, "open", w.open());
            if (w.evenness().isPresent()) {
                Evenness e = w.evenness().get();
                Json.fixed(json, "highestPercent", e.highest());
                Json.fixed(json, "lowestPercent", e.lowest());
            }
            json.writeEndObject();
        }
        json.writeEndArray();
        Json.strings(json, "notRead", a.given().missing());
    }
}
