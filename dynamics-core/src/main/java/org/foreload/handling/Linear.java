package org.foreload.handling;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.ejml.data.Complex_F64;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;

/** The linear algebra of this package. */
final class Linear {

    private Linear() {}

    /** Eigenvalues of a square matrix, the least stable first; of a pair the one with the positive imaginary part. */
    static List<Eigenvalue> eigenvalues(double[][] matrix) {
        var decomposition = DecompositionFactory_DDRM.eig(matrix.length, false);
        if (!decomposition.decompose(new DMatrixRMaj(matrix))) {
            throw new ArithmeticException("the eigenvalues of the linear model were not found");
        }
        List<Eigenvalue> found = new ArrayList<>();
        for (int i = 0; i < decomposition.getNumberOfEigenvalues(); i++) {
            Complex_F64 value = decomposition.getEigenvalue(i);
            found.add(new Eigenvalue(value.real, value.imaginary));
        }
        found.sort(Comparator.comparingDouble(Eigenvalue::real)
                .thenComparingDouble(Eigenvalue::imaginary)
                .reversed());
        return List.copyOf(found);
    }

    /** Solution of A·x = b; NaN throughout where A is singular. */
    static double[] solve(double[][] matrix, double[] right) {
        DMatrixRMaj solution = new DMatrixRMaj(right.length, 1);
        boolean solved = CommonOps_DDRM.solve(new DMatrixRMaj(matrix), new DMatrixRMaj(right), solution);
        double[] x = solution.getData();
        if (!solved) {
            Arrays.fill(x, Double.NaN);
        }
        return x;
    }
}
