package coilwright.sheet;

import coilwright.job.Job;
import coilwright.job.Particulars;
import coilwright.job.Plan;
import coilwright.job.Quantity;
import coilwright.job.RewindBasis;
import coilwright.job.WireChoice;
import coilwright.rewind.ArmatureCopper;
import coilwright.rewind.CoilCopper;
import coilwright.rewind.Conductor;
import coilwright.rewind.Machine;
import coilwright.rewind.OtherWinding;
import coilwright.rewind.Redesign;
import coilwright.sheet.RewindReport.Change;
import coilwright.sheet.RewindReport.Substitute;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Works out a planned change. */
final class RewindReportPlanner {
    private final Job job;
    private final RewindBasis basis;
    private final RewindReportState found;
    private final Plan plan;
    private final RewindReportSubstitutes nearest;

    private Optional<OtherWinding> other = Optional.empty();
    private Optional<Redesign> redesign = Optional.empty();
    private OptionalInt turns = OptionalInt.empty();
    private Optional<WireChoice> wire = Optional.empty();
    private Optional<Conductor> ideal = Optional.empty();
    private List<Substitute> proposals = List.of();
    private boolean proposed;

    RewindReportPlanner(
            Job job, RewindBasis basis, RewindReportState found, Plan plan, RewindReportSubstitutes nearest) {
        this.job = job;
        this.basis = basis;
        this.found = found;
        this.plan = plan;
        this.nearest = nearest;
    }

    /**
     * The change.
     *
     * @throws IllegalArgumentException when the plan takes the armature out of every range
     */
    Change change() {
        try {
            other = basis.other(plan);
        } catch (IllegalArgumentException e) {
            return refused(e.getMessage());
        }
        redesign = redesigned(plan);
        turns = redesign.isPresent()
                ? OptionalInt.of(redesign.get().after().copper().coil().turns())
                : plan.turns().isPresent() ? plan.turns() : job.turns();
        wire = plan.wire();
        if (wire.isEmpty()) {
            chooseWire();
        }
        return after();
    }

    private Change refused(String why) {
        return new Change(
                plan,
                Optional.of(why),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                false,
                List.of(),
                Optional.empty(),
                OptionalDouble.empty(),
                List.of());
    }

    private Optional<Redesign> redesigned(Plan wanted) {
        try {
            return basis.redesign(wanted);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(
                    "the plan is out of reach of this armature; check planned and rated voltage and speed: "
                            + e.getMessage(),
                    e);
        }
    }

    /** The same wire for the same turns; else the size nearest to the ideal one that goes in. */
    private void chooseWire() {
        Optional<WireChoice> own = found.wire();
        if (own.isEmpty() || job.turns().isEmpty()) {
            return;
        }
        if (turns.equals(job.turns())) {
            wire = own;
        } else {
            Conductor was = own.get().conductor();
            Conductor wanted = was.scaledArea((double) job.turns().getAsInt() / turns.getAsInt());
            ideal = Optional.of(wanted);
            if (was instanceof Conductor.Round) {
                propose(wanted);
            }
        }
        if (wire.isPresent()) {
            redesign = redesigned(new Plan(
                    plan.volts(), plan.speed(), plan.turns(), wire, plan.type(), plan.plex(), plan.direction()));
        }
    }

    private void propose(Conductor wanted) {
        Optional<Machine.Slot> slot = wound(Optional.empty()).slot();
        Optional<Substitute> best = nearest.best(wanted, slot, turns);
        proposals = nearest.with(best, wanted, slot, turns);
        proposed = best.isPresent();
        wire = best.map(s -> s.option().conductor())
                .map(c -> new WireChoice(
                        Optional.of(c.wire().size().label()),
                        Optional.of(c.wire().build()),
                        Optional.empty(),
                        OptionalInt.of(c.strands()),
                        Optional.empty()));
    }

    /** What the job would tell of its copper when wound as planned, with a wire. */
    private RewindBasis wound(Optional<WireChoice> with) {
        Particulars p = job.particulars();
        Job wound =
                other.map(o -> job.withWinding(o.candidate().winding().spec())).orElse(job);
        if (turns.isPresent()) {
            wound = wound.withTurns(turns.getAsInt());
        }
        return RewindBasis.of(wound.withParticulars(new Particulars(
                p.rating(), with, p.core(), p.commutator(), p.asFound(), p.plan(), p.asRewound(), p.notes())));
    }

    private Change after() {
        // An ideal wire is none that a job can name: the found one stands in until the conductor is changed.
        RewindBasis wound = wound(wire.or(found::wire));
        Optional<Conductor> conductor = wire.map(WireChoice::conductor).or(() -> ideal);
        Optional<CoilCopper> coil =
                conductor.isEmpty() ? Optional.empty() : wound.coil().map(c -> c.withConductor(conductor.get()));
        Optional<ArmatureCopper> copper = coil.flatMap(
                c -> wound.copper().map(was -> new ArmatureCopper(c, was.woundCoils(), was.liveCoils(), was.paths())));
        OptionalDouble volts = plan.volts().isPresent() ? Quantity.in("V", plan.volts()) : found.volts();
        OptionalDouble rpm = plan.speed().isPresent() ? Quantity.in("rpm", plan.speed()) : found.rpm();
        List<String> missing = new ArrayList<>();
        if (redesign.isEmpty()) {
            missing.add("turns for a voltage or speed, EMF and speed: rating.volts and rating.speed, with turns, wire"
                    + " and mean turn");
        }
        if (wire.filter(w -> !w.isCoveringKnown()).isPresent()) {
            missing.add("covering of the planned wire: plan.wire.insulation or plan.wire.overall");
        }
        RewindReportState after = RewindReportState.of(new RewindReportState.Parts(
                job.armature().poles(),
                job.armature().bars(),
                turns,
                wire,
                conductor,
                coil,
                copper,
                wound.slot(),
                volts,
                rpm,
                redesign.map(r -> r.after().amps()).orElse(OptionalDouble.empty())));
        return new Change(
                plan,
                Optional.empty(),
                other,
                redesign,
                ideal,
                proposed,
                proposals,
                Optional.of(after),
                samePower(volts),
                missing);
    }

    private OptionalDouble samePower(OptionalDouble volts) {
        return found.amps().isEmpty() || found.volts().isEmpty() || volts.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(found.amps().getAsDouble() * found.volts().getAsDouble() / volts.getAsDouble());
    }
}
