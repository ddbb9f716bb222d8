package coilwright.network;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReferenceArray;

/**
 * Meter readings of a factorised network, made ready to be worked out under very many small changes, as when suspected
 * faults are tried one by one against what was measured.
 *
 * <p>What the feeds do to the unchanged network is worked out once. A {@link #trial() trial} with k changed branches
 * then costs k³ steps for each different set of feeds and k for each reading, whatever the size of the network. For each
 * branch once changed, the effect on every reading is kept: memory grows as branches times readings.
 */
public final class PreparedReadings {
    private final Factorisation base;
    private final List<Reading> readings;
    final Fed[] fed;
    /** First of each feed set's readings in the arrays below; one more at the end. */
    final int[] start;
    /** Position of the reading in the list. */
    final int[] place;

    final int[] p;
    final int[] q;
    /** What the feeds alone make each reading show, NaN where it floats. */
    final double[] unchanged;
    /** Greatest of these in each feed set. */
    final double[] unchangedMost;

    private final AtomicReferenceArray<Response> responses;

    /** What one ampere through two nodes does to the readings. */
    static final class Response {
        /** Volts for each reading. */
        final double[] volts;
        /** The greatest of them in each feed set. */
        final double[] most;

        private Response(double[] volts, double[] most) {
            this.volts = volts;
            this.most = most;
        }
    }

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
        unchanged = new double[place.length];
        for (set = 0; set < fed.length; set++) {
            for (int i = start[set]; i < start[set + 1]; i++) {
                double[] x = fed[set].voltages;
                unchanged[i] = base.part(p[i]) == base.part(q[i]) ? x[p[i]] - x[q[i]] : Double.NaN;
            }
        }
        unchangedMost = greatest(unchanged);
        responses = new AtomicReferenceArray<>(base.branchCount());
    }

    Response response(int branch, double[] column) {
        Response known = branch < 0 ? null : responses.get(branch);
        if (known == null) {
            double[] volts = new double[place.length];
            for (int i = 0; i < volts.length; i++) {
                volts[i] = column[p[i]] - column[q[i]];
            }
            known = new Response(volts, greatest(volts));
            if (branch >= 0) {
                responses.set(branch, known);
            }
        }
        return known;
    }

    private double[] greatest(double[] volts) {
        double[] most = new double[fed.length];
        for (int set = 0; set < most.length; set++) {
            for (int i = start[set]; i < start[set + 1]; i++) {
                if (Math.abs(volts[i]) > most[set]) {
                    most[set] = Math.abs(volts[i]);
                }
            }
        }
        return most;
    }

    /** {@return the network before any change} */
    public Factorisation base() {
        return base;
    }

    /** {@return the readings, in the order in which trials give their values} */
    public List<Reading> readings() {
        return readings;
    }

    /** {@return a place to try changes in} Each thread needs its own. */
    public Trial trial() {
        return new Trial(this);
    }
}
