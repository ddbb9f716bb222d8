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
                CheckJson.numbers(json, "bridge", o.bridge());
                CheckJson.numbers(json, "coilsLost", o.lost());
                cost(json, o.cost());
                json.writeBooleanField("best", o.equals(plan.best()));
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayFieldStart("cautions");
            for (String caution : plan.cautions()) {
                json.writeString(caution);
            }
            json.writeEndArray();
        });
    }

    private static void cost(JsonGenerator json, EmergencyRepair.Cost cost) throws IOException {
        json.writeNumberField("parallelPaths", cost.paths());
        json.writeNumberField("fewestCoils", cost.fewestCoils());
        json.writeNumberField("mostCoils", cost.mostCoils());
        number(json, "unbalance", cost.unbalance());
        number(json, "coilVolts", cost.volts());
        number(json, "barVolts", cost.barVolts());
    }

    private static void number(JsonGenerator json, String key, double value) throws IOException {
        json.writeFieldName(key);
        json.writeNumber(RepairText.number("%.6f", value));
    }
}
