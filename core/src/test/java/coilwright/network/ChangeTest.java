package coilwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.network.Networks.Situation;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

/** Changed networks solved from the unchanged one's factor, against a dense solution of the changed network. */
class ChangeTest {
    @Provide
    Arbitrary<Situation> situations() {
        return Networks.situations();
    }

    @Property(tries = 2000, edgeCases = EdgeCasesMode.NONE)
    void modifiedNetworkAgreesWithDenseSolution(@ForAll("situations") Situation s) {
        Modified modified = s.network().factorised().with(s.changes());
        if (!DenseOracle.solvable(s.changed(), s.feeds())) {
            assertThatThrownBy(() -> modified.solve(s.feeds()))
                    .isInstanceOf(UnsolvableNetworkException.class)
                    .hasMessageContaining("feed of");
            return;
        }
        Solution solution = modified.solve(s.feeds());
        double drive = Compare.drive(s.network(), s.feeds()) + Compare.drive(s.changed(), s.feeds());
        Compare.same(solution, DenseOracle.solve(s.changed(), s.feeds()), drive);
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void trialsAgreeWithDenseSolution(@ForAll("situations") Situation s) {
        int n = s.network().nodeCount();
        List<Reading> readings = new ArrayList<>();
        List<List<Feed>> sets = new ArrayList<>(List.of(s.feeds(), List.of()));
        for (Feed feed : s.feeds()) {
            sets.add(List.of(feed));
        }
        for (int a = 0; a < n; a++) {
            for (List<Feed> feeds : sets) {
                readings.add(new Reading(feeds, a, (a * 5 + 1) % n));
            }
        }
        Trial trial = s.network().factorised().prepare(readings).trial();
        // A trial must not remember the one before it.
        trial.add(0, 1, 2.5).read(new double[readings.size()]);
        apply(s, trial.clear());
        double[] out = new double[readings.size()];
        trial.read(out);
        for (List<Feed> feeds : sets) {
            boolean solvable = DenseOracle.solvable(s.changed(), feeds);
            DenseOracle dense = solvable ? DenseOracle.solve(s.changed(), feeds) : null;
            for (int i = 0; i < out.length; i++) {
                Reading reading = readings.get(i);
                if (!reading.feeds().equals(feeds)) {
                    continue;
                }
                OptionalDouble expected =
                        dense == null ? OptionalDouble.empty() : dense.voltage(reading.from(), reading.to());
                OptionalDouble found = Double.isNaN(out[i]) ? OptionalDouble.empty() : OptionalDouble.of(out[i]);
                Compare.same(
                        found,
                        expected,
                        dense == null ? 0 : dense.greatest(),
                        Compare.drive(s.network(), feeds) + Compare.drive(s.changed(), feeds));
            }
        }
    }

    private static void apply(Situation s, Trial trial) {
        Network changed = s.changed();
        for (Change change : s.changes()) {
            int branch = change instanceof Change.Resistance r
                    ? r.branch()
                    : change instanceof Change.Emf e ? e.branch() : Integer.MAX_VALUE;
            if (branch < s.network().branchCount()) {
                Branch to = changed.branch(branch);
                trial.alter(branch, to.resistance(), to.emf());
            }
        }
        for (int e = s.network().branchCount(); e < changed.branchCount(); e++) {
            Branch added = changed.branch(e);
            trial.add(added.from(), added.to(), added.resistance(), added.emf());
        }
    }

    @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
    void modifiedResistanceAgreesWithAFreshFactor(@ForAll("situations") Situation s) {
        Modified modified = s.network().factorised().with(s.changes());
        Factorisation fresh = s.changed().factorised();
        for (int a = 0; a < s.network().nodeCount(); a++) {
            for (int b = 0; b < s.network().nodeCount(); b++) {
                OptionalDouble expected = fresh.resistance(a, b);
                Compare.same(modified.resistance(a, b), expected, expected.orElse(0), 0);
            }
        }
    }

    @Test
    void twoOpensPartARingWithoutANewFactorisation() {
        Network ring = Networks.ring(40, 0.02);
        Modified modified = ring.factorised().with(Change.removed(9), Change.removed(29));
        Solution solution = modified.solve(Feed.current(12, 20, 3));
        assertThat(modified.refactorised()).isFalse();
        assertThat(solution.voltage(12, 20).orElseThrow()).isCloseTo(8 * 0.02 * 3, within(1e-12));
        assertThat(solution.voltage(10, 12).orElseThrow()).isCloseTo(0, within(1e-14));
        assertThat(solution.voltage(9, 10)).isEmpty();
        assertThat(solution.reference(10)).isEqualTo(10);
        assertThat(solution.reference(30)).isEqualTo(0);
        assertThat(solution.current(9)).isZero();
        assertThatThrownBy(() -> modified.solve(Feed.current(9, 10, 3)))
                .isInstanceOf(UnsolvableNetworkException.class)
                .hasMessage("feed of 3.0 A in at node 9 and out at node 10: nothing joins these nodes; "
                        + "feed two nodes of one part");
    }

    @Test
    void voltageFeedAcrossTheBreakShowsItWhole() {
        Network ring = Networks.ring(40, 0.02);
        Modified modified = ring.factorised().with(Change.removed(9), Change.removed(29));
        Solution solution = modified.solve(Feed.voltage(0, 20, 6));
        assertThat(modified.refactorised()).isFalse();
        assertThat(solution.feedCurrent(0)).isCloseTo(0, within(1e-12));
        assertThat(solution.voltage(9, 10).orElseThrow()).isCloseTo(6, within(1e-12));
    }

    @Test
    void linkJoinsPartsWithoutANewFactorisation() {
        Network.Builder builder = Network.builder().nodes(6);
        builder.branch(0, 1, 1);
        builder.branch(1, 2, 2);
        builder.branch(3, 4, 3);
        builder.branch(4, 5, 4);
        Factorisation factorised = builder.build().factorised();
        assertThat(factorised.partCount()).isEqualTo(2);
        Modified once = factorised.with(Change.linked(2, 3));
        assertThat(once.resistance(0, 5)).hasValueCloseTo(10.0, within(1e-12));
        Modified twice = factorised.with(Change.linked(2, 3), Change.linked(0, 5));
        // 3 ohm and 7 ohm side by side
        assertThat(twice.resistance(0, 3)).hasValueCloseTo(2.1, within(1e-12));
        assertThat(twice.resistance(2, 3)).hasValue(0);
        Solution solution = twice.solve(Feed.current(0, 2, 1));
        assertThat(solution.voltage(2, 3)).hasValue(0);
        assertThat(solution.current(4)).isCloseTo(-0.3, within(1e-12));
        assertThat(once.refactorised()).isFalse();
        assertThat(twice.refactorised()).isFalse();
    }

    @Test
    void openedLinkIsAsIfNeverThere() {
        Network.Builder builder = Network.builder().nodes(4);
        for (int k = 0; k < 4; k++) {
            builder.branch(k, (k + 1) % 4, 1);
        }
        int equalizer = builder.link(0, 2);
        Factorisation factorised = builder.build().factorised();
        assertThat(factorised.resistance(0, 1)).hasValueCloseTo(0.5, within(1e-15));
        assertThat(factorised.isBridge(equalizer)).isFalse();
        Modified opened = factorised.with(Change.removed(equalizer));
        assertThat(opened.resistance(0, 1)).hasValueCloseTo(0.75, within(1e-15));
        assertThat(opened.resistance(0, 2)).hasValueCloseTo(1.0, within(1e-15));
    }

    @Test
    void weakTieLeftByARemovalKeepsItsDigits() {
        Network.Builder builder = Network.builder().nodes(3);
        builder.branch(0, 1, 1e-3);
        int strong = builder.branch(1, 2, 1e-3);
        builder.branch(1, 2, 1e6 / 3);
        Factorisation factorised = builder.build().factorised();
        Modified modified = factorised.with(Change.removed(strong));
        double r = modified.resistance(0, 2).orElseThrow();
        assertThat(r).isCloseTo(1e-3 + 1e6 / 3, within(1e-9));
        assertThat(modified.refactorised()).isTrue();
        Trial trial = factorised
                .prepare(List.of(new Reading(List.of(Feed.current(0, 2, 1)), 1, 2)))
                .trial();
        double[] out = new double[1];
        trial.remove(strong).read(out);
        assertThat(trial.refactorised()).isTrue();
        assertThat(out[0]).isCloseTo(1e6 / 3, within(1e-9));
    }

    @Test
    void aSolutionInDoubtIsWorkedOutAnew() {
        Network.Builder builder = Network.builder().nodes(2);
        builder.branch(0, 1, 3e6);
        Modified strong = builder.build().factorised().with(Change.added(0, 1, 1.3e-3));
        double expected = 2.7 / (1 / 1.3e-3 + 1 / 3e6);
        assertThat(strong.refactorised()).isFalse();
        assertThat(strong.solve(Feed.current(0, 1, 2.7)).voltage(0, 1))
                .hasValueCloseTo(expected, within(1e-14 * expected));
        assertThat(strong.refactorised()).isTrue();
        // What is known anew is not worked out a third time, and stays right.
        assertThat(strong.solve(Feed.current(1, 0, 2.7)).voltage(1, 0))
                .hasValueCloseTo(expected, within(1e-14 * expected));
        Modified resistance = builder.build().factorised().with(Change.added(0, 1, 1.3e-3));
        assertThat(resistance.resistance(0, 1)).hasValueCloseTo(expected / 2.7, within(1e-14 * expected));
        assertThat(resistance.refactorised()).isTrue();
    }

    /** The same, where the strong tie joins parts that were apart. */
    @Test
    void aReadingInDoubtAcrossPartsIsWorkedOutAnew() {
        assertStrongTieKeepsItsDigits(3, trial -> trial.add(1, 2, 5));
    }

    @Test
    void everySingleFaultOfALargeRingIsAnUpdate() {
        int bars = 500;
        Network ring = Networks.ring(bars, 0.01);
        List<Feed> feed = List.of(Feed.current(0, 250, 5));
        List<Reading> readings = new ArrayList<>();
        for (int k = 0; k < bars; k++) {
            readings.add(new Reading(feed, k, (k + 1) % bars));
        }
        Trial trial = ring.factorised().prepare(readings).trial();
        double[] out = new double[bars];
        for (int k = 0; k < bars; k++) {
            trial.clear().remove(k).read(out);
            assertThat(trial.refactorised()).isFalse();
            // All the current takes the other half; the open coil shows the whole drop of it.
            assertThat(out[k]).isCloseTo((k < 250 ? 1 : -1) * 250 * 0.01 * 5, within(1e-9));
            assertThat(out[(k + 250) % bars]).isCloseTo((k < 250 ? -1 : 1) * 0.05, within(1e-11));
            trial.clear().add(k, (k + 1) % bars, 0).read(out);
            assertThat(trial.refactorised()).isFalse();
            assertThat(out[k]).isZero();
        }
    }

    @Test
    void linksThatCloseARingOfLinksNeedNoNewFactorisation() {
        Network ring = Networks.ring(9, 1);
        Modified modified = ring.factorised().with(Change.linked(0, 3), Change.linked(3, 6), Change.linked(6, 0));
        assertThat(modified.resistance(0, 1)).hasValueCloseTo(2.0 / 3, within(1e-14));
        assertThat(modified.resistance(0, 6)).hasValue(0);
        assertThat(modified.refactorised()).isFalse();
    }

    @Test
    void twoLinksOfARingOfLinksOpened() {
        Network.Builder builder = Network.builder().nodes(3);
        builder.branch(0, 1, 1);
        builder.branch(1, 2, 2);
        int one = builder.link(0, 1);
        int other = builder.link(1, 2);
        builder.link(2, 0);
        Factorisation factorised = builder.build().factorised();
        assertThat(factorised.with(Change.removed(one)).resistance(0, 1)).hasValue(0);
        // Two resistances side by side once node 1 hangs by them alone.
        assertThat(factorised.with(Change.removed(one), Change.removed(other)).resistance(0, 1))
                .hasValueCloseTo(2.0 / 3, within(1e-15));
    }

    @Test
    void strongTieOverAFedWeakOneKeepsItsDigits() {
        assertStrongTieKeepsItsDigits(2, trial -> trial);
    }

    /** A weak tie is fed, a strong one laid beside it, and more changed besides. */
    private static void assertStrongTieKeepsItsDigits(int nodes, UnaryOperator<Trial> more) {
        Network.Builder builder = Network.builder().nodes(nodes);
        builder.branch(0, 1, 3e6);
        Trial trial = builder.build()
                .factorised()
                .prepare(List.of(new Reading(List.of(Feed.current(0, 1, 2.7)), 0, 1)))
                .trial();
        double[] out = new double[1];
        more.apply(trial.add(0, 1, 1.3e-3)).read(out);
        double expected = 2.7 / (1 / 1.3e-3 + 1 / 3e6);
        assertThat(out[0]).isCloseTo(expected, within(1e-14 * expected));
        assertThat(trial.refactorised()).isTrue();
    }

    /** Twenty changes of each kind at once, more than there is room for at first. */
    @Test
    void manyChangesAtOnce() {
        Network ring = Networks.ring(80, 0.5);
        List<Change> changes = new ArrayList<>();
        for (int k = 0; k < 20; k++) {
            changes.add(Change.resistance(k, 0.1 + 0.05 * k));
            changes.add(Change.emf(20 + k, 0.1 * (k - 9)));
            changes.add(Change.added(k, 79 - k, 2.0 + k));
            changes.add(Change.linked(40 + k, 79 - k));
        }
        List<Feed> feeds = List.of(Feed.current(3, 41, 2), Feed.voltage(0, 25, 1.5));
        Network changed = ring.with(changes);
        Modified modified = ring.factorised().with(changes);
        assertThat(modified.network().branches()).isEqualTo(changed.branches());
        Solution solution = modified.solve(feeds);
        assertThat(modified.refactorised()).isFalse();
        assertThat(solution.feeds()).isEqualTo(feeds);
        Compare.same(solution, DenseOracle.solve(changed, feeds), Compare.drive(changed, feeds));
        for (int k = 0; k < 80; k += 7) {
            OptionalDouble expected = changed.factorised().resistance(k, 2);
            Compare.same(modified.resistance(k, 2), expected, expected.orElseThrow(), 0);
        }
    }

    @Test
    void sourcesAloneAreTriedOneByOne() {
        Network ring = Networks.ring(12, 0.5);
        List<Reading> readings = new ArrayList<>();
        for (int k = 0; k < 12; k++) {
            readings.add(new Reading(List.of(), k, (k + 1) % 12));
        }
        Trial trial = ring.factorised().prepare(readings).trial();
        double[] out = new double[12];
        for (int k = 0; k < 7; k++) {
            trial.emf(k, 6);
        }
        trial.resistance(3, 0.25).emf(2, 0).emf(3, 12).read(out);
        assertThat(trial.refactorised()).isFalse();
        Network changed = ring.with(trial.changes());
        assertThat(changed.branch(3)).isEqualTo(new Branch(3, 4, 0.25, 12));
        // 5 · 6 V and 12 V drive 42/5.75 A through 11 coils of half an ohm and one of a quarter.
        double amperes = 42 / 5.75;
        assertThat(out[0]).isCloseTo(0.5 * amperes - 6, within(1e-12));
        assertThat(out[2]).isCloseTo(0.5 * amperes, within(1e-12));
        assertThat(out[3]).isCloseTo(0.25 * amperes - 12, within(1e-12));
        assertThat(out[11]).isCloseTo(0.5 * amperes, within(1e-12));
    }

    @Test
    void changesOfATrialCanBeMadeInTheirOrder() {
        Network.Builder builder = Network.builder().nodes(3);
        int coil = builder.branch(0, 1, 2, 5);
        builder.branch(1, 2, 1);
        builder.branch(2, 0, 1);
        int link = builder.link(0, 2);
        Network network = builder.build();
        Trial trial = network.factorised().prepare(List.of()).trial();
        // Neither a link with a source nor one that is given a source comes in between.
        trial.alter(coil, 0, 0).alter(link, 4, 3).add(1, 2, 7, 1);
        Network changed = network.with(trial.changes());
        assertThat(changed.branch(coil)).isEqualTo(new Branch(0, 1, 0, 0));
        assertThat(changed.branch(link)).isEqualTo(new Branch(0, 2, 4, 3));
        assertThat(changed.branch(4)).isEqualTo(new Branch(1, 2, 7, 1));
        assertThat(trial.clear().changes()).isEmpty();
    }

    @Test
    void anOpenBranchIsClosedWithItsSource() {
        Network.Builder builder = Network.builder().nodes(2);
        builder.branch(0, 1, 3);
        int open = builder.branch(0, 1, Double.POSITIVE_INFINITY, 8);
        Factorisation factorised = builder.build().factorised();
        Solution closed = factorised.with(Change.resistance(open, 1)).solve();
        assertThat(closed.voltage(1, 0)).hasValueCloseTo(6.0, within(1e-14));
        assertThat(factorised.with(Change.removed(open)).solve().voltage(1, 0)).hasValue(0);
    }

    @Test
    void aBranchOnOneNodeChangesNothingElse() {
        Network.Builder builder = Network.builder().nodes(3);
        builder.branch(0, 1, 1);
        int loop = builder.branch(1, 1, 2, 4);
        int link = builder.link(1, 2);
        int shorted = builder.branch(1, 2, 5);
        Factorisation factorised = builder.build().factorised();
        Modified modified = factorised.with(
                Change.resistance(loop, 8),
                Change.resistance(shorted, 1),
                Change.added(2, 1, 3),
                Change.emf(shorted, 2));
        Solution solution = modified.solve(Feed.current(0, 2, 1));
        assertThat(solution.voltage(0, 2)).hasValueCloseTo(1.0, within(1e-14));
        assertThat(solution.current(loop)).isEqualTo(0.5);
        assertThat(solution.current(shorted)).isEqualTo(2);
        assertThat(solution.current(link)).isCloseTo(-1, within(1e-14));
        assertThat(modified.refactorised()).isFalse();
    }

    /** Readings that float, or that no feed can make, are told so without a new factorisation. */
    @Test
    void whatCannotBeReadIsToldAtOnce() {
        Network.Builder builder = Network.builder().nodes(4);
        int bridge = builder.branch(0, 1, 1);
        builder.branch(2, 3, 1);
        Trial trial = builder.build()
                .factorised()
                .prepare(List.of(
                        new Reading(List.of(), 0, 2),
                        new Reading(List.of(Feed.current(0, 1, 1)), 0, 1),
                        new Reading(List.of(Feed.current(2, 3, 1)), 2, 3)))
                .trial();
        double[] out = new double[4];
        out[3] = 77;
        trial.resistance(bridge, 5).read(out);
        assertThat(out).containsExactly(Double.NaN, 5, 1, 77);
        assertThat(trial.refactorised()).isFalse();
        trial.clear().remove(bridge).read(out);
        assertThat(out).containsExactly(Double.NaN, Double.NaN, 1, 77);
        assertThat(trial.refactorised()).isFalse();
    }

    /** Readings of two feeds, one of which needs a new factorisation that the other cannot be fed in. */
    @Test
    void whatCannotBeReadAfterwardsIsToldToo() {
        Network.Builder builder = Network.builder().nodes(4);
        int link = builder.link(0, 1);
        builder.branch(1, 2, 1);
        int bridge = builder.branch(2, 3, 1);
        Trial trial = builder.build()
                .factorised()
                .prepare(List.of(
                        new Reading(List.of(Feed.current(1, 2, 1)), 1, 2),
                        new Reading(List.of(Feed.current(0, 3, 1)), 0, 3)))
                .trial();
        double[] out = new double[2];
        trial.resistance(link, 4).remove(bridge).read(out);
        assertThat(out).containsExactly(1, Double.NaN);
        assertThat(trial.refactorised()).isTrue();
    }

    @Test
    void trialsAreChecked() {
        Trial trial = Networks.ring(4, 1)
                .factorised()
                .prepare(List.of(new Reading(List.of(), 0, 1)))
                .trial();
        String noBranch = "no branch 4: the network has branches 0 to 3";
        assertThatThrownBy(() -> trial.alter(4, 1, 0)).hasMessage(noBranch);
        assertThatThrownBy(() -> trial.resistance(4, 1)).hasMessage(noBranch);
        assertThatThrownBy(() -> trial.emf(4, 1)).hasMessage(noBranch);
        assertThatThrownBy(() -> trial.remove(4)).hasMessage(noBranch);
        assertThatThrownBy(() -> trial.add(0, 4, 1)).hasMessage("no node 4: the network has nodes 0 to 3");
        assertThatThrownBy(() -> trial.add(4, 0, 1)).hasMessage("no node 4: the network has nodes 0 to 3");
        assertThatThrownBy(() -> trial.read(new double[0]))
                .hasMessage("room for 0 values: the 1 readings need as many");
    }

    @Test
    void changesAreChecked() {
        Factorisation factorised = Networks.ring(4, 1).factorised();
        assertThatThrownBy(() -> factorised.with(Change.removed(4)))
                .hasMessage("no branch 4: the network has branches 0 to 3");
        assertThatThrownBy(() -> factorised.with(Change.linked(0, 7)))
                .hasMessage("no node 7: the network has nodes 0 to 3");
        assertThatThrownBy(() -> factorised.with(Change.linked(7, 0)))
                .hasMessage("no node 7: the network has nodes 0 to 3");
        assertThatThrownBy(() -> factorised.with(Change.emf(4, 1)))
                .hasMessage("no branch 4: the network has branches 0 to 3");
        assertThatThrownBy(() -> factorised.with(Change.resistance(0, -1)))
                .hasMessageContaining("give 1e-30 to 1e30, 0 for a link or infinity for an open branch");
    }
}
