package org.foreload.examples.learn;

import org.foreload.grip.GripLimits;
import org.foreload.grip.GripUse;
import org.foreload.grip.Motion;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;

/**
 * Where the four sliders of the page stand.
 *
 * @param deceleration m/s², zero or above
 * @param frontBrakeShare front share of the brake force, 0 to 1
 * @param cgHeight height of the centre of gravity above the road, m
 * @param surface friction of the road over that for which the tyres' friction is given, plain number
 */
public record GripSetting(double deceleration, double frontBrakeShare, double cgHeight, double surface) {

    /** Speed of the car, m/s. */
    public static final double SPEED = 20;

    /** Lateral acceleration of the car, m/s², to the left: moderate, so that there is grip left to see. */
    public static final double LATERAL = 4;

    /** The same with another deceleration in m/s². */
    public GripSetting withDeceleration(double other) {
        return new GripSetting(other, frontBrakeShare, cgHeight, surface);
    }

    /** The car with the share, the height and the friction of this setting. */
    public Car applied(Car car) {
        Chassis chassis = car.chassis();
        return car.with(new Chassis(
                        chassis.mass(),
                        chassis.wheelbase(),
                        chassis.cgToFrontAxle(),
                        cgHeight,
                        chassis.yawInertia(),
                        chassis.frontTrack(),
                        chassis.rearTrack()))
                .withFrontBrakeShare(frontBrakeShare)
                .withTyres(car.frontTyre().withFriction(surface), car.rearTyre().withFriction(surface));
    }

    /** What is asked of a car in this setting, and what it has. */
    public GripUse of(Car car) {
        return GripLimits.of(applied(car)).use(Motion.steady(SPEED, deceleration, LATERAL));
    }

    /** What the front axle can give sideways, N, beside its braking. */
    public double frontCapacity(Car car) {
        return of(car).front().lateralCapacity();
    }

    /** What the rear axle can give sideways, N, beside its braking. */
    public double rearCapacity(Car car) {
        return of(car).rear().lateralCapacity();
    }
}
