package coilwright.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coilwright.bench.BenchTest.Pair;
import coilwright.bench.GrowlerMeter.Placed;
import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.util.List;
import org.junit.jupiter.api.Test;

class ProbePairsTest {
    private static final Armature SIX = Armature.of(6, 6, 2);

    @Test
    void everyBarWithTheOneSoManyOn() {
        assertThat(ProbePairs.apart(SIX, 2))
                .containsExactly(
                        new Pair(1, 3), new Pair(2, 4), new Pair(3, 5), new Pair(4, 6), new Pair(5, 1), new Pair(6, 2));
        assertThat(ProbePairs.apart(SIX, 1)).endsWith(new Pair(6, 1));
        assertThat(ProbePairs.apart(SIX, 5)).startsWith(new Pair(1, 6), new Pair(2, 1));
        for (int wrong : new int[] {0, 6}) {
            assertThatThrownBy(() -> ProbePairs.apart(SIX, wrong))
                    .hasMessage("pairs %s bars apart were asked for, but with 6 bars they are 1 to 5 apart", wrong);
        }
    }

    @Test
    void barsOfEachCircuit() {
        var duplex = Winding.build(Armature.of(12, 12, 4), WindingSpec.lap(2, Direction.PROGRESSIVE));
        assertThat(ProbePairs.circuits(duplex))
                .containsExactly(List.of(1, 3, 5, 7, 9, 11), List.of(2, 4, 6, 8, 10, 12));
        // The lap and the wave part of a frog-leg winding are one circuit where they share bars.
        var frogLeg = Winding.build(
                Armature.of(12, 12, 4), new WindingSpec.FrogLeg(1, Direction.PROGRESSIVE, CoilSpan.usual(), 0));
        assertThat(ProbePairs.circuits(frogLeg)).containsExactly(List.of(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12));
        var broken = Winding.build(
                Armature.of(6, 6, 2),
                new WindingSpec.Listed(List.of(
                        ListedCoil.of(1, 1, 4, 6, 2), ListedCoil.of(2, 2, 5, 3, 5), ListedCoil.of(3, 3, 6, 5, 3))));
        assertThat(ProbePairs.circuits(broken)).containsExactly(List.of(2, 6), List.of(3, 5));
    }

    @Test
    void neighboursWithinACircuit() {
        assertThat(ProbePairs.neighbours(List.of(2, 4, 5)))
                .containsExactly(new Pair(2, 4), new Pair(4, 5), new Pair(5, 2));
        assertThat(ProbePairs.neighbours(List.of(7))).isEmpty();
    }

    /** Bars 60° apart, the middle between bars 6 and 1 at −30°. */
    @Test
    void whereAPairStands() {
        List<PairReading> readings =
                List.of(new PairReading(1, 2, 5), new PairReading(6, 1, 7), new PairReading(3, 2, 1));
        assertThat(ProbePairs.placed(SIX, readings, 15))
                .extracting(Placed::clockDegrees)
                .containsExactly(45.0, 345.0, 105.0);
        assertThat(ProbePairs.placed(SIX, readings, 15))
                .extracting(Placed::reading)
                .isEqualTo(readings);
        // Straight up is 0°, not a whole turn.
        assertThat(ProbePairs.placed(SIX, readings, 30 - 1e-12).get(1).clockDegrees())
                .isZero();
        assertThat(GrowlerMeter.middle(SIX, 1, 2)).isEqualTo(30);
        assertThat(GrowlerMeter.middle(SIX, 2, 1)).isEqualTo(30);
        assertThat(GrowlerMeter.middle(SIX, 6, 2)).isEqualTo(360);
        assertThat(GrowlerMeter.middle(SIX, 2, 6)).isEqualTo(0);
    }

    private static Placed placed(double value) {
        return new Placed(new PairReading(1, 2, value), 0);
    }

    @Test
    void thoseThatReadMost() {
        assertThat(ProbePairs.best(List.of(placed(2), placed(1.9999985), placed(1.999998), placed(1.5), placed(2))))
                .containsExactly(placed(2), placed(1.9999985), placed(1.999998), placed(2));
        assertThat(ProbePairs.best(List.of(placed(2), placed(1.9999979)))).containsExactly(placed(2));
        assertThat(ProbePairs.best(List.of(placed(0), placed(0)))).isEmpty();
        assertThat(ProbePairs.best(List.of())).isEmpty();
    }

    @Test
    void roundingIsTakenForNothing() {
        assertThat(ProbePairs.withoutRounding(List.of(
                        new PairReading(1, 2, -4),
                        new PairReading(2, 3, 3.9e-12),
                        new PairReading(3, 4, -4.1e-12),
                        new PairReading(4, 5, Double.POSITIVE_INFINITY))))
                .containsExactly(
                        new PairReading(1, 2, -4),
                        new PairReading(2, 3, 0),
                        new PairReading(3, 4, -4.1e-12),
                        new PairReading(4, 5, Double.POSITIVE_INFINITY));
    }

    @Test
    void nearAValue() {
        List<PairReading> readings = List.of(
                new PairReading(1, 2, -4),
                new PairReading(2, 3, -3.5),
                new PairReading(3, 4, -4.6),
                new PairReading(4, 5, 4));
        assertThat(ProbePairs.near(readings, -4, 0.125)).containsExactly(readings.get(0), readings.get(1));
        assertThat(ProbePairs.near(readings, -4, 0)).containsExactly(readings.get(0));
        assertThat(new TestRun(new BenchTest.Resistance(), readings).pairs())
                .containsExactly(new Pair(1, 2), new Pair(2, 3), new Pair(3, 4), new Pair(4, 5));
    }
}
