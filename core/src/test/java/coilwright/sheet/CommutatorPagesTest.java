package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.job.Job;
import coilwright.job.JobText;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class CommutatorPagesTest {
    private static Job job(int bar) {
        return JobText.of("t", """
                        coilwright: 1
                        title: T
                        armature: {slots: 20, bars: 20, poles: 4}
                        winding: {type: lap}
                        commutator:
                          diameter: 48 mm
                          runOut: [%s]
                        """.formatted(IntStream.rangeClosed(1, bar)
                        .mapToObj(b -> "{bar: " + b + ", height: " + b % 4 + " µm}")
                        .collect(Collectors.joining(", "))))
                .job()
                .orElseThrow();
    }

    private static CommutatorPages.Progress readTo(int bar) {
        return CommutatorPages.progress(job(bar), Palette.COLOUR);
    }

    @Test
    void theTraceBeginsWithThreeBarsAndTheCentreIsToldFromHalfTheCircleOn() {
        assertThat(readTo(2).trace()).isEmpty();
        assertThat(readTo(3).trace()).isPresent();
        assertThat(readTo(3).report()).isEmpty();
        assertThat(readTo(10).report()).isEmpty();
        // Bar 11 lies opposite to bar 1.
        assertThat(readTo(11).report()).isPresent();
        assertThat(readTo(20).trace()).isPresent();
    }

    @Test
    void aSheetIsFilledInUntilTheCentreIsToldAndHasTheTraceSoFar() {
        int toFillIn = CommutatorPages.of(job(2), Palette.COLOUR).pages().size();
        DrawingPages begun = CommutatorPages.of(job(5), Palette.COLOUR);
        assertThat(begun.pages()).hasSize(toFillIn + 1);
        assertThat(begun.pages().get(toFillIn))
                .isEqualTo(readTo(5).trace().orElseThrow().first());
    }
}
