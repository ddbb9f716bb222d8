package coilwright.rewind;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A machine as far as its armature's rewind goes.
 *
 * @param poles P, even
 * @param bars K
 * @param copper of the armature
 * @param volts at the brushes, rated
 * @param rpm rated speed, revolutions a minute
 * @param amps armature current, where known
 * @param slot section of a slot, where known
 */
public record Machine(
        int poles,
        int bars,
        ArmatureCopper copper,
        double volts,
        double rpm,
        OptionalDouble amps,
        Optional<Slot> slot) {

    /**
     * A slot and its coil sides.
     *
     * @param shape of the slot
     * @param insulation in it
     * @param sidesPerLayer u: coil sides of one layer, 1 to 20
     */
    public record Slot(SlotShape shape, SlotInsulation insulation, int sidesPerLayer) {
        /**
         * Checks that all is given.
         *
         * @param shape of the slot
         * @param insulation in it
         * @param sidesPerLayer u: coil sides of one layer, 1 to 20
         * @throws IllegalArgumentException when the coil sides are not from 1 to 20
         */
        public Slot {
            Objects.requireNonNull(shape, "shape");
            Objects.requireNonNull(insulation, "insulation");
            Require.inRange("coil sides per layer", sidesPerLayer, 1, 20);
        }
    }

    /**
     * Checks the ranges.
     *
     * @param bars K
     * @param poles P, even
     * @param copper of the armature
     * @param volts at the brushes, rated
     * @param rpm rated speed, revolutions a minute
     * @param amps armature current, where known
     * @param slot section of a slot, where known
     * @throws IllegalArgumentException when one is out of range
     */
    public Machine {
        if (poles < 2 || poles % 2 != 0) {
            throw new IllegalArgumentException("poles is " + poles + ", but must be even and at least 2");
        }
        Require.atLeast("bars", bars, 2);
        Objects.requireNonNull(copper, "copper");
        Require.positive("voltage", volts, "V");
        Require.positive("speed", rpm, "r/min");
        amps.ifPresent(a -> Require.positive("armature current", a, "A"));
        Objects.requireNonNull(slot, "slot");
    }

    /** {@return Z: twice the live coils times their turns} */
    public int conductors() {
        return 2 * copper.liveCoils() * copper.coil().turns();
    }

    /** {@return mean volts between neighbouring bars} */
    public double meanVoltsBetweenBars() {
        return Emf.meanVoltsBetweenBars(volts, poles, bars);
    }

    /** {@return flux of one pole that gives the rated voltage as EMF, Wb; resistance drop is left out} */
    public double flux() {
        return Emf.flux(poles, volts, conductors(), rpm, copper.paths());
    }

    /** {@return how full the slot is, where its section is known} */
    public Optional<SlotFill> fill() {
        return slot.map(s -> SlotFill.of(
                s.shape(),
                s.insulation(),
                copper.coil().conductor(),
                copper.coil().turns() * s.sidesPerLayer()));
    }

    /** {@return current density, A/mm², where the current is known} */
    public OptionalDouble currentDensity() {
        return amps.isPresent() ? OptionalDouble.of(copper.currentDensity(amps.getAsDouble())) : OptionalDouble.empty();
    }
}
