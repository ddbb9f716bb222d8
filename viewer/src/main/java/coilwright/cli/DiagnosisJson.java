package coilwright.cli;

import coilwright.bench.Point;
import coilwright.fault.Diagnosis;
import coilwright.fault.Fault;
import coilwright.fault.NextProbe;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A diagnosis for scripts. */
final class DiagnosisJson {
    private static final int MOST_RANKED = 50;

    private DiagnosisJson() {}

    static String of(Diagnosis d, Optional<NextProbe> next) {
        return Json.object(json -> {
            json.writeStringField("verdict", d.verdict().name().toLowerCase(Locale.ROOT));
            json.writeNumberField("soundProbability", share(d.soundProbability()));
            json.writeArrayFieldStart("ranked");
            for (Diagnosis.Explanation e : d.ranked().stream()
                    .filter(x -> x.probability() >= 1e-4)
                    .limit(MOST_RANKED)
                    .toList()) {
                json.writeStartObject();
                faults(json, "faults", e.faults());
                json.writeNumberField("probability", share(e.probability()));
                json.writeArrayFieldStart("sameReadings");
                for (List<Fault> same : e.sameReadings()) {
                    json.writeStartObject();
                    faults(json, "faults", same);
                    json.writeEndObject();
                }
                json.writeEndArray();
                json.writeArrayFieldStart("because");
                for (Diagnosis.Because b : e.because()) {
                    json.writeStartObject();
                    json.writeStringField("test", b.test().word());
                    pair(json, b.reading().from(), b.reading().to());
                    value(json, "reading", b.reading().value());
                    value(json, "sound", b.sound());
                    value(json, "explained", b.explained());
                    json.writeEndObject();
                }
                json.writeEndArray();
                json.writeEndObject();
            }
            json.writeEndArray();
            Json.strings(json, "unseen", d.unseen());
            json.writeArrayFieldStart("suspects");
            for (Diagnosis.Suspect s : d.suspects()) {
                json.writeStartObject();
                json.writeStringField("test", s.test().word());
                pair(json, s.reading().from(), s.reading().to());
                value(json, "reading", s.reading().value());
                value(json, "expected", s.expected());
                json.writeStringField("advice", s.advice());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeNumberField("noise", share(d.noise()));
            if (next.isEmpty()) {
                json.writeNullField("next");
            } else {
                next(json, next.get());
            }
        });
    }

    private static void next(JsonGenerator json, NextProbe next) throws IOException {
        json.writeObjectFieldStart("next");
        json.writeStringField("test", next.test().word());
        pair(json, next.pair().from(), next.pair().to());
        json.writeStringField("instruction", next.instruction());
        json.writeArrayFieldStart("outcomes");
        for (NextProbe.Outcome o : next.outcomes()) {
            json.writeStartObject();
            faults(json, "faults", o.faults());
            value(json, "reading", o.value());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void pair(JsonGenerator json, int from, int to) throws IOException {
        Json.bar(json, "from", from);
        Json.bar(json, "to", to);
    }

    private static void value(JsonGenerator json, String key, double value) throws IOException {
        if (Double.isFinite(value)) {
            json.writeNumberField(key, round(value));
        } else {
            json.writeNullField(key);
        }
    }

    static void faults(JsonGenerator json, String key, List<Fault> faults) throws IOException {
        json.writeArrayFieldStart(key);
        for (Fault f : faults) {
            json.writeStartObject();
            json.writeStringField("kind", f.kind());
            if (!f.coils().isEmpty()) {
                json.writeNumberField("coil", f.coils().get(0));
            }
            if (f.coils().size() > 1) {
                json.writeNumberField("otherCoil", f.coils().get(1));
            }
            if (!f.bars().isEmpty()) {
                Json.numbers(json, "bars", f.bars());
            }
            size(json, f);
            json.writeStringField("words", f.words());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void size(JsonGenerator json, Fault f) throws IOException {
        if (f instanceof Fault.ShortedTurns s) {
            json.writeNumberField("fraction", round(s.fraction()));
        } else if (f instanceof Fault.HighResistance h) {
            json.writeNumberField("ohms", round(h.ohms()));
        } else if (f instanceof Fault.WrongTurns w) {
            json.writeNumberField("relative", round(w.relative()));
        } else if (f instanceof Fault.Ground g && g.place() instanceof Point.Inside i) {
            json.writeNumberField("fraction", round(i.fraction()));
        } else if (f instanceof Fault.CrossedLeads c) {
            json.writeStringField("leads", c.leads().word());
        } else if (f instanceof Fault.WrongBar w) {
            json.writeStringField("lead", w.top() ? "top" : "bottom");
        }
    }

    /** Six digits, so that equal input gives equal bytes. */
    private static double round(double x) {
        return x == 0 || !Double.isFinite(x)
                ? 0
                : new BigDecimal(x).round(new MathContext(6)).doubleValue();
    }

    /** Six decimals. */
    private static double share(double p) {
        return new BigDecimal(p).setScale(6, RoundingMode.HALF_EVEN).doubleValue();
    }
}
