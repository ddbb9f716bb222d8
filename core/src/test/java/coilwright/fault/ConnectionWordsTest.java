package coilwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import coilwright.fault.ConnectionCheck.Difference;
import coilwright.fault.ConnectionCheck.Kind;
import coilwright.fault.ConnectionCheck.Result;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** What a person is told about each way in which a list may differ from its plan, on a winding small enough to count. */
final class ConnectionWordsTest {
    /** Coil n in slots n and n + 3, on bars n and n + 1. */
    private static final Winding LAP = Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));

    /** The same on 11 bars, coil 6 dead: coil 5 ends on bar 6, where coil 7 begins. */
    private static final Winding DEAD = Winding.build(
            Armature.of(12, 11, 4), WindingSpec.lap(1, Direction.PROGRESSIVE).withDeadCoils(List.of(6)));

    private static List<ListedCoil> rows(Winding w) {
        return new ArrayList<>(w.asListed().coils());
    }

    private static ListedCoil line(int coil, int topSlot, int bottomSlot, int topBar, int bottomBar) {
        return new ListedCoil(
                coil,
                topSlot,
                bottomSlot,
                topBar == 0 ? OptionalInt.empty() : OptionalInt.of(topBar),
                bottomBar == 0 ? OptionalInt.empty() : OptionalInt.of(bottomBar));
    }

    /** The one difference of a list in which some lines of the plan are replaced. */
    private static Difference only(Winding w, ListedCoil... lines) {
        List<ListedCoil> rows = rows(w);
        for (ListedCoil line : lines) {
            rows.set(line.coil() - 1, line);
        }
        return only(ConnectionCheck.of(w, rows));
    }

    private static Difference only(Result result) {
        assertThat(result.whole()).isEmpty();
        assertThat(result.differences()).hasSize(1);
        return result.differences().get(0);
    }

    private static void says(Difference d, Kind kind, int coil, String words) {
        assertThat(d.kind()).isEqualTo(kind);
        assertThat(d.coil()).isEqualTo(coil);
        assertThat(d.words()).isEqualTo(words);
    }

    @Test
    void aMissingCoilIsToldWithItsPlace() {
        List<ListedCoil> rows = rows(LAP);
        rows.remove(4);
        Difference live = only(ConnectionCheck.of(LAP, rows));
        says(
                live,
                Kind.MISSING,
                5,
                "is not in the list: slots 5 and 8, the top lead on bar 5, the bottom lead on bar 6");
        assertThat(live.expected()).contains(line(5, 5, 8, 5, 6));
        assertThat(live.found()).isEmpty();
        List<ListedCoil> noDead = rows(DEAD);
        noDead.remove(5);
        says(only(ConnectionCheck.of(DEAD, noDead)), Kind.MISSING, 6, "is not in the list: slots 6 and 9, dead");
    }

    @Test
    void aLineTooManyIsToldWithItsPlace() {
        List<ListedCoil> rows = rows(LAP);
        rows.add(0, line(5, 5, 8, 5, 0));
        Difference again = only(ConnectionCheck.of(LAP, rows));
        says(
                again,
                Kind.DOUBLED,
                5,
                "stands in the list once more: slots 5 and 8, the top lead on bar 5; trace it again and keep one line");
        assertThat(again.found()).contains(line(5, 5, 8, 5, 0));
        assertThat(again.expected()).contains(line(5, 5, 8, 5, 6));
        rows.set(0, line(5, 5, 8, 0, 0));
        assertThat(only(ConnectionCheck.of(LAP, rows)).words())
                .isEqualTo("stands in the list once more: slots 5 and 8; trace it again and keep one line");
        rows.set(0, line(99, 1, 2, 3, 4));
        Difference extra = only(ConnectionCheck.of(LAP, rows));
        says(
                extra,
                Kind.DOUBLED,
                99,
                "is not in the plan: slots 1 and 2, the top lead on bar 3, the bottom lead on bar 4; trace it again");
        assertThat(extra.expected()).isEmpty();
        rows.set(0, line(99, 1, 2, 0, 0));
        assertThat(only(ConnectionCheck.of(LAP, rows)).words())
                .isEqualTo("is not in the plan: slots 1 and 2; trace it again");
    }

    @Test
    void ofLinesThatStandTwiceTheOneMostLikeThePlanIsKept() {
        List<ListedCoil> rows = rows(LAP);
        // Slots, bars, and bars changed over speak for a line in this order.
        rows.set(4, line(5, 5, 8, 6, 5));
        rows.add(line(5, 5, 8, 7, 8));
        Result result = ConnectionCheck.of(LAP, rows);
        assertThat(result.differences())
                .extracting(Difference::kind, Difference::coil, d -> d.found().orElseThrow())
                .containsExactly(
                        tuple(Kind.REVERSED_COIL, 5, line(5, 5, 8, 6, 5)), tuple(Kind.DOUBLED, 5, line(5, 5, 8, 7, 8)));
        assertThat(result.coils()).containsExactly(5);
    }

    @Test
    void aWrongSlotIsToldForEachSide() {
        says(
                only(LAP, line(3, 13, 7, 3, 4)),
                Kind.WRONG_SLOT,
                3,
                "top side in slot 13 instead of slot 3 (slots run from 1 to 12), bottom side in slot 7 instead of slot"
                        + " 6");
        assertThat(only(LAP, line(3, 12, 6, 3, 4)).words()).isEqualTo("top side in slot 12 instead of slot 3");
    }

    @Test
    void leadsOffAndDeadCoilsAreToldWithTheWayOut() {
        says(only(LAP, line(3, 3, 6, 0, 4)), Kind.LEAD_OFF, 3, "top lead on no bar: connect it to bar 3");
        says(only(LAP, line(3, 3, 6, 3, 0)), Kind.LEAD_OFF, 3, "bottom lead on no bar: connect it to bar 4");
        says(
                only(LAP, line(3, 3, 6, 0, 0)),
                Kind.DEAD_INSTEAD_OF_LIVE,
                3,
                "is on no bar: connect the top lead on bar 3, the bottom lead on bar 4");
        says(
                only(DEAD, line(6, 6, 9, 2, 3)),
                Kind.LIVE_INSTEAD_OF_DEAD,
                6,
                "should be dead, but has the top lead on bar 2, the bottom lead on bar 3: cut its leads off and"
                        + " insulate them");
        says(
                only(DEAD, line(6, 6, 9, 0, 3)),
                Kind.LIVE_INSTEAD_OF_DEAD,
                6,
                "should be dead, but has the bottom lead on bar 3: cut its leads off and insulate them");
    }

    /** A planned coil with one lead only. */
    @Test
    void aLeadThatBelongsOnNoBarIsToldSo() {
        Winding w = Winding.build(
                Armature.of(3, 3, 2),
                new WindingSpec.Listed(List.of(line(1, 1, 2, 1, 2), line(2, 2, 3, 2, 0), line(3, 3, 1, 3, 1))));
        says(only(w, line(2, 2, 3, 2, 3)), Kind.SHIFTED_BAR, 2, "bottom lead on bar 3, but it belongs on none");
        says(only(w, line(2, 2, 3, 0, 0)), Kind.DEAD_INSTEAD_OF_LIVE, 2, "is on no bar: connect the top lead on bar 2");
    }

    @Test
    void aLeadAstrayIsToldByItsNearerWayRound() {
        says(
                only(LAP, line(3, 3, 6, 4, 4)),
                Kind.SHIFTED_BAR,
                3,
                "top lead on bar 4, 1 bar clockwise of its own: move it to bar 3");
        says(
                only(LAP, line(3, 3, 6, 9, 4)),
                Kind.SHIFTED_BAR,
                3,
                "top lead on bar 9, 6 bars clockwise of its own: move it to bar 3");
        says(
                only(LAP, line(3, 3, 6, 3, 11)),
                Kind.SHIFTED_BAR,
                3,
                "bottom lead on bar 11, 5 bars counter-clockwise of its own: move it to bar 4");
        says(
                only(LAP, line(3, 3, 6, 13, 2)),
                Kind.SHIFTED_BAR,
                3,
                "top lead on bar 13, but bars run from 1 to 12: it belongs on bar 3; bottom lead on bar 2, 2 bars"
                        + " counter-clockwise of its own: move it to bar 4");
        assertThat(only(LAP, line(3, 3, 6, 12, 4)).words())
                .isEqualTo("top lead on bar 12, 3 bars counter-clockwise of its own: move it to bar 3");
    }

    @Test
    void aCoilChangedOverIsToldWhereItsLeadsBelong() {
        says(
                only(LAP, line(7, 7, 10, 8, 7)),
                Kind.REVERSED_COIL,
                7,
                "its two leads are changed over: the top lead on bar 7, the bottom lead on bar 8");
    }

    @Test
    void leadsExchangedAreToldWithTheOtherCoil() {
        List<ListedCoil> rows = rows(LAP);
        // The top lead of coil 3 with the bottom lead of coil 8, and the bottom lead of coil 3 with that of coil 5.
        rows.set(2, line(3, 3, 6, 9, 6));
        rows.set(7, line(8, 8, 11, 8, 3));
        rows.set(4, line(5, 5, 8, 5, 4));
        assertThat(ConnectionCheck.of(LAP, rows).differences())
                .extracting(Difference::kind, Difference::coil, Difference::with, Difference::words)
                .containsExactly(
                        tuple(
                                Kind.SWAPPED_LEADS,
                                3,
                                List.of(8, 5),
                                "top lead exchanged with the bottom lead of coil 8: move it from bar 9 to bar 3;"
                                        + " bottom lead exchanged with the bottom lead of coil 5: move it from bar 6 to"
                                        + " bar 4"),
                        tuple(
                                Kind.SWAPPED_LEADS,
                                5,
                                List.of(3),
                                "bottom lead exchanged with the bottom lead of coil 3: move it from bar 4 to bar 6"),
                        tuple(
                                Kind.SWAPPED_LEADS,
                                8,
                                List.of(3),
                                "bottom lead exchanged with the top lead of coil 3: move it from bar 3 to bar 9"));
    }

    @Test
    void twoCoilsWithBothLeadsExchangedNameOneAnotherOnce() {
        List<ListedCoil> rows = rows(LAP);
        rows.set(2, line(3, 3, 6, 8, 9));
        rows.set(7, line(8, 8, 11, 3, 4));
        assertThat(ConnectionCheck.of(LAP, rows).differences())
                .extracting(Difference::kind, Difference::coil, Difference::with)
                .containsExactly(tuple(Kind.SWAPPED_LEADS, 3, List.of(8)), tuple(Kind.SWAPPED_LEADS, 8, List.of(3)));
    }

    /**
     * Coil 3 ends and coil 4 begins on bar 4, coil 8 ends and coil 9 begins on bar 9: on bar 4 for bar 9, the bottom lead
     * of coil 8 may be exchanged with either; leads of one side go together.
     */
    @Test
    void leadsOfOneSideGoTogether() {
        List<ListedCoil> rows = rows(LAP);
        rows.set(2, line(3, 3, 6, 3, 9));
        rows.set(3, line(4, 4, 7, 9, 5));
        rows.set(7, line(8, 8, 11, 8, 4));
        rows.set(8, line(9, 9, 12, 4, 10));
        assertThat(ConnectionCheck.of(LAP, rows).differences())
                .extracting(Difference::kind, Difference::coil, Difference::with)
                .containsExactly(
                        tuple(Kind.SWAPPED_LEADS, 3, List.of(8)),
                        tuple(Kind.SWAPPED_LEADS, 4, List.of(9)),
                        tuple(Kind.SWAPPED_LEADS, 8, List.of(3)),
                        tuple(Kind.SWAPPED_LEADS, 9, List.of(4)));
    }

    private static List<ListedCoil> shifted(Winding w, int by) {
        return new ArrayList<>(Layout.of(w).shifted(w.armature(), by).rows());
    }

    @Test
    void allLeadsTooFarAreOneThing() {
        Result two = ConnectionCheck.of(LAP, shifted(LAP, 2));
        assertThat(two.same()).isFalse();
        assertThat(two.coils()).isEmpty();
        var whole = two.whole().orElseThrow();
        assertThat(whole.words())
                .isEqualTo("all leads stand 2 bars too far clockwise (12 of 12 coils): the coils agree with one"
                        + " another, but the brushes would have to stand 60.0° further clockwise; move the leads to the"
                        + " planned bars");
        assertThat(whole.barsShifted()).isEqualTo(2);
        assertThat(whole.expectedStep()).isEqualTo(1);
        assertThat(whole.foundStep()).isEqualTo(1);
        assertThat(whole.coils()).containsExactly(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12);
        var back = ConnectionCheck.of(LAP, shifted(LAP, 11)).whole().orElseThrow();
        assertThat(back.barsShifted()).isEqualTo(-1);
        assertThat(back.words())
                .startsWith("all leads stand 1 bar too far counter-clockwise (12 of 12 coils)")
                .contains("30.0° further counter-clockwise");
        // Half way round is clockwise.
        assertThat(ConnectionCheck.of(LAP, shifted(LAP, 6))
                        .whole()
                        .orElseThrow()
                        .barsShifted())
                .isEqualTo(6);
        assertThat(ConnectionCheck.of(LAP, shifted(LAP, 7))
                        .whole()
                        .orElseThrow()
                        .barsShifted())
                .isEqualTo(-5);
    }

    @Test
    void onlyMoreThanHalfOfTheListTurnsTheWhole() {
        List<ListedCoil> rows = rows(LAP);
        List<ListedCoil> further = shifted(LAP, 3);
        for (int i = 0; i < 6; i++) {
            rows.set(i, further.get(i));
        }
        assertThat(ConnectionCheck.of(LAP, rows).whole()).isEmpty();
        rows.set(6, further.get(6));
        Result most = ConnectionCheck.of(LAP, rows);
        assertThat(most.whole().orElseThrow().coils()).containsExactly(1, 2, 3, 4, 5, 6, 7);
        assertThat(most.whole().orElseThrow().words()).contains("(7 of 12 coils)");
        // Coils as planned are right, whatever the others are.
        assertThat(most.differences()).isEmpty();
        // One coil neither as planned nor as the others is compared with the others.
        rows.set(8, line(9, 9, 12, 5, 1));
        Difference d = ConnectionCheck.of(LAP, rows).differences().get(0);
        assertThat(d.words()).isEqualTo("top lead on bar 5, 5 bars clockwise of its own: move it to bar 12");
    }

    /** A lap winding of 12 coils reversed as a whole goes from each bar to the one before. */
    @Test
    void theOtherDirectionIsToldWithWhatFollows() {
        Winding other = Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.RETROGRESSIVE));
        String follows = "): the voltage between neighbouring bars is the other way, so a motor turns the other way and"
                + " a generator's polarity is reversed; move the leads to the planned bars, or reverse the field or"
                + " the brush leads";
        var retro = ConnectionCheck.of(LAP, rows(other)).whole().orElseThrow();
        assertThat(retro.kind()).isEqualTo(Kind.WRONG_DIRECTION);
        assertThat(retro.words())
                .isEqualTo("the winding is connected retrogressive instead of progressive (12 of 12 coils; commutator"
                        + " pitch -1 instead of +1" + follows);
        var pro = ConnectionCheck.of(other, rows(LAP)).whole().orElseThrow();
        assertThat(pro.words())
                .isEqualTo("the winding is connected progressive instead of retrogressive (12 of 12 coils; commutator"
                        + " pitch +1 instead of -1" + follows);
    }

    @Test
    void allCoilsChangedOverAreToldWithWhatFollows() {
        Winding w = Winding.build(Armature.of(19, 19, 6), WindingSpec.wave(1, Direction.RETROGRESSIVE));
        var whole =
                ConnectionCheck.of(w, Layout.of(w).changedOver().rows()).whole().orElseThrow();
        assertThat(whole.words())
                .isEqualTo("the two leads of every coil are changed over (19 of 19 coils): the current runs the other"
                        + " way through every coil, so a motor turns the other way and a generator's polarity is"
                        + " reversed; move the leads to the planned bars, or reverse the field or the brush leads");
        // (19 − 1)/3 bars on, and back.
        assertThat(whole.expectedStep()).isEqualTo(6);
        assertThat(whole.foundStep()).isEqualTo(-6);
        assertThat(whole.barsShifted()).isZero();
    }

    @Test
    void aListOfTwoOrFewerTurnsNoWhole() {
        List<ListedCoil> further = shifted(LAP, 3);
        assertThat(ConnectionCheck.of(LAP, further.subList(0, 2)).whole()).isEmpty();
        assertThat(ConnectionCheck.of(LAP, further.subList(0, 3)).whole()).isPresent();
    }

    @Test
    void theWayOfCountingIsTurnedIntoNumbersOfTheList() {
        Armature a = Armature.of(12, 24, 4);
        var on = new ConnectionCheck.Alignment(5, 8, false, false, 0);
        assertThat(on.slot(a, 1)).isEqualTo(5);
        assertThat(on.slot(a, 9)).isEqualTo(1);
        assertThat(on.bar(a, 1)).isEqualTo(8);
        assertThat(on.bar(a, 20)).isEqualTo(3);
        var back = new ConnectionCheck.Alignment(5, 8, true, false, 0);
        assertThat(back.slot(a, 1)).isEqualTo(5);
        assertThat(back.slot(a, 6)).isEqualTo(12);
        assertThat(back.bar(a, 2)).isEqualTo(7);
        assertThat(back.bar(a, 9)).isEqualTo(24);
    }

    @Test
    void kindsAreWordsWithHyphens() {
        assertThat(Kind.LIVE_INSTEAD_OF_DEAD.word()).isEqualTo("live-instead-of-dead");
        assertThat(Kind.MISSING.word()).isEqualTo("missing");
    }
}
