package coilwright.lesson;

import java.util.ArrayList;
import java.util.List;

/** Sets exercises. The same seed, grade, kind and number give the same exercise on every machine. */
public final class Lesson {
    /** Easiest grade. */
    public static final int FIRST_GRADE = 1;

    /** Hardest grade. */
    public static final int LAST_GRADE = 3;

    /** Most exercises of a kind that one lesson holds. */
    public static final int MOST = 1000;

    private Lesson() {}

    /**
     * So many exercises of each kind, kind by kind.
     *
     * @param seed any number
     * @param grade 1 to 3
     * @param kinds each at most once
     * @param count of each kind, 1 to {@value #MOST}
     * @return the exercises, in order of kind and number
     * @throws IllegalArgumentException when a number is out of range
     */
    public static List<Exercise> exercises(long seed, int grade, List<Kind> kinds, int count) {
        if (count < 1 || count > MOST) {
            throw new IllegalArgumentException(
                    "count is " + count + ", but must be from 1 to " + MOST + " exercises of a kind");
        }
        List<Exercise> out = new ArrayList<>();
        for (Kind kind : kinds.stream().distinct().toList()) {
            for (int number = 1; number <= count; number++) {
                out.add(exercise(seed, grade, kind, number));
            }
        }
        return List.copyOf(out);
    }

    /**
     * {@return one exercise}
     *
     * @param seed any number
     * @param grade 1 to 3
     * @param kind of which kind
     * @param number 1 and up: which exercise of its kind
     * @throws IllegalArgumentException when a number is out of range
     */
    public static Exercise exercise(long seed, int grade, Kind kind, int number) {
        if (grade < FIRST_GRADE || grade > LAST_GRADE) {
            throw new IllegalArgumentException(
                    "grade is " + grade + ", but must be from " + FIRST_GRADE + " (easy) to " + LAST_GRADE + " (hard)");
        }
        if (number < 1) {
            throw new IllegalArgumentException("exercise " + number + " was asked for, but they count from 1");
        }
        Dice dice = Dice.of(seed, grade, kind, number);
        return switch (kind) {
            case PITCHES -> PitchesExercise.make(dice, grade);
            case TABLE -> TableExercise.make(dice, grade);
            case FEASIBLE -> FeasibleExercise.make(dice, grade);
            case LIST_ERROR -> ListErrorExercise.make(dice, grade);
            case READINGS -> ReadingsExercise.make(dice, grade);
            case FAULT -> FaultExercise.make(dice, grade);
            case PLACES -> PlacesExercise.make(dice, grade);
            case WIRE -> WireExercise.make(dice, grade);
        };
    }
}
