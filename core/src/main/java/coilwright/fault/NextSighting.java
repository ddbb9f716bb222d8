package coilwright.fault;

import coilwright.fault.Identification.Fit;
import coilwright.fault.Identification.Known;
import coilwright.fault.Identification.Next;
import coilwright.fault.Identification.Outcome;
import coilwright.winding.Armature;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;

/** The observation that leaves least doubt on the average, of several as good the one that is easiest to make. */
final class NextSighting {
    /** Ratios nearer to one another than this are taken as one, beyond twice the tolerance of a measured resistance. */
    private static final double APART = 1.25;

    private static final int MOST_MEASURED = 60;
    private static final int MOST_RATIOS = 8;
    private static final int MOST_CONTINUITIES = 3;

    private NextSighting() {}

    static Optional<Next> best(List<Fit> fits, Known known) {
        if (fits.size() < 2) {
            return Optional.empty();
        }
        Optional<Next> best = Optional.empty();
        double least = bits(fits.size());
        for (Next n : candidates(fits, known)) {
            // Whatever comes out must leave fewer.
            if (n.outcomes().stream().anyMatch(o -> o.fits().size() == fits.size())) {
                continue;
            }
            double left = 0;
            int seen = 0;
            for (Outcome o : n.outcomes()) {
                left += o.fits().size() * bits(o.fits().size());
                seen += o.fits().size();
            }
            // Where one fit could show several outcomes, it counts in each.
            left /= seen;
            if (left < least) {
                least = left - 1e-9;
                best = Optional.of(n);
            }
        }
        return best;
    }

    /** Doubt between so many fits, all as likely. */
    private static double bits(int n) {
        return Math.log(n) / Math.log(2);
    }

    /** Easiest first. */
    static List<Next> candidates(List<Fit> fits, Known known) {
        List<Electrical> all =
                fits.stream().map(f -> new Electrical(f.winding())).toList();
        int k = known.bars();
        List<Next> out = new ArrayList<>();
        for (int n = 1; n <= Math.min(MOST_CONTINUITIES, k - 1); n++) {
            int other = 1 + n;
            Map<Double, List<Integer>> groups = new TreeMap<>();
            for (int i = 0; i < all.size(); i++) {
                double joined = all.get(i).resistance(1, other).isPresent() ? 1 : 0;
                groups.computeIfAbsent(joined, x -> new ArrayList<>()).add(i);
            }
            out.add(new Next(
                    "continuity",
                    "try for continuity between bars 1 and " + other + ", brushes off",
                    List.of(1, other),
                    outcomes(groups, v -> v == 1 ? "joined" : "not joined")));
        }
        if (known.poles().isEmpty()) {
            Map<Double, List<Integer>> groups = new TreeMap<>();
            for (int i = 0; i < fits.size(); i++) {
                groups.computeIfAbsent((double) fits.get(i).winding().armature().poles(), x -> new ArrayList<>())
                        .add(i);
            }
            out.add(new Next(
                    "poles",
                    "count the main poles of the frame, or the brush arms",
                    List.of(),
                    outcomes(groups, v -> String.format(Locale.ROOT, "%.0f poles", v))));
        }
        if (all.size() <= MOST_MEASURED) {
            ratios(all, k, out);
        }
        blade(all, out);
        trace(all, k, out);
        return out;
    }

    private static void ratios(List<Electrical> all, int k, List<Next> out) {
        Set<Integer> apart = new LinkedHashSet<>(List.of(2, 3, Math.max(2, k / 2)));
        for (Electrical e : all) {
            for (int step : e.steps()) {
                if (apart.size() < MOST_RATIOS) {
                    apart.add(Math.min(step, k - step));
                }
            }
        }
        for (int n : apart) {
            if (n < 2 || n >= k) {
                continue;
            }
            TreeMap<Double, List<Integer>> values = new TreeMap<>();
            boolean measurable = true;
            for (int i = 0; i < all.size(); i++) {
                OptionalDouble near = all.get(i).resistance(1, 2);
                OptionalDouble far = all.get(i).resistance(1, 1 + n);
                measurable &= near.isPresent() && far.isPresent();
                if (measurable) {
                    values.computeIfAbsent(far.getAsDouble() / near.getAsDouble(), x -> new ArrayList<>())
                            .add(i);
                }
            }
            if (!measurable) {
                continue;
            }
            Map<Double, List<Integer>> groups = new LinkedHashMap<>();
            double last = -1;
            List<Integer> group = List.of();
            for (Map.Entry<Double, List<Integer>> v : values.entrySet()) {
                if (last < 0 || v.getKey() > last * APART) {
                    group = new ArrayList<>();
                    groups.put(v.getKey(), group);
                }
                group.addAll(v.getValue());
                last = v.getKey();
            }
            groups.values().forEach(Collections::sort);
            out.add(new Next(
                    "resistance-ratio",
                    "measure the resistance between bars 1 and " + (1 + n) + " and between bars 1 and 2, and divide the"
                            + " first by the second",
                    List.of(1, 1 + n, 1, 2),
                    outcomes(groups, v -> String.format(Locale.ROOT, "about %.2f", v))));
        }
    }

    private static void blade(List<Electrical> all, List<Next> out) {
        Map<Double, List<Integer>> groups = new TreeMap<>();
        for (int i = 0; i < all.size(); i++) {
            OptionalInt n = all.get(i).bladeSlots();
            if (n.isEmpty()) {
                return;
            }
            groups.computeIfAbsent((double) n.getAsInt(), x -> new ArrayList<>())
                    .add(i);
        }
        out.add(new Next(
                "blade",
                "join bars 1 and 2 with a piece of wire and count the slots over which the growler's blade hums",
                List.of(1, 2),
                outcomes(groups, v -> String.format(Locale.ROOT, "%.0f slots", v))));
    }

    private static void trace(List<Electrical> all, int k, List<Next> out) {
        Map<Double, List<Integer>> groups = new TreeMap<>();
        for (int i = 0; i < all.size(); i++) {
            for (int step : all.get(i).steps()) {
                groups.computeIfAbsent((double) step, x -> new ArrayList<>()).add(i);
            }
        }
        out.add(new Next(
                "trace",
                "trace the coil whose top side's lead lands on bar 1 to the bar of its other lead",
                List.of(1),
                outcomes(groups, v -> "bar " + Armature.of(2, k, 2).wrapBar(1 + (int) Math.round(v)))));
    }

    private interface Naming {
        String of(double value);
    }

    private static List<Outcome> outcomes(Map<Double, List<Integer>> groups, Naming naming) {
        List<Outcome> out = new ArrayList<>();
        groups.forEach((v, fits) -> out.add(new Outcome(v, naming.of(v), fits)));
        return out;
    }
}
