package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.bench.BenchTest;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.job.ReadingSet;
import coilwright.job.ReadingsJournal;
import coilwright.job.TestKind;
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
        ReadingsJournal journal = ReadingsJournal.begin(file, drop(1, 5));
        var run = new BenchRun(job, journal);
        run.note("172");
        ReadingSet first = run.readings();
        // While the disk thread is at the journal, nobody else may be.
        journal.note(2, 3, "171");
        assertThat(run.readings()).isSameAs(first);
        run.note("170");
        assertThat(run.readings().readings()).hasSize(2);
        assertThat(first.readings()).hasSize(1);
        run.takeBack();
        run.takeBack();
        assertThat(run.readings().readings()).hasSize(1);
        assertThat(run.current()).contains(new BenchTest.Pair(2, 3));
    }
}
