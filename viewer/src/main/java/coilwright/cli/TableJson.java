package coilwright.cli;

import coilwright.circuit.Circuits;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Finding;
import coilwright.winding.Pitches;
import coilwright.winding.Winding;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** The coil table as JSON. */
final class TableJson {
    private TableJson() {}

    static String of(Winding winding, List<Finding> findings) {
        return Json.object(json -> {
            head(json, winding.armature());
            pitches(json, winding.pitches());
            json.writeNumberField("closures", Circuits.closures(winding));
            Json.numberOrNull(json, "parallelPaths", Circuits.parallelPaths(winding));
            Json.numberOrNull(json, "equalizerPitch", winding.equalizerPitch());
            json.writeArrayFieldStart("coils");
            for (Coil c : winding.coils()) {
                json.writeStartObject();
                json.writeNumberField("coil", c.number());
                json.writeNumberField("topSlot", c.top().slot());
                json.writeNumberField("bottomSlot", c.bottom().slot());
                Json.numberOrNull(json, "topBar", c.topBar());
                Json.numberOrNull(json, "bottomBar", c.bottomBar());
                json.writeBooleanField("dead", c.isDead());
                json.writeEndObject();
            }
            json.writeEndArray();
            Json.findings(json, findings);
        });
    }

    /** The same keys where there is no winding: nothing is known but the armature and what speaks against it. */
    static String impossible(Armature armature, List<Finding> findings) {
        return Json.object(json -> {
            head(json, armature);
            pitches(json, Optional.empty());
            json.writeNullField("closures");
            json.writeNullField("parallelPaths");
            json.writeNullField("equalizerPitch");
            json.writeArrayFieldStart("coils");
            json.writeEndArray();
            Json.findings(json, findings);
        });
    }

    private static void head(JsonGenerator json, Armature armature) throws IOException {
        json.writeNumberField("slots", armature.slots());
        json.writeNumberField("bars", armature.bars());
        json.writeNumberField("poles", armature.poles());
    }

    private static void pitches(JsonGenerator json, Optional<Pitches> pitches) throws IOException {
        json.writeObjectFieldStart("pitches");
        Json.numberOrNull(json, "back", pitches.map(Pitches::back));
        Json.numberOrNull(json, "front", pitches.map(Pitches::front));
        Json.numberOrNull(json, "resultant", pitches.map(Pitches::resultant));
        Json.numberOrNull(json, "commutator", pitches.map(Pitches::commutator));
        Json.numberOrNull(json, "throw", pitches.map(Pitches::throwSlots).orElse(OptionalInt.empty()));
        json.writeEndObject();
    }
}
