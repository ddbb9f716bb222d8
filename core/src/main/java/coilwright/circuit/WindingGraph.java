package coilwright.circuit;

import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.CoilSide;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.jgrapht.Graph;
import org.jgrapht.alg.connectivity.ConnectivityInspector;
import org.jgrapht.alg.shortestpath.BFSShortestPath;
import org.jgrapht.graph.AsUndirectedGraph;
import org.jgrapht.graph.AsUnmodifiableGraph;
import org.jgrapht.graph.DirectedPseudograph;

/**
 * A winding as a directed graph: bars are vertices, each live coil is an edge from the bar of its top lead to the bar
 * of its bottom lead. Works on any winding, broken ones included.
 */
public final class WindingGraph {
    private final Winding winding;
    private final Graph<Integer, Coil> graph;

    private WindingGraph(Winding winding, Graph<Integer, Coil> graph) {
        this.winding = winding;
        this.graph = graph;
    }

    /**
     * {@return the graph of all live coils of a winding}
     *
     * @param winding any winding
     */
    public static WindingGraph of(Winding winding) {
        return new WindingGraph(winding, build(winding, winding.liveCoils()));
    }

    private static Graph<Integer, Coil> build(Winding winding, List<Coil> coils) {
        Graph<Integer, Coil> g = new DirectedPseudograph<>(Coil.class);
        for (int bar = 1; bar <= winding.armature().bars(); bar++) {
            g.addVertex(bar);
        }
        for (Coil c : coils) {
            g.addEdge(c.topBar().getAsInt(), c.bottomBar().getAsInt(), c);
        }
        return new AsUnmodifiableGraph<>(g);
    }

    /** {@return the winding it was made from} */
    public Winding winding() {
        return winding;
    }

    /** {@return bars as vertices, live coils as edges from top bar to bottom bar; cannot be changed} */
    public Graph<Integer, Coil> graph() {
        return graph;
    }

    /**
     * {@return the circuits of each set of coils by itself (so a frog-leg winding gives its lap circuits, then its wave
     * circuits), each in order of its lowest bar}
     */
    public List<Circuit> circuits() {
        List<Circuit> out = new ArrayList<>();
        for (int set = 0; set < winding.sets().size(); set++) {
            int wanted = set;
            List<Coil> coils =
                    winding.liveCoils().stream().filter(c -> c.set() == wanted).toList();
            Graph<Integer, Coil> part = winding.sets().size() == 1 ? graph : build(winding, coils);
            out.addAll(circuitsOf(part));
        }
        return List.copyOf(out);
    }

    /** {@return how many closed rings the coils make; gcd(K, |yc|) in a regular winding} */
    public int closures() {
        return (int)
                circuits().stream().filter(c -> c.kind() == Circuit.Kind.CLOSED).count();
    }

    private static List<Circuit> circuitsOf(Graph<Integer, Coil> g) {
        List<Circuit> out = new ArrayList<>();
        List<Set<Integer>> parts = new ArrayList<>(new ConnectivityInspector<>(g).connectedSets());
        parts.sort(Comparator.comparingInt(Collections::min));
        for (Set<Integer> part : parts) {
            out.add(circuitOf(g, new TreeSet<>(part)));
        }
        return out;
    }

    private static Circuit circuitOf(Graph<Integer, Coil> g, SortedSet<Integer> bars) {
        Set<Coil> coils = new LinkedHashSet<>();
        boolean open = false;
        int first = bars.first();
        for (int bar : bars) {
            coils.addAll(g.edgesOf(bar));
            int degree = g.degreeOf(bar);
            if (degree > 2) {
                return branched(bars, g);
            }
            if (degree == 1 && !open) {
                first = bar;
                open = true;
            }
        }
        if (coils.isEmpty()) {
            return new Circuit(Circuit.Kind.BARE_BAR, List.copyOf(bars), List.of());
        }
        List<Step> steps = walk(g, first);
        List<Integer> order = new ArrayList<>();
        order.add(first);
        steps.forEach(s -> order.add(s.toBar()));
        if (!open) {
            order.remove(order.size() - 1);
        }
        return new Circuit(open ? Circuit.Kind.OPEN : Circuit.Kind.CLOSED, order, steps);
    }

    private static Circuit branched(SortedSet<Integer> bars, Graph<Integer, Coil> g) {
        List<Step> steps = new ArrayList<>();
        Set<Coil> coils = new LinkedHashSet<>();
        bars.forEach(b -> coils.addAll(g.edgesOf(b)));
        coils.stream()
                .sorted(Comparator.comparingInt(Coil::number))
                .forEach(c -> steps.add(
                        new Step(c, c.topBar().getAsInt(), c.bottomBar().getAsInt())));
        return new Circuit(Circuit.Kind.BRANCHED, List.copyOf(bars), steps);
    }

    /** Walks a ring or chain from a bar, along the coil that starts there where there is one. */
    private static List<Step> walk(Graph<Integer, Coil> g, int first) {
        List<Step> steps = new ArrayList<>();
        Set<Coil> used = new LinkedHashSet<>();
        int bar = first;
        while (true) {
            Coil next = pick(g.outgoingEdgesOf(bar), used);
            if (next == null) {
                next = pick(g.incomingEdgesOf(bar), used);
            }
            if (next == null) {
                return steps;
            }
            used.add(next);
            int to = other(next, bar);
            steps.add(new Step(next, bar, to));
            bar = to;
        }
    }

    @SuppressWarnings("ReturnMissingNullable")
    private static Coil pick(Collection<Coil> from, Set<Coil> used) {
        return from.stream()
                .filter(c -> !used.contains(c))
                .min(Comparator.comparingInt(Coil::number))
                .orElse(null);
    }

    static int other(Coil coil, int bar) {
        int top = coil.topBar().getAsInt();
        return top == bar ? coil.bottomBar().getAsInt() : top;
    }

    /**
     * {@return the coils with a side in a slot, in order of number}
     *
     * @param slot 1..S
     */
    public List<Coil> coilsInSlot(int slot) {
        return winding.coils().stream().filter(c -> c.lies(slot)).toList();
    }

    /**
     * {@return the coils with a lead on a bar, in order of number}
     *
     * @param bar 1..K
     */
    public List<Coil> coilsOnBar(int bar) {
        return winding.coils().stream().filter(c -> c.touches(bar)).toList();
    }

    /**
     * {@return the ways through the winding from one bar to another: on a ring both ways round, the shorter first; on a
     * chain the one way; where the winding branches a shortest way} In a frog-leg winding the ways through each part
     * alone. Empty where the bars are not joined.
     *
     * @param fromBar bar to start from
     * @param toBar bar to come to
     * @throws IllegalArgumentException when the bars are the same or do not exist
     */
    public List<List<Step>> between(int fromBar, int toBar) {
        int k = winding.armature().bars();
        if (fromBar < 1 || fromBar > k || toBar < 1 || toBar > k || fromBar == toBar) {
            throw new IllegalArgumentException(
                    "bars " + fromBar + " and " + toBar + " were given: name two different bars from 1 to " + k);
        }
        List<List<Step>> out = new ArrayList<>();
        for (Circuit circuit : circuits()) {
            int i = circuit.bars().indexOf(fromBar);
            int j = circuit.bars().indexOf(toBar);
            if (i < 0 || j < 0) {
                continue;
            }
            switch (circuit.kind()) {
                case CLOSED -> {
                    out.add(ring(circuit.steps(), i, j));
                    out.add(reversed(ring(circuit.steps(), j, i)));
                }
                case OPEN ->
                    out.add(
                            i < j
                                    ? circuit.steps().subList(i, j)
                                    : reversed(circuit.steps().subList(j, i)));
                case BRANCHED -> out.add(shortest(fromBar, toBar));
                case BARE_BAR -> {}
            }
        }
        out.sort(Comparator.comparingInt(List::size));
        return out.stream().map(List::copyOf).toList();
    }

    private static List<Step> ring(List<Step> steps, int from, int to) {
        List<Step> out = new ArrayList<>();
        for (int i = from; i != to; i = (i + 1) % steps.size()) {
            out.add(steps.get(i));
        }
        return out;
    }

    private static List<Step> reversed(List<Step> steps) {
        List<Step> out = new ArrayList<>();
        for (int i = steps.size() - 1; i >= 0; i--) {
            out.add(steps.get(i).reversed());
        }
        return out;
    }

    private List<Step> shortest(int from, int to) {
        var path = new BFSShortestPath<>(new AsUndirectedGraph<>(graph)).getPath(from, to);
        List<Step> out = new ArrayList<>();
        int bar = from;
        for (Coil c : path.getEdgeList()) {
            int next = other(c, bar);
            out.add(new Step(c, bar, next));
            bar = next;
        }
        return out;
    }

    /**
     * Sets of bars that stand at one potential whatever the shape of the field, as long as it repeats every two pole
     * pitches: between any two bars of a set the coil sides met cancel, slot by corresponding slot. Sets of one bar are
     * left out; each set ascends, sets in order of their lowest bar. These are the equalizer rings.
     *
     * <p>Left out too are bars of coils whose voltages do not cancel on every way round (as with a reversed coil or a
     * dead one missing from the ring): currents circulate there, and no potential is fixed.
     *
     * @return the sets; empty where there are none
     */
    public List<List<Integer>> equipotentialBars() {
        var places = new Places(winding.armature());
        Map<Integer, Tally> tallies = new LinkedHashMap<>();
        Map<Tally, List<Integer>> sets = new LinkedHashMap<>();
        int part = 0;
        for (int start = 1; start <= winding.armature().bars(); start++) {
            if (tallies.containsKey(start)) {
                continue;
            }
            List<Integer> queue = new ArrayList<>(List.of(start));
            tallies.put(start, new Tally(part++, 0, 0));
            for (int i = 0; i < queue.size(); i++) {
                int bar = queue.get(i);
                Tally here = tallies.get(bar);
                for (Coil c : graph.edgesOf(bar)) {
                    int next = other(c, bar);
                    if (!tallies.containsKey(next)) {
                        tallies.put(next, places.after(here, c, c.topBar().getAsInt() == bar));
                        queue.add(next);
                    }
                }
            }
        }
        Set<Integer> unbalanced = new LinkedHashSet<>();
        for (Coil c : graph.edgeSet()) {
            Tally from = tallies.get(c.topBar().getAsInt());
            if (!places.after(from, c, true).equals(tallies.get(c.bottomBar().getAsInt()))) {
                unbalanced.add(from.part());
            }
        }
        tallies.forEach((bar, tally) ->
                sets.computeIfAbsent(tally, t -> new ArrayList<>()).add(bar));
        return sets.entrySet().stream()
                .filter(e -> !unbalanced.contains(e.getKey().part()))
                .map(Map.Entry::getValue)
                .filter(list -> list.size() > 1)
                .map(list -> list.stream().sorted().toList())
                .sorted(Comparator.comparingInt(list -> list.get(0)))
                .toList();
    }

    /** Sum of coil sides met from the first bar of a part on, by their place within a pole pair. */
    private record Tally(int part, long low, long high) {}

    /**
     * A 128-bit weight for each place of a slot within a pole pair, so that equal sums mean equal tallies but for a
     * chance of 2^-128.
     */
    private static final class Places {
        private final Armature armature;
        private final long[] low;
        private final long[] high;

        Places(Armature armature) {
            var random = new SplittableRandom(1);
            this.armature = armature;
            this.low = random.longs(armature.slots()).toArray();
            this.high = random.longs(armature.slots()).toArray();
        }

        /** The tally past a coil, from its top lead to its bottom lead or back. */
        Tally after(Tally here, Coil c, boolean forward) {
            int met = place(forward ? c.top() : c.bottom());
            int left = place(forward ? c.bottom() : c.top());
            return new Tally(here.part(), here.low() + low[met] - low[left], here.high() + high[met] - high[left]);
        }

        private int place(CoilSide side) {
            return side.slot() * armature.polePairs() % armature.slots();
        }
    }
}
