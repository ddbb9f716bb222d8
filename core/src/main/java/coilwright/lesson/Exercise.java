package coilwright.lesson;

import coilwright.drawing.Drawing;
import java.util.List;
import java.util.Optional;

/** One exercise: what is asked, the one right answer, and how it is come by. */
public sealed interface Exercise
        permits PitchesExercise,
                TableExercise,
                FeasibleExercise,
                ListErrorExercise,
                ReadingsExercise,
                FaultExercise,
                PlacesExercise,
                WireExercise {
    /** {@return its kind} */
    Kind kind();

    /** {@return how hard it is, 1 to 3} */
    int grade();

    /** {@return what is given and asked, paragraph by paragraph} */
    List<String> question();

    /** {@return the answers in the order asked for, at least one} */
    List<Answer> answers();

    /** {@return what is to be written down, line by line, in words that give nothing away} */
    default List<String> asked() {
        return answers().stream()
                .map(a -> a.unit().isEmpty() ? a.what() : a.what() + ", " + a.unit())
                .toList();
    }

    /** {@return how the answers are come by, step by step, with the numbers of this exercise} */
    List<String> steps();

    /** {@return a table that goes with the question, with empty cells to fill in or none} */
    default Optional<Grid> table() {
        return Optional.empty();
    }

    /** {@return the same table filled in; empty where the question has none to fill in} */
    default Optional<Grid> filledTable() {
        return Optional.empty();
    }

    /** {@return a picture that goes with the question} */
    default Optional<Drawing> picture() {
        return Optional.empty();
    }

    /** {@return a picture that goes with the answer} */
    default Optional<Drawing> keyPicture() {
        return Optional.empty();
    }
}
