package coilwright.sheet;

import coilwright.job.WireChoice;
import coilwright.rewind.ArmatureCopper;
import coilwright.rewind.CoilCopper;
import coilwright.rewind.Conductor;
import coilwright.rewind.Emf;
import coilwright.rewind.Limit;
import coilwright.rewind.Machine;
import coilwright.rewind.SlotFill;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One way of winding an armature, as found or as planned, as far as it is known.
 *
 * @param turns per coil
 * @param wire as a job file gives it; empty where it is not known, or is no size that is made
 * @param conductor of one turn
 * @param coil copper of one coil
 * @param copper of the armature
 * @param slot section of a slot with its coil sides; only where the thickness of the wire's covering is known
 * @param fill of a slot
 * @param volts at the brushes
 * @param rpm speed, revolutions a minute
 * @param amps armature current
 * @param barVolts mean volts between neighbouring bars
 * @param checks against the published limits and usual values, those that can be told
 */
public record RewindReportState(
        OptionalInt turns,
        Optional<WireChoice> wire,
        Optional<Conductor> conductor,
        Optional<CoilCopper> coil,
        Optional<ArmatureCopper> copper,
        Optional<Machine.Slot> slot,
        Optional<SlotFill> fill,
        OptionalDouble volts,
        OptionalDouble rpm,
        OptionalDouble amps,
        OptionalDouble barVolts,
        List<Check> checks) {
    /**
     * A value against one limit.
     *
     * @param id of the limit
     * @param what in words
     * @param value in the limit's unit
     * @param limit with its source
     */
    public record Check(String id, String what, double value, Limit limit) {
        /** {@return whether it keeps to the limit} */
        public boolean usual() {
            return limit.admits(value);
        }

        /** {@return "usual", or on which side of it the value lies} */
        public String verdict() {
            return usual()
                    ? "usual"
                    : limit.high().isPresent() && value > limit.high().getAsDouble() ? "high" : "low";
        }
    }

    /** What a state is made of. */
    record Parts(
            int poles,
            int bars,
            OptionalInt turns,
            Optional<WireChoice> wire,
            Optional<Conductor> conductor,
            Optional<CoilCopper> coil,
            Optional<ArmatureCopper> copper,
            Optional<Machine.Slot> slot,
            OptionalDouble volts,
            OptionalDouble rpm,
            OptionalDouble amps) {}

    /**
     * Copies the list.
     *
     * @param turns per coil
     * @param wire as a job file gives it; empty where it is not known, or is no size that is made
     * @param conductor of one turn
     * @param coil copper of one coil
     * @param copper of the armature
     * @param slot section of a slot with its coil sides; only where the thickness of the wire's covering is known
     * @param fill of a slot
     * @param volts at the brushes
     * @param rpm speed, revolutions a minute
     * @param amps armature current
     * @param barVolts mean volts between neighbouring bars
     * @param checks against the published limits and usual values, those that can be told
     */
    public RewindReportState {
        checks = List.copyOf(checks);
    }

    static RewindReportState of(Parts p) {
        Optional<SlotFill> fill =
                p.slot().isPresent() && p.conductor().isPresent() && p.turns().isPresent()
                        ? Optional.of(filled(
                                p.slot().get(), p.conductor().get(), p.turns().getAsInt()))
                        : Optional.empty();
        OptionalDouble barVolts = p.volts().isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(Emf.meanVoltsBetweenBars(p.volts().getAsDouble(), p.poles(), p.bars()));
        List<Check> checks = new ArrayList<>();
        OptionalDouble density = density(p.copper(), p.amps());
        density.ifPresent(j -> checks.add(check("density-continuous", "current density", j)));
        barVolts.ifPresent(v -> checks.add(check("bar-volts", "volts between bars", v)));
        // Both are of round wire laid by hand; strip fills far more.
        fill.filter(f -> p.conductor().filter(c -> c instanceof Conductor.Round).isPresent())
                .ifPresent(f -> {
                    checks.add(check("copper-factor", "copper factor", f.copperFactor()));
                    checks.add(check("fill-usual", "square fill", f.fill()));
                });
        p.conductor()
                .filter(c -> c instanceof Conductor.Round)
                .map(c -> (Conductor.Round) c)
                .ifPresent(r -> checks.add(
                        check("heavy-wire", "bare diameter", r.wire().size().bareDiameterMm())));
        return new RewindReportState(
                p.turns(),
                p.wire(),
                p.conductor(),
                p.coil(),
                p.copper(),
                p.slot(),
                fill,
                p.volts(),
                p.rpm(),
                p.amps(),
                barVolts,
                checks);
    }

    static SlotFill filled(Machine.Slot slot, Conductor conductor, int turns) {
        return SlotFill.of(slot.shape(), slot.insulation(), conductor, turns * slot.sidesPerLayer());
    }

    private static Check check(String id, String what, double value) {
        return new Check(id, what, value, Limit.of(id));
    }

    private static OptionalDouble density(Optional<ArmatureCopper> copper, OptionalDouble amps) {
        return copper.isEmpty() || amps.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(copper.get().currentDensity(amps.getAsDouble()));
    }

    /** {@return current density, A/mm², where the current is known} */
    public OptionalDouble currentDensity() {
        return density(copper, amps);
    }

    /** {@return the conductor as written on a work sheet} */
    public Optional<String> label() {
        return conductor.map(c -> {
            if (!(c instanceof Conductor.Round r)
                    || wire.map(w -> w.insulation().isPresent()).orElse(true)) {
                return c.label();
            }
            return c.label().replace(", " + r.wire().build().word(), "")
                    + (wire.get().isCoveringKnown() ? ", covering as measured" : ", covering not known");
        });
    }

    /** {@return whether the wire goes into the slot; empty where that cannot be told} */
    public Optional<Boolean> fits() {
        return fill.map(SlotFill::fits);
    }
}
