package org.foreload.entry;

import static org.foreload.entry.EntryState.BRAKE;
import static org.foreload.entry.EntryState.DRIVE;
import static org.foreload.entry.EntryState.OFFSET;
import static org.foreload.entry.EntryState.STEER;
import static org.foreload.entry.EntryState.TIME;
import static org.foreload.entry.EntryState.VX;
import static org.foreload.entry.EntryState.VY;
import static org.foreload.entry.EntryState.YAW_RATE;

import org.foreload.bicycle.WheelForces;
import org.foreload.trace.Trace;

/** Collects the rows of a run. */
final class EntryProfile {

    private final EntryEquations equations;
    private final WheelForces wheels = new WheelForces();
    private final Trace.Builder rows = new Trace.Builder()
            .column("s_m", "m")
            .column("time_s", "s")
            .column("speed_mps", "m/s")
            .column("deceleration_mps2", "m/s²")
            .column("front_utilisation", "")
            .column("rear_utilisation", "")
            .column("offset_m", "m")
            .column("sideslip_deg", "°")
            .column("front_axle_load_n", "N")
            .column("rear_axle_load_n", "N")
            .column("front_left_load_n", "N")
            .column("front_right_load_n", "N")
            .column("rear_left_load_n", "N")
            .column("rear_right_load_n", "N")
            .column("brake_mps2", "m/s²")
            .column("drive_mps2", "m/s²")
            .column("steer_deg", "°")
            .column("lateral_acceleration_mps2", "m/s²")
            .column("yaw_rate_rad_per_s", "rad/s")
            .column("front_slip", "")
            .column("rear_slip", "")
            .column("locked_wheels", "")
            .column("brake_on_road_mps2", "m/s²")
            .column("front_beside_brake_n", "N");
    private double lastStation = Double.NEGATIVE_INFINITY;

    EntryProfile(EntryEquations equations) {
        this.equations = equations;
    }

    /** Adds a row; a station that has one already is left out. */
    void row(double station, double[] state) {
        if (station <= lastStation + 1e-7) {
            return;
        }
        lastStation = station;
        equations.wheelsAt(station, state, wheels);
        double speed = Math.hypot(state[VX], state[VY]);
        double sin = state[VY] / speed;
        double cos = state[VX] / speed;
        rows.row(
                station,
                state[TIME],
                speed,
                -(wheels.accelerationX() * cos + wheels.accelerationY() * sin),
                Fullness.use(wheels, 0),
                Fullness.use(wheels, 2),
                state[OFFSET],
                Math.toDegrees(Math.atan2(state[VY], state[VX])),
                wheels.frontAxleLoad(),
                wheels.rearAxleLoad(),
                wheels.load(0),
                wheels.load(1),
                wheels.load(2),
                wheels.load(3),
                state[BRAKE],
                state[DRIVE],
                Math.toDegrees(state[STEER]),
                wheels.accelerationY() * cos - wheels.accelerationX() * sin,
                state[YAW_RATE],
                wheels.frontSlip(),
                wheels.rearSlip(),
                equations.locks().mask(),
                equations.brakeOnRoad(wheels),
                equations.frontBesideBrake(wheels));
    }

    Trace trace() {
        return rows.build();
    }
}
