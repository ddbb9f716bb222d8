package coilwright.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every sum printed in a working comes out, and the working ends in the answers. */
class WorkingsTest {
    private static final int MANY = 12;

    @Test
    void sumsAreReadAsPrinted() {
        assertThat(Sums.value("2 × (3 − 1)²/4 + −1")).contains(1.0);
        assertThat(Sums.value("π × 10/cos 60°").orElseThrow())
                .isCloseTo(62.83, org.assertj.core.api.Assertions.within(0.01));
        assertThat(Sums.value("2 layers × 3 coil sides × 17 turns")).contains(102.0);
        assertThat(Sums.value("2 ×")).isEmpty();
        List<Sums.Sum> sums = Sums.in("brush 1 at 0° − 4.5° + 360° = 355.5°, brush 2 at 90° − 4.5° = 85.5°");
        assertThat(sums).hasSize(2).allMatch(s -> s.right(1e-9));
        assertThat(Sums.in("length: 17 × 570 mm = 9.69 m")).singleElement().matches(s -> s.right(1e-9));
        assertThat(Sums.in("length: 17 × 570 mm = 96.9 m")).singleElement().matches(s -> !s.right(1e-3));
        assertThat(Sums.in("1 × 200 × (−2.2727) = −454.5 mV")).singleElement().matches(s -> s.right(1e-4));
        assertThat(Sums.in("coil throw: pole pitch rounded down = 3 slots")).isEmpty();
    }

    /** Fewest sums in the working of one exercise. */
    private static final Map<Kind, Integer> FEWEST = Map.of(
            Kind.PITCHES, 6,
            Kind.TABLE, 2,
            Kind.FEASIBLE, 1,
            Kind.LIST_ERROR, 0,
            Kind.READINGS, 0,
            Kind.FAULT, 0,
            Kind.PLACES, 5,
            Kind.WIRE, 3);

    @ParameterizedTest
    @EnumSource(Kind.class)
    void everySumComesOut(Kind kind) {
        for (int grade = 1; grade <= 3; grade++) {
            for (int n = 1; n <= MANY; n++) {
                Exercise e = Lesson.exercise(77, grade, kind, n);
                int sums = 0;
                for (String step : e.steps()) {
                    for (Sums.Sum s : Sums.in(step)) {
                        sums++;
                        // Numbers carried on stand with five figures.
                        assertThat(s.right(2e-4)).as("%s in: %s", s, step).isTrue();
                    }
                }
                assertThat(sums).as(e.toString()).isGreaterThanOrEqualTo(FEWEST.get(kind));
            }
        }
    }

    @Test
    void readingsAreWhatTheirWorkingEndsIn() {
        for (int grade = 1; grade <= 3; grade++) {
            for (int n = 1; n <= MANY; n++) {
                var e = (ReadingsExercise) Lesson.exercise(78, grade, Kind.READINGS, n);
                List<String> steps = e.steps();
                for (int i = 0; i < e.pairs().size(); i++) {
                    String step = steps.get(steps.size() - e.pairs().size() + i);
                    assertThat(step)
                            .startsWith("bars " + e.pairs().get(i).from() + " and "
                                    + e.pairs().get(i).to() + ": ")
                            .endsWith(e.answers().get(i).printed());
                }
            }
        }
    }

    @Test
    void wiresAreWorkedOutToTheirAnswers() {
        for (int grade = 1; grade <= 3; grade++) {
            for (int n = 1; n <= MANY; n++) {
                Exercise e = Lesson.exercise(79, grade, Kind.WIRE, n);
                String all = String.join("\n", e.steps());
                for (Answer a : e.answers()) {
                    // The answer is a number of the working, rounded to three figures.
                    double value = Double.parseDouble(a.value());
                    boolean found = java.util.regex.Pattern.compile("([\\d.]+) (m?)" + a.unit())
                            .matcher(all)
                            .results()
                            .mapToDouble(m ->
                                    Double.parseDouble(m.group(1)) / (m.group(2).isEmpty() ? 1 : 1000))
                            .anyMatch(x -> Math.abs(x - value) <= 0.0051 * value);
                    assertThat(found).as("%s in:\n%s", a, all).isTrue();
                }
            }
        }
    }
}
