package org.foreload.bicycle;

import org.foreload.tyre.ContactPatch;

/**
 * What one evaluation of {@link BicycleModel} found at the wheels. A buffer that its owner reuses: read it at once, do
 * not keep it.
 */
public final class WheelForces {

    final double[] load = new double[4];
    final double[] longitudinal = new double[4];
    final double[] lateral = new double[4];
    final double[] lockMargin = new double[4];
    final double[] peakX = new double[4];
    final double[] peakY = new double[4];
    final ContactPatch patch = new ContactPatch();
    final ContactPatch otherPatch = new ContactPatch();
    final Agreement pitch = new Agreement();
    final Agreement roll = new Agreement();
    final Inputs inputs = new Inputs();
    double frontSlip;
    double rearSlip;
    double frontFelt;
    double rearFelt;
    double accelerationX;
    double accelerationY;
    double pitchTarget;

    /** Load of the wheel at a buffer index, N. */
    public double load(int wheel) {
        return load[wheel];
    }

    /** Force along the wheel, N, positive forward. */
    public double longitudinal(int wheel) {
        return longitudinal[wheel];
    }

    /** Force across the wheel, N, positive to the left. */
    public double lateral(int wheel) {
        return lateral[wheel];
    }

    /**
     * How far the wheel is from changing between rolling and stopped, N: for a rolling wheel the longitudinal force it
     * could carry beyond what is asked of it; for a stopped one the brake force beyond what would let it turn again.
     * Negative when it must change.
     */
    public double lockMargin(int wheel) {
        return lockMargin[wheel];
    }

    /** Largest force along the wheel at its load and without slip across, N. */
    public double peakX(int wheel) {
        return peakX[wheel];
    }

    /** Largest force across the wheel at its load and without slip along, N. */
    public double peakY(int wheel) {
        return peakY[wheel];
    }

    /** Load on the front axle, N. */
    public double frontAxleLoad() {
        return load[0] + load[1];
    }

    /** Load on the rear axle, N. */
    public double rearAxleLoad() {
        return load[2] + load[3];
    }

    /** Force across the front wheels, N, positive to the left. */
    public double frontLateral() {
        return lateral[0] + lateral[1];
    }

    /** Force across the rear wheels, N, positive to the left. */
    public double rearLateral() {
        return lateral[2] + lateral[3];
    }

    /** Lateral slip that the front tyres feel, tangent of the slip angle. */
    public double frontSlip() {
        return frontFelt;
    }

    /** Lateral slip that the rear tyres feel, tangent of the slip angle. */
    public double rearSlip() {
        return rearFelt;
    }

    /** Acceleration of the CG along the car's x axis, m/s². */
    public double accelerationX() {
        return accelerationX;
    }

    /** Acceleration of the CG along the car's y axis, m/s². */
    public double accelerationY() {
        return accelerationY;
    }

    /** Specific lateral force, m/s², positive to the left, that the load which has moved across answers to. */
    public double rollAcceleration() {
        return roll.value();
    }

    /** Load that these forces would hold moved from the rear to the front axle, N, once the pitching has died down. */
    public double pitchTarget() {
        return pitchTarget;
    }
}
