package coilwright.job;

import coilwright.rewind.HighPotential.MachineKind;
import java.util.Optional;

/**
 * What the nameplate says, or what is known of the machine's use.
 *
 * @param kind of machine
 * @param volts rated voltage
 * @param current rated armature current
 * @param power rated
 * @param speed rated
 * @param serial number on the machine, or the owner's own
 */
public record Rating(
        Optional<MachineKind> kind,
        @Measure(Quantity.Kind.VOLTAGE) Optional<Quantity> volts,
        @Measure(Quantity.Kind.CURRENT) Optional<Quantity> current,
        @Measure(Quantity.Kind.POWER) Optional<Quantity> power,
        @Measure(Quantity.Kind.SPEED) Optional<Quantity> speed,
        Optional<String> serial) {}
