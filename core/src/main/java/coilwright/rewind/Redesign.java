package coilwright.rewind;

import coilwright.winding.References;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The same core wound for another voltage, speed, wire or number of paths, at the same flux.
 *
 * <p>By {@link Emf}: turns go with the voltage, with the paths and against the speed. With the same copper in the slots
 * the wire's area goes against the turns. Resistance drop and brush drop are left out on both sides.
 *
 * @param before the machine as it was
 * @param after the machine as planned
 * @param idealTurns turns per coil before rounding
 * @param idealAreaMm2 area of one turn that puts the old copper area into the slot
 * @param emfAtSpeed EMF at the planned speed with the planned turns, V
 * @param rpmForVolts speed at which the planned turns give the planned voltage, r/min
 * @param cautions what else must change, most important first
 */
public record Redesign(
        Machine before,
        Machine after,
        double idealTurns,
        double idealAreaMm2,
        double emfAtSpeed,
        double rpmForVolts,
        List<Caution> cautions) {

    /**
     * Copies the list.
     *
     * @param before the machine as it was
     * @param after the machine as planned
     * @param idealTurns turns per coil before rounding
     * @param idealAreaMm2 area of one turn that puts the old copper area into the slot
     * @param emfAtSpeed EMF at the planned speed with the planned turns, V
     * @param rpmForVolts speed at which the planned turns give the planned voltage, r/min
     * @param cautions what else must change, most important first
     */
    public Redesign {
        cautions = List.copyOf(cautions);
    }

    /**
     * What is wanted; whatever is left empty stays as it was, or follows.
     *
     * @param volts at the brushes
     * @param rpm speed
     * @param paths parallel paths A
     * @param turns per coil; empty for the nearest whole number
     * @param conductor of one turn; empty for an ideal one, which fills the slot as before
     */
    public record Target(
            OptionalDouble volts,
            OptionalDouble rpm,
            OptionalInt paths,
            OptionalInt turns,
            Optional<Conductor> conductor) {
        /** {@return everything as it was} */
        public static Target same() {
            return new Target(
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalInt.empty(),
                    OptionalInt.empty(),
                    Optional.empty());
        }

        /**
         * {@return the same at another voltage}
         *
         * @param v EMF between the brushes, V
         */
        public Target withVolts(double v) {
            return new Target(OptionalDouble.of(v), rpm, paths, turns, conductor);
        }

        /**
         * {@return the same at another speed}
         *
         * @param n speed, r/min
         */
        public Target withRpm(double n) {
            return new Target(volts, OptionalDouble.of(n), paths, turns, conductor);
        }

        /**
         * {@return the same with another number of paths}
         *
         * @param a parallel paths A
         */
        public Target withPaths(int a) {
            return new Target(volts, rpm, OptionalInt.of(a), turns, conductor);
        }

        /**
         * {@return the same with turns that the user has chosen}
         *
         * @param t turns per coil
         */
        public Target withTurns(int t) {
            return new Target(volts, rpm, paths, OptionalInt.of(t), conductor);
        }

        /**
         * {@return the same with a conductor that the user has chosen}
         *
         * @param c what one turn is wound of
         */
        public Target withConductor(Conductor c) {
            return new Target(volts, rpm, paths, turns, Optional.of(c));
        }
    }

    /**
     * Plans the change.
     *
     * @param before the machine as it is
     * @param target what is wanted
     * @return turns, wire and what else must change
     * @throws IllegalArgumentException when a target is out of range
     */
    public static Redesign plan(Machine before, Target target) {
        ArmatureCopper old = before.copper();
        double volts = target.volts().orElse(before.volts());
        double rpm = target.rpm().orElse(before.rpm());
        int paths = target.paths().orElse(old.paths());
        Require.positive("new voltage", volts, "V");
        Require.positive("new speed", rpm, "r/min");
        double ideal =
                old.coil().turns() * (volts / before.volts()) * (before.rpm() / rpm) * ((double) paths / old.paths());
        int turns = target.turns().orElse((int) Math.max(1, Math.min(Integer.MAX_VALUE, Math.round(ideal))));
        double areaFactor = (double) old.coil().turns() / turns;
        Conductor conductor =
                target.conductor().orElseGet(() -> old.coil().conductor().scaledArea(areaFactor));
        var copper = new ArmatureCopper(
                old.coil().withTurns(turns).withConductor(conductor), old.woundCoils(), old.liveCoils(), paths);
        // The same current density.
        OptionalDouble amps = before.amps().isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(before.amps().getAsDouble()
                        * (conductor.areaMm2() / old.coil().conductor().areaMm2())
                        * ((double) paths / old.paths()));
        var after = new Machine(before.poles(), before.bars(), copper, volts, rpm, amps, before.slot());
        double emf = Emf.volts(before.poles(), before.flux(), after.conductors(), rpm, paths);
        return new Redesign(
                before,
                after,
                ideal,
                old.coil().conductor().areaMm2() * areaFactor,
                emf,
                rpm * volts / emf,
                cautions(before, after, ideal, emf));
    }

    private static List<Caution> cautions(Machine before, Machine after, double ideal, double emf) {
        List<Caution> out = new ArrayList<>();
        Source practice = Source.practice();
        Source law = Source.read(References.BAKSHI);
        double k = after.volts() / before.volts();
        if (Math.abs(k - 1) > 1e-9) {
            out.add(new Caution(
                    "field",
                    "voltage changes by a factor of " + Format.number(k)
                            + ": a shunt field needs that factor in turns and its inverse in wire area for the same"
                            + " ampere-turns, or a reconnection; a series field goes by the current",
                    practice));
            out.add(new Caution(
                    "regulator",
                    "regulator, cut-out and battery must suit " + Format.number(after.volts()) + " V: a regulator for "
                            + Format.number(before.volts()) + " V will not do",
                    practice));
        }
        int turns = after.copper().coil().turns();
        if (Math.abs(emf / after.volts() - 1) > 0.005) {
            out.add(new Caution(
                    "whole-turns",
                    "ideal turns per coil would be " + Format.number(ideal) + "; with " + turns + " the EMF at "
                            + Format.number(after.rpm()) + " r/min is " + Format.number(emf) + " V instead of "
                            + Format.number(after.volts()) + " V",
                    law));
        }
        brushes(before, after, practice, out);
        if (after.copper().paths() != before.copper().paths()) {
            out.add(new Caution(
                    "winding-type",
                    "parallel paths change from " + before.copper().paths() + " to "
                            + after.copper().paths()
                            + ": lead throw, number of live brush arms and equalizers change with them",
                    law));
        }
        if (after.rpm() > before.rpm() * (1 + 1e-9)) {
            out.add(new Caution(
                    "speed",
                    "speed rises from " + Format.number(before.rpm()) + " to " + Format.number(after.rpm())
                            + " r/min: the pull on banding and wedges grows by a factor of "
                            + Format.number(Math.pow(after.rpm() / before.rpm(), 2))
                            + "; check banding, balance, bearings and commutator",
                    Source.arithmetic()));
        }
        limits(before, after, out);
        return out;
    }

    private static void brushes(Machine before, Machine after, Source practice, List<Caution> out) {
        if (before.amps().isEmpty() || after.amps().isEmpty()) {
            return;
        }
        double ratio = after.amps().getAsDouble() / before.amps().getAsDouble();
        if (ratio > 1.1 || ratio < 0.9) {
            out.add(new Caution(
                    "brushes",
                    "armature current goes from " + Format.number(before.amps().getAsDouble()) + " to "
                            + Format.number(after.amps().getAsDouble())
                            + " A at the same current density: brush area, grade and leads must suit",
                    practice));
        }
    }

    private static void limits(Machine before, Machine after, List<Caution> out) {
        double barVolts = after.meanVoltsBetweenBars();
        Limit bars = Limit.of("bar-volts");
        if (!bars.admits(barVolts) && barVolts > before.meanVoltsBetweenBars()) {
            out.add(new Caution(
                    "bar-volts",
                    "mean voltage between bars is " + Format.number(barVolts) + " V; usual is " + bars.words()
                            + ": more bars would be needed",
                    bars.source()));
        }
        after.fill().ifPresent(fill -> {
            Limit usual = Limit.of("fill-usual");
            if (!fill.fits()) {
                out.add(new Caution(
                        "does-not-fit",
                        "the wires do not all go into the slot (fill " + Format.percent(fill.fill())
                                + "): thinner wire or covering, or fewer turns",
                        Source.arithmetic()));
            } else if (!usual.admits(fill.fill())) {
                out.add(new Caution(
                        "slot-fill",
                        "slot fill is " + Format.percent(fill.fill()) + "; above "
                                + Format.percent(usual.high().orElseThrow()) + " is hard to wind",
                        usual.source()));
            }
        });
        Limit density = Limit.of("density-continuous");
        after.currentDensity().ifPresent(j -> {
            if (j > density.high().orElseThrow()) {
                out.add(new Caution(
                        "current-density",
                        "current density is " + Format.number(j) + " A/mm²; usual for continuous duty is "
                                + Format.number(density.low().orElseThrow()) + " to "
                                + Format.number(density.high().orElseThrow()) + " A/mm²",
                        density.source()));
            }
        });
        Limit heavy = Limit.of("heavy-wire");
        if (after.copper().coil().conductor() instanceof Conductor.Round r
                && !heavy.admits(r.wire().size().bareDiameterMm())) {
            out.add(new Caution(
                    "heavy-wire",
                    "round wire of " + Format.number(r.wire().size().bareDiameterMm())
                            + " mm is awkward to wind: use two or more in hand",
                    heavy.source()));
        }
    }
}
