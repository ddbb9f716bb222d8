package coilwright.rewind;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * A convex outline, alike left and right of the y axis, whose corners may be rounded: the part of a slot that holds
 * conductors. The floor lies at y = 0.
 */
public final class Outline {
    /** Unit normal pointing outwards; inside is nx·x + ny·y ≤ c. */
    private record Edge(double nx, double ny, double c) {}

    private record Arc(double cx, double cy, double radius, Edge before, Edge after) {}

    private final List<Edge> edges = new ArrayList<>();
    private final List<Arc> arcs = new ArrayList<>();
    private final List<SlotPoint> boundary = new ArrayList<>();
    private final double height;
    private final double area;

    /** A corner of the right half, from the floor up, with the radius it is rounded by. */
    record Corner(double halfWidth, double y, double radius) {}

    private static final int ARC_STEPS = 16;

    /** Built from the corners of the right half, floor first; the first lies on the floor, the last on the top. */
    Outline(List<Corner> right) {
        List<Corner> all = new ArrayList<>(right);
        for (int i = right.size() - 1; i >= 0; i--) {
            Corner c = right.get(i);
            all.add(new Corner(-c.halfWidth(), c.y(), c.radius()));
        }
        int n = all.size();
        for (int i = 0; i < n; i++) {
            Corner a = all.get(i);
            Corner b = all.get((i + 1) % n);
            double dx = b.halfWidth() - a.halfWidth();
            double dy = b.y() - a.y();
            double length = Math.hypot(dx, dy);
            double nx = dy / length;
            double ny = -dx / length;
            edges.add(new Edge(nx, ny, nx * a.halfWidth() + ny * a.y()));
        }
        double twice = 0;
        for (int i = 0; i < n; i++) {
            Corner a = all.get(i);
            Corner b = all.get((i + 1) % n);
            twice += a.halfWidth() * b.y() - b.halfWidth() * a.y();
            Edge before = edges.get((i + n - 1) % n);
            Edge after = edges.get(i);
            if (a.radius() <= 0) {
                boundary.add(new SlotPoint(a.halfWidth(), a.y()));
                continue;
            }
            // The centre lies a radius inside both edges.
            double det = before.nx * after.ny - before.ny * after.nx;
            double p = before.c - a.radius();
            double q = after.c - a.radius();
            var arc = new Arc(
                    (p * after.ny - q * before.ny) / det,
                    (before.nx * q - after.nx * p) / det,
                    a.radius(),
                    before,
                    after);
            arcs.add(arc);
            double from = Math.atan2(before.ny, before.nx);
            double turn = Math.asin(Math.min(1, Math.max(-1, det)));
            if (before.nx * after.nx + before.ny * after.ny < 0) {
                turn = Math.PI - turn;
            }
            twice -= 2 * a.radius() * a.radius() * (Math.tan(turn / 2) - turn / 2);
            for (int k = 0; k <= ARC_STEPS; k++) {
                double angle = from + turn * k / ARC_STEPS;
                boundary.add(
                        new SlotPoint(arc.cx + arc.radius * Math.cos(angle), arc.cy + arc.radius * Math.sin(angle)));
            }
        }
        this.height = right.get(right.size() - 1).y();
        this.area = twice / 2;
    }

    /** {@return area enclosed, mm²} */
    public double areaMm2() {
        return area;
    }

    /** {@return height over the floor, mm} */
    public double heightMm() {
        return height;
    }

    /** {@return the boundary as a closed run of points, anticlockwise with y up; arcs in short chords} */
    public List<SlotPoint> boundary() {
        return List.copyOf(boundary);
    }

    /**
     * Half the width at a height that is left when everything within {@code inset} of the floor, walls and shoulders is
     * taken away; negative where nothing is left. The flat top is open and takes nothing away.
     */
    double halfWidth(double y, double inset) {
        double half = Double.POSITIVE_INFINITY;
        for (Edge e : edges) {
            if (e.nx > 1e-9) {
                half = Math.min(half, (e.c - inset - e.ny * y) / e.nx);
            } else if (e.ny < -1 + 1e-9) {
                double above = y * -e.ny + e.c - inset;
                if (above < -1e-12) {
                    return above;
                }
            } else if (e.ny > 1 - 1e-9 && y > e.c + 1e-12) {
                return e.c - y;
            }
        }
        for (Arc a : arcs) {
            double radius = a.radius - inset;
            if (radius > 0 && a.after.nx > -1e-9 && a.before.nx > -1e-9) {
                double rise = y - a.cy;
                if (rise >= radius * a.before.ny - 1e-12 && rise <= radius * a.after.ny + 1e-12) {
                    half = Math.min(half, a.cx + Math.sqrt(Math.max(0, radius * radius - rise * rise)));
                }
            }
        }
        return half;
    }

    /** Lowest and highest height at which anything is left by {@link #halfWidth}; empty where nothing is. */
    List<Double> band(double inset) {
        double lo = inset;
        double hi = height;
        if (lo > hi) {
            return List.of();
        }
        double a = lo;
        double b = hi;
        for (int i = 0; i < 100; i++) {
            double m1 = a + (b - a) / 3;
            double m2 = b - (b - a) / 3;
            if (halfWidth(m1, inset) < halfWidth(m2, inset)) {
                a = m1;
            } else {
                b = m2;
            }
        }
        double best = (a + b) / 2;
        if (halfWidth(best, inset) < 0) {
            return List.of();
        }
        return List.of(edgeOf(lo, best, inset), edgeOf(hi, best, inset));
    }

    private double edgeOf(double outside, double inside, double inset) {
        if (halfWidth(outside, inset) >= 0) {
            return outside;
        }
        double out = outside;
        double in = inside;
        for (int i = 0; i < 80; i++) {
            double mid = (out + in) / 2;
            if (halfWidth(mid, inset) >= 0) {
                in = mid;
            } else {
                out = mid;
            }
        }
        return in;
    }

    /** Area left between two heights, mm², to about a part in 10 000. */
    double areaBetween(double from, double to, double inset) {
        List<Double> band = band(inset);
        if (band.isEmpty()) {
            return 0;
        }
        double lo = Math.max(from, band.get(0));
        double hi = Math.min(to, band.get(1));
        if (hi <= lo) {
            return 0;
        }
        int n = 4000;
        double h = (hi - lo) / n;
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += Math.max(0, 2 * halfWidth(lo + (i + 0.5) * h, inset));
        }
        return sum * h;
    }

    /**
     * {@return what is left between two heights when everything within {@code inset} of the floor, walls and shoulders
     * is taken away, as a closed run of points, anticlockwise with y up; arcs in short chords} The flat top is open and
     * takes nothing away. Fewer than three points where nothing is left.
     *
     * @param inset mm, 0 or more
     * @param from lower height over the floor, mm
     * @param to upper height over the floor, mm
     */
    public List<SlotPoint> within(double inset, double from, double to) {
        double wide = 2 * boundary.stream().mapToDouble(SlotPoint::xMm).max().orElseThrow();
        List<SlotPoint> out = List.of(
                new SlotPoint(-wide, from),
                new SlotPoint(wide, from),
                new SlotPoint(wide, to),
                new SlotPoint(-wide, to));
        for (int i = 0; i < boundary.size(); i++) {
            SlotPoint p = boundary.get(i);
            SlotPoint q = boundary.get((i + 1) % boundary.size());
            double length = Math.hypot(q.xMm() - p.xMm(), q.yMm() - p.yMm());
            if (length < 1e-9 * wide) {
                continue;
            }
            double nx = (q.yMm() - p.yMm()) / length;
            double ny = (p.xMm() - q.xMm()) / length;
            double by = ny > 1 - 1e-9 ? 0 : inset;
            out = cut(out, c -> nx * (c.xMm() - p.xMm()) + ny * (c.yMm() - p.yMm()) + by);
        }
        return out;
    }

    /** The part of a convex polygon on the inner side of a line, where the function is at most 0. */
    private static List<SlotPoint> cut(List<SlotPoint> polygon, ToDoubleFunction<SlotPoint> side) {
        List<SlotPoint> out = new ArrayList<>();
        for (int i = 0; i < polygon.size(); i++) {
            SlotPoint p = polygon.get(i);
            SlotPoint q = polygon.get((i + 1) % polygon.size());
            double a = side.applyAsDouble(p);
            double b = side.applyAsDouble(q);
            if (a <= 0) {
                out.add(p);
            }
            if ((a < 0 && b > 0) || (a > 0 && b < 0)) {
                double t = a / (a - b);
                out.add(new SlotPoint(p.xMm() + t * (q.xMm() - p.xMm()), p.yMm() + t * (q.yMm() - p.yMm())));
            }
        }
        return out;
    }
}
