package org.foreload.limit;

import org.foreload.conventions.Gravity;
import org.foreload.vehicle.Car;

/** Names of the unknowns at one point of the mesh: states first, then controls. */
final class Unknowns {

    /** Distance off the line, m, to the left. */
    static final int OFFSET = 0;

    /** Heading of the car less that of the line, rad. */
    static final int HEADING_ERROR = 1;

    /** Speeds along and across the car, m/s. */
    static final int VX = 2;

    static final int VY = 3;

    /** rad/s. */
    static final int YAW_RATE = 4;

    /** Load moved to the front, N, and its rate. */
    static final int PITCH = 5;

    static final int PITCH_RATE = 6;

    /** Lateral specific force as the body feels it, m/s², and its rate. */
    static final int ROLL = 7;

    static final int ROLL_RATE = 8;

    /** Slips that the tyres have, tangents of angles. */
    static final int FRONT_SLIP = 9;

    static final int REAR_SLIP = 10;

    /** rad. */
    static final int STEER = 11;

    /** Brake and drive force over mass, m/s². */
    static final int BRAKE = 12;

    static final int DRIVE = 13;

    /** What the foot asks of the brake, m/s². */
    static final int BRAKE_ASKED = 14;

    /** Number of states. */
    static final int STATES = 15;

    /** Steering rate, rad/s. */
    static final int STEER_RATE = 15;

    /** Rate of what the foot asks of the brake, m/s³. */
    static final int BRAKE_ASKED_RATE = 16;

    /** What the foot asks of the engine, m/s². */
    static final int DRIVE_ASKED = 17;

    /** Number of unknowns. */
    static final int ALL = 18;

    /** Number of controls. */
    static final int CONTROLS = ALL - STATES;

    private Unknowns() {}

    /** Units in which they are counted. */
    static double[] scales(Car car, Hands hands) {
        double[] scale = new double[ALL];
        double weight = car.chassis().mass() * Gravity.G;
        scale[OFFSET] = 1;
        scale[HEADING_ERROR] = 0.1;
        scale[VX] = 10;
        scale[VY] = 1;
        scale[YAW_RATE] = 0.3;
        scale[PITCH] = weight / 20;
        scale[PITCH_RATE] = weight / 2;
        scale[ROLL] = 5;
        scale[ROLL_RATE] = 50;
        scale[FRONT_SLIP] = 0.05;
        scale[REAR_SLIP] = 0.05;
        scale[STEER] = 0.05;
        scale[BRAKE] = 5;
        scale[DRIVE] = 3;
        scale[BRAKE_ASKED] = 5;
        scale[STEER_RATE] = hands.steeringRate();
        scale[BRAKE_ASKED_RATE] = hands.brakeOnRate();
        scale[DRIVE_ASKED] = 3;
        return scale;
    }
}
