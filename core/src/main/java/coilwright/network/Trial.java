package coilwright.network;

import java.util.ArrayList;
import java.util.List;

/**
 * Tries changes on a network and gives the {@linkplain PreparedReadings prepared readings} under them. Meant to be used
 * over and over: {@link #clear()}, then the changes, then {@link #read}. Reuses its memory; not for use by several
 * threads at once.
 *
 * <p>A branch named twice takes the later values. Numbers are those of the unchanged network.
 */
public final class Trial {
    private final PreparedReadings prepared;
    private final Factorisation base;
    private final Perturbation changed;
    private final double[] values;
    private boolean refactorised;

    Trial(PreparedReadings prepared) {
        this.prepared = prepared;
        this.base = prepared.base();
        this.changed = new Perturbation(base);
        this.values = new double[prepared.place.length];
    }

    /**
     * Takes all changes back.
     *
     * @return this trial
     */
    public Trial clear() {
        changed.clear();
        return this;
    }

    /**
     * Gives a branch another resistance and source.
     *
     * @param branch number of the branch
     * @param ohms its resistance: zero for a link, infinity for an open branch
     * @param volts its source
     * @return this trial
     * @throws IllegalArgumentException if there is no such branch or a value is out of range
     */
    public Trial alter(int branch, double ohms, double volts) {
        base.network().checkBranch(branch);
        Branch old = base.branch(branch);
        changed.alter(branch, new Branch(old.from(), old.to(), ohms, volts));
        return this;
    }

    /**
     * Gives a branch another resistance; its source stays.
     *
     * @param branch number of the branch
     * @param ohms zero for a link, infinity for an open branch
     * @return this trial
     * @throws IllegalArgumentException if there is no such branch or a value is out of range
     */
    public Trial resistance(int branch, double ohms) {
        base.network().checkBranch(branch);
        changed.alter(branch, changed.now(branch).withResistance(ohms));
        return this;
    }

    /**
     * Gives a branch another source; its resistance stays.
     *
     * @param branch number of the branch
     * @param volts driving from its {@code from} to its {@code to}
     * @return this trial
     * @throws IllegalArgumentException if there is no such branch or a value is out of range
     */
    public Trial emf(int branch, double volts) {
        base.network().checkBranch(branch);
        changed.alter(branch, changed.now(branch).withEmf(volts));
        return this;
    }

    /**
     * Opens a branch.
     *
     * @param branch number of the branch
     * @return this trial
     * @throws IllegalArgumentException if there is no such branch
     */
    public Trial remove(int branch) {
        return resistance(branch, Double.POSITIVE_INFINITY);
    }

    /**
     * Adds a resistance between two nodes.
     *
     * @param from node at one end
     * @param to node at the other end
     * @param ohms its resistance; zero for a link
     * @return this trial
     * @throws IllegalArgumentException if a node is not there or the resistance is out of range
     */
    public Trial add(int from, int to, double ohms) {
        return add(from, to, ohms, 0);
    }

    /**
     * Adds a resistance with a source between two nodes.
     *
     * @param from node at one end
     * @param to node at the other end
     * @param ohms its resistance; zero for a link
     * @param volts its source, driving from {@code from} to {@code to}
     * @return this trial
     * @throws IllegalArgumentException if a node is not there or a value is out of range
     */
    public Trial add(int from, int to, double ohms, double volts) {
        base.network().checkNode(from);
        base.network().checkNode(to);
        changed.add(new Branch(from, to, ohms, volts));
        return this;
    }

    /**
     * Writes the readings under the changes made since {@link #clear()}.
     *
     * @param out takes one value for each prepared reading, in volts; NaN where the meter's two nodes float with regard
     *     to one another and where no voltages satisfy the feeds
     * @throws IllegalArgumentException if {@code out} is too short
     */
    public void read(double[] out) {
        int[] place = prepared.place;
        if (out.length < place.length) {
            throw new IllegalArgumentException(
                    "room for " + out.length + " values: the " + place.length + " readings need as many");
        }
        refactorised = false;
        Factorisation anew = null;
        for (int set = 0; set < prepared.fed.length; set++) {
            Fed fed = prepared.fed[set];
            int first = prepared.start[set];
            int end = prepared.start[set + 1];
            if (anew == null) {
                Perturbation.Outcome outcome = changed.solve(fed, true);
                if (outcome == Perturbation.Outcome.UNSOLVABLE) {
                    fail(first, end, out);
                    continue;
                }
                if (outcome == Perturbation.Outcome.SOLVED && update(set, out)) {
                    continue;
                }
                anew = base.network().with(changes()).factorised();
                refactorised = true;
            }
            afresh(anew, fed, first, end, out);
        }
    }

    /** {@return whether the last {@link #read} had to factorise the changed network} */
    public boolean refactorised() {
        return refactorised;
    }

    /** {@return the changes made since {@link #clear()}} */
    public List<Change> changes() {
        List<Change> changes = new ArrayList<>();
        for (int i = 0; i < changed.alteredCount(); i++) {
            int branch = changed.altered(i);
            Branch to = changed.alteredTo(i);
            if (to.emf() == 0) {
                changes.add(Change.emf(branch, 0));
                changes.add(Change.resistance(branch, to.resistance()));
            } else {
                changes.add(Change.resistance(branch, to.resistance()));
                changes.add(Change.emf(branch, to.emf()));
            }
        }
        for (int i = 0; i < changed.addedCount(); i++) {
            changes.add(new Change.Addition(changed.added(i)));
        }
        return changes;
    }

    /** Writes the readings of one feed set; says false where their digits are in doubt. */
    private boolean update(int set, double[] out) {
        return changed.partsUnchanged() ? updateInPlace(set, out) : updateApart(set, out);
    }

    private boolean updateInPlace(int set, double[] out) {
        Fed fed = prepared.fed[set];
        int first = prepared.start[set];
        int end = prepared.start[set + 1];
        System.arraycopy(prepared.unchanged, first, values, first, end - first);
        double effort = prepared.unchangedMost[set];
        for (int k = 0; k < changed.terms(fed); k++) {
            PreparedReadings.Response response = prepared.response(changed.termBranch(k), changed.termColumn(k));
            double current = changed.termCurrent(k);
            double[] volts = response.volts;
            for (int i = first; i < end; i++) {
                values[i] -= current * volts[i];
            }
            effort += Math.abs(current) * response.most[set];
        }
        if (changed.linksAdded()) {
            for (int i = first; i < end; i++) {
                if (changed.standsFor(prepared.p[i]) == changed.standsFor(prepared.q[i])) {
                    values[i] = 0;
                }
            }
        }
        boolean kept = false;
        boolean allFloat = true;
        for (int i = first; i < end && !kept; i++) {
            if (!Double.isNaN(values[i])) {
                kept = !changed.inDoubt(effort, values[i]);
                allFloat = false;
            }
        }
        for (int i = first; i < end; i++) {
            out[prepared.place[i]] = values[i];
        }
        return kept || allFloat;
    }

    private boolean updateApart(int set, double[] out) {
        Fed fed = prepared.fed[set];
        double most = 0;
        double effort = 0;
        for (int i = prepared.start[set]; i < prepared.start[set + 1]; i++) {
            int p = prepared.p[i];
            int q = prepared.q[i];
            double value;
            if (!changed.together(p, q)) {
                value = Double.NaN;
            } else if (changed.standsFor(p) == changed.standsFor(q)) {
                value = 0;
            } else {
                value = changed.difference(fed, p, q);
                most = Math.max(most, Math.abs(value));
                effort = Math.max(effort, changed.effort(fed, p, q));
            }
            out[prepared.place[i]] = value;
        }
        return !changed.inDoubt(effort, most);
    }

    private void afresh(Factorisation anew, Fed fed, int first, int end, double[] out) {
        Fed again = new Fed(anew, fed.feeds, true);
        Perturbation none = new Perturbation(anew);
        if (none.solve(again, false) != Perturbation.Outcome.SOLVED) {
            fail(first, end, out);
            return;
        }
        for (int i = first; i < end; i++) {
            Reading reading = prepared.readings().get(prepared.place[i]);
            int p = anew.joined(reading.from());
            int q = anew.joined(reading.to());
            out[prepared.place[i]] = none.together(p, q) ? none.difference(again, p, q) : Double.NaN;
        }
    }

    private void fail(int first, int end, double[] out) {
        for (int i = first; i < end; i++) {
            out[prepared.place[i]] = Double.NaN;
        }
    }
}
