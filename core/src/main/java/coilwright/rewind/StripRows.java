package coilwright.rewind;

import java.util.ArrayList;
import java.util.List;

/**
 * Strips of one layer in straight rows from below.
 *
 * @param outline of the slot
 * @param linerMm thickness of the liner, mm
 * @param fromMm lowest height that a strip may touch, mm above the floor
 * @param toMm highest height that a strip may touch
 * @param wanted strips to be laid
 */
record StripRows(Outline outline, double linerMm, double fromMm, double toMm, int wanted) {
    private static final int START_STEPS = 21;
    private static final int HEIGHT_STEPS = 60;

    /** Upright or flat, whichever places more; upright where equal. */
    List<SlotFill.LaidStrip> lay(Conductor.Strip strip) {
        double wide = strip.widthMm() + 2 * strip.insulationMm();
        double thick = strip.thicknessMm() + 2 * strip.insulationMm();
        List<SlotFill.LaidStrip> upright = most(Math.min(wide, thick), Math.max(wide, thick));
        List<SlotFill.LaidStrip> flat = most(Math.max(wide, thick), Math.min(wide, thick));
        return flat.size() > upright.size() ? flat : upright;
    }

    /** The rows that place most, from the floor of the layer or from further up where a slot widens. */
    private List<SlotFill.LaidStrip> most(double w, double h) {
        List<SlotFill.LaidStrip> best = List.of();
        double low = Math.max(fromMm, linerMm);
        for (int i = 0; i < START_STEPS && best.size() < wanted; i++) {
            List<SlotFill.LaidStrip> rows = rows(w, h, low + Math.max(0, toMm - h - low) * i / (START_STEPS - 1));
            best = rows.size() > best.size() ? rows : best;
        }
        return best;
    }

    private List<SlotFill.LaidStrip> rows(double w, double h, double start) {
        List<SlotFill.LaidStrip> out = new ArrayList<>();
        double y = start;
        double step = (toMm - start) / HEIGHT_STEPS;
        while (y + h <= toMm + 1e-9 && out.size() < wanted) {
            double half =
                    Math.min(outline.halfWidth(y + 1e-6 * h, linerMm), outline.halfWidth(y + h - 1e-6 * h, linerMm));
            int n = (int) Math.floor(2 * half / w + 1e-6);
            if (n < 1) {
                y += step;
                continue;
            }
            n = Math.min(n, wanted - out.size());
            for (int i = 0; i < n; i++) {
                out.add(new SlotFill.LaidStrip((i - n / 2.0) * w, y, w, h));
            }
            y += h;
        }
        return out;
    }
}
