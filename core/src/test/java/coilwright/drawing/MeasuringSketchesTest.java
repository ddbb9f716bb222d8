package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class MeasuringSketchesTest {
    static Stream<Drawing> all() {
        List<Drawing> out = new ArrayList<>();
        for (Palette palette : Palette.values()) {
            out.add(MeasuringSketches.coilThrow(palette));
            out.add(MeasuringSketches.leadThrow(palette));
            out.add(MeasuringSketches.alignment(palette));
            out.add(MeasuringSketches.core(palette));
            out.add(MeasuringSketches.micrometer(palette));
            out.add(MeasuringSketches.mica(palette));
            for (MeasuringSketches.Slot shape : MeasuringSketches.Slot.values()) {
                out.add(MeasuringSketches.slot(shape, palette));
            }
        }
        return out.stream();
    }

    @ParameterizedTest
    @MethodSource("all")
    void nothingOverlapsOrLeavesThePage(Drawing sketch) {
        assertThat(sketch.overlappingTexts()).isEmpty();
        assertThat(sketch.outsidePage()).isEmpty();
        assertThat(sketch.texts()).allMatch(t -> t.size() >= 2.2);
        assertThat(sketch.description()).isNotBlank();
        assertThat(sketch.width()).isLessThanOrEqualTo(176);
    }

    @Test
    void everyLetterExplainedStandsAtASize() {
        for (MeasuringSketches.Slot shape : MeasuringSketches.Slot.values()) {
            List<String> words = words(MeasuringSketches.slot(shape, Palette.COLOUR));
            List<String> explained = words.stream()
                    .filter(w -> w.matches("[a-z]  .*"))
                    .map(w -> w.substring(0, 1))
                    .toList();
            assertThat(explained).doesNotHaveDuplicates().contains("d", "f", "g", "h", "k");
            assertThat(words.stream().filter(w -> w.length() == 1)).containsExactlyInAnyOrderElementsOf(explained);
        }
        assertThat(words(MeasuringSketches.slot(MeasuringSketches.Slot.SEMI_CLOSED, Palette.COLOUR)))
                .contains("a", "b", "c", "e", "r");
        assertThat(words(MeasuringSketches.slot(MeasuringSketches.Slot.RECTANGULAR, Palette.COLOUR)))
                .doesNotContain("a", "b", "c", "e", "r");
        assertThat(words(MeasuringSketches.core(Palette.COLOUR))).contains("A", "B", "C", "D", "E", "F", "G", "H");
    }

    /** The example in words must be the one that is drawn: throw 1–5 by the convention slot 1 and four slots on. */
    @Test
    void whatIsCountedIsWhatIsDrawn() {
        Drawing throwing = MeasuringSketches.coilThrow(Palette.COLOUR);
        double one = x(throwing, "1");
        double five = x(throwing, "5");
        assertThat(throwing.shapes().stream()
                        .filter(s -> s instanceof Shape.Circle)
                        .map(s -> ((Shape.Circle) s).middle().x()))
                .containsExactly(one, five);
        Drawing leads = MeasuringSketches.leadThrow(Palette.COLOUR);
        Shape.Polyline lead = leads.shapes().stream()
                .filter(s -> s instanceof Shape.Polyline)
                .map(s -> (Shape.Polyline) s)
                .findFirst()
                .orElseThrow();
        assertThat(lead.points().get(lead.points().size() - 1).x()).isEqualTo(x(leads, "4"));
    }

    private static double x(Drawing drawing, String text) {
        return drawing.texts().stream()
                .filter(t -> t.text().equals(text))
                .findFirst()
                .orElseThrow()
                .at()
                .x();
    }

    private static List<String> words(Drawing drawing) {
        return drawing.texts().stream().map(Shape.Text::text).toList();
    }
}
