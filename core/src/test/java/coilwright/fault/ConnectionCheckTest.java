package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import coilwright.fault.ConnectionCheck.Difference;
import coilwright.fault.ConnectionCheck.Kind;
import coilwright.fault.ConnectionCheck.Result;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class ConnectionCheckTest {
    private static final Winding LAP = Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));

    /** Enough bars that no coil shares both its bars with another. */
    private static final List<Winding> MANY = SmallWindings.of(7, 13, 2, 6, 3);

    private static List<ListedCoil> rows(Winding w) {
        return new ArrayList<>(w.asListed().coils());
    }

    private static ListedCoil on(ListedCoil c, OptionalInt top, OptionalInt bottom) {
        return new ListedCoil(c.coil(), c.topSlot(), c.bottomSlot(), top, bottom);
    }

    @Provide
    Arbitrary<Winding> windings() {
        return Arbitraries.of(MANY);
    }

    @Example
    void theHandCases() {
        List<ListedCoil> rows = rows(LAP);
        // By the table coil 3 runs from bar 3 to bar 4, coil 4 from bar 4 to bar 5.
        assertThat(rows.get(2)).isEqualTo(ListedCoil.of(3, 3, 6, 3, 4));
        rows.set(2, ListedCoil.of(3, 3, 6, 3, 5));
        rows.set(3, ListedCoil.of(4, 4, 7, 4, 4));
        rows.set(6, ListedCoil.of(7, 7, 10, 8, 7));
        rows.set(8, ListedCoil.of(9, 9, 12, 9, 12));
        rows.set(9, new ListedCoil(10, 10, 1, OptionalInt.of(10), OptionalInt.empty()));
        rows.set(10, ListedCoil.of(11, 11, 3, 11, 12));
        Result result = ConnectionCheck.of(LAP, rows);
        assertThat(result.same()).isFalse();
        assertThat(result.whole()).isEmpty();
        assertThat(result.differences())
                .extracting(Difference::coil, Difference::kind, Difference::with)
                .containsExactly(
                        tuple(3, Kind.SWAPPED_LEADS, List.of(4)),
                        tuple(4, Kind.SWAPPED_LEADS, List.of(3)),
                        tuple(7, Kind.REVERSED_COIL, List.of()),
                        tuple(9, Kind.SHIFTED_BAR, List.of()),
                        tuple(10, Kind.LEAD_OFF, List.of()),
                        tuple(11, Kind.WRONG_SLOT, List.of()));
        assertThat(result.differences().get(0).words())
                .isEqualTo("bottom lead exchanged with the bottom lead of coil 4: move it from bar 5 to bar 4");
        assertThat(result.differences().get(3).words())
                .isEqualTo("bottom lead on bar 12, 2 bars clockwise of its own: move it to bar 10");
        assertThat(result.differences().get(5).words()).isEqualTo("bottom side in slot 3 instead of slot 2");
    }

    @Property(tries = 500)
    void thePlanItselfInAnyOrderIsTheSame(@ForAll("windings") Winding w, @ForAll Random random) {
        List<ListedCoil> rows = rows(w);
        Collections.shuffle(rows, random);
        assertThat(ConnectionCheck.of(w, rows)).isEqualTo(ConnectionCheck.of(w, rows(w)));
        assertThat(ConnectionCheck.of(w, rows).same()).isTrue();
    }

    @Property(tries = 2000)
    void oneAlterationIsFoundWithItsKindAndNothingElse(
            @ForAll("windings") Winding w, @ForAll Kind kind, @ForAll Random random) {
        List<ListedCoil> rows = rows(w);
        List<Coil> live = w.liveCoils();
        int k = w.armature().bars();
        int s = w.armature().slots();
        Coil coil = live.get(random.nextInt(live.size()));
        int i = w.coils().indexOf(coil);
        ListedCoil row = rows.get(i);
        List<Integer> hit = new ArrayList<>(List.of(coil.number()));
        switch (kind) {
            case SWAPPED_LEADS -> {
                Coil other = live.get(random.nextInt(live.size()));
                int j = w.coils().indexOf(other);
                ListedCoil row2 = rows.get(j);
                Assume.that(i != j);
                boolean top = random.nextBoolean();
                boolean otherTop = random.nextBoolean();
                OptionalInt mine = top ? row.topBar() : row.bottomBar();
                OptionalInt its = otherTop ? row2.topBar() : row2.bottomBar();
                Assume.that(!mine.equals(its));
                rows.set(i, top ? on(row, its, row.bottomBar()) : on(row, row.topBar(), its));
                rows.set(j, otherTop ? on(row2, mine, row2.bottomBar()) : on(row2, row2.topBar(), mine));
                hit.add(other.number());
                Collections.sort(hit);
            }
            case SHIFTED_BAR -> {
                int by = 1 + random.nextInt(k - 1);
                int bar = w.armature().wrapBar(row.topBar().getAsInt() + by);
                rows.set(
                        i,
                        random.nextBoolean()
                                ? on(row, OptionalInt.of(bar), row.bottomBar())
                                : on(row, row.topBar(), OptionalInt.of(k + by)));
            }
            case REVERSED_COIL -> rows.set(i, on(row, row.bottomBar(), row.topBar()));
            case MISSING -> rows.remove(i);
            case DOUBLED -> {
                if (random.nextBoolean()) {
                    rows.add(random.nextInt(rows.size()), on(row, row.topBar(), OptionalInt.empty()));
                } else {
                    hit.set(0, 9000);
                    rows.add(ListedCoil.of(9000, 1, 2, 1, 2));
                }
            }
            case WRONG_SLOT ->
                rows.set(
                        i,
                        new ListedCoil(
                                row.coil(),
                                row.topSlot(),
                                w.armature().wrapSlot(row.bottomSlot() + 1 + random.nextInt(s - 1)),
                                row.topBar(),
                                row.bottomBar()));
            case LEAD_OFF ->
                rows.set(
                        i,
                        random.nextBoolean()
                                ? on(row, OptionalInt.empty(), row.bottomBar())
                                : on(row, row.topBar(), OptionalInt.empty()));
            case DEAD_INSTEAD_OF_LIVE -> rows.set(i, on(row, OptionalInt.empty(), OptionalInt.empty()));
            case LIVE_INSTEAD_OF_DEAD -> {
                Assume.that(!w.deadCoils().isEmpty());
                Coil dead = w.deadCoils().get(0);
                hit.set(0, dead.number());
                int j = w.coils().indexOf(dead);
                rows.set(j, on(rows.get(j), OptionalInt.of(1), OptionalInt.of(2)));
            }
            case WRONG_DIRECTION -> {
                // Tested as a whole below.
                Assume.that(false);
            }
        }
        Collections.shuffle(rows, random);
        Result result = ConnectionCheck.of(w, rows);
        assertThat(result.whole()).isEmpty();
        assertThat(result.differences()).extracting(Difference::kind).containsOnly(kind);
        assertThat(result.differences()).extracting(Difference::coil).isEqualTo(hit);
    }

    @Property(tries = 500)
    void theOtherDirectionIsOneFindingWhateverItsLeadOffset(@ForAll("windings") Winding w, @ForAll Random random) {
        Assume.that(
                w.spec() instanceof WindingSpec.Regular && Layout.reversed(w).isPresent());
        var spec = (WindingSpec.Regular) w.spec();
        int offset = random.nextInt(w.armature().bars());
        Winding other = Winding.build(
                w.armature(),
                new WindingSpec.Regular(
                        spec.type(), spec.plex(), spec.direction().reversed(), spec.span(), spec.deadCoils(), offset));
        List<ListedCoil> rows = rows(other);
        int reversed = random.nextInt(rows.size());
        ListedCoil r = rows.get(reversed);
        Assume.that(r.topBar().isPresent());
        Result result = ConnectionCheck.of(w, rows);
        assertThat(result.differences()).isEmpty();
        assertThat(result.whole()).hasValueSatisfying(whole -> {
            assertThat(whole.kind()).isEqualTo(Kind.WRONG_DIRECTION);
            assertThat(whole.expectedStep()).isEqualTo(w.pitches().orElseThrow().commutator());
            assertThat(whole.foundStep())
                    .isEqualTo(other.pitches().orElseThrow().commutator());
            assertThat(whole.coils()).hasSize(w.liveCoils().size());
            assertThat(whole.words())
                    .contains("connected " + spec.direction().reversed().word() + " instead of "
                            + spec.direction().word())
                    .contains("turns the other way");
        });
        rows.set(reversed, on(r, r.bottomBar(), r.topBar()));
        Result both = ConnectionCheck.of(w, rows);
        assertThat(both.whole()).isPresent();
        // A coil changed over in a lap winding of the other direction may land where the plan has it.
        assertThat(both.differences())
                .allSatisfy(d -> assertThat(d.kind()).isEqualTo(Kind.REVERSED_COIL))
                .hasSizeLessThanOrEqualTo(1);
    }

    @Property(tries = 300)
    void allLeadsShiftedIsOneFinding(@ForAll("windings") Winding w, @ForAll Random random) {
        int k = w.armature().bars();
        int by = 1 + random.nextInt(k - 1);
        List<ListedCoil> rows = Layout.of(w).shifted(w.armature(), by).rows();
        Result result = ConnectionCheck.of(w, rows);
        assertThat(result.differences()).isEmpty();
        assertThat(result.whole()).hasValueSatisfying(whole -> {
            assertThat(whole.kind()).isEqualTo(Kind.SHIFTED_BAR);
            assertThat(Math.floorMod(whole.barsShifted(), k)).isEqualTo(by);
            assertThat(2 * Math.abs(whole.barsShifted())).isLessThanOrEqualTo(k);
        });
    }

    @Example
    void aWaveOfSixPolesWithAllLeadsChangedOverHasNoOtherDirectionButIsFound() {
        Winding w = Winding.build(Armature.of(19, 19, 6), WindingSpec.wave(1, Direction.RETROGRESSIVE));
        Result result = ConnectionCheck.of(w, Layout.of(w).changedOver().rows());
        assertThat(result.whole().orElseThrow().kind()).isEqualTo(Kind.REVERSED_COIL);
        assertThat(result.differences()).isEmpty();
    }

    /** Every turn of the slots, every turn of the bars, both ways of counting, of every small winding. */
    @Example
    void countingFromAnywhereEitherWayIsTheSame() {
        int checked = 0;
        for (Winding w : SmallWindings.of(3, 6, 2, 4, 2)) {
            Armature a = w.armature();
            List<ListedCoil> rows = rows(w);
            for (int slot = 1; slot <= a.slots(); slot++) {
                for (int bar = 1; bar <= a.bars(); bar++) {
                    for (boolean mirrored : new boolean[] {false, true}) {
                        var way = new ConnectionCheck.Alignment(slot, bar, mirrored, false, 0);
                        List<ListedCoil> told = new ArrayList<>();
                        rows.forEach(c -> told.add(counted(a, c, way, c.coil())));
                        Result result = ConnectionCheck.free(w, told);
                        if (!result.same()) {
                            throw new AssertionError(w.spec() + " " + a + " " + way + ": " + result);
                        }
                        // Not always the way it was told, since a winding may look alike from several slots; but a way
                        // that makes the plan into the list.
                        var found = result.alignment().orElseThrow();
                        var made = new HashSet<ListedCoil>();
                        rows.forEach(c -> made.add(counted(a, c, found, 1)));
                        var given = new HashSet<ListedCoil>();
                        told.forEach(c ->
                                given.add(new ListedCoil(1, c.topSlot(), c.bottomSlot(), c.topBar(), c.bottomBar())));
                        if (!made.equals(given) || found.agreeing() != rows.size()) {
                            throw new AssertionError(w.spec() + " " + a + " " + way + ": " + found);
                        }
                        checked++;
                    }
                }
            }
        }
        assertThat(checked).isGreaterThan(5000);
    }

    private static ListedCoil counted(Armature a, ListedCoil c, ConnectionCheck.Alignment way, int number) {
        return new ListedCoil(
                number,
                way.slot(a, c.topSlot()),
                way.slot(a, c.bottomSlot()),
                c.topBar().isPresent() ? OptionalInt.of(way.bar(a, c.topBar().getAsInt())) : c.topBar(),
                c.bottomBar().isPresent()
                        ? OptionalInt.of(way.bar(a, c.bottomBar().getAsInt()))
                        : c.bottomBar());
    }

    @Property(tries = 500)
    void aChangedOverCoilIsFoundHoweverSlotsBarsAndCoilsAreCounted(
            @ForAll("windings") Winding w,
            @ForAll boolean mirrored,
            @ForAll boolean anyNumbers,
            @ForAll Random random) {
        Armature a = w.armature();
        var way = new ConnectionCheck.Alignment(
                1 + random.nextInt(a.slots()), 1 + random.nextInt(a.bars()), mirrored, false, 0);
        List<ListedCoil> rows = rows(w);
        List<Integer> numbers = new ArrayList<>();
        rows.forEach(c -> numbers.add(c.coil()));
        if (anyNumbers) {
            Collections.shuffle(numbers, random);
        }
        List<ListedCoil> told = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            told.add(counted(a, rows.get(i), way, numbers.get(i)));
        }
        int at = random.nextInt(rows.size());
        ListedCoil c = told.get(at);
        Assume.that(c.topBar().isPresent());
        told.set(at, on(c, c.bottomBar(), c.topBar()));
        Result result = ConnectionCheck.free(w, told);
        assertThat(result.whole()).isEmpty();
        assertThat(result.differences())
                .extracting(Difference::kind, Difference::coil)
                .containsExactly(tuple(Kind.REVERSED_COIL, c.coil()));
        Difference d = result.differences().get(0);
        assertThat(d.expected())
                .contains(new ListedCoil(c.coil(), c.topSlot(), c.bottomSlot(), c.topBar(), c.bottomBar()));
    }

    @Example
    void countedTheOtherWayATwoPoleWindingOfFullPitchMayBeTheOtherDirection() {
        Winding w = Winding.build(Armature.of(12, 12, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
        Winding other = Winding.build(Armature.of(12, 12, 2), WindingSpec.lap(1, Direction.RETROGRESSIVE));
        var alignment = ConnectionCheck.free(w, rows(other)).alignment().orElseThrow();
        assertThat(alignment.mirrored()).isTrue();
        assertThat(alignment.mayBeOtherDirection()).isTrue();
        // On four poles the throw tells which way it was counted.
        Winding four = Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.RETROGRESSIVE));
        Result result = ConnectionCheck.free(LAP, rows(four));
        assertThat(result.alignment().orElseThrow().mirrored()).isFalse();
        assertThat(result.alignment().orElseThrow().mayBeOtherDirection()).isFalse();
        assertThat(result.whole().orElseThrow().kind()).isEqualTo(Kind.WRONG_DIRECTION);
    }

    @Property(tries = 300)
    void anyListAtAllIsComparedWithoutTrouble(@ForAll("windings") Winding w, @ForAll Random random) {
        List<ListedCoil> rows = new ArrayList<>();
        int lines = random.nextInt(2 * w.coils().size());
        for (int i = 0; i < lines; i++) {
            rows.add(new ListedCoil(
                    1 + random.nextInt(2 * w.coils().size()),
                    1 + random.nextInt(w.armature().slots() + 3),
                    1 + random.nextInt(w.armature().slots() + 3),
                    random.nextInt(5) == 0
                            ? OptionalInt.empty()
                            : OptionalInt.of(1 + random.nextInt(w.armature().bars() + 3)),
                    OptionalInt.of(1 + random.nextInt(w.armature().bars() + 3))));
        }
        for (Result r : List.of(ConnectionCheck.of(w, rows), ConnectionCheck.free(w, rows))) {
            assertThat(r.same()).isFalse();
            assertThat(r.differences()).allSatisfy(d -> assertThat(d.words()).isNotBlank());
            // Every planned coil that no line gives rightly is told.
            assertThat(r.differences().stream()
                            .filter(d -> d.kind() == Kind.MISSING)
                            .count())
                    .isGreaterThanOrEqualTo(w.coils().size() - rows.size());
        }
        assertThat(Stream.of(Kind.values()).map(Kind::word)).doesNotHaveDuplicates();
        assertThat(w.type()).isNotEqualTo(WindingType.LISTED);
    }
}
