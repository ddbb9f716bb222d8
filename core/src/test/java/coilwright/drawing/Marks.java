package coilwright.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** A drawing in words: every mark on a line of its own, what it stands for, where it lies, in mm to two places. */
final class Marks {
    /** Of a longer line only some points are told. */
    private static final int MOST_POINTS = 12;

    private Marks() {}

    static List<String> of(Drawing page) {
        List<String> out = new ArrayList<>();
        out.add("page " + n(page.width()) + " by " + n(page.height()) + " " + page.palette() + ", " + page.title());
        out.add(page.description());
        page.shapes().forEach(s -> add(s, "", out));
        return out;
    }

    /** The texts alone. */
    static List<String> texts(Drawing page) {
        List<String> out = new ArrayList<>();
        out.add("page " + n(page.width()) + " by " + n(page.height()) + " " + page.palette() + ", " + page.title());
        page.texts().forEach(t -> add(t, "", out));
        return out;
    }

    private static void add(Shape shape, String indent, List<String> out) {
        String roles = shape.roles().stream().map(Role::name).collect(Collectors.joining("+"));
        String start = indent + (roles.isEmpty() ? "-" : roles) + " ";
        if (shape instanceof Shape.Line l) {
            out.add(start + "line " + n(l.from()) + " to " + n(l.to()));
        } else if (shape instanceof Shape.Polyline p) {
            out.add(start + (p.closed() ? "polygon " : "polyline ") + points(p.points()));
        } else if (shape instanceof Shape.Rect r) {
            out.add(start + "rectangle " + n(r.x()) + " " + n(r.y()) + ", " + n(r.width()) + " by " + n(r.height())
                    + (r.radius() == 0 ? "" : " round " + n(r.radius())));
        } else if (shape instanceof Shape.Curve c) {
            out.add(start + "curve " + n(c.start())
                    + c.pieces().stream()
                            .map(x -> " (" + n(x.first()) + ", " + n(x.second()) + ") " + n(x.end()))
                            .collect(Collectors.joining()));
        } else if (shape instanceof Shape.Arc a) {
            out.add(start + "arc " + n(a.middle()) + " radius " + n(a.radius()) + " from " + n(a.from()) + "° by "
                    + n(a.sweep()) + "°");
        } else if (shape instanceof Shape.Sector a) {
            out.add(start + "sector " + n(a.middle()) + " radius " + n(a.inner()) + " to " + n(a.outer()) + " from "
                    + n(a.from()) + "° by " + n(a.sweep()) + "°");
        } else if (shape instanceof Shape.Circle c) {
            out.add(start + "circle " + n(c.middle()) + " radius " + n(c.radius()));
        } else if (shape instanceof Shape.Text t) {
            out.add(start + "\"" + t.text() + "\" " + n(t.at()) + " size " + n(t.size()) + (t.bold() ? " bold " : " ")
                    + t.anchor().name().toLowerCase(Locale.ROOT));
        } else if (shape instanceof Shape.Group g) {
            out.add(start + "group " + g.id().orElse("-")
                    + g.element()
                            .map(e -> " " + e.kind().word() + " " + e.number())
                            .orElse("")
                    + (g.title().isEmpty() ? "" : ": " + g.title()));
            g.shapes().forEach(s -> add(s, indent + "  ", out));
        }
    }

    private static String points(List<Point> points) {
        int n = points.size();
        int step = n <= MOST_POINTS ? 1 : (n + MOST_POINTS - 2) / (MOST_POINTS - 1);
        return (step == 1 ? "" : n + " points: ")
                + IntStream.range(0, n)
                        .filter(i -> i % step == 0 || i == n - 1)
                        .mapToObj(i -> n(points.get(i)))
                        .collect(Collectors.joining(", "));
    }

    private static String n(Point p) {
        return n(p.x()) + " " + n(p.y());
    }

    /** No more digits than it needs, no sign before nothing. */
    private static String n(double x) {
        String s = String.format(Locale.ROOT, "%.2f", x).replaceFirst("\\.?0+$", "");
        return s.equals("-0") ? "0" : s;
    }
}
