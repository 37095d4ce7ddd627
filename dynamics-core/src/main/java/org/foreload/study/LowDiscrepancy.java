package org.foreload.study;

import java.util.ArrayList;
import java.util.List;
import org.foreload.conventions.Checks;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.random.SobolSequenceGenerator;
import org.hipparchus.random.Well19937c;

/**
 * Points that fill a cube more evenly than random ones: Sobol's sequence (I. M. Sobol, USSR Computational Mathematics
 * and Mathematical Physics 7(4), 1967, from memory; as in Hipparchus), moved as a whole by a random shift that wraps
 * around (R. Cranley and T. N. L. Patterson, SIAM J. Numer. Anal. 13(6), 1976, from memory), so that each seed is a
 * fair draw of its own and repetition shows the accuracy.
 */
public final class LowDiscrepancy {

    private static final NormalDistribution STANDARD_NORMAL = new NormalDistribution();

    /** Numbers are kept this far inside zero and one, so that the normal inverse stays finite: eight deviations. */
    private static final double INSIDE = 1e-15;

    private LowDiscrepancy() {}

    /**
     * The first points of the sequence: more points add to these and change none of them.
     *
     * @param dimensions 1 to 1000
     * @param count how many, best a power of two
     * @param seed of the shift
     * @return points with coordinates above 0 and below 1
     */
    public static List<double[]> points(int dimensions, int count, long seed) {
        Checks.within("dimensions", dimensions, 1, 1000);
        Checks.within("samples", count, 1, 100_000_000);
        SobolSequenceGenerator sequence = new SobolSequenceGenerator(dimensions);
        Well19937c random = new Well19937c(seed);
        double[] shift = new double[dimensions];
        for (int i = 0; i < dimensions; i++) {
            shift[i] = random.nextDouble();
        }
        List<double[]> points = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            double[] point = sequence.nextVector();
            for (int i = 0; i < dimensions; i++) {
                double moved = point[i] + shift[i];
                moved = moved >= 1 ? moved - 1 : moved;
                point[i] = Math.max(INSIDE, Math.min(1 - INSIDE, moved));
            }
            points.add(point);
        }
        return points;
    }

    /** The standard normal deviate below which a share of all lies. */
    public static double normal(double share) {
        return STANDARD_NORMAL.inverseCumulativeProbability(share);
    }
}
