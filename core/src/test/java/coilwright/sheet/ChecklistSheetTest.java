package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.drawing.Role;
import coilwright.drawing.Shape;
import coilwright.job.Equalizers;
import coilwright.job.Job;
import coilwright.rewind.Checklist;
import coilwright.rewind.Checklist.Section;
import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.WindingSpec;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class ChecklistSheetTest {
    private static final Job PLAIN = Job.of("Plain", Armature.of(24, 24, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
    private static final Job FROG = Job.of(
            "Frog", Armature.of(24, 48, 4), new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.usual(), 0));

    @Test
    void everyItemStandsOnTheSheetWithItsSquares() {
        DrawingPages pages = ChecklistSheet.of(PLAIN, Palette.COLOUR);
        Checklist list = Checklist.of(false);
        long ticks = pages.pages().stream()
                .flatMap(p -> p.shapes().stream())
                .filter(s -> s.roles().contains(Role.TICK))
                .count();
        int verdicts = 4;
        assertThat(ticks)
                .isEqualTo(list.items(Section.CLEAN).size()
                        + 2L * list.items(Section.LOOK).size()
                        + list.items(Section.TEST).size()
                        + 3L * list.items(Section.INSULATION).size()
                        + list.items(Section.RECORD).size()
                        + verdicts);
        for (Drawing page : pages.pages()) {
            assertThat(page.overlappingTexts()).isEmpty();
            assertThat(page.outsidePage()).isEmpty();
        }
        List<String> words = words(pages);
        assertThat(words).contains("Renew", "Touch up", "Caution");
        assertThat(String.join(" ", words)).contains("not under 5 Mohm at 40 °C");
        assertThat(ChecklistSheet.of(PLAIN, Palette.COLOUR)).isEqualTo(pages);
    }

    @Test
    void anEqualizedWindingIsNotTestedWithABlade() {
        assertThat(text(PLAIN)).contains("Growler and blade").doesNotContain("equalized");
        Job rings = PLAIN.withEqualizers(new Equalizers(1));
        for (Job job : List.of(rings, FROG)) {
            assertThat(text(job)).contains("Growler and meter").doesNotContain("Growler and blade");
        }
    }

    private static String text(Job job) {
        return words(ChecklistSheet.of(job, Palette.COLOUR)).stream().collect(Collectors.joining(" "));
    }

    private static List<String> words(DrawingPages pages) {
        return pages.pages().stream()
                .flatMap(p -> p.texts().stream())
                .map(Shape.Text::text)
                .toList();
    }
}
