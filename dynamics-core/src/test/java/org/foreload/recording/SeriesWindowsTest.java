package org.foreload.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealVector;

/** The straight lines through the samples around each row are those of a library, by QR decomposition. */
class SeriesWindowsTest {

    @Property(tries = 500)
    void linesAreThoseOfALibrary(
            @ForAll @IntRange(min = 3, max = 400) int rows,
            @ForAll @DoubleRange(min = 0.01, max = 0.5) double half,
            @ForAll @DoubleRange(min = 0, max = 1e5) double start,
            @ForAll long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] axis = new double[rows];
        double[] values = new double[rows];
        for (int i = 0; i < rows; i++) {
            double gap = random.nextInt(50) == 0 ? 100 : 0;
            axis[i] = (i == 0 ? start : axis[i - 1]) + 0.005 + 0.01 * random.nextDouble() + gap;
            values[i] = 50 + 20 * random.nextGaussian();
        }
        Series.Windows windows = Series.Windows.of(axis, half);
        double[] smooth = windows.smooth(values);
        double[] slope = windows.slope(values);
        for (int i = 0; i < rows; i++) {
            int from = windows.from()[i];
            int count = windows.to()[i] - from + 1;
            double[][] places = new double[count][];
            double[] samples = new double[count];
            double spread = 0;
            for (int k = 0; k < count; k++) {
                double x = axis[from + k] - axis[i];
                places[k] = new double[] {1, x};
                samples[k] = values[from + k];
                spread += x * x;
            }
            RealVector line = new QRDecomposition(new Array2DRowRealMatrix(places))
                    .getSolver()
                    .solve(new ArrayRealVector(samples));
            double steep = Math.abs(line.getEntry(1));
            assertEquals(line.getEntry(1), slope[i], 1e-8 * (1 / Math.sqrt(spread) + steep), "slope in row " + i);
            assertEquals(line.getEntry(0), smooth[i], 1e-8, "value in row " + i);
        }
    }
}
