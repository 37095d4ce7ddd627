package org.foreload.tyre;

import org.foreload.conventions.Bounds;

/**
 * The lateral shares of a Magic Formula wheel as a table, in place of the search of {@link CombinedSlip}, which would
 * be a seventh of a simulator's work. It holds the secant of the curve at the length of the slip vector. One way it
 * runs over y/(y + peak slip), where y is the normalised lateral slip; the other way over √(1 − r²), where r is the
 * longitudinal share over the most that there is beside y. Over r itself the secant would fall ever more steeply
 * towards the most; over the root it runs smoothly up to there. Between its nodes the table is the polynomial of third
 * degree through the nearest four, each way (Lagrange's, Abramowitz and Stegun, 25.2.13, from memory).
 *
 * <p>A share is good to {@link #ACCURACY}; where the wheel lacks less than a hundred-thousandth of the most there is,
 * as good as if that most were a few ten-millionths off. A curve too sharp for that, such as one with E of −20, has an
 * empty table.
 */
final class ShareSurface {

    /** Largest error of a lateral share: a thousand times less than anybody knows friction to. */
    static final double ACCURACY = 5e-6;

    /** Normalised lateral slip where the table ends: beyond it a wheel slides nearly straight across. */
    private static final double END = 8;

    /** Cells over the lateral slip and over what is left of the longitudinal share. */
    private static final int ACROSS = 128;

    private static final int LEFT = 24;

    /** Nodes in a row: one more than cells, and one beyond at each end. */
    private static final int ROW = LEFT + 3;

    /** At no slip at all a share has no secant; at this one rounding hides that. */
    private static final double LEAST_SLIP = 1e-6;

    private static final double SIXTH = 1.0 / 6;

    private final double scale;
    private final double perUnit;
    private final double end;
    private final double[] most = new double[ACROSS + 3];
    private final double[] secants = new double[most.length * ROW];

    /** The table for a curve; it holds nothing where that is too sharp. */
    ShareSurface(SlipCurve curve) {
        scale = curve.peakSlip();
        perUnit = ACROSS * (END + scale) / END;
        for (int i = 0; i < most.length; i++) {
            double y = lateralSlip(i - 1);
            most[i] = curve.largestShare(y);
            int row = i * ROW;
            for (int j = 0; j <= LEFT; j++) {
                secants[row + j + 1] = secant(curve, y, most[i], j);
            }
            secants[row] = beyond(row, 1);
            secants[row + ROW - 1] = beyond(row + ROW - 1, -1);
        }
        end = error(curve) <= ACCURACY ? END : 0;
    }

    /** The normalised lateral slip at a place counted in cells; a share is the same on both sides of zero. */
    private double lateralSlip(double place) {
        double part = place / perUnit;
        return Math.abs(scale * part / (1 - part));
    }

    /** What the table holds at a place counted in cells along its row. */
    private static double secant(SlipCurve curve, double lateralSlip, double most, double place) {
        double y = Math.max(lateralSlip, LEAST_SLIP);
        double left = place / LEFT;
        return curve.lateralShare(y, most * Math.sqrt(1 - left * left)) / y;
    }

    /** A value beside four others in a row, all on one polynomial of third degree. */
    private double beyond(int at, int way) {
        return 4 * (secants[at + way] + secants[at + 3 * way]) - 6 * secants[at + 2 * way] - secants[at + 4 * way];
    }

    /** Largest error of a lateral share in the middle of a cell. */
    private double error(SlipCurve curve) {
        SlipCurve.Shares shares = new SlipCurve.Shares();
        double error = 0;
        for (int i = 0; i < ACROSS; i++) {
            double y = lateralSlip(i + 0.5);
            double largest = curve.largestShare(y);
            for (int j = 0; j < LEFT; j++) {
                double left = (j + 0.5) / LEFT;
                double along = largest * Math.sqrt(1 - left * left);
                shares(y, along, along, shares);
                error = Math.max(error, Math.abs(shares.first - curve.lateralShare(y, along)));
            }
        }
        return error;
    }

    /** Whether the table reaches to a normalised lateral slip. */
    boolean holds(double y) {
        return y < end;
    }

    /** {@link SlipCurve#shares} for a lateral slip that the table {@link #holds}. */
    void shares(double y, double first, double second, SlipCurve.Shares shares) {
        double place = perUnit * y / (y + scale);
        int i = (int) place;
        double t = place - i;
        double a = before(t);
        double b = nearer(t);
        double c = nearer(1 - t);
        double d = before(1 - t);
        double largest = a * most[i] + b * most[i + 1] + c * most[i + 2] + d * most[i + 3];
        double perMost = 1 / largest;
        shares.most = largest;
        shares.first = y * secant(i, a, b, c, d, first * perMost);
        shares.second = y * secant(i, a, b, c, d, second * perMost);
    }

    /** The table between four rows from {@code i} on, which have these weights, beside a part of the most there is. */
    private double secant(int i, double a, double b, double c, double d, double part) {
        double place = LEFT * Math.sqrt(Bounds.larger(1 - part * part, 0));
        int j = place < LEFT ? (int) place : LEFT - 1;
        double t = place - j;
        double e = before(t);
        double f = nearer(t);
        double g = nearer(1 - t);
        double h = before(1 - t);
        double[] v = secants;
        int at = i * ROW + j;
        double sum = a * (e * v[at] + f * v[at + 1] + g * v[at + 2] + h * v[at + 3]);
        at += ROW;
        sum += b * (e * v[at] + f * v[at + 1] + g * v[at + 2] + h * v[at + 3]);
        at += ROW;
        sum += c * (e * v[at] + f * v[at + 1] + g * v[at + 2] + h * v[at + 3]);
        at += ROW;
        return sum + d * (e * v[at] + f * v[at + 1] + g * v[at + 2] + h * v[at + 3]);
    }

    /** Weight of the node before the cell, at a part of the cell. */
    private static double before(double t) {
        return -SIXTH * t * (1 - t) * (2 - t);
    }

    /** Weight of the node that the cell begins with. */
    private static double nearer(double t) {
        return 0.5 * (1 - t) * (1 + t) * (2 - t);
    }
}
