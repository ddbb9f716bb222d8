package coilwright.lesson;

import coilwright.drawing.Drawing;
import java.util.List;
import java.util.Optional;

/**
 * One rule of the walk, explained on one small armature.
 *
 * @param title the rule
 * @param cautions to be read before the test it tells of is done; empty where none is
 * @param steps in order, at least one
 */
public record Chapter(String title, List<String> cautions, List<Step> steps) {
    /**
     * Copies the lists.
     *
     * @param title the rule
     * @param cautions to be read before the test it tells of is done; empty where none is
     * @param steps in order, at least one
     */
    public Chapter {
        cautions = List.copyOf(cautions);
        steps = List.copyOf(steps);
    }

    /**
     * One step.
     *
     * @param words with the numbers of the armature
     * @param drawing what it looks like
     */
    public record Step(String words, Optional<Drawing> drawing) {}
}
