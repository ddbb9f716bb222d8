package coilwright.desktop;

import coilwright.drawing.Box;
import coilwright.drawing.Drawing;
import coilwright.drawing.Element;
import coilwright.drawing.Look;
import coilwright.drawing.Looks;
import coilwright.drawing.Point;
import coilwright.drawing.Role;
import coilwright.drawing.Shape;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.Graphics2D;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BooleanSupplier;

/** A drawing made ready for painting and for finding what lies under the pointer. */
final class Scene {
    private static final Map<Double, Font> REGULAR = new ConcurrentHashMap<>();
    private static final Map<Double, Font> BOLD = new ConcurrentHashMap<>();
    private static final Font SHIPPED = load("DejaVuSans.ttf");
    private static final Font SHIPPED_BOLD = load("DejaVuSans-Bold.ttf");

    /** Lines thinner than this many pixels fade away. */
    private static final double LEAST_LINE = 0.6;

    /** Text smaller than this many pixels cannot be read, and takes long to paint. */
    private static final double LEAST_TEXT = 2.6;

    private static final double LEAST_HEAVY = 2.2;
    private static final double BAND = 7;

    private final Drawing drawing;
    private final Tones tones;
    private final Looks looks;
    private final List<Piece> pieces = new ArrayList<>();
    private final List<Found> groups = new ArrayList<>();
    private final Map<Element, List<Piece>> heavy = new LinkedHashMap<>();
    private final Map<Element, List<Piece>> faulty = new LinkedHashMap<>();

    /** One thing to paint: an outline or a text, with its colours. */
    private record Piece(
            Optional<java.awt.Shape> outline,
            Optional<Shape.Text> text,
            Optional<Color> fill,
            Optional<Color> stroke,
            float width,
            List<Float> dashes,
            Rectangle2D bounds) {
        Piece hollow() {
            return text.isPresent() ? this : new Piece(outline, text, Optional.empty(), stroke, width, dashes, bounds);
        }

        /** Its line, no thinner than a width. */
        BasicStroke line(float least, double scale) {
            float wide = Math.max(width, least);
            // Dashes shorter than a pixel or so would run together into a grey that takes long to paint.
            if (dashes.isEmpty() || dashes.get(0) * scale < 1.2) {
                return new BasicStroke(wide, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
            }
            float[] lengths = new float[dashes.size()];
            for (int i = 0; i < lengths.length; i++) {
                lengths[i] = dashes.get(i);
            }
            return new BasicStroke(wide, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, lengths, 0);
        }
    }

    /** A group that shows a numbered thing. */
    private record Found(Element element, Shape.Group group, Box bounds) {}

    Scene(Drawing drawing, Tones tones) {
        this.drawing = drawing;
        this.tones = tones;
        this.looks = Looks.of(drawing.palette());
        for (Shape s : drawing.shapes()) {
            add(s, List.of(), pieces);
            if (s instanceof Shape.Group g && g.element().isPresent()) {
                groups.add(new Found(g.element().get(), g, g.bounds()));
            }
        }
    }

    private static Font load(String file) {
        try (InputStream in = Drawing.class.getResourceAsStream("fonts/" + file)) {
            return Font.createFont(Font.TRUETYPE_FONT, in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (FontFormatException e) {
            throw new IllegalStateException("font file " + file + " is damaged: install the program again", e);
        }
    }

    private static Font font(double size, boolean bold) {
        return (bold ? BOLD : REGULAR)
                .computeIfAbsent(size, s -> (bold ? SHIPPED_BOLD : SHIPPED).deriveFont((float) size));
    }

    Drawing drawing() {
        return drawing;
    }

    Tones tones() {
        return tones;
    }

    /** The colour around the page. */
    Color paper() {
        return tones.of(0xffffff);
    }

    private void add(Shape s, List<List<Role>> groupRoles, List<Piece> to) {
        if (s instanceof Shape.Group g) {
            List<List<Role>> inner = new ArrayList<>(groupRoles);
            inner.add(g.roles());
            g.shapes().forEach(child -> add(child, inner, to));
            return;
        }
        to.add(piece(s, looks.of(s, groupRoles)));
    }

    private Piece piece(Shape s, Look look) {
        Box b = s.bounds();
        double margin = look.width();
        return new Piece(
                s instanceof Shape.Text ? Optional.empty() : Optional.of(outline(s)),
                s instanceof Shape.Text t ? Optional.of(t) : Optional.empty(),
                colour(look.fill()),
                colour(look.stroke()),
                (float) look.width(),
                look.dashes().stream().map(Double::floatValue).toList(),
                new Rectangle2D.Double(
                        b.left() - margin, b.top() - margin, b.width() + 2 * margin, b.height() + 2 * margin));
    }

    private Optional<Color> colour(OptionalInt rgb) {
        return rgb.isPresent() ? Optional.of(tones.of(rgb.getAsInt())) : Optional.empty();
    }

    private static java.awt.Shape outline(Shape s) {
        if (s instanceof Shape.Line l) {
            return new Line2D.Double(l.from().x(), l.from().y(), l.to().x(), l.to().y());
        } else if (s instanceof Shape.Rect r) {
            return r.radius() > 0
                    ? new RoundRectangle2D.Double(r.x(), r.y(), r.width(), r.height(), 2 * r.radius(), 2 * r.radius())
                    : new Rectangle2D.Double(r.x(), r.y(), r.width(), r.height());
        } else if (s instanceof Shape.Circle c) {
            return new Ellipse2D.Double(
                    c.middle().x() - c.radius(), c.middle().y() - c.radius(), 2 * c.radius(), 2 * c.radius());
        } else if (s instanceof Shape.Arc a) {
            return arc(a.middle(), a.radius(), a.from(), a.sweep());
        }
        Path2D path = new Path2D.Double();
        if (s instanceof Shape.Polyline p) {
            path.moveTo(p.points().get(0).x(), p.points().get(0).y());
            p.points().stream().skip(1).forEach(q -> path.lineTo(q.x(), q.y()));
            if (p.closed()) {
                path.closePath();
            }
        } else if (s instanceof Shape.Curve c) {
            path.moveTo(c.start().x(), c.start().y());
            c.pieces()
                    .forEach(q -> path.curveTo(
                            q.first().x(),
                            q.first().y(),
                            q.second().x(),
                            q.second().y(),
                            q.end().x(),
                            q.end().y()));
        } else if (s instanceof Shape.Sector r) {
            path.append(arc(r.middle(), r.outer(), r.from(), r.sweep()), false);
            path.append(arc(r.middle(), r.inner(), r.from() + r.sweep(), -r.sweep()), true);
            path.closePath();
        }
        return path;
    }

    /** The toolkit counts its angles the other way round, from three o'clock. */
    private static Arc2D arc(Point middle, double radius, double from, double sweep) {
        return new Arc2D.Double(
                middle.x() - radius, middle.y() - radius, 2 * radius, 2 * radius, 90 - from, -sweep, Arc2D.OPEN);
    }

    /**
     * Paints the whole drawing.
     *
     * @param g laid out in mm
     * @param scale pixels a mm
     * @param stop asked now and then whether to leave off
     * @return whether it was painted to the end
     */
    boolean paint(Graphics2D g, double scale, BooleanSupplier stop) {
        Rectangle2D clip = g.getClip() == null ? null : g.getClip().getBounds2D();
        int n = 0;
        for (Piece p : pieces) {
            if ((++n & 63) == 0 && stop.getAsBoolean()) {
                return false;
            }
            if (clip == null || p.bounds().intersects(clip)) {
                paint(g, p, scale, LEAST_LINE);
            }
        }
        return true;
    }

    /** Paints things again in heavy lines, over all else. */
    void paintHeavy(Graphics2D g, double scale, Collection<Element> elements) {
        for (Element e : elements) {
            heavy.computeIfAbsent(e, x -> again(x, Role.HIGHLIGHT)).forEach(p -> paint(g, p, scale, LEAST_HEAVY));
        }
    }

    /** Paints things again in the dotted lines of a fault. */
    void paintFaulty(Graphics2D g, double scale, Collection<Element> elements) {
        for (Element e : elements) {
            faulty.computeIfAbsent(e, x -> again(x, Role.FAULT)).forEach(p -> paint(g, p, scale, LEAST_HEAVY));
        }
    }

    /** Runs a broad see-through band along coils. */
    void paintBand(Graphics2D g, double scale, Collection<Element> elements) {
        Color mark = tones.of(looks.of(
                        new Shape.Line(new Point(0, 0), new Point(1, 0), List.of(Role.COIL_TOP)),
                        List.of(List.of(Role.COIL, Role.HIGHLIGHT)))
                .stroke()
                .orElse(0));
        g.setColor(new Color(mark.getRed(), mark.getGreen(), mark.getBlue(), 60));
        g.setStroke(new BasicStroke((float) (BAND / scale), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        Rectangle2D clip = g.getClip() == null ? null : g.getClip().getBounds2D();
        for (Found f : groups) {
            if (f.element().kind() != Element.Kind.COIL || !elements.contains(f.element())) {
                continue;
            }
            Path2D all = new Path2D.Double();
            for (Shape s : f.group().shapes()) {
                if (s instanceof Shape.Line || s instanceof Shape.Polyline || s instanceof Shape.Curve) {
                    all.append(outline(s), false);
                }
            }
            if (clip == null || all.intersects(clip) || clip.intersects(all.getBounds2D())) {
                g.draw(all);
            }
        }
    }

    private List<Piece> again(Element e, Role role) {
        List<Piece> out = new ArrayList<>();
        for (Found f : groups) {
            if (!f.element().equals(e)) {
                continue;
            }
            List<Role> roles = new ArrayList<>(f.group().roles());
            roles.add(role);
            for (Shape s : f.group().shapes()) {
                lineAs(Role.HALO, s).ifPresent(h -> out.add(piece(h, looks.of(h, List.of()))));
            }
            for (Shape s : f.group().shapes()) {
                Shape drawn = role == Role.FAULT ? lineAs(role, s).orElse(s) : s;
                add(drawn, List.of(roles), out);
            }
        }
        // Numbers may lie over a bar or a pole without being part of it; a fill would hide them.
        return e.kind() == Element.Kind.COIL
                ? out
                : out.stream().map(Piece::hollow).toList();
    }

    /** A line in another role; empty where the shape encloses something. */
    private static Optional<Shape> lineAs(Role role, Shape s) {
        List<Role> roles = List.of(role);
        if (s instanceof Shape.Polyline p && !p.closed()) {
            return Optional.of(new Shape.Polyline(p.points(), false, roles));
        } else if (s instanceof Shape.Line l) {
            return Optional.of(new Shape.Line(l.from(), l.to(), roles));
        }
        return s instanceof Shape.Curve c
                ? Optional.of(new Shape.Curve(c.start(), c.pieces(), roles))
                : Optional.empty();
    }

    private static void paint(Graphics2D g, Piece p, double scale, double leastPixels) {
        if (p.text().isPresent()) {
            Shape.Text t = p.text().get();
            if (t.size() * scale >= LEAST_TEXT && p.fill().isPresent()) {
                g.setFont(font(t.size(), t.bold()));
                g.setColor(p.fill().get());
                Box b = t.bounds();
                g.drawString(t.text(), (float) b.left(), (float) t.at().y());
            }
            return;
        }
        java.awt.Shape outline = p.outline().orElseThrow();
        if (p.fill().isPresent()) {
            g.setColor(p.fill().get());
            g.fill(outline);
        }
        if (p.stroke().isPresent()) {
            g.setColor(p.stroke().get());
            g.setStroke(p.line((float) (leastPixels / scale), scale));
            g.draw(outline);
        }
    }

    /**
     * What lies nearest to a place: the last painted of the nearest.
     *
     * @param within how far at most, mm
     */
    Optional<Element> nearest(double x, double y, double within) {
        Optional<Element> best = Optional.empty();
        double least = within;
        var p = new Point(x, y);
        for (Found f : groups) {
            Box b = f.bounds();
            if (x < b.left() - least || x > b.right() + least || y < b.top() - least || y > b.bottom() + least) {
                continue;
            }
            double d = f.group().distance(p);
            if (d <= least) {
                least = d;
                best = Optional.of(f.element());
            }
        }
        return best;
    }

    /** The box around all places that show a thing; empty where this drawing does not show it. */
    Optional<Rectangle2D> boundsOf(Element e) {
        return groups.stream()
                .filter(f -> f.element().equals(e))
                .map(f -> (Rectangle2D) new Rectangle2D.Double(
                        f.bounds().left(),
                        f.bounds().top(),
                        f.bounds().width(),
                        f.bounds().height()))
                .reduce(Rectangle2D::createUnion);
    }
}
