package coilwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

/** Small networks that can be worked out in the head. */
class NetworkTest {
    private static final double CLOSE = 1e-14;

    @Test
    void dividerDividesInProportion() {
        Network.Builder builder = Network.builder();
        int top = builder.node("top");
        int tap = builder.node("tap");
        int foot = builder.node("foot");
        int upper = builder.branch(top, tap, 30);
        builder.branch(tap, foot, 10);
        Network network = builder.build();
        Solution solution = network.solve(Feed.voltage(top, foot, 8));
        assertThat(solution.voltage(tap, foot)).hasValueCloseTo(2.0, within(CLOSE));
        assertThat(solution.current(upper)).isCloseTo(0.2, within(CLOSE));
        assertThat(solution.feedCurrent(0)).isCloseTo(0.2, within(CLOSE));
        assertThat(network.node("tap")).hasValue(tap);
        assertThat(network.node("top of the tap")).isEmpty();
        assertThat(network.label(foot)).isEqualTo("foot");
        assertThat(builder.node("tap")).isEqualTo(tap);
    }

    @Test
    void positiveSourceRaisesTheFarEnd() {
        Network.Builder builder = Network.builder().nodes(3);
        int open = builder.branch(0, 1, 2, 6);
        assertThat(builder.build().solve().voltage(1, 0)).hasValueCloseTo(6.0, within(CLOSE));
        int load = builder.branch(1, 0, 4);
        builder.branch(1, 2, 5);
        Solution solution = builder.build().solve();
        assertThat(solution.current(open)).isCloseTo(1, within(CLOSE));
        assertThat(solution.current(load)).isCloseTo(1, within(CLOSE));
        assertThat(solution.voltage(1, 0)).hasValueCloseTo(4.0, within(CLOSE));
        assertThat(solution.voltage(2, 0)).hasValueCloseTo(4.0, within(CLOSE));
    }

    @Test
    void currentFeedEntersAtItsFirstNode() {
        Network network = Networks.ring(8, 0.5);
        Solution solution = network.solve(Feed.current(0, 4, 2));
        assertThat(solution.voltage(0, 4)).hasValueCloseTo(2.0, within(CLOSE));
        assertThat(solution.current(0)).isCloseTo(1, within(CLOSE));
        assertThat(solution.current(7)).isCloseTo(-1, within(CLOSE));
        assertThat(solution.voltage(0)).isZero();
        assertThat(solution.voltage(4)).isCloseTo(-2, within(CLOSE));
    }

    @Test
    void branchFromANodeToItselfCarriesItsOwnCurrent() {
        Network.Builder builder = Network.builder().nodes(2);
        int loop = builder.branch(1, 1, 4, 2);
        builder.branch(0, 1, 3);
        Solution solution = builder.build().solve(Feed.current(0, 1, 1));
        assertThat(solution.current(loop)).isEqualTo(0.5);
        assertThat(solution.voltage(0, 1)).hasValueCloseTo(3.0, within(CLOSE));
        assertThat(solution.residual()).isLessThan(CLOSE);
    }

    @Test
    void shortedCoilUnderALinkKeepsItsCurrent() {
        Network.Builder builder = Network.builder().nodes(3);
        int coil = builder.branch(0, 1, 0.5, 3);
        int link = builder.link(0, 1);
        builder.branch(1, 2, 1);
        Solution solution = builder.build().solve();
        assertThat(solution.voltage(0, 1)).hasValue(0);
        assertThat(solution.current(coil)).isEqualTo(6);
        assertThat(solution.current(link)).isCloseTo(-6, within(CLOSE));
        assertThat(solution.currentIsCertain(link)).isTrue();
    }

    @Test
    void partsFloat() {
        Network.Builder builder = Network.builder().nodes(6);
        builder.branch(0, 2, 1);
        builder.branch(1, 3, 1, 5);
        int open = builder.branch(0, 1, Double.POSITIVE_INFINITY, 9);
        Network network = builder.build();
        Factorisation factorised = network.factorised();
        assertThat(factorised.partCount()).isEqualTo(4);
        assertThat(factorised.connected(0, 1)).isFalse();
        assertThat(factorised.resistance(0, 1)).isEmpty();
        assertThat(factorised.resistance(4, 4)).hasValue(0);
        Solution solution = factorised.solve();
        assertThat(solution.voltage(0, 1)).isEmpty();
        assertThat(solution.voltage(4, 5)).isEmpty();
        assertThat(solution.voltage(3, 1)).hasValueCloseTo(5.0, within(CLOSE));
        assertThat(solution.current(open)).isZero();
        assertThat(solution.reference(3)).isEqualTo(1);
    }

    @Test
    void currentCannotBeDrivenBetweenParts() {
        Network network = Network.builder().nodes(2).build();
        assertThatThrownBy(() -> network.solve(Feed.current(0, 1, 2)))
                .isInstanceOf(UnsolvableNetworkException.class)
                .hasMessage("feed of 2.0 A in at node 0 and out at node 1: nothing joins these nodes; "
                        + "feed two nodes of one part");
        assertThat(network.solve(Feed.current(0, 1, 0)).voltage(0, 1)).isEmpty();
    }

    @Test
    void voltageFeedJoinsPartsAndCarriesNothing() {
        Network.Builder builder = Network.builder().nodes(4);
        builder.branch(0, 1, 1);
        builder.branch(2, 3, 1);
        Solution solution = builder.build().solve(Feed.voltage(1, 2, 7));
        assertThat(solution.voltage(0, 3)).hasValueCloseTo(7.0, within(CLOSE));
        assertThat(solution.feedCurrent(0)).isCloseTo(0, within(CLOSE));
    }

    @Test
    void twoCurrentFeedsMayCrossBetweenPartsWhenTheyBalance() {
        Network.Builder builder = Network.builder().nodes(4);
        builder.branch(0, 1, 1);
        builder.branch(2, 3, 1);
        Solution solution = builder.build().solve(Feed.current(0, 2, 3), Feed.current(3, 1, 3));
        assertThat(solution.voltage(0, 1)).hasValueCloseTo(3.0, within(CLOSE));
        assertThat(solution.voltage(2, 3)).hasValueCloseTo(-3.0, within(CLOSE));
        assertThat(solution.voltage(0, 3)).isEmpty();
    }

    @Test
    void voltageFeedOverALinkIsRefused() {
        Network.Builder builder = Network.builder().nodes(3);
        builder.link(0, 1);
        builder.branch(1, 2, 1);
        Network network = builder.build();
        assertThatThrownBy(() -> network.solve(Feed.voltage(0, 1, 2)))
                .isInstanceOf(UnsolvableNetworkException.class)
                .hasMessage("feed of 2.0 V at nodes 0 and 1: links or other voltage feeds already tie these nodes; "
                        + "take one of the ties away or feed a current");
        assertThatThrownBy(() -> network.solve(Feed.voltage(0, 2, 2), Feed.voltage(1, 2, 2)))
                .isInstanceOf(UnsolvableNetworkException.class);
    }

    @Test
    void linksCarryWhatIsLeftToThem() {
        // A star of three links; currents through them follow from what is fed at the tips.
        Network.Builder builder = Network.builder().nodes(4);
        int a = builder.link(0, 1);
        int b = builder.link(0, 2);
        int c = builder.link(3, 0);
        Solution solution = builder.build().solve(Feed.current(1, 2, 5), Feed.current(1, 3, 2));
        assertThat(solution.current(a)).isCloseTo(-7, within(CLOSE));
        assertThat(solution.current(b)).isCloseTo(5, within(CLOSE));
        assertThat(solution.current(c)).isCloseTo(-2, within(CLOSE));
        assertThat(solution.currentIsCertain(a)).isTrue();
    }

    @Test
    void ringOfLinksSharesLikeEqualResistances() {
        Network.Builder builder = Network.builder().nodes(3);
        int straight = builder.link(0, 1);
        int round = builder.link(1, 2);
        builder.link(2, 0);
        int self = builder.link(2, 2);
        Solution solution = builder.build().solve(Feed.current(0, 1, 3));
        assertThat(solution.current(straight)).isCloseTo(2, within(CLOSE));
        assertThat(solution.current(round)).isCloseTo(-1, within(CLOSE));
        assertThat(solution.current(self)).isZero();
        assertThat(solution.currentIsCertain(straight)).isFalse();
        assertThat(solution.currentIsCertain(self)).isFalse();
        assertThat(solution.residual()).isLessThan(CLOSE);
    }

    @Test
    void bridgesAreTheBranchesThatNothingDoubles() {
        Network.Builder builder = Network.builder().nodes(6);
        int tail = builder.branch(0, 1, 1);
        int one = builder.branch(1, 2, 1);
        int twin = builder.branch(1, 2, 1);
        int beside = builder.branch(2, 3, 1);
        int link = builder.link(2, 3);
        int lone = builder.link(3, 4);
        int loop = builder.branch(4, 4, 1);
        int open = builder.branch(4, 5, Double.POSITIVE_INFINITY);
        Factorisation factorised = builder.build().factorised();
        assertThat(List.of(tail, one, twin, beside, link, lone, loop, open))
                .extracting(factorised::isBridge)
                .containsExactly(true, false, false, false, false, true, false, false);
    }

    @Test
    void emptyNetworkHasNothingToSolve() {
        Network network = Network.builder().build();
        assertThat(network.factorised().partCount()).isZero();
        assertThat(network.solve().residual()).isZero();
    }

    @Test
    void whatIsLeftOverAtANodeIsTheResidual() {
        Network network = Networks.ring(2, 2);
        // 3 V over two branches of 2 ohm are 3 A, of which 1 A is fed.
        var wrong = new Solution(
                network, List.of(Feed.current(0, 1, 1)), new double[] {1}, new double[] {3, 0}, new int[] {0, 0});
        assertThat(wrong.residual()).isCloseTo(2, within(CLOSE));
        assertThat(wrong.currentIsCertain(0)).isTrue();
    }

    @Test
    void placesThatAreNotThereAreNamed() {
        Solution solution = Networks.ring(3, 1).solve();
        for (ThrowingCallable question : List.<ThrowingCallable>of(
                () -> solution.voltage(3),
                () -> solution.voltage(3, 0),
                () -> solution.voltage(0, 3),
                () -> solution.reference(3))) {
            assertThatThrownBy(question).hasMessage("no node 3: the network has nodes 0 to 2");
        }
        Factorisation factorised = Networks.ring(3, 1).factorised();
        for (ThrowingCallable question : List.<ThrowingCallable>of(
                () -> solution.currentIsCertain(3), () -> factorised.isBridge(3), () -> solution.current(3))) {
            assertThatThrownBy(question).hasMessage("no branch 3: the network has branches 0 to 2");
        }
        Network empty = Network.builder().build();
        assertThatThrownBy(() -> empty.solve().voltage(0)).hasMessage("no node 0: the network has none");
        assertThatThrownBy(() -> empty.solve().current(0)).hasMessage("no branch 0: the network has none");
    }

    @Test
    void resistancesHaveARange() {
        assertThat(new Branch(0, 1, 1e-30, 0).isLink()).isFalse();
        assertThat(new Branch(0, 1, 1e30, 0).isOpen()).isFalse();
        assertThatThrownBy(() -> new Branch(0, 1, 9e-31, 0)).hasMessageStartingWith("branch from node 0 to node 1 has");
        assertThatThrownBy(() -> new Branch(0, 1, 2e30, 0)).hasMessageStartingWith("branch from node 0 to node 1 has");
        assertThatThrownBy(() -> new Branch(1, -1, 1, 0))
                .hasMessage("branch from node 1 to node -1: nodes are numbered from 0");
        assertThatThrownBy(() -> Feed.current(1, -1, 1))
                .hasMessage("feed at nodes 1 and -1: nodes are numbered from 0");
        Network.Builder builder = Network.builder().nodes(2);
        assertThat(builder.branch(0, 1, 1, 2)).isZero();
        assertThat(builder.branch(0, 1, 1, 2)).isEqualTo(1);
    }

    @Test
    void mistakesAreNamed() {
        assertThatThrownBy(() -> new Branch(0, 1, -2, 0))
                .hasMessage("branch from node 0 to node 1 has -2.0 ohm: "
                        + "give 1e-30 to 1e30, 0 for a link or infinity for an open branch");
        assertThatThrownBy(() -> new Branch(0, 1, Double.NaN, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Branch(0, 1, 1, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Branch(-1, 1, 1, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Branch(3, 4, 0, 5))
                .hasMessage("branch from node 3 to node 4 has a source of 5.0 V and no resistance: "
                        + "give it a resistance, or feed the two nodes with a voltage");
        assertThatThrownBy(() -> Feed.current(2, 2, 1)).hasMessage("feed in and out at node 2: a feed needs two nodes");
        assertThatThrownBy(() -> Feed.voltage(0, 1, Double.POSITIVE_INFINITY))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Network.builder().nodes(2).branch(0, 2, 1))
                .hasMessageContaining("there are 2 nodes, numbered from 0");
        Network network = Networks.ring(3, 1);
        assertThatThrownBy(() -> network.solve(Feed.current(0, 3, 1)))
                .hasMessage("no node 3: the network has nodes 0 to 2");
        assertThatThrownBy(() -> network.solve().current(3)).hasMessage("no branch 3: the network has branches 0 to 2");
    }
}
