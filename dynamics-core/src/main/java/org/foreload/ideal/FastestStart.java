package org.foreload.ideal;

import java.util.function.DoubleBinaryOperator;
import org.foreload.grip.Chord;
import org.foreload.grip.LocalGrip;

/**
 * One step of the backward pass: the highest speed at its start from which its end can be reached at or below a given
 * speed. The middle of the step must be feasible: with w₀ at the start and acceleration a, w in the middle is w₀ + a·ds
 * and at the end w₀ + 2a·ds.
 *
 * <p>Over the convex feasible set of the middle this is a convex problem in two unknowns. Mostly its solution ends the
 * step exactly at the speed asked for, hardest braking along the straight line of all such pairs: one root. Where the
 * line misses the set (the speed asked for is too high for the corner), or where a lower end speed allows a higher
 * start, the highest start speed is sought over all accelerations: a concave maximum in one unknown, each value of it a
 * root.
 *
 * <p>Keeps the last solution as the next first guess, so an instance serves one pass in one thread.
 */
final class FastestStart {

    /** First step of searches for an acceleration, m/s²: about its change between neighbouring steps. */
    private static final double NEIGHBOUR = 0.05;

    /** First step of searches for a speed squared, as a share of it. */
    private static final double NEIGHBOUR_SPEED = 0.01;

    /** Speed squared, m²/s², at which the road alone decides what can be driven: a centimetre per second. */
    private static final double SLOW = 1e-4;

    /** Change of acceleration, m/s², and of speed squared, relative, with which slopes of the utilisation are read. */
    private static final double PROBE = 1e-5;

    /** Fall of utilisation over a probe that counts: above rounding and root accuracy, far below any real slope. */
    private static final double FALL = 1e-9;

    /** Gap between the best start found and the proven bound, relative to speed squared, at which it is taken. */
    private static final double GAP = 1e-8;

    /** Bracket of acceleration, m/s², at which the search for the maximum ends where nothing proves its gap. */
    private static final double NARROW = 1e-8;

    /** Relative distance of start and end from what was asked for at which the step counts as held by neither. */
    private static final double FREE = 1e-6;

    /** Relative difference of the lengths of equal steps: rounding of their stations. */
    private static final double SAME_LENGTH = 1e-9;

    /** Accelerations beyond this, m/s², are not considered: more than any tyre gives. */
    private static final double FARTHEST = 1000;

    private final double frictionScale;

    private LocalGrip grip;
    private double step;
    private double endBound;
    private double startBound;

    private double speedGuess;

    private double start;
    private double acceleration;
    private boolean free;
    private int trials;

    /**
     * The highest start with one acceleration.
     *
     * @param a the acceleration, m/s²
     * @param start speed squared, m²/s²; −∞ if no speed is feasible
     * @param slope of the highest start over the acceleration; NaN where that proves nothing about other accelerations
     */
    private record Trial(double a, double start, double slope) {}

    FastestStart(double frictionScale) {
        this.frictionScale = frictionScale;
    }

    /** Acceleration over the step that was solved last, m/s². */
    double acceleration() {
        return acceleration;
    }

    /**
     * Number of accelerations tried so far, each a search for a speed: none where a step ends as asked for, or equals
     * the last.
     */
    int trials() {
        return trials;
    }

    /**
     * Highest speed squared at the start of a step, m²/s².
     *
     * @param limits limits in its middle
     * @param length its length, m
     * @param highestEnd speed squared at its end, m²/s²
     * @param highestStart speed squared that the start need not exceed, m²/s²; from it the engine can reach the end
     */
    double solve(LocalGrip limits, double length, double highestEnd, double highestStart) {
        boolean equal = free && limits == grip && Math.abs(length - step) <= SAME_LENGTH * step;
        grip = limits;
        step = length;
        endBound = highestEnd;
        startBound = highestStart;
        if (equal && start <= startBound && start + 2 * acceleration * step <= endBound) {
            return start;
        }
        Chord line = grip.overStep(endBound, -step, frictionScale);
        double gentlest = (endBound - startBound) / (2 * step);
        if (line.feasible(gentlest)) {
            return found(startBound, gentlest);
        }
        if (!free) {
            double onLine = hardestOnLine(line, gentlest);
            if (!Double.isNaN(onLine)) {
                return found(endBound - 2 * onLine * step, onLine);
            }
        }
        return highestOverAll();
    }

    /**
     * Highest speed squared at a place, m²/s², with whatever acceleration it needs: the step of no length.
     *
     * @param limits limits at the place
     * @param highest speed squared that it need not exceed, m²/s²
     */
    double atPlace(LocalGrip limits, double highest) {
        grip = limits;
        step = 0;
        endBound = Double.POSITIVE_INFINITY;
        startBound = highest;
        return highestOverAll();
    }

    private double found(double speedSquared, double over) {
        start = speedSquared;
        acceleration = over;
        free = start < startBound * (1 - FREE) && start + 2 * over * step < endBound * (1 - FREE);
        return start;
    }

    /**
     * Hardest braking that ends at the speed asked for; NaN if there is none, or if a lower end allows a higher start.
     */
    private double hardestOnLine(Chord line, double gentlest) {
        double highest = endBound / (2 * step);
        double inside = line.feasibleNear(acceleration, NEIGHBOUR, gentlest, highest);
        if (Double.isNaN(inside)) {
            return Double.NaN;
        }
        double hardest = line.edgeFrom(inside, -NEIGHBOUR, gentlest);
        if (hardest > grip.powerAcceleration(endBound - hardest * step)) {
            return Double.NaN;
        }
        Chord sameStart = grip.overStep(endBound - 2 * hardest * step, step, frictionScale);
        return sameStart.excess(hardest - PROBE) < -FALL ? Double.NaN : hardest;
    }

    /**
     * Cutting planes in one unknown: the next trial is where the tangents of both sides cross, and their crossing
     * proves how far the maximum can be from the best start. Where a side has no tangent, the bracket is halved.
     */
    private double highestOverAll() {
        Trial best = firstGuess();
        if (!(best.start > Double.NEGATIVE_INFINITY)) {
            return found(0, 0);
        }
        Trial now = best;
        Trial left = null;
        Trial right = null;
        double width = NEIGHBOUR;
        while (startBound - best.start > GAP * best.start) {
            if (now == best ? now.slope > 0 : now.a < best.a) {
                left = now;
            } else {
                right = now;
            }
            double next;
            if (left == null) {
                next = right.a - width;
                width *= 2;
            } else if (right == null) {
                next = left.a + width;
                width *= 2;
            } else {
                next = (right.start - left.start + left.slope * left.a - right.slope * right.a)
                        / (left.slope - right.slope);
                double bound = left.start + left.slope * (next - left.a);
                if (bound - best.start <= GAP * best.start || right.a - left.a <= NARROW) {
                    break;
                }
                if (!(next > left.a && next < right.a)) {
                    next = (left.a + right.a) / 2;
                }
            }
            now = highestAt(next);
            if (now.start > best.start) {
                best = now;
            }
        }
        return found(best.start, best.a);
    }

    private Trial firstGuess() {
        speedGuess = Math.min(startBound, endBound);
        Trial asBefore = highestAt(acceleration);
        if (asBefore.start > Double.NEGATIVE_INFINITY) {
            return asBefore;
        }
        // Slowly there is room for some gentle acceleration, unless the road itself is too steep.
        double slow = Math.min(SLOW, speedGuess * NEIGHBOUR_SPEED);
        double lowest = Math.max(-FARTHEST, (slow - startBound) / step);
        double highest = Math.min(FARTHEST, (endBound - slow) / step);
        double gentle = grip.atSpeed(slow, frictionScale)
                .feasibleNear(-grip.coastingDeceleration(slow), NEIGHBOUR, lowest, highest);
        speedGuess = slow;
        return highestAt(gentle);
    }

    /** The highest start with an acceleration: of the speeds squared in the middle of the step, the highest. */
    private Trial highestAt(double a) {
        trials++;
        double fromEnd = endBound - a * step;
        double fromStart = startBound + a * step;
        double top = Math.min(fromEnd, fromStart);
        double slope = fromStart < fromEnd ? 0 : -2 * step;
        if (top > 0 && a > grip.powerAcceleration(top)) {
            // Alone, the power limit is convex over the acceleration: its tangents prove nothing.
            top = grip.powerSpeedSquared(a);
            slope = Double.NaN;
        }
        if (!(top > 0)) {
            return new Trial(a, Double.NEGATIVE_INFINITY, Double.NaN);
        }
        Chord speeds = grip.atAcceleration(a, frictionScale);
        if (!speeds.feasible(top)) {
            // The guess is zero where the last limit was a standstill.
            double width = NEIGHBOUR_SPEED * (speedGuess > 0 ? Math.min(top, speedGuess) : top);
            double inside = speeds.feasibleNear(Math.min(top, speedGuess), width, 0, top);
            if (Double.isNaN(inside)) {
                return new Trial(a, Double.NEGATIVE_INFINITY, Double.NaN);
            }
            top = speeds.edgeFrom(inside, width, top);
            speedGuess = top;
            slope = speedSlope(top, a) - step;
        }
        return new Trial(a, top - a * step, slope);
    }

    /** How the highest speed squared that the tyres allow changes with the acceleration: from the nearer limit. */
    private double speedSlope(double w, double a) {
        double front = grip.frontUtilisation(w, -a);
        double rear = grip.rearUtilisation(w, -a);
        DoubleBinaryOperator use = grip.tippingUtilisation(w, -a) > Math.max(front, rear)
                ? grip::tippingUtilisation
                : front >= rear ? grip::frontUtilisation : grip::rearUtilisation;
        double here = use.applyAsDouble(w, -a);
        double byAcceleration = (use.applyAsDouble(w, -a - PROBE) - here) / PROBE;
        double bySpeed = (use.applyAsDouble(w * (1 + PROBE), -a) - here) / (w * PROBE);
        return -byAcceleration / bySpeed;
    }
}
