package org.foreload.stability;

import org.foreload.bicycle.WheelLocks;
import org.foreload.handling.OperatingPoint;
import org.foreload.load.WheelLoads;
import org.foreload.trace.Trace;
import org.foreload.vehicle.Car;

/** Reads operating points back from the rows of an entry's profile. */
final class ProfilePoint {

    private ProfilePoint() {}

    static OperatingPoint at(Car car, Trace profile, int row) {
        double speed = profile.column("speed_mps").at(row);
        double sideslip = Math.toRadians(profile.column("sideslip_deg").at(row));
        double mass = car.chassis().mass();
        return new OperatingPoint(
                car,
                speed * Math.cos(sideslip),
                speed * Math.sin(sideslip),
                profile.column("yaw_rate_rad_per_s").at(row),
                Math.toRadians(profile.column("steer_deg").at(row)),
                Math.max(0, mass * profile.column("brake_mps2").at(row)),
                mass * profile.column("drive_mps2").at(row),
                new WheelLoads(
                        profile.column("front_left_load_n").at(row),
                        profile.column("front_right_load_n").at(row),
                        profile.column("rear_left_load_n").at(row),
                        profile.column("rear_right_load_n").at(row)),
                new WheelLocks((int) profile.column("locked_wheels").at(row)),
                profile.column("front_slip").at(row),
                profile.column("rear_slip").at(row));
    }
}
