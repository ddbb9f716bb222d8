package coilwright.rewind;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Round wires laid in a region by a regular pattern: how many really go in, and where.
 *
 * <p>The count is what the best of the tried patterns holds, so it is a count that can be wound, not an upper limit.
 *
 * @param pattern the pattern that holds most
 * @param diameterMm overall diameter of a wire
 * @param centres of the wires, from the floor up and from left to right
 */
public record Packing(Pattern pattern, double diameterMm, List<SlotPoint> centres) {
    /** How the wires lie. */
    public enum Pattern {
        /** Rows straight above each other: square lattice where the walls are parallel. */
        SQUARE("square"),
        /** Every row in the hollows of the one below: hexagonal lattice, rows across the slot. */
        HEXAGONAL("hexagonal"),
        /** In the hollows, with the wires of a row spread apart so that the rows sink deeper. */
        STAGGERED("staggered");

        private final String word;

        Pattern(String word) {
            this.word = word;
        }

        /** {@return the word printed beside a count} */
        public String word() {
            return word;
        }
    }

    private static final int HEIGHT_STEPS = 24;
    private static final int SHIFT_STEPS = 12;
    private static final int SPREAD_STEPS = 12;
    private static final int MOST_SPACINGS = 48;

    /** Most wires placed; thinner wire is counted by area alone. */
    static final int MOST_WIRES = 4000;

    /**
     * Copies the list.
     *
     * @param pattern the pattern that holds most
     * @param diameterMm overall diameter of a wire
     * @param centres of the wires, from the floor up and from left to right
     */
    public Packing {
        centres = List.copyOf(centres);
    }

    /** {@return wires that go in} */
    public int count() {
        return centres.size();
    }

    /** The first wires from the floor up. */
    List<SlotPoint> lowest(int n) {
        return centres.subList(0, Math.min(n, centres.size()));
    }

    /**
     * Lays wires in an outline.
     *
     * @param outline region
     * @param inset thickness of the liner on floor, walls and shoulders, mm
     * @param from lowest height that a wire may touch, mm above the floor
     * @param to highest height that a wire may touch
     * @param diameter overall diameter of a wire, mm
     */
    static Packing in(Outline outline, double inset, double from, double to, double diameter) {
        Require.positive("overall wire diameter", diameter, "mm");
        double r = diameter / 2;
        List<Double> band = outline.band(inset + r);
        if (band.isEmpty()) {
            return new Packing(Pattern.SQUARE, diameter, List.of());
        }
        double lo = Math.max(band.get(0), from + r);
        double hi = Math.min(band.get(1), to - r);
        double tiny = diameter * 1e-9;
        if (hi < lo - tiny) {
            return new Packing(Pattern.SQUARE, diameter, List.of());
        }
        var region = new Region(outline, inset + r, lo, Math.max(lo, hi), diameter);
        Packing best = region.square();
        for (double s : region.spacings()) {
            Packing p = region.staggered(s, best.count());
            if (p.count() > best.count()) {
                best = p;
            }
        }
        return best;
    }

    /** Where the centres may lie. */
    private record Region(Outline outline, double inset, double lo, double hi, double d) {
        double half(double y) {
            return outline.halfWidth(y, inset);
        }

        Packing square() {
            List<SlotPoint> best = List.of();
            for (double start : starts(d)) {
                List<SlotPoint> points = new ArrayList<>();
                for (int row = 0; ; row++) {
                    double y = start + row * d;
                    if (y > hi + d * 1e-9) {
                        break;
                    }
                    y = Math.min(y, hi);
                    double h = half(y);
                    if (h < 0) {
                        continue;
                    }
                    int n = 1 + (int) Math.floor(2 * h / d + 1e-9);
                    for (int k = 0; k < n; k++) {
                        points.add(new SlotPoint((k - (n - 1) / 2.0) * d, y));
                    }
                }
                if (points.size() > best.size()) {
                    best = points;
                }
            }
            return new Packing(Pattern.SQUARE, d, best);
        }

        /** Spacings within a row worth trying: touching, and those that make a row end at both walls. */
        List<Double> spacings() {
            List<Double> out = new ArrayList<>();
            double most = Math.sqrt(3) * d;
            for (int i = 0; i <= SPREAD_STEPS; i++) {
                out.add(d + (most - d) * i / SPREAD_STEPS);
            }
            for (double y : new double[] {lo, (lo + hi) / 2, hi}) {
                double width = 2 * half(y);
                for (int halves = 1; halves <= 400 && width > 0; halves++) {
                    double s = width / (halves / 2.0);
                    if (s < d) {
                        break;
                    }
                    if (s <= most) {
                        out.add(s);
                    }
                }
            }
            out.sort(Comparator.naturalOrder());
            int step = 1 + out.size() / MOST_SPACINGS;
            List<Double> some = new ArrayList<>();
            for (int i = 0; i < out.size(); i += step) {
                some.add(out.get(i));
            }
            return some;
        }

        /**
         * The first best of all shifts and heights at one spacing.
         *
         * @param beaten a count that is no use, since another pattern has it; nothing is laid that cannot beat it
         */
        Packing staggered(double s, int beaten) {
            // Neighbours in the next row are half a spacing aside and one diameter away; those two rows up are
            // straight above, so two rows must rise a diameter, which a spacing up to √3·d keeps.
            double rise = Math.sqrt(d * d - s * s / 4) * (1 + 1e-12);
            List<SlotPoint> best = List.of();
            for (double start : starts(rise)) {
                int rows = 1 + (int) Math.floor((hi - start) / rise + 1e-9);
                double[] halves = new double[rows];
                int most = 0;
                for (int row = 0; row < rows; row++) {
                    halves[row] = half(Math.min(start + row * rise, hi));
                    most += halves[row] < 0 ? 0 : 1 + (int) Math.floor(2 * halves[row] / s + 1e-6);
                }
                if (most <= Math.max(beaten, best.size())) {
                    continue;
                }
                for (int k = -1; k < SHIFT_STEPS; k++) {
                    double shift = k < 0 ? -Math.max(0, halves[0]) : s * k / SHIFT_STEPS;
                    int n = 0;
                    for (int row = 0; row < rows; row++) {
                        n += rowCount(halves[row], shift + (row % 2) * s / 2, s);
                    }
                    if (n > Math.max(beaten, best.size())) {
                        best = place(start, rise, halves, shift, s);
                    }
                }
            }
            return new Packing(s > d * (1 + 1e-9) ? Pattern.STAGGERED : Pattern.HEXAGONAL, d, best);
        }

        private int rowCount(double half, double shift, double s) {
            return half < 0 ? 0 : Math.max(0, last(half, shift, s) - first(half, shift, s) + 1);
        }

        private int first(double half, double shift, double s) {
            return (int) Math.ceil((-half - shift) / s - 1e-9);
        }

        private int last(double half, double shift, double s) {
            return (int) Math.floor((half - shift) / s + 1e-9);
        }

        private List<SlotPoint> place(double start, double rise, double[] halves, double shift, double s) {
            List<SlotPoint> points = new ArrayList<>();
            for (int row = 0; row < halves.length; row++) {
                double aside = shift + (row % 2) * s / 2;
                if (halves[row] < 0) {
                    continue;
                }
                for (int k = first(halves[row], aside, s); k <= last(halves[row], aside, s); k++) {
                    points.add(new SlotPoint(aside + k * s, Math.min(start + row * rise, hi)));
                }
            }
            return points;
        }

        /** Heights of the first row: on the floor, a whole number of rows under the top, and between. */
        private double[] starts(double rise) {
            double room = Math.min(rise, hi - lo);
            double[] out = new double[HEIGHT_STEPS + 1];
            for (int i = 0; i < HEIGHT_STEPS; i++) {
                out[i] = lo + room * i / HEIGHT_STEPS;
            }
            out[HEIGHT_STEPS] = hi - rise * Math.floor((hi - lo) / rise);
            return out;
        }
    }
}
