package coilwright.drawing;

import coilwright.drawing.Shape.Anchor;
import coilwright.winding.Coil;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** Collects the shapes of one page in the order of painting. */
final class Canvas {
    /** A4, long side, mm. */
    static final double LONG = 297;

    /** A4, short side, mm. */
    static final double SHORT = 210;

    /** White border of every page, mm. */
    static final double BORDER = 10;

    /** Smallest text: 6 pt is 2.12 mm. */
    static final double SMALL = 2.2;

    private final List<Shape> shapes = new ArrayList<>();

    void add(Shape shape) {
        shapes.add(shape);
    }

    /** Everything on another canvas, over what is here. */
    void addAll(Canvas other) {
        shapes.addAll(other.shapes);
    }

    void line(double x1, double y1, double x2, double y2, Role... roles) {
        add(new Shape.Line(new Point(x1, y1), new Point(x2, y2), List.of(roles)));
    }

    void rect(double x, double y, double width, double height, Role... roles) {
        add(new Shape.Rect(x, y, width, height, 0, List.of(roles)));
    }

    void text(double x, double y, String words, double size, Anchor anchor, Role... roles) {
        if (!words.isEmpty()) {
            add(text(x, y, words, size, false, anchor, roles));
        }
    }

    static Shape.Text text(double x, double y, String words, double size, boolean bold, Anchor anchor, Role... roles) {
        return new Shape.Text(new Point(x, y), words, size, bold, anchor, List.of(roles));
    }

    /** A number centred on a point. */
    static Shape.Text centred(double x, double y, String words, double size, boolean bold, Role... roles) {
        return text(x, y + 0.36 * size, words, size, bold, Anchor.MIDDLE, roles);
    }

    void group(Element element, String title, List<Role> roles, List<Shape> parts) {
        group("", element, title, roles, parts);
    }

    /** Adds a group unless it has no parts; the prefix keeps ids apart where a page shows a thing twice. */
    void group(String prefix, Element element, String title, List<Role> roles, List<Shape> parts) {
        if (!parts.isEmpty()) {
            add(new Shape.Group(Optional.of(prefix + element.id()), Optional.of(element), title, roles, parts));
        }
    }

    /** Words in lines from a base line down; gives the base line after the last. */
    double lines(double x, double y, String words, double size, boolean bold, double room, int most, Role role) {
        double at = y;
        for (String line : TextWidths.wrap(words, size, bold, room, most)) {
            add(text(x, at, line, size, bold, Anchor.START, role));
            at += 1.35 * size;
        }
        return at;
    }

    /** A coil's parts, in lines of a weight, laid over a white band where it is drawn heavily. */
    void coil(Overlay overlay, Coil coil, String prefix, List<Shape> parts, Role weight, boolean marked) {
        if (parts.isEmpty()) {
            return;
        }
        List<Shape> all = new ArrayList<>();
        boolean banded = !marked && overlay.front(coil) && overlay.few();
        if (marked || banded) {
            for (Shape s : parts) {
                if (banded && !overlay.heavy(coil, s)) {
                    continue;
                }
                if (s instanceof Shape.Polyline p) {
                    all.add(new Shape.Polyline(p.points(), false, List.of(Role.HALO)));
                } else if (s instanceof Shape.Curve c) {
                    all.add(new Shape.Curve(c.start(), c.pieces(), List.of(Role.HALO)));
                }
            }
        }
        all.addAll(parts);
        List<Role> roles = new ArrayList<>(List.of(Role.COIL));
        if (coil.isDead()) {
            roles.add(Role.DEAD);
        }
        if (coil.set() > 0) {
            roles.add(Role.SECOND_SET);
        }
        if (weight != Role.COIL) {
            roles.add(weight);
        }
        if (marked) {
            roles.add(Role.HIGHLIGHT);
        }
        Role look = overlay.look(coil);
        if (look != Role.COIL) {
            roles.add(look);
        }
        Element e = Element.coil(overlay.number(coil));
        String id = prefix + overlay.mark(coil).map(Overlay.Mark::prefix).orElse("") + e.id();
        String title = overlay.mark(coil).map(Overlay.Mark::title).orElseGet(() -> Caption.coil(coil));
        add(new Shape.Group(Optional.of(id), Optional.of(e), title, roles, all));
    }

    /** A ring or dot where a lead marked as planned or found meets its bar. */
    static Shape end(Point at, double radius, Role role) {
        return new Shape.Circle(at, radius, List.of(role));
    }

    /** The cross of a lead that is lifted. */
    static List<Shape> cross(Point p, double r, Role role) {
        return List.of(
                new Shape.Line(new Point(p.x() - r, p.y() - r), new Point(p.x() + r, p.y() + r), List.of(role)),
                new Shape.Line(new Point(p.x() - r, p.y() + r), new Point(p.x() + r, p.y() - r), List.of(role)));
    }

    /**
     * Words on a plate at the first of some places that is free; false where none is.
     *
     * @param places middles of the words
     * @param within where the words must stay
     */
    boolean plate(
            List<Point> places, String words, double size, Occupied occupied, Predicate<Box> within, Role... roles) {
        for (Point p : places) {
            Shape.Text t = centred(p.x(), p.y(), words, size, true, roles);
            Box b = t.bounds().grown(0.3);
            if (within.test(b) && occupied.take(b)) {
                rect(b.left(), p.y() - 0.6 * size, b.width(), 1.2 * size, Role.PLATE);
                add(t);
                return true;
            }
        }
        return false;
    }

    static List<Role> roles(Role role, boolean marked) {
        return marked ? List.of(role, Role.HIGHLIGHT) : List.of(role);
    }

    /** A sample of a line and what it means; gives the x after it. */
    double sample(double x, double y, String words, Role role) {
        if (role == Role.SECOND_SET) {
            add(new Shape.Group(
                    Optional.empty(),
                    Optional.empty(),
                    "",
                    List.of(role),
                    List.of(
                            new Shape.Line(new Point(x, y - 1.7), new Point(x + 9, y - 1.7), List.of(Role.COIL_TOP)),
                            new Shape.Line(
                                    new Point(x, y - 0.3), new Point(x + 9, y - 0.3), List.of(Role.COIL_BOTTOM)))));
        } else {
            line(x, y - 0.9, x + 9, y - 0.9, role);
        }
        text(x + 11, y, words, 2.6, Anchor.START, Role.LEGEND);
        return x + 11 + TextWidths.em(words, false) * 2.6 + 5;
    }

    /** Title, two lines beneath it, at the top left. */
    void heading(String title, String first, String second, double pageWidth) {
        double room = Math.min(pageWidth, 600) - 2 * BORDER;
        String fitted = TextWidths.fit(title, 5, true, room);
        if (!fitted.isEmpty()) {
            add(text(BORDER, 15, fitted, 5, true, Anchor.START, Role.TITLE));
        }
        text(BORDER, 20.6, TextWidths.fit(first, 2.9, false, room), 2.9, Anchor.START, Role.NOTE);
        text(BORDER, 25, TextWidths.fit(second, 2.9, false, room), 2.9, Anchor.START, Role.NOTE);
    }

    Drawing page(String title, String description, double width, double height, Palette palette) {
        List<Shape> all = new ArrayList<>(shapes.size() + 1);
        all.add(new Shape.Rect(0, 0, width, height, 0, List.of(Role.PAPER)));
        all.addAll(shapes);
        return new Drawing(title, description, width, height, palette, all);
    }
}
