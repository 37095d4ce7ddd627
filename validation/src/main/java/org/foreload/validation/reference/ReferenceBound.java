package org.foreload.validation.reference;

import java.util.Arrays;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.vehicle.Car;

/**
 * The ideal entry as one nonlinear program over the whole line: the unknowns are the speeds squared at all stations,
 * the objective is the time, and every limit of every step is a constraint. Solved by an interior-point method: the
 * time plus a logarithmic barrier on each margin is minimised by Newton's method, with a barrier that is made ever
 * weaker (A. V. Fiacco, G. P. McCormick, Nonlinear Programming, 1968; S. Boyd, L. Vandenberghe, Convex Optimization,
 * ch. 11; both from memory). As a step ties only its two ends together, the second derivatives form a tridiagonal
 * matrix.
 *
 * <p>It knows nothing of where the car can be slowed from, of corner speeds or of passes forward and backward.
 */
public final class ReferenceBound {

    /** Barrier, s, at the start and at the end; the time is wrong by at most the last times the number of margins. */
    private static final double FIRST_BARRIER = 1e-2;

    private static final double LAST_BARRIER = 1e-8;
    private static final double WEAKER = 0.1;

    private static final int NEWTON_ROUNDS = 60;

    /** Newton's method ends where it would gain less than this share of the barrier. */
    private static final double NEWTON_END = 1e-2;

    private final TwoAxles car;
    private final int steps;
    private final double[] station;
    private final double[] curvature;
    private final double[] slope;
    private final double approach;
    private final double[] out = new double[TwoAxles.MARGINS];
    private double[] w;
    private double time;

    private ReferenceBound(Car car, Corner corner, double[] stations) {
        this.car = new TwoAxles(car);
        Path path = corner.path();
        this.station = stations;
        this.steps = station.length - 1;
        this.curvature = new double[steps];
        this.slope = new double[steps];
        for (int i = 0; i < steps; i++) {
            double middle = (station[i] + station[i + 1]) / 2;
            if (path.grade(middle) != 0 || path.banking(middle) != 0) {
                throw new IllegalArgumentException("this reference knows flat roads only");
            }
            curvature[i] = path.curvature(middle);
            slope[i] = path.curvatureGradient(middle);
        }
        this.approach = corner.approachSpeed() * corner.approachSpeed();
        this.w = new double[steps + 1];
    }

    /**
     * The fastest entry on steps of about the length given, m. It is solved with these steps and with half of them, and
     * both are drawn on to steps of no length (L. F. Richardson's rule for an error in proportion to the step, from
     * memory): where the curvature bends, a program in steps gains something of the order of one step.
     */
    public static ReferenceBound solve(Car car, Corner corner, double step) {
        double[] coarse = stations(corner.path(), step);
        double[] halved = new double[2 * coarse.length - 1];
        for (int i = 0; i < halved.length; i++) {
            halved[i] = (coarse[i / 2] + coarse[(i + 1) / 2]) / 2;
        }
        ReferenceBound bound = new ReferenceBound(car, corner, coarse);
        bound.solve();
        ReferenceBound fine = new ReferenceBound(car, corner, halved);
        fine.solve();
        bound.time = 2 * fine.sumOfTimes() - bound.sumOfTimes();
        for (int i = 0; i < coarse.length; i++) {
            bound.w[i] = 2 * fine.w[2 * i] - bound.w[i];
        }
        return bound;
    }

    private static double[] stations(Path path, double step) {
        double[] marks = new double[path.kinks().length + 2];
        marks[0] = path.start();
        System.arraycopy(path.kinks(), 0, marks, 1, path.kinks().length);
        marks[marks.length - 1] = path.end();
        double[] all = new double[] {marks[0]};
        for (int i = 0; i + 1 < marks.length; i++) {
            int parts = (int) Math.ceil((marks[i + 1] - marks[i]) / step);
            int size = all.length;
            all = Arrays.copyOf(all, size + parts);
            for (int j = 1; j <= parts; j++) {
                all[size + j - 1] = marks[i] + (marks[i + 1] - marks[i]) * j / parts;
            }
        }
        return all;
    }

    private void solve() {
        // Any speed low enough is inside all limits.
        Arrays.fill(w, Math.min(approach / 2, 4));
        for (double barrier = FIRST_BARRIER; barrier > LAST_BARRIER; barrier *= WEAKER) {
            minimise(barrier);
        }
    }

    private void minimise(double barrier) {
        double value = value(w, barrier);
        for (int round = 0; round < NEWTON_ROUNDS; round++) {
            double[] gradient = new double[steps + 1];
            double[] diagonal = new double[steps + 1];
            double[] beside = new double[steps];
            derivatives(barrier, gradient, diagonal, beside);
            double[] direction = solveTridiagonal(gradient, diagonal, beside);
            double decrement = 0;
            for (int i = 0; i <= steps; i++) {
                decrement -= gradient[i] * direction[i];
            }
            if (!(decrement > NEWTON_END * barrier)) {
                return;
            }
            double share = 1;
            double[] next = moved(direction, share);
            double nextValue = value(next, barrier);
            while (!(nextValue <= value - 1e-4 * share * decrement) && share > 1e-12) {
                share /= 2;
                next = moved(direction, share);
                nextValue = value(next, barrier);
            }
            if (!(nextValue < value)) {
                return;
            }
            w = next;
            value = nextValue;
        }
    }

    private double[] moved(double[] direction, double share) {
        double[] next = new double[steps + 1];
        for (int i = 0; i <= steps; i++) {
            next[i] = w[i] + share * direction[i];
        }
        return next;
    }

    private double value(double[] at, double barrier) {
        double sum = atStart(at[0], barrier);
        for (int i = 0; i < steps && sum < Double.POSITIVE_INFINITY; i++) {
            sum += ofStep(i, at[i], at[i + 1], barrier);
        }
        return sum;
    }

    private double atStart(double first, double barrier) {
        return first < approach ? -barrier * Math.log(1 - first / approach) : Double.POSITIVE_INFINITY;
    }

    /** Time of a step and the barrier of its limits; infinite outside. */
    private double ofStep(int i, double from, double to, double barrier) {
        if (!inside(i, from, to)) {
            return Double.POSITIVE_INFINITY;
        }
        double length = station[i + 1] - station[i];
        double product = 1;
        for (double margin : out) {
            product *= margin;
        }
        return 2 * length / (Math.sqrt(from) + Math.sqrt(to)) - barrier * Math.log(product);
    }

    /** Whether a step keeps within all limits; fills its margins. */
    private boolean inside(int i, double from, double to) {
        double length = station[i + 1] - station[i];
        return from > 0
                && to > 0
                && car.margins((from + to) / 2, (to - from) / (2 * length), curvature[i], slope[i], out);
    }

    /**
     * Derivatives of each step by its two ends, by central differences; the reach of a difference keeps within a
     * fraction of the distance to the nearest limit.
     */
    private void derivatives(double barrier, double[] gradient, double[] diagonal, double[] beside) {
        gradient[0] += barrier / (approach - w[0]);
        diagonal[0] += barrier / ((approach - w[0]) * (approach - w[0]));
        for (int i = 0; i < steps; i++) {
            double e = reach(i);
            double a = w[i];
            double b = w[i + 1];
            double pp = ofStep(i, a + e, b + e, barrier);
            double pm = ofStep(i, a + e, b - e, barrier);
            double mp = ofStep(i, a - e, b + e, barrier);
            double mm = ofStep(i, a - e, b - e, barrier);
            double zz = ofStep(i, a, b, barrier);
            // In p = a + b and q = a − b the second derivatives are well apart in size: differences are taken along
            // them.
            double p1 = (pp - mm) / (2 * e);
            double q1 = (pm - mp) / (2 * e);
            double p2 = (pp - 2 * zz + mm) / (e * e);
            double q2 = (pm - 2 * zz + mp) / (e * e);
            double ae = e / 2;
            double cross = (ofStep(i, a + ae, b, barrier)
                            - ofStep(i, a, b + ae, barrier)
                            - ofStep(i, a, b - ae, barrier)
                            + ofStep(i, a - ae, b, barrier))
                    / (ae * ae);
            // f_aa + 2 f_ab + f_bb = p2, f_aa − 2 f_ab + f_bb = q2, f_aa − f_bb = cross.
            gradient[i] += (p1 + q1) / 2;
            gradient[i + 1] += (p1 - q1) / 2;
            diagonal[i] += Math.max(0, (p2 + q2) / 4 + cross / 2);
            diagonal[i + 1] += Math.max(0, (p2 + q2) / 4 - cross / 2);
            beside[i] += (p2 - q2) / 4;
        }
    }

    private double reach(int i) {
        double e = 1e-4 * Math.min(w[i], w[i + 1]);
        while (e > 1e-12
                && !(inside(i, w[i] + e, w[i + 1] - e)
                        && inside(i, w[i] - e, w[i + 1] + e)
                        && inside(i, w[i] + e, w[i + 1] + e)
                        && inside(i, w[i] - e, w[i + 1] - e))) {
            e /= 2;
        }
        return e / 16;
    }

    /** Newton's direction; where the matrix is not positive definite, its diagonal is raised until it is. */
    private double[] solveTridiagonal(double[] gradient, double[] diagonal, double[] beside) {
        double raise = 0;
        while (true) {
            double[] pivot = new double[steps + 1];
            double[] rest = new double[steps + 1];
            boolean definite = true;
            for (int i = 0; i <= steps && definite; i++) {
                double below = i == 0 ? 0 : beside[i - 1] / pivot[i - 1];
                pivot[i] = diagonal[i] * (1 + raise) + raise * 1e-9 - (i == 0 ? 0 : below * beside[i - 1]);
                rest[i] = -gradient[i] - (i == 0 ? 0 : below * rest[i - 1]);
                definite = pivot[i] > 0;
            }
            if (definite) {
                double[] direction = new double[steps + 1];
                for (int i = steps; i >= 0; i--) {
                    double after = i == steps ? 0 : beside[i] * direction[i + 1];
                    direction[i] = (rest[i] - after) / pivot[i];
                }
                return direction;
            }
            raise = raise == 0 ? 1e-6 : raise * 10;
        }
    }

    /** Number of stations. */
    public int size() {
        return station.length;
    }

    /** Station {@code i}, m. */
    public double station(int i) {
        return station[i];
    }

    /** Speed at station {@code i}, m/s. */
    public double speed(int i) {
        return Math.sqrt(w[i]);
    }

    /** Speed at any station, m/s. */
    public double speedAt(double s) {
        int i = 0;
        while (i + 2 < station.length && station[i + 1] <= s) {
            i++;
        }
        double share = (s - station[i]) / (station[i + 1] - station[i]);
        return Math.sqrt(w[i] * (1 - share) + w[i + 1] * share);
    }

    /** Time along the whole line, s. */
    public double time() {
        return time;
    }

    private double sumOfTimes() {
        double sum = 0;
        for (int i = 0; i < steps; i++) {
            sum += 2 * (station[i + 1] - station[i]) / (speed(i) + speed(i + 1));
        }
        return sum;
    }

    /** Lowest speed from turn-in on, m/s. */
    public double minimumSpeed() {
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= steps; i++) {
            lowest = station[i] >= 0 ? Math.min(lowest, speed(i)) : lowest;
        }
        return lowest;
    }

    /**
     * Where the braking starts, m: the curves of speed squared before and in the braking, each drawn on from where it
     * is surely itself, meet there.
     */
    public double brakePoint() {
        int least = 0;
        for (int i = 0; i <= steps; i++) {
            least = station[i] >= 0 && (station[least] < 0 || w[i] < w[least]) ? i : least;
        }
        int top = 0;
        for (int i = 0; i <= least; i++) {
            top = w[i] > w[top] ? i : top;
        }
        int before = Math.max(0, top - 4);
        int braking = Math.min(steps - 1, top + 3);
        double rise = (w[before + 1] - w[before]) / (station[before + 1] - station[before]);
        double fall = (w[braking + 1] - w[braking]) / (station[braking + 1] - station[braking]);
        double gap = w[braking] - fall * station[braking] - (w[before] - rise * station[before]);
        return gap / (rise - fall);
    }
}
