package org.foreload.optimum;

import java.util.Arrays;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.SplineRelease;
import org.foreload.strategy.BrakePointSearch;
import org.foreload.strategy.CornerStudy;

/**
 * Brake plans as points, one unit of each variable about as far as the next: peak, start, length, and the shape as the
 * logarithms of its steps, so that every point is a release that never rises. The brake point is counted from where a
 * car of constant brake force would have to brake for the same release, so that it hardly depends on the others.
 */
final class ReleaseSpace {

    /** Free values of the shape: with fewer, families limit it; with many more, they only wrinkle it. */
    static final int SHAPE_VALUES = 6;

    private static final int PEAK = 0;
    private static final int START = 1;
    /** Place of the length among the variables. */
    static final int LENGTH = 2;
    /** Place of the brake point among the variables. */
    static final int SHIFT = 3;

    private static final int SHAPE = 4;

    /** One unit of the brake point, m. */
    static final double SHIFT_UNIT = 0.4;

    /**
     * One unit: of the peak as a share of the locking limit, of start and length as shares of the way to the apex, and
     * of the brake point in metres.
     */
    private static final double[] UNITS = {0.05, 0.15, 0.15, SHIFT_UNIT};

    /** One unit of the logarithm of a step. */
    private static final double STEP_UNIT = 0.4;

    private static final double[] LOWEST = {0.15, -3, 0.05, -60};
    private static final double[] HIGHEST = {Double.NaN, 1.5, 4.5, 60};

    /** The logarithm of a step lies within this of the last step's. */
    private static final double STEP_RANGE = 6;

    private final double hardest;
    private final double limit;
    private final double apex;
    private final double before;
    private final double buildUpTime;
    private final Optional<ReleaseShape> fixed;
    private final int size;

    /**
     * The space of the releases of a study.
     *
     * @param study car, corner, driver and margin
     * @param like a release near which the search sets out: its bend is the measure of all
     * @param hardest highest peak, m/s²: with more, a wheel would stop in a straight line
     * @param buildUpTime time in which the foot reaches the peak, s
     * @param fixed the shape, where the search is within one family; empty for a free one
     */
    static ReleaseSpace of(
            CornerStudy study, Release like, double hardest, double buildUpTime, Optional<ReleaseShape> fixed) {
        return of(study, like, study.lockLimit(), hardest, buildUpTime, fixed);
    }

    /** The same for free shapes, with peaks counted as shares of another deceleration, m/s², than the locking limit. */
    static ReleaseSpace of(CornerStudy study, Release like, double whole, double hardest, double buildUpTime) {
        return of(study, like, whole, hardest, buildUpTime, Optional.empty());
    }

    private static ReleaseSpace of(
            CornerStudy study,
            Release like,
            double whole,
            double hardest,
            double buildUpTime,
            Optional<ReleaseShape> fixed) {
        return new ReleaseSpace(
                whole,
                Math.max(whole, hardest),
                study.apex(like),
                -study.bound().brakePoint().orElse(0),
                buildUpTime,
                fixed);
    }

    /**
     * @param limit deceleration at which a wheel locks in a straight line, m/s²
     * @param hardest highest peak, m/s²: with more, a wheel would stop in a straight line
     * @param apex distance from turn-in to the apex, m
     * @param before how far before turn-in a release may start, m, if that is farther than three times the way to the
     *     apex: a car with downforce eases the brake from the first metre on, as it slows
     * @param buildUpTime time in which the foot reaches the peak, s
     * @param fixed the shape, where the search is within one family; empty for a free one
     */
    private ReleaseSpace(
            double limit,
            double hardest,
            double apex,
            double before,
            double buildUpTime,
            Optional<ReleaseShape> fixed) {
        this.hardest = hardest / limit;
        this.limit = limit;
        this.apex = apex;
        this.before = Math.max(0, before / apex + LOWEST[START]);
        this.buildUpTime = buildUpTime;
        this.fixed = fixed;
        this.size = fixed.isPresent() ? SHAPE : SHAPE + SHAPE_VALUES;
    }

    int size() {
        return size;
    }

    double[] low() {
        double[] bounds = bounds(LOWEST, -STEP_RANGE);
        bounds[START] -= before / UNITS[START];
        return bounds;
    }

    double[] high() {
        double[] bounds = bounds(HIGHEST, STEP_RANGE);
        bounds[PEAK] = hardest / UNITS[PEAK];
        bounds[LENGTH] += before / UNITS[LENGTH];
        return bounds;
    }

    private double[] bounds(double[] ends, double steps) {
        double[] bounds = new double[size];
        for (int i = 0; i < SHAPE; i++) {
            bounds[i] = ends[i] / UNITS[i];
        }
        Arrays.fill(bounds, SHAPE, size, steps / STEP_UNIT);
        return bounds;
    }

    /** How the driver brakes at a point. */
    Braking braking(double[] x) {
        double start = x[START] * UNITS[START] * apex;
        double length = x[LENGTH] * UNITS[LENGTH] * apex;
        ReleaseShape shape = fixed.orElseGet(() -> shape(x));
        return Braking.of(x[PEAK] * UNITS[PEAK] * limit, buildUpTime, new Release(shape, start, start + length));
    }

    private static ReleaseShape shape(double[] x) {
        double[] steps = new double[SHAPE_VALUES + 1];
        double sum = 0;
        for (int i = 0; i < steps.length; i++) {
            steps[i] = i < SHAPE_VALUES ? Math.exp(x[SHAPE + i] * STEP_UNIT) : 1;
            sum += steps[i];
        }
        double[] inner = new double[SHAPE_VALUES];
        double left = 1;
        for (int i = 0; i < SHAPE_VALUES; i++) {
            left = Math.max(0, left - steps[i] / sum);
            inner[i] = left;
        }
        return new SplineRelease("free", inner);
    }

    /** The plan at a point; a search knows the estimate that its brake point is counted from. */
    BrakePlan plan(double[] x, BrakePointSearch search) {
        Braking braking = braking(x);
        return braking.from(search.estimate(braking) + shift(x));
    }

    /** The point nearest to a plan. */
    double[] point(BrakePlan plan, BrakePointSearch search) {
        return point(plan, plan.brakePoint() - search.estimate(plan.braking()));
    }

    /** How much later, m, than its estimate the brake point at a point is. */
    static double shift(double[] x) {
        return x[SHIFT] * UNITS[SHIFT];
    }

    /**
     * The point nearest to a plan whose brake point is so much later than its estimate: its shape read at the spline's
     * places.
     */
    double[] point(BrakePlan plan, double shift) {
        Release release = plan.release();
        double[] x = new double[size];
        x[PEAK] = plan.peakDeceleration() / limit / UNITS[PEAK];
        x[START] = release.start() / apex / UNITS[START];
        x[LENGTH] = (release.end() - release.start()) / apex / UNITS[LENGTH];
        x[SHIFT] = shift / UNITS[SHIFT];
        if (fixed.isEmpty()) {
            readShape(release.shape(), x);
        }
        double[] low = low();
        double[] high = high();
        for (int i = 0; i < size; i++) {
            x[i] = Math.max(low[i], Math.min(high[i], x[i]));
        }
        return x;
    }

    private static void readShape(ReleaseShape shape, double[] x) {
        double[] steps = new double[SHAPE_VALUES + 1];
        for (int i = 0; i < steps.length; i++) {
            double before = shape.remaining(SplineRelease.place(i, SHAPE_VALUES + 1));
            double after = i == SHAPE_VALUES ? 0 : shape.remaining(SplineRelease.place(i + 1, SHAPE_VALUES + 1));
            steps[i] = Math.max(SMALLEST_STEP, before - after);
        }
        for (int i = 0; i < SHAPE_VALUES; i++) {
            x[SHAPE + i] = Math.log(steps[i] / steps[SHAPE_VALUES]) / STEP_UNIT;
        }
    }

    /** A step taken for no step at all, so that its logarithm stays within reach of the search. */
    private static final double SMALLEST_STEP = 0.01;
}
