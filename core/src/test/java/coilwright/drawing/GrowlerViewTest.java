package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.BenchArmature;
import coilwright.bench.Growler;
import coilwright.bench.GrowlerMeter;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.batik.anim.dom.SAXSVGDocumentFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class GrowlerViewTest {
    private static final List<Growler> GROWLERS = List.of(
            Growler.USUAL, new Growler(60, 80), new Growler(120, 60), new Growler(20, 10), new Growler(90, 180));
    private static final double[] ANGLES = {0, 1, 45, 137.3, 200, 270, 359.5};

    private static Map<String, Winding> windings() {
        Map<String, Winding> out = new LinkedHashMap<>();
        out.put(
                "smallest",
                build(new Armature(3, 3, 2, SlotAlignment.MICA), WindingSpec.lap(1, Direction.PROGRESSIVE)));
        out.put("wave", wave());
        out.put("three a slot", build(Armature.of(24, 72, 6), WindingSpec.lap(1, Direction.RETROGRESSIVE)));
        out.put("duplex", build(Armature.of(40, 80, 4), WindingSpec.lap(2, Direction.PROGRESSIVE)));
        out.put("400 bars", build(Armature.of(100, 400, 8), WindingSpec.lap(1, Direction.PROGRESSIVE)));
        return out;
    }

    private static Winding wave() {
        return build(Armature.of(17, 17, 4), WindingSpec.wave(1, Direction.PROGRESSIVE));
    }

    private static Winding build(Armature armature, WindingSpec spec) {
        return Winding.build(armature, spec);
    }

    static Stream<String> names() {
        return windings().keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("names")
    void nothingOverlapsOrLeavesThePage(String name) {
        Winding winding = windings().get(name);
        for (Growler growler : GROWLERS) {
            for (double angle : ANGLES) {
                ViewOptions options = ViewOptions.of("Job <" + name + "> & more")
                        .withRotorAngle(angle)
                        .withBench(GrowlerBench.of(growler));
                Drawing page = DrawingView.GROWLER.draw(winding, options).first();
                assertThat(page.overlappingTexts())
                        .as("%s at %s", growler, angle)
                        .isEmpty();
                assertThat(page.outsidePage()).as("%s at %s", growler, angle).isEmpty();
                assertThat(page.texts()).allMatch(t -> t.size() > 2.1);
                assertThat(DrawingView.GROWLER.draw(winding, options).first()).isEqualTo(page);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("names")
    void everyBarAndSlotIsThereOnce(String name) throws IOException {
        Winding winding = windings().get(name);
        Drawing page = DrawingView.GROWLER.draw(winding, ViewOptions.of(name)).first();
        new SAXSVGDocumentFactory(null).createSVGDocument("file:/test.svg", new StringReader(SvgWriter.write(page)));
        List<Integer> bars = new ArrayList<>();
        List<Integer> slots = new ArrayList<>();
        for (Shape s : page.shapes()) {
            if (s instanceof Shape.Group g && g.element().isPresent()) {
                (g.element().get().kind() == Element.Kind.BAR ? bars : slots)
                        .add(g.element().get().number());
            }
        }
        Armature a = winding.armature();
        assertThat(bars).isEqualTo(IntStream.rangeClosed(1, a.bars()).boxed().toList());
        assertThat(slots).isEqualTo(IntStream.rangeClosed(1, a.slots()).boxed().toList());
    }

    @Test
    void theMeterStandsAtTheClockPlaceOfAPairThatReadsMost() {
        Winding winding = wave();
        for (double angle : ANGLES) {
            Drawing page = DrawingView.GROWLER
                    .draw(winding, ViewOptions.of("").withRotorAngle(angle))
                    .first();
            List<GrowlerMeter.Placed> best = GrowlerMeter.of(BenchArmature.sound(winding, 1), Growler.USUAL)
                    .best(angle);
            assertThat(best).isNotEmpty();
            Shape.Circle meter = only(page, Shape.Circle.class, Role.INSTRUMENT);
            Shape.Circle shaft = only(page, Shape.Circle.class, Role.SHAFT);
            double clock = clock(shaft.middle(), meter.middle());
            double nearest = best.stream()
                    .mapToDouble(p -> Math.abs(Ring.shortWay(p.clockDegrees(), clock)))
                    .min()
                    .orElseThrow();
            assertThat(nearest).isCloseTo(0, within(1e-6));
            // Of several such pairs the one that a hand reaches best is shown.
            double highest = best.stream()
                    .mapToDouble(p -> Math.abs(Ring.shortWay(0, p.clockDegrees())))
                    .min()
                    .orElseThrow();
            assertThat(Math.abs(Ring.shortWay(0, clock))).isCloseTo(highest, within(1e-6));
            assertThat(page.texts())
                    .extracting(Shape.Text::text)
                    .contains(String.format(
                            java.util.Locale.ROOT, "%.3f", best.get(0).reading().value()));
        }
    }

    private static double clock(Point middle, Point p) {
        return Math.toDegrees(Math.atan2(p.x() - middle.x(), middle.y() - p.y()));
    }

    private static <T extends Shape> T only(Drawing page, Class<T> kind, Role role) {
        List<T> found = page.shapes().stream()
                .filter(s -> kind.isInstance(s) && s.roles().contains(role))
                .map(kind::cast)
                .toList();
        assertThat(found).hasSize(1);
        return found.get(0);
    }

    @Test
    void theFacesStandEitherSideOfStraightDown() {
        Drawing page = DrawingView.GROWLER
                .draw(wave(), ViewOptions.of("").withBench(GrowlerBench.of(new Growler(50, 70))))
                .first();
        List<Shape.Arc> faces = page.shapes().stream()
                .filter(s -> s instanceof Shape.Arc && s.roles().contains(Role.FACE))
                .map(Shape.Arc.class::cast)
                .toList();
        assertThat(faces).hasSize(2).allMatch(f -> f.sweep() == 70);
        assertThat(faces).extracting(f -> f.from() + f.sweep() / 2).containsExactly(130.0, 230.0);
    }

    @Test
    void probesOfChoiceShowTheirReading() {
        ViewOptions options = ViewOptions.of("").withBench(GrowlerBench.usual().withProbes(1, 9));
        assertThat(DrawingView.GROWLER.draw(wave(), options).first().description())
                .contains("Probes on bars 1 and 9");
        assertThatThrownBy(() -> DrawingView.GROWLER.draw(
                        wave(),
                        ViewOptions.of("").withBench(GrowlerBench.usual().withProbes(1, 18))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("probe on bar 18, but bars run from 1 to 17");
        assertThatThrownBy(() -> DrawingView.GROWLER.draw(
                        wave(),
                        ViewOptions.of("").withBench(GrowlerBench.usual().withProbes(4, 4))))
                .hasMessageContaining("name two different bars");
    }
}
