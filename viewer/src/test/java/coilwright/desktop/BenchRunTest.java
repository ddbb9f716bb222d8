package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.bench.BenchTest;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.job.JobText;
import coilwright.job.ReadingSet;
import coilwright.job.TestKind;
import coilwright.winding.ImpossibleWindingException;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BenchRunTest {
    static final Path SAMPLE = Path.of("../samples/jobs/orchard-pump-dynamo.yaml");

    /** Right field by field, but 18 bars do not make a wave winding of 4 poles. */
    static final String UNWINDABLE = """
            coilwright: 1
            title: T
            armature: {slots: 18, bars: 18, poles: 4}
            winding: {type: wave}
            """;

    @TempDir
    private Path folder;

    private Job job;
    private Path file;

    @BeforeEach
    void read() throws Exception {
        job = JobReader.read(SAMPLE);
        file = folder.resolve("job.drop.csv");
    }

    /** A drop test fed at two bars. */
    static ReadingSet drop(int in, int out) {
        return new ReadingSet(
                Optional.empty(),
                TestKind.DROP,
                Optional.of(new ReadingSet.GivenFeed(in, out, BigDecimal.ONE)),
                Optional.empty(),
                Optional.empty(),
                Optional.of("mV"),
                Optional.empty(),
                Optional.empty(),
                List.of());
    }

    @Test
    void otherThreadsSeeTheReadingsAsOfTheLastOne() throws IOException {
        BenchRun run = BenchRun.begin(job, file, drop(1, 5));
        run.note("172");
        ReadingSet first = run.readings();
        // While the disk thread is at the journal, nobody else may be.
        run.journal().note(2, 3, "171");
        assertThat(run.readings()).isSameAs(first);
        run.note("170");
        assertThat(run.readings().readings()).hasSize(2);
        assertThat(first.readings()).hasSize(1);
        run.takeBack();
        run.takeBack();
        assertThat(run.readings().readings()).hasSize(1);
        assertThat(run.current()).contains(new BenchTest.Pair(2, 3));
    }

    @Test
    void noFileIsLeftOfARunThatCannotBeWound() {
        assertThatThrownBy(
                        () -> BenchRun.begin(JobText.of("t", UNWINDABLE).job().orElseThrow(), file, drop(1, 5)))
                .isInstanceOf(ImpossibleWindingException.class);
        assertThat(file).doesNotExist();
    }
}
