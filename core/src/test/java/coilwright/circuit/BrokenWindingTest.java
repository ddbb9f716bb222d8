package coilwright.circuit;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.ListedCoil;
import coilwright.winding.Rules;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Any connection list, however broken, is taken and traced. */
class BrokenWindingTest {
    @Provide
    Arbitrary<Winding> broken() {
        return Arbitraries.longs().map(BrokenWindingTest::make);
    }

    private static Winding make(long n) {
        var random = new Random(n);
        int slots = 2 + random.nextInt(12);
        int bars = 2 + random.nextInt(20);
        int poles = 2 * (1 + random.nextInt(3));
        int coils = 1 + random.nextInt(25);
        List<ListedCoil> list = new ArrayList<>();
        for (int i = 1; i <= coils; i++) {
            list.add(new ListedCoil(
                    i * 3 - random.nextInt(3),
                    1 + random.nextInt(slots),
                    1 + random.nextInt(slots),
                    bar(random, bars),
                    bar(random, bars)));
        }
        return Winding.build(Armature.of(slots, bars, poles), new WindingSpec.Listed(list));
    }

    private static OptionalInt bar(Random random, int bars) {
        return random.nextInt(8) == 0 ? OptionalInt.empty() : OptionalInt.of(1 + random.nextInt(bars));
    }

    @Property(tries = 1000)
    void isTracedWhole(@ForAll("broken") Winding w) {
        var graph = WindingGraph.of(w);
        assertThat(Rules.check(w)).isNotNull();
        Set<Integer> bars = new HashSet<>();
        Set<Coil> coils = new HashSet<>();
        for (Circuit c : graph.circuits()) {
            for (int bar : c.bars()) {
                assertThat(bars.add(bar)).isTrue();
            }
            for (Step s : c.steps()) {
                assertThat(coils.add(s.coil())).isTrue();
            }
        }
        assertThat(bars).hasSize(w.armature().bars());
        assertThat(coils).hasSameSizeAs(w.liveCoils());
        for (int bar = 2; bar <= w.armature().bars(); bar++) {
            for (List<Step> way : graph.between(1, bar)) {
                int at = 1;
                for (Step s : way) {
                    assertThat(s.fromBar()).isEqualTo(at);
                    at = s.toBar();
                }
                assertThat(at).isEqualTo(bar);
            }
        }
        Set<Integer> equal = new HashSet<>();
        for (List<Integer> set : graph.equipotentialBars()) {
            assertThat(set).hasSizeGreaterThan(1).isSorted();
            for (int bar : set) {
                assertThat(equal.add(bar)).isTrue();
            }
        }
    }

    @Property(tries = 1000)
    void itsPathsHoldNoCoilTwice(@ForAll("broken") Winding w, @ForAll double turn) {
        if (w.liveCoils().isEmpty() || Math.abs(turn) > 1e6) {
            return;
        }
        for (double width : new double[] {0.4, 1, Math.max(1, w.armature().polePitchBars())}) {
            var gear = BrushGear.at(w, turn, width);
            List<Coil> met = new ArrayList<>();
            gear.paths().forEach(p -> p.steps().forEach(s -> met.add(s.coil())));
            met.addAll(gear.shorted());
            met.addAll(gear.idle());
            assertThat(met).doesNotHaveDuplicates().hasSameSizeAs(w.liveCoils());
        }
    }

    @Property(tries = 300)
    void listedAgainItIsTheSame(@ForAll("broken") Winding w) {
        var again = Winding.build(w.armature(), w.asListed());
        assertThat(again.coils()).isEqualTo(w.coils());
    }
}
