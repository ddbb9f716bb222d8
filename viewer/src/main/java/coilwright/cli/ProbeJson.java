package coilwright.cli;

import coilwright.bench.FeedBars;
import coilwright.bench.GrowlerBlade;
import coilwright.bench.GrowlerMeter;
import coilwright.bench.PairReading;
import coilwright.job.TestKind;
import coilwright.winding.Coil;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;

/** Expected readings as JSON. */
final class ProbeJson {
    private ProbeJson() {}

    static String of(Probe probe) {
        return Json.object(json -> {
            json.writeStringField("test", probe.test().word());
            if (probe.test().growler()) {
                json.writeBooleanField("relative", probe.relative());
            }
            if (!probe.feeds().isEmpty()) {
                json.writeArrayFieldStart("feeds");
                for (FeedBars f : probe.feeds()) {
                    json.writeStartObject();
                    json.writeNumberField("in", f.in());
                    json.writeNumberField("out", f.out());
                    json.writeStringField("why", f.why());
                    json.writeEndObject();
                }
                json.writeEndArray();
            }
            if (!probe.faults().isEmpty()) {
                Json.strings(json, "faults", probe.faults());
            }
            readings(json, "readings", probe.key(), probe.readings(), coils(probe));
            if (probe.test().growler()) {
                best(json, probe.best());
            }
            if (!probe.circuits().isEmpty()) {
                json.writeArrayFieldStart("withinCircuit");
                for (Probe.CircuitWalk c : probe.circuits()) {
                    json.writeStartObject();
                    json.writeNumberField("circuit", c.number());
                    if (c.feed().isPresent()) {
                        json.writeNumberField("in", c.feed().get().in());
                        json.writeNumberField("out", c.feed().get().out());
                    }
                    readings(json, "readings", probe.key(), c.readings(), List.of());
                    json.writeEndObject();
                }
                json.writeEndArray();
            }
            if (probe.brushOhms().isPresent()) {
                json.writeFieldName("brushToBrush");
                json.writeStartObject();
                value(json, "ohms", probe.brushOhms().getAsDouble());
                json.writeEndObject();
            }
        });
    }

    /** Where a probe should see a reading. */
    static String pairs(TestKind test, String key, List<PairReading> pairs) {
        return Json.object(json -> {
            json.writeStringField("test", test.word());
            readings(json, "pairs", key, pairs, List.of());
        });
    }

    /** Where a blade hums. */
    static String blade(ProbeBlade blade) {
        return Json.object(json -> {
            json.writeStringField("test", ProbeBlade.WORD);
            json.writeBooleanField("useless", blade.useless());
            json.writeArrayFieldStart("cases");
            for (ProbeBlade.Case c : blade.cases()) {
                json.writeStartObject();
                json.writeStringField("short", c.words());
                json.writeArrayFieldStart("slots");
                for (GrowlerBlade.SlotPull s : c.pulls()) {
                    if (s.felt()) {
                        json.writeStartObject();
                        json.writeNumberField("slot", s.slot());
                        json.writeNumberField("pull", s.pull());
                        json.writeNumberField("clockDegrees", s.clockDegrees());
                        json.writeEndObject();
                    }
                }
                json.writeEndArray();
                json.writeEndObject();
            }
            json.writeEndArray();
        });
    }

    /** In a polarity test each pair is one coil. */
    private static List<Coil> coils(Probe probe) {
        List<Coil> live = probe.armature().winding().liveCoils();
        return probe.test() == TestKind.POLARITY && probe.readings().size() == live.size() ? live : List.of();
    }

    private static void readings(
            JsonGenerator json, String list, String key, List<PairReading> readings, List<Coil> coils)
            throws IOException {
        json.writeArrayFieldStart(list);
        for (int i = 0; i < readings.size(); i++) {
            PairReading r = readings.get(i);
            json.writeStartObject();
            if (!coils.isEmpty()) {
                json.writeNumberField("coil", coils.get(i).number());
            }
            Json.bar(json, "from", r.from());
            Json.bar(json, "to", r.to());
            value(json, key, r.value());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void value(JsonGenerator json, String key, double value) throws IOException {
        if (Double.isFinite(value)) {
            json.writeNumberField(key, value);
        } else {
            json.writeNullField(key);
            json.writeBooleanField("open", true);
        }
    }

    private static void best(JsonGenerator json, List<GrowlerMeter.Placed> best) throws IOException {
        json.writeArrayFieldStart("best");
        for (GrowlerMeter.Placed p : best) {
            json.writeStartObject();
            json.writeNumberField("from", p.reading().from());
            json.writeNumberField("to", p.reading().to());
            json.writeNumberField("clockDegrees", p.clockDegrees());
            json.writeEndObject();
        }
        json.writeEndArray();
    }
}
