package coilwright.drawing;

import coilwright.winding.Coil;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Where each lead meets its bar, so that no two leads on a bar are drawn on each other: top leads first. */
final class Leads {
    private final Map<Long, Double> offsets = new LinkedHashMap<>();

    Leads(Winding winding) {
        Map<Integer, List<Long>> onBar = new LinkedHashMap<>();
        for (Coil c : winding.coils()) {
            c.topBar()
                    .ifPresent(b ->
                            onBar.computeIfAbsent(b, x -> new ArrayList<>(2)).add(key(c, true)));
        }
        for (Coil c : winding.coils()) {
            c.bottomBar()
                    .ifPresent(b ->
                            onBar.computeIfAbsent(b, x -> new ArrayList<>(2)).add(key(c, false)));
        }
        for (List<Long> keys : onBar.values()) {
            for (int i = 0; i < keys.size(); i++) {
                offsets.put(keys.get(i), 0.62 * ((i + 0.5) / Math.max(2, keys.size()) - 0.5));
            }
        }
    }

    private static long key(Coil c, boolean top) {
        return 2L * c.number() + (top ? 0 : 1);
    }

    /** From the bar's middle, in bar pitches; −0.31 to 0.31. */
    double offset(Coil c, boolean top) {
        return offsets.get(key(c, top));
    }
}
