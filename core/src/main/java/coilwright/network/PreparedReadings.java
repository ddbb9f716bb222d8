package coilwright.network;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Meter readings of a factorised network, made ready to be worked out under very many small changes, as when suspected
 * faults are tried one by one against what was measured.
 *
 * <p>What the feeds do to the unchanged network is worked out once. A {@link #trial() trial} with k changed branches
 * then costs k³ steps for each different set of feeds and k for each reading, whatever the size of the network.
 */
public final class PreparedReadings {
    private static final double MOST_CANCELLATION = 1e5;

    private final Factorisation base;
    private final List<Reading> readings;
    final Fed[] fed;
    /** First of each feed set's readings in the arrays below; one more at the end. */
    final int[] start;
    /** Position of the reading in the list. */
    final int[] place;

    final int[] p;
    final int[] q;

    PreparedReadings(Factorisation base, List<Reading> readings) {
        this.base = base;
        this.readings = List.copyOf(readings);
        Map<List<Feed>, List<Integer>> byFeeds = new LinkedHashMap<>();
        for (int i = 0; i < readings.size(); i++) {
            byFeeds.computeIfAbsent(readings.get(i).feeds(), key -> new ArrayList<>())
                    .add(i);
        }
        fed = new Fed[byFeeds.size()];
        start = new int[fed.length + 1];
        place = new int[readings.size()];
        p = new int[place.length];
        q = new int[place.length];
        int at = 0;
        int set = 0;
        for (Map.Entry<List<Feed>, List<Integer>> entry : byFeeds.entrySet()) {
            fed[set++] = new Fed(base, entry.getKey(), true);
            for (int i : entry.getValue()) {
                place[at] = i;
                p[at] = base.joined(readings.get(i).from());
                q[at] = base.joined(readings.get(i).to());
                at++;
            }
            start[set] = at;
        }
    }

    /** The network before any change. */
    public Factorisation base() {
        return base;
    }

    /** The readings, in the order in which trials give their values. */
    public List<Reading> readings() {
        return readings;
    }

    /** A place to try changes in. Each thread needs its own. */
    public Trial trial() {
        return new Trial(this);
    }

    /** Whether so much cancelled that the result's last digits are in doubt. */
    static boolean lost(double effort, double result) {
        return effort > MOST_CANCELLATION * Math.abs(result);
    }
}
