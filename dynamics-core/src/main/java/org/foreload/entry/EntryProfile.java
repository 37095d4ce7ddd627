package org.foreload.entry;

import static org.foreload.entry.EntryState.BRAKE;
import static org.foreload.entry.EntryState.DRIVE;
import static org.foreload.entry.EntryState.OFFSET;
import static org.foreload.entry.EntryState.STEER;
import static org.foreload.entry.EntryState.TIME;
import static org.foreload.entry.EntryState.VX;
import static org.foreload.entry.EntryState.VY;
import static org.foreload.entry.EntryState.YAW_RATE;

import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.WheelForces;
import org.foreload.trace.Trace;
import org.foreload.tyre.Tyre;

/** Collects the rows of a run. */
final class EntryProfile {

    private final EntrySimulator simulator;
    private final EntryEquations equations;
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
            .column("locked_wheels", "");
    private double lastStation = Double.NEGATIVE_INFINITY;

    EntryProfile(EntrySimulator simulator, EntryEquations equations) {
        this.simulator = simulator;
        this.equations = equations;
    }

    /** Adds a row; a station that has one already is left out. */
    void row(double station, double[] state) {
        if (station <= lastStation + 1e-7) {
            return;
        }
        lastStation = station;
        WheelForces wheels = equations.wheelsAt(station, state);
        double speed = Math.hypot(state[VX], state[VY]);
        double sin = state[VY] / speed;
        double cos = state[VX] / speed;
        rows.row(
                station,
                state[TIME],
                speed,
                -(wheels.accelerationX() * cos + wheels.accelerationY() * sin),
                use(wheels, 0),
                use(wheels, 2),
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
                relaxed(state, true),
                relaxed(state, false),
                equations.locks().mask());
    }

    /** Lateral slip that an axle's tyres feel, tangent of the slip angle. */
    private double relaxed(double[] state, boolean front) {
        var car = simulator.car();
        if ((front ? car.frontTyre() : car.rearTyre()).relaxationLength() > 0) {
            return state[EntryState.CAR + (front ? BicycleState.FRONT_SLIP : BicycleState.REAR_SLIP)];
        }
        double arm = front ? car.chassis().cgToFrontAxle() : -car.chassis().cgToRearAxle();
        return Math.tan(Math.atan2(state[VY] + arm * state[YAW_RATE], state[VX]) - (front ? state[STEER] : 0));
    }

    double frontUse(double station, double[] state) {
        return use(equations.wheelsAt(station, state), 0);
    }

    double rearUse(double station, double[] state) {
        return use(equations.wheelsAt(station, state), 2);
    }

    /** Share of an axle's friction that is used. */
    private double use(WheelForces wheels, int left) {
        Tyre tyre = left == 0 ? simulator.car().frontTyre() : simulator.car().rearTyre();
        double x = 0;
        double y = 0;
        double use = 0;
        double total = 0;
        for (int wheel = left; wheel < left + 2; wheel++) {
            double load = wheels.load(wheel);
            if (load > 0) {
                x = wheels.longitudinal(wheel) / tyre.peakForceX(load);
                y = wheels.lateral(wheel) / tyre.peakForceY(load);
                double peak = tyre.peakForceY(load);
                use += peak * Math.hypot(x, y);
                total += peak;
            }
        }
        return total > 0 ? use / total : 0;
    }

    Margins margins(double from, double to) {
        Trace trace = trace();
        var s = trace.column("s_m");
        var front = trace.column("front_utilisation");
        var rear = trace.column("rear_utilisation");
        var offset = trace.column("offset_m");
        double frontMost = 0;
        double rearMost = 0;
        double edge = Double.POSITIVE_INFINITY;
        var path = simulator.corner().path();
        for (int i = 0; i < trace.rows(); i++) {
            if (s.at(i) >= from && s.at(i) <= to) {
                frontMost = Math.max(frontMost, front.at(i));
                rearMost = Math.max(rearMost, rear.at(i));
            }
            edge = Math.min(
                    edge, Math.min(path.widthLeft(s.at(i)) - offset.at(i), path.widthRight(s.at(i)) + offset.at(i)));
        }
        return new Margins(Math.max(0, 1 - frontMost), Math.max(0, 1 - rearMost), edge);
    }

    Trace trace() {
        return rows.build();
    }
}
