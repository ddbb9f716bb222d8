package coilwright.cli;

import coilwright.fault.ConnectionCheck;
import coilwright.winding.ListedCoil;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.Optional;

/** How a connection list differs from the plan, as JSON. */
final class CheckJson {
    private CheckJson() {}

    static String of(ConnectionCheck.Result result) {
        return Json.object(json -> {
            json.writeBooleanField("same", result.same());
            json.writeArrayFieldStart("differences");
            if (result.whole().isPresent()) {
                whole(json, result.whole().get());
            }
            for (ConnectionCheck.Difference d : result.differences()) {
                json.writeStartObject();
                json.writeNumberField("coil", d.coil());
                place(json, "expected", d.expected());
                place(json, "found", d.found());
                json.writeStringField("kind", d.kind().word());
                Json.numbers(json, "with", d.with());
                json.writeStringField("message", d.words());
                json.writeEndObject();
            }
            json.writeEndArray();
            if (result.alignment().isPresent()) {
                ConnectionCheck.Alignment a = result.alignment().get();
                json.writeObjectFieldStart("numbering");
                json.writeNumberField("slotOne", a.slotOfOne());
                json.writeNumberField("barOne", a.barOfOne());
                json.writeStringField("counted", a.mirrored() ? "counter-clockwise" : "clockwise");
                json.writeBooleanField("mayBeOtherDirection", a.mayBeOtherDirection());
                json.writeNumberField("agreeing", a.agreeing());
                json.writeEndObject();
            }
        });
    }

    /** What holds for the whole winding is no single coil's. */
    private static void whole(JsonGenerator json, ConnectionCheck.Whole w) throws IOException {
        json.writeStartObject();
        json.writeNullField("coil");
        json.writeObjectFieldStart("expected");
        json.writeNumberField("commutator", w.expectedStep());
        json.writeNumberField("shift", 0);
        json.writeEndObject();
        json.writeObjectFieldStart("found");
        json.writeNumberField("commutator", w.foundStep());
        json.writeNumberField("shift", w.barsShifted());
        json.writeEndObject();
        json.writeStringField("kind", w.kind().word());
        Json.numbers(json, "coils", w.coils());
        json.writeStringField("message", w.words());
        json.writeEndObject();
    }

    private static void place(JsonGenerator json, String key, Optional<ListedCoil> coil) throws IOException {
        if (coil.isEmpty()) {
            json.writeNullField(key);
            return;
        }
        ListedCoil c = coil.get();
        json.writeObjectFieldStart(key);
        json.writeNumberField("topSlot", c.topSlot());
        json.writeNumberField("bottomSlot", c.bottomSlot());
        Json.numberOrNull(json, "topBar", c.topBar());
        Json.numberOrNull(json, "bottomBar", c.bottomBar());
        json.writeEndObject();
    }
}
