package org.foreload.path;

import java.util.Objects;
import java.util.stream.IntStream;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;

/**
 * A line fitted to measured points: a chain of clothoids, so curvature is continuous and runs linearly between joints
 * that lie at every measured point, but no closer than 1.5 m.
 *
 * <p>How smooth: the steadiest curvature (least ∫(dκ/ds)² ds) whose root mean square distance from the points is no
 * more than the tolerance, and no more than the scatter that the points themselves show: errors that change from point
 * to point. So clean points are followed closely however large the tolerance; and if the points scatter by more than
 * the tolerance, the fit is refused, as curvature would be noise. (Discrepancy principle of V. A. Morozov; scatter by
 * generalised maximum likelihood, G. Wahba, Ann. Statist. 13(4), 1985; both from memory.) The distances that are left
 * are in {@link #rmsDeviation()} and {@link #maxDeviation()}.
 *
 * <p>How accurate, as tested on corners of spiral, arc and spiral (50 draws each) with errors of 3 cm in x and y and
 * points 2 to 5 m apart; curvature in percent of the corner's largest:
 *
 * <table>
 * <caption>Errors of the fitted curvature</caption>
 * <tr><th>radius / spiral</th><th>rms</th><th>largest, on average</th><th>largest of all</th><th>turn-in</th></tr>
 * <tr><td>15 m / 12 m</td><td>2.1–2.7</td><td>9–11</td><td>19</td><td>4 m early to 0.5 m late</td></tr>
 * <tr><td>60 m / 40 m</td><td>1.4–1.7</td><td>6</td><td>7</td><td>6 m early to 0</td></tr>
 * <tr><td>150 m / 120 m</td><td>0.9–1.2</td><td>4</td><td>5</td><td>8 m early to 1 m late</td></tr>
 * </table>
 *
 * <p>The largest errors sit at the ends of the spirals, which come out rounded. Points without error: 0.05–0.5 rms for
 * the two wider corners.
 *
 * <p>Station zero (turn-in) is where the curvature has passed {@link #TURN_IN_SHARE} of the line's largest on its way
 * into the first turn that reaches half of the largest, and does not fall back below; if the line is bent that much
 * from its first point on, it is that point. Without errors that is a little after the true start, by 2 % of the first
 * spiral; with them some metres before it, as the start of the spiral comes out rounded (see the table).
 *
 * <p>Widths, banking and grade are read straight between the points and kept beyond the ends.
 *
 * <p><i>Valid when</i> points are a third of the sharpest radius apart or closer. <i>Neglects</i> that some points may
 * be worse than others. <i>Fails when</i> single points are far off, or when the points' error drifts smoothly over
 * tens of metres: that looks like a bend and is kept as one.
 */
public final class MeasuredPath implements Path {

    /** Share of the line's largest curvature at which a turn counts as begun. */
    public static final double TURN_IN_SHARE = 0.02;

    /** Share of the line's largest curvature that makes a bend the turn that is entered. */
    private static final double TURN_SHARE = 0.5;

    private final ClothoidChain chain;
    private final Point first;
    private final double cos;
    private final double sin;
    private final double approachLength;
    private final double[] station;
    private final StationIndex index;
    private final MeasuredLine line;
    private final double rmsDeviation;
    private final double maxDeviation;

    private MeasuredPath(MeasuredLine line, ClothoidSmoother fit, double approachLength, double exitLength) {
        this.line = line;
        this.approachLength = approachLength;
        first = new Point(fit.x(0), fit.y(0));
        cos = Math.cos(fit.heading(0));
        sin = Math.sin(fit.heading(0));
        int points = fit.points();
        int[] joints = IntStream.range(0, points).filter(fit::isJoint).toArray();
        double turnIn = turnIn(fit, joints);
        station = new double[points];
        for (int i = 0; i < points; i++) {
            station[i] = fit.station(i) - turnIn;
        }
        index = new StationIndex(station);
        chain = chain(fit, joints, turnIn, approachLength, exitLength);
        double sum = 0;
        double largest = 0;
        for (int i = 0; i < points; i++) {
            double distance = chain.distance(ownFrame(line.x()[i], line.y()[i]), station[i]);
            sum += distance * distance;
            largest = Math.max(largest, distance);
        }
        rmsDeviation = Math.sqrt(sum / points);
        maxDeviation = largest;
    }

    /** The fitted line from the first point to the last; see {@link #fit(MeasuredLine, double, double, double)}. */
    public static MeasuredPath fit(MeasuredLine line, double tolerance) {
        return fit(line, tolerance, 0, 0);
    }

    /**
     * The fitted line, with straights before the first and after the last point. A straight of length above zero holds
     * the curvature of the fit at zero where it joins.
     *
     * @param line the points
     * @param tolerance largest root mean square distance of the points from the fitted line, m
     * @param approachLength straight before the first point, 0 or more, m
     * @param exitLength straight after the last point, 0 or more, m
     * @throws InvalidValueException if a number is not allowed, or the points scatter by more than the tolerance
     */
    public static MeasuredPath fit(MeasuredLine line, double tolerance, double approachLength, double exitLength) {
        Objects.requireNonNull(line, "line");
        Checks.positive("tolerance_m", tolerance);
        Checks.notNegative("approach_length_m", approachLength);
        Checks.notNegative("exit_length_m", exitLength);
        ClothoidSmoother fit = new ClothoidSmoother(line.x(), line.y(), approachLength > 0, exitLength > 0);
        SmoothingSearch.smoothAsMuchAsAllowed(fit, tolerance);
        return new MeasuredPath(line, fit, approachLength, exitLength);
    }

    private static double turnIn(ClothoidSmoother fit, int[] joints) {
        double peak = 0;
        for (int joint : joints) {
            peak = Math.max(peak, Math.abs(fit.curvature(joint)));
        }
        int at = 0;
        while (Math.abs(fit.curvature(joints[at])) < TURN_SHARE * peak) {
            at++;
        }
        double sign = Math.signum(fit.curvature(joints[at]));
        double threshold = TURN_IN_SHARE * peak;
        while (at > 0 && sign * fit.curvature(joints[at - 1]) > threshold) {
            at--;
        }
        double station = fit.station(joints[at]);
        if (at == 0) {
            return station;
        }
        double before = fit.station(joints[at - 1]);
        double low = sign * fit.curvature(joints[at - 1]);
        double high = sign * fit.curvature(joints[at]);
        return before + (station - before) * (threshold - low) / (high - low);
    }

    private static ClothoidChain chain(
            ClothoidSmoother fit, int[] joints, double turnIn, double approachLength, double exitLength) {
        int first = approachLength > 0 ? 1 : 0;
        int pieces = first + joints.length - 1 + (exitLength > 0 ? 1 : 0);
        double[] bounds = new double[pieces + 1];
        double[] start = new double[pieces];
        double[] end = new double[pieces];
        for (int i = 0; i < joints.length; i++) {
            bounds[first + i] = fit.station(joints[i]) - turnIn;
            if (i > 0) {
                start[first + i - 1] = fit.curvature(joints[i - 1]);
                end[first + i - 1] = fit.curvature(joints[i]);
            }
        }
        bounds[0] = bounds[first] - approachLength;
        bounds[pieces] = bounds[first + joints.length - 1] + exitLength;
        return new ClothoidChain(bounds, start, end);
    }

    /** A point of the frame that was measured in, as seen in the frame of this path; all in m. */
    public Point inPathFrame(double x, double y) {
        return ownFrame(x - line.origin().x(), y - line.origin().y());
    }

    /** A point of the frame of this path, as seen in the frame that was measured in; all in m. */
    public Point inMeasuredFrame(double x, double y) {
        double along = x - approachLength;
        return new Point(
                line.origin().x() + first.x() + cos * along - sin * y,
                line.origin().y() + first.y() + sin * along + cos * y);
    }

    /** Station of the first point that was measured, m; zero or negative. */
    public double firstPoint() {
        return station[0];
    }

    private Point ownFrame(double fromOriginX, double fromOriginY) {
        double x = fromOriginX - first.x();
        double y = fromOriginY - first.y();
        return new Point(approachLength + cos * x + sin * y, cos * y - sin * x);
    }

    /** Root mean square distance of the points from the line, m. */
    public double rmsDeviation() {
        return rmsDeviation;
    }

    /** Largest distance of a point from the line, m. */
    public double maxDeviation() {
        return maxDeviation;
    }

    private double between(double[] values, double s) {
        if (s <= station[0]) {
            return values[0];
        }
        int last = station.length - 1;
        if (s >= station[last]) {
            return values[last];
        }
        int left = index.piece(s);
        if (s == station[left]) {
            return values[left];
        }
        int right = left + 1;
        double share = (station[right] - s) / (station[right] - station[left]);
        return values[right] - share * (values[right] - values[left]);
    }

    @Override
    public double start() {
        return chain.start();
    }

    @Override
    public double end() {
        return chain.end();
    }

    @Override
    public double curvature(double s) {
        return chain.curvature(s);
    }

    @Override
    public double curvatureGradient(double s) {
        return chain.gradient(s);
    }

    @Override
    public double heading(double s) {
        return chain.heading(s);
    }

    @Override
    public Point position(double s) {
        return chain.position(s);
    }

    @Override
    public double grade(double s) {
        return between(line.grade(), s);
    }

    @Override
    public double banking(double s) {
        return between(line.banking(), s);
    }

    @Override
    public double widthLeft(double s) {
        return between(line.widthLeft(), s);
    }

    @Override
    public double widthRight(double s) {
        return between(line.widthRight(), s);
    }

    @Override
    public void at(double s, Place place) {
        chain.at(s, grade(s), banking(s), place);
    }

    @Override
    public double[] kinks() {
        return chain.kinks();
    }
}
