package org.foreload.stability;

import java.util.Locale;
import org.foreload.bicycle.WheelLocks;
import org.foreload.conventions.Gravity;
import org.foreload.handling.LateralModel;
import org.foreload.handling.OperatingPoint;
import org.foreload.load.LoadTransfer;
import org.foreload.load.WheelLoads;

/**
 * Names what did most to the stability at a point: each thing in turn is taken away from the point and the rest left as
 * it is; the one without which the car would be most stable is the cause.
 */
final class InstabilityCause {

    /** Gain of stability, 1/s, below which nothing but the slip of the tyres is to blame. */
    private static final double WORTH_NAMING = 0.2;

    private InstabilityCause() {}

    static String of(OperatingPoint point) {
        double as = LateralModel.at(point).growthRate();
        if (point.locks().locked(2) || point.locks().locked(3)) {
            return String.format(Locale.ROOT, "a rear wheel stands still (growth rate %.1f per second)", as);
        }
        String cause = "cornering alone";
        double best = as - WORTH_NAMING;
        double rolling = growth(point, 0, point.driveForce(), point.loads());
        if (point.brakeForce() > 0 && rolling < best) {
            best = rolling;
            cause = "the brake force on the tyres";
        }
        double coasting = growth(point, point.brakeForce(), 0, point.loads());
        if (point.driveForce() > 0 && coasting < best) {
            best = coasting;
            cause = "the drive force on the tyres";
        }
        WheelLoads level = level(point);
        double unpitched = growth(point, point.brakeForce(), point.driveForce(), level);
        if (unpitched < best) {
            best = unpitched;
            cause = level.rearAxle() > point.loads().rearAxle()
                    ? "the load that braking takes off the rear axle"
                    : "the load that driving takes off the front axle";
        }
        return best < as - WORTH_NAMING
                ? String.format(Locale.ROOT, "%s (growth rate %.1f per second; %.1f without it)", cause, as, best)
                : String.format(Locale.ROOT, "%s (growth rate %.1f per second)", cause, as);
    }

    private static double growth(OperatingPoint point, double brake, double drive, WheelLoads loads) {
        return LateralModel.at(new OperatingPoint(
                        point.car(),
                        point.vx(),
                        point.vy(),
                        point.yawRate(),
                        point.steer(),
                        brake,
                        drive,
                        loads,
                        WheelLocks.NONE,
                        point.frontSlip(),
                        point.rearSlip()))
                .growthRate();
    }

    /** The same loads with the axles as they stand without pitch. */
    private static WheelLoads level(OperatingPoint point) {
        LoadTransfer transfer = LoadTransfer.of(point.car());
        double square = point.vx() * point.vx();
        WheelLoads loads = point.loads();
        return LoadTransfer.assemble(
                transfer.frontAxle(Gravity.G, square),
                transfer.rearAxle(Gravity.G, square),
                0,
                (loads.frontRight() - loads.frontLeft()) / 2,
                (loads.rearRight() - loads.rearLeft()) / 2);
    }
}
