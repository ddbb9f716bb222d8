package coilwright.drawing;

/**
 * A place on the page.
 *
 * @param x mm from the left edge
 * @param y mm from the top edge
 */
public record Point(double x, double y) {
    /** The point at a distance from a middle, at an angle clockwise from straight up. */
    static Point polar(double cx, double cy, double radius, double degrees) {
        double a = Math.toRadians(degrees);
        return new Point(cx + radius * Math.sin(a), cy - radius * Math.cos(a));
    }

    double distance(Point other) {
        return Math.hypot(x - other.x, y - other.y);
    }

    /** Distance to the straight line between two points. */
    double distance(Point from, Point to) {
        double dx = to.x - from.x;
        double dy = to.y - from.y;
        double length = dx * dx + dy * dy;
        double t = length == 0 ? 0 : Math.max(0, Math.min(1, ((x - from.x) * dx + (y - from.y) * dy) / length));
        return Math.hypot(x - from.x - t * dx, y - from.y - t * dy);
    }
}
