package coilwright.sheet;

import coilwright.drawing.Point;
import coilwright.drawing.Shape;
import java.util.List;

/**
 * Puts shapes of a drawing somewhere on a page. Line widths stay as they are.
 *
 * @param x of the drawing's left edge, mm
 * @param y of the drawing's top edge, mm
 * @param scale over 0
 * @param prefix of ids
 */
record Placed(double x, double y, double scale, String prefix) {
    Shape shape(Shape s) {
        if (s instanceof Shape.Line l) {
            return new Shape.Line(at(l.from()), at(l.to()), l.roles());
        } else if (s instanceof Shape.Polyline p) {
            return new Shape.Polyline(p.points().stream().map(this::at).toList(), p.closed(), p.roles());
        } else if (s instanceof Shape.Rect r) {
            return new Shape.Rect(
                    x + scale * r.x(),
                    y + scale * r.y(),
                    scale * r.width(),
                    scale * r.height(),
                    scale * r.radius(),
                    r.roles());
        } else if (s instanceof Shape.Curve c) {
            return new Shape.Curve(
                    at(c.start()),
                    c.pieces().stream()
                            .map(q -> new Shape.Cubic(at(q.first()), at(q.second()), at(q.end())))
                            .toList(),
                    c.roles());
        } else if (s instanceof Shape.Arc a) {
            return new Shape.Arc(at(a.middle()), scale * a.radius(), a.from(), a.sweep(), a.roles());
        } else if (s instanceof Shape.Sector r) {
            return new Shape.Sector(
                    at(r.middle()), scale * r.inner(), scale * r.outer(), r.from(), r.sweep(), r.roles());
        } else if (s instanceof Shape.Circle c) {
            return new Shape.Circle(at(c.middle()), scale * c.radius(), c.roles());
        } else if (s instanceof Shape.Text t) {
            return new Shape.Text(at(t.at()), t.text(), scale * t.size(), t.bold(), t.anchor(), t.roles());
        } else if (s instanceof Shape.Group g) {
            List<Shape> parts = g.shapes().stream().map(this::shape).toList();
            return new Shape.Group(g.id().map(id -> prefix + id), g.element(), g.title(), g.roles(), parts);
        }
        throw new IllegalStateException("no place for " + s.getClass().getSimpleName());
    }

    private Point at(Point p) {
        return new Point(x + scale * p.x(), y + scale * p.y());
    }
}
