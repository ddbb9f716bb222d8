package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.sheet.SheetKind;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class SheetCommandTest {
    private static final String ORCHARD =
            TableCommandTest.SAMPLES.resolve("orchard-pump-dynamo.yaml").toString();

    @TempDir
    private Path temp;

    private String out(String name) {
        return temp.resolve(name).toString();
    }

    private List<String> written() throws IOException {
        try (Stream<Path> files = Files.list(temp)) {
            return files.map(f -> f.getFileName().toString()).sorted().toList();
        }
    }

    @ParameterizedTest
    @EnumSource(SheetKind.class)
    void everyKindComesAsPdf(SheetKind kind) throws IOException {
        Run run = Run.of("sheet", ORCHARD, "--kind", kind.word(), "--out", out("a.pdf"));
        assertThat(run).isEqualTo(new Run(0, "", ""));
        byte[] first = Files.readAllBytes(temp.resolve("a.pdf"));
        assertThat(new String(first, 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
        assertThat(Run.of("sheet", ORCHARD, "--kind", kind.word(), "--out", out("b.pdf"))
                        .code())
                .isZero();
        assertThat(Files.readAllBytes(temp.resolve("b.pdf"))).isEqualTo(first);
    }

    @Test
    void theRecordIsWhatIsMadeUnlessAnotherKindIsAskedFor() throws IOException {
        assertThat(Run.of("sheet", ORCHARD, "--out", out("r.html"))).isEqualTo(new Run(0, "", ""));
        assertThat(Files.readString(temp.resolve("r.html")))
                .startsWith("<!DOCTYPE html>")
                .contains("<p>Job record</p>", "Before and after", "</html>");
        assertThat(Run.of("sheet", ORCHARD, "--kind", "as-found", "--out", out("f.HTML"))
                        .code())
                .isZero();
        assertThat(Files.readString(temp.resolve("f.HTML"))).contains("<p>As-found sheet: before stripping</p>");
    }

    @Test
    void picturesAreNumberedPageByPage() throws IOException {
        assertThat(Run.of("sheet", ORCHARD, "--kind", "as-found", "--mono", "--out", out("s.svg"))
                        .code())
                .isZero();
        assertThat(written()).contains("s-1.svg", "s-2.svg", "s-5.svg");
        assertThat(Files.readString(temp.resolve("s-1.svg"))).contains("<svg").doesNotContain("#15539e");
        assertThat(Run.of("sheet", ORCHARD, "--kind", "checklist", "--dpi", "20", "--out", out("c.png"))
                        .code())
                .isZero();
        assertThat(written()).contains("c-1.png");
    }

    @Test
    void theKindsAreListed() {
        Run run = Run.of("sheet", "--kind", "list");
        assertThat(run.code()).isZero();
        assertThat(run.out().lines().map(l -> l.split(" ")[0]))
                .containsExactlyElementsOf(
                        Arrays.stream(SheetKind.values()).map(SheetKind::word).toList());
        assertThat(Run.of("sheet", "--help").out()).contains("as-found", "acceptance", "record unless given");
    }

    @Test
    void whatIsMissingOrWrongIsSaid() throws IOException {
        complains("no job file was given", "sheet", "--out", out("x.pdf"));
        complains("no file to write was given", "sheet", ORCHARD);
        complains("did you mean record?", "sheet", ORCHARD, "--kind", "rekord", "--out", out("x.pdf"));
        complains("--kind list shows those there are", "sheet", ORCHARD, "--kind", "zz", "--out", out("x.pdf"));
        complains("name it .svg, .png or .pdf", "sheet", ORCHARD, "--out", out("x.doc"));
        complains("comes on pages only", "sheet", ORCHARD, "--kind", "checklist", "--out", out("x.html"));
        complains(
                "choose one of formed-coils", "sheet", ORCHARD, "--kind", "order", "--way", "y", "--out", out("x.pdf"));
        complains(
                "opposite pairs suit two poles only",
                "sheet",
                ORCHARD,
                "--kind",
                "order",
                "--way",
                "opposite-pairs",
                "--out",
                out("x.pdf"));
        complains("cannot be written", "sheet", ORCHARD, "--out", out("no/such/folder/x.html"));
        assertThat(written()).isEmpty();
    }

    private static void complains(String words, String... args) {
        Run run = Run.of(args);
        assertThat(run.code()).as(String.join(" ", args)).isEqualTo(2);
        assertThat(run.err()).contains(words);
        assertThat(run.out()).isEmpty();
    }

    /** A miscount is just what the sheet is to find: it is printed all the same, but a record needs a winding. */
    @Test
    void aWindingThatCannotBeWoundGetsTheAsFoundSheetAlone() throws IOException {
        Path job = temp.resolve("job.yaml");
        Files.writeString(
                job,
                "coilwright: 1\ntitle: Miscounted\narmature: {slots: 16, bars: 16, poles: 4,"
                        + " slotOneInLineWith: bar}\nwinding: {type: wave, throw: 4}\n");
        assertThat(Run.of("sheet", job.toString(), "--kind", "as-found", "--out", out("f.pdf"))
                        .code())
                .isZero();
        Run record = Run.of("sheet", job.toString(), "--out", out("r.pdf"));
        assertThat(record.code()).isEqualTo(1);
        assertThat(record.err()).contains("job.yaml: ");
        assertThat(written()).containsExactly("f.pdf", "job.yaml");
    }
}
