package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.batik.anim.dom.SAXSVGDocumentFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.w3c.dom.svg.SVGDocument;

class DrawingViewTest {
    static Stream<Arguments> everything() {
        List<Arguments> out = new ArrayList<>();
        SampleWindings.all().forEach((name, winding) -> {
            for (DrawingView view : DrawingView.values()) {
                for (PageFormat format : PageFormat.values()) {
                    out.add(Arguments.of(name, winding, view, format));
                }
            }
        });
        return out.stream();
    }

    @ParameterizedTest(name = "{0}, {2}, {3}")
    @MethodSource("everything")
    void pagesAreSound(String name, Winding winding, DrawingView view, PageFormat format) throws IOException {
        ViewOptions options = ViewOptions.of("Job <" + name + "> & \"more\"")
                .withFormat(format)
                .withRotorAngle(13.7)
                .withHighlight(new Highlight(Set.of(2), Set.of(1), Set.of(2)));
        DrawingPages pages = view.draw(winding, options);
        assertThat(view.draw(winding, options)).isEqualTo(pages);
        for (Drawing page : pages.pages()) {
            assertThat(page.overlappingTexts()).isEmpty();
            assertThat(page.outsidePage()).isEmpty();
            // 6 pt, the smallest type read with ease on paper, is 2.1 mm.
            assertThat(page.texts()).allMatch(t -> t.size() > 2.1);
            SVGDocument svg = parse(page);
            assertThat(svg.getRootElement().getAttribute("viewBox")).startsWith("0 0 ");
            noIdTwice(svg);
        }
        if (format == PageFormat.A4 && !name.equals("crowded slots")) {
            assertThat(pages.pages()).allMatch(p -> p.width() <= 297.001 && p.height() <= 210.001);
        }
    }

    @ParameterizedTest(name = "{0}, {2}, {3}")
    @MethodSource("everything")
    void everyCoilBarAndSlotBearsItsNumber(String name, Winding winding, DrawingView view, PageFormat format)
            throws IOException {
        Map<Integer, Integer> coils = new TreeMap<>();
        Set<Integer> bars = new TreeSet<>();
        Set<Integer> slots = new TreeSet<>();
        DrawingPages pages = view.draw(winding, ViewOptions.of(name).withFormat(format));
        for (Drawing page : pages.pages()) {
            SVGDocument svg = parse(page);
            numbers(svg, "coil").forEach(n -> coils.merge(n, 1, Integer::sum));
            bars.addAll(numbers(svg, "bar"));
            slots.addAll(numbers(svg, "slot"));
        }
        Set<Integer> allCoils = new TreeSet<>();
        winding.coils().forEach(c -> allCoils.add(c.number()));
        Armature a = winding.armature();
        switch (view) {
            case DEVELOPED, ROUND -> {
                assertThat(coils.keySet()).isEqualTo(allCoils);
                assertThat(bars).hasSize(a.bars()).contains(1, a.bars());
                assertThat(slots).hasSize(a.slots()).contains(1, a.slots());
                if (pages.pages().size() == 1) {
                    assertThat(coils.values()).allMatch(n -> n == 1);
                }
            }
            case PATHS -> {
                assertThat(coils.keySet()).isEqualTo(allCoils);
                assertThat(coils.values()).allMatch(n -> n == 1);
            }
            case COIL -> {
                assertThat(coils).hasSize(1);
                assertThat(coils.values()).containsExactly(2);
                assertThat(bars).hasSize(a.bars());
                assertThat(slots).hasSize(a.slots());
            }
            case GROWLER -> {
                assertThat(bars).hasSize(a.bars());
                assertThat(slots).hasSize(a.slots());
            }
            default -> throw new AssertionError(view);
        }
    }

    private static SVGDocument parse(Drawing page) throws IOException {
        return new SAXSVGDocumentFactory(null)
                .createSVGDocument("file:/test.svg", new StringReader(SvgWriter.write(page)));
    }

    private static void noIdTwice(SVGDocument svg) {
        Set<String> seen = new LinkedHashSet<>();
        for (Element e : elements(svg)) {
            String id = e.getAttribute("id");
            if (!id.isEmpty()) {
                assertThat(seen.add(id)).as("id %s once", id).isTrue();
            }
        }
    }

    /** Numbers of all elements whose first class is a word, each of which must have the data attribute. */
    private static List<Integer> numbers(SVGDocument svg, String word) {
        List<Integer> out = new ArrayList<>();
        for (Element e : elements(svg)) {
            if (e.getTagName().equals("g") && (e.getAttribute("class") + " ").startsWith(word + " ")) {
                out.add(Integer.parseInt(e.getAttribute("data-" + word)));
            }
        }
        return out;
    }

    private static List<Element> elements(SVGDocument svg) {
        NodeList all = svg.getElementsByTagName("*");
        return IntStream.range(0, all.getLength())
                .mapToObj(i -> (Element) all.item(i))
                .toList();
    }

    /** Reads the finished picture as a person would: which bars and slots do a coil's lines touch? */
    @ParameterizedTest(name = "{0}")
    @MethodSource("windings")
    void linesOfTheDevelopedDrawingMeetTheRightBarsAndSlots(String name, Winding winding) {
        Drawing page = DrawingView.DEVELOPED.draw(winding, ViewOptions.of(name)).first();
        Map<Integer, Box> bars = boxes(page, coilwright.drawing.Element.Kind.BAR);
        Map<Integer, Box> slots = boxes(page, coilwright.drawing.Element.Kind.SLOT);
        for (Shape s : page.shapes()) {
            if (!(s instanceof Shape.Group g)
                    || g.element().isEmpty()
                    || g.element().get().kind() != coilwright.drawing.Element.Kind.COIL) {
                continue;
            }
            Coil coil = winding.coil(g.element().get().number());
            for (Role role : List.of(Role.COIL_TOP, Role.COIL_BOTTOM)) {
                boolean top = role == Role.COIL_TOP;
                Set<Integer> barsMet = new TreeSet<>();
                Set<Integer> slotsMet = new TreeSet<>();
                for (Shape part : g.shapes()) {
                    if (part instanceof Shape.Polyline p && p.roles().contains(role)) {
                        p.points()
                                .forEach(at -> bars.forEach((n, box) -> {
                                    if (box.grown(0.01).holds(new Box(at.x(), at.y(), at.x(), at.y()))) {
                                        barsMet.add(n);
                                    }
                                }));
                        for (int i = 1; i < p.points().size(); i++) {
                            Point a = p.points().get(i - 1);
                            Point b = p.points().get(i);
                            slots.forEach((n, box) -> {
                                if (a.x() == b.x()
                                        && a.x() > box.left()
                                        && a.x() < box.right()
                                        && Math.min(a.y(), b.y()) < box.top()
                                        && Math.max(a.y(), b.y()) > box.bottom()) {
                                    slotsMet.add(n);
                                }
                            });
                        }
                    }
                }
                assertThat(slotsMet)
                        .as("slots of coil %s %s", coil.number(), role)
                        .containsExactly((top ? coil.top() : coil.bottom()).slot());
                var bar = top ? coil.topBar() : coil.bottomBar();
                if (bar.isPresent()) {
                    assertThat(barsMet)
                            .as("bars of coil %s %s", coil.number(), role)
                            .containsExactly(bar.getAsInt());
                } else {
                    assertThat(barsMet).isEmpty();
                }
            }
        }
    }

    static Stream<Arguments> windings() {
        return SampleWindings.all().entrySet().stream().map(e -> Arguments.of(e.getKey(), e.getValue()));
    }

    private static Map<Integer, Box> boxes(Drawing page, coilwright.drawing.Element.Kind kind) {
        Map<Integer, Box> out = new LinkedHashMap<>();
        for (Shape s : page.shapes()) {
            if (s instanceof Shape.Group g
                    && g.element().isPresent()
                    && g.element().get().kind() == kind) {
                out.put(g.element().get().number(), g.shapes().get(0).bounds());
            }
        }
        return out;
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("windings")
    void curvesOfTheRoundDrawingEndOnTheRightBars(String name, Winding winding) {
        double rotor = 31;
        Drawing page = DrawingView.ROUND
                .draw(winding, ViewOptions.of(name).withRotorAngle(rotor))
                .first();
        Point middle = page.shapes().stream()
                .filter(s -> s instanceof Shape.Circle)
                .map(s -> ((Shape.Circle) s).middle())
                .findFirst()
                .orElseThrow();
        Armature a = winding.armature();
        for (Shape s : page.shapes()) {
            if (s instanceof Shape.Group g
                    && g.element().isPresent()
                    && g.element().get().kind() == coilwright.drawing.Element.Kind.COIL) {
                Coil coil = winding.coil(g.element().get().number());
                for (Shape part : g.shapes()) {
                    if (part instanceof Shape.Curve c) {
                        var bar = c.roles().contains(Role.COIL_TOP) ? coil.topBar() : coil.bottomBar();
                        if (bar.isPresent()) {
                            Point end = c.pieces().get(c.pieces().size() - 1).end();
                            double at = Math.toDegrees(Math.atan2(end.x() - middle.x(), middle.y() - end.y()));
                            double off = Ring.shortWay(a.barCentre(bar.getAsInt()) + rotor, at);
                            assertThat(Math.abs(off))
                                    .as("coil %s from the middle of bar %s", coil.number(), bar.getAsInt())
                                    .isLessThan(a.barAngle() / 2);
                        }
                    }
                }
            }
        }
    }

    @Test
    void slotOneIsUpAndNumbersRunClockwise() {
        Drawing page = DrawingView.ROUND
                .draw(SampleWindings.wave(), ViewOptions.of(""))
                .first();
        Map<Integer, Box> slots = boxes(page, coilwright.drawing.Element.Kind.SLOT);
        Box one = slots.get(1);
        double middle = page.height() / 2;
        assertThat(one.bottom()).isLessThan(middle);
        assertThat(slots.get(2).left()).isGreaterThan(one.left());
        assertThat(slots.get(17).right()).isLessThan(one.right());
    }

    @Test
    void pathsStandInOrder() {
        Winding winding = Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
        var gear = coilwright.circuit.BrushGear.at(winding, 0, 1);
        Drawing page = DrawingView.PATHS.draw(winding, ViewOptions.of("")).first();
        List<String> drawn = new ArrayList<>();
        for (Shape s : page.shapes()) {
            if (s instanceof Shape.Group g && g.element().isPresent()) {
                drawn.add(g.element().get().id());
            }
        }
        List<String> wanted = new ArrayList<>();
        gear.paths().forEach(path -> {
            wanted.add("brush-" + path.fromBrush());
            path.steps().forEach(step -> {
                wanted.add("bar-" + step.fromBar());
                wanted.add("coil-" + step.coil().number());
            });
            wanted.add("bar-" + path.steps().get(path.steps().size() - 1).toBar());
            wanted.add("brush-" + path.toBrush());
        });
        gear.shorted().forEach(c -> wanted.add("coil-" + c.number()));
        assertThat(gear.paths()).hasSize(4);
        assertThat(drawn).isEqualTo(wanted);
    }

    @Test
    void largestArmatureIsDrawn() {
        Winding winding = Winding.build(Armature.of(1000, 4000, 20), WindingSpec.lap(1, Direction.PROGRESSIVE));
        for (DrawingView view : DrawingView.values()) {
            Drawing page = view.draw(winding, ViewOptions.of("")).first();
            assertThat(page.overlappingTexts()).isEmpty();
            assertThat(page.outsidePage()).isEmpty();
        }
        assertThat(DrawingView.DEVELOPED
                        .draw(winding, ViewOptions.of("").withFormat(PageFormat.A4))
                        .pages())
                .hasSizeGreaterThan(50);
    }

    @Test
    void unknownViewNamesThoseThereAre() {
        assertThat(DrawingView.named("round")).isEqualTo(DrawingView.ROUND);
        assertThatThrownBy(() -> DrawingView.named("flat"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("\"flat\"")
                .hasMessageContaining("developed, round, coil, paths, growler");
    }

    @Test
    void coilThatIsNotThereIsNamed() {
        assertThatThrownBy(() -> DrawingView.COIL.draw(
                        SampleWindings.wave(), ViewOptions.of("").withCoil(18)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("there is no coil 18: coils run from 1 to 17");
    }
}
