package org.foreload.ideal;

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

    /** Change of acceleration, m/s², with which the slope of the utilisation is read. */
    private static final double PROBE = 1e-5;

    /** Fall of utilisation over a probe that counts: above rounding and root accuracy, far below any real slope. */
    private static final double FALL = 1e-9;

    /**
     * Gap between the best start found and the proven bound, relative to speed squared, at which the maximum is taken.
     */
    private static final double GAP = 1e-9;

    /** Bracket of acceleration, m/s², at which the search for the maximum ends in any case. */
    private static final double NARROW = 1e-10;

    /** Accelerations beyond this, m/s², are not looked at: more than any tyre gives. */
    private static final double FARTHEST = 1000;

    private final double frictionScale;

    private LocalGrip grip;
    private double step;
    private double endBound;
    private double startBound;

    private double acceleration;
    private double start;
    private boolean free;

    // One trial of the maximum: value, slope, and what bounds it there.
    private double value;
    private double slope;
    private Bound bound;
    private double speedGuess;

    private enum Bound {
        FRONT,
        REAR,
        POWER,
        END,
        START,
        EMPTY
    }

    FastestStart(double frictionScale) {
        this.frictionScale = frictionScale;
    }

    /** Acceleration over the step that was solved last, m/s². */
    double acceleration() {
        return acceleration;
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
        boolean sameAsBefore = free && limits == grip && length == step;
        grip = limits;
        step = length;
        endBound = highestEnd;
        startBound = highestStart;
        if (sameAsBefore && start <= startBound && start + 2 * acceleration * step <= endBound) {
            return start;
        }
        Chord line = grip.overStep(endBound, -step, frictionScale);
        double gentlest = (endBound - startBound) / (2 * step);
        if (line.feasible(gentlest)) {
            return found(startBound, gentlest, false);
        }
        if (!free) {
            double onLine = hardestOnLine(line, gentlest);
            if (!Double.isNaN(onLine)) {
                return found(endBound - 2 * onLine * step, onLine, false);
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

    private double found(double speedSquared, double over, boolean endIsFree) {
        start = speedSquared;
        acceleration = over;
        free = endIsFree;
        return speedSquared;
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
     * Cutting planes in one unknown: tangents from both sides (on the side of the power limit, its chord) prove how far
     * the maximum can be from the best value.
     */
    private double highestOverAll() {
        double a = firstGuess();
        if (Double.isNaN(a)) {
            return found(0, 0, false);
        }
        double best = a;
        double bestValue = value;
        Bound bestBound = bound;
        double left = Double.NaN;
        double leftValue = 0;
        double leftSlope = 0;
        Bound leftBound = bound;
        double right = Double.NaN;
        double rightValue = 0;
        double rightSlope = 0;
        Bound rightBound = bound;
        double width = NEIGHBOUR;
        for (int round = 0; bestBound != Bound.START; round++) {
            boolean emptyLeft = bound == Bound.EMPTY && a < best;
            if (emptyLeft || bound != Bound.EMPTY && slope > 0) {
                left = a;
                leftValue = value;
                leftSlope = slope;
                leftBound = bound;
            } else {
                right = a;
                rightValue = value;
                rightSlope = slope;
                rightBound = bound;
            }
            if (Double.isNaN(left)) {
                a -= width;
                width *= 2;
            } else if (Double.isNaN(right)) {
                a += width;
                width *= 2;
            } else if (leftBound == Bound.EMPTY || rightBound == Bound.EMPTY) {
                a = (left + right) / 2;
            } else {
                double rise = leftSlope;
                double fall = rightBound == Bound.POWER ? powerChord(left, right, rightValue) : rightSlope;
                double crossing = crossing(left, leftValue, rise, right, rightValue, fall);
                if (leftValue + rise * (crossing - left) - bestValue <= GAP * bestValue) {
                    break;
                }
                if (rightBound == Bound.POWER && round % 2 == 0) {
                    crossing = crossing(left, leftValue, rise, right, rightValue, rightSlope);
                }
                boolean smooth = leftBound == rightBound && round % 3 != 2;
                a = smooth ? left + (right - left) * leftSlope / (leftSlope - rightSlope) : crossing;
                if (!(a > left && a < right)) {
                    a = (left + right) / 2;
                }
            }
            if (right - left <= NARROW) {
                break;
            }
            highestAt(a);
            if (bound != Bound.EMPTY && value > bestValue) {
                best = a;
                bestValue = value;
                bestBound = bound;
            }
        }
        return found(bestValue, best, bestBound != Bound.START && leftBound != Bound.END && rightBound != Bound.END);
    }

    /** Where a line through one point meets a line through another. */
    private static double crossing(
            double left, double leftValue, double leftSlope, double right, double rightValue, double rightSlope) {
        return (rightValue - leftValue + leftSlope * left - rightSlope * right) / (leftSlope - rightSlope);
    }

    /**
     * Slope of the chord of the power limit. That limit alone is convex over the acceleration (the power allows a speed
     * of power over force), so its tangents prove nothing, but its chords lie above it.
     */
    private double powerChord(double left, double right, double rightValue) {
        return (rightValue - (grip.powerSpeedSquared(left) - left * step)) / (right - left);
    }

    private double firstGuess() {
        speedGuess = start > 0 ? start : Math.min(startBound, endBound);
        highestAt(acceleration);
        if (bound != Bound.EMPTY) {
            return acceleration;
        }
        // Slowly there is room for some gentle acceleration, unless the road itself is too steep.
        double slow = Math.min(SLOW, Math.min(endBound, startBound) * NEIGHBOUR_SPEED);
        double lowest = Math.max(-FARTHEST, (slow - startBound) / step);
        double highest = Math.min(FARTHEST, (endBound - slow) / step);
        double a = grip.atSpeed(slow, frictionScale)
                .feasibleNear(-grip.coastingDeceleration(slow), NEIGHBOUR, lowest, highest);
        if (!Double.isNaN(a)) {
            speedGuess = slow;
            highestAt(a);
        }
        return bound == Bound.EMPTY ? Double.NaN : a;
    }

    /** Highest start speed with the acceleration a over the step, its slope over a, and what bounds it. */
    private void highestAt(double a) {
        double top = endBound - a * step;
        Bound by = Bound.END;
        if (startBound + a * step < top) {
            top = startBound + a * step;
            by = Bound.START;
        }
        if (top > 0 && a > grip.powerAcceleration(top)) {
            top = Math.min(top, grip.powerSpeedSquared(a));
            by = Bound.POWER;
        }
        if (!(top > 0)) {
            bound = Bound.EMPTY;
            return;
        }
        Chord speeds = grip.atAcceleration(a, frictionScale);
        if (!speeds.feasible(top)) {
            double width = NEIGHBOUR_SPEED * Math.min(top, speedGuess);
            double inside = speeds.feasibleNear(Math.min(top, speedGuess), width, 0, top);
            if (Double.isNaN(inside)) {
                bound = Bound.EMPTY;
                return;
            }
            top = speeds.edgeFrom(inside, width, top);
            speedGuess = top;
            by = grip.frontUtilisation(top, -a) >= grip.rearUtilisation(top, -a) ? Bound.FRONT : Bound.REAR;
        }
        bound = by;
        value = top - a * step;
        slope = speedSlope(by, top, a) - step;
    }

    /** How the highest speed squared in the middle of the step changes with the acceleration. */
    private double speedSlope(Bound by, double w, double a) {
        double wProbe = w * PROBE;
        return switch (by) {
            case END -> -step;
            case START -> step;
            case POWER -> (grip.powerSpeedSquared(a + PROBE) - w) / PROBE;
            case FRONT -> {
                double here = grip.frontUtilisation(w, -a);
                yield -(grip.frontUtilisation(w, -a - PROBE) - here)
                        / PROBE
                        / ((grip.frontUtilisation(w + wProbe, -a) - here) / wProbe);
            }
            default -> {
                double here = grip.rearUtilisation(w, -a);
                yield -(grip.rearUtilisation(w, -a - PROBE) - here)
                        / PROBE
                        / ((grip.rearUtilisation(w + wProbe, -a) - here) / wProbe);
            }
        };
    }
}
