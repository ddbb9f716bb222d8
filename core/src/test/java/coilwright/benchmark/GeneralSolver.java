package coilwright.benchmark;

import coilwright.network.Branch;
import coilwright.network.Network;
import org.ejml.data.DMatrixRMaj;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.data.DMatrixSparseTriplet;
import org.ejml.interfaces.linsol.LinearSolverSparse;
import org.ejml.ops.DConvertMatrixStruct;
import org.ejml.sparse.FillReducing;
import org.ejml.sparse.csc.factory.LinearSolverFactory_DSCC;

/**
 * A network solved by EJML's sparse Cholesky factorisation, for comparison. Its order of elimination is the order of
 * the nodes, the best there is for a ring.
 */
final class GeneralSolver {
    private final DMatrixSparseCSC matrix;
    private final LinearSolverSparse<DMatrixSparseCSC, DMatrixRMaj> solver =
            LinearSolverFactory_DSCC.cholesky(FillReducing.NONE);

    /** Sets up the conductance matrix of a network, with the last node grounded. */
    GeneralSolver(Network network) {
        int n = network.nodeCount() - 1;
        DMatrixSparseTriplet triplets = new DMatrixSparseTriplet(n, n, 4 * n + 4);
        for (Branch branch : network.branches()) {
            double g = 1 / branch.resistance();
            int p = branch.from();
            int q = branch.to();
            if (p < n) {
                triplets.addItem(p, p, g);
            }
            if (q < n) {
                triplets.addItem(q, q, g);
            }
            if (p < n && q < n) {
                triplets.addItem(p, q, -g);
                triplets.addItem(q, p, -g);
            }
        }
        DMatrixSparseCSC m = DConvertMatrixStruct.convert(triplets, (DMatrixSparseCSC) null);
        m.sortIndices(null);
        // Entries for the same place add up.
        DMatrixSparseCSC sum = new DMatrixSparseCSC(n, n, m.nz_length);
        int at = 0;
        for (int c = 0; c < n; c++) {
            for (int i = m.col_idx[c]; i < m.col_idx[c + 1]; i++) {
                if (at > sum.col_idx[c] && sum.nz_rows[at - 1] == m.nz_rows[i]) {
                    sum.nz_values[at - 1] += m.nz_values[i];
                } else {
                    sum.nz_rows[at] = m.nz_rows[i];
                    sum.nz_values[at++] = m.nz_values[i];
                }
            }
            sum.col_idx[c + 1] = at;
        }
        sum.nz_length = at;
        matrix = sum;
    }

    /** Factorises the matrix anew. */
    GeneralSolver factorise() {
        if (!solver.setA(matrix.copy())) {
            throw new IllegalStateException("singular");
        }
        return this;
    }

    /** The voltage of every node but the grounded one, with a current in at one node and out at another. */
    DMatrixRMaj solve(int in, int out, double amps) {
        DMatrixRMaj b = new DMatrixRMaj(matrix.numRows, 1);
        inject(b, in, amps);
        inject(b, out, -amps);
        DMatrixRMaj x = new DMatrixRMaj(matrix.numRows, 1);
        solver.solve(b, x);
        return x;
    }

    private static void inject(DMatrixRMaj b, int node, double amps) {
        if (node < b.numRows) {
            b.set(node, 0, amps);
        }
    }

    /** Voltage between two nodes of a solution. */
    static double between(DMatrixRMaj x, int from, int to) {
        return volts(x, from) - volts(x, to);
    }

    private static double volts(DMatrixRMaj x, int node) {
        return node < x.numRows ? x.get(node, 0) : 0;
    }
}
