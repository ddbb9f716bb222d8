package coilwright.network;

import java.util.Arrays;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.sparse.csc.misc.TriangularSolver_DSCC;

/**
 * The Cholesky factor of a grounded network's conductance matrix, found by taking out one node after another.
 *
 * <p>Taking out a node replaces its star of conductances g<sub>i</sub> by the mesh g<sub>i</sub> g<sub>j</sub> /
 * Σ g. A column of the factor is the star scaled by the root of Σ g. Written in conductances, and with each pivot
 * formed as a sum over the star, the work contains no subtraction at all, so every entry of the factor is good to a few
 * units in the last place however widely the conductances range. (The same sums are subtracted from a stored diagonal in
 * the textbook form of the factorisation, which loses a weakly tied part beside a strongly tied one.) The node with the
 * fewest neighbours goes first, which keeps the factor of a ring or of a chain as sparse as the network.
 */
final class StarMesh {
    private final int[] order;
    private final DMatrixSparseCSC factor;

    private StarMesh(int[] order, DMatrixSparseCSC factor) {
        this.order = order;
        this.factor = factor;
    }

    /**
     * Factorises.
     *
     * @param grounded which nodes are held at zero volts; each part needs at least one
     * @param a one end of each branch
     * @param b other end
     * @param g conductance of each branch; zero leaves it out
     */
    static StarMesh of(boolean[] grounded, int[] a, int[] b, double[] g) {
        return new Elimination(grounded, a, b, g).run();
    }

    /**
     * Replaces currents fed into the nodes by the voltages they cause.
     *
     * @param x in: amperes, out: volts; zero at the grounded nodes
     * @param work room for as many numbers as there are nodes
     */
    void solve(double[] x, double[] work) {
        int n = order.length;
        for (int i = 0; i < n; i++) {
            work[i] = x[order[i]];
        }
        Arrays.fill(x, 0);
        TriangularSolver_DSCC.solveL(factor, work);
        TriangularSolver_DSCC.solveTranL(factor, work);
        for (int i = 0; i < n; i++) {
            x[order[i]] = work[i];
        }
    }

    int nonZeros() {
        return factor.nz_length;
    }

    private static final class Elimination {
        private final int n;
        private final boolean[] grounded;
        private final int[][] neighbours;
        private final double[][] conductances;
        private final int[] degree;
        private final double[] toGround;
        /** Where a node stands in the list under the hand, plus one; zero when it does not. */
        private final int[] place;

        private final int[] head;
        private final int[] next;
        private final int[] previous;

        private Elimination(boolean[] grounded, int[] a, int[] b, double[] g) {
            this.n = grounded.length;
            this.grounded = grounded;
            neighbours = new int[n][4];
            conductances = new double[n][4];
            degree = new int[n];
            toGround = new double[n];
            place = new int[n];
            head = new int[n + 1];
            next = new int[n];
            previous = new int[n];
            for (int e = 0; e < a.length; e++) {
                if (a[e] == b[e] || g[e] == 0) {
                    continue;
                }
                if (grounded[a[e]]) {
                    toGround[b[e]] += g[e];
                } else if (grounded[b[e]]) {
                    toGround[a[e]] += g[e];
                } else {
                    append(a[e], b[e], g[e]);
                    append(b[e], a[e], g[e]);
                }
            }
            for (int v = 0; v < n; v++) {
                mergeParallel(v);
            }
        }

        private StarMesh run() {
            Arrays.fill(head, -1);
            int size = 0;
            for (int v = n - 1; v >= 0; v--) {
                if (!grounded[v]) {
                    enter(v);
                    size++;
                }
            }
            int[] order = new int[size];
            int[] position = new int[n];
            int length = 0;
            int least = 0;
            for (int k = 0; k < size; k++) {
                while (head[least] < 0) {
                    least++;
                }
                int v = head[least];
                leave(v);
                order[k] = v;
                position[v] = k;
                length += degree[v] + 1;
                eliminate(v);
                least = Math.max(0, least - 1);
            }
            DMatrixSparseCSC factor = new DMatrixSparseCSC(size, size, length);
            int at = 0;
            for (int k = 0; k < size; k++) {
                int v = order[k];
                double sum = toGround[v];
                for (int i = 0; i < degree[v]; i++) {
                    sum += conductances[v][i];
                }
                double root = Math.sqrt(sum);
                factor.nz_rows[at] = k;
                factor.nz_values[at++] = root;
                for (int i = 0; i < degree[v]; i++) {
                    factor.nz_rows[at] = position[neighbours[v][i]];
                    factor.nz_values[at++] = -conductances[v][i] / root;
                }
                factor.col_idx[k + 1] = at;
            }
            factor.nz_length = at;
            return new StarMesh(order, factor);
        }

        private void eliminate(int v) {
            int[] star = neighbours[v];
            double[] g = conductances[v];
            int points = degree[v];
            double sum = toGround[v];
            for (int i = 0; i < points; i++) {
                sum += g[i];
            }
            for (int i = 0; i < points; i++) {
                int u = star[i];
                double share = g[i] / sum;
                leave(u);
                for (int p = 0; p < degree[u]; p++) {
                    place[neighbours[u][p]] = p + 1;
                }
                int gone = place[v] - 1;
                int last = --degree[u];
                place[v] = 0;
                if (gone != last) {
                    neighbours[u][gone] = neighbours[u][last];
                    conductances[u][gone] = conductances[u][last];
                    place[neighbours[u][gone]] = gone + 1;
                }
                for (int j = 0; j < points; j++) {
                    if (j == i) {
                        continue;
                    }
                    int w = star[j];
                    if (place[w] > 0) {
                        conductances[u][place[w] - 1] += share * g[j];
                    } else {
                        append(u, w, share * g[j]);
                        place[w] = degree[u];
                    }
                }
                toGround[u] += share * toGround[v];
                for (int p = 0; p < degree[u]; p++) {
                    place[neighbours[u][p]] = 0;
                }
                enter(u);
            }
        }

        private void append(int v, int to, double g) {
            int d = degree[v];
            if (d == neighbours[v].length) {
                neighbours[v] = Arrays.copyOf(neighbours[v], 2 * d);
                conductances[v] = Arrays.copyOf(conductances[v], 2 * d);
            }
            neighbours[v][d] = to;
            conductances[v][d] = g;
            degree[v] = d + 1;
        }

        private void mergeParallel(int v) {
            int kept = 0;
            for (int p = 0; p < degree[v]; p++) {
                int to = neighbours[v][p];
                if (place[to] > 0) {
                    conductances[v][place[to] - 1] += conductances[v][p];
                } else {
                    neighbours[v][kept] = to;
                    conductances[v][kept] = conductances[v][p];
                    place[to] = ++kept;
                }
            }
            degree[v] = kept;
            for (int p = 0; p < kept; p++) {
                place[neighbours[v][p]] = 0;
            }
        }

        private void enter(int v) {
            int d = degree[v];
            next[v] = head[d];
            previous[v] = -1;
            if (head[d] >= 0) {
                previous[head[d]] = v;
            }
            head[d] = v;
        }

        private void leave(int v) {
            if (previous[v] >= 0) {
                next[previous[v]] = next[v];
            } else {
                head[degree[v]] = next[v];
            }
            if (next[v] >= 0) {
                previous[next[v]] = previous[v];
            }
        }
    }
}
