package coilwright.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.drawing.Drawing;
import coilwright.fault.Fault;
import coilwright.job.FaultText;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class LessonTest {
    @Property(tries = 30)
    void theSameSeedGivesTheSameExercises(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 3) int grade, @ForAll Kind kind) {
        assertThat(Lesson.exercise(seed, grade, kind, 2)).isEqualTo(Lesson.exercise(seed, grade, kind, 2));
    }

    /** An exercise does not depend on how many are asked for, nor on the other kinds. */
    @Test
    void anExerciseStandsByItself() {
        List<Exercise> alone = Lesson.exercises(9, 2, List.of(Kind.PITCHES), 2);
        List<Exercise> among = Lesson.exercises(9, 2, List.of(Kind.TABLE, Kind.PITCHES), 4);
        assertThat(among).hasSize(8).containsSubsequence(alone);
        assertThat(alone.get(0)).isNotEqualTo(alone.get(1));
        assertThat(Lesson.exercises(9, 2, List.of(Kind.PITCHES, Kind.PITCHES), 1))
                .hasSize(1);
    }

    /** Frozen: another machine, or a later version, must set the same exercises for a seed. */
    @Test
    void chanceIsTheSameEverywhere() {
        Dice dice = Dice.of(42, 2, Kind.FAULT, 3);
        List<Integer> rolled = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            rolled.add(dice.from(1, 100));
        }
        assertThat(rolled).isEqualTo(FROZEN_ROLLS);
        assertThat(Lesson.exercise(1, 1, Kind.PITCHES, 1).question().get(0)).isEqualTo(FROZEN_QUESTION);
    }

    private static final List<Integer> FROZEN_ROLLS = List.of(85, 61, 10, 10, 50, 20, 12, 22);
    private static final String FROZEN_QUESTION = "Given: 7 slots, 7 bars, 2 poles; simplex lap winding, progressive;"
            + " coil throw the pole pitch, rounded down to whole slots; slot 1 in line with bar 1.";

    @Test
    void badNumbersAreRefusedWithTheRange() {
        assertThatThrownBy(() -> Lesson.exercises(1, 4, List.of(Kind.WIRE), 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("grade is 4, but must be from 1 (easy) to 3 (hard)");
        assertThatThrownBy(() -> Lesson.exercises(1, 1, List.of(Kind.WIRE), 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("count is 0, but must be from 1 to 1000 exercises of a kind");
        assertThatThrownBy(() -> Lesson.exercise(1, 1, Kind.WIRE, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Kind.named("riddle"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("there is no kind of exercise \"riddle\": the kinds are pitches, table,");
    }

    @ParameterizedTest
    @EnumSource(Kind.class)
    void kindsAreFoundByTheirWords(Kind kind) {
        assertThat(Kind.named(kind.word())).isEqualTo(kind);
        assertThat(kind.word()).matches("[a-z-]+");
    }

    /** Harder grades bring what easier ones leave out. */
    @Test
    void gradesDiffer() {
        for (int n = 1; n <= 60; n++) {
            var easy = (PitchesExercise) Lesson.exercise(3, 1, Kind.PITCHES, n);
            assertThat(easy.spec().plex()).isEqualTo(1);
            assertThat(easy.armature().slots()).isEqualTo(easy.armature().bars());
            assertThat(((FaultExercise) Lesson.exercise(3, 1, Kind.FAULT, n)).faults())
                    .allMatch(f ->
                            List.of("open-coil", "shorted-coil", "bar-short").contains(f.kind()));
        }
        List<PitchesExercise> hard = new ArrayList<>();
        for (int n = 1; n <= 60; n++) {
            hard.add((PitchesExercise) Lesson.exercise(3, 3, Kind.PITCHES, n));
        }
        assertThat(hard).anyMatch(e -> e.spec().plex() > 1);
        assertThat(hard).anyMatch(e -> !e.spec().deadCoils().isEmpty());
        assertThat(hard).anyMatch(e -> e.spec().leadOffset() != 0);
        assertThat(hard)
                .anyMatch(e -> Winding.build(e.armature(), e.spec())
                        .pitches()
                        .orElseThrow()
                        .stepped());
    }

    /** Every case of the questions turns up, so that no kind has always the same answer. */
    @Test
    void questionsVary() {
        List<String> feasible = new ArrayList<>();
        List<String> faults = new ArrayList<>();
        List<String> errors = new ArrayList<>();
        List<String> tests = new ArrayList<>();
        for (int n = 1; n <= 80; n++) {
            feasible.add(
                    Lesson.exercise(4, 2, Kind.FEASIBLE, n).answers().get(0).value());
            faults.add(((FaultExercise) Lesson.exercise(4, 3, Kind.FAULT, n))
                    .faults()
                    .get(0)
                    .kind());
            errors.add(Lesson.exercise(4, 2, Kind.LIST_ERROR, n)
                    .answers()
                    .get(0)
                    .value()
                    .split(":")[0]);
            tests.add(((ReadingsExercise) Lesson.exercise(4, 2, Kind.READINGS, n))
                    .test()
                    .word());
        }
        assertThat(feasible).contains("yes", "no");
        assertThat(faults)
                .contains(
                        "open-coil", "shorted-coil", "bar-short", "shorted-turns", "high-resistance", "crossed-leads");
        assertThat(errors).contains("swapped-leads", "reversed-coil", "wrong-slot", "shifted-bar");
        assertThat(tests).contains("drop", "resistance", "growler");
    }

    /** A fault of the key can be given to a command as it is written. */
    @Test
    void faultsAreWrittenAsCommandsTakeThem() {
        for (int n = 1; n <= 60; n++) {
            var e = (FaultExercise) Lesson.exercise(6, 3, Kind.FAULT, n);
            Winding w = Winding.build(e.armature(), e.spec());
            for (Fault f : e.faults()) {
                Fault read = FaultText.parse(FaultExercise.form(f), w);
                assertThat(read.kind()).isEqualTo(f.kind());
                assertThat(read.coils()).isEqualTo(f.coils());
                assertThat(read.bars()).isEqualTo(f.bars());
            }
        }
    }

    /** What is asked for gives nothing away: it is the same whatever the answer. */
    @Test
    void whatIsAskedGivesNothingAway() {
        for (Kind kind : List.of(Kind.FEASIBLE, Kind.LIST_ERROR, Kind.FAULT)) {
            List<String> asked = Lesson.exercise(1, 2, kind, 1).asked();
            for (int n = 2; n <= 20; n++) {
                assertThat(Lesson.exercise(1, 2, kind, n).asked()).isEqualTo(asked);
            }
        }
    }

    @Test
    void thePictureOfAQuestionShowsNoReading() {
        int growlers = 0;
        for (int n = 1; n <= 30; n++) {
            var e = (ReadingsExercise) Lesson.exercise(8, 2, Kind.READINGS, n);
            growlers += e.test().word().equals("growler") ? 1 : 0;
            assertThat(e.picture().orElseThrow().texts())
                    .noneMatch(t -> t.text().matches("[−-]?\\d+\\.\\d+"));
        }
        assertThat(growlers).isPositive();
    }

    /** Brushes are told as the mean of the coils worked out before it. */
    @Test
    void theMeanOfTheCoilsIsWhereTheBrushesStand() {
        for (int n = 1; n <= 40; n++) {
            var e = (PlacesExercise) Lesson.exercise(2, 3, Kind.PLACES, n);
            List<Double> own = new ArrayList<>();
            for (String step : e.steps()) {
                if (step.startsWith("coil ")) {
                    own.add(degrees(step.replaceFirst(".*that is (\\S+)° from the coil.*", "$1")));
                } else if (step.contains("their mean is")) {
                    double mean = degrees(step.replaceFirst(".*their mean is (\\S+)°.*", "$1"));
                    assertThat(own.stream().mapToDouble(x -> x).average().orElseThrow())
                            .as(e.toString())
                            .isCloseTo(mean, org.assertj.core.api.Assertions.within(0.01));
                }
            }
            assertThat(own).isNotEmpty();
        }
    }

    private static double degrees(String text) {
        return Double.parseDouble(text.replace('−', '-'));
    }

    @Test
    void everyChapterOfTheWalkHasADrawingWithoutOverlaps() {
        List<Chapter> chapters = Walk.chapters();
        for (Chapter c : chapters) {
            assertThat(c.steps()).isNotEmpty().noneMatch(s -> s.words().isBlank());
            List<Drawing> drawings =
                    c.steps().stream().flatMap(s -> s.drawing().stream()).toList();
            assertThat(drawings).as(c.title()).isNotEmpty();
            drawings.forEach(d -> assertThat(d.overlappingTexts()).as(c.title()).isEmpty());
        }
        assertThat(chapters.get(chapters.size() - 1).cautions()).anyMatch(w -> w.contains("mains"));
    }

    /** The numbers of the walk, checked by hand. */
    @Test
    void theWalkTellsTheNumbersOfItsArmatures() {
        String all = Walk.chapters().stream()
                .flatMap(c -> c.steps().stream())
                .map(Chapter.Step::words)
                .reduce("", (a, b) -> a + b + "\n");
        assertThat(all)
                .contains("coil 8 leads from bar 8 through slots 8 and 4 to bar 1")
                .contains("(7 + 1)/2 = 4")
                .contains("coil 5 leads from bar 5 through slots 5 and 6 to bar 2")
                .contains("With pitch 4: bars 1, 5, 2.")
                .contains("With pitch (7 − 1)/2 = 3: bars 1, 4, 7.")
                .contains("(15 + 1)/2 = 8")
                .contains("coils 1, 3, 5, 7 and 9 and closes")
                .contains("bars 1 and 7, marked")
                .contains("+ at 330°, − at 60°, + at 150°, − at 240°")
                .contains("1–2: 1.00, 2–3: 0.50, 3–4: 0.00")
                .contains("hums over slots 3 and 7");
    }
}
