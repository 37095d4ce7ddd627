package org.foreload.vehicle;

import java.util.Objects;
import org.foreload.conventions.Checks;
import org.foreload.tyre.Tyre;

/**
 * A car: measured numbers, grouped by what they belong to. No mass, height or friction has a default: each must be
 * given. {@link #builder()} asks for them one by one, by name and unit.
 *
 * @param name for reports
 * @param chassis masses and lengths
 * @param suspension how load moves between the wheels, and how fast
 * @param aerodynamics drag and downforce
 * @param frontBrakeShare front share of the whole brake force, 0 to 1
 * @param driveline engine power at the wheels and which wheels it drives
 * @param frontTyre each of the two front tyres
 * @param rearTyre each of the two rear tyres
 * @param antiLock whether anti-lock brakes keep the wheels from stopping
 */
public record Car(
        String name,
        Chassis chassis,
        Suspension suspension,
        Aerodynamics aerodynamics,
        double frontBrakeShare,
        Driveline driveline,
        Tyre frontTyre,
        Tyre rearTyre,
        boolean antiLock) {

    /**
     * Share of what a wheel carries rolling up to which anti-lock brakes let it be slowed. Invented for want of a
     * source: such systems swing about the peak and give away a few per cent.
     */
    public static final double ANTI_LOCK_SHARE = 0.95;

    /**
     * Checks the numbers.
     *
     * @throws NullPointerException if an argument is null; its name is the message
     * @throws org.foreload.conventions.InvalidValueException with the field's name
     */
    public Car {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(chassis, "chassis");
        Objects.requireNonNull(suspension, "suspension");
        Objects.requireNonNull(aerodynamics, "aerodynamics");
        Checks.within("front_brake_share", frontBrakeShare, 0, 1);
        Objects.requireNonNull(driveline, "driveline");
        Objects.requireNonNull(frontTyre, "frontTyre");
        Objects.requireNonNull(rearTyre, "rearTyre");
    }

    /** A car without anti-lock brakes: they can stop its wheels. */
    public Car(
            String name,
            Chassis chassis,
            Suspension suspension,
            Aerodynamics aerodynamics,
            double frontBrakeShare,
            Driveline driveline,
            Tyre frontTyre,
            Tyre rearTyre) {
        this(name, chassis, suspension, aerodynamics, frontBrakeShare, driveline, frontTyre, rearTyre, false);
    }

    /** Makes a car step by step, each number by its name and unit. */
    public static CarBuilder.Name builder() {
        return CarBuilder.start();
    }

    /** The same car with another chassis. */
    public Car with(Chassis other) {
        return new Car(
                name, other, suspension, aerodynamics, frontBrakeShare, driveline, frontTyre, rearTyre, antiLock);
    }

    /** The same car with another suspension. */
    public Car with(Suspension other) {
        return new Car(name, chassis, other, aerodynamics, frontBrakeShare, driveline, frontTyre, rearTyre, antiLock);
    }

    /** The same car with other aerodynamics. */
    public Car with(Aerodynamics other) {
        return new Car(name, chassis, suspension, other, frontBrakeShare, driveline, frontTyre, rearTyre, antiLock);
    }

    /** The same car with another driveline. */
    public Car with(Driveline other) {
        return new Car(name, chassis, suspension, aerodynamics, frontBrakeShare, other, frontTyre, rearTyre, antiLock);
    }

    /** The same car with another front share of the brake force. */
    public Car withFrontBrakeShare(double share) {
        return new Car(name, chassis, suspension, aerodynamics, share, driveline, frontTyre, rearTyre, antiLock);
    }

    /** The same car on other tyres. */
    public Car withTyres(Tyre front, Tyre rear) {
        return new Car(name, chassis, suspension, aerodynamics, frontBrakeShare, driveline, front, rear, antiLock);
    }

    /**
     * The same car on a road of other friction, a wet one say: peaks of all tyres change, stiffnesses stay.
     *
     * @param share friction over that which the tyres are described on, above 0
     * @throws org.foreload.conventions.InvalidValueException if it is not above 0
     */
    public Car withRoadFriction(double share) {
        return withTyres(frontTyre.withFriction(share), rearTyre.withFriction(share));
    }

    /** The same car by another name. */
    public Car withName(String other) {
        return new Car(
                other, chassis, suspension, aerodynamics, frontBrakeShare, driveline, frontTyre, rearTyre, antiLock);
    }

    /** The same car with anti-lock brakes, or without. */
    public Car withAntiLock(boolean other) {
        return new Car(name, chassis, suspension, aerodynamics, frontBrakeShare, driveline, frontTyre, rearTyre, other);
    }
}
