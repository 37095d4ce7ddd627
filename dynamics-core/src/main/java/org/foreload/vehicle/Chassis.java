package org.foreload.vehicle;

import org.foreload.conventions.Checks;

/**
 * Mass and lengths of a car.
 *
 * @param mass kg, with the driver
 * @param wheelbase m
 * @param cgToFrontAxle distance from the centre of gravity (CG) back from the front axle, m; inside the wheelbase
 * @param cgHeight height of the CG above the road, m; zero is legal and switches longitudinal load transfer off
 * @param yawInertia about the vertical axis through the CG, kg·m²; zero is legal in the quasi-steady models
 * @param frontTrack distance between the front wheels, m
 * @param rearTrack distance between the rear wheels, m
 */
public record Chassis(
        double mass,
        double wheelbase,
        double cgToFrontAxle,
        double cgHeight,
        double yawInertia,
        double frontTrack,
        double rearTrack) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Chassis {
        Checks.positive("mass_kg", mass);
        Checks.positive("wheelbase_m", wheelbase);
        Checks.between("cg_to_front_axle_m", cgToFrontAxle, 0, wheelbase);
        Checks.notNegative("cg_height_m", cgHeight);
        Checks.notNegative("yaw_inertia_kg_m2", yawInertia);
        Checks.positive("front_track_m", frontTrack);
        Checks.positive("rear_track_m", rearTrack);
    }

    /** Makes a chassis step by step, each number by its name and unit. */
    public static ChassisBuilder.Mass builder() {
        return ChassisBuilder.start();
    }

    /** Distance from the CG to the rear axle, m. */
    public double cgToRearAxle() {
        return wheelbase - cgToFrontAxle;
    }
}
