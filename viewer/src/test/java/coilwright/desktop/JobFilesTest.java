package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.job.Problem;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class JobFilesTest {
    @Test
    void theQuestionTellsHowManyFilesWouldBeReplaced() {
        Path first = Path.of("sheets", "order-1.svg");
        assertThat(JobFiles.mayReplace(List.of(first)))
                .isEqualTo("The file order-1.svg is there already. Put the new one in its place?");
        assertThat(JobFiles.mayReplace(List.of(first, Path.of("order-2.svg"), Path.of("order-4.svg"))))
                .isEqualTo("The file order-1.svg and 2 more are there already. Put the new ones in their place?");
    }

    @Test
    void filesBesideAJobHaveItsNameWithoutTheEnding() {
        Path jobs = Path.of("jobs");
        assertThat(JobFiles.beside(jobs.resolve("a.b.yaml"), ".drop.csv")).isEqualTo(jobs.resolve("a.b.drop.csv"));
        assertThat(JobFiles.beside(jobs.resolve("plain"), ".drop.csv")).isEqualTo(jobs.resolve("plain.drop.csv"));
        assertThat(JobFiles.beside(jobs.resolve(".hidden"), ".drop.csv")).isEqualTo(jobs.resolve(".hidden.drop.csv"));
    }

    @Test
    void aProblemOfNoFieldIsToldWithoutOne() {
        assertThat(JobFiles.words(new Problem("job.yaml", 2, "armature.bars", "is 0")))
                .isEqualTo("armature.bars is 0");
        assertThat(JobFiles.words(new Problem("job.yaml", 2, "", "is no job"))).isEqualTo("is no job");
    }
}
