package coilwright.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class WindingGraphTest {
    static Optional<Winding> tryBuild(int slots, int bars, int poles, WindingSpec spec) {
        try {
            return Optional.of(Winding.build(Armature.of(slots, bars, poles), spec));
        } catch (ImpossibleWindingException e) {
            return Optional.empty();
        }
    }

    /** Lap, wave and frog-leg windings of a range of cores. */
    static List<Winding> some(int mostSlots, int mostSides, int mostPoles) {
        List<Winding> out = new ArrayList<>();
        for (int slots = 3; slots <= mostSlots; slots++) {
            for (int u = 1; u <= mostSides; u++) {
                for (int poles = 2; poles <= mostPoles; poles += 2) {
                    for (int plex = 1; plex <= 3; plex++) {
                        for (Direction direction : Direction.values()) {
                            for (WindingSpec spec : List.of(
                                    WindingSpec.lap(plex, direction),
                                    WindingSpec.wave(plex, direction),
                                    new WindingSpec.FrogLeg(plex, direction, CoilSpan.usual(), 0))) {
                                tryBuild(slots, slots * u, poles, spec).ifPresent(out::add);
                            }
                        }
                    }
                }
            }
        }
        return out;
    }

    private static int gcd(int a, int b) {
        return b == 0 ? Math.abs(a) : gcd(b, a % b);
    }

    @Test
    void closesAsOftenAsTheDivisorSays() {
        List<Winding> windings = some(21, 2, 8);
        assertThat(windings).hasSizeGreaterThan(1_000);
        for (Winding w : windings) {
            var graph = WindingGraph.of(w);
            List<Circuit> circuits = graph.circuits();
            int expected = w.sets().stream()
                    .mapToInt(s ->
                            gcd(w.armature().bars(), s.pitches().orElseThrow().commutator()))
                    .sum();
            assertThat(graph.closures()).isEqualTo(expected);
            assertThat(w.closures()).hasValue(expected);
            assertThat(circuits).hasSize(expected).allMatch(c -> c.kind() == Circuit.Kind.CLOSED);
            Set<Coil> met = new HashSet<>();
            for (Circuit c : circuits) {
                assertThat(c.bars()).doesNotHaveDuplicates().hasSameSizeAs(c.steps());
                for (int i = 0; i < c.steps().size(); i++) {
                    Step step = c.steps().get(i);
                    assertThat(met.add(step.coil())).isTrue();
                    assertThat(step.forward()).isTrue();
                    assertThat(step.fromBar()).isEqualTo(c.bars().get(i));
                    assertThat(step.toBar())
                            .isEqualTo(c.bars().get((i + 1) % c.bars().size()));
                }
            }
            assertThat(met).hasSameSizeAs(w.liveCoils());
        }
    }

    /** As the bars of an ideal field see it: exact tallies of coil sides met, by place within two pole pitches. */
    private static List<List<Integer>> equalBars(Winding w) {
        int s = w.armature().slots();
        int p = w.armature().polePairs();
        int k = w.armature().bars();
        int[][] potential = new int[k + 1][];
        int[] component = new int[k + 1];
        int parts = 0;
        for (int start = 1; start <= k; start++) {
            if (potential[start] != null) {
                continue;
            }
            potential[start] = new int[s];
            component[start] = ++parts;
            boolean more = true;
            while (more) {
                more = false;
                for (Coil c : w.liveCoils()) {
                    int top = c.topBar().getAsInt();
                    int bottom = c.bottomBar().getAsInt();
                    int from = potential[top] != null ? top : bottom;
                    int to = from == top ? bottom : top;
                    if (potential[from] != null && potential[to] == null) {
                        potential[to] = potential[from].clone();
                        int sign = from == top ? 1 : -1;
                        potential[to][c.top().slot() * p % s] += sign;
                        potential[to][c.bottom().slot() * p % s] -= sign;
                        component[to] = component[from];
                        more = true;
                    }
                }
            }
        }
        Set<Integer> unbalanced = new TreeSet<>();
        for (Coil c : w.liveCoils()) {
            int[] tally = potential[c.topBar().getAsInt()].clone();
            tally[c.top().slot() * p % s]++;
            tally[c.bottom().slot() * p % s]--;
            if (!Arrays.equals(tally, potential[c.bottomBar().getAsInt()])) {
                unbalanced.add(component[c.topBar().getAsInt()]);
            }
        }
        Map<String, List<Integer>> sets = new LinkedHashMap<>();
        for (int bar = 1; bar <= k; bar++) {
            if (unbalanced.contains(component[bar])) {
                continue;
            }
            sets.computeIfAbsent(component[bar] + Arrays.toString(potential[bar]), x -> new ArrayList<>())
                    .add(bar);
        }
        return sets.values().stream().filter(list -> list.size() > 1).toList();
    }

    @Test
    void barsAtOnePotentialAreThoseThatMeetTheSameSides() {
        for (Winding w : some(16, 2, 8)) {
            assertThat(WindingGraph.of(w).equipotentialBars())
                    .as("%s on %s", w.spec(), w.armature())
                    .isEqualTo(equalBars(w));
        }
    }

    @Test
    void aRingThatDoesNotCancelHasNoPotentials() {
        var lap = Winding.build(Armature.of(16, 16, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        List<ListedCoil> list = new ArrayList<>(lap.asListed().coils());
        ListedCoil one = list.get(4);
        // Coil 5 put in the wrong way round.
        list.set(4, ListedCoil.of(5, one.bottomSlot(), one.topSlot(), 5, 6));
        var reversed = Winding.build(lap.armature(), new WindingSpec.Listed(list));
        assertThat(WindingGraph.of(reversed).equipotentialBars()).isEmpty();
        assertThat(WindingGraph.of(Winding.build(lap.armature(), lap.asListed()))
                        .equipotentialBars())
                .hasSize(8);
        // Two pole pitches are 2.5 slots: the lap and wave parts do not quite cancel.
        var frogLeg = Winding.build(
                Armature.of(5, 10, 4), new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.usual(), 0));
        assertThat(WindingGraph.of(frogLeg).equipotentialBars()).isEmpty();
    }

    @Test
    void ringsOfAnEqualizedLapAreAnEqualizerPitchApart() {
        int seen = 0;
        for (Winding w : some(24, 2, 8)) {
            int p = w.armature().polePairs();
            if (w.type() != WindingType.LAP
                    || w.sets().get(0).plex().getAsInt() > 1
                    || w.armature().slots() % p != 0
                    || w.armature().slots() < 2 * p
                    || p == 1) {
                continue;
            }
            int pitch = w.equalizerPitch().orElseThrow();
            List<List<Integer>> rings = WindingGraph.of(w).equipotentialBars();
            Map<Integer, List<Integer>> byBar = new TreeMap<>();
            rings.forEach(ring -> ring.forEach(bar -> byBar.put(bar, ring)));
            for (int bar = 1; bar <= w.armature().bars(); bar++) {
                assertThat(byBar.get(bar))
                        .as("%s on %s", w.spec(), w.armature())
                        .contains(w.armature().wrapBar(bar + pitch));
            }
            seen++;
        }
        assertThat(seen).isGreaterThan(50);
        // The full set of Hawkins, vol. 2 (points of equal potential): 4 poles, 16 bars, 8 rings of 2 taps.
        var sixteen = Winding.build(Armature.of(16, 16, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        assertThat(WindingGraph.of(sixteen).equipotentialBars())
                .containsExactly(
                        List.of(1, 9),
                        List.of(2, 10),
                        List.of(3, 11),
                        List.of(4, 12),
                        List.of(5, 13),
                        List.of(6, 14),
                        List.of(7, 15),
                        List.of(8, 16));
        var thirteen = Winding.build(Armature.of(13, 13, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        assertThat(WindingGraph.of(thirteen).equipotentialBars()).isEmpty();
    }

    @Test
    void waysBetweenBarsOfARing() {
        // Kharagpur notes: between adjacent bars of a 4-pole simplex wave lie P/2 = 2 coils.
        var wave = WindingGraph.of(Winding.build(Armature.of(17, 17, 4), WindingSpec.wave(1, Direction.PROGRESSIVE)));
        List<List<Step>> ways = wave.between(1, 2);
        assertThat(ways).hasSize(2);
        assertThat(ways.get(0)).extracting(s -> s.coil().number()).containsExactly(1, 10);
        assertThat(ways.get(1)).hasSize(15);
        assertThat(ways.get(1).get(0).fromBar()).isEqualTo(1);
        assertThat(ways.get(1).get(14).toBar()).isEqualTo(2);
        var lap = WindingGraph.of(Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(2, Direction.PROGRESSIVE)));
        assertThat(lap.between(1, 2)).isEmpty();
        assertThat(lap.between(1, 3).get(0)).extracting(s -> s.coil().number()).containsExactly(1);
        assertThat(lap.between(3, 1).get(0)).extracting(Step::forward).containsExactly(false);
        assertThat(lap.between(12, 2).get(0)).extracting(s -> s.coil().number()).containsExactly(12);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> lap.between(1, 13))
                .withMessage("bars 1 and 13 were given: name two different bars from 1 to 12");
        assertThatIllegalArgumentException().isThrownBy(() -> lap.between(4, 4));
    }

    @Test
    void waysLeadFromBarToBar() {
        for (Winding w : some(9, 2, 6)) {
            var graph = WindingGraph.of(w);
            int k = w.armature().bars();
            for (int to = 2; to <= k; to++) {
                List<List<Step>> ways = graph.between(1, to);
                for (List<Step> way : ways) {
                    int bar = 1;
                    for (Step s : way) {
                        assertThat(s.fromBar()).isEqualTo(bar);
                        assertThat(new TreeSet<>(List.of(
                                        s.coil().topBar().getAsInt(),
                                        s.coil().bottomBar().getAsInt())))
                                .isEqualTo(new TreeSet<>(List.of(s.fromBar(), s.toBar())));
                        bar = s.toBar();
                    }
                    assertThat(bar).isEqualTo(to);
                }
                if (w.sets().size() == 1 && !ways.isEmpty()) {
                    assertThat(ways).hasSize(2);
                    assertThat(ways.get(0).size() + ways.get(1).size()).isEqualTo(k / graph.closures());
                    assertThat(ways.get(0).size())
                            .isLessThanOrEqualTo(ways.get(1).size());
                }
            }
        }
    }

    @Test
    void coilsThatShareASlotOrABar() {
        var w = Winding.build(Armature.of(12, 24, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        var graph = WindingGraph.of(w);
        assertThat(graph.coilsInSlot(1)).extracting(Coil::number).containsExactly(1, 2, 19, 20);
        assertThat(graph.coilsOnBar(1)).extracting(Coil::number).containsExactly(1, 24);
        assertThat(graph.graph().vertexSet()).hasSize(24);
        assertThat(graph.graph().edgeSet()).hasSize(24);
        assertThat(graph.winding()).isSameAs(w);
    }

    @Test
    void brokenListsKeepTheirShapes() {
        var spec = new WindingSpec.Listed(List.of(
                ListedCoil.of(1, 1, 3, 1, 2),
                ListedCoil.of(2, 2, 4, 2, 3),
                // A chain of two; a coil on itself; two coils side by side; a bar that three leads meet; one bare bar.
                ListedCoil.of(3, 3, 1, 4, 4),
                ListedCoil.of(4, 4, 2, 5, 6),
                ListedCoil.of(5, 1, 3, 5, 6),
                ListedCoil.of(6, 2, 4, 7, 8),
                ListedCoil.of(7, 3, 1, 8, 9),
                ListedCoil.of(8, 4, 2, 8, 7)));
        var graph = WindingGraph.of(Winding.build(Armature.of(4, 10, 2), spec));

        assertThat(graph.circuits())
                .extracting(Circuit::kind)
                .containsExactly(
                        Circuit.Kind.OPEN,
                        Circuit.Kind.CLOSED,
                        Circuit.Kind.CLOSED,
                        Circuit.Kind.BRANCHED,
                        Circuit.Kind.BARE_BAR);
        assertThat(graph.circuits().get(0).bars()).containsExactly(1, 2, 3);
        assertThat(graph.circuits().get(2).steps())
                .extracting(s -> s.coil().number())
                .containsExactly(4, 5);
        assertThat(graph.closures()).isEqualTo(2);
        assertThat(graph.between(3, 1).get(0))
                .extracting(s -> s.coil().number())
                .containsExactly(2, 1);
        assertThat(graph.between(7, 9).get(0)).hasSize(2);
        assertThat(graph.between(1, 4)).isEmpty();
        // The side-by-side coils 4 and 5 lie in other slots, but bars 5 and 6 are joined.
        assertThat(graph.between(5, 6)).hasSize(2).allMatch(way -> way.size() == 1);
    }

    @Test
    void aCoilOnTheLastBarAloneHasNoPotentialToShare() {
        var spec = new WindingSpec.Listed(
                List.of(ListedCoil.of(1, 1, 3, 1, 2), ListedCoil.of(2, 1, 3, 2, 1), ListedCoil.of(3, 2, 4, 3, 3)));
        assertThat(WindingGraph.of(Winding.build(Armature.of(4, 3, 2), spec)).equipotentialBars())
                .isEmpty();
    }
}
