package coilwright.winding;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A winding made from a connection list: where its sides lie, and which pitches it has. */
class ListedWindingTest {
    private static Winding listed(int slots, int bars, int poles, ListedCoil... coils) {
        return Winding.build(Armature.of(slots, bars, poles), new WindingSpec.Listed(List.of(coils)));
    }

    /** Stepped coils come round the end of the list into one slot in another order than by their numbers. */
    @Test
    void sidesLieWhereTheRegularWindingHasThem() {
        for (int u = 1; u <= 3; u++) {
            for (int span = u; span <= 11 * u; span++) {
                var spec = WindingSpec.lap(1, Direction.PROGRESSIVE).withSpan(CoilSpan.ofPositions(span));
                var regular = Winding.build(Armature.of(12, 12 * u, 4), spec);
                List<ListedCoil> backwards = new ArrayList<>(regular.asListed().coils());
                Collections.reverse(backwards);
                var again = Winding.build(regular.armature(), new WindingSpec.Listed(backwards));
                assertThat(again.coils()).as("%s, u = %s", spec, u).isEqualTo(regular.coils());
                assertThat(again.sidesPerSlot()).isEqualTo(u);
            }
        }
    }

    @Test
    void theFullestSlotSaysHowManySidesLieInOne() {
        assertThat(listed(4, 4, 2, ListedCoil.of(1, 1, 3, 1, 2), ListedCoil.of(2, 1, 4, 2, 3))
                        .sidesPerSlot())
                .isEqualTo(2);
        assertThat(listed(4, 4, 2, ListedCoil.of(1, 1, 3, 1, 2), ListedCoil.of(2, 2, 3, 2, 3))
                        .sidesPerSlot())
                .isEqualTo(2);
        assertThat(listed(4, 4, 2, ListedCoil.of(1, 1, 3, 1, 2), ListedCoil.of(2, 2, 4, 2, 3))
                        .sidesPerSlot())
                .isEqualTo(1);
    }

    /** Two coils of a list, each with its span in slots and its step in bars, on 12 slots and 12 bars. */
    @ParameterizedTest
    @CsvSource({
        // A step of nearly a whole turn is a short step backwards, up to half of two pole pitches.
        "4, 3, 1, 3, 1, 3, 1",
        "4, 3, 11, 3, 11, 3, -1",
        "4, 3, 10, 3, 10, 3, -2",
        "4, 3, 9, 3, 9, 3, 9",
        "6, 2, 11, 2, 11, 2, -1",
        "6, 2, 10, 2, 10, 2, 10",
        "6, 2, 8, 2, 8, 2, 8",
        "2, 6, 7, 6, 7, 6, -5",
        "2, 6, 6, 6, 6, 6, 6",
    })
    void pitchesOfCoilsThatReachEquallyFar(
            int poles, int spanOne, int stepOne, int spanTwo, int stepTwo, int span, int step) {
        Pitches y = pair(poles, spanOne, stepOne, spanTwo, stepTwo).pitches().orElseThrow();
        assertThat(y.backSpan()).isEqualTo(span);
        assertThat(y.commutator()).isEqualTo(step);
    }

    @ParameterizedTest
    @CsvSource({
        // Unequal spans, unequal steps, coils shorted on one bar, coils with both sides in one slot.
        "3, 1, 4, 1",
        "4, 1, 3, 1",
        "0, 1, 3, 1",
        "3, 1, 3, 2",
        "3, 0, 3, 1",
        "3, 0, 3, 0",
        "0, 1, 0, 1"
    })
    void noPitchesOfOthers(int spanOne, int stepOne, int spanTwo, int stepTwo) {
        assertThat(pair(4, spanOne, stepOne, spanTwo, stepTwo).pitches()).isEmpty();
    }

    private static Winding pair(int poles, int spanOne, int stepOne, int spanTwo, int stepTwo) {
        return listed(
                12,
                12,
                poles,
                ListedCoil.of(1, 1, 1 + spanOne, 1, 1 + stepOne),
                ListedCoil.of(2, 2, 1 + (1 + spanTwo) % 12, 2, 1 + (1 + stepTwo) % 12));
    }

    @Test
    void deadCoilsReachNoBar() {
        assertThat(listed(4, 4, 2, ListedCoil.dead(1, 1, 3), ListedCoil.dead(2, 2, 4))
                        .pitches())
                .isEmpty();
        var one = listed(4, 4, 2, ListedCoil.dead(1, 1, 3), ListedCoil.of(2, 2, 4, 2, 3));
        assertThat(one.pitches().orElseThrow().commutator()).isEqualTo(1);
        assertThat(one.closures()).isEmpty();
    }

    @Test
    void likenessCountsSlotsAndBarsTwiceAndBarsChangedOverOnce() {
        ListedCoil plan = ListedCoil.of(5, 5, 8, 5, 6);
        assertThat(plan.likeness(ListedCoil.of(9, 5, 8, 5, 6))).isEqualTo(8);
        assertThat(plan.likeness(ListedCoil.of(9, 1, 8, 5, 6))).isEqualTo(6);
        assertThat(plan.likeness(ListedCoil.of(9, 5, 1, 5, 6))).isEqualTo(6);
        assertThat(plan.likeness(ListedCoil.of(9, 5, 8, 1, 6))).isEqualTo(6);
        assertThat(plan.likeness(ListedCoil.of(9, 5, 8, 5, 1))).isEqualTo(6);
        assertThat(plan.likeness(ListedCoil.of(9, 5, 8, 1, 5))).isEqualTo(5);
        assertThat(plan.likeness(ListedCoil.of(9, 5, 8, 6, 1))).isEqualTo(5);
        assertThat(plan.likeness(ListedCoil.of(9, 1, 1, 6, 5))).isEqualTo(2);
        assertThat(plan.likeness(ListedCoil.of(9, 1, 1, 1, 1))).isZero();
        // A lead on no bar is the like of another on no bar, but not of the coil's own other lead.
        ListedCoil dead = ListedCoil.dead(5, 5, 8);
        assertThat(dead.likeness(ListedCoil.dead(9, 5, 8))).isEqualTo(8);
        assertThat(dead.likeness(plan)).isEqualTo(4);
        assertThat(dead.isOffBars()).isTrue();
        assertThat(plan.isOffBars()).isFalse();
        assertThat(new ListedCoil(1, 5, 8, OptionalInt.of(5), OptionalInt.empty()).isOffBars())
                .isFalse();
        assertThat(new ListedCoil(1, 5, 8, OptionalInt.empty(), OptionalInt.of(5)).isOffBars())
                .isFalse();
    }
}
