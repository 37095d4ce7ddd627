package org.foreload.bicycle;

/** Names of the entries of a state vector of {@link BicycleModel}. */
public final class BicycleState {

    /** Speed along the car's x axis, m/s. */
    public static final int VX = 0;

    /** Speed along the car's y axis (left), m/s. */
    public static final int VY = 1;

    /** Yaw rate, rad/s, positive to the left. */
    public static final int YAW_RATE = 2;

    /** Load moved from the rear axle to the front axle, N. */
    public static final int PITCH_TRANSFER = 3;

    /** Rate of {@link #PITCH_TRANSFER}, N/s. */
    public static final int PITCH_TRANSFER_RATE = 4;

    /** Lateral specific force as the rolling body feels it, m/s², positive to the left. */
    public static final int ROLL_ACCELERATION = 5;

    /** Rate of {@link #ROLL_ACCELERATION}, m/s³. */
    public static final int ROLL_ACCELERATION_RATE = 6;

    /** Relaxed lateral slip of the front tyres, tangent of the slip angle. */
    public static final int FRONT_SLIP = 7;

    /** Relaxed lateral slip of the rear tyres, tangent of the slip angle. */
    public static final int REAR_SLIP = 8;

    /** Length of a state vector. */
    public static final int SIZE = 9;

    private BicycleState() {}
}
