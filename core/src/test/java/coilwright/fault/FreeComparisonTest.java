package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import coilwright.fault.ConnectionCheck.Difference;
import coilwright.fault.ConnectionCheck.Kind;
import coilwright.fault.ConnectionCheck.Result;
import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.IntUnaryOperator;
import org.junit.jupiter.api.Test;

/** Lists that number slots, bars and coils in their own way: how they lie on the plan, and what each coil is called. */
final class FreeComparisonTest {
    /** Coil n in slots n and n + 3, on bars n and n + 1. */
    private static final Winding LAP = Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));

    private static List<ListedCoil> told(Winding w, int slot, int bar, boolean mirrored, IntUnaryOperator number) {
        Armature a = w.armature();
        var way = new ConnectionCheck.Alignment(slot, bar, mirrored, false, 0);
        List<ListedCoil> out = new ArrayList<>();
        for (ListedCoil c : w.asListed().coils()) {
            out.add(new ListedCoil(
                    number.applyAsInt(c.coil()),
                    way.slot(a, c.topSlot()),
                    way.slot(a, c.bottomSlot()),
                    on(a, way, c.topBar()),
                    on(a, way, c.bottomBar())));
        }
        return out;
    }

    private static OptionalInt on(Armature a, ConnectionCheck.Alignment way, OptionalInt bar) {
        return bar.isPresent() ? OptionalInt.of(way.bar(a, bar.getAsInt())) : bar;
    }

    /** The list numbers its coils by where they lie in its own count. */
    @Test
    void aMissingCoilBearsTheNumberThatTheListWouldGiveIt() {
        // The plan's slot 1 is the list's slot 4, so that the plan's coil 5 is the list's coil 8.
        List<ListedCoil> list = told(LAP, 4, 4, false, n -> 1 + (n + 2) % 12);
        list.remove(4);
        Result on = ConnectionCheck.free(LAP, list);
        assertThat(on.differences())
                .extracting(Difference::kind, Difference::coil)
                .containsExactly(tuple(Kind.MISSING, 8));
        assertThat(on.differences().get(0).words())
                .isEqualTo("is not in the list: slots 8 and 11, the top lead on bar 8, the bottom lead on bar 9");
        assertThat(on.alignment().orElseThrow().agreeing()).isEqualTo(11);
        // Counted the other way, the numbers run back: coil 5 is the list's 4 − 4, coil 12.
        List<ListedCoil> back = told(LAP, 4, 4, true, n -> 1 + Math.floorMod(3 - (n - 1), 12));
        back.remove(4);
        Result mirrored = ConnectionCheck.free(LAP, back);
        assertThat(mirrored.alignment().orElseThrow().mirrored()).isTrue();
        assertThat(mirrored.differences())
                .extracting(Difference::kind, Difference::coil)
                .containsExactly(tuple(Kind.MISSING, 12));
    }

    /** Where fewer than half of the numbers keep a rule, the missing coil bears the plan's. */
    @Test
    void numbersWithoutARuleAreLeftAsTheyAre() {
        int[] any = {0, 3, 11, 7, 1, 20, 9, 4, 12, 6, 2, 10, 8};
        List<ListedCoil> list = told(LAP, 1, 1, false, n -> any[n]);
        list.remove(4);
        Result r = ConnectionCheck.free(LAP, list);
        assertThat(r.differences()).hasSize(1);
        assertThat(r.differences().get(0).coil()).isEqualTo(5);
    }

    @Test
    void theTwoSetsOfAFrogLegAreNumberedEachByItself() {
        Winding w = Winding.build(
                Armature.of(16, 16, 4), new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.usual(), 0));
        assertThat(w.sets()).hasSize(2);
        int count = w.sets().get(0).coilCount();
        int first = w.sets().get(1).firstCoil();
        // Lap and wave coils each shifted by three within their own numbers, as the slots are.
        IntUnaryOperator shifted = n -> n < first ? 1 + (n + 2) % count : first + (n - first + 3) % count;
        for (int missing : new int[] {5, first + 4}) {
            List<ListedCoil> list = told(w, 4, 4, false, shifted);
            list.removeIf(c -> c.coil() == shifted.applyAsInt(missing));
            Result r = ConnectionCheck.free(w, list);
            assertThat(r.whole()).isEmpty();
            assertThat(r.differences())
                    .extracting(Difference::kind, Difference::coil)
                    .containsExactly(tuple(Kind.MISSING, shifted.applyAsInt(missing)));
        }
    }

    @Test
    void linesThatFitNothingAreEachToldByTheirOwnNumbers() {
        List<ListedCoil> list = told(LAP, 1, 1, false, n -> n);
        list.add(ListedCoil.of(40, 1, 9, 5, 11));
        list.add(ListedCoil.of(41, 2, 10, 6, 12));
        Result r = ConnectionCheck.free(LAP, list);
        assertThat(r.differences())
                .extracting(Difference::kind, Difference::coil)
                .containsExactly(tuple(Kind.DOUBLED, 40), tuple(Kind.DOUBLED, 41));
        assertThat(r.differences()).allMatch(d -> d.words().startsWith("is not in the plan: "));
    }

    @Test
    void aLineOnceMoreUnderAnotherNumberIsToldSo() {
        List<ListedCoil> list = told(LAP, 1, 1, false, n -> n);
        list.add(ListedCoil.of(40, 5, 8, 5, 6));
        Result r = ConnectionCheck.free(LAP, list);
        assertThat(r.differences())
                .extracting(Difference::kind, Difference::coil)
                .containsExactly(tuple(Kind.DOUBLED, 40));
        assertThat(r.differences().get(0).words()).startsWith("stands in the list once more: slots 5 and 8");
    }

    /** Of a line that lies nowhere as planned, the coil of its number is taken first, then the likest that is left. */
    @Test
    void linesThatDifferArePutToTheCoilOfTheirNumberOrTheLikest() {
        List<ListedCoil> list = told(LAP, 1, 1, false, n -> n);
        list.set(4, ListedCoil.of(5, 5, 8, 5, 12));
        list.set(8, ListedCoil.of(30, 9, 12, 9, 3));
        Result r = ConnectionCheck.free(LAP, list);
        assertThat(r.differences())
                .extracting(Difference::kind, Difference::coil, Difference::words)
                .containsExactly(
                        tuple(
                                Kind.SHIFTED_BAR,
                                5,
                                "bottom lead on bar 12, 6 bars clockwise of its own: move it to bar 6"),
                        tuple(
                                Kind.SHIFTED_BAR,
                                30,
                                "bottom lead on bar 3, 5 bars clockwise of its own: move it to bar 10"));
        // One slot and a bar of four agree: like enough. One slot alone is not.
        list.set(8, ListedCoil.of(30, 9, 1, 9, 3));
        assertThat(ConnectionCheck.free(LAP, list).differences())
                .extracting(Difference::kind, Difference::coil)
                .contains(tuple(Kind.WRONG_SLOT, 30), tuple(Kind.SHIFTED_BAR, 30));
        list.set(8, ListedCoil.of(30, 9, 1, 2, 3));
        assertThat(ConnectionCheck.free(LAP, list).differences())
                .extracting(Difference::kind, Difference::coil)
                .contains(tuple(Kind.DOUBLED, 30), tuple(Kind.MISSING, 9));
    }

    /** Two lines of an even winding fit in twelve ways; where the dead coil lies tells which is meant. */
    @Test
    void theDeadCoilDecidesBetweenWaysOfCounting() {
        Winding w = Winding.build(
                Armature.of(12, 11, 4),
                WindingSpec.lap(1, Direction.PROGRESSIVE).withDeadCoils(List.of(6)));
        for (int slot : new int[] {1, 3, 12}) {
            List<ListedCoil> all = told(w, slot, 5, false, n -> n);
            List<ListedCoil> few = List.of(all.get(8), all.get(9), all.get(5));
            Result r = ConnectionCheck.free(w, few);
            assertThat(r.alignment().orElseThrow()).isEqualTo(new ConnectionCheck.Alignment(slot, 5, false, false, 3));
            assertThat(r.differences()).hasSize(9).allMatch(d -> d.kind() == Kind.MISSING);
        }
    }

    /** Lines with slots or bars that do not exist, or without a top lead, have no say in how the list was counted. */
    @Test
    void whatDoesNotExistHasNoVote() {
        List<ListedCoil> list = told(LAP, 3, 5, false, n -> n);
        for (int i = 0; i < 5; i++) {
            list.set(i, ListedCoil.of(i + 1, i % 2 == 0 ? 13 : i + 1, i + 4, i % 2 == 0 ? 1 : 13, 2));
        }
        var alignment = ConnectionCheck.free(LAP, list).alignment().orElseThrow();
        // From slot 3 and bar 5, as from any slot and the bar two further on: the first is told.
        assertThat(alignment.slotOfOne()).isEqualTo(1);
        assertThat(alignment.barOfOne()).isEqualTo(3);
        assertThat(alignment.agreeing()).isEqualTo(7);
        assertThat(alignment.mirrored()).isFalse();
        // The last slot and bar are there, and vote.
        List<ListedCoil> one = List.of(ListedCoil.of(1, 12, 3, 12, 1));
        var last = ConnectionCheck.free(LAP, one).alignment().orElseThrow();
        assertThat(last.agreeing()).isEqualTo(1);
    }
}
