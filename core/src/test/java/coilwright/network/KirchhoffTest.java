package coilwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.network.Networks.Situation;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Laws that every solution obeys, and agreement with a dense solution. */
class KirchhoffTest {
    @Provide
    Arbitrary<Situation> situations() {
        return Networks.situations();
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void currentsBalanceAtEachNode(@ForAll("situations") Situation s) {
        Assume.that(DenseOracle.solvable(s.network(), s.feeds()));
        Solution solution = s.network().solve(s.feeds().toArray(Feed[]::new));
        double[] sum = new double[s.network().nodeCount()];
        double size = 0;
        for (int e = 0; e < s.network().branchCount(); e++) {
            Branch branch = s.network().branch(e);
            double i = solution.current(e);
            size = Math.max(size, Math.abs(i));
            sum[branch.from()] += i;
            sum[branch.to()] -= i;
            if (!branch.isLink() && !branch.isOpen()) {
                // A current is the difference of voltages that may be far larger than itself.
                double voltage =
                        Math.max(Math.abs(solution.voltage(branch.from())), Math.abs(solution.voltage(branch.to())));
                size = Math.max(size, 1e-3 * (voltage + Math.abs(branch.emf())) / branch.resistance());
            }
        }
        for (int f = 0; f < s.feeds().size(); f++) {
            sum[s.feeds().get(f).in()] -= solution.feedCurrent(f);
            sum[s.feeds().get(f).out()] += solution.feedCurrent(f);
            size = Math.max(size, Math.abs(solution.feedCurrent(f)));
        }
        // No resistance here is below a hundredth of an ohm.
        double rounding = 1e3 * 1e-14 * Compare.drive(s.network(), s.feeds());
        for (double left : sum) {
            Compare.close(left, 0, 1e-10 * size + rounding);
        }
        assertThat(solution.residual()).isLessThanOrEqualTo(1e-10 * size + rounding);
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void voltagesSumToZeroRoundEachLoop(@ForAll("situations") Situation s) {
        Assume.that(DenseOracle.solvable(s.network(), s.feeds()));
        Network network = s.network();
        Solution solution = network.solve(s.feeds().toArray(Feed[]::new));
        // Climb a tree by resistance times current less source, then close it by each branch left over.
        int n = network.nodeCount();
        double[] climbed = new double[n];
        boolean[] reached = new boolean[n];
        boolean[] inTree = new boolean[network.branchCount()];
        double size = 0;
        for (int root = 0; root < n; root++) {
            if (reached[root]) {
                continue;
            }
            reached[root] = true;
            for (boolean grew = true; grew; ) {
                grew = false;
                for (int e = 0; e < network.branchCount(); e++) {
                    Branch b = network.branch(e);
                    if (b.isOpen() || reached[b.from()] == reached[b.to()]) {
                        continue;
                    }
                    double drop = drop(b, solution.current(e));
                    if (reached[b.from()]) {
                        climbed[b.to()] = climbed[b.from()] - drop;
                    } else {
                        climbed[b.from()] = climbed[b.to()] + drop;
                    }
                    reached[b.from()] = true;
                    reached[b.to()] = true;
                    inTree[e] = true;
                    grew = true;
                }
            }
        }
        for (double v : climbed) {
            size = Math.max(size, Math.abs(v));
        }
        double rounding = 1e-11 * size + 1e-13 * Compare.drive(network, s.feeds());
        for (int e = 0; e < network.branchCount(); e++) {
            Branch b = network.branch(e);
            if (!b.isOpen() && !inTree[e]) {
                double drop = drop(b, solution.current(e));
                Compare.close(climbed[b.from()] - climbed[b.to()], drop, rounding);
            }
        }
        for (Feed feed : s.feeds()) {
            if (feed instanceof Feed.Voltage voltage) {
                Compare.close(solution.voltage(feed.in(), feed.out()).orElseThrow(), voltage.volts(), rounding);
            }
        }
    }

    private static double drop(Branch branch, double current) {
        return branch.isLink() ? 0 : branch.resistance() * current - branch.emf();
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void agreesWithDenseSolution(@ForAll("situations") Situation s) {
        if (!DenseOracle.solvable(s.network(), s.feeds())) {
            assertThatThrownBy(() -> s.network().solve(s.feeds().toArray(Feed[]::new)))
                    .isInstanceOf(UnsolvableNetworkException.class)
                    .hasMessageContaining("feed of");
            return;
        }
        Solution solution = s.network().solve(s.feeds().toArray(Feed[]::new));
        Compare.same(solution, DenseOracle.solve(s.network(), s.feeds()));
    }

    @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
    void transferResistanceIsReciprocal(@ForAll("situations") Situation s) {
        Factorisation factorised = quiet(s.network()).factorised();
        int n = s.network().nodeCount();
        for (int a = 1; a < n; a++) {
            for (int c = 1; c < n; c++) {
                if (!factorised.connected(0, a) || !factorised.connected(0, c)) {
                    continue;
                }
                double one =
                        factorised.solve(Feed.current(0, a, 1)).voltage(0, c).orElseThrow();
                double other =
                        factorised.solve(Feed.current(0, c, 1)).voltage(0, a).orElseThrow();
                double size = Math.sqrt(factorised.resistance(0, a).orElseThrow()
                        * factorised.resistance(0, c).orElseThrow());
                Compare.close(one, other, 1e-11 * size);
            }
        }
    }

    @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
    void feedsAndSourcesSuperpose(@ForAll("situations") Situation s) {
        List<Feed> currents = new ArrayList<>();
        Factorisation factorised = s.network().factorised();
        for (Feed feed : s.feeds()) {
            if (feed instanceof Feed.Current && factorised.connected(feed.in(), feed.out())) {
                currents.add(feed);
            }
        }
        Solution all = factorised.solve(currents);
        Factorisation quiet = quiet(s.network()).factorised();
        List<Solution> shares = new ArrayList<>();
        shares.add(factorised.solve());
        currents.forEach(feed -> shares.add(quiet.solve(feed)));
        for (int v = 0; v < s.network().nodeCount(); v++) {
            double sum = 0;
            double size = 0;
            for (Solution share : shares) {
                sum += share.voltage(v);
                size += Math.abs(share.voltage(v));
            }
            assertThat(all.voltage(v)).isCloseTo(sum, within(1e-10 * size + 1e-12));
        }
    }

    @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
    void resistanceIsThatOfOneAmpere(@ForAll("situations") Situation s) {
        Network quiet = quiet(s.network());
        Factorisation factorised = s.network().factorised();
        for (int a = 0; a < quiet.nodeCount(); a++) {
            for (int b = 0; b < quiet.nodeCount(); b++) {
                OptionalDouble r = factorised.resistance(a, b);
                assertThat(r.isPresent()).isEqualTo(factorised.connected(a, b));
                if (a != b && r.isPresent()) {
                    List<Feed> ampere = List.of(Feed.current(a, b, 1));
                    DenseOracle dense = DenseOracle.solve(quiet, ampere);
                    assertThat(r.getAsDouble())
                            .isCloseTo(dense.voltage(a, b).orElseThrow(), within(1e-9 * r.getAsDouble() + 1e-13));
                }
            }
        }
    }

    private static Network quiet(Network network) {
        List<Change> changes = new ArrayList<>();
        for (int e = 0; e < network.branchCount(); e++) {
            changes.add(Change.emf(e, 0));
        }
        return network.with(changes);
    }
}
