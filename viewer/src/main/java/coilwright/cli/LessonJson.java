package coilwright.cli;

import coilwright.lesson.Answer;
import coilwright.lesson.Chapter;
import coilwright.lesson.Exercise;
import coilwright.lesson.Grid;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** Exercises and the walk, for scripts. */
final class LessonJson {
    private LessonJson() {}

    static String of(long seed, List<Exercise> exercises, boolean key) {
        return Json.object(json -> {
            json.writeNumberField("seed", seed);
            json.writeNumberField("grade", exercises.get(0).grade());
            json.writeArrayFieldStart("exercises");
            int number = 0;
            for (Exercise e : exercises) {
                json.writeStartObject();
                json.writeNumberField("number", ++number);
                json.writeStringField("kind", e.kind().word());
                Json.strings(json, "question", e.question());
                grid(json, "table", e.table());
                Json.strings(json, "asked", e.asked());
                if (key) {
                    answers(json, e.answers());
                    grid(json, "filledTable", e.filledTable());
                    Json.strings(json, "steps", e.steps());
                }
                json.writeEndObject();
            }
            json.writeEndArray();
        });
    }

    static String walk(List<Chapter> chapters) {
        return Json.object(json -> {
            json.writeArrayFieldStart("chapters");
            for (Chapter c : chapters) {
                json.writeStartObject();
                json.writeStringField("title", c.title());
                Json.strings(json, "cautions", c.cautions());
                Json.strings(
                        json,
                        "steps",
                        c.steps().stream().map(Chapter.Step::words).toList());
                json.writeEndObject();
            }
            json.writeEndArray();
        });
    }

    private static void answers(JsonGenerator json, List<Answer> answers) throws IOException {
        json.writeArrayFieldStart("answers");
        for (Answer a : answers) {
            json.writeStartObject();
            json.writeStringField("what", a.what());
            json.writeStringField("value", a.value());
            json.writeStringField("unit", a.unit());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void grid(JsonGenerator json, String name, Optional<Grid> grid) throws IOException {
        if (grid.isEmpty()) {
            json.writeNullField(name);
            return;
        }
        json.writeObjectFieldStart(name);
        Json.strings(json, "heads", grid.get().heads());
        json.writeArrayFieldStart("rows");
        for (List<String> row : grid.get().rows()) {
            json.writeStartArray();
            for (String cell : row) {
                json.writeString(cell);
            }
            json.writeEndArray();
        }
        json.writeEndArray();
        json.writeEndObject();
    }
}
