package org.foreload.tyre;

import java.util.concurrent.atomic.AtomicReference;
import java.util.function.DoubleUnaryOperator;
import org.foreload.conventions.Bounds;

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

    /** Value over slip at normalised slip {@code x}, zero or above: the slope of the secant from zero; 1 at zero. */
    double secant(double x);

    /** Change of the {@link #secant} with slip. */
    double secantSlope(double x);

    /** Change of the {@link #secantSlope} with slip at normalised slip {@code x}, above zero. */
    double secantBend(double x);

    /** Normalised slip on the rising side at which the curve has the value {@code y}, from 0 to 1. */
    double inverse(double y);

    /**
     * Slip over value on the rising side, where the value is √(1 − {@code lack}²), with a lack from 0 to 1: the secant
     * of the {@link #inverse}. One where the whole force is lacking, {@link #peakSlip} where nothing is.
     */
    default double inverseSecant(double lack) {
        if (Double.isNaN(lack)) {
            return lack;
        }
        double value = Math.sqrt(1 - lack * lack);
        return value > 0 ? inverse(value) / value : 1;
    }

    /** Normalised slip of the highest value; beyond it, force no longer grows. */
    double peakSlip();

    /**
     * Length of the normalised slip vector at which a wheel with the lateral part {@code y}, above zero, carries most
     * longitudinal force; infinite for a curve that never falls, whose share tends to one.
     */
    default double lengthOfLargestShare(double y) {
        return Double.isNaN(y) ? y : Double.POSITIVE_INFINITY;
    }

    /**
     * Largest longitudinal share of the peak that a rolling wheel can have beside the normalised lateral slip
     * {@code y}.
     */
    default double largestShare(double y) {
        return Double.isNaN(y) ? y : 1;
    }

    /**
     * Lateral share of the peak that a rolling wheel has at the normalised lateral slip {@code y}, above zero, while it
     * carries the share {@code along} of its longitudinal peak, zero or above; asked for more than the
     * {@link #largestShare}, it has what that leaves.
     *
     * <p>This body searches, by {@link CombinedSlip}, and serves any curve. The curves here have quicker ones of their
     * own, which a test holds to it.
     */
    default double lateralShare(double y, double along) {
        double length = new CombinedSlip(this, y).lengthFor(along);
        return value(length) * y / length;
    }

    /**
     * The lateral shares of two wheels with one lateral slip, and the {@link #largestShare} that both have in common.
     *
     * @param y normalised lateral slip, above zero
     * @param first longitudinal share asked of one, as in {@link #lateralShare}
     * @param second that of the other
     * @param shares receives all three
     */
    default void shares(double y, double first, double second, Shares shares) {
        shares.most = largestShare(y);
        shares.first = lateralShare(y, first);
        shares.second = lateralShare(y, second);
    }

    /** What {@link #shares} finds: a buffer that its owner reuses. */
    final class Shares {

        double most;
        double first;
        double second;
    }

    /** Force in proportion to slip up to the friction limit. */
    record Linear() implements SlipCurve {
        @Override
        public double value(double x) {
            return Bounds.smaller(x, 1);
        }

        @Override
        public double slope(double x) {
            return x < 1 ? 1 : Double.isNaN(x) ? x : 0;
        }

        @Override
        public double secant(double x) {
            return x < 1 ? 1 : 1 / x;
        }

        @Override
        public double secantSlope(double x) {
            return x < 1 ? 0 : -1 / (x * x);
        }

        @Override
        public double secantBend(double x) {
            return x < 1 ? 0 : 2 / (x * x * x);
        }

        @Override
        public double inverse(double y) {
            return y;
        }

        @Override
        public double peakSlip() {
            return 1;
        }

        /** {@inheritDoc} In closed form: the lateral slip itself, until the wheel slides. */
        @Override
        public double lateralShare(double y, double along) {
            return Bounds.smaller(y, Math.sqrt(Bounds.larger(1 - along * along, 0)));
        }
    }

    /**
     * Brush model with parabolic pressure: one minus the cube of (1 − x/3). Source: H. B. Pacejka, Tyre and Vehicle
     * Dynamics, ch. 3 (from memory); confirmed by direct integration of the bristles.
     */
    record Brush() implements SlipCurve {
        @Override
        public double value(double x) {
            double stick = Bounds.larger(1 - x / 3, 0);
            return 1 - stick * stick * stick;
        }

        @Override
        public double slope(double x) {
            double stick = Bounds.larger(1 - x / 3, 0);
            return stick * stick;
        }

        @Override
        public double secant(double x) {
            return x < 3 ? 1 + x * (x * (1.0 / 27) - 1.0 / 3) : 1 / x;
        }

        @Override
        public double secantSlope(double x) {
            return x < 3 ? x * (2.0 / 27) - 1.0 / 3 : -1 / (x * x);
        }

        @Override
        public double secantBend(double x) {
            return x < 3 ? 2.0 / 27 : 2 / (x * x * x);
        }

        @Override
        public double inverse(double y) {
            return 3 * (1 - Math.cbrt(1 - y));
        }

        @Override
        public double peakSlip() {
            return 3;
        }

        /** {@inheritDoc} Sliding wholly, from a length of 3 on, the force lies on the friction circle. */
        @Override
        public double lateralShare(double y, double along) {
            return CombinedSlip.ofBrush(y, along, secant(y), CombinedSlip.perMostOfBrush(y));
        }

        /** {@inheritDoc} What hangs on the lateral slip alone is reckoned once for both wheels. */
        @Override
        public void shares(double y, double first, double second, Shares shares) {
            double free = secant(y);
            double perMost = CombinedSlip.perMostOfBrush(y);
            shares.most = largestShare(y);
            shares.first = CombinedSlip.ofBrush(y, first, free, perMost);
            shares.second = CombinedSlip.ofBrush(y, second, free, perMost);
        }
    }

    /**
     * Magic Formula, sin(C atan(Bx − E(Bx − atan Bx))), with BC = 1 so that the slope at zero is one. Source: E.
     * Bakker, L. Nyborg, H. B. Pacejka, SAE 870421 (1987) (from memory).
     *
     * <p>{@link #value} and {@link #slope} are read off a table of cubic pieces for the secant, made from
     * {@link PlainMagicFormula}, the readable twin that a test holds them to within 1e-8: a simulator asks for them
     * many times in every step, and four arc tangents and sines each time would be most of its work.
     */
    final class MagicFormula implements SlipCurve {

        /** Pieces of the table of the inverse. */
        private static final int INVERSE_PIECES = 512;

        /** Accuracy, times what the force lacks, at which that table is taken as it is. */
        private static final double INVERSE_ACCURACY = 1e-9;

        /** Largest relative step from the table of the inverse; its square is below rounding. */
        private static final double INVERSE_STEP = 1e-6;

        /** Accuracy of the fine table: near its limit a wheel makes the root of that of it. */
        private static final double TABLE_ACCURACY = 2e-11;

        private final PlainMagicFormula plain;
        private final double peakSlip;

        /**
         * Fine pieces up to a normalised slip of 16, then coarse ones up to 144; beyond it the formula itself is used.
         */
        private final CurveTable fine;

        private final CurveTable coarse;

        /** Lengths at which a wheel carries the largest share, up to a normalised lateral slip of 12. */
        private final CurveTable lengths;

        /** The {@link #shares} of two wheels; made when first asked for, the same by whichever thread. */
        private final AtomicReference<ShareSurface> surface = new AtomicReference<>();

        /** The {@link #inverseSecant}, which runs smoothly up to the peak over what a force lacks to it. */
        private final CurveTable inverses;

        /** Whether that table needs no step of Newton's rule after it. */
        private final boolean inverseExact;

        /**
         * @param shapeFactor C, above 1 and below 2: a curve with a peak that stays positive
         * @param curvatureFactor E, −20 to 0.999999
         * @throws org.foreload.conventions.InvalidValueException if a factor is outside
         */
        public MagicFormula(double shapeFactor, double curvatureFactor) {
            this.plain = new PlainMagicFormula(shapeFactor, curvatureFactor);
            this.peakSlip = plain.peakSlip();
            this.fine = CurveTable.accurate(0, 16, TABLE_ACCURACY, plain::secant, plain::secantSlope);
            this.coarse = new CurveTable(16, 128 * 8, 8, plain::secant, plain::secantSlope);
            this.lengths = ShareLengths.of(this);
            DoubleUnaryOperator inverse = lack -> plain.inverseSecant(lack, peakSlip);
            this.inverses = new CurveTable(
                    0, INVERSE_PIECES, INVERSE_PIECES, inverse, lack -> plain.inverseSlope(lack, peakSlip));
            this.inverseExact = inverses.error(inverse) <= INVERSE_ACCURACY;
        }

        /** C. */
        public double shapeFactor() {
            return plain.shapeFactor();
        }

        /** E. */
        public double curvatureFactor() {
            return plain.curvatureFactor();
        }

        /** The formula itself, of which the tables are made. */
        PlainMagicFormula plain() {
            return plain;
        }

        @Override
        public double value(double x) {
            return x * secant(x);
        }

        @Override
        public double slope(double x) {
            return secant(x) + x * secantSlope(x);
        }

        @Override
        public double secant(double x) {
            return fine.holds(x) ? fine.value(x) : coarse.holds(x) ? coarse.value(x) : plain.secant(x);
        }

        @Override
        public double secantSlope(double x) {
            return fine.holds(x) ? fine.slope(x) : coarse.holds(x) ? coarse.slope(x) : plain.secantSlope(x);
        }

        @Override
        public double secantBend(double x) {
            return fine.holds(x) ? fine.bend(x) : coarse.holds(x) ? coarse.bend(x) : plain.secantBend(x);
        }

        @Override
        public double inverse(double y) {
            return y >= 1 ? peakSlip : y * inverseSecant(Math.sqrt((1 - y) * (1 + y)));
        }

        /**
         * {@inheritDoc} Read off a table, then made exact by Newton's rule where the table alone is not good to 1e-9.
         */
        @Override
        public double inverseSecant(double lack) {
            if (!inverses.holds(lack)) {
                return Double.isNaN(lack) ? lack : 1;
            }
            double secant = inverses.value(lack);
            if (inverseExact || lack == 0) {
                return secant;
            }
            double y = Math.sqrt((1 - lack) * (1 + lack));
            double x = y * secant;
            double next = x - (value(x) - y) / slope(x);
            return Math.abs(next - x) <= INVERSE_STEP * x ? next / y : plain.inverseSecant(lack, peakSlip);
        }

        @Override
        public double peakSlip() {
            return peakSlip;
        }

        /** {@inheritDoc} Where the table of lengths ends, by the search for any curve. */
        @Override
        public double lateralShare(double y, double along) {
            if (along == 0) {
                return value(y);
            }
            if (!lengths.holds(y)) {
                return SlipCurve.super.lateralShare(y, along);
            }
            double length = lengths.value(y);
            double left = secant(length);
            double most = left * Math.sqrt(Bounds.larger(length * length - y * y, 0));
            return along < most
                    ? CombinedSlip.quickly(this, y, along, secant(y), 1 / most, length, left)
                    : Double.isNaN(along) ? along : y * left;
        }

        /** {@inheritDoc} Read off a table, where it reaches. */
        @Override
        public void shares(double y, double first, double second, Shares shares) {
            ShareSurface made = surface.get();
            if (made == null) {
                made = new ShareSurface(this);
                surface.set(made);
            }
            if (made.holds(y)) {
                made.shares(y, first, second, shares);
            } else {
                SlipCurve.super.shares(y, first, second, shares);
            }
        }

        /**
         * {@inheritDoc}
         *
         * <p>With the share curve(x)·√(1 − (y/x)²), its slope is zero where curve'(x)·x·(x² − y²) + y²·curve(x) = 0,
         * from the peak of the curve on.
         */
        @Override
        public double lengthOfLargestShare(double y) {
            return y == 0 ? peakSlip : ShareLengths.search(this, y);
        }

        @Override
        public double largestShare(double y) {
            if (y == 0) {
                return 1;
            }
            // A length that is a little off changes the largest share by the square of that alone.
            double length = lengths.holds(y) ? lengths.value(y) : lengthOfLargestShare(y);
            return secant(length) * Math.sqrt(Bounds.larger(length * length - y * y, 0));
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof MagicFormula formula && plain.equals(formula.plain);
        }

        @Override
        public int hashCode() {
            return plain.hashCode();
        }

        @Override
        public String toString() {
            return "MagicFormula[shapeFactor=" + shapeFactor() + ", curvatureFactor=" + curvatureFactor() + "]";
        }
    }
}
