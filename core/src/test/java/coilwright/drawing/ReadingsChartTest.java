package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.PairReading;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.apache.batik.anim.dom.SAXSVGDocumentFactory;
import org.junit.jupiter.api.Test;

class ReadingsChartTest {
    @Property(tries = 60)
    void anyWalkFitsItsPages(
            @ForAll @IntRange(min = 1, max = 900) int pairs,
            @ForAll @DoubleRange(min = -1e6, max = 1e6) double scale,
            @ForAll long seed) {
        var random = new Random(seed);
        List<PairReading> expected = new ArrayList<>();
        List<PairReading> read = new ArrayList<>();
        for (int i = 1; i <= pairs; i++) {
            double v = random.nextInt(9) == 0 ? Double.POSITIVE_INFINITY : scale * (random.nextDouble() - 0.3);
            expected.add(new PairReading(i, i % pairs + 1, v));
            if (random.nextBoolean()) {
                read.add(new PairReading(i, i % pairs + 1, scale * random.nextDouble()));
            }
        }
        var data = new ReadingsChart.Data("A walk", "mV", true, expected, read, read);
        DrawingPages pages = ReadingsChart.pages(data, Palette.COLOUR);
        List<String> titles = new ArrayList<>();
        for (Drawing page : pages.pages()) {
            assertThat(page.overlappingTexts()).isEmpty();
            assertThat(page.outsidePage()).isEmpty();
            groups(page)
                    .forEach(g -> titles.add(g.title().substring(0, g.title().indexOf(':'))));
        }
        assertThat(titles)
                .containsExactlyElementsOf(expected.stream()
                        .map(r -> "Bars " + r.from() + "–" + r.to())
                        .toList());
        assertThat(ReadingsChart.pages(data, Palette.COLOUR)).isEqualTo(pages);
    }

    private static List<Shape.Group> groups(Drawing page) {
        return page.shapes().stream()
                .filter(Shape.Group.class::isInstance)
                .map(Shape.Group.class::cast)
                .toList();
    }

    private static Shape.Rect bar(Shape.Group group) {
        return (Shape.Rect) group.shapes().get(0);
    }

    @Test
    void barsAreAsHighAsTheirValues() {
        Drawing page = ReadingsChart.pages(
                        ReadingsChart.Data.of(
                                "Drop",
                                "mV",
                                true,
                                List.of(
                                        new PairReading(1, 2, 40),
                                        new PairReading(2, 3, 80),
                                        new PairReading(3, 1, -120))),
                        Palette.MONOCHROME)
                .first();
        List<Shape.Group> g = groups(page);
        Shape.Rect first = bar(g.get(0));
        Shape.Rect second = bar(g.get(1));
        Shape.Rect third = bar(g.get(2));
        assertThat(second.height()).isCloseTo(2 * first.height(), within(1e-9));
        assertThat(third.height()).isCloseTo(3 * first.height(), within(1e-9));
        double zero = first.y() + first.height();
        assertThat(second.y() + second.height()).isCloseTo(zero, within(1e-9));
        assertThat(third.y()).isCloseTo(zero, within(1e-9));
    }

    @Test
    void aPairReadTheOtherWayRoundHasTheOtherSign() {
        var expected = List.of(new PairReading(1, 2, 5), new PairReading(2, 1, -5), new PairReading(2, 3, 5));
        var read = List.of(new PairReading(1, 2, 4), new PairReading(3, 2, -4), new PairReading(2, 3, 4));
        Drawing page = ReadingsChart.pages(
                        new ReadingsChart.Data("Drop", "V", true, expected, read, List.of()), Palette.COLOUR)
                .first();
        List<Shape.Group> g = groups(page);
        assertThat(g).hasSize(3);
        List<Shape.Circle> dots = g.get(2).shapes().stream()
                .filter(Shape.Circle.class::isInstance)
                .map(Shape.Circle.class::cast)
                .toList();
        assertThat(dots).hasSize(2);
        assertThat(dots.get(0).middle().y()).isCloseTo(dots.get(1).middle().y(), within(1e-9));
        assertThat(g.get(1).shapes()).hasSize(1);
    }

    @Test
    void theThreeSeriesDifferByTheirFormNotOnlyByTheirColour() {
        var one = List.of(new PairReading(1, 2, 1));
        Shape.Group g = groups(ReadingsChart.pages(
                                new ReadingsChart.Data("Drop", "V", true, one, one, one), Palette.MONOCHROME)
                        .first())
                .get(0);
        assertThat(g.shapes())
                .extracting(s -> (Object) s.getClass())
                .containsExactly(Shape.Rect.class, Shape.Circle.class, Shape.Line.class, Shape.Line.class);
        assertThat(g.title()).isEqualTo("Bars 1–2: expected 1.000, read 1.000, explained 1.000 V");
    }

    @Test
    void anOpenPairIsMarkedAndHasNoBar() throws IOException {
        Drawing page = ReadingsChart.pages(
                        ReadingsChart.Data.of(
                                "Ground", "Ω", false, List.of(new PairReading(1, 0, Double.POSITIVE_INFINITY))),
                        Palette.COLOUR)
                .first();
        assertThat(groups(page).get(0).shapes())
                .hasSize(1)
                .allMatch(s -> s instanceof Shape.Text t && t.text().equals("∞"));
        assertThat(page.texts()).extracting(Shape.Text::text).contains("1–shaft");
        new SAXSVGDocumentFactory(null).createSVGDocument("file:/test.svg", new StringReader(SvgWriter.write(page)));
    }

    @Test
    void nothingAndNoNumberAreRefused() {
        assertThatThrownBy(() -> ReadingsChart.Data.of("x", "V", true, List.of()))
                .hasMessage("a chart has no readings, but needs one");
        assertThatThrownBy(() -> ReadingsChart.Data.of("x", "V", true, List.of(new PairReading(1, 2, Double.NaN))))
                .hasMessage("the reading on bars 1 and 2 is no number");
    }
}
