package coilwright.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.hipparchus.fraction.BigFraction;
import org.hipparchus.fraction.BigFractionField;
import org.hipparchus.linear.Array2DRowFieldMatrix;
import org.hipparchus.linear.ArrayFieldVector;
import org.hipparchus.linear.FieldLUDecomposition;
import org.junit.jupiter.api.Test;

/** The factor stays sparse, and keeps its digits beside very weak and very strong ties. */
class StarMeshTest {
    @Test
    void factorOfARingHasThreeEntriesAColumnAtMost() {
        for (int step : new int[] {1, 3, 7, 249}) {
            Factorisation factorised = Networks.circulant(500, step, 0.02).factorised();
            assertThat(factorised.partCount()).isEqualTo(1);
            assertThat(factorised.factorSize()).isBetween(499 + 498, 3 * 500);
        }
    }

    @Test
    void factorOfAnEqualizedLapStaysSparse() {
        // Four poles, an equalizer of little resistance from every fifth bar to the one half way round.
        Network.Builder builder = Network.builder().nodes(500);
        for (int k = 0; k < 500; k++) {
            builder.branch(k, (k + 1) % 500, 0.02);
        }
        for (int k = 0; k < 250; k += 5) {
            builder.branch(k, k + 250, 0.001);
        }
        assertThat(builder.build().factorised().factorSize()).isLessThan(5 * 500);
    }

    @Test
    void voltagesAreGoodToTheLastDigitsBesideWeakTies() {
        Random random = new Random(7);
        for (int run = 0; run < 40; run++) {
            // Two rings of milliohms, tied to one another and to a shaft by megohms.
            int n = 13;
            Network.Builder builder = Network.builder().nodes(n);
            for (int k = 0; k < 6; k++) {
                builder.branch(k, (k + 1) % 6, 1e-3 * (1 + random.nextInt(9)));
                builder.branch(6 + k, 6 + (k + 1) % 6, 1e-3 * (1 + random.nextInt(9)));
            }
            builder.branch(random.nextInt(6), 6 + random.nextInt(6), 1e6 * (1 + random.nextInt(9)));
            builder.branch(random.nextInt(12), 12, 1e7);
            builder.branch(random.nextInt(12), 12, 3e6);
            Network network = builder.build();
            Solution solution = network.solve(Feed.current(7, 10, 4));
            double[] exact = exact(network, 7, 10, 4);
            for (int k = 0; k < 6; k++) {
                int p = 6 + k;
                int q = 6 + (k + 1) % 6;
                double expected = exact[p] - exact[q];
                double size = Math.abs(exact[7] - exact[10]);
                Compare.close(solution.voltage(p, q).orElseThrow(), expected, 1e-12 * size);
            }
        }
    }

    /** Node voltages over node 7 in exact fractions, rounded once at the end. */
    private static double[] exact(Network network, int in, int out, int amperes) {
        int n = network.nodeCount();
        Array2DRowFieldMatrix<BigFraction> m = new Array2DRowFieldMatrix<>(BigFractionField.getInstance(), n, n);
        for (Branch branch : network.branches()) {
            BigFraction g = new BigFraction(branch.resistance()).reciprocal();
            int p = branch.from();
            int q = branch.to();
            for (int[] at : List.of(new int[] {p, p}, new int[] {q, q})) {
                m.addToEntry(at[0], at[1], g);
            }
            m.addToEntry(p, q, g.negate());
            m.addToEntry(q, p, g.negate());
        }
        ArrayFieldVector<BigFraction> right = new ArrayFieldVector<>(BigFractionField.getInstance(), n);
        right.setEntry(in, new BigFraction(amperes));
        right.setEntry(out, new BigFraction(-amperes));
        for (int v = 0; v < n; v++) {
            m.setEntry(in, v, v == in ? BigFraction.ONE : BigFraction.ZERO);
        }
        right.setEntry(in, BigFraction.ZERO);
        BigFraction[] x = new FieldLUDecomposition<>(m).getSolver().solve(right).toArray();
        double[] voltages = new double[n];
        for (int v = 0; v < n; v++) {
            voltages[v] = x[v].doubleValue();
        }
        return voltages;
    }
}
