package org.foreload.validation.subject;

import java.util.Map;
import org.foreload.conventions.Gravity;
import org.foreload.load.LoadTransfer;
import org.foreload.load.WheelLoads;
import org.foreload.vehicle.Car;

/** Loads on axles and wheels. */
final class LoadSubjects {

    private LoadSubjects() {}

    static Map<String, Subject> all() {
        return Map.of(
                "axle-load", LoadSubjects::axleLoad,
                "load-sum", in -> loads(in).total(),
                "longitudinal-transfer", LoadSubjects::longitudinalTransfer,
                "lateral-transfer", LoadSubjects::lateralTransfer,
                "lift-lateral", LoadSubjects::liftLateral,
                "lift-speed", LoadSubjects::liftSpeed,
                "downforce-ratio", LoadSubjects::downforceRatio);
    }

    private static WheelLoads loads(Inputs in) {
        return LoadTransfer.wheelLoads(
                Bench.car(in),
                in.number("speed_mps", 0),
                in.number("deceleration_mps2", 0),
                in.number("lateral_mps2", 0),
                in.number("grade_rad", 0),
                in.number("banking_rad", 0));
    }

    /** Load on one axle, or on each of its two wheels; times a friction for the force of a stopped wheel. */
    private static double axleLoad(Inputs in) {
        WheelLoads loads = loads(in);
        double axle = in.word("axle").equals("front") ? loads.frontAxle() : loads.rearAxle();
        return axle / in.number("wheels", 1) * in.number("times", 1);
    }

    private static double longitudinalTransfer(Inputs in) {
        Car car = Bench.car(in);
        double still = LoadTransfer.wheelLoads(car, 0, 0, 0, 0, 0).frontAxle();
        return loads(in).frontAxle() - still;
    }

    /** Load that leaves the inner wheel of an axle, or of both. */
    private static double lateralTransfer(Inputs in) {
        WheelLoads loads = loads(in);
        double front = (loads.frontRight() - loads.frontLeft()) / 2;
        double rear = (loads.rearRight() - loads.rearLeft()) / 2;
        return switch (in.word("axle")) {
            case "front" -> front;
            case "rear" -> rear;
            default -> front + rear;
        };
    }

    /** Lateral acceleration, as a fraction of g, at which both inner wheels have lifted. */
    private static double liftLateral(Inputs in) {
        Car car = Bench.car(in);
        return Bench.lastTrue(
                        lateral -> LoadTransfer.wheelLoads(car, 0, 0, lateral, 0, 0)
                                        .lifted()
                                        .size()
                                < 2,
                        0,
                        100)
                / Gravity.G;
    }

    private static double liftSpeed(Inputs in) {
        return Math.sqrt(liftLateral(in) * Gravity.G * in.number("radius_m"));
    }

    /** Downforce at a speed over that at another. */
    private static double downforceRatio(Inputs in) {
        Car car = Bench.car(in);
        double weight = LoadTransfer.wheelLoads(car, 0, 0, 0, 0, 0).total();
        double fast =
                LoadTransfer.wheelLoads(car, in.number("fast_mps"), 0, 0, 0, 0).total() - weight;
        double slow =
                LoadTransfer.wheelLoads(car, in.number("slow_mps"), 0, 0, 0, 0).total() - weight;
        return fast / slow;
    }
}
