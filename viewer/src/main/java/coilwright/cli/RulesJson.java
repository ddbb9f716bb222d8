package coilwright.cli;

import coilwright.winding.WindingSearch;

/** The windings that fit a core as JSON. */
final class RulesJson {
    private RulesJson() {}

    static String of(WindingSearch.Result result) {
        return Json.object(json -> {
            json.writeArrayFieldStart("possible");
            for (WindingSearch.Candidate c : result.possible()) {
                json.writeStartObject();
                json.writeStringField("type", c.winding().type().word());
                json.writeNumberField("plex", c.plex());
                json.writeStringField("direction", c.direction().word());
                json.writeNumberField(
                        "commutator", c.winding().pitches().orElseThrow().commutator());
                json.writeNumberField("throw", c.throwSlots());
                json.writeNumberField("bars", c.winding().armature().bars());
                json.writeNumberField("deadCoils", c.winding().deadCoils().size());
                Json.numberOrNull(json, "closures", c.winding().closures());
                Json.numberOrNull(json, "parallelPaths", c.winding().parallelPaths());
                Json.numbers(json, "otherThrows", c.otherThrows());
                Json.findings(json, c.findings());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayFieldStart("refused");
            for (WindingSearch.Refusal r : result.refused()) {
                json.writeStartObject();
                json.writeStringField("type", r.type().word());
                json.writeNumberField("plex", r.plex());
                json.writeStringField("direction", r.direction().word());
                json.writeNumberField("bars", r.bars());
                json.writeStringField("reason", r.reason());
                json.writeEndObject();
            }
            json.writeEndArray();
        });
    }
}
