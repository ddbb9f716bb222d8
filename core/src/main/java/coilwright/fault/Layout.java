package coilwright.fault;

import coilwright.winding.Armature;
import coilwright.winding.ListedCoil;
import coilwright.winding.Pitches;
import coilwright.winding.Rules;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.IntUnaryOperator;

/**
 * Where every coil of a winding should lie and land, as lines of a connection list.
 *
 * @param rows in order of number
 * @param step bars from top lead to bottom lead of the first coils, signed; 0 where a list has no even step
 * @param mirrored whether it is counted counter-clockwise
 */
record Layout(List<ListedCoil> rows, int step, boolean mirrored) {
    Layout {
        rows = List.copyOf(rows);
    }

    static Layout of(Winding winding) {
        List<ListedCoil> rows = winding.coils().stream().map(ListedCoil::of).toList();
        return new Layout(rows, winding.pitches().map(Pitches::commutator).orElse(0), false);
    }

    /** The same winding in the other direction; empty where there is none or it is the same. */
    static Optional<Layout> reversed(Winding winding) {
        WindingSpec other;
        if (winding.spec() instanceof WindingSpec.Regular r) {
            other = new WindingSpec.Regular(
                    r.type(), r.plex(), r.direction().reversed(), r.span(), r.deadCoils(), r.leadOffset());
        } else if (winding.spec() instanceof WindingSpec.FrogLeg f) {
            other = new WindingSpec.FrogLeg(f.plex(), f.direction().reversed(), f.span(), f.leadOffset());
        } else {
            return Optional.empty();
        }
        if (!Rules.blocking(winding.armature(), other).isEmpty()) {
            return Optional.empty();
        }
        Layout out = of(Winding.build(winding.armature(), other));
        return Math.floorMod(out.step - of(winding).step, winding.armature().bars()) == 0
                ? Optional.empty()
                : Optional.of(out);
    }

    /** In other numbers. */
    Layout renumbered(IntUnaryOperator coil, IntUnaryOperator slot, IntUnaryOperator bar, boolean mirrorIt) {
        return new Layout(
                rows.stream()
                        .map(c -> new ListedCoil(
                                coil.applyAsInt(c.coil()),
                                slot.applyAsInt(c.topSlot()),
                                slot.applyAsInt(c.bottomSlot()),
                                on(c.topBar(), bar),
                                on(c.bottomBar(), bar)))
                        .toList(),
                mirrorIt ? -step : step,
                mirrored != mirrorIt);
    }

    /** With every lead further clockwise. */
    Layout shifted(Armature armature, int bars) {
        return bars == 0 ? this : renumbered(n -> n, n -> n, b -> armature.wrapBar(b + bars), false);
    }

    /** With the leads of every coil changed over. */
    Layout changedOver() {
        return new Layout(
                rows.stream()
                        .map(c -> new ListedCoil(c.coil(), c.topSlot(), c.bottomSlot(), c.bottomBar(), c.topBar()))
                        .toList(),
                -step,
                mirrored);
    }

    private static OptionalInt on(OptionalInt at, IntUnaryOperator bar) {
        return at.isPresent() ? OptionalInt.of(bar.applyAsInt(at.getAsInt())) : at;
    }
}
