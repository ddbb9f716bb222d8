package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.drawing.Element;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.List;
import org.junit.jupiter.api.Test;

class TiesTest {
    private static final Winding WAVE = Winding.build(
            Armature.of(17, 17, 4), WindingSpec.wave(1, Direction.PROGRESSIVE).withSpan(CoilSpan.ofThrow(4)));
    private static final Winding DEAD = Winding.build(
            Armature.of(12, 23, 4),
            WindingSpec.wave(1, Direction.RETROGRESSIVE)
                    .withSpan(CoilSpan.ofThrow(3))
                    .withDeadCoils(List.of(24)));

    @Test
    void aCoilLightsItsSlotsAndBarsAndNoOthers() {
        Ties ties = new Ties(WAVE);
        Ties.Tied tied = ties.of(Element.coil(3));
        assertThat(tied.lit())
                .containsExactlyInAnyOrder(
                        Element.coil(3), Element.slot(3), Element.slot(7), Element.bar(3), Element.bar(12));
        assertThat(tied.words())
                .startsWith("Coil 3: top side in slot 3, bottom side in slot 7; top lead on bar 3, bottom lead on bar"
                        + " 12");
    }

    @Test
    void aBarLightsBothItsCoils() {
        Ties.Tied tied = new Ties(WAVE).of(Element.bar(5));
        assertThat(tied.lit()).contains(Element.bar(5), Element.coil(5), Element.coil(13));
        assertThat(tied.words()).startsWith("Bar 5: top lead of coil 5, bottom lead of coil 13");
    }

    @Test
    void aSlotLightsWhatLiesInIt() {
        Ties.Tied tied = new Ties(DEAD).of(Element.slot(12));
        assertThat(tied.words()).isEqualTo("Slot 12: top sides of coils 23, 24, bottom sides of coils 17, 18.");
        assertThat(tied.lit()).contains(Element.coil(17), Element.coil(24), Element.slot(12));
    }

    @Test
    void aDeadCoilSaysSo() {
        Ties ties = new Ties(DEAD);
        assertThat(ties.of(Element.coil(24)).words()).contains("dead, both leads cut off");
        assertThat(ties.path(24)).isEmpty();
    }

    @Test
    void everyLiveCoilIsInAPathOrShortedByABrush() {
        for (Winding w : List.of(WAVE, DEAD)) {
            Ties ties = new Ties(w);
            for (Coil c : w.liveCoils()) {
                Ties.Tied tied = ties.of(Element.coil(c.number()));
                assertThat(tied.words()).containsPattern("in path \\d+ of 2|shorted by a brush");
                assertThat(tied.along().isEmpty())
                        .isEqualTo(ties.path(c.number()).isEmpty());
            }
        }
    }
}
