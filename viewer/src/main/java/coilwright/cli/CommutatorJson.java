package coilwright.cli;

import coilwright.commutator.CommutatorLimit;
import coilwright.commutator.CommutatorReport;
import coilwright.commutator.RunOut;
import coilwright.commutator.TruingCut;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** A judged commutator as JSON; lengths in millimetres. */
final class CommutatorJson {
    private CommutatorJson() {}

    static String of(CommutatorReport report) {
        RunOut r = report.runOut();
        return Json.object(json -> {
            json.writeNumberField("bars", r.bars());
            json.writeNumberField("read", r.list().size());
            Json.numbers(json, "missing", r.missing());
            Json.fixed(json, "tirMm", r.tirMm());
            json.writeNumberField("highestBar", r.highest(false).bar());
            json.writeNumberField("lowestBar", r.lowest(false).bar());
            Json.fixed(json, "eccentricityMm", r.eccentricityMm());
            json.writeObjectFieldStart("highSide");
            json.writeNumberField("bar", r.highSideBar());
            Json.fixed(json, "degrees", r.highSideDegrees());
            json.writeStringField("clock", r.highSideClock());
            json.writeEndObject();
            json.writeObjectFieldStart("ownShape");
            Json.fixed(json, "tirMm", r.residualTirMm());
            Json.numberOrNull(
                    json,
                    "highestBar",
                    r.isRound()
                            ? OptionalInt.empty()
                            : OptionalInt.of(r.highest(true).bar()));
            Json.numberOrNull(
                    json,
                    "lowestBar",
                    r.isRound()
                            ? OptionalInt.empty()
                            : OptionalInt.of(r.lowest(true).bar()));
            json.writeEndObject();
            if (r.largestStep().isPresent()) {
                RunOut.Step s = r.largestStep().get();
                json.writeObjectFieldStart("largestStep");
                json.writeNumberField("from", s.from());
                json.writeNumberField("to", s.to());
                Json.fixed(json, "stepMm", s.stepMm());
                json.writeEndObject();
            } else {
                json.writeNullField("largestStep");
            }
            Json.numbers(
                    json,
                    "standouts",
                    r.standouts().stream().map(RunOut.Bar::bar).toList());
            json.writeArrayFieldStart("cuts");
            for (TruingCut.Centring c : TruingCut.Centring.values()) {
                cut(json, report, c);
            }
            json.writeEndArray();
            undercut(json, report);
            json.writeStringField("verdict", report.verdict().word());
            Json.strings(json, "verdictLines", report.verdictLines());
            json.writeArrayFieldStart("limits");
            for (CommutatorReport.Judged j : report.judged()) {
                json.writeStartObject();
                limit(json, j.limit());
                Json.fixed(
                        json,
                        "valueMm",
                        j.verdict().isEmpty()
                                ? OptionalDouble.empty()
                                : OptionalDouble.of(j.verdict().get().valueMm()));
                if (j.verdict().isPresent()) {
                    json.writeBooleanField("pass", j.verdict().get().pass());
                } else {
                    json.writeNullField("pass");
                }
                json.writeBooleanField("chosen", j.chosen());
                json.writeEndObject();
            }
            json.writeEndArray();
            Json.strings(json, "notes", report.notes());
            Json.strings(json, "cautions", TruingCut.cautions());
            json.writeArrayFieldStart("readings");
            for (RunOut.Bar b : r.list()) {
                json.writeStartObject();
                json.writeNumberField("bar", b.bar());
                Json.fixed(json, "heightMm", b.heightMm());
                Json.fixed(json, "residualMm", b.residualMm());
                json.writeEndObject();
            }
            json.writeEndArray();
        });
    }

    private static void cut(JsonGenerator json, CommutatorReport report, TruingCut.Centring c) throws IOException {
        json.writeStartObject();
        json.writeStringField("centring", c.word());
        json.writeBooleanField("planned", c == report.given().centring());
        Json.fixed(json, "depthMm", report.cutDepthMm(c));
        if (report.cuts().containsKey(c)) {
            TruingCut cut = report.cuts().get(c);
            Json.fixed(json, "offDiameterMm", cut.offDiameterMm());
            Json.fixed(json, "diameterAfterMm", cut.diameterAfterMm());
            Json.fixed(json, "leftMm", cut.leftMm());
            if (cut.keepsMinimum().isPresent()) {
                json.writeBooleanField("keepsMinimum", cut.keepsMinimum().get());
            } else {
                json.writeNullField("keepsMinimum");
            }
        }
        json.writeEndObject();
    }

    private static void undercut(JsonGenerator json, CommutatorReport report) throws IOException {
        json.writeObjectFieldStart("undercut");
        json.writeStringField("depthLimit", report.given().depth().id());
        json.writeStringField("leastLimit", report.given().least().id());
        if (report.undercut().isPresent()) {
            var u = report.undercut().get();
            Json.fixed(json, "depthNowMm", u.depthNowMm());
            Json.fixed(json, "depthAfterCutMm", u.depthAfterCutMm());
            json.writeBooleanField("needed", u.needed());
            Json.fixed(json, "lowMm", u.lowMm());
            Json.fixed(
                    json,
                    "highMm",
                    Double.isInfinite(u.highMm()) ? OptionalDouble.empty() : OptionalDouble.of(u.highMm()));
            Json.fixed(json, "widthLowMm", u.widthLowMm());
            Json.fixed(json, "widthHighMm", u.widthHighMm());
        }
        Json.strings(json, "advice", report.undercutLines());
        json.writeEndObject();
    }

    static String limits() {
        return Json.object(json -> {
            json.writeArrayFieldStart("limits");
            for (CommutatorLimit l : CommutatorLimit.all()) {
                json.writeStartObject();
                limit(json, l);
                json.writeEndObject();
            }
            json.writeEndArray();
        });
    }

    private static void limit(JsonGenerator json, CommutatorLimit l) throws IOException {
        json.writeStringField("id", l.id());
        json.writeStringField("machine", l.machine());
        json.writeStringField("quantity", l.quantity().word());
        Json.fixed(json, "lowMm", l.lowMm());
        Json.fixed(json, "highMm", l.highMm());
        json.writeStringField("printed", l.printed());
        json.writeStringField("source", l.source());
        json.writeStringField("edition", l.edition());
        json.writeStringField("trust", l.trust().word());
        json.writeStringField("note", l.note());
    }
}
