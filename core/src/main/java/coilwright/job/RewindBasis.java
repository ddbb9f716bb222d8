package coilwright.job;

import coilwright.circuit.Circuits;
import coilwright.rewind.ArmatureCopper;
import coilwright.rewind.CoilCopper;
import coilwright.rewind.Machine;
import coilwright.rewind.MeanTurn;
import coilwright.rewind.OtherWinding;
import coilwright.rewind.Redesign;
import coilwright.winding.Armature;
import coilwright.winding.Winding;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What a job tells of its copper: as much of coil, armature, slot and machine as its sections allow.
 *
 * @param winding built
 * @param coil copper of one coil
 * @param copper of the armature
 * @param slot section of a slot with the number of its coil sides, where the wire's covering is known too
 * @param machine with rated voltage and speed
 * @param missing what is not known, each with the key that would tell it
 */
public record RewindBasis(
        Winding winding,
        Optional<CoilCopper> coil,
        Optional<ArmatureCopper> copper,
        Optional<Machine.Slot> slot,
        Optional<Machine> machine,
        List<String> missing) {
    /**
     * Copies the list.
     *
     * @param winding built
     * @param coil copper of one coil
     * @param copper of the armature
     * @param slot section of a slot with the number of its coil sides, where the wire's covering is known too
     * @param machine with rated voltage and speed
     * @param missing what is not known, each with the key that would tell it
     */
    public RewindBasis {
        missing = List.copyOf(missing);
    }

    /**
     * Puts together what the job tells of the winding as found.
     *
     * @param job what the armature is
     * @return the machine and what is known of it
     * @throws coilwright.winding.ImpossibleWindingException when the job's winding cannot be wound
     * @throws IllegalArgumentException when sizes do not go together
     */
    public static RewindBasis of(Job job) {
        Winding winding = job.build();
        Particulars p = job.particulars();
        List<String> missing = new ArrayList<>();
        Optional<MeanTurn> turn =
                p.core().flatMap(c -> c.meanTurn(winding.armature().slots(), throwSlots(winding)));
        if (job.turns().isEmpty()) {
            missing.add("turns per coil: winding.turns");
        }
        if (p.wire().isEmpty()) {
            missing.add("wire: wire.size with wire.insulation, or wire.strip");
        }
        if (turn.isEmpty()) {
            missing.add(
                    "mean turn: core.meanTurn as measured, or core.length, core.diameter, core.slot and core.endTurn");
        }
        if (p.core().flatMap(CoreSizes::leads).isEmpty()) {
            missing.add("leads: core.leads; taken as nothing");
        }
        Optional<CoilCopper> coil = job.turns().isEmpty() || p.wire().isEmpty() || turn.isEmpty()
                ? Optional.empty()
                : Optional.of(new CoilCopper(
                        job.turns().getAsInt(),
                        p.wire().get().conductor(),
                        turn.get(),
                        p.core().flatMap(CoreSizes::leads).map(q -> q.in("mm")).orElse(0.0)));
        OptionalInt paths = paths(winding);
        if (paths.isEmpty()) {
            missing.add("parallel paths: the winding as listed has no even number of them");
        }
        Optional<ArmatureCopper> copper = coil.isEmpty() || paths.isEmpty()
                ? Optional.empty()
                : Optional.of(new ArmatureCopper(
                        coil.get(), winding.coils().size(), winding.liveCoils().size(), paths.getAsInt()));
        Optional<Machine.Slot> slot = slot(job, winding, missing);
        return new RewindBasis(winding, coil, copper, slot, machine(job, copper, slot, missing), missing);
    }

    /** Parallel paths; nothing where their number is odd, as that of a wrongly connected list can be. */
    private static OptionalInt paths(Winding winding) {
        OptionalInt paths = Circuits.parallelPaths(winding);
        return paths.isPresent() && paths.getAsInt() >= 2 && paths.getAsInt() % 2 == 0 ? paths : OptionalInt.empty();
    }

    private static Optional<Machine.Slot> slot(Job job, Winding winding, List<String> missing) {
        Optional<SlotSizes> sizes = job.particulars().core().flatMap(CoreSizes::slot);
        if (sizes.isEmpty()) {
            missing.add("section of a slot: core.slot");
            return Optional.empty();
        }
        if (job.particulars().wire().filter(w -> !w.isCoveringKnown()).isPresent()) {
            missing.add("covering of the wire: wire.insulation or wire.overall");
            return Optional.empty();
        }
        int slots = winding.armature().slots();
        return Optional.of(new Machine.Slot(
                sizes.get().slotShape(),
                sizes.get().insulation(),
                Math.max(1, (winding.coils().size() + slots - 1) / slots)));
    }

    private static Optional<Machine> machine(
            Job job, Optional<ArmatureCopper> copper, Optional<Machine.Slot> slot, List<String> missing) {
        Optional<Rating> rating = job.particulars().rating();
        Optional<Quantity> volts = rating.flatMap(Rating::volts);
        Optional<Quantity> speed = rating.flatMap(Rating::speed);
        if (volts.isEmpty() || speed.isEmpty()) {
            missing.add("rated voltage and speed: rating.volts and rating.speed");
        }
        OptionalDouble amps = Quantity.in("A", rating.flatMap(Rating::current));
        if (amps.isEmpty()) {
            missing.add("armature current: rating.current");
        }
        if (copper.isEmpty() || volts.isEmpty() || speed.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Machine(
                job.armature().poles(),
                job.armature().bars(),
                copper.get(),
                volts.get().in("V"),
                speed.get().in("rpm"),
                amps,
                slot));
    }

    /** Slots spanned by a coil, the mean of several throws rounded to the nearest. */
    private static int throwSlots(Winding winding) {
        Armature armature = winding.armature();
        return winding.pitches()
                .map(p -> p.throwSlots().orElse((int) Math.round(p.meanThrow())))
                .orElseGet(() -> (int) Math.round(winding.coils().stream()
                        .mapToInt(c -> Math.floorMod(c.bottom().slot() - c.top().slot(), armature.slots()))
                        .map(span -> Math.min(span, armature.slots() - span))
                        .average()
                        .orElse(1)));
    }

    /**
     * {@return the redesign that the job's plan, or another, asks for, on this machine}
     *
     * @param plan what is wanted
     * @throws IllegalArgumentException when the plan's kind of winding does not fit the core, or a value is out of
     *     range
     */
    public Optional<Redesign> redesign(Plan plan) {
        return machine.map(m -> {
            Redesign.Target target = Redesign.Target.same();
            if (plan.volts().isPresent()) {
                target = target.withVolts(plan.volts().get().in("V"));
            }
            if (plan.speed().isPresent()) {
                target = target.withRpm(plan.speed().get().in("rpm"));
            }
            if (plan.turns().isPresent()) {
                target = target.withTurns(plan.turns().getAsInt());
            }
            if (plan.wire().isPresent()) {
                target = target.withConductor(plan.wire().get().conductor());
            }
            Optional<OtherWinding> other = other(plan);
            if (other.isPresent()) {
                target = target.withPaths(other.get().paths());
            }
            return Redesign.plan(m, target);
        });
    }

    /**
     * {@return whether the winding has one coil a bar, as lap and wave have it} A frog-leg winding has two, so that its
     * coils tell nothing of a lap or wave of them.
     */
    public boolean isOneCoilABar() {
        return winding.liveCoils().size() == winding.armature().bars();
    }

    /**
     * {@return the winding of another kind that a plan asks for; empty where it asks for none}
     *
     * @param plan what is wanted
     * @throws IllegalArgumentException when there is none of that kind on this core, or the winding as found has not
     *     one coil a bar
     */
    public Optional<OtherWinding> other(Plan plan) {
        if (plan.type().isEmpty()) {
            return Optional.empty();
        }
        WindingType type = plan.type().get();
        if (!isOneCoilABar()) {
            throw new IllegalArgumentException("the armature has "
                    + winding.liveCoils().size() + " live coils on "
                    + winding.armature().bars() + " bars, but a " + type.word()
                    + " winding has one coil a bar: write a job file of its own for it");
        }
        int plex = plan.plex().orElse(1);
        return Optional.of(OtherWinding.on(winding.armature(), paths(winding).orElse(2)).stream()
                .filter(o -> o.type() == type
                        && o.candidate().plex() == plex
                        && plan.direction()
                                .map(d -> d == o.candidate().direction())
                                .orElse(true))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no "
                        + plan.direction().map(d -> d.word() + " ").orElse("") + type.word() + " winding of plex "
                        + plex
                        + " fits " + winding.armature().slots() + " slots and "
                        + winding.armature().bars() + " bars on "
                        + winding.armature().poles()
                        + " poles: rules lists those that do")));
    }

    /**
     * {@return the job as it is to be wound: its winding, turns and wire by the plan, turns by the redesign where the
     * plan asks for another voltage or speed and leaves them open} A coil's resistance, measured on the old winding, is
     * left out where turns or wire change.
     *
     * @param job what the armature is
     * @throws IllegalArgumentException as {@link #redesign}
     */
    public Job planned(Job job) {
        Plan plan = job.particulars().plan().orElse(Plan.same());
        Optional<OtherWinding> other = other(plan);
        OptionalInt turns = plan.turns();
        Optional<Redesign> redesign = redesign(plan);
        if (turns.isEmpty() && redesign.isPresent()) {
            turns = OptionalInt.of(redesign.get().after().copper().coil().turns());
        }
        Particulars p = job.particulars();
        boolean changed =
                (!turns.equals(job.turns()) && turns.isPresent()) || plan.wire().isPresent();
        return new Job(
                job.title(),
                job.armature(),
                other.map(o -> o.candidate().winding().spec()).orElse(job.winding()),
                turns.isPresent() ? turns : job.turns(),
                changed ? Optional.empty() : job.coilResistance(),
                job.growler(),
                job.equalizers(),
                job.readings(),
                new Particulars(
                        p.rating(),
                        plan.wire().or(p::wire),
                        p.core(),
                        p.commutator(),
                        p.asFound(),
                        p.plan(),
                        p.asRewound(),
                        p.notes()));
    }

    /**
     * {@return the job as it is to be wound: {@linkplain #planned by its plan}, or as found where it has none or what it
     * asks for cannot be wound}
     *
     * @param job what the armature is
     * @throws coilwright.winding.ImpossibleWindingException when there is a plan and the winding as found cannot be wound
     */
    public static Job wound(Job job) {
        if (job.particulars().plan().isEmpty()) {
            return job;
        }
        try {
            return of(job).planned(job);
        } catch (IllegalArgumentException e) {
            return job;
        }
    }
}
