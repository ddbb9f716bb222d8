package coilwright.cli;

import coilwright.fault.Identification;
import coilwright.winding.Winding;

/** The windings that fit what was seen, as JSON. */
final class IdentifyJson {
    private IdentifyJson() {}

    static String of(Identification.Answer answer) {
        return Json.object(json -> {
            json.writeArrayFieldStart("fits");
            for (Identification.Fit f : answer.fits()) {
                Winding w = f.winding();
                json.writeStartObject();
                json.writeStringField("type", w.type().word());
                json.writeNumberField("plex", f.plex());
                json.writeStringField("direction", f.direction().word());
                json.writeNumberField("poles", w.armature().poles());
                json.writeNumberField("commutator", w.pitches().orElseThrow().commutator());
                Json.numberOrNull(json, "throw", w.pitches().orElseThrow().throwSlots());
                json.writeNumberField("deadCoils", w.deadCoils().size());
                Json.numberOrNull(json, "closures", w.closures());
                Json.numberOrNull(json, "parallelPaths", w.parallelPaths());
                Json.strings(json, "why", f.why());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayFieldStart("excluded");
            for (Identification.Excluded e : answer.excluded()) {
                json.writeStartObject();
                json.writeStringField("type", e.type().word());
                json.writeNumberField("plex", e.plex());
                json.writeStringField("direction", e.direction().word());
                json.writeNumberField("poles", e.poles());
                json.writeStringField("reason", e.reason());
                json.writeEndObject();
            }
            json.writeEndArray();
            if (answer.next().isEmpty()) {
                json.writeNullField("next");
                return;
            }
            Identification.Next next = answer.next().get();
            json.writeObjectFieldStart("next");
            json.writeStringField("observation", next.words());
            json.writeStringField("kind", next.kind());
            Json.numbers(json, "bars", next.bars());
            json.writeArrayFieldStart("outcomes");
            for (Identification.Outcome o : next.outcomes()) {
                json.writeStartObject();
                json.writeStringField("seen", o.words());
                Json.numbers(json, "fits", o.fits());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        });
    }
}
