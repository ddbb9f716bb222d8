package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.circuit.Brush;
import coilwright.circuit.BrushGear;
import coilwright.circuit.Neutral;
import coilwright.fault.EmergencyRepair.Option;
import coilwright.fault.EmergencyRepair.Plan;
import coilwright.fault.EmergencyRepair.Trouble;
import coilwright.fault.EmergencyRepair.Way;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import net.jqwik.api.Example;
import org.jgrapht.GraphPath;
import org.jgrapht.alg.shortestpath.AllDirectedPaths;
import org.jgrapht.graph.DirectedPseudograph;

class EmergencyRepairTest {
    private static final Winding LAP = Winding.build(Armature.of(24, 24, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
    private static final Winding WAVE =
            Winding.build(Armature.of(25, 25, 4), WindingSpec.wave(1, Direction.PROGRESSIVE));

    @Example
    void lapBridgesTheNeighbouringBarsOfTheCoil() {
        Plan plan = EmergencyRepair.of(LAP, 5, Trouble.OPEN);
        assertThat(plan.lift())
                .isEqualTo("lift the top lead of coil 5 from bar 5 and its bottom lead from bar 6, and insulate both");
        assertThat(plan.best().way()).isEqualTo(Way.OWN_BARS);
        assertThat(plan.best().bridge()).containsExactly(5, 6);
        assertThat(plan.best().lost()).containsExactly(5);
        assertThat(plan.sound().paths()).isEqualTo(4);
        assertThat(plan.best().cost().paths()).isEqualTo(4);
        // 24 coils in 4 paths, 6 in each with every brush on one bar, one fewer where a brush is on two.
        assertThat(plan.sound().mostCoils()).isEqualTo(6);
        assertThat(plan.sound().fewestCoils()).isEqualTo(5);
        assertThat(plan.best().cost().fewestCoils()).isEqualTo(4);
        assertThat(plan.sound().unbalance()).isZero();
        assertThat(plan.best().cost().unbalance()).isGreaterThan(0.1);
        Option none = plan.options().get(plan.options().size() - 1);
        assertThat(none.way()).isEqualTo(Way.NO_BRIDGE);
        assertThat(none.cost().paths()).isEqualTo(3);
    }

    @Example
    void aShortedCoilMustBeCutThrough() {
        Plan plan = EmergencyRepair.of(LAP, 24, Trouble.SHORTED);
        assertThat(plan.lift()).contains("bar 24").contains("from bar 1,").contains("cut the coil through at the back");
        assertThat(plan.cautions()).anyMatch(c -> c.startsWith("This is an emergency measure"));
    }

    @Example
    void waveOffersItsOwnBarsAndEveryTripThroughTheCoil() {
        Plan plan = EmergencyRepair.of(WAVE, 5, Trouble.OPEN);
        // yc = (25 + 1)/2 = 13: coil 5 from bar 5 to bar 18, then coil 18 to bar 6; before it coil 17 from bar 17.
        assertThat(plan.best().way()).isEqualTo(Way.OWN_BARS);
        assertThat(plan.best().bridge()).containsExactly(5, 18);
        assertThat(plan.options().stream()
                        .filter(o -> o.way() == Way.WHOLE_TRIP)
                        .map(Option::bridge))
                .containsExactlyInAnyOrder(List.of(5, 6), List.of(17, 18));
        assertThat(plan.options().stream()
                        .filter(o -> o.way() == Way.WHOLE_TRIP)
                        .map(Option::lost))
                .containsExactlyInAnyOrder(List.of(5, 18), List.of(5, 17));
        Option trip = plan.options().get(1);
        assertThat(trip.cost().unbalance()).isGreaterThan(plan.best().cost().unbalance());
        Option none = plan.options().get(plan.options().size() - 1);
        assertThat(none.way()).isEqualTo(Way.NO_BRIDGE);
        assertThat(none.cost().paths()).isEqualTo(1);
        assertThat(plan.sound().paths()).isEqualTo(2);
    }

    /** In a sine-wave field the largest coil voltage is π/2 of the mean over a pole pitch. */
    @Example
    void voltsBetweenBarsOfAManyBarLapAreHalfPiOfTheMean() {
        Winding w = Winding.build(Armature.of(60, 60, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
        Plan plan = EmergencyRepair.of(w, 7, Trouble.OPEN);
        assertThat(plan.sound().barVolts()).isCloseTo(Math.PI / 2, within(0.01));
        // With one coil gone the mean is less, the largest is not.
        assertThat(plan.best().cost().barVolts()).isGreaterThan(plan.sound().barVolts());
        assertThat(plan.best().cost().volts()).isLessThan(plan.sound().volts());
    }

    @Example
    void frogLegNeedsNoBridge() {
        Winding w = Winding.build(
                Armature.of(16, 16, 4),
                new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, coilwright.winding.CoilSpan.usual(), 0));
        Plan plan = EmergencyRepair.of(w, 3, Trouble.OPEN);
        assertThat(plan.options()).extracting(Option::way).containsExactly(Way.NO_BRIDGE);
        assertThat(plan.best().cost().paths()).isLessThan(plan.sound().paths());
        assertThat(plan.cautions()).anyMatch(c -> c.startsWith("Join no bars"));
    }

    @Example
    void whatCannotBeCutOutIsRefused() {
        Winding dead = Winding.build(
                Armature.of(12, 23, 4),
                WindingSpec.wave(1, Direction.PROGRESSIVE).withDeadCoils(List.of(24)));
        assertThatThrownBy(() -> EmergencyRepair.of(dead, 24, Trouble.OPEN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("coil 24 is dead");
        assertThatThrownBy(() -> EmergencyRepair.of(dead, 25, Trouble.OPEN))
                .hasMessageContaining("there is no coil 25");
    }

    /** Every way along the coils between the brushes, found by trying all of them. */
    @Example
    void pathsAgreeWithTryingEveryWay() {
        int compared = 0;
        for (Winding w : SmallWindings.of(7, 10, 1, 6, 2)) {
            if (w.type() == WindingType.FROG_LEG || w.armature().polePitchBars() < 2) {
                continue;
            }
            Coil faulty = w.liveCoils().get(w.liveCoils().size() / 3);
            Plan plan = EmergencyRepair.of(w, faulty.number(), Trouble.OPEN);
            double width = BrushGear.leastWidth(w);
            for (int step = 0; step < 2 * w.armature().bars(); step++) {
                double rotor =
                        Neutral.of(w).fromPoleCentre() - step * w.armature().barAngle() / 2;
                BrushGear gear = BrushGear.at(w, rotor, width);
                compare(w, gear, Optional.empty(), List.of());
                for (Option o : plan.options()) {
                    compare(w, gear, Optional.of(faulty), o.bridge());
                    compared++;
                }
            }
        }
        assertThat(compared).isGreaterThan(2000);
    }

    private static void compare(Winding w, BrushGear gear, Optional<Coil> lifted, List<Integer> bridge) {
        Map<Integer, Integer> name = new HashMap<>();
        for (int bar = 1; bar <= w.armature().bars(); bar++) {
            name.put(bar, bar);
        }
        Set<Integer> both = new TreeSet<>();
        for (Brush b : gear.brushes()) {
            for (int bar : b.bars()) {
                int to = b.positive() ? 1001 : 1002;
                if (name.get(bar) > 1000 && name.get(bar) != to) {
                    both.add(bar);
                }
                name.put(bar, to);
            }
        }
        if (!bridge.isEmpty()) {
            int a = name.get(bridge.get(0));
            int b = name.get(bridge.get(1));
            if (a > 1000 && b > 1000 && a != b) {
                both.add(bridge.get(0));
            }
            int to = Math.max(a, b);
            name.replaceAll((bar, n) -> n == a || n == b ? to : n);
        }
        Optional<PathVolts> got = PathVolts.of(w, gear, lifted, bridge);
        if (!both.isEmpty()) {
            assertThat(got).isEmpty();
            return;
        }
        var graph = new DirectedPseudograph<Integer, double[]>(double[].class);
        name.values().forEach(graph::addVertex);
        for (Coil c : w.liveCoils()) {
            int a = name.get(c.topBar().getAsInt());
            int b = name.get(c.bottomBar().getAsInt());
            if (a == b || lifted.equals(Optional.of(c))) {
                continue;
            }
            double p = w.armature().polePairs();
            double top =
                    p * (gear.rotorAngle() + w.armature().slotCentre(c.top().slot())) * Math.PI / 180;
            double bottom =
                    p * (gear.rotorAngle() + w.armature().slotCentre(c.bottom().slot())) * Math.PI / 180;
            double e = Math.sin((bottom - top) / 2) * Math.sin((top + bottom) / 2);
            graph.addEdge(a, b, new double[] {e});
            graph.addEdge(b, a, new double[] {-e});
        }
        List<GraphPath<Integer, double[]>> all = graph.containsVertex(1001) && graph.containsVertex(1002)
                ? new AllDirectedPaths<>(graph).getAllPaths(1001, 1002, true, null)
                : new ArrayList<>();
        if (all.isEmpty()) {
            assertThat(got).isEmpty();
            return;
        }
        var volts = all.stream()
                .mapToDouble(path ->
                        path.getEdgeList().stream().mapToDouble(e -> e[0]).sum())
                .summaryStatistics();
        var coils = all.stream().mapToInt(GraphPath::getLength).summaryStatistics();
        PathVolts v = got.orElseThrow();
        assertThat(v.least()).isCloseTo(volts.getMin(), within(1e-9));
        assertThat(v.most()).isCloseTo(volts.getMax(), within(1e-9));
        assertThat(v.mean()).isCloseTo(volts.getAverage(), within(1e-9));
        assertThat(v.fewestCoils()).isEqualTo(coils.getMin());
        assertThat(v.mostCoils()).isEqualTo(coils.getMax());
    }
}
