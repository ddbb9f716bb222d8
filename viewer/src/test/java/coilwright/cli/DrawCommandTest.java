package coilwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.drawing.DrawingView;
import coilwright.job.JobReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class DrawCommandTest {
    private static final String ORCHARD =
            TableCommandTest.SAMPLES.resolve("orchard-pump-dynamo.yaml").toString();

    @TempDir
    private Path temp;

    static Stream<String> samples() throws IOException {
        return TableCommandTest.samples();
    }

    @ParameterizedTest
    @MethodSource("samples")
    void everySampleIsDrawnInEveryView(String sample) throws Exception {
        var winding = JobReader.read(Path.of(sample)).build();
        for (DrawingView view : DrawingView.values()) {
            Path file = temp.resolve(view.word() + ".svg");
            assertThat(Run.of("draw", sample, "--view", view.word(), "--out", file.toString()))
                    .isEqualTo(new Run(0, "", ""));
        }
        for (String view : List.of("developed", "round")) {
            String svg = Files.readString(temp.resolve(view + ".svg"));
            assertMarked(svg, "data-coil", winding.coils().size());
            assertMarked(svg, "data-bar", winding.armature().bars());
            assertMarked(svg, "data-slot", winding.armature().slots());
        }
    }

    private static void assertMarked(String svg, String attribute, int count) {
        assertThat(IntStream.rangeClosed(1, count).filter(n -> !svg.contains(attribute + "=\"" + n + "\"")))
                .as(attribute)
                .isEmpty();
    }

    @Test
    void withoutAFileTheSvgIsPrinted() throws IOException {
        Path file = temp.resolve("round.svg");
        Run.of("draw", ORCHARD, "--view", "round", "--out", file.toString());
        assertThat(Run.of("draw", ORCHARD, "--view", "round").out()).isEqualTo(Files.readString(file));
    }

    @Test
    void theEndingTellsTheFormat() throws IOException {
        Path png = temp.resolve("a.png");
        Path pdf = temp.resolve("a.PDF");
        assertThat(Run.of("draw", ORCHARD, "--view", "round", "--dpi", "60", "--out", png.toString())
                        .code())
                .isZero();
        assertThat(ImageIO.read(png.toFile()).getWidth()).isGreaterThan(200);
        assertThat(Run.of("draw", ORCHARD, "--view", "coil", "--coil", "3", "--out", pdf.toString())
                        .code())
                .isZero();
        assertThat(new String(Files.readAllBytes(pdf), StandardCharsets.ISO_8859_1))
                .startsWith("%PDF-");
        Run run = Run.of(
                "draw",
                ORCHARD,
                "--view",
                "round",
                "--out",
                temp.resolve("a.gif").toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err())
                .isEqualTo("coilwright: \"a.gif\" does not end in a format a drawing can have: name it .svg, .png or "
                        + ".pdf\n");
    }

    @Test
    void pagesAreNumbered() throws IOException {
        String large =
                TableCommandTest.SAMPLES.resolve("mountain-railway-motor.yaml").toString();
        String to = temp.resolve("d.svg").toString();
        assertThat(Run.of("draw", large, "--view", "developed", "--pages", "--out", to)
                        .code())
                .isZero();
        assertThat(temp.resolve("d-1.svg")).exists();
        assertThat(temp.resolve("d-2.svg")).exists();
        Run run = Run.of("draw", large, "--view", "developed", "--pages");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).matches("coilwright: this view takes \\d+ pages: name a file with --out\n");
    }

    @Test
    void highlightsAndOptionsChangeTheDrawing() {
        String plain = Run.of("draw", ORCHARD, "--view", "developed").out();
        for (List<String> option : List.of(
                List.of("--coil", "3"),
                List.of("--bar", "2,5"),
                List.of("--slot", "9"),
                List.of("--angle", "12.5"),
                List.of("--brush-width", "2"),
                List.of("--mono"))) {
            List<String> args = new ArrayList<>(List.of("draw", ORCHARD, "--view", "developed"));
            args.addAll(option);
            Run run = Run.of(args.toArray(String[]::new));
            assertThat(run.code()).as(option.toString()).isZero();
            assertThat(run.out()).as(option.toString()).startsWith("<").isNotEqualTo(plain);
        }
    }

    @Test
    void whatIsNotThereCannotBeDrawn() throws IOException {
        refused("there is no view \"flat\": the views are developed, round", "--view", "flat");
        refused("there is no coil 18: coils run from 1 to 17", "--view", "round", "--coil", "18");
        refused("there is no bar 0: bars run from 1 to 17", "--view", "round", "--bar", "0");
        refused("there is no slot 99: slots run from 1 to 17", "--view", "round", "--slot", "99");
        refused("brush width is 9.0 bars", "--view", "developed", "--brush-width", "9");
        refused(
                "Invalid value for option '--angle': is \"NaN\", but must be a number",
                "--view",
                "developed",
                "--angle",
                "NaN");
        Path job = Files.writeString(
                temp.resolve("no.yaml"),
                "{coilwright: 1, title: T, armature: {slots: 24, bars: 24, poles: 4}, winding: {type: wave}}");
        Run run = Run.of("draw", job.toString(), "--view", "round");
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.err()).startsWith(job + ": commutator pitch would be 24/2");
    }

    private static void refused(String reason, String... options) {
        List<String> args = new ArrayList<>(List.of("draw", ORCHARD));
        args.addAll(List.of(options));
        Run run = Run.of(args.toArray(String[]::new));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).startsWith("coilwright: " + reason);
    }

    @Test
    void helpTellsWhatEachViewShows() {
        String help = Run.of("draw", "--help").out().replaceAll("\\s+", " ");
        for (DrawingView view : DrawingView.values()) {
            assertThat(help).contains(view.word() + " (");
        }
    }

    @Test
    void tableWritesEveryViewBesides() throws IOException {
        Path folder = temp.resolve("new/drawings");
        Run run = Run.of("table", ORCHARD, "--drawings", folder.toString());
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).contains("\nDrawings\n  " + folder.resolve("developed.svg"));
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.map(f -> f.getFileName().toString()))
                    .containsExactlyInAnyOrderElementsOf(Arrays.stream(DrawingView.values())
                            .flatMap(v -> Stream.of(v.word() + ".svg", v.word() + ".png"))
                            .toList());
        }
        assertThat(Run.of("table", ORCHARD, "--drawings", ORCHARD).err()).contains("no folder can be made there");
    }

    @Test
    void anArmatureWithAllLeadsCutIsStillDrawn() throws IOException {
        Path job = Files.writeString(temp.resolve("cut.yaml"), """
                coilwright: 1
                title: All leads cut
                armature: {slots: 3, bars: 3, poles: 2}
                winding: {type: listed, coils: [{coil: 1, topSlot: 1, bottomSlot: 2}]}
                """);
        Run run =
                Run.of("table", job.toString(), "--drawings", temp.resolve("d").toString());
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("none: no coil has both leads on bars").contains("paths.svg");
        assertThat(Run.of("table", job.toString(), "--format", "json").out()).contains("\"parallelPaths\": null");
    }
}
