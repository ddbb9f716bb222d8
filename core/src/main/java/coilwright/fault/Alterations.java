package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.CoilState;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** What faults of one armature amount to between bars. */
final class Alterations {
    private final BenchArmature armature;
    private final Map<Integer, List<Integer>> coilsOnBar = new LinkedHashMap<>();

    Alterations(BenchArmature armature) {
        this.armature = armature;
        for (CoilState c : armature.coils()) {
            c.topBar().ifPresent(bar -> put(bar, c.coil()));
            c.bottomBar().ifPresent(bar -> put(bar, c.coil()));
        }
    }

    private void put(int bar, int coil) {
        List<Integer> list = coilsOnBar.computeIfAbsent(bar, x -> new ArrayList<>());
        if (!list.contains(coil)) {
            list.add(coil);
        }
    }

    /**
     * The outcome.
     *
     * @param list the alterations
     * @param alone bars left without any coil; the last coil is left hanging on each, which changes nothing elsewhere
     */
    record Altered(List<Alteration> list, Set<Integer> alone) {}

    /** The alterations between bars that faults amount to; empty where they are not told by bars alone. */
    Optional<Altered> of(List<Fault> faults) {
        Map<Integer, CoilState> changed = new LinkedHashMap<>();
        List<Alteration> out = new ArrayList<>();
        for (Fault fault : faults) {
            if (fault instanceof Fault.ShortedCoil f) {
                CoilState c = state(changed, f.coil());
                if (!c.connected()) {
                    return Optional.empty();
                }
                out.add(Alteration.joined(c.topBar().getAsInt(), c.bottomBar().getAsInt()));
            } else if (fault instanceof Fault.ShortedTurns f) {
                CoilState c = state(changed, f.coil());
                changed.put(f.coil(), c.withTurns(c.turns() * (1 - f.fraction())));
            } else if (fault instanceof Fault.BarShort f) {
                out.add(Alteration.joined(f.bar(), f.otherBar()));
            } else if (fault instanceof Fault.Ground) {
                if (faults.stream().filter(Fault.Ground.class::isInstance).count() > 1) {
                    return Optional.empty();
                }
            } else if (fault instanceof Fault.OfCoil f) {
                changed.put(f.coil(), f.in(state(changed, f.coil())));
            } else if (fault instanceof Fault.CrossedLeads f) {
                // A lead may have been moved here by a fault before.
                Set<Integer> coils = new TreeSet<>(changed.keySet());
                coils.addAll(coilsOnBar.getOrDefault(f.bar(), List.of()));
                coils.addAll(coilsOnBar.getOrDefault(f.otherBar(), List.of()));
                for (int coil : coils) {
                    changed.put(coil, f.in(state(changed, coil)));
                }
            } else {
                return Optional.empty();
            }
        }
        for (CoilState is : changed.values()) {
            CoilState was = armature.coil(is.coil());
            if (!is.equals(was) && !add(out, was, is)) {
                return Optional.empty();
            }
        }
        return Optional.of(hang(changed, out));
    }

    private CoilState state(Map<Integer, CoilState> changed, int coil) {
        CoilState now = changed.get(coil);
        return now == null ? armature.coil(coil) : now;
    }

    private Altered hang(Map<Integer, CoilState> changed, List<Alteration> alterations) {
        if (!armature.bonds().isEmpty() || alterations.stream().noneMatch(a -> a.conductance() < 0)) {
            return new Altered(alterations, Set.of());
        }
        Set<Integer> alone = new TreeSet<>();
        for (Alteration a : alterations) {
            for (int bar : new int[] {a.from(), a.to()}) {
                if (isAlone(changed, alterations, bar)) {
                    alone.add(bar);
                }
            }
        }
        List<Alteration> kept = new ArrayList<>(alterations);
        for (int bar : alone) {
            for (int i = 0; i < kept.size(); i++) {
                Alteration a = kept.get(i);
                if (a.conductance() < 0 && (a.from() == bar || a.to() == bar)) {
                    kept.remove(i);
                    break;
                }
            }
        }
        return new Altered(kept, alone);
    }

    private boolean isAlone(Map<Integer, CoilState> changed, List<Alteration> alterations, int bar) {
        for (Alteration a : alterations) {
            if (a.conductance() > 0 && (a.from() == bar || a.to() == bar)) {
                return false;
            }
        }
        for (int coil : coilsOnBar.getOrDefault(bar, List.of())) {
            if (holds(state(changed, coil), bar)) {
                return false;
            }
        }
        return changed.values().stream().noneMatch(c -> holds(c, bar));
    }

    private static boolean holds(CoilState c, int bar) {
        if (!c.connected() || c.open()) {
            return false;
        }
        int top = c.topBar().getAsInt();
        int bottom = c.bottomBar().getAsInt();
        return top != bottom && (top == bar || bottom == bar);
    }

    private static boolean add(List<Alteration> out, CoilState was, CoilState is) {
        if (!was.connected() || !is.connected()) {
            return false;
        }
        double before = was.open() ? 0 : RunModel.conductance(was);
        double after = is.open() ? 0 : RunModel.conductance(is);
        double driveBefore = before;
        double driveAfter = after * is.turns() / was.turns();
        int top = was.topBar().getAsInt();
        int bottom = was.bottomBar().getAsInt();
        if (was.topBar().equals(is.topBar()) && was.bottomBar().equals(is.bottomBar())) {
            out.add(new Alteration(top, bottom, after - before, was.coil(), driveAfter - driveBefore));
            return true;
        }
        if (was.topBar().equals(is.bottomBar()) && was.bottomBar().equals(is.topBar())) {
            out.add(new Alteration(top, bottom, after - before, was.coil(), -driveAfter - driveBefore));
            return true;
        }
        out.add(new Alteration(top, bottom, -before, was.coil(), -driveBefore));
        int newTop = is.topBar().getAsInt();
        int newBottom = is.bottomBar().getAsInt();
        if (newTop != newBottom) {
            out.add(new Alteration(newTop, newBottom, after, was.coil(), driveAfter));
        }
        return true;
    }
}
