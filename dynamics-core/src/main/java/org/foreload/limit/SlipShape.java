package org.foreload.limit;

import org.foreload.tyre.SlipCurve;

/**
 * A slip curve written so that it can be differentiated twice everywhere: with X the square of the length x of the
 * normalised slip vector, c(X) = (curve(x)/x)². A wheel with the lateral part y of that vector that carries the share p
 * of its longitudinal peak has c(X)·(X − y²) = p², and its lateral share is y·√c(X). So neither the root of a sum of
 * squares nor the sign of a force is in the way where a slip or a force is zero.
 */
final class SlipShape {

    /** Length below which the magic formula is read off its series: there the quotients below lose their digits. */
    private static final double SHORT = 0.02;

    /**
     * Length below which the brush is replaced by a parabola in X that joins it with slope and curvature: its stiffness
     * falls from the first slip on, in proportion to its size, which has a corner at zero. It changes the force by less
     * than a hundredth of a part.
     */
    private static final double BRUSH_SHORT = 0.03;

    private static final double CLOSE = 1e-14;

    private static final int ROUNDS = 60;

    /** Normalised lateral slips up to which first guesses are kept, and how many to a unit. */
    private static final int GUESSES_TO = 8;

    private static final int GUESSES_PER_UNIT = 16;

    private final SlipCurve curve;
    private final double peakSquare;
    private final boolean falls;
    private final double[] guesses;

    private double c;
    private double slope;
    private double bend;

    private double share;
    private double byLateral;
    private double byUsed;
    private double byLateralTwice;
    private double byBoth;
    private double byUsedTwice;

    SlipShape(SlipCurve curve) {
        this.curve = curve;
        this.peakSquare = curve.peakSlip() * curve.peakSlip();
        this.falls = curve instanceof SlipCurve.MagicFormula;
        this.guesses = new double[falls ? GUESSES_TO * GUESSES_PER_UNIT + 2 : 0];
        for (int i = 0; i < guesses.length; i++) {
            double lateral = (double) i / GUESSES_PER_UNIT;
            double length = lateral == 0 ? curve.peakSlip() : curve.lengthOfLargestShare(lateral);
            guesses[i] = length * length;
        }
    }

    /** Square of the length at which the curve has its peak. */
    double peakSquare() {
        return peakSquare;
    }

    /**
     * The node of √c for a wheel.
     *
     * @param square node of y²
     * @param used node of p², below 1
     */
    int share(Tape tape, int square, int used) {
        solve(tape.value(square), tape.value(used));
        return tape.function(square, used, share, byLateral, byUsed, byLateralTwice, byBoth, byUsedTwice);
    }

    /** The node of the largest p² that a rolling wheel can have beside y². */
    int most(Tape tape, int square) {
        if (!falls) {
            return tape.constant(1);
        }
        double y = tape.value(square);
        double x = longest(y);
        double curved = bend * (x - y) + 2 * slope;
        return tape.function(square, c * (x - y), -c, -slope * slope / curved);
    }

    /** X at which c(X)·(X − y²) is largest. */
    private double longest(double y) {
        double place = Math.sqrt(y) * GUESSES_PER_UNIT;
        if (!(place < guesses.length - 1)) {
            double length = curve.lengthOfLargestShare(Math.sqrt(y));
            at(length * length);
            return length * length;
        }
        int i = (int) place;
        double x = guesses[i] + (place - i) * (guesses[i + 1] - guesses[i]);
        for (int round = 0; round < ROUNDS; round++) {
            at(x);
            double next = x - (slope * (x - y) + c) / (bend * (x - y) + 2 * slope);
            if (!(Math.abs(next - x) > CLOSE * x)) {
                break;
            }
            x = next > y ? next : (x + y) / 2;
        }
        return x;
    }

    /** √c for y² and p². */
    double share(double square, double used) {
        solve(square, used);
        return share;
    }

    private void solve(double y, double q) {
        double x = length(y, q);
        at(x);
        double hx = slope * (x - y) + c;
        double hxx = bend * (x - y) + 2 * slope;
        double hxy = -slope;
        double xq = 1 / hx;
        double xy = c / hx;
        double xqq = -hxx * xq * xq / hx;
        double xyq = -(hxx * xq * xy + hxy * xq) / hx;
        double xyy = -(hxx * xy * xy + 2 * hxy * xy) / hx;
        share = Math.sqrt(c);
        double first = slope / (2 * share);
        double second = (bend - slope * slope / (2 * c)) / (2 * share);
        byLateral = first * xy;
        byUsed = first * xq;
        byLateralTwice = second * xy * xy + first * xyy;
        byBoth = second * xy * xq + first * xyq;
        byUsedTwice = second * xq * xq + first * xqq;
    }

    /** X at which c(X)·(X − y²) is p²: it rises all the way. */
    private double length(double y, double q) {
        if (!falls && q >= 1 - y / peakSquare) {
            return y / (1 - q);
        }
        double low = y;
        double high = falls ? longest(y) : peakSquare;
        double x = Math.min(high, y + q);
        for (int round = 0; round < ROUNDS; round++) {
            at(x);
            double off = c * (x - y) - q;
            if (off > 0) {
                high = x;
            } else {
                low = x;
            }
            double next = x - off / (slope * (x - y) + c);
            if (!(next >= low && next <= high)) {
                next = (low + high) / 2;
            }
            if (Math.abs(next - x) <= CLOSE * (peakSquare + x)) {
                return next;
            }
            x = next;
        }
        return x;
    }

    /** Fills c and its derivatives over X. */
    private void at(double square) {
        if (!falls && square >= peakSquare) {
            c = 1 / square;
            slope = -c * c;
            bend = 2 * c * c * c;
            return;
        }
        if (curve instanceof SlipCurve.MagicFormula formula) {
            magic(formula, square);
        } else if (curve instanceof SlipCurve.Brush) {
            brush(square);
        } else {
            c = 1;
            slope = 0;
            bend = 0;
        }
    }

    private void brush(double square) {
        double knee = BRUSH_SHORT * BRUSH_SHORT;
        double x = Math.sqrt(Math.max(square, knee));
        double f = 1 - x / 3 + x * x / 27;
        double f1 = -1 / (6 * x) + 1.0 / 27;
        double f2 = 1 / (12 * x * x * x);
        if (square < knee) {
            double d = square - knee;
            f += f1 * d + f2 * d * d / 2;
            f1 += f2 * d;
        }
        squared(f, f1, f2);
    }

    private void magic(SlipCurve.MagicFormula formula, double square) {
        double shape = formula.shapeFactor();
        double bending = formula.curvatureFactor();
        double shape2 = shape * shape;
        if (square < SHORT * SHORT) {
            double third = -(1 + bending) / (3 * shape2) - 1.0 / 6;
            double fifth = (8 * bending / 15 + 0.2) / (shape2 * shape2) + (1 + bending) / (6 * shape2) + 1.0 / 120;
            squared(1 + square * (third + square * fifth), third + 2 * square * fifth, 2 * fifth);
            return;
        }
        double x = Math.sqrt(square);
        double u = x / shape;
        double w = 1 + u * u;
        double g = u - bending * (u - Math.atan(u));
        double g1 = (1 - bending * u * u / w) / shape;
        double g2 = -bending * 2 * u / (w * w) / shape2;
        double v = 1 + g * g;
        double angle = shape * Math.atan(g);
        double a1 = shape * g1 / v;
        double a2 = shape * (g2 / v - 2 * g * g1 * g1 / (v * v));
        double sin = Math.sin(angle);
        double cos = Math.cos(angle);
        double s1 = cos * a1;
        double s2 = cos * a2 - sin * a1 * a1;
        double f = sin / x;
        double fx = (s1 - f) / x;
        double fxx = (s2 - 2 * fx) / x;
        squared(f, fx / (2 * x), (fxx - fx / x) / (4 * square));
    }

    private void squared(double f, double f1, double f2) {
        c = f * f;
        slope = 2 * f * f1;
        bend = 2 * (f1 * f1 + f * f2);
    }
}
