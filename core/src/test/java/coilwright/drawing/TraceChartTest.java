package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.commutator.Reading;
import coilwright.commutator.RunOut;
import coilwright.commutator.TruingCut;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

class TraceChartTest {
    static RunOut readings(int bars, IntToDoubleFunction height) {
        List<Reading> out = new ArrayList<>();
        for (int b = 1; b <= bars; b++) {
            double h = height.applyAsDouble(b);
            if (!Double.isNaN(h)) {
                out.add(new Reading(b, h));
            }
        }
        return RunOut.of(bars, out);
    }

    private static void sound(DrawingPages pages) {
        for (Drawing page : pages.pages()) {
            assertThat(page.overlappingTexts()).isEmpty();
            assertThat(page.outsidePage()).isEmpty();
            assertThat(page.texts()).allMatch(t -> t.size() > 2.1);
        }
    }

    private static Map<Integer, Shape.Group> groups(DrawingPages pages) {
        Map<Integer, Shape.Group> out = new LinkedHashMap<>();
        for (Drawing page : pages.pages()) {
            for (Shape s : page.shapes()) {
                if (s instanceof Shape.Group g) {
                    assertThat(out.put(g.element().orElseThrow().number(), g)).isNull();
                }
            }
        }
        return out;
    }

    private static Shape.Circle circle(Shape.Group g, Role role) {
        return g.shapes().stream()
                .filter(s -> s.roles().contains(role))
                .map(s -> (Shape.Circle) s)
                .findFirst()
                .orElseThrow();
    }

    @Property(tries = 50)
    void anyTraceIsLegibleAndTheToolPassesUnderEveryBar(
            @ForAll @IntRange(min = 3, max = 500) int bars,
            @ForAll @DoubleRange(min = 0, max = 1) double swing,
            @ForAll @DoubleRange(min = 0, max = 0.1) double noise,
            @ForAll @IntRange(min = 0, max = 40) int lifted,
            @ForAll Optional<TruingCut.Centring> centring,
            @ForAll Palette palette,
            @ForAll Random random) {
        RunOut r = readings(bars, b -> {
            if (b > 3 && random.nextInt(20) == 0) {
                return Double.NaN;
            }
            return 5
                    + swing * Math.cos(2 * Math.PI * b / bars)
                    + noise * random.nextGaussian()
                    + (lifted > 0 && random.nextInt(41 - Math.min(40, lifted)) == 0 ? 0.3 * random.nextDouble() : 0);
        });
        Optional<TruingCut> cut =
                centring.map(c -> TruingCut.plan(r, c, 60, random.nextInt(2) * 0.02, OptionalDouble.empty()));
        var data = new TraceChart.Data("Any commutator", r, cut);
        DrawingPages pages = TraceChart.pages(data, palette);
        sound(pages);
        assertThat(TraceChart.pages(data, palette)).isEqualTo(pages);
        Map<Integer, Shape.Group> groups = groups(pages);
        assertThat(groups.keySet())
                .containsExactlyElementsOf(
                        r.list().stream().map(RunOut.Bar::bar).toList());
        if (cut.isPresent()) {
            groups.values()
                    .forEach(g -> assertThat(circle(g, Role.AFTER).middle().y())
                            .isGreaterThan(circle(g, Role.READ).middle().y() - 1e-6));
        }
    }

    @Example
    void whileBegunItTellsNoCentre() {
        RunOut few = readings(400, b -> b <= 6 ? 0.01 * (b % 3) : Double.NaN);
        DrawingPages pages = TraceChart.begun("T", few, Palette.COLOUR);
        sound(pages);
        assertThat(groups(pages)).hasSize(6);
        assertThat(pages.first().shapes()).noneMatch(s -> s.roles().contains(Role.FIT));
        assertThat(pages.first().texts())
                .anyMatch(t -> t.text().equals("run-out 0.020 mm so far; 394 bars not read"))
                .noneMatch(t -> t.text().contains("eccentricity"));
    }

    @Example
    void heightsAreToScaleAndTheCutIsAsDeepAsPlanned() {
        RunOut r = readings(24, b -> 0.1 * Math.cos(2 * Math.PI * (b - 1) / 24) + (b == 7 ? 0.05 : 0));
        for (TruingCut.Centring centring : TruingCut.Centring.values()) {
            TruingCut cut = TruingCut.plan(r, centring, 40, 0.01, OptionalDouble.of(38));
            DrawingPages pages = TraceChart.pages(new TraceChart.Data("", r, Optional.of(cut)), Palette.COLOUR);
            Map<Integer, Shape.Group> g = groups(pages);
            double first = circle(g.get(1), Role.READ).middle().y();
            double half = circle(g.get(13), Role.READ).middle().y();
            double scale = (half - first) / 0.2;
            boolean recentred = centring == TruingCut.Centring.RECENTRED;
            int highest = r.highest(recentred).bar();
            int lowest = r.lowest(recentred).bar();
            assertThat(gap(g.get(highest)) / scale).isCloseTo(cut.depthMm(), within(1e-9));
            assertThat(gap(g.get(lowest)) / scale).isCloseTo(0.01, within(1e-9));
            String words = String.join(
                    " ", pages.first().texts().stream().map(Shape.Text::text).toList());
            assertThat(words).contains(String.format(java.util.Locale.ROOT, "cut %.3f mm", cut.depthMm()));
            assertThat(g.get(7).shapes()).anyMatch(s -> s instanceof Shape.Rect);
            assertThat(pages.first().texts())
                    .anyMatch(t -> t.text().equals("7") && t.roles().contains(Role.STANDOUT));
        }
    }

    private static double gap(Shape.Group g) {
        return circle(g, Role.AFTER).middle().y()
                - circle(g, Role.READ).middle().y();
    }

    @Example
    void aRoundCommutatorIsAFlatLine() {
        DrawingPages pages =
                TraceChart.pages(new TraceChart.Data("", readings(3, b -> 0), Optional.empty()), Palette.MONOCHROME);
        sound(pages);
        assertThat(groups(pages).values())
                .extracting(g -> circle(g, Role.READ).middle().y())
                .allSatisfy(y -> assertThat(y)
                        .isCloseTo(
                                circle(groups(pages).get(1), Role.READ).middle().y(), within(1e-6)));
    }
}
