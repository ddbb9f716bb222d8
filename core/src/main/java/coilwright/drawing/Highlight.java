package coilwright.drawing;

import java.util.Collections;
import java.util.Set;
import java.util.TreeSet;

/**
 * What to draw with heavy lines. Numbers that do not occur do nothing.
 *
 * @param coils numbers of coils
 * @param bars numbers of bars
 * @param slots numbers of slots
 */
public record Highlight(Set<Integer> coils, Set<Integer> bars, Set<Integer> slots) {
    private static final Highlight NONE = new Highlight(Set.of(), Set.of(), Set.of());

    /**
     * Copies the sets.
     *
     * @param coils numbers of coils
     * @param bars numbers of bars
     * @param slots numbers of slots
     */
    public Highlight {
        coils = Collections.unmodifiableSet(new TreeSet<>(coils));
        bars = Collections.unmodifiableSet(new TreeSet<>(bars));
        slots = Collections.unmodifiableSet(new TreeSet<>(slots));
    }

    /** {@return no highlight: everything is drawn alike} */
    public static Highlight none() {
        return NONE;
    }

    /**
     * {@return a highlight of some coils}
     *
     * @param numbers of the coils, from 1
     */
    public static Highlight ofCoils(Integer... numbers) {
        return new Highlight(Set.of(numbers), Set.of(), Set.of());
    }
}
