package org.foreload.collocation;

/**
 * Products of small dense blocks inside larger arrays, row by row. Sums are kept in registers six at a time: for blocks
 * of some twenty rows that is what counts.
 */
final class Products {

    private static final int ROWS = 3;
    private static final int COLUMNS = 2;

    private Products() {}

    /**
     * Adds aᵀ·b to a block.
     *
     * @param inner rows of a and b
     * @param rows columns of a that count, rows of the result
     * @param columns columns of b that count, columns of the result
     * @param aAt first element of a
     * @param aStride from a row of it to the next
     */
    static void addTransposed(
            int inner,
            int rows,
            int columns,
            double[] a,
            int aAt,
            int aStride,
            double[] b,
            int bAt,
            int bStride,
            double[] into,
            int intoStride) {
        addTransposed(inner, rows, columns, false, a, aAt, aStride, b, bAt, bStride, into, intoStride);
    }

    /** The same for a square block of which only the lower half is wanted; some more of it may be filled. */
    static void addTransposedLower(
            int inner,
            int rows,
            double[] a,
            int aAt,
            int aStride,
            double[] b,
            int bAt,
            int bStride,
            double[] into,
            int intoStride) {
        addTransposed(inner, rows, rows, true, a, aAt, aStride, b, bAt, bStride, into, intoStride);
    }

    private static void addTransposed(
            int inner,
            int rows,
            int allColumns,
            boolean lower,
            double[] a,
            int aAt,
            int aStride,
            double[] b,
            int bAt,
            int bStride,
            double[] into,
            int intoStride) {
        int r = 0;
        for (; r + ROWS <= rows; r += ROWS) {
            int columns = lower ? Math.min(allColumns, r + ROWS) : allColumns;
            int c = 0;
            for (; c + COLUMNS <= columns; c += COLUMNS) {
                double s00 = 0;
                double s01 = 0;
                double s10 = 0;
                double s11 = 0;
                double s20 = 0;
                double s21 = 0;
                int atA = aAt + r;
                int atB = bAt + c;
                for (int k = 0; k < inner; k++) {
                    double a0 = a[atA];
                    double a1 = a[atA + 1];
                    double a2 = a[atA + 2];
                    double b0 = b[atB];
                    double b1 = b[atB + 1];
                    s00 += a0 * b0;
                    s01 += a0 * b1;
                    s10 += a1 * b0;
                    s11 += a1 * b1;
                    s20 += a2 * b0;
                    s21 += a2 * b1;
                    atA += aStride;
                    atB += bStride;
                }
                int at = r * intoStride + c;
                into[at] += s00;
                into[at + 1] += s01;
                into[at + intoStride] += s10;
                into[at + intoStride + 1] += s11;
                into[at + 2 * intoStride] += s20;
                into[at + 2 * intoStride + 1] += s21;
            }
            for (int i = r; i < r + ROWS && c < columns; i++) {
                into[i * intoStride + c] += dot(inner, a, aAt + i, aStride, b, bAt + c, bStride);
            }
        }
        for (; r < rows; r++) {
            for (int c = 0; c < (lower ? r + 1 : allColumns); c++) {
                into[r * intoStride + c] += dot(inner, a, aAt + r, aStride, b, bAt + c, bStride);
            }
        }
    }

    private static double dot(int inner, double[] a, int aAt, int aStride, double[] b, int bAt, int bStride) {
        double sum = 0;
        for (int k = 0; k < inner; k++) {
            sum += a[aAt + k * aStride] * b[bAt + k * bStride];
        }
        return sum;
    }
}
