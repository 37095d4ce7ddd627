package org.foreload.stability;

import org.foreload.bicycle.WheelLocks;
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
            return "a rear wheel stands still (growth rate " + Tenths.of(as) + " per second)";
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
            cause = pitched(point, level);
        }
        String without = best < as - WORTH_NAMING ? "; " + Tenths.of(best) + " without it" : "";
        return cause + " (growth rate " + Tenths.of(as) + " per second" + without + ")";
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

    /** Which axle is lighter than level, and by what: a body that swings moves load when no pedal does. */
    private static String pitched(OperatingPoint point, WheelLoads level) {
        boolean offRear = level.rearAxle() > point.loads().rearAxle();
        boolean slowed = point.brakeForce() > 0 || point.driveForce() < 0;
        if (offRear) {
            return "the load that " + (slowed ? "braking" : "pitching") + " takes off the rear axle";
        }
        return "the load that " + (point.driveForce() > 0 ? "driving" : "pitching") + " takes off the front axle";
    }

    /**
     * The same loads with the axles as they stand without pitch: all that presses the car on the road, banked, curved
     * or sloping as it may be, shared out again as weight and downforce are.
     */
    static WheelLoads level(OperatingPoint point) {
        LoadTransfer transfer = LoadTransfer.of(point.car());
        double square = point.vx() * point.vx();
        WheelLoads loads = point.loads();
        double downforce = transfer.frontAxle(0, square) + transfer.rearAxle(0, square);
        double normal = (loads.total() - downforce) / point.car().chassis().mass();
        return LoadTransfer.assemble(
                transfer.frontAxle(normal, square),
                transfer.rearAxle(normal, square),
                0,
                (loads.frontRight() - loads.frontLeft()) / 2,
                (loads.rearRight() - loads.rearLeft()) / 2);
    }
}
