package coilwright.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One item of a drawing. All lengths are mm, all angles degrees clockwise from straight up. */
public sealed interface Shape {
    /** {@return what it stands for} */
    List<Role> roles();

    /** {@return smallest upright box around it, line width not counted} */
    Box bounds();

    /**
     * {@return how far a point lies from its line, mm; 0 within a closed shape}
     *
     * @param p the point, mm
     */
    double distance(Point p);

    /** A straight line. */
    record Line(Point from, Point to, List<Role> roles) implements Shape {
        @Override
        public Box bounds() {
            return Box.around(List.of(from, to));
        }

        @Override
        public double distance(Point p) {
            return p.distance(from, to);
        }
    }

    /** Straight lines joined end to end; a polygon where closed. */
    record Polyline(List<Point> points, boolean closed, List<Role> roles) implements Shape {
        /**
         * Copies the list, which needs two points.
         *
         * @param points two or more, mm
         * @param closed whether the last is joined to the first
         * @param roles what it is painted as
         */
        public Polyline {
            points = List.copyOf(points);
            if (points.size() < 2) {
                throw new IllegalArgumentException("a polyline has " + points.size() + " points, but needs 2");
            }
        }

        @Override
        public Box bounds() {
            return Box.around(points);
        }

        @Override
        public double distance(Point p) {
            return closed && inside(points, p) ? 0 : along(points, p, closed);
        }
    }

    /** An upright rectangle, its corners rounded by a radius. */
    record Rect(double x, double y, double width, double height, double radius, List<Role> roles) implements Shape {
        @Override
        public Box bounds() {
            return new Box(x, y, x + width, y + height);
        }

        @Override
        public double distance(Point p) {
            double dx = Math.max(0, Math.max(x - p.x(), p.x() - x - width));
            double dy = Math.max(0, Math.max(y - p.y(), p.y() - y - height));
            return Math.hypot(dx, dy);
        }
    }

    /** One piece of a curve: two control points and the end. */
    record Cubic(Point first, Point second, Point end) {}

    /** A smooth curve of cubic pieces. */
    record Curve(Point start, List<Cubic> pieces, List<Role> roles) implements Shape {
        /**
         * Copies the list.
         *
         * @param start where it begins, mm
         * @param pieces one after the other
         * @param roles what it is painted as
         */
        public Curve {
            pieces = List.copyOf(pieces);
        }

        private List<Point> flat() {
            List<Point> out = new ArrayList<>();
            out.add(start);
            Point a = start;
            for (Cubic c : pieces) {
                for (int i = 1; i <= 8; i++) {
                    double t = i / 8.0;
                    double s = 1 - t;
                    out.add(new Point(
                            s * s * s * a.x()
                                    + 3 * s * s * t * c.first().x()
                                    + 3 * s * t * t * c.second().x()
                                    + t * t * t * c.end().x(),
                            s * s * s * a.y()
                                    + 3 * s * s * t * c.first().y()
                                    + 3 * s * t * t * c.second().y()
                                    + t * t * t * c.end().y()));
                }
                a = c.end();
            }
            return out;
        }

        @Override
        public Box bounds() {
            return Box.around(flat());
        }

        @Override
        public double distance(Point p) {
            return along(flat(), p, false);
        }
    }

    /** Part of a circle, from an angle clockwise by a sweep of under 360°. */
    record Arc(Point middle, double radius, double from, double sweep, List<Role> roles) implements Shape {
        @Override
        public Box bounds() {
            return Box.around(arcPoints(middle, radius, from, sweep));
        }

        @Override
        public double distance(Point p) {
            return along(arcPoints(middle, radius, from, sweep), p, false);
        }
    }

    /** Part of a ring, from an angle clockwise by a sweep of under 360°. */
    record Sector(Point middle, double inner, double outer, double from, double sweep, List<Role> roles)
            implements Shape {
        private List<Point> outline() {
            List<Point> out = new ArrayList<>(arcPoints(middle, outer, from, sweep));
            out.addAll(arcPoints(middle, inner, from + sweep, -sweep));
            return out;
        }

        @Override
        public Box bounds() {
            return Box.around(outline());
        }

        @Override
        public double distance(Point p) {
            List<Point> outline = outline();
            return inside(outline, p) ? 0 : along(outline, p, true);
        }
    }

    /** A circle. */
    record Circle(Point middle, double radius, List<Role> roles) implements Shape {
        @Override
        public Box bounds() {
            return new Box(middle.x() - radius, middle.y() - radius, middle.x() + radius, middle.y() + radius);
        }

        @Override
        public double distance(Point p) {
            return Math.max(0, p.distance(middle) - radius);
        }
    }

    /** Which part of a text stands at its point. */
    enum Anchor {
        /** Its start. */
        START,
        /** Its middle. */
        MIDDLE,
        /** Its end. */
        END
    }

    /**
     * One line of upright text in DejaVu Sans.
     *
     * @param at on the base line
     * @param text the words
     * @param size em, mm
     * @param bold whether bold
     * @param anchor which part stands at the point
     * @param roles what it stands for
     */
    record Text(Point at, String text, double size, boolean bold, Anchor anchor, List<Role> roles) implements Shape {
        /** Room from the base line to the top of a capital, in em. */
        static final double ASCENT = 0.76;

        /** Room below the base line, in em. */
        static final double DESCENT = 0.24;

        /** {@return width by the font's own table, mm} */
        public double width() {
            return TextWidths.em(text, bold) * size;
        }

        @Override
        public Box bounds() {
            double w = width();
            double left = at.x() - (anchor == Anchor.START ? 0 : anchor == Anchor.MIDDLE ? w / 2 : w);
            return new Box(left, at.y() - ASCENT * size, left + w, at.y() + DESCENT * size);
        }

        @Override
        public double distance(Point p) {
            Box b = bounds();
            return new Rect(b.left(), b.top(), b.width(), b.height(), 0, roles).distance(p);
        }
    }

    /**
     * Shapes that belong together, such as all parts of one coil.
     *
     * @param id unique within the drawing; empty where none is needed
     * @param element what it shows
     * @param title words for a person who points at it; may be empty
     * @param roles of the whole
     * @param shapes its parts, at least one
     */
    record Group(Optional<String> id, Optional<Element> element, String title, List<Role> roles, List<Shape> shapes)
            implements Shape {
        /**
         * Copies the lists.
         *
         * @param id unique within the drawing; empty where none is needed
         * @param element what it shows
         * @param title words for a person who points at it; may be empty
         * @param roles of the whole
         * @param shapes its parts, at least one
         */
        public Group {
            roles = List.copyOf(roles);
            shapes = List.copyOf(shapes);
            if (shapes.isEmpty()) {
                throw new IllegalArgumentException("a group has no shapes, but needs one");
            }
        }

        @Override
        public Box bounds() {
            return shapes.stream().map(Shape::bounds).reduce(Box::union).orElseThrow();
        }

        @Override
        public double distance(Point p) {
            return shapes.stream().mapToDouble(s -> s.distance(p)).min().orElseThrow();
        }
    }

    private static List<Point> arcPoints(Point middle, double radius, double from, double sweep) {
        int n = Math.max(4, (int) Math.ceil(Math.abs(sweep) / 5));
        List<Point> out = new ArrayList<>(n + 1);
        for (int i = 0; i <= n; i++) {
            out.add(Point.polar(middle.x(), middle.y(), radius, from + sweep * i / n));
        }
        return out;
    }

    private static double along(List<Point> points, Point p, boolean closed) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < points.size(); i++) {
            least = Math.min(least, p.distance(points.get(i - 1), points.get(i)));
        }
        return closed ? Math.min(least, p.distance(points.get(points.size() - 1), points.get(0))) : least;
    }

    private static boolean inside(List<Point> outline, Point p) {
        boolean in = false;
        Point a = outline.get(outline.size() - 1);
        for (Point b : outline) {
            if ((a.y() > p.y()) != (b.y() > p.y())
                    && p.x() < (b.x() - a.x()) * (p.y() - a.y()) / (b.y() - a.y()) + a.x()) {
                in = !in;
            }
            a = b;
        }
        return in;
    }
}
