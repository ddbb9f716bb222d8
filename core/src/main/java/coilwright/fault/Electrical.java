package coilwright.fault;

import coilwright.bench.BenchArmature;
import coilwright.bench.ResistanceTest;
import coilwright.circuit.WindingGraph;
import coilwright.winding.CoilSet;
import coilwright.winding.Winding;
import coilwright.winding.WindingType;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;

/** What a winding shows on the bench, worked out when asked. */
final class Electrical {
    private final Winding winding;
    private final Map<Long, OptionalDouble> known = new HashMap<>();
    private Optional<ResistanceTest> test = Optional.empty();

    Electrical(Winding winding) {
        this.winding = winding;
    }

    /** Bars from a coil's top lead to its bottom lead, clockwise. */
    List<Integer> steps() {
        return winding.sets().stream()
                .map(s -> Math.floorMod(
                        s.pitches().orElseThrow().commutator(),
                        winding.armature().bars()))
                .distinct()
                .toList();
    }

    /** Separate circuits, those of a frog-leg winding joined through their bars. */
    int circuits() {
        int circuits = winding.armature().bars();
        for (CoilSet set : winding.sets()) {
            circuits = set.pitches().orElseThrow().closures(circuits);
        }
        return circuits;
    }

    /** Resistance between two bars with each coil 1; empty where they are not joined. */
    OptionalDouble resistance(int bar, int other) {
        return known.computeIfAbsent((long) bar << 32 | other, key -> {
            if (Math.floorMod(bar - other, circuits()) != 0) {
                return OptionalDouble.empty();
            }
            if (test.isEmpty()) {
                test = Optional.of(ResistanceTest.of(BenchArmature.sound(winding, 1)));
            }
            return test.get().between(bar, other);
        });
    }

    /**
     * Over how many slots the blade hums with two neighbouring bars joined; empty where neighbours are joined
     * through so many coils that no count is sure. It hums where the sides of the coils between them do not cancel;
     * everywhere in a frog-leg winding; nowhere where the neighbours belong to separate circuits.
     */
    OptionalInt bladeSlots() {
        if (winding.type() == WindingType.FROG_LEG) {
            return OptionalInt.of(winding.armature().slots());
        }
        if (circuits() > 1) {
            return OptionalInt.of(0);
        }
        int k = winding.armature().bars();
        int sure = winding.type() == WindingType.LAP ? 1 : winding.armature().polePairs();
        OptionalLong count = OptionalLong.empty();
        WindingGraph graph = WindingGraph.of(winding);
        // Away from dead coils, which may lie elsewhere than in this winding.
        for (int bar : new int[] {1, 1 + k / 3, 1 + 2 * k / 3}) {
            var way = graph.between(bar, winding.armature().wrapBar(bar + 1)).get(0);
            if (way.size() != sure) {
                return OptionalInt.empty();
            }
            Map<Integer, Integer> net = new LinkedHashMap<>();
            way.forEach(step -> {
                int sign = step.forward() ? 1 : -1;
                net.merge(step.coil().top().slot(), sign, Integer::sum);
                net.merge(step.coil().bottom().slot(), -sign, Integer::sum);
            });
            long n = net.values().stream().filter(x -> x != 0).count();
            if (count.isPresent() && count.getAsLong() != n) {
                return OptionalInt.empty();
            }
            count = OptionalLong.of(n);
        }
        return OptionalInt.of((int) count.getAsLong());
    }
}
