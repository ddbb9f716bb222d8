package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.commutator.CommutatorLimit;
import coilwright.commutator.CommutatorReport;
import coilwright.commutator.Reading;
import coilwright.commutator.TruingCut;
import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.drawing.Shape;
import coilwright.drawing.SvgWriter;
import coilwright.drawing.export.PdfExport;
import coilwright.job.AcceptanceBasis;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.rewind.Acceptance;
import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.batik.anim.dom.SAXSVGDocumentFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The sheets of run-out and of acceptance. */
class BenchSheetsTest {
    private static void sound(DrawingPages pages) throws IOException {
        for (Drawing page : pages.pages()) {
            assertThat(page.overlappingTexts()).isEmpty();
            assertThat(page.outsidePage()).isEmpty();
            assertThat(page.width()).isIn(Sheet.WIDTH, Sheet.HEIGHT);
            new SAXSVGDocumentFactory(null)
                    .createSVGDocument("file:/test.svg", new StringReader(SvgWriter.write(page)));
        }
    }

    private static String words(DrawingPages pages) {
        return pages.pages().stream()
                .flatMap(p -> p.texts().stream())
                .map(Shape.Text::text)
                .collect(Collectors.joining(" "));
    }

    /** Texts of the size that only tables have. */
    private static List<String> cells(DrawingPages pages) {
        return pages.pages().stream()
                .flatMap(p -> p.texts().stream())
                .filter(t -> t.size() == 2.8)
                .map(Shape.Text::text)
                .toList();
    }

    private static CommutatorReport.Given given(String... limits) {
        return new CommutatorReport.Given(
                OptionalDouble.of(300),
                OptionalDouble.of(301),
                OptionalDouble.of(280),
                OptionalDouble.of(0.6),
                OptionalDouble.of(0.3),
                0.01,
                TruingCut.Centring.AS_READ,
                List.of(limits).stream().map(CommutatorLimit::of).toList());
    }

    private static CommutatorReport report(int bars) {
        return CommutatorReport.of(
                bars,
                IntStream.rangeClosed(1, bars)
                        .filter(b -> b % 50 != 9)
                        .mapToObj(b -> new Reading(b, -1.234 + 0.05 * Math.cos(b) + 0.1 * Math.cos(b * 0.01)))
                        .toList(),
                given("brush-maker", "practice-depth", "starter-generator-width"));
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 24, 400})
    void everyBarStandsOnceWithItsReading(int bars) throws IOException {
        CommutatorReport report = report(bars);
        DrawingPages pages = CommutatorSheet.of("Winch motor", report, Palette.COLOUR);
        sound(pages);
        List<String> cells = cells(pages);
        List<String> numbers = cells.stream().filter(c -> c.matches("\\d+")).toList();
        assertThat(numbers)
                .isEqualTo(IntStream.rangeClosed(1, bars)
                        .mapToObj(Integer::toString)
                        .toList());
        report.runOut()
                .list()
                .forEach(b -> assertThat(cells.get(cells.indexOf(Integer.toString(b.bar())) + 1))
                        .isEqualTo(String.format(java.util.Locale.ROOT, "−%.3f", -b.heightMm())));
        assertThat(pages.pages().get(pages.pages().size() - 1).width()).isEqualTo(Sheet.HEIGHT);
        assertThat(words(pages))
                .contains("OUT OF THE CHOSEN LIMITS")
                .contains("eye protection")
                .contains("local codes")
                .contains("● any");
        assertThat(CommutatorSheet.of("Winch motor", report, Palette.COLOUR)).isEqualTo(pages);
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 24, 400})
    void theEmptySheetHasEveryBarAndRoomToWrite(int bars) throws IOException {
        for (CommutatorReport.Given given : List.of(CommutatorReport.Given.nothing(), given("brush-maker"))) {
            DrawingPages pages = CommutatorSheet.empty("Winch motor", bars, given, Palette.MONOCHROME);
            sound(pages);
            assertThat(cells(pages).stream().filter(c -> c.matches("\\d+"))).hasSize(bars);
            assertThat(words(pages)).contains("Total indicator reading").doesNotContain("…");
        }
    }

    @Test
    void theAcceptanceSheetHasEveryCheckWhateverIsKnown() throws Exception {
        String head = """
                coilwright: 1
                title: Winch motor
                armature: {slots: 12, bars: 12, poles: 2, slotOneInLineWith: bar}
                winding: {type: lap, throw: 6}
                """;
        String rating = "rating: {kind: universal, volts: 230 V, power: 300 W}\n";
        String done = "asRewound: {measured: {temperature: 20 °C, insulationOneMinute: 12 Mohm,"
                + " insulationTenMinutes: 150 Mohm}, highPotential: {volts: 800 V, current: ac, seconds: 60,"
                + " result: passed}, polarity: reversed}\n";
        for (String more : List.of("", rating, rating + done)) {
            Job job = JobReader.parse("job.yaml", head + more);
            Acceptance acceptance = Acceptance.of(AcceptanceBasis.of(job, AcceptanceBasis.Options.none()));
            DrawingPages pages = AcceptanceSheet.of(job.title(), acceptance, Palette.COLOUR);
            sound(pages);
            String words = words(pages);
            acceptance.checks().forEach(c -> assertThat(words).contains(c.title()));
            assertThat(words)
                    .contains("These voltages kill")
                    .contains("local electrical codes")
                    .contains("holds a charge")
                    .contains("Released by")
                    .contains("2013")
                    .contains("2000");
            assertThat(words.contains("After 1 min")).isEqualTo(!more.contains("asRewound"));
            assertThat(AcceptanceSheet.of(job.title(), acceptance, Palette.COLOUR))
                    .isEqualTo(pages);
        }
    }

    @Test
    void aTitleOfAnyLengthIsWrapped() throws IOException {
        sound(CommutatorSheet.empty("Motor".repeat(40), 24, CommutatorReport.Given.nothing(), Palette.COLOUR));
    }

    @Test
    void samePagesGiveTheSamePdf() throws IOException {
        DrawingPages pages = CommutatorSheet.of("Winch motor", report(24), Palette.COLOUR);
        assertThat(PdfExport.pdf(pages)).isEqualTo(PdfExport.pdf(pages));
    }
}
