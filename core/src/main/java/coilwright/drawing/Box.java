package coilwright.drawing;

import java.util.List;

/**
 * An upright rectangle on the page, mm.
 *
 * @param left least x
 * @param top least y
 * @param right largest x
 * @param bottom largest y
 */
public record Box(double left, double top, double right, double bottom) {
    static Box around(List<Point> points) {
        double left = Double.POSITIVE_INFINITY;
        double top = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        double bottom = Double.NEGATIVE_INFINITY;
        for (Point p : points) {
            left = Math.min(left, p.x());
            top = Math.min(top, p.y());
            right = Math.max(right, p.x());
            bottom = Math.max(bottom, p.y());
        }
        return new Box(left, top, right, bottom);
    }

    /** {@return width, mm} */
    public double width() {
        return right - left;
    }

    /** {@return height, mm} */
    public double height() {
        return bottom - top;
    }

    /**
     * {@return whether the inner areas of the two have more than a hair (0.01 mm) in common}
     *
     * @param other the other box
     */
    public boolean overlaps(Box other) {
        double hair = 0.01;
        return left < other.right - hair
                && other.left < right - hair
                && top < other.bottom - hair
                && other.top < bottom - hair;
    }

    /**
     * {@return whether the other lies within this one, give or take a hair (0.01 mm)}
     *
     * @param other the other box
     */
    public boolean holds(Box other) {
        double hair = 0.01;
        return other.left >= left - hair
                && other.top >= top - hair
                && other.right <= right + hair
                && other.bottom <= bottom + hair;
    }

    /**
     * {@return the smallest box around both}
     *
     * @param other the other box
     */
    public Box union(Box other) {
        return new Box(
                Math.min(left, other.left),
                Math.min(top, other.top),
                Math.max(right, other.right),
                Math.max(bottom, other.bottom));
    }

    Box grown(double by) {
        return new Box(left - by, top - by, right + by, bottom + by);
    }
}
