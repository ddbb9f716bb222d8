package coilwright.sheet;

import coilwright.rewind.Conductor;
import coilwright.rewind.InsulationBuild;
import coilwright.rewind.Machine;
import coilwright.rewind.SlotFill;
import coilwright.rewind.Substitution;
import coilwright.rewind.WireSystem;
import coilwright.sheet.RewindReport.Substitute;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Wire that could be wound in place of a conductor.
 *
 * @param found whose covering they are to have
 * @param most how many to list by each rank
 */
record RewindReportSubstitutes(RewindReportState found, int most) {
    /** The nearest of each rank, in order of area. */
    List<Substitute> inPlaceOf(Conductor wanted, Optional<Machine.Slot> slot, OptionalInt turns) {
        return few(all(wanted), slot, turns, Optional.empty());
    }

    /** The nearest in area that goes in, or that may go in where the slot is not known. */
    Optional<Substitute> best(Conductor wanted, Optional<Machine.Slot> slot, OptionalInt turns) {
        return all(wanted).stream()
                .map(s -> filled(s, slot, turns))
                .filter(s -> s.fill().map(SlotFill::fits).orElse(true))
                .findFirst();
    }

    /** The nearest of each rank, and one that may stand further down. */
    List<Substitute> with(Optional<Substitute> best, Conductor wanted, Optional<Machine.Slot> slot, OptionalInt turns) {
        return few(all(wanted), slot, turns, best);
    }

    private List<Substitute> few(
            List<Substitute> all, Optional<Machine.Slot> slot, OptionalInt turns, Optional<Substitute> also) {
        // Counting the wires in a slot takes its time, so only those are filled that are listed.
        return all.stream()
                .filter(s -> s.byArea() <= most
                        || s.byFit() <= most
                        || also.filter(a -> a.byArea() == s.byArea()).isPresent())
                .map(s -> filled(s, slot, turns))
                .toList();
    }

    /** Everything within a tenth in area, without the conductor itself, nearest in area first; without fill. */
    private List<Substitute> all(Conductor wanted) {
        Substitution.Wanted asked = Substitution.Wanted.inPlaceOf(wanted);
        if (found.wire()
                .filter(w -> w.strip().isEmpty() && w.insulation().isEmpty())
                .isPresent()) {
            asked = new Substitution.Wanted(
                    asked.areaMm2(), asked.roomMm2(), usualBuilds(), asked.mostInHand(), asked.within());
        }
        List<Substitution.Option> byArea = others(Substitution.options(asked, Substitution.Rank.AREA), wanted);
        List<Substitution.Option> byFit = others(Substitution.options(asked, Substitution.Rank.FIT), wanted);
        List<Substitute> out = new ArrayList<>();
        for (Substitution.Option o : byArea) {
            out.add(new Substitute(o, out.size() + 1, byFit.indexOf(o) + 1, Optional.empty()));
        }
        return out;
    }

    /** Offered where the covering of the wire found is not known. */
    private static Map<WireSystem, InsulationBuild> usualBuilds() {
        Map<WireSystem, InsulationBuild> builds = new LinkedHashMap<>();
        for (WireSystem system : WireSystem.values()) {
            builds.put(system, system == WireSystem.AWG ? InsulationBuild.NEMA_HEAVY : InsulationBuild.IEC_GRADE_2);
        }
        return builds;
    }

    private static List<Substitution.Option> others(List<Substitution.Option> options, Conductor wanted) {
        return options.stream()
                .filter(o -> !o.conductor().label().equals(wanted.label()))
                .toList();
    }

    private static Substitute filled(Substitute s, Optional<Machine.Slot> slot, OptionalInt turns) {
        return slot.isEmpty() || turns.isEmpty()
                ? s
                : new Substitute(
                        s.option(),
                        s.byArea(),
                        s.byFit(),
                        Optional.of(
                                RewindReportState.filled(slot.get(), s.option().conductor(), turns.getAsInt())));
    }
}
