package coilwright.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.List;
import java.util.OptionalInt;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What an armature on the bench is made of, and what of it is refused. */
class BenchValuesTest {
    private static final Winding LAP = Winding.build(Armature.of(16, 16, 4), WindingSpec.lap(1, Direction.PROGRESSIVE));
    private static final BenchArmature SOUND = BenchArmature.sound(LAP, 2);
    private static final Point SHAFT = Point.shaft();

    private static void refused(String message, ThrowingCallable what) {
        assertThatThrownBy(what).isInstanceOf(IllegalArgumentException.class).hasMessage(message);
    }

    @Test
    void coilsHaveTurnsAndResistance() {
        CoilState coil = SOUND.coil(3);
        assertThat(coil.connected()).isTrue();
        assertThat(coil.open()).isFalse();
        assertThat(coil.broken().open()).isTrue();
        // A coil of 1.5 times the turns, then of 0.75 times.
        assertThat(coil.withTurns(1.5).ohms()).isEqualTo(3);
        assertThat(coil.withTurns(1.5).withTurns(0.75))
                .isEqualTo(new CoilState(3, OptionalInt.of(3), OptionalInt.of(4), 1.5, 0.75, 0));
        assertThat(coil.onBars(OptionalInt.of(3), OptionalInt.empty()).connected())
                .isFalse();
        assertThat(coil.onBars(OptionalInt.empty(), OptionalInt.of(3)).connected())
                .isFalse();
        assertThat(coil.withJoint(0)).isEqualTo(coil);
        for (double wrong : new double[] {0, -1, Double.NaN}) {
            refused(
                    "coil 3 has " + wrong + " ohm, but must have more than 0",
                    () -> new CoilState(3, coil.topBar(), coil.bottomBar(), wrong, 1, 0));
        }
        for (double wrong : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            refused(
                    "coil 3 has " + wrong + " times the turns of a sound coil, but must have more than 0",
                    () -> new CoilState(3, coil.topBar(), coil.bottomBar(), 1, wrong, 0));
        }
        for (double wrong : new double[] {-1, Double.NaN, Double.POSITIVE_INFINITY}) {
            refused("the joint of coil 3 has " + wrong + " ohm, but must have 0 or more", () -> coil.withJoint(wrong));
        }
    }

    @Test
    void placesHaveNames() {
        assertThat(Point.bar(4)).hasToString("bar 4");
        assertThat(new Point.Inside(7, 0.254)).hasToString("coil 7 at 25 %");
        assertThat(SHAFT).hasToString("shaft");
        assertThat(new BenchTest.Pair(3, BenchTest.SHAFT)).hasToString("3-shaft");
        for (double wrong : new double[] {0, 1, -0.1, 1.1, Double.NaN}) {
            refused(
                    "the place along coil 7 is " + wrong + ", but must be over 0 and under 1",
                    () -> new Point.Inside(7, wrong));
        }
    }

    @Test
    void bondsJoinTwoPlacesThatAreThere() {
        assertThat(SOUND.with(Bond.direct(Point.bar(16), SHAFT)).bonds()).hasSize(1);
        refused("bar 4 is joined to itself: name two places", () -> Bond.direct(Point.bar(4), Point.bar(4)));
        for (double wrong : new double[] {-1, Double.NaN, Double.POSITIVE_INFINITY}) {
            refused(
                    "the bond from bar 4 to shaft has " + wrong + " ohm, but must have 0 or more",
                    () -> new Bond(Point.bar(4), SHAFT, wrong));
        }
        for (int wrong : new int[] {0, 17}) {
            String message = "there is no bar " + wrong + ": bars run from 1 to 16";
            refused(message, () -> SOUND.with(Bond.direct(Point.bar(wrong), SHAFT)));
            refused(message, () -> SOUND.with(Bond.direct(SHAFT, Point.bar(wrong))));
        }
        refused(
                "there is no coil 17: coils run from 1 to 16",
                () -> SOUND.with(Bond.direct(new Point.Inside(17, 0.5), SHAFT)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -3, Double.NaN, Double.POSITIVE_INFINITY})
    void suppliesGiveSomething(double wrong) {
        refused("feed current is " + wrong + " A, but must be more than 0", () -> new Supply.Current(wrong));
        refused("feed voltage is " + wrong + " V, but must be more than 0", () -> new Supply.Voltage(wrong));
    }

    @ParameterizedTest
    @CsvSource({"45, 90, 90.1", "30, 60, 60.1", "90, 180, 180.1", "120, 120, 120.1", "150, 60, 60.1"})
    void facesOfAGrowlerDoNotOverlap(double halfGap, double most, double over) {
        assertThat(new Growler(halfGap, most).face()).isEqualTo(most);
        refused(
                "growler face is " + over + "°, but with halfGap " + halfGap + "° it must be over 0° and at most "
                        + most + "°, or the two faces overlap",
                () -> new Growler(halfGap, over));
        assertThatIllegalArgumentException().isThrownBy(() -> new Growler(halfGap, 0));
    }

    @Test
    void nodesOfTheNetwork() {
        Winding oneDead = Winding.build(
                Armature.of(16, 15, 4),
                WindingSpec.lap(1, Direction.PROGRESSIVE).withDeadCoils(List.of(16)));
        BenchNetwork net = BenchNetwork.of(BenchArmature.sound(oneDead, 2));
        // The dead coil, to which nothing is joined, is no part of it.
        assertThat(net.segments()).hasSize(15);
        assertThat(net.node(Point.bar(3))).isEqualTo(2);
        assertThat(net.node(SHAFT)).isEqualTo(net.shaftNode()).isEqualTo(15);
        refused("nothing is joined to coil 2 at 50 %", () -> net.node(new Point.Inside(2, 0.5)));
    }

    /** A coil broken in its middle still has the wire on either side of the break. */
    @Test
    void aGroundInABrokenCoilReadsTheWireUpToIt() {
        CoilState broken = SOUND.coil(5).withTurns(0.5).withJoint(0.3).broken();
        List<Double> ohms =
                GroundTest.barToShaft(SOUND.with(broken).with(Bond.direct(new Point.Inside(5, 0.25), SHAFT)));
        // A quarter of half of 2 ohm, and the joint at the top lead.
        assertThat(ohms.get(5 - 1)).isCloseTo(0.25 + 0.3, within(1e-12));
        // From the bottom lead's bar, 15 whole coils round to the top lead's.
        assertThat(ohms.get(6 - 1)).isCloseTo(15 * 2 + 0.25 + 0.3, within(1e-12));
        BenchArmature whole = SOUND.with(SOUND.coil(5).withJoint(0.3));
        // 2.3 ohm beside 15 coils of 2 ohm.
        assertThat(ResistanceTest.of(whole).between(5, 6).orElseThrow()).isCloseTo(2.3 * 30 / 32.3, within(1e-12));
    }

    @Test
    void potentialsAndTheirDifferences() {
        assertThat(Potentials.difference(List.of(-0.0, 0.0), 1, 2)).isEqualTo(0.0);
        assertThat(Potentials.difference(List.of(1.0, Double.NaN), 1, 2)).isEqualTo(0.0);
        assertThat(Potentials.difference(List.of(1.0, 3.5), 1, 2)).isEqualTo(-2.5);
        assertThat(Potentials.scale(List.of(-3.0, 2.0, Double.NaN, Double.POSITIVE_INFINITY)))
                .isEqualTo(3);
        Potentials.Between meter = (from, to) -> to - from;
        assertThat(Potentials.where(3, meter, 3, -1, 0, false))
                .containsExactly(new PairReading(1, 2, 1), new PairReading(2, 3, 1));
        assertThat(Potentials.where(3, meter, 3, -1, 0, true))
                .containsExactly(new PairReading(2, 1, -1), new PairReading(3, 2, -1));
        assertThat(Potentials.where(3, meter, 3, 1, 1, true)).hasSize(3);
        refused(
                "tolerance is 150.0 %, but must be from 0 % to 100 %",
                () -> Potentials.where(3, meter, 3, 1, 1.5, true));
    }

    @Test
    void feedBarsAreToldWithTheirReason() {
        assertThat(FeedBars.advised(LAP, false))
                .containsExactly(new FeedBars(1, 9, "a simplex lap winding is fed at bar 1 and the bar opposite"));
        assertThat(FeedBars.advised(LAP, true))
                .containsExactly(
                        new FeedBars(1, 5, "a simplex lap winding is fed at bar 1 and the bar a pole pitch away"));
        var twoPoles = Winding.build(Armature.of(12, 12, 2), WindingSpec.lap(1, Direction.PROGRESSIVE));
        assertThat(FeedBars.advised(twoPoles, true)).extracting(FeedBars::out).containsExactly(7);
        var wave = Winding.build(Armature.of(17, 17, 4), WindingSpec.wave(1, Direction.PROGRESSIVE));
        assertThat(FeedBars.advised(wave, false))
                .containsExactly(
                        new FeedBars(1, 5, "a simplex wave winding is fed at bar 1 and the bar a pole pitch away"));
        var duplex = Winding.build(Armature.of(16, 16, 4), WindingSpec.lap(2, Direction.PROGRESSIVE));
        assertThat(FeedBars.advised(duplex, false))
                .containsExactly(
                        new FeedBars(1, 9, "circuit 1 of 2 is fed by itself"),
                        new FeedBars(2, 10, "circuit 2 of 2 is fed by itself"));
        String frogLeg = "a frog-leg winding joins bars two pole pitches apart, so it is fed a pole pitch apart";
        assertThat(FeedBars.advised(frogLeg(1), false)).containsExactly(new FeedBars(1, 7, frogLeg));
        assertThat(FeedBars.advised(frogLeg(2), false))
                .containsExactly(
                        new FeedBars(1, 7, frogLeg + ", each of its 2 parts by itself"),
                        new FeedBars(2, 8, frogLeg + ", each of its 2 parts by itself"));
        for (int[] wrong : new int[][] {{3, 3}, {0, 2}, {2, 0}}) {
            refused(
                    "feed bars are " + wrong[0] + " and " + wrong[1] + ": name two different bars",
                    () -> new FeedBars(wrong[0], wrong[1], "x"));
        }
    }

    @Test
    void listedCircuitsAreFedHalfWayRoundOrFromEndToEnd() {
        var listed = Winding.build(
                Armature.of(8, 9, 2),
                new WindingSpec.Listed(List.of(
                        // A ring of bars 1 to 4, a chain of bars 5 to 7, a coil on bar 8 alone, and bar 9 bare.
                        ListedCoil.of(1, 1, 5, 1, 2),
                        ListedCoil.of(2, 2, 6, 2, 3),
                        ListedCoil.of(3, 3, 7, 3, 4),
                        ListedCoil.of(4, 4, 8, 4, 1),
                        ListedCoil.of(5, 5, 1, 5, 6),
                        ListedCoil.of(6, 6, 2, 6, 7),
                        ListedCoil.of(7, 7, 3, 8, 8))));
        assertThat(FeedBars.advised(listed, false))
                .containsExactly(
                        new FeedBars(1, 3, "half way round the circuit of bar 1"),
                        new FeedBars(5, 7, "from end to end of the coils joined to bar 5"));
    }

    private static Winding frogLeg(int plex) {
        return Winding.build(
                Armature.of(24, 24, 4), new WindingSpec.FrogLeg(plex, Direction.PROGRESSIVE, CoilSpan.usual(), 0));
    }
}
