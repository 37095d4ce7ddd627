package org.foreload.bicycle;

import org.foreload.conventions.Gravity;

/**
 * What acts on the car besides its own state, as {@link Controls} has it, in a buffer that its owner fills anew for
 * each evaluation, so that a simulation makes no objects. Until it is filled, the road is level and nothing is asked.
 */
public final class Inputs {

    double steer;
    double brakeForce;
    double driveForce;
    WheelLocks locks = WheelLocks.NONE;
    private double grade;
    private double banking;
    double sinGrade;
    double cosGrade = 1;
    double sinBanking;
    double cosBanking = 1;

    /** Takes up all of {@code controls}. */
    public void take(Controls controls) {
        driver(controls.steer(), controls.brakeForce(), controls.driveForce());
        locks(controls.locks());
        road(controls.grade(), controls.banking());
    }

    /**
     * Takes up what the driver does.
     *
     * @param steerAngle steering angle of the front wheels, rad, positive to the left
     * @param brake brake force that the pedal asks of all wheels together, N, zero or above
     * @param drive drive force of all driven wheels together, N; below zero the engine slows them
     */
    public void driver(double steerAngle, double brake, double drive) {
        steer = steerAngle;
        brakeForce = brake;
        driveForce = drive;
    }

    /** Takes up which wheels are stopped. */
    public void locks(WheelLocks stopped) {
        locks = stopped;
    }

    /** Specific force with which gravity slows the car on this road, m/s², positive uphill. */
    public double slowing() {
        return Gravity.G * sinGrade;
    }

    /**
     * Takes up the slope of the road. Sines and cosines are kept as long as it stays the same.
     *
     * @param alongRoad grade, rad, positive uphill
     * @param acrossRoad banking, rad, positive where it helps a left turn
     */
    public void road(double alongRoad, double acrossRoad) {
        if (alongRoad != grade) {
            grade = alongRoad;
            sinGrade = Math.sin(alongRoad);
            cosGrade = Math.cos(alongRoad);
        }
        if (acrossRoad != banking) {
            banking = acrossRoad;
            sinBanking = Math.sin(acrossRoad);
            cosBanking = Math.cos(acrossRoad);
        }
    }
}
