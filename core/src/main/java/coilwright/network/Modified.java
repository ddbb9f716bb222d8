package coilwright.network;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A factorised network with a few changes, solved by a low-rank update of the factor's results.
 *
 * <p>Where the update would lose digits (a change that leaves a far weaker tie in place of a strong one), and where a
 * link is taken out of a place that it alone holds together, the changed network is factorised anew without being
 * asked. Changes that part the network or join parts need no such step and are exact.
 */
public final class Modified {
    private final Factorisation base;
    private final Network network;
    private final List<Change> changes;
    private volatile Factorisation anew;

    Modified(Factorisation base, List<Change> changes) {
        this.base = base;
        this.changes = List.copyOf(changes);
        this.network = base.network().with(this.changes);
    }

    /** {@return the changed network} */
    public Network network() {
        return network;
    }

    /** {@return whether a question so far had to be answered by a new factorisation} */
    public boolean refactorised() {
        return anew != null;
    }

    /**
     * {@return voltages and currents under some feeds together with the network's own sources}
     *
     * @param feeds currents and voltages fed, none for the sources alone
     * @throws IllegalArgumentException if a feed names a node that is not there
     * @throws UnsolvableNetworkException if no voltages satisfy the feeds
     */
    public Solution solve(Feed... feeds) {
        return solve(List.of(feeds));
    }

    /**
     * {@return voltages and currents under some feeds together with the network's own sources}
     *
     * @param feeds currents and voltages fed, none for the sources alone
     * @throws IllegalArgumentException if a feed names a node that is not there
     * @throws UnsolvableNetworkException if no voltages satisfy the feeds
     */
    public Solution solve(List<Feed> feeds) {
        Fed fed = new Fed(base, feeds, true);
        Optional<Perturbation> update = update(fed);
        return update.isPresent() ? update.get().solution(network, fed) : anew().solve(feeds);
    }

    /**
     * {@return resistance between two nodes in ohms, the sources at rest; empty when nothing joins the two}
     *
     * @param a number of one node
     * @param b number of the other node
     * @throws IllegalArgumentException if a node is not there
     */
    public OptionalDouble resistance(int a, int b) {
        int p = base.joined(a);
        int q = base.joined(b);
        Perturbation changed = perturbation();
        // The feed-free case says which nodes hang together before a current is sent between them.
        if (changed.solve(new Fed(base, List.of(), false), true) != Perturbation.Outcome.SOLVED) {
            return anew().resistance(a, b);
        }
        if (!changed.together(p, q)) {
            return OptionalDouble.empty();
        }
        if (changed.standsFor(p) == changed.standsFor(q)) {
            return OptionalDouble.of(0);
        }
        Fed fed = new Fed(base, List.of(Feed.current(a, b, 1)), false);
        if (changed.solve(fed, true) != Perturbation.Outcome.SOLVED
                || changed.inDoubt(changed.effort(fed, p, q), changed.difference(fed, p, q))) {
            return anew().resistance(a, b);
        }
        return OptionalDouble.of(changed.difference(fed, p, q));
    }

    private Optional<Perturbation> update(Fed fed) {
        if (anew != null) {
            return Optional.empty();
        }
        Perturbation changed = perturbation();
        Perturbation.Outcome outcome = changed.solve(fed, true);
        if (outcome == Perturbation.Outcome.UNSOLVABLE) {
            throw new UnsolvableNetworkException(changed.trouble());
        }
        return outcome == Perturbation.Outcome.SOLVED && !changed.inDoubt(fed)
                ? Optional.of(changed)
                : Optional.empty();
    }

    private Perturbation perturbation() {
        Perturbation changed = new Perturbation(base);
        int old = base.branchCount();
        for (Change change : changes) {
            int branch = -1;
            if (change instanceof Change.Resistance to) {
                branch = to.branch();
            } else if (change instanceof Change.Emf to) {
                branch = to.branch();
            }
            if (branch >= 0 && branch < old) {
                changed.alter(branch, network.branch(branch));
            }
        }
        for (int e = old; e < network.branchCount(); e++) {
            changed.add(network.branch(e));
        }
        return changed;
    }

    private Factorisation anew() {
        Factorisation known = anew;
        if (known == null) {
            known = network.factorised();
            anew = known;
        }
        return known;
    }
}
