package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.winding.Armature;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class RingTest {
    @Test
    void theShortWayRoundIsTakenAndClockwiseOfTwoAlike() {
        assertThat(Ring.shortWay(10, 40)).isEqualTo(30);
        assertThat(Ring.shortWay(40, 10)).isEqualTo(-30);
        assertThat(Ring.shortWay(350, 10)).isEqualTo(20);
        assertThat(Ring.shortWay(10, 350)).isEqualTo(-20);
        assertThat(Ring.shortWay(0, 180)).isEqualTo(180);
        assertThat(Ring.shortWay(180, 0)).isEqualTo(180);
        assertThat(Ring.shortWay(0, 181)).isEqualTo(-179);
        assertThat(Ring.shortWay(-720, 5)).isEqualTo(5);
    }

    /**
     * From the middle out: brushes of 6.5 mm, bars 8.5, leads 19, core 14.5, back 19, numbers 6, poles 5.5. A roomy ring
     * is as small as it can be with 1 mm between the numbers of bars, 2 between those of slots, 0.95 mm for each coil
     * side and 0.7 between the numbers of coils, on 0.7 of the core for one side a slot and layer, else 0.84.
     */
    @Test
    void aRoomyRingIsNoLargerThanItsNumbersNeed() {
        Set<Integer> tightest = new TreeSet<>();
        Map<String, Winding> windings = SampleWindings.all();
        windings.put(
                "many slots, one coil",
                Winding.build(Armature.of(90, 3, 2), new WindingSpec.Listed(List.of(ListedCoil.of(1, 1, 2, 1, 2)))));
        for (Map.Entry<String, Winding> e : windings.entrySet()) {
            Winding w = e.getValue();
            Armature a = w.armature();
            // Letters as small as dots leave the coil sides to decide.
            double font = e.getKey().equals("frog-leg") ? 0.1 : 2.6;
            double core = Ring.roomyCore(w, font);
            double share = w.sidesPerSlot() == 1 ? 0.7 : 0.84;
            int last = w.coils().get(w.coils().size() - 1).number();
            double[] left = {
                around(core + 6.5 + 8.5 / 2) / a.bars() - wide(a.bars(), font) - 1,
                around(core + 6.5 + 8.5 + 19 + 14.5 / 2) / a.slots() - wide(a.slots(), font) - 2,
                around(core + 6.5 + 8.5 + 19) * share / w.positions() / w.layers() - 0.95,
                around(core + 6.5 + 8.5 + 19 + 14.5 + 19) * share / w.positions() - wide(last, font) - 0.7
            };
            assertThat(Arrays.stream(left).min().getAsDouble()).as(e.getKey()).isCloseTo(0, within(1e-9));
            for (int i = 0; i < left.length; i++) {
                if (left[i] < 1e-9) {
                    tightest.add(i);
                }
            }
        }
        assertThat(tightest).as("each of the four decides somewhere").containsExactly(0, 1, 2, 3);
        assertThat(Ring.fullRadius(10)).isEqualTo(10 + 6.5 + 8.5 + 19 + 14.5 + 19 + 6 + 5.5);
    }

    private static double around(double radius) {
        return 2 * Math.PI * radius;
    }

    private static double wide(int largest, double font) {
        return TextWidths.em("0".repeat(Integer.toString(largest).length()), false) * font;
    }
}
