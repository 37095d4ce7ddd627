package org.foreload.tyre;

import org.foreload.conventions.Checks;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * The Magic Formula itself, sin(C atan(Bx − E(Bx − atan Bx))) with BC = 1, and its derivatives: what the tables of
 * {@link SlipCurve.MagicFormula} are made of and held to. Source: E. Bakker, L. Nyborg, H. B. Pacejka, SAE 870421
 * (1987) (from memory).
 *
 * @param shapeFactor C, above 1 and below 2
 * @param curvatureFactor E, −20 to 0.999999: at 1 and with C near 1 the peak runs off to endless slip
 */
record PlainMagicFormula(double shapeFactor, double curvatureFactor) {

    /** Relative accuracy of the peak's slip, found once for each curve: the last digit but one. */
    private static final double PEAK_ACCURACY = 1e-15;

    /** Order of interpolation of the root finder, the library's own default. */
    static final int ORDER = 5;

    PlainMagicFormula {
        Checks.between("shape_factor", shapeFactor, 1, 2);
        Checks.within("curvature_factor", curvatureFactor, -20, 0.999999);
    }

    double value(double x) {
        return Math.sin(shapeFactor * Math.atan(argument(x)));
    }

    double slope(double x) {
        double argument = argument(x);
        return Math.cos(shapeFactor * Math.atan(argument)) * inner(x) / (1 + argument * argument);
    }

    /** The slope of the slope: with θ = C·atan(argument), cos θ·θ" − sin θ·θ'². */
    double bend(double x) {
        double bx = x / shapeFactor;
        double square = 1 + bx * bx;
        double argument = argument(x);
        double round = 1 + argument * argument;
        double inner = inner(x);
        double bend = -2 * curvatureFactor * bx / (shapeFactor * square * square);
        double turn = inner / round;
        double turnSlope = (bend - 2 * argument * inner * turn / shapeFactor) / round;
        double angle = shapeFactor * Math.atan(argument);
        return Math.cos(angle) * turnSlope - Math.sin(angle) * turn * turn;
    }

    /** Value over slip; one at zero. */
    double secant(double x) {
        return x == 0 ? 1 : value(x) / x;
    }

    /** Level at zero: the curve is odd. */
    double secantSlope(double x) {
        return x == 0 ? 0 : (slope(x) - value(x) / x) / x;
    }

    /** The slope of that; for a slip above zero. */
    double secantBend(double x) {
        return (bend(x) - 2 * secantSlope(x)) / x;
    }

    /**
     * Slip of the highest value: solves Bx − E(Bx − atan Bx) = tan(π/(2C)). The answer is at most C times that, where E
     * is above 0 over 1 − E; twice that is looked at, so that rounding cannot put the end before the answer.
     */
    double peakSlip() {
        double target = Math.tan(Math.PI / 2 / shapeFactor);
        double high = 2 * shapeFactor * target / Math.min(1, 1 - curvatureFactor);
        return new BracketingNthOrderBrentSolver(PEAK_ACCURACY, 0, ORDER)
                .solve(Integer.MAX_VALUE, x -> argument(x) - target, 0, high);
    }

    /** The {@link SlipCurve#inverseSecant}, by search. */
    double inverseSecant(double lack, double peakSlip) {
        double y = Math.sqrt((1 - lack) * (1 + lack));
        if (y == 0) {
            return 1;
        }
        double guess = CombinedSlip.guess(peakSlip, y);
        return lack > 0 ? RisingSearch.solve(this::value, this::slope, y, guess, 0, peakSlip) / y : peakSlip;
    }

    /**
     * Slope of that. Without force, from the series of arc tangent and sine, by which the slip over small values is y +
     * b·y³ with b = (1 + E)/(3C²) + 1/6.
     */
    double inverseSlope(double lack, double peakSlip) {
        double y = Math.sqrt((1 - lack) * (1 + lack));
        if (y == 0) {
            return -2 * ((1 + curvatureFactor) / (3 * shapeFactor * shapeFactor) + 1.0 / 6);
        }
        if (lack == 0) {
            return inverseSlopeAtPeak(peakSlip) / Math.sqrt(2);
        }
        double secant = inverseSecant(lack, peakSlip);
        return -lack / (y * y) * (1 / slope(y * secant) - secant);
    }

    /** Slope at the peak of the slip over the root of what the force lacks to it, from the curvature of the sine. */
    private double inverseSlopeAtPeak(double peakSlip) {
        double argument = argument(peakSlip);
        return -Math.sqrt(2) * (1 + argument * argument) / inner(peakSlip);
    }

    private double argument(double x) {
        double bx = x / shapeFactor;
        return bx - curvatureFactor * (bx - Math.atan(bx));
    }

    /** The slope of the argument, times C. */
    private double inner(double x) {
        double bx = x / shapeFactor;
        return 1 - curvatureFactor * bx * bx / (1 + bx * bx);
    }
}
