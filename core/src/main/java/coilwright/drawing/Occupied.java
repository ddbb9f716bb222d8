package coilwright.drawing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Boxes taken by labels, so that the next label finds room. */
final class Occupied {
    private static final double CELL = 8;

    private final Map<Long, List<Box>> cells = new LinkedHashMap<>();

    /** Takes the box unless another is in the way. */
    boolean take(Box box) {
        return put(box, false);
    }

    /** Takes the box even where another is in the way. */
    void insist(Box box) {
        put(box, true);
    }

    private boolean put(Box box, boolean insist) {
        List<List<Box>> mine = new ArrayList<>();
        for (long i = (long) Math.floor(box.left() / CELL); i <= (long) Math.floor(box.right() / CELL); i++) {
            for (long j = (long) Math.floor(box.top() / CELL); j <= (long) Math.floor(box.bottom() / CELL); j++) {
                List<Box> cell = cells.computeIfAbsent(i * 1_000_003 + j, x -> new ArrayList<>(4));
                for (Box other : cell) {
                    if (!insist && box.overlaps(other)) {
                        return false;
                    }
                }
                mine.add(cell);
            }
        }
        mine.forEach(cell -> cell.add(box));
        return true;
    }

    /** Moves sorted values apart to at least a step, keeping within the limits and as near as may be. */
    static double[] spread(double[] sorted, double step, double low, double high) {
        double[] y = sorted.clone();
        double floor = low;
        for (int i = 0; i < y.length; i++) {
            y[i] = Math.max(y[i], floor);
            floor = y[i] + step;
        }
        double ceiling = high;
        for (int i = y.length - 1; i >= 0; i--) {
            y[i] = Math.min(y[i], ceiling);
            ceiling = y[i] - step;
        }
        return y;
    }
}
