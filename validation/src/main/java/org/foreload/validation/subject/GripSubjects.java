package org.foreload.validation.subject;

import java.util.List;
import java.util.Map;
import org.foreload.conventions.Gravity;
import org.foreload.grip.BrakingGrip;
import org.foreload.grip.GripLimits;
import org.foreload.grip.GripUse;
import org.foreload.grip.Motion;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.vehicle.Car;

/** What a whole car could do at most in a steady corner. */
final class GripSubjects {

    private static final double FASTEST = 1e6;

    private GripSubjects() {}

    static Map<String, Subject> all() {
        return Map.of(
                "skid-speed", GripSubjects::skidSpeed,
                "minimum-radius", GripSubjects::minimumRadius,
                "unlimited-radius", GripSubjects::unlimitedRadius,
                "best-deceleration",
                        in -> BrakingGrip.of(Bench.car(in), in.number("speed_mps", 20))
                                .bestDeceleration(),
                "best-deceleration-in-g",
                        in -> BrakingGrip.of(Bench.car(in), in.number("speed_mps", 20))
                                        .bestDeceleration()
                                / Gravity.G,
                "best-front-gain",
                        in -> 100
                                * BrakingGrip.of(Bench.car(in), in.number("speed_mps", 20))
                                        .bestFrontGain(),
                "axle-demand", GripSubjects::axleDemand,
                "spiral-hold", GripSubjects::spiralHold);
    }

    private static boolean holds(Car car, double speed, double radius, double slope) {
        Motion motion = Motion.onLine(speed, 0, 1 / radius, 0, 0, Math.atan(slope));
        return GripLimits.of(car).use(motion).feasible();
    }

    /** Highest steady speed on a circle, m/s, of a car without drag. */
    private static double skidSpeed(Inputs in) {
        Car car = Bench.car(in);
        return Bench.lastTrue(speed -> holds(car, speed, in.number("radius_m"), in.number("slope", 0)), 0.1, FASTEST);
    }

    /** Smallest radius, in the unit asked for, for a speed. */
    private static double minimumRadius(Inputs in) {
        Car car = Bench.car(in);
        double least = Bench.lastTrue(
                curvature -> holds(car, in.number("speed_mps"), 1 / curvature, in.number("slope", 0)), 1e-5, 1);
        return 1 / least / in.number("unit_m", 1);
    }

    /** Radius beyond which downforce carries the car at any speed. */
    private static double unlimitedRadius(Inputs in) {
        Car car = Bench.car(in);
        return 1 / Bench.lastTrue(curvature -> holds(car, FASTEST, 1 / curvature, 0), 1e-6, 1);
    }

    /**
     * Station, m, up to which a car without drag holds a constant speed on a spiral: there an axle is full, which
     * carries its share of the lateral acceleration and starts (front) or is spared (rear) the rotation.
     */
    private static double spiralHold(Inputs in) {
        Car car = Bench.car(in);
        double length = in.number("length_m");
        Path line = SegmentPath.of(
                0, List.of(Segment.spiralIn(length, in.number("end_radius_m"), Turn.LEFT)), 0, in.number("width_m", 5));
        return Bench.lastTrue(
                s -> GripLimits.of(car)
                        .use(Motion.onLine(
                                in.number("speed_mps"), 0, line.curvature(s), line.curvatureGradient(s), 0, 0))
                        .feasible(),
                1e-6,
                Math.nextDown(length));
    }

    /** Lateral force asked of an axle while the car starts to turn. */
    private static double axleDemand(Inputs in) {
        Motion motion = Motion.onLine(
                in.number("speed_mps"),
                in.number("deceleration_mps2", 0),
                in.number("curvature_per_m"),
                in.number("curvature_gradient_per_m2"),
                0,
                0);
        GripUse use = GripLimits.of(Bench.car(in)).use(motion);
        return in.word("axle").equals("front")
                ? use.front().lateralDemand()
                : use.rear().lateralDemand();
    }
}
