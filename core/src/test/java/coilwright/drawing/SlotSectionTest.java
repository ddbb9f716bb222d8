package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.rewind.Conductor;
import coilwright.rewind.InsulationBuild;
import coilwright.rewind.RoundWire;
import coilwright.rewind.SlotFill;
import coilwright.rewind.SlotInsulation;
import coilwright.rewind.SlotShape;
import coilwright.rewind.SlotShapes;
import coilwright.rewind.Source;
import coilwright.rewind.Trust;
import coilwright.rewind.WireSize;
import coilwright.rewind.WireSystem;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.apache.batik.anim.dom.SAXSVGDocumentFactory;

class SlotSectionTest {
    @Provide
    Arbitrary<SlotShape> shapes() {
        return SlotShapes.between(1.5, 20, 11, 60);
    }

    static Conductor wire(double bare, double overall, int strands) {
        var size = new WireSize(WireSystem.METRIC, "test", bare, new Source("test", "", Trust.DERIVED));
        return new Conductor.Round(RoundWire.of(size, InsulationBuild.BARE).measuredOverall(overall), strands);
    }

    private static void sound(Drawing page) {
        assertThat(page.overlappingTexts()).isEmpty();
        assertThat(page.outsidePage()).isEmpty();
        assertThat(page.texts()).allMatch(t -> t.size() > 2.1);
    }

    private static List<Shape> all(List<Shape> shapes) {
        List<Shape> out = new ArrayList<>();
        for (Shape s : shapes) {
            if (s instanceof Shape.Group g) {
                out.addAll(all(g.shapes()));
            } else {
                out.add(s);
            }
        }
        return out;
    }

    private static Shape.Polyline opening(Drawing page) {
        return page.shapes().stream()
                .filter(s -> s.roles().contains(Role.OPENING))
                .map(s -> (Shape.Polyline) s)
                .reduce((a, b) -> b)
                .orElseThrow();
    }

    private static String words(Drawing page) {
        return String.join(" ", page.texts().stream().map(Shape.Text::text).toList());
    }

    @Property(tries = 40)
    void wiresLieWithinTheLinerAndClearOfOneAnother(
            @ForAll("shapes") SlotShape shape,
            @ForAll @DoubleRange(min = 0.3, max = 2.5) double d,
            @ForAll @DoubleRange(min = 0, max = 0.4) double liner,
            @ForAll @DoubleRange(min = 0, max = 1) double separator,
            @ForAll @DoubleRange(min = 0, max = 2) double wedge,
            @ForAll @IntRange(min = 1, max = 40) int turns,
            @ForAll Palette palette) {
        var data = new SlotSection.Data(
                "Any slot", shape, new SlotInsulation(liner, separator, wedge), wire(d * 0.9, d, 1), turns);
        SlotFill fill;
        try {
            fill = SlotFill.of(shape, data.insulation(), data.conductor(), turns);
        } catch (IllegalArgumentException e) {
            Assume.that(false);
            return;
        }
        Drawing page = SlotSection.of(data, palette);
        sound(page);
        assertThat(SlotSection.of(data, palette)).isEqualTo(page);
        if (fill.packing().isEmpty()) {
            return;
        }
        List<Shape.Circle> circles = all(page.shapes()).stream()
                .filter(s -> s instanceof Shape.Circle && !s.roles().contains(Role.READ))
                .map(s -> (Shape.Circle) s)
                .toList();
        double outer = circles.stream().mapToDouble(Shape.Circle::radius).max().orElse(0);
        List<Shape.Circle> wires =
                circles.stream().filter(c -> c.radius() > outer * 0.999).toList();
        SlotFill.Placed placed = fill.packing().get();
        assertThat(wires).hasSize(placed.bottom().size() + placed.top().size());
        Shape.Polyline room = opening(page);
        for (int i = 0; i < wires.size(); i++) {
            for (int j = 0; j < i; j++) {
                assertThat(wires.get(i).middle().distance(wires.get(j).middle()))
                        .isGreaterThan(2 * outer * (1 - 1e-5));
            }
            Point c = wires.get(i).middle();
            assertThat(room.distance(c)).isZero();
            // The room's arcs are drawn in short chords.
            double clear = new Shape.Polyline(sides(room), false, List.of()).distance(c);
            assertThat(clear).isGreaterThan(outer * 0.99 - 0.3);
        }
        int left = fill.wires() - wires.size();
        assertThat(words(page))
                .contains(left == 0 ? "find a place" : left + (left == 1 ? " is" : " are") + " left over");
    }

    /** The outline without its top, which is open. */
    private static List<Point> sides(Shape.Polyline room) {
        List<Point> p = room.points();
        double top = p.stream().mapToDouble(Point::y).min().orElseThrow();
        int first = 0;
        for (int i = 0; i < p.size(); i++) {
            if (p.get(i).y() < top + 1e-6 && p.get((i + 1) % p.size()).y() > top + 1e-6) {
                first = i;
            }
        }
        List<Point> out = new ArrayList<>();
        out.add(p.get(first));
        for (int i = 1; i < p.size(); i++) {
            Point q = p.get((first + i) % p.size());
            out.add(q);
            if (q.y() < top + 1e-6) {
                break;
            }
        }
        return out;
    }

    @Property(tries = 30)
    void stripsLieWithinTheLinerAndClearOfOneAnother(
            @ForAll("shapes") SlotShape shape,
            @ForAll @DoubleRange(min = 0.5, max = 8) double w,
            @ForAll @DoubleRange(min = 0.5, max = 3) double t,
            @ForAll @DoubleRange(min = 0, max = 0.4) double liner,
            @ForAll @IntRange(min = 1, max = 8) int turns) {
        Drawing page = SlotSection.of(
                new SlotSection.Data(
                        "Bars", shape, new SlotInsulation(liner, 0.4, 1), new Conductor.Strip(w, t, 0, 0.05), turns),
                Palette.COLOUR);
        sound(page);
        List<Shape.Rect> strips = page.shapes().stream()
                .filter(s -> s.roles().contains(Role.COVERING))
                .map(s -> (Shape.Rect) s)
                .toList();
        Shape.Polyline room = opening(page);
        for (int i = 0; i < strips.size(); i++) {
            Box b = strips.get(i).bounds();
            for (int j = 0; j < i; j++) {
                assertThat(b.overlaps(strips.get(j).bounds())).isFalse();
            }
            for (double x : new double[] {b.left(), b.right()}) {
                for (double y : new double[] {b.top(), b.bottom()}) {
                    // Arcs of the slot are drawn as chords: a fraction of the line's width.
                    assertThat(room.distance(new Point(x, y))).isLessThan(0.05);
                }
            }
        }
        assertThat(words(page))
                .contains(strips.size() == 2 * turns ? "All " : strips.size() + " of " + 2 * turns + " strips");
    }

    @Example
    void sizesStandAtTheirLines() throws IOException {
        var shape = new SlotShape.SemiClosed(2.5, 0.8, 1, 8, 5.5, 16, 1);
        Drawing page = SlotSection.of(
                new SlotSection.Data("Slot", shape, new SlotInsulation(0.25, 0.3, 1.2), wire(0.9, 0.97, 2), 12),
                Palette.MONOCHROME);
        sound(page);
        assertThat(page.texts())
                .extracting(Shape.Text::text)
                .contains(
                        "8 mm wide",
                        "2.5 mm opening",
                        "17.8 mm",
                        "top layer",
                        "bottom layer",
                        "separator",
                        "wedge",
                        "liner",
                        "liner 0.25 mm",
                        "separator 0.3 mm",
                        "All 48 wires find a place");
        // The scale named is the scale drawn: the widest place is 8 mm.
        Shape.Polyline slot = page.shapes().stream()
                .filter(s -> s.roles().contains(Role.OPENING))
                .map(s -> (Shape.Polyline) s)
                .findFirst()
                .orElseThrow();
        double scale = slot.bounds().width() / 8;
        assertThat(words(page)).contains("scale " + Decimal.of(scale) + " : 1");
        assertThat(slot.bounds().height() / scale).isCloseTo(17.8, org.assertj.core.api.Assertions.within(1e-9));
        new SAXSVGDocumentFactory(null).createSVGDocument("file:/test.svg", new StringReader(SvgWriter.write(page)));
    }

    @Example
    void whatFindsNoPlaceIsCounted() {
        Drawing page = SlotSection.of(
                new SlotSection.Data("Full", new SlotShape.Rectangular(4, 10), SlotInsulation.NONE, wire(1.9, 2, 1), 6),
                Palette.COLOUR);
        // Two columns of five: ten places, one row of which the middle cuts.
        assertThat(words(page)).contains("8 of 12 wires find a place, 4 are left over");
        Drawing narrow = SlotSection.of(
                new SlotSection.Data(
                        "Narrow",
                        new SlotShape.SemiClosed(1, 0.5, 1, 6, 4, 12, 1),
                        SlotInsulation.NONE,
                        wire(1.5, 1.6, 1),
                        2),
                Palette.COLOUR);
        assertThat(words(narrow)).contains("does not pass the slot opening");
        Drawing thin = SlotSection.of(
                new SlotSection.Data(
                        "Thin", new SlotShape.Rectangular(20, 40), SlotInsulation.NONE, wire(0.1, 0.12, 1), 100),
                Palette.COLOUR);
        assertThat(words(thin)).contains("too many to be drawn singly");
    }
}
