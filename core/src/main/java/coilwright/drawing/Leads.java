package coilwright.drawing;

import coilwright.winding.Coil;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Where each lead meets its bar, so that no two leads on a bar are drawn on each other: top leads first. */
final class Leads {
    private final Map<Long, Double> offsets = new LinkedHashMap<>();

    Leads(Overlay overlay) {
        Map<Integer, List<Long>> onBar = new LinkedHashMap<>();
        for (boolean top : new boolean[] {true, false}) {
            for (Coil c : overlay.winding().coils()) {
                List<Overlay.Lead> leads = overlay.leads(c, top);
                for (int i = 0; i < leads.size(); i++) {
                    long key = key(c, top, i);
                    leads.get(i)
                            .bar()
                            .ifPresent(b -> onBar.computeIfAbsent(b, x -> new ArrayList<>(2))
                                    .add(key));
                }
            }
        }
        for (List<Long> keys : onBar.values()) {
            for (int i = 0; i < keys.size(); i++) {
                offsets.put(keys.get(i), 0.62 * ((i + 0.5) / Math.max(2, keys.size()) - 0.5));
            }
        }
    }

    /** At most two of a side: as planned and as found. */
    private static long key(Coil c, boolean top, int index) {
        return 4L * c.number() + (top ? 0 : 1) + 2L * index;
    }

    /** From the bar's middle, in bar pitches; −0.31 to 0.31. */
    double offset(Coil c, boolean top, int index) {
        return offsets.get(key(c, top, index));
    }
}
