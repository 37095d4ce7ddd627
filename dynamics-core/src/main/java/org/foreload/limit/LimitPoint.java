package org.foreload.limit;

/**
 * The car at one station of the limit.
 *
 * @param station along the line, m
 * @param time since the start, s
 * @param speed m/s
 * @param deceleration along the car's way, m/s², positive when slowing
 * @param offset off the line, m, positive to the left
 * @param headingError heading of the car less that of the line, rad
 * @param sideslip direction of motion in the car's axes, rad, positive to the left
 * @param yawRate rad/s, positive to the left
 * @param steer angle of the front wheels, rad, positive to the left
 * @param brake brake force over mass, m/s², as anti-lock brakes leave it
 * @param brakeAsked the same as the foot asks for it
 * @param drive drive force over mass, m/s²
 * @param driveAsked the same as the foot asks for it
 * @param frontUtilisation smallest friction, over the car's own, with which the front axle would carry its forces
 * @param rearUtilisation the same of the rear axle
 * @param rollOverUtilisation lateral force that the body feels over that at which the car tips over its outer wheels
 * @param frontLoad load on the front axle, N
 * @param rearLoad load on the rear axle, N
 * @param curvature of the way of the centre of gravity, 1/m, positive to the left
 * @param x place in the plane, m
 * @param y place in the plane, m
 */
public record LimitPoint(
        double station,
        double time,
        double speed,
        double deceleration,
        double offset,
        double headingError,
        double sideslip,
        double yawRate,
        double steer,
        double brake,
        double brakeAsked,
        double drive,
        double driveAsked,
        double frontUtilisation,
        double rearUtilisation,
        double rollOverUtilisation,
        double frontLoad,
        double rearLoad,
        double curvature,
        double x,
        double y) {}
