package coilwright.fault;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.NormOps_DDRM;

/** Inverses of the few-by-few matrices that alterations make. */
final class SmallMatrix {
    private static final double[][] NONE = new double[0][];
    private static final double WORST = 1e11;

    private SmallMatrix() {}

    /** The inverse, or an empty array where the matrix is singular or nearly so. */
    static double[][] inverse(double[][] m) {
        int r = m.length;
        if (r == 1) {
            return Math.abs(m[0][0]) < 1 / WORST ? NONE : new double[][] {{1 / m[0][0]}};
        }
        DMatrixRMaj a = new DMatrixRMaj(m);
        for (int j = 0; j < r; j++) {
            double most = 0;
            for (int k = 0; k < r; k++) {
                most = Math.max(most, Math.abs(a.get(j, k)));
            }
            if (most == 0) {
                return NONE;
            }
        }
        DMatrixRMaj inverse = new DMatrixRMaj(r, r);
        if (!CommonOps_DDRM.invert(a, inverse)
                || !(NormOps_DDRM.normPInf(a) * NormOps_DDRM.normPInf(inverse) < WORST)) {
            return NONE;
        }
        double[][] out = new double[r][r];
        for (int j = 0; j < r; j++) {
            for (int k = 0; k < r; k++) {
                out[j][k] = inverse.get(j, k);
                if (!Double.isFinite(out[j][k])) {
                    return NONE;
                }
            }
        }
        return out;
    }
}
