package coilwright.sheet;

import coilwright.drawing.Drawing;
import coilwright.drawing.Palette;
import coilwright.drawing.SlotSection;
import coilwright.job.AsFound;
import coilwright.job.Job;
import coilwright.job.Measured;
import coilwright.job.Particulars;
import coilwright.job.Plan;
import coilwright.job.Quantity;
import coilwright.job.Rating;
import coilwright.job.RewindBasis;
import coilwright.job.StripSizes;
import coilwright.job.WireChoice;
import coilwright.rewind.Conductor;
import coilwright.rewind.Format;
import coilwright.rewind.Machine;
import coilwright.rewind.OtherWinding;
import coilwright.rewind.Redesign;
import coilwright.rewind.SlotFill;
import coilwright.rewind.Substitution;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The rewind of one armature worked out: wire, coil, armature and slot as found, what could be wound in place of the
 * wire, the change that is planned, and the other windings that the core takes.
 *
 * @param job what it is worked out from
 * @param winding built
 * @param settings at what temperatures, with what allowance
 * @param found as found
 * @param compared resistances measured against those worked out
 * @param substitutes in place of the wire found, nearest in area first
 * @param change that is planned; empty where the armature is to be wound as it was
 * @param others lap and wave windings that fit the core and commutator, best first
 * @param missing what is not known, each with the key of the job file that would tell it
 */
public record RewindReport(
        Job job,
        Winding winding,
        Settings settings,
        RewindReportState found,
        List<Compared> compared,
        List<Substitute> substitutes,
        Optional<Change> change,
        List<OtherWinding> others,
        List<String> missing) {
    /** Lengths of core, turn and leads taken, mm: ten times the largest machine. */
    static final double MOST_MM = 100_000;

    /** Widest wire or strip taken, mm. */
    static final double MOST_WIRE_MM = 1000;

    /** Most volts, amperes and revolutions a minute taken. */
    static final double MOST_RATED = 1_000_000;

    /**
     * How a report is made.
     *
     * @param celsius temperatures at which resistances are told, at least one
     * @param allowance wire bought for waste and joints, as a fraction, 0 to 1
     * @param substitutes how many are listed by each rank, 0 to {@value #MOST_SUBSTITUTES}
     */
    public record Settings(List<Double> celsius, double allowance, int substitutes) {
        /** Most substitutes listed by each rank. */
        public static final int MOST_SUBSTITUTES = 50;

        /** 20 and 75 °C, a tenth more wire, five substitutes. */
        public static final Settings USUAL = new Settings(List.of(20.0, 75.0), 0.10, 5);

        /**
         * Checks the ranges.
         *
         * @param celsius temperatures at which resistances are told, at least one
         * @param allowance wire bought for waste and joints, as a fraction, 0 to 1
         * @param substitutes how many are listed by each rank, 0 to {@value #MOST_SUBSTITUTES}
         * @throws IllegalArgumentException when one is out of range
         */
        public Settings {
            celsius = celsius.stream().distinct().toList();
            if (celsius.isEmpty()) {
                throw new IllegalArgumentException("no temperature is given: give one, such as 20 °C");
            }
            for (double t : celsius) {
                if (!(t > -100 && t < 500)) {
                    throw new IllegalArgumentException("temperature is " + Format.number(t)
                            + " °C, but must be over -100 °C and under 500 °C: give that of the winding");
                }
            }
            if (!(allowance >= 0 && allowance <= 1)) {
                throw new IllegalArgumentException(
                        "allowance is " + Format.percent(allowance) + ", but must be from 0 % to 100 %");
            }
            if (substitutes < 0 || substitutes > MOST_SUBSTITUTES) {
                throw new IllegalArgumentException(
                        "substitutes are " + substitutes + ", but must be from 0 (none) to " + MOST_SUBSTITUTES);
            }
        }
    }

    /**
     * A measured resistance against the one worked out for its temperature.
     *
     * @param key of the job file
     * @param ohms measured
     * @param celsius temperature it was measured at
     * @param expected worked out
     */
    public record Compared(String key, double ohms, double celsius, double expected) {
        /** {@return (measured − worked out) / worked out} */
        public double difference() {
            return ohms / expected - 1;
        }
    }

    /**
     * Wire that could be wound.
     *
     * @param option with its differences from what is wanted
     * @param byArea place in the order of nearness in area, from 1
     * @param byFit place in the order of nearness in room, from 1
     * @param fill of the slot with it, where the slot is known
     */
    public record Substitute(Substitution.Option option, int byArea, int byFit, Optional<SlotFill> fill) {}

    /**
     * A planned change.
     *
     * @param plan what is wanted
     * @param refused why the planned kind of winding cannot be wound; nothing else is worked out then
     * @param winding the other winding on the same core, where one is planned
     * @param redesign by voltage and speed, where the rating is known
     * @param ideal conductor that puts as much copper into the slot as before; empty where the plan names its wire or the
     *     turns stay
     * @param proposed whether the wire of {@code after} is a proposal from {@code proposals}
     * @param proposals sizes made that come near the ideal, nearest in area first
     * @param after as it is to be wound
     * @param samePowerAmps armature current that gives the power of before at the planned voltage
     * @param missing what the plan asks for and cannot be worked out, each with the key that would tell it
     */
    public record Change(
            Plan plan,
            Optional<String> refused,
            Optional<OtherWinding> winding,
            Optional<Redesign> redesign,
            Optional<Conductor> ideal,
            boolean proposed,
            List<Substitute> proposals,
            Optional<RewindReportState> after,
            OptionalDouble samePowerAmps,
            List<String> missing) {
        /**
         * Copies the lists.
         *
         * @param plan what is wanted
         * @param refused why the planned kind of winding cannot be wound; nothing else is worked out then
         * @param winding the other winding on the same core, where one is planned
         * @param redesign by voltage and speed, where the rating is known
         * @param ideal conductor that puts as much copper into the slot as before; empty where the plan names its wire
         *     or the turns stay
         * @param proposed whether the wire of {@code after} is a proposal from {@code proposals}
         * @param proposals sizes made that come near the ideal, nearest in area first
         * @param after as it is to be wound
         * @param samePowerAmps armature current that gives the power of before at the planned voltage
         * @param missing what the plan asks for and cannot be worked out, each with the key that would tell it
         */
        public Change {
            proposals = List.copyOf(proposals);
            missing = List.copyOf(missing);
        }
    }

    /**
     * Copies the lists.
     *
     * @param job what it is worked out from
     * @param winding built
     * @param settings at what temperatures, with what allowance
     * @param found as found
     * @param compared resistances measured against those worked out
     * @param substitutes in place of the wire found, nearest in area first
     * @param change that is planned; empty where the armature is to be wound as it was
     * @param others lap and wave windings that fit the core and commutator, best first
     * @param missing what is not known, each with the key of the job file that would tell it
     */
    public RewindReport {
        compared = List.copyOf(compared);
        substitutes = List.copyOf(substitutes);
        others = List.copyOf(others);
        missing = List.copyOf(missing);
    }

    /**
     * Works out the job with its own plan.
     *
     * @param job what the armature is
     * @param settings how it is worked out where the job leaves it open
     * @return what was worked out; what is not known stays empty
     * @throws coilwright.winding.ImpossibleWindingException when the job's winding cannot be wound
     * @throws IllegalArgumentException when sizes do not go together or are beyond any armature
     */
    public static RewindReport of(Job job, Settings settings) {
        return of(job, job.particulars().plan().orElse(Plan.same()), settings);
    }

    /**
     * Works out the job with another plan.
     *
     * @param job what the armature is
     * @param plan what is wanted
     * @param settings how it is worked out where the job leaves it open
     * @return what was worked out; what is not known stays empty
     * @throws coilwright.winding.ImpossibleWindingException when the job's winding cannot be wound
     * @throws IllegalArgumentException when sizes do not go together or are beyond any armature
     */
    public static RewindReport of(Job job, Plan plan, Settings settings) {
        refuseAbsurd(job, plan);
        RewindBasis basis = RewindBasis.of(job);
        RewindReportState found = found(job, basis);
        List<OtherWinding> others = basis.copper()
                .filter(c -> basis.isOneCoilABar())
                .map(c -> OtherWinding.on(job.armature(), c.paths()))
                .orElse(List.of());
        var nearest = new RewindReportSubstitutes(found, settings.substitutes());
        List<Substitute> substitutes = found.conductor()
                .map(c -> nearest.inPlaceOf(c, found.slot(), found.turns()))
                .orElse(List.of());
        return new RewindReport(
                job,
                basis.winding(),
                settings,
                found,
                compared(job, found),
                substitutes,
                plan.equals(Plan.same())
                        ? Optional.empty()
                        : Optional.of(new RewindReportPlanner(job, basis, found, plan, nearest).change()),
                others,
                basis.missing());
    }

    /** {@return what is to be wound: as planned where a change is planned and can be wound, else as found} */
    public RewindReportState wanted() {
        return change.flatMap(Change::after).orElse(found);
    }

    /**
     * A slot in section, with the wires that are to be wound.
     *
     * @param palette colours, or black, white and grey
     * @return empty where slot, wire or turns are not known
     */
    public Optional<Drawing> slotSection(Palette palette) {
        RewindReportState state = wanted();
        if (state.fill().isEmpty()) {
            return Optional.empty();
        }
        Machine.Slot slot = state.slot().orElseThrow();
        return Optional.of(SlotSection.of(
                new SlotSection.Data(
                        job.title() + (change.isPresent() ? ": slot as planned" : ": slot"),
                        slot.shape(),
                        slot.insulation(),
                        state.conductor().orElseThrow(),
                        state.turns().orElseThrow() * slot.sidesPerLayer()),
                palette));
    }

    /** {@return whether what is to be wound can be wound, as far as can be told} */
    public boolean canBeWound() {
        return change.map(c -> c.refused().isEmpty()
                        && c.after().flatMap(RewindReportState::fits).orElse(true))
                .orElseGet(() -> found.fits().orElse(true));
    }

    private static RewindReportState found(Job job, RewindBasis basis) {
        Particulars p = job.particulars();
        Optional<Rating> rating = p.rating();
        return RewindReportState.of(new RewindReportState.Parts(
                job.armature().poles(),
                job.armature().bars(),
                job.turns(),
                p.wire(),
                p.wire().map(WireChoice::conductor),
                basis.coil(),
                basis.copper(),
                basis.slot(),
                Quantity.in("V", rating.flatMap(Rating::volts)),
                Quantity.in("rpm", rating.flatMap(Rating::speed)),
                Quantity.in("A", rating.flatMap(Rating::current))));
    }

    private static List<Compared> compared(Job job, RewindReportState found) {
        List<Compared> out = new ArrayList<>();
        Optional<Measured> measured = job.particulars().asFound().flatMap(AsFound::measured);
        found.coil().ifPresent(coil -> {
            job.coilResistance()
                    .ifPresent(r -> out.add(
                            new Compared("winding.coilResistance", r.in("ohm"), Job.COLD, coil.resistance(Job.COLD))));
            measured.flatMap(Measured::coilResistance)
                    .ifPresent(r -> out.add(new Compared(
                            "asFound.measured.coilResistance",
                            r.in("ohm"),
                            measured.get().celsius(),
                            coil.resistance(measured.get().celsius()))));
        });
        found.copper()
                .ifPresent(copper -> measured.flatMap(Measured::brushToBrush)
                        .ifPresent(r -> out.add(new Compared(
                                "asFound.measured.brushToBrush",
                                r.in("ohm"),
                                measured.get().celsius(),
                                copper.brushToBrush(measured.get().celsius())))));
        return out;
    }

    private static void refuseAbsurd(Job job, Plan plan) {
        job.particulars().core().ifPresent(c -> {
            most("core.length", c.length(), "mm", MOST_MM);
            most("core.diameter", c.diameter(), "mm", MOST_MM);
            most("core.meanTurn", c.meanTurn(), "mm", MOST_MM);
            most("core.leads", c.leads(), "mm", MOST_MM);
            most("core.endTurn.straight", c.endTurn().map(e -> e.straight()), "mm", MOST_MM);
            most("core.endTurn.nose", c.endTurn().flatMap(e -> e.nose()), "mm", MOST_MM);
            most("core.shaft", c.shaft(), "mm", MOST_MM);
            most("core.slot.depth", c.slot().map(s -> s.depth()), "mm", MOST_MM);
            most("core.slot.width", c.slot().flatMap(s -> s.width()), "mm", MOST_MM);
            most("core.slot.topWidth", c.slot().flatMap(s -> s.topWidth()), "mm", MOST_MM);
            most("core.slot.bottomWidth", c.slot().flatMap(s -> s.bottomWidth()), "mm", MOST_MM);
        });
        job.particulars().rating().ifPresent(r -> {
            most("rating.volts", r.volts(), "V", MOST_RATED);
            most("rating.current", r.current(), "A", MOST_RATED);
            most("rating.speed", r.speed(), "rpm", MOST_RATED);
        });
        job.particulars().wire().ifPresent(w -> refuseAbsurd("wire", w));
        plan.wire().ifPresent(w -> refuseAbsurd("planned wire", w));
        most("planned voltage", plan.volts(), "V", MOST_RATED);
        most("planned speed", plan.speed(), "rpm", MOST_RATED);
    }

    private static void refuseAbsurd(String key, WireChoice wire) {
        most(key + ", overall", wire.overall(), "mm", MOST_WIRE_MM);
        most(key + ", strip width", wire.strip().map(StripSizes::width), "mm", MOST_WIRE_MM);
        most(key + ", strip thickness", wire.strip().map(StripSizes::thickness), "mm", MOST_WIRE_MM);
        most(key + ", strip covering", wire.strip().flatMap(StripSizes::covering), "mm", MOST_WIRE_MM);
    }

    private static void most(String key, Optional<Quantity> size, String unit, double most) {
        size.filter(q -> !(q.in(unit) <= most)).ifPresent(q -> {
            throw new IllegalArgumentException(key + " is " + q + ", beyond any armature: at most "
                    + Format.number(most) + " " + unit + " is taken; check number and unit");
        });
    }
}
