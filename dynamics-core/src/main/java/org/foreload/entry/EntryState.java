package org.foreload.entry;

import java.util.List;
import org.foreload.bicycle.BicycleState;

/** Names of the entries of the simulator's state vector, whose independent variable is the station. */
final class EntryState {

    static final int TIME = 0;
    static final int OFFSET = 1;
    static final int HEADING_ERROR = 2;
    static final int CAR = 3;
    static final int STEER = CAR + BicycleState.SIZE;
    static final int BRAKE = STEER + 1;
    static final int DRIVE = BRAKE + 1;
    static final int SIZE = DRIVE + 1;

    /** Share by which a reacting foot has eased for a stopped wheel. */
    static final int EASED = SIZE;

    /** How much faster than planned the driver perceives the car to be, m/s. */
    static final int EXCESS = EASED + 1;

    /**
     * Length of the vector for a driver whose foot reacts; one that brakes as planned needs nothing beyond the rest.
     */
    static final int REACTING_SIZE = EXCESS + 1;

    static final int VX = CAR + BicycleState.VX;
    static final int VY = CAR + BicycleState.VY;
    static final int YAW_RATE = CAR + BicycleState.YAW_RATE;

    private static final List<String> WORDS = List.of(
            "time",
            "distance off the line",
            "heading",
            "speed",
            "speed across",
            "yaw rate",
            "load moved by pitching",
            "rate of that load",
            "lateral acceleration that the body feels",
            "rate of that acceleration",
            "slip of the front tyres",
            "slip of the rear tyres",
            "steering angle",
            "brake",
            "drive",
            "easing of the foot",
            "perceived excess of speed");

    /** Sideslip, rad, from which nobody brings the car back. */
    private static final double SPIN_SIDESLIP = 0.6;

    private static final double SPIN_SLOPE = Math.tan(SPIN_SIDESLIP);

    /** Speed, m/s, at which a car has as good as stopped. */
    private static final double STOPPED_SPEED = 1.5;

    private EntryState() {}

    /** A state in words, for messages. */
    static String words(int state) {
        return WORDS.get(state);
    }

    /**
     * Size of one unit of each state, by which the relative tolerance is turned into an absolute one: s, m, rad, m/s,
     * rad/s, N, m/s², and their rates, about as large as they get in an entry.
     */
    static double[] scales(double mass) {
        double[] scale = new double[REACTING_SIZE];
        scale[TIME] = 1;
        scale[OFFSET] = 1;
        scale[HEADING_ERROR] = 0.1;
        scale[VX] = 10;
        scale[VY] = 1;
        scale[YAW_RATE] = 0.5;
        scale[CAR + BicycleState.PITCH_TRANSFER] = mass;
        scale[CAR + BicycleState.PITCH_TRANSFER_RATE] = 10 * mass;
        scale[CAR + BicycleState.ROLL_ACCELERATION] = 10;
        scale[CAR + BicycleState.ROLL_ACCELERATION_RATE] = 100;
        scale[CAR + BicycleState.FRONT_SLIP] = 0.1;
        scale[CAR + BicycleState.REAR_SLIP] = 0.1;
        scale[STEER] = 0.1;
        scale[BRAKE] = 10;
        scale[DRIVE] = 10;
        scale[EASED] = 1;
        scale[EXCESS] = 10;
        return scale;
    }

    /** How much the car could still slide across before it spins, m/s; falls through zero at that sideslip. */
    static double spinMargin(double[] state) {
        return SPIN_SLOPE * state[VX] - Math.abs(state[VY]);
    }

    /** How much faster it is than a car that has as good as stopped, m/s. */
    static double speedMargin(double[] state) {
        return state[VX] - STOPPED_SPEED;
    }
}
