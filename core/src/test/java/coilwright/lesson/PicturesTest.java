package coilwright.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coilwright.bench.BenchTest;
import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingView;
import coilwright.drawing.Element;
import coilwright.drawing.Point;
import coilwright.drawing.Role;
import coilwright.drawing.Shape;
import coilwright.drawing.ViewOptions;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The rolled-out winding as it stands in a text: seven tenths as high down to the commutator's edge at 163 mm, without
 * the words round it, its figures no smaller than 3.5 mm.
 */
class PicturesTest {
    private static final Winding LAP = Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
    private static final Drawing WHOLE =
            DrawingView.DEVELOPED.draw(LAP, ViewOptions.of("")).first();

    private static Map<Element, Shape.Group> groups(Drawing d) {
        Map<Element, Shape.Group> out = new LinkedHashMap<>();
        for (Shape s : d.shapes()) {
            if (s instanceof Shape.Group g && g.element().isPresent()) {
                out.put(g.element().get(), g);
            }
        }
        return out;
    }

    private static double lower(double y) {
        return y <= 163 ? 0.7 * y : 0.7 * 163 + y - 163;
    }

    private static Stream<Shape> all(Shape s) {
        return s instanceof Shape.Group g ? g.shapes().stream().flatMap(PicturesTest::all) : Stream.of(s);
    }

    private static List<Shape> flat(Drawing d) {
        return d.shapes().stream().flatMap(PicturesTest::all).toList();
    }

    @Test
    void nothingStandsBelowTheCommutatorWithoutBrushes() {
        Drawing d = Pictures.developed(LAP, List.of(), false);
        assertThat(groups(d).keySet()).noneMatch(e -> e.kind() == Element.Kind.BRUSH);
        assertThat(groups(d).keySet())
                .filteredOn(e -> e.kind() == Element.Kind.BAR)
                .hasSize(12);
        assertThat(groups(d).keySet())
                .filteredOn(e -> e.kind() == Element.Kind.COIL)
                .hasSize(12);
        assertThat(groups(d).keySet())
                .filteredOn(e -> e.kind() == Element.Kind.SLOT)
                .hasSize(12);
        assertThat(groups(d).keySet())
                .filteredOn(e -> e.kind() == Element.Kind.POLE)
                .hasSize(4);
        assertThat(d.shapes())
                .filteredOn(s -> !s.roles().contains(Role.PAPER))
                .allMatch(s -> s.bounds().bottom() <= 0.7 * 163);
        assertThat(d.shapes()).filteredOn(s -> s.roles().contains(Role.PAPER)).hasSize(1);
        assertThat(d.width()).isEqualTo(WHOLE.width());
    }

    @Test
    void brushesAndTheirWiresKeepTheirHeight() {
        Drawing d = Pictures.developed(LAP, List.of(), true);
        assertThat(groups(d).keySet())
                .filteredOn(e -> e.kind() == Element.Kind.BRUSH)
                .hasSize(4);
        // The brush stands from 162.6 to 168 mm, its bus at 173 mm.
        Element brush = new Element(Element.Kind.BRUSH, 1);
        var before = (Shape.Rect) groups(WHOLE).get(brush).shapes().get(0);
        var after = (Shape.Rect) groups(d).get(brush).shapes().get(0);
        assertThat(after.x()).isCloseTo(before.x(), within(1e-9));
        assertThat(after.width()).isCloseTo(before.width(), within(1e-9));
        assertThat(after.y()).isCloseTo(lower(before.y()), within(1e-9));
        assertThat(after.y() + after.height()).isCloseTo(lower(before.y() + before.height()), within(1e-9));
        assertThat(flat(d))
                .filteredOn(s -> s instanceof Shape.Circle c && c.middle().y() > 0.7 * 163)
                .isNotEmpty()
                .allMatch(s -> Math.abs(((Shape.Circle) s).middle().y() - lower(173)) < 1e-9
                        || Math.abs(((Shape.Circle) s).middle().y() - lower(178)) < 1e-9);
        assertThat(d.texts().stream().map(Shape.Text::text)).contains("+", "−").noneMatch(t -> t.contains("slots"));
    }

    @Test
    void wordsAreLeftOut() {
        for (boolean brushes : new boolean[] {false, true}) {
            assertThat(Pictures.developed(LAP, List.of(), brushes).shapes())
                    .noneMatch(s -> s.roles().contains(Role.TITLE)
                            || s.roles().contains(Role.NOTE)
                            || s.roles().contains(Role.LEGEND));
        }
    }

    @Test
    void linesGoOnlyLower() {
        Drawing d = Pictures.developed(LAP, List.of(), false);
        for (int n = 1; n <= 12; n++) {
            List<Shape> before = groups(WHOLE).get(Element.coil(n)).shapes().stream()
                    .filter(Shape.Polyline.class::isInstance)
                    .toList();
            List<Shape> after = groups(d).get(Element.coil(n)).shapes().stream()
                    .filter(Shape.Polyline.class::isInstance)
                    .toList();
            assertThat(after).hasSameSizeAs(before);
            for (int i = 0; i < after.size(); i++) {
                List<Point> from = ((Shape.Polyline) before.get(i)).points();
                List<Point> to = ((Shape.Polyline) after.get(i)).points();
                for (int k = 0; k < to.size(); k++) {
                    assertThat(to.get(k).x()).isEqualTo(from.get(k).x());
                    assertThat(to.get(k).y()).isCloseTo(lower(from.get(k).y()), within(1e-9));
                }
            }
        }
    }

    @Test
    void numbersAreLargeEnoughAndStayInTheMiddleOfTheirBarsAndSlots() {
        Drawing d = Pictures.developed(LAP, List.of(), false);
        assertThat(d.texts()).isNotEmpty().allMatch(t -> t.size() >= 3.5);
        for (int n = 1; n <= 12; n++) {
            Shape.Group bar = groups(d).get(Element.bar(n));
            var box = (Shape.Rect) bar.shapes().get(0);
            var number = (Shape.Text) bar.shapes().get(1);
            assertThat(box.y()).isCloseTo(0.7 * 153, within(1e-9));
            assertThat(box.height()).isCloseTo(0.7 * 9, within(1e-9));
            assertThat(number.at().y() - 0.36 * number.size()).isCloseTo(box.y() + box.height() / 2, within(1e-9));
            Shape.Group slot = groups(d).get(Element.slot(n));
            var room = (Shape.Rect) slot.shapes().get(0);
            var plate = (Shape.Rect) slot.shapes().get(1);
            var of = (Shape.Text) slot.shapes().get(2);
            double middle = room.y() + room.height() / 2;
            assertThat(plate.y() + plate.height() / 2).isCloseTo(middle, within(1e-9));
            assertThat(plate.x() + plate.width() / 2).isCloseTo(of.at().x(), within(1e-9));
            assertThat(plate.height()).isGreaterThanOrEqualTo(1.2 * 3.5);
            assertThat(plate.width()).isGreaterThanOrEqualTo(3.5);
            assertThat(of.at().y() - 0.36 * of.size()).isCloseTo(middle, within(1e-9));
        }
        // Above the coils a number keeps its line, so that it grows upwards.
        var apex = groups(d).get(Element.coil(3)).shapes().stream()
                .filter(Shape.Text.class::isInstance)
                .map(Shape.Text.class::cast)
                .findFirst()
                .orElseThrow();
        var was = groups(WHOLE).get(Element.coil(3)).shapes().stream()
                .filter(Shape.Text.class::isInstance)
                .map(Shape.Text.class::cast)
                .findFirst()
                .orElseThrow();
        assertThat(apex.at().y()).isCloseTo(0.7 * was.at().y(), within(1e-9));
    }

    @Test
    void numbersAtTheSidesThatHaveNoRoomGoWithTheirLines() {
        for (int bars : new int[] {8, 12, 18}) {
            Winding w = Winding.build(Armature.of(bars, bars, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
            Drawing d = Pictures.developed(w, List.of(), false);
            assertThat(d.overlappingTexts()).isEmpty();
            List<Shape> top = d.shapes();
            long lines =
                    top.stream().filter(s -> s.roles().contains(Role.LEADER)).count();
            long numbers = 0;
            for (int i = 1; i < top.size(); i++) {
                if (top.get(i - 1).roles().contains(Role.LEADER)) {
                    assertThat(top.get(i)).isInstanceOf(Shape.Text.class);
                    numbers++;
                }
            }
            assertThat(lines).isEqualTo(numbers).isPositive();
        }
    }

    @Test
    void theGrowlerTellsNothingOfItsFacesAndAsksForTheReading() {
        var pair = new BenchTest.Pair(1, 2);
        Drawing asked = Pictures.growler(LAP, 40, pair, false);
        Drawing told = Pictures.growler(LAP, 40, pair, true);
        assertThat(asked.texts().stream().map(Shape.Text::text)).contains("?").noneMatch(t -> t.startsWith("growler:"));
        assertThat(told.texts().stream().map(Shape.Text::text))
                .doesNotContain("?")
                .anyMatch(t -> t.matches("\\d+\\.\\d+"))
                .noneMatch(t -> t.startsWith("growler:"));
        assertThat(asked.texts()).hasSameSizeAs(told.texts());
        assertThat(asked.shapes().stream().flatMap(PicturesTest::all).count())
                .isEqualTo(told.shapes().stream().flatMap(PicturesTest::all).count())
                .isGreaterThan(40);
        assertThat(groups(asked).values()).allMatch(g -> g.title().isEmpty());
        assertThat(asked.description()).isEmpty();
    }
}
