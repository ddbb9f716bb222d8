package coilwright.fault;

import java.util.List;

/**
 * Two bars with the faults of the main kinds that act between them.
 *
 * @param from bar
 * @param to bar
 * @param modes the faults by what they do to the voltage in a coil
 */
record Place(int from, int to, List<Mode> modes) {
    /**
     * Faults that change the conductance between two bars alike.
     *
     * @param coil number of the coil whose voltage comes through as its conductance does, as with a break or a bad
     *     joint; 0 where it pushes the same current as before, as with a short
     * @param candidates the faults
     */
    record Mode(int coil, List<Candidate> candidates) {
        /** The likeliest of them before any reading. */
        double prior() {
            return candidates.stream().mapToDouble(Candidate::prior).max().orElse(0);
        }
    }
}
