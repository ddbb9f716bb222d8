package coilwright.rewind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.rewind.WorkStep.Kind;
import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** The order of work of small windings, step by step, as it would be told at the bench. */
class WorkOrderWordsTest {
    private static final String TESTED =
            ", each lead against its other end, against the core, and against the coils" + " beside it";
    private static final String DRIVE = "Fold the slot insulation over and drive the wedges into slots ";
    private static final String OVER = "; no wedge may stand above the core";

    private static Winding lap(int slots, int bars, Direction direction, Integer... dead) {
        return Winding.build(
                Armature.of(slots, bars, 2), WindingSpec.lap(1, direction).withDeadCoils(List.of(dead)));
    }

    /** From the first coil to the last wedge. */
    private static List<String> inTheSlots(WorkOrder order) {
        List<String> out = new ArrayList<>();
        for (WorkStep s : order.steps()) {
            if (s.tests().contains(WorkTest.BLADE)) {
                return out;
            }
            if (s.number() > 2) {
                out.add(words(s));
            }
        }
        return out;
    }

    private static List<String> leads(WorkOrder order) {
        return order.steps().stream()
                .filter(s -> s.kind() == Kind.CONNECT
                        || s.kind() == Kind.EQUALIZE
                        || s.kind() == Kind.CUT_BACK
                        || s.text().startsWith("Lay insulation over the ")
                        || s.text().startsWith("Test while"))
                .map(WorkOrderWordsTest::words)
                .toList();
    }

    private static String words(WorkStep s) {
        return s.text() + (s.remarks().isEmpty() ? "" : " | " + String.join(" ", s.remarks()));
    }

    @Test
    void byHandCoilByCoil() {
        WorkOrder order = WorkOrder.of(lap(6, 6, Direction.PROGRESSIVE), WindingWay.COIL_BY_COIL);
        assertThat(inTheSlots(order))
                .containsExactly(
                        "Wind coil 1 into slots 1 and 4, starting at slot 1 | Both sides lie at the floor. Separator in slots"
                                + " 1, 4.",
                        "Wind coil 2 into slots 2 and 5, starting at slot 2 | Both sides lie at the floor. Separator in slots"
                                + " 2, 5.",
                        "Wind coil 3 into slots 3 and 6, starting at slot 3 | Both sides lie at the floor. Separator in slots"
                                + " 3, 6.",
                        "Test before going on: coils 1–3" + TESTED,
                        "Wind coil 4 into slots 4 and 1, starting at slot 4 | Both sides lie over earlier coils. Slot 4 is"
                                + " full. Slot 1 is full.",
                        "Wind coil 5 into slots 5 and 2, starting at slot 5 | Both sides lie over earlier coils. Slot 5 is"
                                + " full. Slot 2 is full.",
                        "Wind coil 6 into slots 6 and 3, starting at slot 6 | Both sides lie over earlier coils. Slot 6 is"
                                + " full. Slot 3 is full.",
                        "Test before the slots are closed: coils 4–6" + TESTED,
                        DRIVE + "1–6" + OVER);
        assertThat(leads(order))
                .containsExactly(
                        "Lay the bottom lead of coil 4 (slot 1) in bar 5 | As a loop: coil 5 starts there.",
                        "Lay the bottom lead of coil 5 (slot 2) in bar 6 | As a loop: coil 6 starts there.",
                        "Lay the bottom lead of coil 6 (slot 3) in bar 1",
                        "Lay the bottom lead of coil 1 (slot 4) in bar 2 | As a loop: coil 2 starts there.",
                        "Lay the bottom lead of coil 2 (slot 5) in bar 3 | As a loop: coil 3 starts there.",
                        "Lay the bottom lead of coil 3 (slot 6) in bar 4 | As a loop: coil 4 starts there.",
                        "Test while the other leads are free: from each bar to the free end of its coil and to no other, and"
                                + " nothing to the core",
                        "Lay insulation over the bottom leads before the next leads come on them, and between leads that"
                                + " cross",
                        "Lay the top lead of coil 1 (slot 1) in bar 1");
        assertThat(order.notes())
                .containsExactly(
                        "Wire is wound straight into the slots, coil after coil clockwise, seen from the commutator end,"
                                + " beginning with coil 1. The end turns pile up: the last coils lie over the first, and no"
                                + " coil comes out without those over it.",
                        "What comes first into a slot lies at its floor, so the layers of the plan cannot all be kept: 6 of"
                                + " 6 coils (1–6) have a side in the other layer. \"Top\" and \"bottom\" name the two sides of"
                                + " a coil as in the plan, wherever they lie; leads and bars stay as planned.",
                        "The top lead of a coil is its start, the bottom lead its finish. Wind every coil the same way round,"
                                + " sleeve each lead, and mark it with coil, start or finish, and bar.",
                        "A loop is drawn out to the bar where one coil ends and the next one starts (5 loops): loops in the"
                                + " order of the bars, none cut.",
                        "Coils wound later are a little longer: readings that rise slowly in the order of winding are no"
                                + " fault.",
                        "Leave slots open, the coils held down with a cord or a stick, until the coils in them have been"
                                + " tested.");
        assertThat(order.inOtherLayers()).hasSize(6);
        assertThat(order.steps(Kind.WIND).get(1).loops()).containsExactly(2);
    }

    /** Seven slots: the slot opposite is half a slot off, and going anticlockwise keeps more sides in their layers. */
    @Test
    void byHandInOppositePairsOfAnOddNumberOfSlots() {
        WorkOrder order = WorkOrder.of(lap(7, 7, Direction.PROGRESSIVE), WindingWay.OPPOSITE_PAIRS);
        assertThat(inTheSlots(order))
                .containsExactly(
                        "Wind coil 1 into slots 1 and 4, starting at slot 1 | Both sides lie at the floor. Separator in slots"
                                + " 1, 4.",
                        "Wind coil 4 into slots 4 and 7, starting at slot 4 | Separator in slot 7. Slot 4 is full.",
                        "Wind coil 7 into slots 7 and 3, starting at slot 7 | Separator in slot 3. Slot 7 is full.",
                        "Wind coil 3 into slots 3 and 6, starting at slot 3 | Separator in slot 6. Slot 3 is full.",
                        "Test before going on: coils 1, 3, 4, 7" + TESTED,
                        DRIVE + "3, 4, 7" + OVER,
                        "Wind coil 6 into slots 6 and 2, starting at slot 6 | Separator in slot 2. Slot 6 is full.",
                        "Wind coil 2 into slots 2 and 5, starting at slot 2 | Separator in slot 5. Slot 2 is full.",
                        "Wind coil 5 into slots 5 and 1, starting at slot 5 | Both sides lie over earlier coils. Slot 5 is"
                                + " full. Slot 1 is full.",
                        "Test before the slots are closed: coils 2, 5, 6" + TESTED,
                        DRIVE + "1, 2, 5, 6" + OVER);
        assertThat(order.notes())
                .startsWith(
                        "Wire is wound straight into the slots, each coil followed by the one opposite to it across the"
                                + " shaft, pair after pair anticlockwise, seen from the commutator end, beginning with coil 1."
                                + " The end turns stay in balance; no coil comes out without those over it. With 7 slots the"
                                + " opposite coil lies half a slot off, and the last coil has none.",
                        "What comes first into a slot lies at its floor, so the layers of the plan cannot all be kept: 2 of"
                                + " 7 coils (1, 5) have a side in the other layer. \"Top\" and \"bottom\" name the two sides of"
                                + " a coil as in the plan, wherever they lie; leads and bars stay as planned.")
                .noneMatch(n -> n.startsWith("A loop"));
    }

    @Test
    void byHandInOppositePairsOfTwoCoilsASlot() {
        WorkOrder order = WorkOrder.of(lap(8, 15, Direction.PROGRESSIVE, 16), WindingWay.OPPOSITE_PAIRS);
        assertThat(inTheSlots(order))
                .startsWith(
                        "Wind coils 1, 2 one after the other into slots 1 and 5, starting at slot 1 | Both sides lie at the"
                                + " floor. Separator in slots 1, 5.",
                        "Wind coils 9, 10 one after the other into slots 5 and 1, starting at slot 5 | Both sides lie over"
                                + " earlier coils. Slot 5 is full. Slot 1 is full.",
                        "Wind coils 3, 4 one after the other into slots 2 and 6, starting at slot 2 | Both sides lie at the"
                                + " floor. Separator in slots 2, 6.",
                        "Wind coils 11, 12 one after the other into slots 6 and 2, starting at slot 6 | Both sides lie over"
                                + " earlier coils. Slot 6 is full. Slot 2 is full.",
                        "Test before going on: coils 1–4, 9–12" + TESTED,
                        DRIVE + "1, 2, 5, 6" + OVER)
                .contains(
                        "Wind coils 15, 16 one after the other into slots 8 and 4, starting at slot 8 | Both sides lie over"
                                + " earlier coils. Coil 16 is dead: no lead to any bar. Slot 8 is full. Slot 4 is full.");
        assertThat(leads(order))
                .startsWith(
                        "Cut back both ends of dead coil 16, insulate each by itself and tie it down; the coil stays in its"
                                + " slots for balance",
                        "Lay the bottom leads of coils 9, 10 (slot 1) in bars 10, 11, in this order | As a loop: coil 10"
                                + " starts there.")
                .contains("Lay the bottom lead of coil 15 (slot 4) in bar 1")
                .endsWith("Lay the top lead of coil 15 (slot 8) in bar 15");
        assertThat(order.notes())
                .anyMatch(n -> n.startsWith("Coils that share both slots are wound one after the other with a loop"))
                .anyMatch(n -> n.contains("(7 loops)"))
                .noneMatch(n -> n.contains("half a slot off"));
    }

    /** Each coil ends where the next one starts, two of them in every slot. */
    @Test
    void twoLoopsAtOneSlot() {
        Winding winding = Winding.build(Armature.of(6, 12, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
        WorkOrder order = WorkOrder.of(winding, WindingWay.COIL_BY_COIL);
        assertThat(leads(order))
                .startsWith(
                        "Lay the bottom leads of coils 7, 8 (slot 1) in bars 8, 9, in this order | As loops: coils 8, 9"
                                + " start there.");
    }

    @Test
    void formedCoilsWithEqualizers() {
        WorkOrder order = WorkOrder.of(
                lap(6, 11, Direction.RETROGRESSIVE, 12),
                WindingWay.FORMED_COILS,
                List.of(List.of(1, 4), List.of(2, 11)));
        assertThat(inTheSlots(order))
                .containsExactly(
                        "Put in coils 1, 2: bottom sides into slot 4; the top sides, for slot 1, stay lifted | Separator in"
                                + " slot 4.",
                        "Put in coils 3, 4: bottom sides into slot 5; the top sides, for slot 2, stay lifted | Separator in"
                                + " slot 5.",
                        "Put in coils 5, 6: bottom sides into slot 6; the top sides, for slot 3, stay lifted | Separator in"
                                + " slot 6.",
                        "Test before going on: coils 1–6" + TESTED,
                        "Put in coils 7, 8: bottom sides into slot 1, top sides into slot 4 | Separator in slot 1. Slot 4 is"
                                + " full.",
                        "Put in coils 9, 10: bottom sides into slot 2, top sides into slot 5 | Separator in slot 2. Slot 5 is"
                                + " full.",
                        "Put in coils 11, 12: bottom sides into slot 3, top sides into slot 6 | Separator in slot 3. Coil 12"
                                + " is dead: no lead to any bar. Slot 6 is full.",
                        "All bottom sides are in: test before the lifted sides are lowered over them: coils 7–12"
                                + TESTED,
                        "Lower the top sides of coils 1, 2 into slot 1 | Slot 1 is full.",
                        "Lower the top sides of coils 3, 4 into slot 2 | Slot 2 is full.",
                        "Lower the top sides of coils 5, 6 into slot 3 | Slot 3 is full.",
                        DRIVE + "1–6" + OVER);
        assertThat(leads(order).subList(8, 13))
                .containsExactly(
                        "Lay insulation over the bottom leads before the next leads come on them, and between leads that"
                                + " cross",
                        "Equalizer 1 of 2 to bars 1, 4 | Before the top leads where the equalizers lie behind or under the"
                                + " leads (common practice); do as it was found.",
                        "Equalizer 2 of 2 to bars 2, 11",
                        "Lay the top leads of coils 1, 2 (slot 1) in bars 1, 2, in this order",
                        "Lay the top leads of coils 3, 4 (slot 2) in bars 3, 4, in this order");
        assertThat(order.notes().subList(0, 2))
                .containsExactly(
                        "Coils go in clockwise, seen from the commutator end, slot after slot towards their bottom sides,"
                                + " beginning with coils 1, 2.",
                        "The top sides of the first 6 coils (1–6) stay lifted to the end, since the bottom sides beneath come"
                                + " in last; tie up what is lifted no further out than needed.");
        assertThat(order.steps())
                .anyMatch(
                        s -> s.remarks().stream().anyMatch(r -> r.contains("a growler blade now pulls at every slot")));
        assertThat(order.kinds())
                .startsWith(Kind.TEST, Kind.INSULATE, Kind.PLACE, Kind.LOWER, Kind.WEDGE, Kind.CUT_BACK);
    }

    @Test
    void formedCoilsOfAFrogLeg() {
        WorkOrder order = WorkOrder.of(
                Winding.build(
                        Armature.of(6, 6, 2),
                        new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.ofThrow(2), 0)),
                WindingWay.FORMED_COILS);
        assertThat(inTheSlots(order))
                .startsWith(
                        "Put in lap coil 1: bottom side into slot 3 (layer 4); the top side, for slot 1 (layer 1), stays"
                                + " lifted | Separator in slot 3.",
                        "Put in wave coil 11: bottom side into slot 3 (layer 3); the top side, for slot 5 (layer 2), stays"
                                + " lifted | Separator in slot 3.")
                .containsSubsequence(
                        "Put in wave coil 9: bottom side into slot 1 (layer 3), top side into slot 3 (layer 2) | Separator in"
                                + " slots 1, 3.",
                        "Lower the top side of coil 3 into slot 3 (layer 1) | Slot 3 is full.",
                        "Put in lap coil 6: bottom side into slot 2 (layer 4); the top side, for slot 6 (layer 1), stays"
                                + " lifted | Separator in slot 2.")
                .containsSubsequence(
                        "Lower the top side of coil 11 into slot 5 (layer 2) | Separator in slot 5.",
                        "Lower the top side of coil 5 into slot 5 (layer 1) | Slot 5 is full.");
        assertThat(order.notes())
                .contains(
                        "Four layers, from the floor up: lap bottom sides (layer 4), wave bottom sides (3), wave top sides"
                                + " (2), lap top sides (1). A lap and a wave coil that share both slots go in together.",
                        "The top sides of the first 9 coils (1, 2, 4–8, 11, 12) stay lifted to the end, since the bottom"
                                + " sides beneath come in last; tie up what is lifted no further out than needed.",
                        "The top side of one more coil waits lifted for some slots and is lowered on the way.");
        assertThat(leads(order))
                .contains(
                        "Lay the bottom lead of lap coil 5 (slot 1) in bar 6",
                        "Lay insulation over the bottom leads of the lap coils before the next leads come on them, and"
                                + " between leads that cross",
                        "Lay the bottom lead of wave coil 9 (slot 1) in bar 1",
                        "Lay insulation over the top leads of the wave coils before the next leads come on them, and between"
                                + " leads that cross")
                .endsWith("Lay the top lead of lap coil 6 (slot 6) in bar 6")
                .filteredOn(s -> s.startsWith("Lay insulation"))
                .hasSize(3);
        assertThat(order.steps())
                .anyMatch(
                        s -> s.remarks()
                                .contains(
                                        "The winding is equalized: a growler blade now pulls at every slot and tells nothing."));
    }

    @Test
    void aLapAndAWaveCoilOfOneThrowGoInTogether() {
        WorkOrder order = WorkOrder.of(
                Winding.build(
                        Armature.of(4, 4, 4),
                        new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.ofThrow(1), 0)),
                WindingWay.FORMED_COILS);
        assertThat(inTheSlots(order))
                .startsWith(
                        "Put in lap coil 1 and wave coil 5: bottom sides into slot 2 (layers 4, 3); the top sides, for slot 1"
                                + " (layers 2, 1), stay lifted | Separator in slot 2.",
                        "Put in lap coil 2 and wave coil 6: bottom sides into slot 3 (layers 4, 3), top sides into slot 2"
                                + " (layers 2, 1) | Separator in slots 3, 2. Slot 2 is full.",
                        "Put in lap coil 3 and wave coil 7: bottom sides into slot 4 (layers 4, 3), top sides into slot 3"
                                + " (layers 2, 1) | Separator in slots 4, 3. Slot 3 is full.",
                        "Test before going on: coils 1–3, 5–7" + TESTED,
                        DRIVE + "2, 3" + OVER)
                .contains(
                        "Lower the top sides of coils 1, 5 into slot 1 (layers 2, 1) | Separator in slot 1. Slot 1 is full.");
    }

    private static final Winding LISTED = Winding.build(
            Armature.of(4, 4, 2),
            new WindingSpec.Listed(List.of(
                    ListedCoil.of(1, 1, 3, 1, 2),
                    new ListedCoil(2, 2, 2, OptionalInt.of(2), OptionalInt.empty()),
                    ListedCoil.dead(3, 3, 1),
                    ListedCoil.of(4, 4, 2, 3, 4))));

    @Test
    void aListThatIsOutOfTheOrdinary() {
        WorkOrder hand = WorkOrder.of(LISTED, WindingWay.COIL_BY_COIL);
        assertThat(inTheSlots(hand))
                .startsWith(
                        "Wind coil 1 into slots 1 and 3, starting at slot 1 | Both sides lie at the floor. Separator in slots"
                                + " 1, 3.",
                        "Wind coil 2 into slots 2 and 2, starting at slot 2 | Both sides lie at the floor. Separator in slot"
                                + " 2.",
                        "Wind coil 3 into slots 3 and 1, starting at slot 3 | Both sides lie over earlier coils. Coil 3 is"
                                + " dead: no lead to any bar. Slot 3 is full. Slot 1 is full.")
                .endsWith("Test before the slots are closed: coil 4" + TESTED, DRIVE + "2, 4" + OVER);
        String half = "By the list coil 2 has one lead on no bar: find its bar first, or insulate its end.";
        assertThat(hand.notes()).contains(half).anyMatch(n -> n.contains("(one loop)"));
        WorkOrder formed = WorkOrder.of(LISTED, WindingWay.FORMED_COILS);
        assertThat(formed.notes())
                .contains(
                        half,
                        "The top side of the first coil (1) stays lifted to the end, since the bottom sides beneath come in"
                                + " last; tie up what is lifted no further out than needed.");
        assertThat(inTheSlots(formed))
                .contains(
                        "Put in coil 2: bottom side into slot 2, top side into slot 2 | Separator in slot 2. Slot 2 is full.",
                        "Lower the top side of coil 1 into slot 1 | Slot 1 is full.");
        var none = new WindingSpec.Listed(List.of(ListedCoil.of(1, 1, 3, 1, 2), ListedCoil.of(2, 2, 4, 3, 4)));
        assertThat(WorkOrder.of(Winding.build(Armature.of(4, 4, 2), none), WindingWay.FORMED_COILS)
                        .notes())
                .contains("No side has to stay lifted.");
    }

    @Test
    void equalizersJoinBarsThatAreThere() {
        Winding lap = lap(6, 6, Direction.PROGRESSIVE);
        for (int wrong : new int[] {0, 7}) {
            assertThatThrownBy(() -> WorkOrder.of(lap, WindingWay.FORMED_COILS, List.of(List.of(1, wrong))))
                    .hasMessage("an equalizer joins bar %s, but the bars run from 1 to 6", wrong);
        }
        assertThat(WorkOrder.of(lap, WindingWay.FORMED_COILS, List.of(List.of(1, 6)))
                        .steps(Kind.EQUALIZE))
                .hasSize(1);
        assertThat(WorkOrder.of(lap, WindingWay.FORMED_COILS).source()).isEqualTo(Source.practice());
        assertThat(WorkOrder.of(lap, WindingWay.FORMED_COILS).cautions())
                .hasSize(6)
                .startsWith("Wire ends spring and cut: eye protection.");
        assertThat(WorkOrder.of(lap, WindingWay.COIL_BY_COIL).cautions())
                .startsWith("Wire ends spring and cut: eye protection; hands off a winding machine that turns.");
    }
}
