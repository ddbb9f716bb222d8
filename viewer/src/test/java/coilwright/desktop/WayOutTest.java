package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.job.Job;
import coilwright.job.JobText;
import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.Severity;
import coilwright.winding.WindingSpec;
import java.util.List;
import org.junit.jupiter.api.Test;

class WayOutTest {
    private static JobState state(Armature a, WindingSpec spec) {
        return JobState.of(JobText.of("t", Job.of("T", a, spec)));
    }

    @Test
    void everyWayOutCanBeWound() {
        for (Armature a : List.of(Armature.of(12, 24, 4), Armature.of(17, 18, 4), Armature.of(14, 14, 4))) {
            JobState bad = state(a, WindingSpec.wave(1, Direction.PROGRESSIVE));
            assertThat(bad.winding()).isEmpty();
            assertThat(bad.waysOut()).isNotEmpty().hasSizeLessThanOrEqualTo(4);
            for (WayOut way : bad.waysOut()) {
                JobState good = JobState.of(way.in(bad.text()));
                assertThat(good.winding()).as(way.words()).isPresent();
                assertThat(way.words()).startsWith("Use ");
            }
        }
    }

    @Test
    void theNearestNumberOfBarsComesFirst() {
        JobState bad = state(Armature.of(12, 24, 4), WindingSpec.wave(1, Direction.RETROGRESSIVE));
        assertThat(bad.waysOut().get(0).bars()).isEqualTo(23);
        assertThat(bad.waysOut().get(0).words()).contains("23 bars").contains("coil 24 dead");
    }

    @Test
    void aThrowFarFromThePolePitchHasAWayOut() {
        JobState far = state(
                Armature.of(36, 36, 4),
                WindingSpec.lap(1, Direction.PROGRESSIVE).withSpan(CoilSpan.ofThrow(3)));
        assertThat(far.findings()).anyMatch(f -> f.severity() == Severity.WARNING);
        assertThat(far.waysOut()).extracting(WayOut::words).contains("Use throw 9");
        JobState usual = state(Armature.of(36, 36, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        assertThat(usual.waysOut()).isEmpty();
    }
}
