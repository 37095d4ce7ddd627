package org.foreload.validation.subject;

import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.Gravity;
import org.foreload.grip.BrakeDistribution;
import org.foreload.grip.GripLimits;
import org.foreload.grip.GripUse;
import org.foreload.grip.Motion;
import org.foreload.vehicle.Car;

/** Braking in a straight line: distribution, limits, stops, release shapes. */
final class BrakingSubjects {

    /** Step of the stops, s: the release of a quantity in it is linear to eight digits. */
    private static final double STEP = 1e-3;

    private BrakingSubjects() {}

    static Map<String, Subject> all() {
        return Map.ofEntries(
                Map.entry("brake-adhesion", BrakingSubjects::adhesion),
                Map.entry("brake-critical-rate", in -> distribution(in).criticalRate()),
                Map.entry("brake-lock-rate", BrakingSubjects::lockRate),
                Map.entry("brake-parabola", BrakingSubjects::parabola),
                Map.entry("brake-first-lock", BrakingSubjects::firstLock),
                Map.entry("brake-order-margin", BrakingSubjects::orderMargin),
                Map.entry("brake-flip-rate", BrakingSubjects::flipRate),
                Map.entry("straight-limit", BrakingSubjects::straightLimit),
                Map.entry("limit-distance", BrakingSubjects::limitDistance),
                Map.entry("limit-time", in -> in.number("to_mps") / straight(in, false)),
                Map.entry("stop", BrakingSubjects::stop),
                Map.entry("release-integral", BrakingSubjects::releaseIntegral));
    }

    private static BrakeDistribution distribution(Inputs in) {
        return BrakeDistribution.of(Bench.car(in));
    }

    private static double adhesion(Inputs in) {
        double rate = in.number("rate");
        return in.word("axle").equals("front")
                ? distribution(in).frontAdhesion(rate)
                : distribution(in).rearAdhesion(rate);
    }

    private static double lockRate(Inputs in) {
        double friction = in.number("friction");
        return in.word("axle").equals("front")
                ? distribution(in).frontLockRate(friction)
                : distribution(in).rearLockRate(friction);
    }

    /** Largest departure of the ideal parabola from equal adhesion on both axles, over rates up to 1. */
    private static double parabola(Inputs in) {
        Car car = Bench.car(in);
        double worst = 0;
        for (double rate = 0.05; rate < 1.01; rate += 0.05) {
            double front = distribution(in).idealFront(rate);
            double rear = distribution(in).idealRear(rate);
            GripUse use = GripLimits.of(car.withFrontBrakeShare(front / (front + rear)))
                    .use(Motion.steady(0, rate * Gravity.G, 0));
            worst = Math.max(worst, Math.abs(use.front().adhesion() - rate));
            worst = Math.max(worst, Math.abs(use.rear().adhesion() - rate));
        }
        return worst;
    }

    /** Braking rate at which the first wheel locks, by the limits of the whole car. */
    private static double firstLock(Inputs in) {
        return straight(in, true) / Gravity.G;
    }

    /** Least lead of the front over the rear adhesion curve between two rates. */
    private static double orderMargin(Inputs in) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= 1000; i++) {
            double rate = in.number("from_rate") + i * (in.number("to_rate") - in.number("from_rate")) / 1000;
            least = Math.min(
                    least,
                    distribution(in).frontAdhesion(rate) - distribution(in).rearAdhesion(rate));
        }
        return least;
    }

    /** Braking rate at which the order of locking flips, by the limits of the whole car at a speed. */
    private static double flipRate(Inputs in) {
        GripLimits limits = GripLimits.of(Bench.car(in));
        return Bench.lastTrue(
                rate -> {
                    GripUse use = limits.use(Motion.steady(in.number("speed_mps", 0), rate * Gravity.G, 0));
                    return use.front().adhesion() >= use.rear().adhesion();
                },
                0.01,
                in.number("to_rate", 1.5));
    }

    /** Hardest deceleration, or acceleration, in a straight line, m/s². */
    private static double straightLimit(Inputs in) {
        return straight(in, in.word("direction", "braking").equals("braking"));
    }

    private static double straight(Inputs in, boolean braking) {
        double speed = in.number("speed_mps", 1);
        var range = GripLimits.of(Bench.car(in))
                .accelerationRange(speed * speed, 0, 0, Math.atan(in.number("slope", 0)), 0)
                .orElseThrow();
        return braking ? -range.lowest() : range.highest();
    }

    /** Distance, in feet if asked for, of a stop at the friction limit, without drag. */
    private static double limitDistance(Inputs in) {
        double speed = in.number("from_mps");
        return speed * speed / (2 * straight(in, true)) / in.number("unit_m", 1);
    }

    /**
     * A stop of the transient model at a constant brake force, after a time in which nothing happens: distance, time,
     * or the mean fully developed deceleration (v_b² − v_e²)/(25.92 (s_e − s_b)) between 0.8 and 0.1 of the first
     * speed.
     */
    private static double stop(Inputs in) {
        Car car = Bench.car(in);
        BicycleModel model = new BicycleModel(car);
        double lag = in.number("lag_s", 0);
        double force = car.chassis().mass() * in.number("deceleration_mps2");
        Controls controls = new Controls(0, force, 0, WheelLocks.NONE, 0, 0);
        WheelForces wheels = new WheelForces();
        Rk4 rk4 = new Rk4(BicycleState.SIZE, (time, x, rate) -> model.rates(x, 0, controls, wheels, rate));
        double first = in.number("from_mps");
        double[] state = new double[BicycleState.SIZE];
        state[BicycleState.VX] = first;
        double distance = lag * first;
        double time = lag;
        double at80 = Double.NaN;
        double at10 = Double.NaN;
        double before = first;
        while (true) {
            rk4.step(time, STEP, state);
            double after = state[BicycleState.VX];
            double slowing = (before - after) / STEP;
            at80 = crossing(at80, 0.8 * first, before, after, distance, slowing);
            at10 = crossing(at10, 0.1 * first, before, after, distance, slowing);
            if (after < 2 * slowing * STEP) {
                double rest = before / slowing;
                double whole = distance + before * before / (2 * slowing);
                return switch (in.word("give")) {
                    case "distance" -> whole;
                    case "time" -> time + rest;
                    case "mean-deceleration" ->
                        (square(0.8 * first * 3.6) - square(0.1 * first * 3.6)) / (25.92 * (at10 - at80));
                    default -> throw new IllegalArgumentException("give what?");
                };
            }
            distance += (before + after) / 2 * STEP;
            time += STEP;
            before = after;
        }
    }

    private static double crossing(
            double known, double speed, double before, double after, double distance, double slowing) {
        boolean here = before >= speed && after < speed;
        return here ? distance + (before * before - speed * speed) / (2 * slowing) : known;
    }

    private static double square(double x) {
        return x * x;
    }

    /** First or second integral of a release shape: of dv = a₀T·I₁ and ds = v₀T − a₀T²·I₂. */
    private static double releaseIntegral(Inputs in) {
        DoubleUnaryOperator remaining = shape(in.word("shape"));
        int parts = 200_000;
        double first = 0;
        double second = 0;
        for (int i = 0; i < parts; i++) {
            double u = (i + 0.5) / parts;
            double value = remaining.applyAsDouble(u);
            first += value / parts;
            second += (1 - u) * value / parts;
        }
        return in.number("integral") == 1 ? first : second;
    }

    private static DoubleUnaryOperator shape(String name) {
        ReleaseShape shape = ReleaseShapes.named(name);
        return shape::remaining;
    }
}
