package org.foreload.path;

import java.util.Arrays;
import java.util.Objects;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;

/**
 * A line as it was measured: points in driving order in any plane frame (x and y in metres, right-handed seen from
 * above), and what is known of the track at each. Every error names the column and the row, counted from 1.
 *
 * <p>A step between neighbours may be at most {@link #LONGEST_STEP} times the median step, as nothing is known inside a
 * gap; and the line may not turn by a right angle or more from one step to the next: points so dense that their errors
 * make them double back have to be thinned out first.
 */
public final class MeasuredLine {

    /** Fewest points that a line is fitted through. */
    public static final int FEWEST_POINTS = 5;

    /** Longest step between neighbours, in median steps. */
    public static final double LONGEST_STEP = 10;

    /** Neighbours closer than this are taken for the same point, m: a millimetre is finer than any survey. */
    private static final double SAME_POINT = 1e-3;

    private final Path.Point origin;
    private final double[] x;
    private final double[] y;
    private final double[] widthLeft;
    private final double[] widthRight;
    private final double[] banking;
    private final double[] grade;

    private MeasuredLine(
            Path.Point origin,
            double[] x,
            double[] y,
            double[] widthLeft,
            double[] widthRight,
            double[] banking,
            double[] grade) {
        this.origin = origin;
        this.x = x;
        this.y = y;
        this.widthLeft = widthLeft;
        this.widthRight = widthRight;
        this.banking = banking;
        this.grade = grade;
    }

    /**
     * A flat line of constant width.
     *
     * @param x coordinates in m
     * @param y coordinates in m
     * @param halfWidth distance to either edge of the track, m
     * @throws InvalidValueException if there are too few points, one is not finite or repeated, or their steps are wild
     */
    public static MeasuredLine of(double[] x, double[] y, double halfWidth) {
        Objects.requireNonNull(x, "x");
        Objects.requireNonNull(y, "y");
        Checks.positive("half_width_m", halfWidth);
        int count = x.length;
        if (count < FEWEST_POINTS) {
            throw new InvalidValueException("x_m", count + " points", FEWEST_POINTS + " points or more");
        }
        double[] ownX = coordinates("x_m", x, count);
        double[] ownY = coordinates("y_m", y, count);
        checkSteps(ownX, ownY);
        Path.Point origin = new Path.Point(ownX[0], ownY[0]);
        shift(ownX, origin.x());
        shift(ownY, origin.y());
        double[] width = new double[count];
        Arrays.fill(width, halfWidth);
        return new MeasuredLine(origin, ownX, ownY, width, width, new double[count], new double[count]);
    }

    /** The same line with the distances in m to the left and right edge at each point, zero or more. */
    public MeasuredLine withWidths(double[] left, double[] right) {
        Objects.requireNonNull(left, "left");
        Objects.requireNonNull(right, "right");
        return new MeasuredLine(
                origin, x, y, widths("width_left_m", left), widths("width_right_m", right), banking, grade);
    }

    /** The same line with the slope across it at each point: rad, positive where the left edge is the lower one. */
    public MeasuredLine withBankingAngles(double[] angles) {
        Objects.requireNonNull(angles, "angles");
        double steepest = Math.nextDown(Math.PI / 2);
        double[] own = column("banking", angles, x.length, -steepest, steepest, "between -90 and 90 degrees");
        return new MeasuredLine(origin, x, y, widthLeft, widthRight, own, grade);
    }

    /** The same line with the slope along it at each point: rise over run, a plain number, positive uphill. */
    public MeasuredLine withGradeFractions(double[] riseOverRun) {
        Objects.requireNonNull(riseOverRun, "riseOverRun");
        double[] angles = Arrays.stream(coordinates("grade", riseOverRun, x.length))
                .map(Math::atan)
                .toArray();
        return new MeasuredLine(origin, x, y, widthLeft, widthRight, banking, angles);
    }

    private static double[] coordinates(String field, double[] values, int count) {
        return column(field, values, count, -Double.MAX_VALUE, Double.MAX_VALUE, "a finite number");
    }

    private double[] widths(String field, double[] values) {
        return column(field, values, x.length, 0, Double.MAX_VALUE, "a finite number of 0 or more");
    }

    private static double[] column(String field, double[] values, int count, double low, double high, String allowed) {
        if (values.length != count) {
            throw new InvalidValueException(
                    field, values.length + " values", "one value for each of the " + count + " points");
        }
        for (int i = 0; i < count; i++) {
            if (!(values[i] >= low && values[i] <= high)) {
                throw new InvalidValueException(row(field, i), values[i], allowed);
            }
        }
        return values.clone();
    }

    private static void checkSteps(double[] x, double[] y) {
        double[] steps = new double[x.length - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = Math.hypot(x[i + 1] - x[i], y[i + 1] - y[i]);
            if (!(steps[i] >= SAME_POINT)) {
                throw new InvalidValueException(row("x_m", i + 1), x[i + 1], "another point than the row before");
            }
        }
        double[] sorted = steps.clone();
        Arrays.sort(sorted);
        double longest = LONGEST_STEP * sorted[sorted.length / 2];
        for (int i = 0; i < steps.length; i++) {
            if (!(steps[i] <= longest)) {
                throw new InvalidValueException(
                        row("x_m", i + 1), x[i + 1], "within " + longest + " m of the row before, ten median steps");
            }
            boolean doublesBack =
                    i > 0 && (x[i + 1] - x[i]) * (x[i] - x[i - 1]) + (y[i + 1] - y[i]) * (y[i] - y[i - 1]) <= 0;
            if (doublesBack) {
                throw new InvalidValueException(
                        row("x_m", i + 1), x[i + 1], "ahead: the line turns by a right angle or more in one step");
            }
        }
    }

    /** Counts coordinates from the first point, so that those of a country-wide grid keep their last digits. */
    private static void shift(double[] values, double origin) {
        for (int i = 0; i < values.length; i++) {
            values[i] -= origin;
        }
    }

    private static String row(String field, int index) {
        return field + ", row " + (index + 1);
    }

    /** The first point, m. */
    Path.Point origin() {
        return origin;
    }

    /** The x coordinates counted from the first point, m. */
    double[] x() {
        return x;
    }

    /** The y coordinates counted from the first point, m. */
    double[] y() {
        return y;
    }

    double[] widthLeft() {
        return widthLeft;
    }

    double[] widthRight() {
        return widthRight;
    }

    double[] banking() {
        return banking;
    }

    double[] grade() {
        return grade;
    }
}
