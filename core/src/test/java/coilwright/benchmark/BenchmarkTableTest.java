package coilwright.benchmark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coilwright.network.Feed;
import coilwright.network.Network;
import coilwright.network.Solution;
import java.lang.reflect.Field;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.IntToDoubleFunction;
import org.ejml.data.DMatrixRMaj;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;

/** The table of benchmarks, with times that are made up. */
class BenchmarkTableTest {
    private static SortedMap<Integer, Measured> times(IntToDoubleFunction nanos, int... sizes) {
        SortedMap<Integer, Measured> out = new TreeMap<>();
        for (int size : sizes) {
            double t = nanos.applyAsDouble(size);
            out.put(size, new Measured(t, t / 10));
        }
        return out;
    }

    @Test
    void middleOfTimesLeavesOutliersAlone() {
        assertThat(Measured.middle(new double[] {9000, 3, 1, 7, 5})).isEqualTo(new Measured(5, 2));
        assertThat(Measured.middle(new double[] {4, 2})).isEqualTo(new Measured(3, 1));
        assertThat(Measured.middle(new double[] {4})).isEqualTo(new Measured(4, 0));
    }

    @Test
    void exponentOfAPowerIsThatPower() {
        assertThat(Compared.exponent(times(n -> 3.5 * Math.pow(n, 1.7), 125, 250, 500)))
                .hasValueCloseTo(1.7, within(1e-12));
        assertThat(Compared.exponent(times(n -> 40, 10, 17, 400, 1000))).hasValueCloseTo(0.0, within(1e-12));
        assertThat(Compared.exponent(times(n -> 1e6 / n, 2, 3, 4))).hasValueCloseTo(-1.0, within(1e-12));
    }

    @Test
    void exponentIsFittedByLeastSquares() {
        // Log time 0, 0, 3 over log size 0, 1, 2 (to the base of 2): slope (3 - 0) / 2.
        assertThat(Compared.exponent(times(n -> n == 4 ? 8 : 1, 1, 2, 4))).hasValueCloseTo(1.5, within(1e-12));
    }

    @Test
    void noExponentFromTwoSizes() {
        assertThat(Compared.exponent(times(n -> n, 125, 250))).isEmpty();
    }

    @Test
    void baselineMustHaveTheSameSizes() {
        assertThatThrownBy(() -> new Compared("walk", "bars", times(n -> n, 1, 2, 3), "floor", times(n -> n, 1, 2)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("walk was measured at [1, 2, 3], but its baseline at [1, 2]");
    }

    @Test
    void tableShowsTimesRatiosAndGrowth() {
        var walk = new Compared(
                "drop walk",
                "bars",
                times(n -> 4.0 * n * n, 50, 500, 5000),
                "solver",
                times(n -> 3000.0 * n, 50, 500, 5000));
        var empty = new Compared(
                "help", "", times(n -> 2.5e9, 1), "nothing", new TreeMap<>(Map.of(1, new Measured(2e7, 500))));
        assertThat(ResultTable.text(List.of(walk, empty))).isEqualTo("""
                        measured        size                time  against                time   ratio  growth
                        drop walk    50 bars    10.00 +- 1.00 us  solver   150.00 +- 15.00 us  0.0667
                        drop walk   500 bars     1.00 +- 0.10 ms  solver      1.50 +- 0.15 ms   0.667
                        drop walk  5000 bars  100.00 +- 10.00 ms  solver     15.00 +- 1.50 ms    6.67    2.00
                        help               -     2.50 +- 0.25  s  nothing    20.00 +- 0.00 ms     125
                        """);
    }

    @Test
    void everyLineNamesABenchmarkAndABaselineOfThreeSizes() throws ReflectiveOperationException {
        for (Comparison c : BenchmarkTable.COMPARISONS) {
            for (String method : List.of(c.method(), c.floor())) {
                assertThat(c.type().getMethod(method).isAnnotationPresent(Benchmark.class))
                        .as(c.type() + " " + method)
                        .isTrue();
            }
            List<Field> sizes = Arrays.stream(c.type().getFields())
                    .filter(f -> f.isAnnotationPresent(Param.class))
                    .toList();
            assertThat(sizes).as(c.what()).hasSize(1);
            assertThat(sizes.get(0).getAnnotation(Param.class).value()).hasSizeGreaterThanOrEqualTo(3);
        }
    }

    @Test
    void generalSolverAgreesWithTheNetwork() {
        Network ring = DropWalkBenchmark.ring(9, 0.012);
        Solution own = ring.factorised().solve(Feed.current(0, 4, 5));
        DMatrixRMaj general = new GeneralSolver(ring).factorise().solve(0, 4, 5);
        for (int k = 0; k < 9; k++) {
            int next = (k + 1) % 9;
            assertThat(GeneralSolver.between(general, k, next))
                    .isCloseTo(own.voltage(k, next).orElseThrow(), within(1e-12));
        }
    }
}
