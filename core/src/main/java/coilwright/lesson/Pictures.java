package coilwright.lesson;

import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.drawing.BenchPicture;
import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingView;
import coilwright.drawing.Element;
import coilwright.drawing.GrowlerBench;
import coilwright.drawing.Highlight;
import coilwright.drawing.Palette;
import coilwright.drawing.Point;
import coilwright.drawing.Role;
import coilwright.drawing.Shape;
import coilwright.drawing.ViewOptions;
import coilwright.winding.Armature;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/** Drawings as exercises need them: without the words round them, small enough to stand in a text. */
final class Pictures {
    private static final double COMMUTATOR_BOTTOM = 163;
    private static final double BRUSHES_BOTTOM = 184;
    private static final double LARGER = 1.3;
    private static final double RADIUS = 26;
    private static final int MOST_SLOTS = 18;
    private static final int MOST_BARS = 24;

    private Pictures() {}

    /** Whether a drawing of the whole winding can be read at the width of a page. */
    static boolean small(Armature a) {
        return a.slots() <= MOST_SLOTS && a.bars() <= MOST_BARS;
    }

    /**
     * The winding rolled out, with the brushes at the neutral or without them.
     *
     * @param marked coils drawn heavily
     */
    static Drawing developed(Winding winding, List<Integer> marked, boolean brushes) {
        return developed(winding, new Highlight(new TreeSet<>(marked), Set.of(), Set.of()), brushes);
    }

    static Drawing developed(Winding winding, Highlight highlight, boolean brushes) {
        Drawing whole = DrawingView.DEVELOPED
                .draw(winding, ViewOptions.of("").withHighlight(highlight))
                .first();
        double bottom = brushes ? BRUSHES_BOTTOM : COMMUTATOR_BOTTOM;
        List<Shape> kept = whole.shapes().stream()
                .filter(s -> s.roles().stream().noneMatch(r -> r == Role.TITLE || r == Role.NOTE || r == Role.LEGEND))
                .filter(s -> s.roles().contains(Role.PAPER) || s.bounds().bottom() < bottom)
                .filter(s -> brushes || !isBrush(s))
                .toList();
        Drawing plain = new Drawing(
                whole.title(), whole.description(), whole.width(), whole.height(), whole.palette(), kept);
        Drawing large = withLargerTexts(plain);
        return large.overlappingTexts().isEmpty() ? large : plain;
    }

    private static boolean isBrush(Shape s) {
        return s instanceof Shape.Group g
                && g.element().map(Element::kind).filter(k -> k == Element.Kind.BRUSH).isPresent();
    }

    /** Some coils of a winding alone, the last of them drawn heavily. */
    static Drawing firstCoils(Winding winding, List<Integer> coils) {
        List<ListedCoil> list = coils.stream()
                .map(winding::coil)
                .map(c -> new ListedCoil(c.number(), c.top().slot(), c.bottom().slot(), c.topBar(), c.bottomBar()))
                .toList();
        Winding part = Winding.build(winding.armature(), new WindingSpec.Listed(list));
        return developed(part, List.of(coils.get(coils.size() - 1)), false);
    }

    private static Drawing withLargerTexts(Drawing d) {
        return new Drawing(
                d.title(),
                d.description(),
                d.width(),
                d.height(),
                d.palette(),
                d.shapes().stream().map(Pictures::larger).toList());
    }

    private static Shape larger(Shape s) {
        if (s instanceof Shape.Text t) {
            double size = t.size() * LARGER;
            // The middle of the figures stays where it was.
            var at = new Point(t.at().x(), t.at().y() + 0.36 * (size - t.size()));
            return new Shape.Text(at, t.text(), size, t.bold(), t.anchor(), t.roles());
        } else if (s instanceof Shape.Group g) {
            List<Shape> parts = new ArrayList<>();
            g.shapes().forEach(p -> parts.add(larger(p)));
            return new Shape.Group(g.id(), g.element(), g.title(), g.roles(), parts);
        }
        return s;
    }

    /** The armature with a feed and a meter on it. */
    static Drawing touched(Winding winding, Optional<BenchTest.Pair> feed, Optional<BenchTest.Pair> meter, String unit) {
        return BenchPicture.touched(
                winding,
                new BenchPicture.Touches(feed, meter, unit, OptionalInt.empty()),
                Palette.COLOUR,
                RADIUS);
    }

    /** The armature in the growler with the probes on a pair of bars. */
    static Drawing growler(Winding winding, double angle, BenchTest.Pair probes) {
        return BenchPicture.growler(
                winding,
                ViewOptions.of("")
                        .withRotorAngle(angle)
                        .withBench(new GrowlerBench(Growler.USUAL, List.of(), Optional.of(probes))),
                RADIUS);
    }
}
