package org.foreload.strategy;

import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.conventions.Gravity;
import org.foreload.grip.HeldBrakes;
import org.foreload.ideal.IdealProfile;
import org.foreload.path.Path;
import org.foreload.vehicle.Car;

/**
 * Where a car of constant brake force would have to brake so as to come out of a release a little slower than the
 * bound: a closed form, near which searches begin. Anti-lock brakes give no more than the tyres hold.
 */
final class BrakePointEstimate {

    /** Speed that a simulated entry carries, as a share of the bound's. */
    private static final double SPEED_SHARE = 0.97;

    /**
     * Deceleration, m/s², of a car that coasts from brake off to its slowest point: the drag of its tyres in a corner,
     * roughly, without the drag of the air.
     */
    private static final double COASTING = 0.8;

    /** Parts into which a release is cut to find what is left of it. */
    private static final int PARTS = 50;

    /**
     * Rounds in which brake point and speed there settle on each other: each about halves the error, but where
     * downforce changes the grip along the way. It is an estimate, and the search that begins with it stands it.
     */
    private static final int ROUNDS = 12;

    /** Rounds where the road falls, and the car gains speed nearly as quickly as the brake takes it away. */
    private static final int MOST_ROUNDS = 60;

    /** Change in a round, m, at which brake point and speed have settled. */
    private static final double SETTLED = 0.1;

    private final IdealProfile bound;
    private final Car car;
    private final HeldBrakes brakes;
    private final Path path;

    BrakePointEstimate(IdealProfile bound, Car car, Path path) {
        this.bound = bound;
        this.path = path;
        this.car = car;
        this.brakes = new HeldBrakes(car);
    }

    /**
     * Brake point, m. It meets the speed that the car has gained on the approach until there. Where the whole release
     * would slow the car by more than it has to lose, it lies within the release.
     */
    double of(Braking braking) {
        Release release = braking.release();
        double slowestAt = bound.minimumSpeedAt();
        double brakedTo = Math.min(release.end(), slowestAt);
        double coasted = COASTING * Math.max(0, slowestAt - brakedTo) + climbed(brakedTo, slowestAt);
        double target = SPEED_SHARE
                * Math.min(
                        bound.speedAt(Math.max(0, brakedTo)),
                        Math.sqrt(bound.minimumSpeed() * bound.minimumSpeed() + 2 * Math.max(0, coasted)));
        double[] left = lostAfter(braking, target * target);
        double lastAtFull = bound.brakePoint().orElse(release.start());
        double point = Math.min(lastAtFull, release.start());
        double peak = braking.peakDeceleration();
        double dragAtTarget = drag(target * target);
        double before = Double.NaN;
        for (int i = 0; i < ROUNDS || i < MOST_ROUNDS && Math.abs(point - before) > SETTLED; i++) {
            before = point;
            double speed = bound.speedAt(Math.min(point, lastAtFull));
            double toLose = (speed * speed - target * target) / 2
                    - dragAtTarget * Math.max(0, brakedTo - Math.max(release.start(), point))
                    - climbed(point, brakedTo);
            double square = (speed * speed + target * target) / 2;
            double full = (toLose - left[0]) / (brakes.given(peak, square) + drag(square));
            double there = full > 0 ? release.start() - full : whereLeft(release, left, toLose);
            point = there - speed * braking.buildUpTime() / 2;
        }
        return point;
    }

    /** What the road's slope takes off half the square of the speed between two stations, m²/s². */
    private double climbed(double from, double to) {
        double sum = 0;
        double part = Math.max(0, to - from) / PARTS;
        for (int i = 0; i < PARTS; i++) {
            sum += Math.sin(path.grade(from + (i + 0.5) * part)) * part;
        }
        return Gravity.G * sum;
    }

    private double drag(double square) {
        return car.aerodynamics().drag(square) / car.chassis().mass();
    }

    /**
     * Time, s/m, that braking earlier costs by itself: the car goes as slow as in the corner where it could go as fast
     * as on the straight. Zero where it need not slow.
     */
    double earlierCosts() {
        return Math.max(
                0,
                1 / bound.minimumSpeed() - 1 / bound.speedAt(bound.brakePoint().orElse(0)));
    }

    /** Lowest speed of the bound, m/s. */
    double slowest() {
        return bound.minimumSpeed();
    }

    /**
     * What the rest of a release takes off half the square of the speed, m²/s², at equally spaced stations from its
     * start to its end.
     */
    private double[] lostAfter(Braking braking, double square) {
        Release release = braking.release();
        double[] left = new double[PARTS + 1];
        double part = (release.end() - release.start()) / PARTS;
        for (int i = PARTS - 1; i >= 0; i--) {
            double asked = braking.peakDeceleration() * release.remaining(release.start() + (i + 0.5) * part);
            left[i] = left[i + 1] + brakes.given(asked, square) * part;
        }
        return left;
    }

    /** Station within a release from which on it takes so much. */
    private static double whereLeft(Release release, double[] left, double toLose) {
        int i = PARTS;
        while (i > 0 && left[i - 1] <= toLose) {
            i--;
        }
        double share = i == 0 || toLose <= 0 ? 0 : (toLose - left[i]) / (left[i - 1] - left[i]);
        return release.start() + (i - share) / PARTS * (release.end() - release.start());
    }
}
