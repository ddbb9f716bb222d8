package coilwright.rewind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.rewind.WorkStep.End;
import coilwright.rewind.WorkStep.Kind;
import coilwright.rewind.WorkStep.Lead;
import coilwright.rewind.WorkStep.Side;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.CoilSide;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.Rules;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class WorkOrderTest {
    private record Place(int coil, End end) {}

    @Provide
    Arbitrary<Winding> windings() {
        return Arbitraries.oneOf(regular(), regular(), frogLegs(), listed());
    }

    @Provide
    Arbitrary<Winding> regular() {
        Arbitrary<int[]> counts = Combinators.combine(
                        Arbitraries.integers().between(2, 15),
                        Arbitraries.integers().between(1, 3),
                        Arbitraries.integers().between(1, 3),
                        Arbitraries.integers().between(1, 2),
                        Arbitraries.integers().between(0, 2),
                        Arbitraries.integers().between(1, 44))
                .as((s, u, p, m, dead, span) -> new int[] {s, u, p, m, dead, span});
        return Combinators.combine(
                        counts,
                        Arbitraries.of(WindingType.LAP, WindingType.WAVE),
                        Arbitraries.of(Direction.class),
                        Arbitraries.integers().between(-4, 4))
                .as((n, type, direction, offset) -> {
                    int q = n[0] * n[1];
                    List<Integer> dead = n[4] == 0 ? List.of() : n[4] == 1 ? List.of(q) : List.of(1, q / 2 + 1);
                    var spec = new WindingSpec.Regular(type, n[3], direction, CoilSpan.ofPositions(n[5]), dead, offset);
                    return build(q - dead.size() < 2 ? null : Armature.of(n[0], q - dead.size(), 2 * n[2]), spec);
                })
                .filter(Optional::isPresent)
                .map(Optional::get);
    }

    private Arbitrary<Winding> frogLegs() {
        return Combinators.combine(
                        Arbitraries.integers().between(2, 15),
                        Arbitraries.integers().between(1, 3),
                        Arbitraries.integers().between(1, 3),
                        Arbitraries.integers().between(1, 44),
                        Arbitraries.of(Direction.class))
                .as((s, u, p, span, direction) -> build(
                        Armature.of(s, s * u, 2 * p),
                        new WindingSpec.FrogLeg(1, direction, CoilSpan.ofPositions(span), 1)))
                .filter(Optional::isPresent)
                .map(Optional::get);
    }

    /** Any list at all: uneven spans, bare bars, coils of one lead, both sides in one slot. */
    private Arbitrary<Winding> listed() {
        return Combinators.combine(
                        Arbitraries.integers().between(2, 9),
                        Arbitraries.integers().between(2, 9),
                        Arbitraries.integers()
                                .between(0, 1000)
                                .list()
                                .ofMinSize(4)
                                .ofMaxSize(60))
                .as((s, k, random) -> {
                    List<ListedCoil> coils = new ArrayList<>();
                    for (int i = 0; i + 3 < random.size(); i += 4) {
                        int top = random.get(i + 2) % (k + 2);
                        int bottom = random.get(i + 3) % (k + 2);
                        coils.add(new ListedCoil(
                                1 + i / 4,
                                1 + random.get(i) % s,
                                1 + random.get(i + 1) % s,
                                top >= 1 && top <= k ? OptionalInt.of(top) : OptionalInt.empty(),
                                bottom >= 1 && bottom <= k ? OptionalInt.of(bottom) : OptionalInt.empty()));
                    }
                    return build(Armature.of(s, k, 2), new WindingSpec.Listed(coils));
                })
                .filter(Optional::isPresent)
                .map(Optional::get);
    }

    private static Optional<Winding> build(Armature a, WindingSpec spec) {
        return a == null || !Rules.blocking(a, spec).isEmpty() ? Optional.empty() : Optional.of(Winding.build(a, spec));
    }

    private static CoilSide side(Winding w, Place p) {
        Coil c = w.coil(p.coil());
        return p.end() == End.TOP ? c.top() : c.bottom();
    }

    private static List<Place> places(Winding w) {
        return w.coils().stream()
                .flatMap(c -> List.of(new Place(c.number(), End.TOP), new Place(c.number(), End.BOTTOM)).stream())
                .toList();
    }

    @Property(tries = 300)
    void everySideLiesOnceAndEveryLeadIsConnectedOnce(@ForAll("windings") Winding w, @ForAll WindingWay way) {
        if (way.refusal(w).isPresent()) {
            assertThatThrownBy(() -> WorkOrder.of(w, way))
                    .hasMessage(way.refusal(w).get());
            return;
        }
        WorkOrder order = WorkOrder.of(w, way);
        assertThat(WorkOrder.of(w, way)).isEqualTo(order);
        assertThat(order.steps().stream().map(WorkStep::number))
                .isEqualTo(
                        IntStream.rangeClosed(1, order.steps().size()).boxed().toList());
        List<Side> laid =
                order.steps().stream().flatMap(s -> s.sides().stream()).toList();
        assertThat(laid.stream().map(s -> new Place(s.coil(), s.end()))).containsExactlyInAnyOrderElementsOf(places(w));
        for (Side s : laid) {
            CoilSide planned = side(w, new Place(s.coil(), s.end()));
            assertThat(List.of(s.slot(), s.layer())).isEqualTo(List.of(planned.slot(), planned.layer()));
            assertThat(s.asPlanned() || way.byHand()).isTrue();
        }
        List<Lead> wanted = new ArrayList<>();
        for (Coil c : w.coils()) {
            c.topBar().ifPresent(b -> wanted.add(lead(c, End.TOP, c.top(), b)));
            c.bottomBar().ifPresent(b -> wanted.add(lead(c, End.BOTTOM, c.bottom(), b)));
        }
        assertThat(order.steps().stream().flatMap(s -> s.leads().stream())).containsExactlyInAnyOrderElementsOf(wanted);
        assertThat(order.steps(Kind.CUT_BACK).stream().flatMap(s -> s.coils().stream()))
                .isEqualTo(w.deadCoils().stream().map(Coil::number).toList());
        for (WorkStep s : order.steps()) {
            assertThat(s.slots())
                    .allMatch(n -> n >= 1 && n <= w.armature().slots())
                    .doesNotHaveDuplicates();
            assertThat(s.bars())
                    .allMatch(n -> n >= 1 && n <= w.armature().bars())
                    .doesNotHaveDuplicates();
            assertThat(s.coils()).allMatch(w::hasCoil).doesNotHaveDuplicates();
            assertThat(s.text()).isNotBlank().doesNotEndWith(".");
            assertThat(s.remarks()).allMatch(r -> r.endsWith("."));
            assertThat(s.tests().isEmpty()).isEqualTo(s.kind() != Kind.TEST);
        }
        wedgedWhenFullAndTested(w, order);
    }

    private static Lead lead(Coil c, End end, CoilSide side, int bar) {
        return new Lead(c.number(), end, side.slot(), side.layer(), bar);
    }

    /** Each slot that holds anything is wedged once, after its last side and after a test of every coil in it. */
    private static void wedgedWhenFullAndTested(Winding w, WorkOrder order) {
        Set<Integer> tested = new HashSet<>();
        Map<Integer, Integer> in = new LinkedHashMap<>();
        List<Integer> wedged = new ArrayList<>();
        for (WorkStep s : order.steps()) {
            s.sides().forEach(side -> in.merge(side.slot(), 1, Integer::sum));
            if (s.kind() == Kind.TEST) {
                tested.addAll(s.coils());
            } else if (s.kind() == Kind.WEDGE) {
                for (int slot : s.slots()) {
                    List<Place> there = places(w).stream()
                            .filter(p -> side(w, p).slot() == slot)
                            .toList();
                    assertThat(in.get(slot)).isEqualTo(there.size());
                    assertThat(there).allMatch(p -> tested.contains(p.coil()));
                    wedged.add(slot);
                }
            }
        }
        assertThat(wedged).containsExactlyInAnyOrderElementsOf(in.keySet());
    }

    @Property(tries = 300)
    void aSideIsPutDownOnlyOnWhatBelongsBeneathItAndLiftedOnlyWhereItMustBe(@ForAll("windings") Winding w) {
        WorkOrder order = WorkOrder.of(w, WindingWay.FORMED_COILS);
        Map<Place, Integer> downAt = new LinkedHashMap<>();
        Map<Place, Integer> liftedAt = new LinkedHashMap<>();
        List<Integer> separated = new ArrayList<>();
        for (WorkStep s : order.steps()) {
            // Within a step the bottom sides come first; each side may lean on what this step has put beneath it.
            for (Side side : s.sides()) {
                Place p = new Place(side.coil(), side.end());
                assertThat(missing(w, p, downAt.keySet()))
                        .as("beneath %s in step %s", side, s.number())
                        .isEmpty();
                downAt.put(p, s.number());
            }
            for (Side side : s.lifted()) {
                Place p = new Place(side.coil(), side.end());
                assertThat(missing(w, p, downAt.keySet()))
                        .as("lifted for nothing: %s", side)
                        .isNotEmpty();
                liftedAt.put(p, s.number());
            }
            separated.addAll(s.separators());
        }
        assertThat(order.lifted().stream()
                        .map(l -> new Place(l.side().coil(), l.side().end())))
                .containsExactlyInAnyOrderElementsOf(liftedAt.keySet());
        for (WorkOrder.Lifted l : order.lifted()) {
            Place p = new Place(l.side().coil(), l.side().end());
            assertThat(l.liftedAt()).isEqualTo(liftedAt.get(p));
            assertThat(l.loweredAt()).isEqualTo(downAt.get(p)).isGreaterThanOrEqualTo(l.freeAfter());
            int free = beneath(w, p).stream().mapToInt(downAt::get).max().getAsInt();
            assertThat(l.freeAfter()).isEqualTo(free).isGreaterThan(l.liftedAt());
        }
        // A separator wherever one layer lies upon another.
        List<Integer> expected = new ArrayList<>();
        for (int slot = 1; slot <= w.armature().slots(); slot++) {
            int here = slot;
            long layers = places(w).stream()
                    .map(p -> side(w, p))
                    .filter(s -> s.slot() == here)
                    .map(CoilSide::layer)
                    .distinct()
                    .count();
            for (int i = 1; i < layers; i++) {
                expected.add(slot);
            }
        }
        assertThat(separated).containsExactlyInAnyOrderElementsOf(expected);
    }

    private static List<Place> beneath(Winding w, Place p) {
        CoilSide mine = side(w, p);
        return places(w).stream()
                .filter(q -> side(w, q).slot() == mine.slot() && side(w, q).layer() > mine.layer())
                .toList();
    }

    private static List<Place> missing(Winding w, Place p, Set<Place> in) {
        return beneath(w, p).stream().filter(q -> !in.contains(q)).toList();
    }

    /** No other slot to begin with, and neither way round, keeps fewer sides lifted. */
    @Property(tries = 150)
    void asFewSidesAsPossibleStayLifted(@ForAll("regular") Winding w) {
        int s = w.armature().slots();
        int fewest = Integer.MAX_VALUE;
        for (int from = 1; from <= s; from++) {
            for (int sign : new int[] {1, -1}) {
                Set<Integer> filled = new HashSet<>();
                int lifted = 0;
                for (int i = 0; i < s; i++) {
                    int slot = w.armature().wrapSlot(from + sign * i);
                    filled.add(slot);
                    for (Coil c : w.coils()) {
                        if (c.bottom().slot() == slot
                                && !filled.contains(c.top().slot())) {
                            lifted++;
                        }
                    }
                }
                fewest = Math.min(fewest, lifted);
            }
        }
        assertThat(WorkOrder.of(w, WindingWay.FORMED_COILS).lifted()).hasSize(fewest);
    }

    /** Once a side is lowered, no bottom side is slid under its end connections any more. */
    @Property(tries = 150)
    void nothingIsSlidUnderALoweredSide(@ForAll("windings") Winding w) {
        WorkOrder order = WorkOrder.of(w, WindingWay.FORMED_COILS);
        Map<Integer, Integer> lastBottom = new LinkedHashMap<>();
        for (WorkStep s : order.steps()) {
            s.sides().stream().filter(x -> x.end() == End.BOTTOM).forEach(x -> lastBottom.put(x.slot(), s.number()));
        }
        boolean clockwise = order.notes().get(0).contains("go in clockwise");
        assertThat(clockwise || order.notes().get(0).contains("go in anticlockwise"))
                .isTrue();
        for (WorkOrder.Lifted l : order.lifted()) {
            int end = w.coil(l.side().coil()).bottom().slot();
            for (int slot = l.side().slot(); slot != end; ) {
                assertThat(lastBottom.getOrDefault(slot, 0)).isLessThan(l.loweredAt());
                slot = w.armature().wrapSlot(slot + (clockwise ? 1 : -1));
            }
        }
    }

    @Test
    void theFirstThrowOfATwoLayerWindingStaysLiftedToTheEnd() {
        Winding w = Winding.build(Armature.of(17, 17, 4), WindingSpec.wave(1, Direction.PROGRESSIVE));
        WorkOrder order = WorkOrder.of(w, WindingWay.FORMED_COILS);
        assertThat(order.steps(Kind.PLACE).stream().flatMap(s -> s.coils().stream()))
                .isEqualTo(IntStream.rangeClosed(1, 17).boxed().toList());
        assertThat(order.lifted().stream().map(l -> l.side().coil())).containsExactly(1, 2, 3, 4);
        int last = order.steps(Kind.PLACE).get(16).number();
        assertThat(order.lifted()).allMatch(l -> l.loweredAt() > last);
        WorkStep fills = order.steps(Kind.PLACE).get(13);
        assertThat(fills.coils()).containsExactly(14);
        assertThat(order.lifted().get(0).freeAfter()).isEqualTo(fills.number());
        assertThat(order.steps(Kind.LOWER).stream().map(WorkStep::slots))
                .containsExactly(List.of(1), List.of(2), List.of(3), List.of(4));
        assertThat(order.steps(Kind.PLACE).get(0).text())
                .isEqualTo("Put in coil 1: bottom side into slot 5; the top side, for slot 1, stays lifted");
        assertThat(order.steps(Kind.PLACE).get(4).text())
                .isEqualTo("Put in coil 5: bottom side into slot 9, top side into slot 5");
    }

    @Test
    void bottomLeadsComeBeforeEqualizersAndThoseBeforeTopLeads() {
        Winding w = Winding.build(Armature.of(24, 24, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        WorkOrder order = WorkOrder.of(w, WindingWay.FORMED_COILS, List.of(List.of(1, 13), List.of(4, 16)));
        List<String> sequence = new ArrayList<>();
        for (WorkStep s : order.steps()) {
            if (s.kind() == Kind.CONNECT || s.kind() == Kind.EQUALIZE) {
                String what = s.kind() == Kind.EQUALIZE
                        ? "equalizer"
                        : s.leads().get(0).end().word();
                if (sequence.isEmpty() || !sequence.get(sequence.size() - 1).equals(what)) {
                    sequence.add(what);
                }
            }
        }
        assertThat(sequence).containsExactly("bottom", "equalizer", "top");
        assertThat(order.steps(Kind.EQUALIZE))
                .extracting(WorkStep::bars)
                .containsExactly(List.of(1, 13), List.of(4, 16));
        assertThat(testsAfterJoining(order)).doesNotContain(WorkTest.BLADE);
        assertThat(testsAfterJoining(WorkOrder.of(w, WindingWay.FORMED_COILS))).contains(WorkTest.BLADE);
        assertThatThrownBy(() -> WorkOrder.of(w, WindingWay.FORMED_COILS, List.of(List.of(1, 25))))
                .hasMessage("an equalizer joins bar 25, but the bars run from 1 to 24");
        assertThatThrownBy(() -> WorkOrder.of(w, WindingWay.FORMED_COILS, List.of(List.of(1))))
                .hasMessageContaining("needs at least two bars");
    }

    private static List<WorkTest> testsAfterJoining(WorkOrder order) {
        int joined = order.steps(Kind.JOIN).get(0).number();
        return order.steps().stream()
                .filter(s -> s.number() > joined)
                .flatMap(s -> s.tests().stream())
                .toList();
    }

    @Test
    void aFrogLegFillsItsFourLayersFromTheFloorUp() {
        Winding w = Winding.build(
                Armature.of(24, 48, 4), new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.usual(), 0));
        WorkOrder order = WorkOrder.of(w, WindingWay.FORMED_COILS);
        Map<Integer, List<Integer>> layers = new LinkedHashMap<>();
        order.steps().stream()
                .flatMap(s -> s.sides().stream())
                .forEach(s ->
                        layers.computeIfAbsent(s.slot(), k -> new ArrayList<>()).add(s.layer()));
        assertThat(layers.values()).allMatch(l -> l.equals(List.of(4, 4, 3, 3, 2, 2, 1, 1)));
        List<Integer> leads = order.steps(Kind.CONNECT).stream()
                .map(s -> s.leads().get(0).layer())
                .distinct()
                .toList();
        assertThat(leads).containsExactly(4, 3, 2, 1);
    }

    @Test
    void woundByHandTheFirstCoilsLieAtTheFloorAndTheLastOnesOverThem() {
        Winding w = Winding.build(
                Armature.of(12, 24, 2),
                WindingSpec.lap(1, Direction.PROGRESSIVE).withSpan(CoilSpan.ofThrow(5)));
        WorkOrder order = WorkOrder.of(w, WindingWay.COIL_BY_COIL);
        assertThat(order.lifted()).isEmpty();
        assertThat(order.steps(Kind.WIND).stream().map(WorkStep::coils))
                .startsWith(List.of(1, 2), List.of(3, 4))
                .endsWith(List.of(23, 24));
        // Tops of the first throw lie at the floor; bottoms of the last throw lie over them.
        assertThat(order.inOtherLayers().stream()
                        .filter(s -> s.end() == End.TOP)
                        .map(Side::coil))
                .containsExactly(1, 2, 3, 4, 5, 6, 7, 8, 9, 10);
        assertThat(order.inOtherLayers().stream()
                        .filter(s -> s.end() == End.BOTTOM)
                        .map(Side::coil))
                .containsExactly(15, 16, 17, 18, 19, 20, 21, 22, 23, 24);
        assertThat(order.notes()).anyMatch(n -> n.contains("20 of 24 coils (1–10, 15–24) have a side in the other"));
        // A progressive simplex lap ends each coil on the bar where the next one starts: all in one go.
        assertThat(order.steps(Kind.WIND).stream().flatMap(s -> s.loops().stream()))
                .isEqualTo(IntStream.rangeClosed(2, 24).boxed().toList());
    }

    @Test
    void oppositePairsFollowEachOther() {
        Winding even = Winding.build(Armature.of(12, 12, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
        assertThat(order(even)).containsExactly(1, 7, 2, 8, 3, 9, 4, 10, 5, 11, 6, 12);
        Winding odd = Winding.build(Armature.of(5, 5, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
        assertThat(order(odd)).containsExactly(1, 3, 5, 2, 4);
        // A short throw keeps most layers of the plan when the pairs follow each other against the throw.
        Winding shorter = Winding.build(
                Armature.of(12, 12, 2),
                WindingSpec.lap(1, Direction.PROGRESSIVE).withSpan(CoilSpan.ofThrow(5)));
        assertThat(order(shorter)).containsExactly(1, 7, 12, 6, 11, 5, 10, 4, 9, 3, 8, 2);
        assertThat(WorkOrder.of(shorter, WindingWay.OPPOSITE_PAIRS).inOtherLayers())
                .hasSizeLessThan(8);
        Winding three = Winding.build(Armature.of(3, 3, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
        assertThatThrownBy(() -> WorkOrder.of(three, WindingWay.OPPOSITE_PAIRS))
                .hasMessage("with 3 slots no two coils lie opposite each other: choose coil-by-coil");
    }

    private static List<Integer> order(Winding w) {
        return WorkOrder.of(w, WindingWay.OPPOSITE_PAIRS).steps(Kind.WIND).stream()
                .flatMap(s -> s.coils().stream())
                .toList();
    }

    @Test
    void waysHaveWords() {
        for (WindingWay way : WindingWay.values()) {
            assertThat(WindingWay.named(way.word())).isEqualTo(way);
        }
        assertThatThrownBy(() -> WindingWay.named("knitted"))
                .hasMessage("there is no way of winding \"knitted\": choose one of formed-coils, coil-by-coil,"
                        + " opposite-pairs");
    }

    @Test
    void numbersInARowAreJoined() {
        assertThat(NumberRuns.of(List.of(1, 2, 3, 4, 7, 8, 12))).isEqualTo("1–4, 7, 8, 12");
        assertThat(NumberRuns.of(List.of(399, 400, 1, 2, 3))).isEqualTo("399, 400, 1–3");
        assertThat(NumberRuns.of(List.of(3, 2, 1))).isEqualTo("3, 2, 1");
        assertThat(NumberRuns.of(List.of())).isEmpty();
        assertThat(NumberRuns.of("coil", List.of(7))).isEqualTo("coil 7");
    }
}
