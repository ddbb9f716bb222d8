package coilwright.drawing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A picture as a list of shapes on a page, in the order they are painted.
 *
 * @param title one line
 * @param description some sentences for a reader who cannot see it
 * @param width of the page, mm, over 0
 * @param height of the page, mm, over 0
 * @param palette its colours
 * @param shapes all shapes
 */
public record Drawing(
        String title, String description, double width, double height, Palette palette, List<Shape> shapes) {
    /**
     * Copies the list.
     *
     * @param title one line
     * @param description some sentences for a reader who cannot see it
     * @param width of the page, mm, over 0
     * @param height of the page, mm, over 0
     * @param palette its colours
     * @param shapes all shapes
     * @throws IllegalArgumentException when the page has no size
     */
    public Drawing {
        shapes = List.copyOf(shapes);
        if (!(width > 0) || !(height > 0) || Double.isInfinite(width) || Double.isInfinite(height)) {
            throw new IllegalArgumentException("page is " + width + " by " + height + " mm, but both must be over 0");
        }
    }

    /** {@return the page} */
    public Box page() {
        return new Box(0, 0, width, height);
    }

    /** {@return smallest box around all shapes; the page where there is none} */
    public Box bounds() {
        return shapes.stream().map(Shape::bounds).reduce(Box::union).orElse(page());
    }

    /** {@return how many shapes, groups and their parts counted singly} */
    public int size() {
        return count(shapes);
    }

    private static int count(List<Shape> shapes) {
        int n = 0;
        for (Shape s : shapes) {
            n += 1 + (s instanceof Shape.Group g ? count(g.shapes()) : 0);
        }
        return n;
    }

    /** {@return all texts, in order of painting} */
    public List<Shape.Text> texts() {
        List<Shape.Text> out = new ArrayList<>();
        collect(shapes, out);
        return List.copyOf(out);
    }

    private static void collect(List<Shape> shapes, List<Shape.Text> out) {
        for (Shape s : shapes) {
            if (s instanceof Shape.Text t) {
                out.add(t);
            } else if (s instanceof Shape.Group g) {
                collect(g.shapes(), out);
            }
        }
    }

    /**
     * {@return what lies nearest to a point: the last painted of the nearest}
     *
     * @param p the point
     * @param within how far at most, mm
     */
    public Optional<Element> nearest(Point p, double within) {
        Element best = null;
        double least = within;
        for (Shape s : shapes) {
            if (s instanceof Shape.Group g
                    && g.element().isPresent()
                    && g.bounds().grown(least).holds(new Box(p.x(), p.y(), p.x(), p.y()))) {
                double d = g.distance(p);
                if (d <= least) {
                    least = d;
                    best = g.element().get();
                }
            }
        }
        return Optional.ofNullable(best);
    }

    /** {@return pairs of texts whose boxes overlap; a sound drawing has none} */
    public List<List<Shape.Text>> overlappingTexts() {
        List<List<Shape.Text>> out = new ArrayList<>();
        Map<Long, List<Shape.Text>> cells = new LinkedHashMap<>();
        for (Shape.Text t : texts()) {
            Box b = t.bounds();
            for (long i = (long) Math.floor(b.left() / 10); i <= (long) Math.floor(b.right() / 10); i++) {
                for (long j = (long) Math.floor(b.top() / 10); j <= (long) Math.floor(b.bottom() / 10); j++) {
                    List<Shape.Text> cell = cells.computeIfAbsent(i * 1_000_003 + j, x -> new ArrayList<>());
                    for (Shape.Text other : cell) {
                        if (b.overlaps(other.bounds())) {
                            out.add(List.of(other, t));
                        }
                    }
                    cell.add(t);
                }
            }
        }
        return out.stream().distinct().toList();
    }

    /** {@return shapes that leave the page; a sound drawing has none} */
    public List<Shape> outsidePage() {
        Box page = page();
        return shapes.stream().filter(s -> !page.holds(s.bounds())).toList();
    }
}
