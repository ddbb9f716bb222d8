package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.bench.Procedures;
import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.drawing.Role;
import coilwright.drawing.SampleWindings;
import coilwright.drawing.Shape;
import coilwright.drawing.SvgWriter;
import coilwright.job.Equalizers;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.rewind.NumberRuns;
import coilwright.rewind.WindingWay;
import coilwright.rewind.WorkOrder;
import coilwright.rewind.WorkStep;
import coilwright.rewind.WorkTest;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class WorkSheetTest {
    static Stream<Arguments> everything() {
        return SampleWindings.all().entrySet().stream()
                .flatMap(e -> Stream.of(WindingWay.values())
                        .filter(way -> way.refusal(e.getValue()).isEmpty())
                        .map(way -> Arguments.of(e.getKey(), way, e.getValue())));
    }

    @ParameterizedTest(name = "{0}, {1}")
    @MethodSource("everything")
    void everyStepStandsOnceInOrderWithASquareToTick(String name, WindingWay way, Winding winding) {
        Job job = Job.of(name, winding.armature(), winding.spec());
        WorkOrder order = WorkOrder.of(winding, way);
        DrawingPages pages = WorkSheet.of(job, order, Palette.COLOUR);
        assertThat(WorkSheet.of(job, way, Palette.COLOUR)).isEqualTo(pages);
        int steps = order.steps().size();
        assertThat(ticks(pages)).as("one square a step, one for the whole").isEqualTo(steps + 1);
        for (Drawing page : pages.pages()) {
            assertThat(page.overlappingTexts()).isEmpty();
            assertThat(page.outsidePage()).isEmpty();
            assertThat(page.texts()).allMatch(t -> t.size() > 2.1);
            assertThat(SvgWriter.write(page)).startsWith("<");
        }
        assertThat(besideTicks(pages).subList(0, steps))
                .isEqualTo(IntStream.rangeClosed(1, steps)
                        .mapToObj(Integer::toString)
                        .toList());
    }

    /** The text that follows each square. */
    private static List<String> besideTicks(DrawingPages pages) {
        List<String> out = new ArrayList<>();
        boolean ticked = false;
        for (Drawing page : pages.pages()) {
            for (Shape s : page.shapes()) {
                if (ticked && s instanceof Shape.Text t) {
                    out.add(t.text());
                    ticked = false;
                } else if (s.roles().contains(Role.TICK)) {
                    ticked = true;
                }
            }
        }
        return out;
    }

    private static long ticks(DrawingPages pages) {
        return pages.pages().stream()
                .flatMap(p -> p.shapes().stream())
                .filter(s -> s.roles().contains(Role.TICK))
                .count();
    }

    @Test
    void coilsStandWithTheirSlotsAndBars() {
        Job job = Job.of(
                "Dead",
                Armature.of(12, 23, 4),
                WindingSpec.wave(1, Direction.RETROGRESSIVE).withDeadCoils(List.of(24)));
        DrawingPages pages = WorkSheet.of(job, WindingWay.FORMED_COILS, Palette.COLOUR);
        List<String> words = words(pages);
        int first = words.indexOf("1, 2");
        assertThat(words.subList(first, first + 6))
                .containsExactly("1, 2", "(1)", "4", "1, 2", "12, 13", "Separator in slot 4.");
        assertThat(words).anyMatch(w -> w.startsWith("Cut back both ends of dead coil 24"));
        assertThat(String.join(" ", words)).contains("Coil 24 is dead: no lead to any bar.");
    }

    @Test
    void theEqualizersOfTheJobAreSteps() {
        Job job = Job.of("Lap", Armature.of(24, 24, 4), WindingSpec.lap(1, Direction.PROGRESSIVE))
                .withEqualizers(new Equalizers(3));
        List<String> words = words(WorkSheet.of(job, WindingWay.FORMED_COILS, Palette.COLOUR));
        assertThat(words).contains("Equalizers", "1, 13", "4, 16", "10, 22");
        assertThatThrownBy(() -> WorkSheet.of(job, WindingWay.OPPOSITE_PAIRS, Palette.COLOUR))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("choose coil-by-coil or formed-coils");
    }

    /** The order of work names tests by the titles under which the bench explains them. */
    @Test
    void testsBearTheTitlesOfTheirProcedures() {
        Winding w = Winding.build(Armature.of(12, 12, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
        assertThat(WorkTest.GROUND.title()).isEqualTo(Procedures.ground(w).title());
        assertThat(WorkTest.BLADE.title()).isEqualTo(Procedures.growlerBlade(w).title());
        assertThat(WorkTest.GROWLER_METER.title())
                .isEqualTo(Procedures.growlerMeterWalked(w).title());
        assertThat(WorkTest.DROP.title())
                .isEqualTo(Procedures.drop(w, List.of()).title());
    }

    @Test
    void aLargeArmatureStaysReadable() {
        Job job = Job.of("Large", Armature.of(100, 400, 8), WindingSpec.lap(1, Direction.PROGRESSIVE));
        DrawingPages pages = WorkSheet.of(job, WindingWay.FORMED_COILS, Palette.COLOUR);
        assertThat(pages.pages().size()).isLessThan(10);
        List<Integer> last = List.of(397, 398, 399, 400);
        assertThat(words(pages)).contains(NumberRuns.of(last), "398–400, 1");
    }

    private static List<String> words(DrawingPages pages) {
        return pages.pages().stream()
                .flatMap(p -> p.texts().stream())
                .map(Shape.Text::text)
                .toList();
    }

    @Test
    void everyKindOfStepOccurs() {
        Stream<WorkStep.Kind> kinds = everything()
                .map(a -> WorkOrder.of((Winding) a.get()[2], (WindingWay) a.get()[1]))
                .flatMap(o -> o.kinds().stream());
        assertThat(kinds)
                .contains(Stream.of(WorkStep.Kind.values())
                        .filter(k -> k != WorkStep.Kind.EQUALIZE)
                        .toArray(WorkStep.Kind[]::new));
    }

    @Test
    void theOrderIsThatOfThePlannedWinding() throws Exception {
        String found = """
                coilwright: 1
                title: A
                armature: {slots: 17, bars: 17, poles: 4}
                winding: {type: wave, throw: 4, turns: 6}
                """;
        Job planned = JobReader.parse("job.yaml", found + "plan: {type: lap, turns: 12}\n");
        Job lap = JobReader.parse("job.yaml", found.replace("wave", "lap").replace("turns: 6", "turns: 12"));
        assertThat(WorkSheet.of(planned, WindingWay.FORMED_COILS, Palette.COLOUR))
                .isEqualTo(WorkSheet.of(lap, WindingWay.FORMED_COILS, Palette.COLOUR))
                .isNotEqualTo(
                        WorkSheet.of(JobReader.parse("job.yaml", found), WindingWay.FORMED_COILS, Palette.COLOUR));
    }
}
