package coilwright.drawing;

import java.util.ArrayList;
import java.util.List;

/** Chains of straight lines, cut to a window. */
final class Chain {
    private Chain() {}

    /**
     * A part of a chain within a window.
     *
     * @param points its points
     * @param start whether it holds the chain's first point
     * @param end whether it holds the chain's last point
     * @param cutLeft whether it is cut at the left edge
     * @param cutRight whether it is cut at the right edge
     * @param leftY where it is cut at the left edge
     * @param rightY where it is cut at the right edge
     */
    record Piece(
            List<Point> points,
            boolean start,
            boolean end,
            boolean cutLeft,
            boolean cutRight,
            double leftY,
            double rightY) {}

    /** The parts of a chain between two upright lines. */
    static List<Piece> clip(List<Point> chain, double left, double right) {
        List<Piece> out = new ArrayList<>();
        List<Point> run = new ArrayList<>();
        boolean start = false;
        double[] cut = {Double.NaN, Double.NaN};
        for (int i = 0; i + 1 < chain.size(); i++) {
            Point p = chain.get(i);
            Point q = chain.get(i + 1);
            double dx = q.x() - p.x();
            double enter = 0;
            double leave = 1;
            if (Math.abs(dx) < 1e-12) {
                if (p.x() < left || p.x() > right) {
                    continue;
                }
            } else {
                double t1 = (left - p.x()) / dx;
                double t2 = (right - p.x()) / dx;
                enter = Math.max(0, Math.min(t1, t2));
                leave = Math.min(1, Math.max(t1, t2));
                if (enter >= leave) {
                    continue;
                }
            }
            if (run.isEmpty()) {
                start = i == 0 && enter == 0;
                Point first = enter == 0 ? p : point(p, q, enter);
                run.add(first);
                if (enter > 0) {
                    cut[dx > 0 ? 0 : 1] = first.y();
                }
            }
            run.add(leave == 1 ? q : point(p, q, leave));
            boolean last = i + 2 == chain.size();
            if (leave < 1 || last) {
                if (leave < 1) {
                    cut[dx > 0 ? 1 : 0] = run.get(run.size() - 1).y();
                }
                out.add(new Piece(
                        List.copyOf(run),
                        start,
                        last && leave == 1,
                        !Double.isNaN(cut[0]),
                        !Double.isNaN(cut[1]),
                        cut[0],
                        cut[1]));
                run.clear();
                cut = new double[] {Double.NaN, Double.NaN};
            }
        }
        return out;
    }

    /** The point at a share of the way from one point to another. */
    static Point point(Point p, Point q, double t) {
        return new Point(p.x() + t * (q.x() - p.x()), p.y() + t * (q.y() - p.y()));
    }
}
