package coilwright.bench;

import java.util.List;

/**
 * How a test is done.
 *
 * @param title name of the test
 * @param setUp what to connect and place, in order
 * @param cautions what can hurt someone or mislead
 * @param steps what to do, in order
 * @param meaning what a deviation means, one line each
 */
public record Procedure(
        String title, List<String> setUp, List<String> cautions, List<String> steps, List<String> meaning) {
    /**
     * Copies the lists.
     *
     * @param title name of the test
     * @param setUp what to connect and place, in order
     * @param cautions what can hurt someone or mislead
     * @param steps what to do, in order
     * @param meaning what a deviation means, one line each
     */
    public Procedure {
        setUp = List.copyOf(setUp);
        cautions = List.copyOf(cautions);
        steps = List.copyOf(steps);
        meaning = List.copyOf(meaning);
    }
}
