package org.foreload.grip;

import java.util.Objects;
import org.foreload.conventions.Checks;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;

/**
 * Straight-line braking as brake engineers and the regulation see it: adhesion that each axle uses against the braking
 * rate z = d/g. Sources: UN Regulation 13-H, Annex 5 (from memory): f = T/N, N₁ = P₁ + z·P·h/L; the critical rate is
 * derived from them.
 *
 * <p>Valid on the flat, without aerodynamics and engine braking. All rates are plain numbers, fractions of g.
 *
 * @param wheelbase L, m
 * @param cgToFrontAxle a, m
 * @param cgHeight h, m
 * @param frontBrakeShare share β of the brake force that acts on the front axle
 */
public record BrakeDistribution(double wheelbase, double cgToFrontAxle, double cgHeight, double frontBrakeShare) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public BrakeDistribution {
        Checks.positive("wheelbase_m", wheelbase);
        Checks.between("cg_to_front_axle_m", cgToFrontAxle, 0, wheelbase);
        Checks.notNegative("cg_height_m", cgHeight);
        Checks.within("front_brake_share", frontBrakeShare, 0, 1);
    }

    /** Brake distribution of a car. */
    public static BrakeDistribution of(Car car) {
        Objects.requireNonNull(car, "car");
        Chassis chassis = car.chassis();
        return new BrakeDistribution(
                chassis.wheelbase(), chassis.cgToFrontAxle(), chassis.cgHeight(), car.frontBrakeShare());
    }

    private double cgToRearAxle() {
        return wheelbase - cgToFrontAxle;
    }

    /** Front brake force over weight at which both axles use the same adhesion: z(b + z·h)/L, the ideal parabola. */
    public double idealFront(double rate) {
        return rate * (cgToRearAxle() + rate * cgHeight) / wheelbase;
    }

    /** Rear brake force over weight at which both axles use the same adhesion: z(a − z·h)/L. */
    public double idealRear(double rate) {
        return rate * (cgToFrontAxle - rate * cgHeight) / wheelbase;
    }

    /** Adhesion that the front axle uses at a braking rate: β·z·L/(b + z·h). */
    public double frontAdhesion(double rate) {
        return frontBrakeShare * rate * wheelbase / (cgToRearAxle() + rate * cgHeight);
    }

    /**
     * Adhesion that the rear axle uses at a braking rate: (1 − β)·z·L/(a − z·h); infinite once the axle is unloaded.
     */
    public double rearAdhesion(double rate) {
        double force = (1 - frontBrakeShare) * rate * wheelbase;
        double load = cgToFrontAxle - rate * cgHeight;
        return force == 0 ? 0 : force / Math.max(0, load);
    }

    /**
     * Braking rate at which the order of locking flips: (β·L − b)/h. Below it the front axle locks first, above it the
     * rear. Without CG height there is no flip: infinite, negative if the rear always locks first; zero if both always
     * lock together.
     */
    public double criticalRate() {
        double surplus = frontBrakeShare * wheelbase - cgToRearAxle();
        return surplus == 0 ? 0 : surplus / cgHeight;
    }

    /**
     * Braking rate at which the front axle locks: μ·b/(β·L − μ·h); infinite if it never does.
     *
     * @param friction μ
     */
    public double frontLockRate(double friction) {
        double rest = frontBrakeShare * wheelbase - friction * cgHeight;
        return rest <= 0 ? Double.POSITIVE_INFINITY : friction * cgToRearAxle() / rest;
    }

    /**
     * Braking rate at which the rear axle locks: μ·a/((1 − β)·L + μ·h); infinite if it never does.
     *
     * @param friction μ
     */
    public double rearLockRate(double friction) {
        double rest = (1 - frontBrakeShare) * wheelbase + friction * cgHeight;
        return rest <= 0 ? Double.POSITIVE_INFINITY : friction * cgToFrontAxle / rest;
    }
}
