package coilwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.FeedBars;
import coilwright.bench.Growler;
import coilwright.bench.GrowlerMeter;
import coilwright.bench.PairReading;
import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.drawing.Shape;
import coilwright.drawing.SvgWriter;
import coilwright.drawing.export.PdfExport;
import coilwright.job.Job;
import coilwright.job.Quantity;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.SlotAlignment;
import coilwright.winding.WindingSpec;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.batik.anim.dom.SAXSVGDocumentFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class TestSheetTest {
    private static final String OHMS = "12.5 mohm";

    private static List<Job> jobs() {
        return List.of(
                job("Tin toy", new Armature(3, 3, 2, SlotAlignment.MICA), WindingSpec.lap(1, Direction.PROGRESSIVE)),
                wave(),
                job("Two circuits", Armature.of(40, 80, 4), WindingSpec.lap(2, Direction.PROGRESSIVE)),
                job("Large", Armature.of(100, 400, 8), WindingSpec.lap(1, Direction.PROGRESSIVE)));
    }

    private static Job wave() {
        return job("Wave", Armature.of(17, 17, 4), WindingSpec.wave(1, Direction.PROGRESSIVE));
    }

    private static Job job(String title, Armature armature, WindingSpec spec) {
        return Job.of(title, armature, spec)
                .withTurns(3)
                .withCoilResistance(Quantity.parse(OHMS, Quantity.Kind.RESISTANCE));
    }

    private static BenchArmature sound(Job job) {
        return BenchArmature.sound(job.build(), 0.0125);
    }

    private static List<BenchTest> tests(BenchArmature armature) {
        FeedBars feed = FeedBars.advised(armature.winding(), false).get(0);
        double clock = GrowlerMeter.of(armature, Growler.USUAL).bestClock();
        return List.of(
                new BenchTest.GrowlerWalked(Growler.USUAL, 20),
                new BenchTest.GrowlerTurned(Growler.USUAL, clock),
                new BenchTest.Drop(feed.in(), feed.out(), 2),
                new BenchTest.Resistance(),
                new BenchTest.Ground(),
                new BenchTest.GroundWalk(feed.in(), feed.out(), 2),
                new BenchTest.Polarity());
    }

    static Stream<Arguments> everything() {
        return jobs().stream().flatMap(job -> {
            BenchArmature armature = sound(job);
            return tests(armature).stream().map(t -> Arguments.of(job.title(), t.word(), job, armature, t));
        });
    }

    @ParameterizedTest(name = "{0}, {1}")
    @MethodSource("everything")
    void everyPairStandsOnceInOrderWithItsValue(
            String title, String word, Job job, BenchArmature armature, BenchTest test) throws IOException {
        DrawingPages pages = TestSheet.of(job, armature, test, TestSheet.Options.usual());
        List<PairReading> walk = test.readWalk(armature);
        ReadingUnit unit = ReadingUnit.of(test, walk, true, false);
        List<String> cells = new ArrayList<>();
        for (Drawing page : pages.pages()) {
            sound(page);
            List<String> here = cells(page);
            List<String> pairs = here.stream().filter(TestSheetTest::isPair).toList();
            // As many heads as strips begin on the page.
            long heads = here.stream().filter("Bars"::equals).count();
            assertThat(heads).isBetween(pairs.isEmpty() ? 0L : 1L, 3L);
            for (int i = 0; i < here.size(); i++) {
                if (isPair(here.get(i))) {
                    cells.add(here.get(i) + " " + here.get(i + 1));
                }
            }
        }
        assertThat(cells)
                .isEqualTo(walk.stream()
                        .map(r -> r.pair().toString().replace('-', '–') + " " + unit.words(r.value()))
                        .toList());
        assertThat(TestSheet.of(job, armature, test, TestSheet.Options.usual())).isEqualTo(pages);
    }

    private static boolean isPair(String text) {
        return text.matches("\\d+–(\\d+|shaft)");
    }

    /** Texts of the size that only tables have. */
    private static List<String> cells(Drawing page) {
        return page.texts().stream()
                .filter(t -> t.size() == 2.8)
                .map(Shape.Text::text)
                .toList();
    }

    private static void sound(Drawing page) throws IOException {
        assertThat(page.overlappingTexts()).isEmpty();
        assertThat(page.outsidePage()).isEmpty();
        assertThat(page.texts()).allMatch(t -> t.size() > 2.1);
        assertThat(page.width()).isEqualTo(210);
        assertThat(page.height()).isEqualTo(297);
        new SAXSVGDocumentFactory(null).createSVGDocument("file:/test.svg", new StringReader(SvgWriter.write(page)));
    }

    @Test
    void theBladeSheetListsEverySlot() throws IOException {
        for (Job job : jobs()) {
            DrawingPages pages = TestSheet.blade(job, sound(job), Growler.USUAL, TestSheet.Options.usual());
            List<String> slots = new ArrayList<>();
            List<String> found = new ArrayList<>();
            for (Drawing page : pages.pages()) {
                sound(page);
                slots.addAll(cells(page).stream().filter(t -> t.matches("\\d+")).toList());
                found.addAll(cells(page).stream()
                        .filter(t -> t.equals("still") || t.equals("hums"))
                        .toList());
            }
            int n = job.armature().slots();
            assertThat(slots)
                    .isEqualTo(IntStream.rangeClosed(1, n)
                            .mapToObj(Integer::toString)
                            .toList());
            assertThat(found).hasSize(n).containsOnly("still");
        }
    }

    @Test
    void withEqualizersTheBladeHumsAndTheSheetSaysTheyAreFitted() {
        Job job = job("Lap", Armature.of(24, 24, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        List<List<Integer>> rings =
                IntStream.rangeClosed(1, 12).mapToObj(b -> List.of(b, b + 12)).toList();
        DrawingPages pages =
                TestSheet.blade(job, sound(job).withEqualizers(rings), Growler.USUAL, TestSheet.Options.usual());
        List<String> words = pages.pages().stream()
                .flatMap(p -> p.texts().stream())
                .map(Shape.Text::text)
                .toList();
        assertThat(words).contains("fitted", "hums");
    }

    @Test
    void aKnownGoodReadingTurnsRelativeValuesIntoVolts() {
        Job job = wave();
        BenchArmature armature = sound(job);
        var test = new BenchTest.GrowlerWalked(Growler.USUAL, 0);
        List<PairReading> walk = test.readWalk(armature);
        PairReading known =
                walk.stream().filter(r -> r.value() > 0.5).findFirst().orElseThrow();
        var options = new TestSheet.Options(
                Optional.of(new PairReading(known.from(), known.to(), 0.246)), Palette.MONOCHROME);
        List<String> words = TestSheet.of(job, armature, test, options).pages().stream()
                .flatMap(p -> p.texts().stream())
                .map(Shape.Text::text)
                .toList();
        int at = words.lastIndexOf(known.from() + "–" + known.to());
        assertThat(words.get(at + 1)).isEqualTo("246.0");
        assertThat(words).contains("Read, mV");
        PairReading still = new PairReading(known.from(), known.to(), 0);
        assertThatThrownBy(() ->
                        TestSheet.of(job, armature, test, new TestSheet.Options(Optional.of(still), Palette.COLOUR)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("choose a pair on which the meter moves");
    }

    @Test
    void withoutTheResistanceOfACoilValuesAreRelative() {
        Job job = Job.of("Bare", Armature.of(12, 12, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
        BenchArmature armature = BenchArmature.sound(job.build(), 1);
        var drop = new BenchTest.Drop(1, 7, 3);
        List<String> words = TestSheet.of(job, armature, drop, TestSheet.Options.usual()).pages().stream()
                .flatMap(p -> p.texts().stream())
                .map(Shape.Text::text)
                .toList();
        assertThat(words).contains("3 A", "1.500", "−1.500");
        assertThat(String.join(" ", words)).contains("the resistance of a coil is not given");
    }

    @Test
    void samePagesGiveTheSamePdf() throws IOException {
        Job job = wave();
        var test = new BenchTest.Drop(1, 5, 2);
        byte[] one = PdfExport.pdf(TestSheet.of(job, sound(job), test, TestSheet.Options.usual()));
        byte[] two = PdfExport.pdf(TestSheet.of(job, sound(job), test, TestSheet.Options.usual()));
        assertThat(one).isEqualTo(two);
    }

    @Test
    void aTitleOfAnyLengthIsWrapped() throws IOException {
        Job job = job("Motor".repeat(40), Armature.of(3, 3, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
        for (Drawing page : TestSheet.of(job, sound(job), new BenchTest.Resistance(), TestSheet.Options.usual())
                .pages()) {
            sound(page);
        }
    }
}
