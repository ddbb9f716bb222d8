package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.drawing.Palette;
import coilwright.job.Job;
import coilwright.job.JobText;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class CommutatorPagesTest {
    private static CommutatorPages.Progress readTo(int bar) {
        Job job = JobText.of("t", """
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
        return CommutatorPages.progress(job, Palette.COLOUR);
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
}
