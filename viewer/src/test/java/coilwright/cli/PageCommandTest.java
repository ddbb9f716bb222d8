package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PageCommandTest {
    private static final String ORCHARD =
            TableCommandTest.SAMPLES.resolve("orchard-pump-dynamo.yaml").toString();

    @TempDir
    private Path temp;

    private Run page(String... more) {
        String[] args = new String[more.length + 4];
        args[0] = "page";
        args[1] = ORCHARD;
        args[2] = "--out";
        args[3] = temp.resolve("bench.html").toString();
        System.arraycopy(more, 0, args, 4, more.length);
        return Run.of(args);
    }

    @Test
    void writesTheTestsAskedForInTheirOrder() throws IOException {
        assertThat(page("--test", "drop", "--feed", "2,6", "--amps", "2", "--also", "ground,growler"))
                .isEqualTo(new Run(0, "", ""));
        String html = Files.readString(temp.resolve("bench.html"));
        assertThat(html)
                .containsSubsequence(
                        "Direct current in at bar 2 and out at bar 6, 2 A.",
                        "Ohmmeter from each bar to the bare shaft.",
                        "Armature still in the growler, slot 1 at 0.0")
                .contains("coilwright diagnose JOB drop.csv --test drop --feed 2,6<")
                .doesNotContain("Order of work");
    }

    @Test
    void theSameRunGivesTheSameBytes() throws IOException {
        page("--test", "resistance", "--way", "coil-by-coil");
        byte[] first = Files.readAllBytes(temp.resolve("bench.html"));
        page("--test", "resistance", "--way", "coil-by-coil");
        assertThat(Files.readAllBytes(temp.resolve("bench.html"))).isEqualTo(first);
    }

    @Test
    void expectedValuesAreThoseOfTheProbe() throws IOException {
        page("--test", "growler", "--angle", "10", "--known", "1,2=0.5");
        String html = Files.readString(temp.resolve("bench.html"));
        Run probe =
                Run.of("probe", ORCHARD, "--test", "growler", "--angle", "10", "--known", "1,2=0.5", "--format", "csv");
        for (String line : probe.out().lines().skip(1).toList()) {
            String[] cells = line.split(",");
            String row = "data-from=\"" + cells[0] + "\" data-to=\"" + cells[1] + "\" data-expected=\"";
            int at = html.indexOf(row) + row.length();
            assertThat(at).as(line).isGreaterThan(row.length());
            double expected = Double.parseDouble(html.substring(at, html.indexOf('"', at)));
            assertThat(expected)
                    .as(line)
                    .isCloseTo(Double.parseDouble(cells[2]), org.assertj.core.data.Offset.offset(1e-9));
        }
    }

    @Test
    void whatAPageCannotHoldIsRefusedWithTheWayOut() {
        assertThat(page("--test", "growler-blade").err()).contains("--test growler-blade --sheet FILE.pdf");
        assertThat(page("--test", "drop", "--volts", "6").err()).contains("give --feed and --amps");
        assertThat(page("--test", "drop", "--also", "sparks").err()).contains("\"sparks\"", "resistance");
        assertThat(page("--test", "drop", "--way", "by-magic").err()).contains("choose one of formed-coils");
        assertThat(page("--test", "drop", "--way", "opposite-pairs").err()).contains("choose coil-by-coil");
        assertThat(page("--test", "ground", "--also", "ground").err()).contains("asked for twice");
        assertThat(page().err()).contains("--test");
        assertThat(page("--test", "growler-blade").code()).isEqualTo(2);
        assertThat(Run.of("page", ORCHARD, "--test", "drop", "--out", "bench.txt"))
                .isEqualTo(new Run(2, "", "coilwright: --out is \"bench.txt\", but a page is named .html\n"));
        assertThat(temp.resolve("bench.html")).doesNotExist();
    }

    @Test
    void aFolderThatIsNotThereIsNamed() {
        Run run = Run.of(
                "page",
                ORCHARD,
                "--test",
                "drop",
                "--out",
                temp.resolve("no/bench.html").toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("cannot be written", "there is no folder");
    }
}
