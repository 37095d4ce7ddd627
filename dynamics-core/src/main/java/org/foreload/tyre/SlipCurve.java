package org.foreload.tyre;

/**
 * The shape of a tyre: fraction of peak force over normalised slip. Normalised slip is slip times stiffness over peak
 * force, so every curve leaves zero with slope one, and its highest value is one.
 *
 * <p>Sources: normalised slip and the similarity method, H. B. Pacejka, Tyre and Vehicle Dynamics, ch. 4 (from memory).
 */
public sealed interface SlipCurve permits SlipCurve.Linear, SlipCurve.Brush, SlipCurve.MagicFormula {

    /** Fraction of the peak force at normalised slip {@code x}, zero or above. */
    double value(double x);

    /** Slope of the curve at normalised slip {@code x}, zero or above. */
    double slope(double x);

    /** Normalised slip on the rising side at which the curve has the value {@code y}, from 0 to 1. */
    double inverse(double y);

    /** Normalised slip of the highest value; beyond it, force no longer grows. */
    double peakSlip();

    /** Force in proportion to slip up to the friction limit. */
    record Linear() implements SlipCurve {
        @Override
        public double value(double x) {
            return Math.min(x, 1);
        }

        @Override
        public double slope(double x) {
            return x < 1 ? 1 : 0;
        }

        @Override
        public double inverse(double y) {
            return y;
        }

        @Override
        public double peakSlip() {
            return 1;
        }
    }

    /**
     * Brush model with parabolic pressure: one minus the cube of (1 − x/3). Source: H. B. Pacejka, Tyre and Vehicle
     * Dynamics, ch. 3 (from memory); confirmed by direct integration of the bristles.
     */
    record Brush() implements SlipCurve {
        @Override
        public double value(double x) {
            if (x >= 3) {
                return 1;
            }
            double stick = 1 - x / 3;
            return 1 - stick * stick * stick;
        }

        @Override
        public double slope(double x) {
            double stick = Math.max(0, 1 - x / 3);
            return stick * stick;
        }

        @Override
        public double inverse(double y) {
            return 3 * (1 - Math.cbrt(1 - y));
        }

        @Override
        public double peakSlip() {
            return 3;
        }
    }

    /**
     * Magic Formula, sin(C atan(Bx − E(Bx − atan Bx))), with BC = 1 so that the slope at zero is one. Source: E.
     * Bakker, L. Nyborg, H. B. Pacejka, SAE 870421 (1987) (from memory).
     *
     * @param shapeFactor C, above 1 and below 2: a curve with a peak that stays positive
     * @param curvatureFactor E, at most 1
     */
    record MagicFormula(double shapeFactor, double curvatureFactor) implements SlipCurve {

        /** Checks the two factors. */
        public MagicFormula {
            org.foreload.conventions.Checks.between("shape_factor", shapeFactor, 1, 2);
            org.foreload.conventions.Checks.within("curvature_factor", curvatureFactor, -20, 1 - 1e-6);
        }

        @Override
        public double value(double x) {
            return Math.sin(shapeFactor * Math.atan(argument(x)));
        }

        @Override
        public double slope(double x) {
            double bx = x / shapeFactor;
            double argument = argument(x);
            double inner = 1 - curvatureFactor * bx * bx / (1 + bx * bx);
            return Math.cos(shapeFactor * Math.atan(argument)) * inner / (1 + argument * argument);
        }

        private double argument(double x) {
            double bx = x / shapeFactor;
            return bx - curvatureFactor * (bx - Math.atan(bx));
        }

        @Override
        public double inverse(double y) {
            return slipForArgument(Math.tan(Math.asin(Math.min(y, 1)) / shapeFactor));
        }

        @Override
        public double peakSlip() {
            return slipForArgument(Math.tan(Math.PI / 2 / shapeFactor));
        }

        /** Solves Bx − E(Bx − atan Bx) = target, monotone in x, by Newton's method kept inside a bracket. */
        private double slipForArgument(double target) {
            if (target == 0 || curvatureFactor == 0) {
                return target * shapeFactor;
            }
            double low = 0;
            double high = Math.max(target, 1);
            while (argument(high * shapeFactor) < target) {
                high *= 2;
            }
            double bx = Math.min(target, high);
            for (int i = 0; i < 60; i++) {
                double excess = argument(bx * shapeFactor) - target;
                if (excess > 0) {
                    high = bx;
                } else {
                    low = bx;
                }
                double slope = 1 - curvatureFactor * bx * bx / (1 + bx * bx);
                double next = bx - excess / slope;
                if (!(next > low && next < high)) {
                    next = (low + high) / 2;
                }
                if (Math.abs(next - bx) <= 1e-14 * (1 + bx)) {
                    return next * shapeFactor;
                }
                bx = next;
            }
            return bx * shapeFactor;
        }
    }
}
