package coilwright.cli;

import coilwright.fault.EmergencyRepair;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;

/** How to cut out a coil, as JSON. */
final class RepairJson {
    private RepairJson() {}

    static String of(EmergencyRepair.Plan plan) {
        return Json.object(json -> {
            json.writeBooleanField("emergency", true);
            json.writeNumberField("coil", plan.coil().number());
            json.writeStringField("fault", plan.trouble().word());
            json.writeObjectFieldStart("lift");
            json.writeNumberField("topBar", plan.coil().topBar().getAsInt());
            json.writeNumberField("bottomBar", plan.coil().bottomBar().getAsInt());
            json.writeBooleanField("cutThrough", plan.trouble() == EmergencyRepair.Trouble.SHORTED);
            json.writeEndObject();
            json.writeObjectFieldStart("sound");
            cost(json, plan.sound());
            json.writeEndObject();
            json.writeArrayFieldStart("options");
            for (EmergencyRepair.Option o : plan.options()) {
                json.writeStartObject();
                json.writeStringField("way", o.way().word());
                Json.numbers(json, "bridge", o.bridge());
                Json.numbers(json, "coilsLost", o.lost());
                cost(json, o.cost());
                json.writeBooleanField("best", o.equals(plan.best()));
                json.writeEndObject();
            }
            json.writeEndArray();
            Json.strings(json, "cautions", plan.cautions());
        });
    }

    private static void cost(JsonGenerator json, EmergencyRepair.Cost cost) throws IOException {
        json.writeNumberField("parallelPaths", cost.paths());
        json.writeNumberField("fewestCoils", cost.fewestCoils());
        json.writeNumberField("mostCoils", cost.mostCoils());
        Json.fixed(json, "unbalance", cost.unbalance());
        Json.fixed(json, "coilVolts", cost.volts());
        Json.fixed(json, "barVolts", cost.barVolts());
    }
}
