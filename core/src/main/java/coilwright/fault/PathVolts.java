package coilwright.fault;

import coilwright.circuit.BrushGear;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The ways through an armature from its + to its − brushes at one moment, and the voltage along each.
 *
 * @param paths how many are in parallel
 * @param fewestCoils in series along one
 * @param mostCoils in series along one
 * @param least lowest voltage along one
 * @param most highest voltage along one
 * @param mean of all
 */
record PathVolts(int paths, int fewestCoils, int mostCoils, double least, double most, double mean) {
    /** Difference of the highest and the lowest over the mean; 0 with fewer than two ways. */
    double unbalance() {
        return Math.abs(mean) < 1e-9 ? 0 : Math.abs((most - least) / mean);
    }

    /**
     * Traces the ways.
     *
     * @param lifted a coil with its leads off the bars
     * @param bridge two bars joined, or none
     * @return empty where a brush of each sign stands on one bar, or no way is left
     */
    static Optional<PathVolts> of(Winding winding, BrushGear gear, Optional<Coil> lifted, List<Integer> bridge) {
        int[] node = new int[winding.armature().bars() + 1];
        for (int bar = 1; bar < node.length; bar++) {
            node[bar] = bar;
        }
        join(node, bridge);
        List<Integer> plus = EmergencyRepair.brushBars(gear, true);
        List<Integer> minus = EmergencyRepair.brushBars(gear, false);
        join(node, plus);
        join(node, minus);
        int from = root(node, plus.get(0));
        int to = root(node, minus.get(0));
        if (from == to) {
            return Optional.empty();
        }
        List<Way> ways = new ArrayList<>();
        int paths = 0;
        // The two parts of a frog-leg winding are taken each by itself, as its paths are.
        for (int set = 0; set < winding.sets().size(); set++) {
            var net = new Net(from, to);
            for (Coil c : winding.liveCoils()) {
                if (c.set() == set && !lifted.equals(Optional.of(c))) {
                    net.add(
                            root(node, c.topBar().getAsInt()),
                            root(node, c.bottomBar().getAsInt()),
                            volts(winding.armature(), gear, c));
                }
            }
            paths += net.walk(ways);
        }
        if (ways.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new PathVolts(
                paths,
                ways.stream().mapToInt(Way::coils).min().getAsInt(),
                ways.stream().mapToInt(Way::coils).max().getAsInt(),
                ways.stream().mapToDouble(Way::volts).min().getAsDouble(),
                ways.stream().mapToDouble(Way::volts).max().getAsDouble(),
                ways.stream().mapToDouble(Way::volts).average().getAsDouble()));
    }

    private static double volts(Armature a, BrushGear gear, Coil c) {
        return EmergencyRepair.coilVolts(a, c, gear.rotorAngle());
    }

    private static void join(int[] node, List<Integer> bars) {
        for (int i = 1; i < bars.size(); i++) {
            node[root(node, bars.get(i))] = root(node, bars.get(0));
        }
    }

    private static int root(int[] node, int bar) {
        int n = bar;
        while (node[n] != n) {
            n = node[n];
        }
        return n;
    }

    private record Way(int coils, double volts) {}

    private record Edge(int from, int to, int coils, double volts) {
        int other(int node) {
            return node == from ? to : from;
        }

        double voltsFrom(int node) {
            return node == from ? volts : -volts;
        }
    }

    /** Coils between joined bars. */
    private static final class Net {
        private final int plus;
        private final int minus;
        private final Map<Integer, Set<Numbered>> ends = new LinkedHashMap<>();
        private int number;

        /** Equal coils side by side are two. */
        private record Numbered(Edge edge, int number) {}

        Net(int plus, int minus) {
            this.plus = plus;
            this.minus = minus;
        }

        void add(int from, int to, double volts) {
            if (from != to) {
                put(new Numbered(new Edge(from, to, 1, volts), number++));
            }
        }

        private void put(Numbered n) {
            ends.computeIfAbsent(n.edge().from(), x -> new LinkedHashSet<>()).add(n);
            ends.computeIfAbsent(n.edge().to(), x -> new LinkedHashSet<>()).add(n);
        }

        private void remove(Numbered n) {
            ends.get(n.edge().from()).remove(n);
            ends.get(n.edge().to()).remove(n);
        }

        /** Adds every way from + to −, and says how many are in parallel. */
        int walk(List<Way> ways) {
            for (int node : List.copyOf(ends.keySet())) {
                shrink(node);
            }
            int before = ways.size();
            Set<Integer> met = new LinkedHashSet<>();
            go(plus, 0, 0, met, ways);
            return ways.size() == before ? 0 : Math.min(leaving(plus), leaving(minus));
        }

        private int leaving(int node) {
            return ends.getOrDefault(node, Set.of()).size();
        }

        /** Takes out dead ends, and joins the two coils that alone meet on a bar into one stretch. */
        private void shrink(int start) {
            int node = start;
            while (node != plus && node != minus) {
                List<Numbered> here = List.copyOf(ends.getOrDefault(node, Set.of()));
                if (here.isEmpty() || here.size() > 2) {
                    return;
                }
                here.forEach(this::remove);
                Edge a = here.get(0).edge();
                if (here.size() == 1) {
                    node = a.other(node);
                    continue;
                }
                Edge b = here.get(1).edge();
                int from = a.other(node);
                int to = b.other(node);
                if (from != to) {
                    put(new Numbered(
                            new Edge(from, to, a.coils() + b.coils(), -a.voltsFrom(node) + b.voltsFrom(node)),
                            number++));
                    return;
                }
                // A loop that hangs on one bar or brush.
                node = from;
            }
        }

        private void go(int node, int coils, double volts, Set<Integer> met, List<Way> ways) {
            if (node == minus) {
                ways.add(new Way(coils, volts));
                return;
            }
            met.add(node);
            for (Numbered n : ends.getOrDefault(node, Set.of())) {
                int next = n.edge().other(node);
                if (!met.contains(next)) {
                    go(next, coils + n.edge().coils(), volts + n.edge().voltsFrom(node), met, ways);
                }
            }
            met.remove(node);
        }
    }
}
