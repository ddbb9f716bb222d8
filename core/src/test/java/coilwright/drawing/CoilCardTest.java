package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import org.junit.jupiter.api.Test;

/** Lead throws worked out by hand, as a rewinder would with a straight edge over the slot. */
class CoilCardTest {
    @Test
    void waveCoil() {
        Winding w = SampleWindings.wave();
        assertThat(CoilCardLayout.lines(w, w.coil(1)))
                .containsExactly(
                        "Counted from slot 1, which holds the top side of coil 1.",
                        "Coil throw 1–5: top side in slot 1, bottom side in slot 5.",
                        "The centre line of slot 1 runs through the middle of bar 1.",
                        "Top lead: bar 1, on the centre line.",
                        "Bottom lead: bar 10, 9 bars right of the centre line.",
                        "Right is clockwise, seen from the commutator end with the slot up.");
    }

    @Test
    void lapCoilInLineWithMicaHasHalfBars() {
        // 12 slots, 24 bars: coil 3 is the first of slot 2, whose centre line runs two bars past the mica before bar 1,
        // so between bars 2 and 3. Lead offset 3 puts its top lead on bar 6, 3½ bars on, and its bottom lead on bar 5.
        Winding w = Winding.build(
                new Armature(12, 24, 2, SlotAlignment.MICA),
                WindingSpec.lap(1, Direction.RETROGRESSIVE).withLeadOffset(3));
        assertThat(CoilCardLayout.lines(w, w.coil(3)))
                .contains(
                        "Counted from slot 2 as slot 1, which holds the top side of coil 3.",
                        "Coil throw 1–7: top side in slot 2, bottom side in slot 8.",
                        "The centre line of slot 2 runs through the mica between bars 2 and 3.",
                        "Top lead: bar 6, 3½ bars right of the centre line.",
                        "Bottom lead: bar 5, 2½ bars right of the centre line.");
    }

    @Test
    void aCentreLineMayFallBesideTheMiddleOfABar() {
        // 31 slots and 61 bars: slot n is (n − 1) · 61 / 31 bars on from the middle of bar 1.
        Winding w = SampleWindings.deadCoil();
        assertThat(CoilCardLayout.lines(w, w.coil(3)))
                .contains("The centre line of slot 2 runs through bar 3, 0.03 bar left of its middle.");
        assertThat(CoilCardLayout.lines(w, w.coil(19)))
                .contains("The centre line of slot 10 runs through bar 19, 0.29 bar left of its middle.");
        assertThat(CoilCardLayout.lines(w, w.coil(51)))
                .contains("The centre line of slot 26 runs through bar 50, 0.19 bar right of its middle.");
    }

    @Test
    void throwsAreToldInBars() {
        assertThat(CoilCardLayout.bars(0.004)).isEqualTo("on the centre line");
        assertThat(CoilCardLayout.bars(1)).isEqualTo("1 bar right of the centre line");
        assertThat(CoilCardLayout.bars(-0.5)).isEqualTo("½ bar left of the centre line");
        assertThat(CoilCardLayout.bars(1.5)).isEqualTo("1½ bars right of the centre line");
    }

    @Test
    void leadsToTheLeft() {
        Winding w = Winding.build(
                Armature.of(24, 24, 4),
                WindingSpec.lap(1, Direction.PROGRESSIVE).withLeadOffset(-4));
        assertThat(CoilCardLayout.leadThrow(w, w.coil(2), true)).isCloseTo(-4, within(1e-9));
        assertThat(CoilCardLayout.leadThrow(w, w.coil(2), false)).isCloseTo(-3, within(1e-9));
        assertThat(CoilCardLayout.lines(w, w.coil(2))).contains("Top lead: bar 22, 4 bars left of the centre line.");
    }

    @Test
    void deadCoilHasNoLeads() {
        Winding w = SampleWindings.deadCoil();
        assertThat(CoilCardLayout.lines(w, w.coil(32)))
                .contains("Top lead: on no bar; cut and insulated.", "Bottom lead: on no bar; cut and insulated.");
    }

    @Test
    void numbersAreWrittenWithHalves() {
        assertThat(Caption.number(0)).isEqualTo("0");
        assertThat(Caption.number(0.5)).isEqualTo("½");
        assertThat(Caption.number(-2.5)).isEqualTo("−2½");
        assertThat(Caption.number(3)).isEqualTo("3");
        assertThat(Caption.number(1.97)).isEqualTo("1.97");
        assertThat(Caption.number(1.1)).isEqualTo("1.1");
    }
}
