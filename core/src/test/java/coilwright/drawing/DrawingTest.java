package coilwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.drawing.Shape.Anchor;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

class DrawingTest {
    private static Drawing page(Shape... shapes) {
        return new Drawing("", "", 100, 50, Palette.COLOUR, List.of(shapes));
    }

    @Test
    void overlappingTextsAreFound() {
        Shape.Text a = Canvas.text(10, 10, "123", 3, false, Anchor.START);
        Shape.Text near = Canvas.text(14, 10, "4", 3, false, Anchor.START);
        Shape.Text far = Canvas.text(10, 13.1, "5", 3, false, Anchor.START);
        assertThat(page(a, near, far).overlappingTexts()).containsExactly(List.of(a, near));
        assertThat(page(a, far).overlappingTexts()).isEmpty();
    }

    @Test
    void shapesOutsideThePageAreFound() {
        var in = new Shape.Rect(90, 40, 10, 10, 0, List.of());
        var out = new Shape.Circle(new Point(1, 20), 1.5, List.of());
        assertThat(page(in, out).outsidePage()).containsExactly(out);
    }

    @Test
    void nearestElementIsTheOneAskedFor() {
        Drawing page = DrawingView.DEVELOPED
                .draw(SampleWindings.wave(), ViewOptions.of(""))
                .first();
        for (Shape s : page.shapes()) {
            if (s instanceof Shape.Group g
                    && g.element().isPresent()
                    && g.element().get().kind() == Element.Kind.BAR) {
                Box b = g.bounds();
                var p = new Point((b.left() + b.right()) / 2, b.bottom() - 0.5);
                assertThat(page.nearest(p, 3)).isEqualTo(g.element());
            }
        }
        assertThat(page.nearest(new Point(1, 1), 3)).isEmpty();
    }

    @Test
    void distancesAreThoseOfTheShape() {
        var arc = new Shape.Arc(new Point(0, 0), 10, 0, 90, List.of());
        assertThat(arc.distance(new Point(8, -6))).isCloseTo(0, within(0.02));
        assertThat(arc.distance(new Point(-10, 0))).isCloseTo(Math.hypot(10, 10), within(0.02));
        var sector = new Shape.Sector(new Point(0, 0), 5, 10, 0, 90, List.of());
        assertThat(sector.distance(new Point(5, -5))).isZero();
        assertThat(sector.distance(new Point(0, 0))).isCloseTo(5, within(0.02));
        var curve = new Shape.Curve(
                new Point(0, 0),
                List.of(new Shape.Cubic(new Point(1, 0), new Point(2, 0), new Point(3, 0))),
                List.of());
        assertThat(curve.distance(new Point(1.5, 2))).isCloseTo(2, within(1e-9));
        assertThat(new Shape.Group(Optional.empty(), Optional.empty(), "", List.of(), List.of(arc, curve))
                        .distance(new Point(1.5, 2)))
                .isCloseTo(2, within(1e-9));
    }

    @Test
    void pageNeedsASize() {
        assertThatThrownBy(() -> new Drawing("", "", 0, 10, Palette.COLOUR, List.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("0.0 by 10.0 mm");
    }

    @Test
    void highlightedCoilIsDrawnLastAndHeavily() {
        Drawing page = DrawingView.ROUND
                .draw(SampleWindings.wave(), ViewOptions.of("").withHighlight(Highlight.ofCoils(3)))
                .first();
        List<Shape.Group> coils = page.shapes().stream()
                .filter(s -> s.roles().contains(Role.COIL))
                .map(s -> (Shape.Group) s)
                .toList();
        assertThat(coils.get(16).element()).contains(Element.coil(3));
        assertThat(coils.get(16).roles()).contains(Role.HIGHLIGHT);
        assertThat(coils.subList(0, 16)).noneMatch(g -> g.roles().contains(Role.HIGHLIGHT));
    }

    @Test
    void deadCoilHasCapsInsteadOfBars() {
        for (DrawingView view : Set.of(DrawingView.DEVELOPED, DrawingView.ROUND)) {
            Drawing page =
                    view.draw(SampleWindings.deadCoil(), ViewOptions.of("")).first();
            List<Shape.Group> dead = page.shapes().stream()
                    .filter(s -> s.roles().contains(Role.DEAD))
                    .map(s -> (Shape.Group) s)
                    .toList();
            assertThat(dead).hasSize(1);
            assertThat(dead.get(0).element()).contains(Element.coil(32));
            assertThat(dead.get(0).shapes().stream().filter(s -> s.roles().contains(Role.CAP)))
                    .hasSize(2);
        }
    }

    @Test
    void longWordsAreCutToTheirRoom() {
        assertThat(TextWidths.fit("abc", 3, false, 100)).isEqualTo("abc");
        String cut = TextWidths.fit("a rather long title", 3, false, 20);
        assertThat(cut).startsWith("a rat").endsWith("…");
        assertThat(TextWidths.em(cut, false) * 3).isLessThanOrEqualTo(20);
        assertThat(TextWidths.wrap("one two three four", 3, false, 14, 2))
                .hasSize(2)
                .allMatch(line -> TextWidths.em(line, false) * 3 <= 14);
    }

    @Test
    void labelsAreSpreadWithinTheirLimits() {
        assertThat(Occupied.spread(new double[] {1, 1, 5}, 2, 0, 10)).containsExactly(1, 3, 5);
        assertThat(Occupied.spread(new double[] {8, 9, 9.5}, 2, 0, 10)).containsExactly(6, 8, 10);
    }

    @Test
    void chainsAreCutAtTheEdges() {
        List<Point> chain = List.of(new Point(0, 0), new Point(10, 10), new Point(20, 0));
        List<Chain.Piece> pieces = Chain.clip(chain, 5, 15);
        assertThat(pieces).hasSize(1);
        Chain.Piece p = pieces.get(0);
        assertThat(p.points()).containsExactly(new Point(5, 5), new Point(10, 10), new Point(15, 5));
        assertThat(p.start()).isFalse();
        assertThat(p.end()).isFalse();
        assertThat(p.cutLeft()).isTrue();
        assertThat(p.cutRight()).isTrue();
        assertThat(Chain.clip(chain, 21, 30)).isEmpty();
        List<Point> back = List.of(new Point(0, 0), new Point(20, 0), new Point(0, 10));
        assertThat(Chain.clip(back, 0, 10)).hasSize(2);
    }
}
