package coilwright.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.KeptText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * A key printed today must fit the sheet printed last year: the first exercises of a seed, frozen. Where a change of how
 * exercises are set is meant, {@link #main} writes the file anew.
 */
class SetExercisesTest {
    private static final String FILE = "/coilwright/lesson/set-by-seed-7.txt";
    private static final int MANY = 4;

    private static List<String> set() {
        List<String> out = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            for (int grade = Lesson.FIRST_GRADE; grade <= Lesson.LAST_GRADE; grade++) {
                for (int number = 1; number <= MANY; number++) {
                    out.add(line(Lesson.exercise(7, grade, kind, number), number));
                }
            }
        }
        return out;
    }

    private static String line(Exercise e, int number) {
        return e.kind().word() + " " + e.grade() + "." + number + " | "
                + e.question().get(0) + " | "
                + e.answers().stream().map(Answer::value).collect(Collectors.joining(" "));
    }

    @Test
    void theExercisesOfASeedStayAsTheyAre() {
        assertThat(set()).containsExactlyElementsOf(KeptText.lines(SetExercisesTest.class, FILE));
    }

    /** Writes the file into a folder. */
    public static void main(String[] args) throws IOException {
        Files.write(Path.of(args[0], FILE), set());
    }
}
