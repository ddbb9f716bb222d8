package coilwright.desktop;

import coilwright.drawing.Element;
import java.awt.Color;
import java.awt.Cursor;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Point;
import java.awt.RenderingHints;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import javax.accessibility.Accessible;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;
import javax.swing.SwingUtilities;
import javax.swing.UIManager;

/**
 * Shows a drawing that can be zoomed and moved, and tells what the pointer is at. The drawing itself is painted off the
 * event thread into a picture; heavy lines go over that picture at once.
 */
final class DrawingPane extends JComponent implements Accessible {
    private static final long serialVersionUID = 1L;
    private static final double LEAST_SCALE = 0.05;
    private static final double MOST_SCALE = 80;
    /** Pixels a mm at which the smallest numbers can just be read. */
    private static final double LEGIBLE = 1.6;

    private static final double STEP = 1.25;
    private static final double PAN = 0.15;
    /** How far from a thing the pointer may be, pixels. */
    private static final double REACH = 6;
    /** Pixels between the page and the edge of the pane. */
    private static final int MARGIN = 8;
    /** Pixels that the mouse may tremble in a click. */
    private static final int TREMBLE = 4;

    private transient Optional<Scene> scene = Optional.empty();
    private transient Optional<Picture> picture = Optional.empty();
    private final transient Background painter;
    private transient Optional<Ties.Tied> hovered = Optional.empty();
    private transient Optional<Ties.Tied> pinned = Optional.empty();
    private transient Set<Element> marked = Set.of();
    private transient Consumer<Optional<Element>> onHover = e -> {};
    private transient Consumer<Optional<Element>> onClick = e -> {};
    private transient Runnable onMove = () -> {};
    private double scale = 1;
    private double x;
    private double y;
    private boolean fitted = true;
    private String notice = "";

    /** A painted picture and the transform it was painted for. */
    private record Picture(BufferedImage image, Scene scene, double scale, double x, double y, double device) {}

    DrawingPane(String name) {
        painter = new Background("painter", e -> {});
        setName(name);
        setFocusable(true);
        setOpaque(true);
        setPreferredSize(new Dimension(520, 420));
        setMinimumSize(new Dimension(120, 120));
        var mouse = new Mouse();
        addMouseListener(mouse);
        addMouseMotionListener(mouse);
        addMouseWheelListener(mouse);
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                if (fitted) {
                    start();
                } else {
                    moved();
                }
            }
        });
        key("PLUS", this::zoomIn);
        key("EQUALS", this::zoomIn);
        key("ADD", this::zoomIn);
        key("MINUS", this::zoomOut);
        key("SUBTRACT", this::zoomOut);
        key("0", this::fit);
        key("NUMPAD0", this::fit);
        key("HOME", this::fit);
        key("LEFT", () -> pan(PAN, 0));
        key("RIGHT", () -> pan(-PAN, 0));
        key("UP", () -> pan(0, PAN));
        key("DOWN", () -> pan(0, -PAN));
        key("ESCAPE", () -> onClick.accept(Optional.empty()));
    }

    private void key(String stroke, Runnable run) {
        Ui.key(this, WHEN_FOCUSED, stroke, run);
    }

    void onHover(Consumer<Optional<Element>> listener) {
        onHover = listener;
    }

    void onClick(Consumer<Optional<Element>> listener) {
        onClick = listener;
    }

    /** Told whenever the part shown changes. */
    void onMove(Runnable listener) {
        onMove = listener;
    }

    Optional<Scene> scene() {
        return scene;
    }

    /** Shows another drawing; keeps the part shown where the page keeps its size. */
    void show(Optional<Scene> next) {
        boolean same = scene.isPresent()
                && next.isPresent()
                && scene.get().drawing().width() == next.get().drawing().width()
                && scene.get().drawing().height() == next.get().drawing().height();
        scene = next;
        getAccessibleContext()
                .setAccessibleName(next.map(s -> s.drawing().title()).orElse("No drawing"));
        getAccessibleContext()
                .setAccessibleDescription(
                        next.map(s -> s.drawing().description()).orElse(""));
        if (same && !fitted) {
            moved();
        } else {
            start();
        }
    }

    /** Words laid over the drawing, such as why it is not up to date; none where blank. */
    void notice(String words) {
        notice = words;
        repaint();
    }

    /** Lights up what the pointer is at. */
    void hover(Optional<Ties.Tied> tied) {
        if (!tied.equals(hovered)) {
            hovered = tied;
            repaint();
        }
    }

    /** Lights up what was chosen, until something else is. */
    void pin(Optional<Ties.Tied> tied) {
        pinned = tied;
        repaint();
    }

    /** Marks what differs or is at fault. */
    void mark(Set<Element> elements) {
        marked = Set.copyOf(elements);
        repaint();
    }

    /** What is marked now. */
    Set<Element> marked() {
        return marked;
    }

    /** What is lit up now. */
    Optional<Ties.Tied> lit() {
        return hovered.or(() -> pinned);
    }

    void zoomIn() {
        zoom(STEP);
    }

    void zoomOut() {
        zoom(1 / STEP);
    }

    private void zoom(double by) {
        zoom(by, getWidth() / 2.0, getHeight() / 2.0);
    }

    private void zoom(double by, double atX, double atY) {
        double next = Math.max(LEAST_SCALE, Math.min(MOST_SCALE, scale * by));
        double factor = next / scale;
        x = atX - (atX - x) * factor;
        y = atY - (atY - y) * factor;
        scale = next;
        fitted = false;
        moved();
    }

    private void pan(double partX, double partY) {
        x += partX * getWidth();
        y += partY * getHeight();
        fitted = false;
        moved();
    }

    /** Shows the whole page, or of a very long one the beginning at its full height, near enough to be read. */
    private void start() {
        fit();
        scene.filter(s -> getWidth() > 0 && getHeight() > 0).ifPresent(s -> {
            double full = (getHeight() - 2.0 * MARGIN) / s.drawing().height();
            if (scale < LEGIBLE && full > 2 * scale) {
                scale = Math.min(full, 2 * LEGIBLE);
                x = MARGIN;
                y = (getHeight() - s.drawing().height() * scale) / 2;
                moved();
            }
        });
    }

    /** Shows the whole page. */
    void fit() {
        fitted = true;
        if (scene.isPresent() && getWidth() > 0) {
            double w = scene.get().drawing().width();
            double h = scene.get().drawing().height();
            scale = Math.max(LEAST_SCALE, Math.min((getWidth() - 2 * MARGIN) / w, (getHeight() - 2 * MARGIN) / h));
            x = (getWidth() - w * scale) / 2;
            y = (getHeight() - h * scale) / 2;
        }
        moved();
    }

    /** Shows the top of the page at its full width. */
    void fitWidth() {
        fitted = false;
        scene.filter(s -> getWidth() > 0).ifPresent(s -> {
            scale = Math.max(
                    LEAST_SCALE, (getWidth() - 2.0 * MARGIN) / s.drawing().width());
            x = MARGIN;
            y = MARGIN;
        });
        moved();
    }

    /** Moves a place into sight, and near enough to be read. */
    void reveal(Element e) {
        scene.flatMap(s -> s.boundsOf(e)).ifPresent(b -> {
            Rectangle2D shown = new Rectangle2D.Double(
                    x + b.getX() * scale, y + b.getY() * scale, b.getWidth() * scale, b.getHeight() * scale);
            boolean inside = new Rectangle2D.Double(0, 0, getWidth(), getHeight()).contains(shown);
            if (!inside) {
                x += getWidth() / 2.0 - shown.getCenterX();
                y += getHeight() / 2.0 - shown.getCenterY();
                fitted = false;
                moved();
            }
        });
    }

    /** Shows the same part as another pane of like size. */
    void follow(DrawingPane other) {
        if (scale != other.scale || x != other.x || y != other.y) {
            scale = other.scale;
            x = other.x;
            y = other.y;
            fitted = other.fitted;
            ask();
            repaint();
        }
    }

    double scale() {
        return scale;
    }

    /** Where a place of the drawing, in mm, stands in this pane; empty while no drawing is shown. */
    Optional<Point> placeOf(double mmX, double mmY) {
        return scene.map(s -> new Point((int) (x + mmX * scale), (int) (y + mmY * scale)));
    }

    /** Whether the picture shown is of the drawing and part now asked for. */
    boolean isPainted() {
        return picture.filter(p -> scene.isPresent()
                        && p.scene() == scene.get()
                        && p.scale() == scale
                        && p.x() == x
                        && p.y() == y
                        && p.image().getWidth() == (int) Math.ceil(getWidth() * p.device()))
                .isPresent();
    }

    private void moved() {
        ask();
        repaint();
        onMove.run();
    }

    private double device() {
        return getGraphicsConfiguration() == null
                ? 1
                : getGraphicsConfiguration().getDefaultTransform().getScaleX();
    }

    private void ask() {
        if (scene.isEmpty() || getWidth() <= 0 || getHeight() <= 0) {
            return;
        }
        Scene s = scene.get();
        double device = device();
        int w = (int) Math.ceil(getWidth() * device);
        int h = (int) Math.ceil(getHeight() * device);
        double toScale = scale;
        double toX = x;
        double toY = y;
        painter.replace(
                overtaken -> {
                    BufferedImage image = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
                    Graphics2D g = image.createGraphics();
                    g.setColor(s.paper());
                    g.fillRect(0, 0, w, h);
                    hints(g);
                    g.scale(device, device);
                    g.translate(toX, toY);
                    g.scale(toScale, toScale);
                    g.setClip(new Rectangle2D.Double(
                            -toX / toScale, -toY / toScale, w / device / toScale, h / device / toScale));
                    boolean done = s.paint(g, toScale * device, overtaken);
                    g.dispose();
                    return done
                            ? Optional.of(new Picture(image, s, toScale, toX, toY, device))
                            : Optional.<Picture>empty();
                },
                done -> {
                    if (done.isPresent()) {
                        picture = done;
                        repaint();
                    }
                });
    }

    private static void hints(Graphics2D g) {
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        Color paper = scene.map(Scene::paper).orElse(UIManager.getColor("Panel.background"));
        g.setColor(paper);
        g.fillRect(0, 0, getWidth(), getHeight());
        if (scene.isPresent()) {
            picture.ifPresent(p -> paintPicture(g, p));
            Graphics2D over = (Graphics2D) g.create();
            hints(over);
            over.translate(x, y);
            over.scale(scale, scale);
            double device = device();
            if (!marked.isEmpty()) {
                scene.get().paintFaulty(over, scale * device, marked);
            }
            lit().ifPresent(t -> {
                Set<Element> along = new LinkedHashSet<>(t.along());
                along.removeAll(t.lit());
                scene.get().paintBand(over, scale, along);
                scene.get().paintHeavy(over, scale * device, t.lit());
            });
            over.dispose();
        }
        if (!notice.isEmpty()) {
            paintNotice(g);
        }
        if (isFocusOwner()) {
            g.setColor(UIManager.getColor("Component.focusColor"));
            g.drawRect(0, 0, getWidth() - 1, getHeight() - 1);
            g.drawRect(1, 1, getWidth() - 3, getHeight() - 3);
        }
        g.dispose();
    }

    private void paintPicture(Graphics2D g, Picture p) {
        double factor = scale / p.scale();
        AffineTransform t = new AffineTransform();
        t.translate(x - p.x() * factor, y - p.y() * factor);
        t.scale(factor / p.device(), factor / p.device());
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.drawImage(p.image(), t, null);
    }

    private void paintNotice(Graphics2D g) {
        g.setFont(UIManager.getFont("Label.font"));
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        var metrics = g.getFontMetrics();
        int height = metrics.getHeight() + 10;
        g.setColor(UIManager.getColor("ToolTip.background"));
        g.fillRect(0, 0, getWidth(), height);
        g.setColor(UIManager.getColor("ToolTip.foreground"));
        g.drawLine(0, height, getWidth(), height);
        g.drawString(notice, 10, 5 + metrics.getAscent());
    }

    private Optional<Element> at(Point p) {
        return scene.flatMap(s -> s.nearest((p.x - x) / scale, (p.y - y) / scale, REACH / scale));
    }

    private final class Mouse extends MouseAdapter {
        private Point2D pressed = new Point();
        private boolean dragged;

        @Override
        public void mousePressed(MouseEvent e) {
            requestFocusInWindow();
            pressed = e.getPoint();
            dragged = false;
        }

        @Override
        public void mouseDragged(MouseEvent e) {
            if (!dragged && pressed.distance(e.getPoint()) < TREMBLE) {
                return;
            }
            dragged = true;
            setCursor(Cursor.getPredefinedCursor(Cursor.MOVE_CURSOR));
            x += e.getX() - pressed.getX();
            y += e.getY() - pressed.getY();
            pressed = e.getPoint();
            fitted = false;
            moved();
        }

        @Override
        public void mouseReleased(MouseEvent e) {
            setCursor(Cursor.getDefaultCursor());
            if (!dragged && SwingUtilities.isLeftMouseButton(e)) {
                onClick.accept(at(e.getPoint()));
            }
        }

        @Override
        public void mouseMoved(MouseEvent e) {
            onHover.accept(at(e.getPoint()));
        }

        @Override
        public void mouseExited(MouseEvent e) {
            onHover.accept(Optional.empty());
        }

        @Override
        public void mouseWheelMoved(MouseWheelEvent e) {
            zoom(e.getPreciseWheelRotation() < 0 ? STEP : 1 / STEP, e.getX(), e.getY());
        }
    }

    @Override
    public AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new AccessibleJComponent() {
                private static final long serialVersionUID = 1L;

                @Override
                public AccessibleRole getAccessibleRole() {
                    return AccessibleRole.CANVAS;
                }
            };
        }
        return accessibleContext;
    }
}
