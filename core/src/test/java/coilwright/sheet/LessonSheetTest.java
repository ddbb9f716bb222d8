package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.drawing.Shape;
import coilwright.drawing.SvgWriter;
import coilwright.lesson.Exercise;
import coilwright.lesson.Kind;
import coilwright.lesson.Lesson;
import coilwright.lesson.Walk;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LessonSheetTest {
    /** 6 pt, the least that any page of this library holds. */
    private static final double LEAST_TEXT = 2.11;

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void nothingOverlapsOrLeavesItsPage(int grade) {
        for (long seed = 1; seed <= 4; seed++) {
            List<Exercise> exercises = Lesson.exercises(seed, grade, List.of(Kind.values()), 1);
            DrawingPages questions = LessonSheet.questions(seed, exercises, Palette.COLOUR);
            DrawingPages key = LessonSheet.key(seed, exercises, Palette.COLOUR);
            for (Drawing page : questions.pages()) {
                sound(page, "questions of seed " + seed);
            }
            for (Drawing page : key.pages()) {
                sound(page, "key of seed " + seed);
            }
            for (int i = 0; i < exercises.size(); i++) {
                String heading = (i + 1) + ". " + exercises.get(i).kind().title();
                assertThat(words(questions)).contains(heading);
                assertThat(words(key)).contains(heading);
            }
        }
    }

    @Test
    void theWalkHoldsEveryChapterWithItsDrawings() {
        DrawingPages pages = LessonSheet.walk(Walk.chapters(), Palette.COLOUR);
        pages.pages().forEach(p -> sound(p, "walk"));
        assertThat(Walk.chapters()).hasSize(12);
        for (int i = 0; i < 12; i++) {
            assertThat(words(pages))
                    .contains((i + 1) + ". " + Walk.chapters().get(i).title());
        }
    }

    @Test
    void theKeyHoldsEveryAnswerAndTheQuestionsNone() {
        List<Exercise> exercises = Lesson.exercises(11, 2, List.of(Kind.WIRE, Kind.FAULT, Kind.PLACES), 2);
        List<String> questions = words(LessonSheet.questions(11, exercises, Palette.COLOUR));
        String key = String.join(" ", words(LessonSheet.key(11, exercises, Palette.COLOUR)));
        for (Exercise e : exercises) {
            e.answers().forEach(a -> assertThat(key).contains(a.printed()));
            e.asked().forEach(a -> assertThat(questions).contains(a));
            if (e.kind() == Kind.WIRE) {
                e.answers().forEach(a -> assertThat(questions).noneMatch(w -> w.equals(a.printed())));
            }
        }
    }

    @Test
    void theSameExercisesGiveTheSameBytes() {
        List<Exercise> exercises = Lesson.exercises(5, 1, List.of(Kind.READINGS), 1);
        Drawing first = LessonSheet.questions(5, exercises, Palette.COLOUR).first();
        Drawing again = LessonSheet.questions(5, Lesson.exercises(5, 1, List.of(Kind.READINGS), 1), Palette.COLOUR)
                .first();
        assertThat(SvgWriter.write(again)).isEqualTo(SvgWriter.write(first));
    }

    private static List<String> words(DrawingPages pages) {
        return pages.pages().stream()
                .flatMap(p -> p.texts().stream())
                .map(Shape.Text::text)
                .collect(Collectors.toList());
    }

    private static void sound(Drawing page, String which) {
        assertThat(page.overlappingTexts())
                .as(which + ", " + page.description())
                .isEmpty();
        assertThat(page.outsidePage()).as(which).isEmpty();
        assertThat(page.texts()).as(which + ", " + page.description()).allMatch(t -> t.size() > LEAST_TEXT);
    }
}
