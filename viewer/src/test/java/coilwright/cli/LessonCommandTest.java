package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.lesson.Kind;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LessonCommandTest {
    @TempDir
    private Path temp;

    @Test
    void questionsHoldNoAnswersUntilTheKeyIsAskedFor() {
        Run questions = Run.of("lesson", "--seed", "3", "--kind", "pitches");
        assertThat(questions.code()).isZero();
        assertThat(questions.err()).isEmpty();
        assertThat(questions.out())
                .startsWith("Exercises of grade 1, seed 3\n\n1. Pitches\n")
                .doesNotContain("Answers")
                .doesNotContain("Working")
                .endsWith("--key shows the answers and how they are come by.\n");
        Run key = Run.of("lesson", "--seed", "3", "--kind", "pitches", "--key");
        assertThat(key.out()).contains("  Working\n").contains("  Answers\n").contains("    commutator pitch");
        assertThat(Run.of("lesson", "--seed", "3", "--kind", "pitches", "--key"))
                .isEqualTo(key);
    }

    @Test
    void jsonHoldsQuestionsAndWithTheKeyAnswers() throws IOException {
        Run run = Run.of("lesson", "--seed", "5", "--grade", "2", "--count", "2", "--format", "json", "--key");
        assertThat(run.code()).isZero();
        JsonNode json = new ObjectMapper().readTree(run.out());
        assertThat(TableCommandTest.keys(json)).containsExactly("seed", "grade", "exercises");
        assertThat(json.get("exercises")).hasSize(2 * Kind.values().length).allSatisfy(e -> {
            assertThat(TableCommandTest.keys(e))
                    .containsExactly("number", "kind", "question", "table", "asked", "answers", "filledTable", "steps");
            assertThat(e.get("answers")).isNotEmpty();
        });
        JsonNode without = new ObjectMapper()
                .readTree(Run.of("lesson", "--seed", "5", "--grade", "2", "--count", "2", "--format", "json")
                        .out());
        assertThat(without.get("exercises"))
                .allSatisfy(e -> assertThat(TableCommandTest.keys(e))
                        .containsExactly("number", "kind", "question", "table", "asked"));
    }

    @Test
    void csvIsToBeFilledInOrTheKey() {
        Run blank = Run.of("lesson", "--kind", "wire", "--format", "csv");
        assertThat(blank.out())
                .isEqualTo("exercise,kind,what,value,unit\n"
                        + "1,wire,\"copper area of one turn, mm²\",,\n"
                        + "1,wire,\"length of one coil, m\",,\n"
                        + "1,wire,\"resistance of one coil at 20 °C, "
                        + (blank.out().contains("mΩ") ? "mΩ" : "Ω") + "\",,\n");
        Run key = Run.of("lesson", "--kind", "wire", "--format", "csv", "--key");
        assertThat(key.out().lines().skip(1)).hasSize(3).allMatch(l -> l.matches("1,wire,[^,]+,[0-9.]+,\\S+"));
    }

    @Test
    void kindsCanBeNamedOftenAndAllTakesEach() {
        Run two = Run.of("lesson", "--kind", "table", "--kind", "places", "--count", "2");
        assertThat(two.out())
                .contains("\n1. Winding table\n")
                .contains("\n4. Brushes and equalizers\n")
                .doesNotContain("\n5. ");
        assertThat(Run.of("lesson", "--kind", "all").out())
                .isEqualTo(Run.of("lesson").out());
        Arrays.stream(Kind.values())
                .forEach(k -> assertThat(Run.of("lesson").out()).contains(". " + k.title() + "\n"));
    }

    @Test
    void sheetsAreWrittenAndNothingPrinted() throws IOException {
        Path sheet = temp.resolve("sheet.svg");
        Path key = temp.resolve("key.pdf");
        Run run = Run.of("lesson", "--kind", "feasible", "--sheet", sheet.toString(), "--key-sheet", key.toString());
        assertThat(run).isEqualTo(new Run(0, "", ""));
        assertThat(Files.readString(sheet))
                .startsWith("<?xml")
                .contains("Can it be wound?")
                .contains("Working");
        assertThat(Files.readAllBytes(key)).startsWith("%PDF-".getBytes(StandardCharsets.US_ASCII));
    }

    @Test
    void theWalkIsTextJsonOrPages() throws IOException {
        Run text = Run.of("lesson", "--walk");
        assertThat(text.code()).isZero();
        assertThat(text.out()).contains("\n1. What a coil is\n").contains("\n12. The growler\n  Caution: ");
        JsonNode json = new ObjectMapper()
                .readTree(Run.of("lesson", "--walk", "--format", "json").out());
        assertThat(json.get("chapters")).hasSize(12);
        Path pages = temp.resolve("walk.svg");
        assertThat(Run.of("lesson", "--walk", "--sheet", pages.toString())).isEqualTo(new Run(0, "", ""));
        assertThat(Files.readString(temp.resolve("walk-1.svg"))).contains("What a coil is");
    }

    @Test
    void wrongWishesAreRefusedWithTheWayOut() {
        refused("there is no kind of exercise \"riddle\": the kinds are pitches,", "--kind", "riddle");
        refused("grade is 4, but must be from 1 (easy) to 3 (hard)", "--grade", "4");
        refused("count is 0, but must be from 1 to 1000", "--count", "0");
        refused("is \"x\", but must be a whole number", "--seed", "x");
        refused("--walk goes with --sheet, --out and --format alone", "--walk", "--seed", "4");
        refused("--walk has no table: ask for --format text or json", "--walk", "--format", "csv");
        refused("name a file of its own for each", "--sheet", "a.pdf", "--key-sheet", "a.pdf");
        refused("does not end in a format", "--kind", "wire", "--sheet", "a.doc");
        refused("name a file with --key-sheet", "--kind", "wire", "--sheet", "a.pdf", "--key");
    }

    private static void refused(String reason, String... args) {
        String[] all = new String[args.length + 1];
        all[0] = "lesson";
        System.arraycopy(args, 0, all, 1, args.length);
        Run run = Run.of(all);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).startsWith("coilwright: ").contains(reason);
    }
}
