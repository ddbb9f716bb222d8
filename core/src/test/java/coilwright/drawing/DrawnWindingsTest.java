package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class DrawnWindingsTest {
    @Property(tries = 60)
    void anyLapWindingIsDrawnLegibly(
            @ForAll @IntRange(min = 3, max = 60) int slots,
            @ForAll @IntRange(min = 1, max = 5) int sides,
            @ForAll @IntRange(min = 1, max = 6) int polePairs,
            @ForAll @IntRange(min = 1, max = 80) int span,
            @ForAll @IntRange(min = -90, max = 90) int offset,
            @ForAll SlotAlignment alignment,
            @ForAll Direction direction,
            @ForAll @IntRange(min = -360, max = 360) int rotor) {
        int bars = slots * sides;
        var armature = new Armature(slots, bars, 2 * polePairs, alignment);
        Winding winding = Winding.build(
                armature,
                WindingSpec.lap(1, direction)
                        .withSpan(CoilSpan.ofPositions(sides + span % (bars - 2 * sides + 1)))
                        .withLeadOffset(offset));
        for (DrawingView view : DrawingView.values()) {
            for (PageFormat format : PageFormat.values()) {
                ViewOptions options = ViewOptions.of("any").withFormat(format).withRotorAngle(rotor);
                for (Drawing page : view.draw(winding, options).pages()) {
                    assertThat(page.overlappingTexts()).isEmpty();
                    assertThat(page.outsidePage()).isEmpty();
                    assertThat(page.texts()).allMatch(t -> t.size() > 2.1);
                }
            }
        }
    }
}
