package coilwright.bench;

import coilwright.network.Branch;
import coilwright.network.Network;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;

/**
 * An armature as a network: bars first (bar b is node b − 1), then the shaft, then places inside coils. Each coil is
 * one branch, or several in series where something is joined to places along it.
 */
public final class BenchNetwork {
    /** Places along a coil that are nearer than this share of its wire are one: they differ by rounding. */
    private static final double ONE_PLACE = 1e-9;

    private final BenchArmature armature;
    private final Network network;
    private final Map<Point, Integer> nodes;
    private final List<Segment> segments;

    /**
     * A stretch of one coil's wire.
     *
     * @param coil number of the coil
     * @param branch number of the branch in the network, from its top lead to its bottom lead
     * @param share of the coil's turns, over 0 to 1
     */
    public record Segment(int coil, int branch, double share) {}

    private BenchNetwork(BenchArmature armature, Network network, Map<Point, Integer> nodes, List<Segment> segments) {
        this.armature = armature;
        this.network = network;
        this.nodes = nodes;
        this.segments = List.copyOf(segments);
    }

    /**
     * {@return the network with no voltage in any coil}
     *
     * @param armature the armature as it is on the bench
     */
    public static BenchNetwork of(BenchArmature armature) {
        return of(armature, coil -> 0);
    }

    /**
     * {@return the network with a voltage in every coil}
     *
     * @param armature the armature as it is on the bench
     * @param coilVolts voltage of a sound coil in the place of each, from its top side's lead to its bottom side's
     */
    public static BenchNetwork of(BenchArmature armature, ToDoubleFunction<CoilState> coilVolts) {
        return new Maker(armature, coilVolts).make();
    }

    /** {@return the armature it was made from} */
    public BenchArmature armature() {
        return armature;
    }

    /** {@return the network} */
    public Network network() {
        return network;
    }

    /**
     * {@return the stretches of all coils with both leads on bars or something joined inside them, coil by coil from
     * top to bottom lead}
     */
    public List<Segment> segments() {
        return segments;
    }

    /**
     * {@return node of a bar}
     *
     * @param bar its number
     */
    public static int node(int bar) {
        return bar - 1;
    }

    /** {@return node of the shaft} */
    public int shaftNode() {
        return armature.winding().armature().bars();
    }

    /**
     * {@return node of a place}
     *
     * @param point bar, shaft or place within a coil
     * @throws IllegalArgumentException where nothing is joined to that place
     */
    public int node(Point point) {
        Integer node = nodes.get(point);
        if (node == null) {
            throw new IllegalArgumentException("nothing is joined to " + point);
        }
        return node;
    }

    private static final class Maker {
        private final BenchArmature armature;
        private final ToDoubleFunction<CoilState> coilVolts;
        private final Network.Builder builder = Network.builder();
        private final Map<Point, Integer> nodes = new LinkedHashMap<>();
        private final List<Segment> segments = new ArrayList<>();

        Maker(BenchArmature armature, ToDoubleFunction<CoilState> coilVolts) {
            this.armature = armature;
            this.coilVolts = coilVolts;
        }

        BenchNetwork make() {
            int bars = armature.winding().armature().bars();
            for (int bar = 1; bar <= bars; bar++) {
                nodes.put(Point.bar(bar), builder.node("bar " + bar));
            }
            nodes.put(Point.shaft(), builder.node("shaft"));
            Map<Integer, SortedSet<Double>> taps = new LinkedHashMap<>();
            for (Bond b : armature.bonds()) {
                tap(taps, b.a());
                tap(taps, b.b());
            }
            for (CoilState c : armature.coils()) {
                SortedSet<Double> places = taps.getOrDefault(c.coil(), new TreeSet<>());
                if (c.connected() || !places.isEmpty()) {
                    coil(c, places);
                }
            }
            for (Bond b : armature.bonds()) {
                builder.branch(nodes.get(b.a()), nodes.get(b.b()), b.ohms());
            }
            return new BenchNetwork(armature, builder.build(), nodes, segments);
        }

        private static void tap(Map<Integer, SortedSet<Double>> taps, Point point) {
            if (point instanceof Point.Inside inside) {
                taps.computeIfAbsent(inside.coil(), x -> new TreeSet<>()).add(inside.fraction());
            }
        }

        /** A broken coil is broken in its middle. */
        private void coil(CoilState c, SortedSet<Double> places) {
            double volts = coilVolts.applyAsDouble(c) * c.turns();
            double wire = c.open() ? armature.soundOhms() * c.turns() : c.ohms();
            int here = end(c.topBar(), "coil " + c.coil() + " top lead");
            double done = 0;
            boolean broken = false;
            List<Double> stops = new ArrayList<>(places);
            stops.add(1.0);
            for (double stop : stops) {
                if (done > 0 && stop < 1 && stop - done < ONE_PLACE) {
                    nodes.put(new Point.Inside(c.coil(), stop), here);
                    continue;
                }
                int next = stop == 1.0
                        ? end(c.bottomBar(), "coil " + c.coil() + " bottom lead")
                        : builder.node("coil " + c.coil() + " at " + stop);
                if (stop < 1) {
                    nodes.put(new Point.Inside(c.coil(), stop), next);
                }
                double share = stop - done;
                double ohms = wire * share + (done == 0 ? c.jointOhms() : 0);
                if (c.open() && !broken && stop >= 0.5) {
                    ohms = Double.POSITIVE_INFINITY;
                    broken = true;
                }
                // The source drives current towards the top lead, so that the top lead is the higher one.
                segments.add(
                        new Segment(c.coil(), builder.branch(new Branch(here, next, ohms, -volts * share)), share));
                here = next;
                done = stop;
            }
        }

        private int end(OptionalInt bar, String label) {
            return bar.isPresent() ? BenchNetwork.node(bar.getAsInt()) : builder.node(label);
        }
    }
}
