package coilwright.job;

import java.util.List;
import java.util.Optional;

/**
 * What a job file tells of a machine beside its winding; every part may be left out.
 *
 * @param rating nameplate
 * @param wire what the coils were wound with
 * @param core sizes of the core, its slots and a turn
 * @param commutator sizes and run-out
 * @param asFound before stripping
 * @param plan what is to be wound, where it differs
 * @param asRewound what was wound
 * @param notes lines of text
 */
public record Particulars(
        Optional<Rating> rating,
        Optional<WireChoice> wire,
        Optional<CoreSizes> core,
        Optional<CommutatorSizes> commutator,
        Optional<AsFound> asFound,
        Optional<Plan> plan,
        Optional<AsRewound> asRewound,
        List<String> notes) {
    /** Nothing known. */
    public static final Particulars NONE = new Particulars(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of());

    /**
     * Copies the list.
     *
     * @param rating nameplate
     * @param wire what the coils were wound with
     * @param core sizes of the core, its slots and a turn
     * @param commutator sizes and run-out
     * @param asFound before stripping
     * @param plan what is to be wound, where it differs
     * @param asRewound what was wound
     * @param notes lines of text
     */
    public Particulars {
        notes = List.copyOf(notes);
    }

    /**
     * {@return the same with a plan}
     *
     * @param other what is wanted
     */
    public Particulars withPlan(Plan other) {
        return new Particulars(rating, wire, core, commutator, asFound, Optional.of(other), asRewound, notes);
    }

    /**
     * {@return the same with what was wound}
     *
     * @param other what was wound
     */
    public Particulars withAsRewound(AsRewound other) {
        return new Particulars(rating, wire, core, commutator, asFound, plan, Optional.of(other), notes);
    }

    /**
     * {@return the same with other notes}
     *
     * @param other one line each
     */
    public Particulars withNotes(List<String> other) {
        return new Particulars(rating, wire, core, commutator, asFound, plan, asRewound, other);
    }
}
