package org.foreload.entry;

import java.util.Arrays;
import org.foreload.bicycle.WheelForces;
import org.foreload.conventions.Bounds;
import org.foreload.path.Path;

/**
 * How much of their grip the axles use, and how near the car comes to rolling over and to the edges, along one run:
 * read at the end of each step from where the car slows, with or without a profile.
 */
final class Fullness {

    /** Place of the front axle's use while the brake is on, and once it is off; the rear axle's comes after it. */
    private static final int ON_BRAKE = 0;

    private static final int OFF_BRAKE = 2;

    /** Brake force over mass, m/s², below which the brake counts as off: it fades away for some metres. */
    private static final double LEAST_BRAKE = 0.05;

    private final Path path;
    private final boolean antiLock;
    private boolean slowed;
    private final double[] soFar = new double[OFF_BRAKE + 2];
    private final double[] onTheWayIn = new double[OFF_BRAKE + 2];
    private double tipping;
    private boolean tipsFirst;
    private double edge = Double.POSITIVE_INFINITY;

    /** @param antiLock whether the car's brakes are kept from stopping a wheel */
    Fullness(Path path, boolean antiLock) {
        this.path = path;
        this.antiLock = antiLock;
    }

    /** Takes in where the car is across the road. */
    void across(double station, double offset) {
        edge = Bounds.smaller(
                edge, Bounds.smaller(path.widthLeft(station) - offset, path.widthRight(station) + offset));
    }

    /**
     * Takes in what the wheels carry from the brake point on.
     *
     * @param brake brake force over mass, m/s²
     * @param slows whether the throttle has gone, or the brake outweighed it, and has not come again
     * @param entering whether the way in still lasts here; where it lasts on, what came before counts too
     */
    void wheels(WheelForces wheels, double brake, boolean slows, boolean entering) {
        if (slows && !slowed) {
            slowed = true;
            Arrays.fill(soFar, 0);
            Arrays.fill(onTheWayIn, 0);
        }
        int front = brake > LEAST_BRAKE ? ON_BRAKE : OFF_BRAKE;
        soFar[front] = Bounds.larger(soFar[front], bound(wheels, 0));
        soFar[front + 1] = Bounds.larger(soFar[front + 1], bound(wheels, 2));
        if (entering && (slows || !slowed)) {
            System.arraycopy(soFar, 0, onTheWayIn, 0, soFar.length);
        }
    }

    /**
     * Takes in how near the car is to rolling over.
     *
     * @param use lateral force over that at which the inner wheels leave the road
     */
    void tipping(WheelForces wheels, double use) {
        if (use > tipping) {
            tipping = use;
            tipsFirst = use > bound(wheels, 0) && use > bound(wheels, 2);
        }
    }

    /** How near an edge the car has come, m. */
    double edge() {
        return edge;
    }

    /** Takes that over. */
    void edge(double nearest) {
        edge = nearest;
    }

    EntryResult.Margins margins() {
        double rollOver = tipsFirst ? Bounds.larger(1 - tipping, 0) : Double.NaN;
        return new EntryResult.Margins(left(ON_BRAKE), left(OFF_BRAKE), rollOver, edge);
    }

    private EntryResult.AxleMargins left(int front) {
        return new EntryResult.AxleMargins(
                Bounds.larger(1 - onTheWayIn[front], 0), Bounds.larger(1 - onTheWayIn[front + 1], 0));
    }

    /**
     * Share of an axle's friction that is used and cannot be had back for the lateral force: what slows a wheel does
     * not count where an anti-lock system eases it off as soon as the tyre needs its grip across.
     */
    double bound(WheelForces wheels, int left) {
        return use(wheels, left, antiLock);
    }

    /** Share of an axle's friction that is used: of its wheels' shares, the mean by what each could carry. */
    static double use(WheelForces wheels, int left) {
        return use(wheels, left, false);
    }

    private static double use(WheelForces wheels, int left, boolean givesBack) {
        double used = 0;
        double total = 0;
        for (int wheel = left; wheel < left + 2; wheel++) {
            double peak = wheels.peakY(wheel);
            if (wheels.load(wheel) > 0) {
                double force = wheels.longitudinal(wheel);
                double along = (givesBack ? Bounds.larger(force, 0) : force) / wheels.peakX(wheel);
                double across = wheels.lateral(wheel) / peak;
                used += peak * Math.sqrt(along * along + across * across);
                total += peak;
            }
        }
        return total > 0 ? used / total : 0;
    }
}
