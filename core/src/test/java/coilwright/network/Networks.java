package coilwright.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Tuple;

/** Networks, feeds and changes for the tests. */
final class Networks {
    private Networks() {}

    /** A network with feeds and changes to make to it. */
    record Situation(Network network, List<Feed> feeds, List<Change> changes) {
        Network changed() {
            return network.with(changes);
        }
    }

    /** Bars and coils of a lap winding: each coil joins neighbouring bars. */
    static Network ring(int bars, double ohms) {
        return circulant(bars, 1, ohms);
    }

    /** Each branch joins a node to the one {@code step} further on. */
    static Network circulant(int nodes, int step, double ohms) {
        Network.Builder builder = Network.builder().nodes(nodes);
        for (int k = 0; k < nodes; k++) {
            builder.branch(k, (k + step) % nodes, ohms);
        }
        return builder.build();
    }

    static Arbitrary<Double> ohms() {
        return Arbitraries.doubles().between(-2, 2).ofScale(3).map(e -> Math.pow(10, e));
    }

    static Arbitrary<Double> volts() {
        return Arbitraries.frequencyOf(
                Tuple.of(3, Arbitraries.just(0.0)),
                Tuple.of(2, Arbitraries.doubles().between(-5, 5).ofScale(2)));
    }

    static Arbitrary<Branch> branch(int nodes) {
        Arbitrary<Integer> node = Arbitraries.integers().between(0, nodes - 1);
        Arbitrary<Branch> ordinary =
                Combinators.combine(node, node, ohms(), volts()).as(Branch::new);
        Arbitrary<Branch> link = Combinators.combine(node, node).as((a, b) -> new Branch(a, b, 0, 0));
        Arbitrary<Branch> open =
                Combinators.combine(node, node, volts()).as((a, b, v) -> new Branch(a, b, Double.POSITIVE_INFINITY, v));
        return Arbitraries.frequencyOf(Tuple.of(8, ordinary), Tuple.of(1, link), Tuple.of(1, open));
    }

    /** Rings, circulant rings and chains with more branches laid over them, and loose heaps of branches. */
    static Arbitrary<Network> networks() {
        Arbitrary<Integer> nodes = Arbitraries.integers().between(2, 14);
        return nodes.flatMap(n -> Combinators.combine(
                        Arbitraries.integers().between(0, 3),
                        Arbitraries.integers().between(1, Math.max(1, n - 1)),
                        ohms().list().ofSize(n),
                        volts().list().ofSize(n),
                        branch(n).list().ofMinSize(0).ofMaxSize(n))
                .as((shape, step, ohms, volts, more) -> {
                    Network.Builder builder = Network.builder().nodes(n);
                    for (int k = 0; k < n; k++) {
                        if (shape == 1 || shape == 2) {
                            int to = (k + (shape == 1 ? 1 : step)) % n;
                            builder.branch(k, to, ohms.get(k), volts.get(k));
                        } else if (shape == 3 && k + 1 < n) {
                            builder.branch(k, k + 1, ohms.get(k), volts.get(k));
                        }
                    }
                    more.forEach(builder::branch);
                    return builder.build();
                }));
    }

    static Arbitrary<Feed> feed(int nodes) {
        Arbitrary<Double> size = Arbitraries.doubles().between(-9, 9).ofScale(1);
        return Combinators.combine(
                        Arbitraries.integers().between(0, nodes - 1),
                        Arbitraries.integers().between(1, nodes - 1),
                        size,
                        Arbitraries.frequency(Tuple.of(2, false), Tuple.of(1, true)))
                .as((a, d, value, voltage) -> {
                    int b = (a + d) % nodes;
                    return voltage ? Feed.voltage(a, b, value) : Feed.current(a, b, value);
                });
    }

    static Arbitrary<Change> change(Network network) {
        int n = network.nodeCount();
        Arbitrary<Change> addition = branch(n).map(Change.Addition::new);
        if (network.branchCount() == 0) {
            return addition;
        }
        Arbitrary<Integer> which = Arbitraries.integers().between(0, network.branchCount() - 1);
        Arbitrary<Change> resistance = Combinators.combine(which, ohms()).as(Change::resistance);
        Arbitrary<Change> shorted = which.map(e -> Change.resistance(e, 0));
        Arbitrary<Change> removal = which.map(Change::removed);
        Arbitrary<Change> emf = Combinators.combine(which, volts()).as(Change::emf);
        return Arbitraries.frequencyOf(
                Tuple.of(3, addition),
                Tuple.of(3, resistance),
                Tuple.of(1, shorted),
                Tuple.of(4, removal),
                Tuple.of(2, emf));
    }

    /** A network, feeds and changes; the feeds need not be satisfiable. */
    static Arbitrary<Situation> situations() {
        return networks()
                .flatMap(network -> Combinators.combine(
                                feed(network.nodeCount()).list().ofMinSize(0).ofMaxSize(3),
                                change(network).list().ofMinSize(1).ofMaxSize(4))
                        .as((feeds, changes) -> new Situation(network, feeds, legal(network, changes))));
    }

    /** Leaves out the changes that would put a source into a link. */
    private static List<Change> legal(Network network, List<Change> changes) {
        List<Change> kept = new ArrayList<>();
        for (Change change : changes) {
            Network now = network.with(kept);
            boolean sourceInLink = (change instanceof Change.Resistance r
                            && r.ohms() == 0
                            && now.branch(r.branch()).emf() != 0)
                    || (change instanceof Change.Emf e
                            && e.volts() != 0
                            && now.branch(e.branch()).isLink());
            if (!sourceInLink) {
                kept.add(change);
            }
        }
        return kept;
    }

    /** A network from plain random numbers, for comparisons made outside property tests. */
    static Network random(Random random) {
        int n = 3 + random.nextInt(40);
        Network.Builder builder = Network.builder().nodes(n);
        int step = 1 + random.nextInt(n - 1);
        for (int k = 0; k < n; k++) {
            if (random.nextInt(12) > 0) {
                builder.branch(k, (k + step) % n, ohms(random), random.nextInt(3) == 0 ? random.nextGaussian() : 0);
            }
        }
        for (int i = random.nextInt(n); i > 0; i--) {
            int a = random.nextInt(n);
            int b = random.nextInt(n);
            if (random.nextInt(4) == 0) {
                builder.link(a, b);
            } else {
                builder.branch(a, b, ohms(random), 0);
            }
        }
        return builder.build();
    }

    private static double ohms(Random random) {
        return Math.pow(10, random.nextDouble() * 4 - 2);
    }
}
