package coilwright.drawing;

import java.util.ArrayList;
import java.util.List;

/** Pieces of Archimedean spirals joined end to end, where radius grows evenly with angle. */
final class Spiral {
    private final Point middle;
    private final Point start;
    private final List<Shape.Cubic> pieces = new ArrayList<>();
    private double radius;
    private double degrees;

    Spiral(Point middle, double radius, double degrees) {
        this.middle = middle;
        this.radius = radius;
        this.degrees = degrees;
        this.start = Point.polar(middle.x(), middle.y(), radius, degrees);
    }

    void to(double nextRadius, double nextDegrees) {
        int n = Math.max(1, (int) Math.ceil(Math.abs(nextDegrees - degrees) / 30));
        double dr = (nextRadius - radius) / n;
        double dt = (nextDegrees - degrees) / n;
        for (int i = 0; i < n; i++) {
            Point p = Point.polar(middle.x(), middle.y(), radius, degrees);
            Point v = speed(dr, dt);
            radius += dr;
            degrees += dt;
            Point q = Point.polar(middle.x(), middle.y(), radius, degrees);
            Point w = speed(dr, dt);
            pieces.add(new Shape.Cubic(
                    new Point(p.x() + v.x() / 3, p.y() + v.y() / 3),
                    new Point(q.x() - w.x() / 3, q.y() - w.y() / 3),
                    q));
        }
    }

    private Point speed(double dr, double dt) {
        double t = Math.toRadians(degrees);
        double turn = radius * Math.toRadians(dt);
        return new Point(dr * Math.sin(t) + turn * Math.cos(t), -dr * Math.cos(t) + turn * Math.sin(t));
    }

    Shape.Curve curve(List<Role> roles) {
        return new Shape.Curve(start, pieces, roles);
    }
}
