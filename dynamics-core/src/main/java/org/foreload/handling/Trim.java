package org.foreload.handling;

import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.WheelLocks;
import org.foreload.conventions.Checks;
import org.foreload.load.Wheel;
import org.foreload.load.WheelLoads;
import org.foreload.vehicle.Car;

/**
 * A quasi-steady motion on a level road: speed, lateral acceleration and deceleration are given, sideslip angle and yaw
 * rate are constant, no wheel is locked, and the wheel loads have settled. While the car slows it is steady for the
 * moment only, which is what a linear model needs; the yaw acceleration of a braked turn, −d·κ, is left out.
 *
 * @param car the car
 * @param speed along its course, m/s
 * @param lateralAcceleration across its course, m/s², positive to the left: v²κ
 * @param deceleration along its course, m/s², positive when slowing
 * @param sideslip direction of the motion against the car's x axis, rad, positive to the left
 * @param steer angle of the front wheels, rad, positive to the left
 * @param brakeForce brake force of all wheels together, N
 * @param driveForce drive force of all driven wheels together, N, not checked against the engine's power
 * @param loads wheel loads
 */
public record Trim(
        Car car,
        double speed,
        double lateralAcceleration,
        double deceleration,
        double sideslip,
        double steer,
        double brakeForce,
        double driveForce,
        WheelLoads loads) {

    /** Refuses null. */
    public Trim {
        Objects.requireNonNull(car, "car");
        Objects.requireNonNull(loads, "loads");
    }

    /** What may be left of the equations, m/s²: a hundred times what the searches inside the tyre models leave. */
    private static final double ACCURACY = 1e-9;

    /** Newton steps before a part of the way is given up. */
    private static final int MOST_STEPS = 40;

    /**
     * First part of the way that is tried: from too far, Newton's method may land on the other side of a tyre's peak.
     */
    private static final double FIRST_PART = 1.0 / 8;

    /** Smallest part of the way from straight ahead to the trim that is tried. */
    private static final double SMALLEST_PART = 1.0 / 512;

    /** Steps over which tyre and load curves surely bend: rad, rad, m/s². */
    private static final double[] BEND = {0.005, 0.005, 0.5};

    /**
     * The trim of a car; empty where there is none because an axle lacks the grip, or a wheel would lock. The solution
     * is followed from driving straight ahead in small parts, so that of two solutions it is the one below the peak of
     * the tyres.
     *
     * @param car with a yaw inertia above zero
     * @param speed m/s, above zero
     * @param deceleration m/s², positive when slowing
     * @param lateral m/s², positive to the left
     * @throws org.foreload.conventions.InvalidValueException for a number that is not finite, a speed not above zero,
     *     or a car without yaw inertia
     */
    public static Optional<Trim> find(Car car, double speed, double deceleration, double lateral) {
        Objects.requireNonNull(car, "car");
        Checks.positive("speed", speed);
        Checks.finite("lateral", lateral);
        Checks.finite("deceleration", deceleration);
        TrimEquations equations = new TrimEquations(car, speed);
        double[] unknown = new double[TrimEquations.UNKNOWNS];
        double done = 0;
        double part = FIRST_PART;
        if (!solve(equations, unknown, 0, 0)) {
            return Optional.empty();
        }
        while (done < 1) {
            double next = Math.min(1, done + part);
            double[] trial = unknown.clone();
            if (solve(equations, trial, next * lateral, next * deceleration)) {
                unknown = trial;
                done = next;
            } else {
                part /= 2;
                if (part < SMALLEST_PART) {
                    return Optional.empty();
                }
            }
        }
        equations.residual(unknown, lateral, deceleration);
        double mass = car.chassis().mass();
        return Optional.of(new Trim(
                car,
                speed,
                lateral,
                deceleration,
                unknown[0],
                unknown[1],
                Math.max(0, mass * unknown[2]),
                Math.max(0, -mass * unknown[2]),
                equations.loads()));
    }

    /** Newton's method with halved steps where a whole one does not help. */
    private static boolean solve(TrimEquations equations, double[] unknown, double lateral, double deceleration) {
        double[] residual = equations.residual(unknown, lateral, deceleration);
        double size = norm(residual);
        for (int i = 0; i < MOST_STEPS; i++) {
            if (size <= ACCURACY) {
                return equations.allRoll();
            }
            double[] step = Linear.solve(jacobian(equations, unknown, lateral, deceleration), residual);
            double share = 1;
            double[] next = unknown;
            double nextSize = Double.NaN;
            while (!(nextSize < size) && share > 1e-3) {
                next = unknown.clone();
                for (int k = 0; k < next.length; k++) {
                    next[k] -= share * step[k];
                }
                residual = equations.residual(next, lateral, deceleration);
                nextSize = norm(residual);
                share /= 2;
            }
            if (!(nextSize < size)) {
                return false;
            }
            System.arraycopy(next, 0, unknown, 0, next.length);
            size = nextSize;
        }
        return false;
    }

    private static double norm(double[] residual) {
        return Math.sqrt(Arrays.stream(residual).map(r -> r * r).sum());
    }

    private static double[][] jacobian(TrimEquations equations, double[] unknown, double lateral, double deceleration) {
        return Derivative.matrix(moved -> equations.residual(moved, lateral, deceleration), unknown, BEND);
    }

    /** Yaw rate, rad/s, positive to the left. */
    public double yawRate() {
        return lateralAcceleration / speed;
    }

    /** Curvature of the course, 1/m, positive to the left. */
    public double curvature() {
        return lateralAcceleration / (speed * speed);
    }

    /**
     * Understeer gradient at this trim, rad per m/s² (times 9.81: rad per g): d(δ − L·κ)/d(a), the steer angle beyond
     * what the curvature itself needs, per lateral acceleration, at constant speed and deceleration and with settled
     * loads. Positive for understeer. Source: the gradient of T. D. Gillespie, Fundamentals of Vehicle Dynamics, ch. 6
     * (from memory), taken locally; derived from the equations of the trim by implicit differentiation.
     */
    public double understeerGradient() {
        TrimEquations equations = new TrimEquations(car, speed);
        double mass = car.chassis().mass();
        double[] unknown = {sideslip, steer, (brakeForce - driveForce) / mass};
        double[] right =
                Derivative.ofEach(a -> equations.residual(unknown, a, deceleration), lateralAcceleration, BEND[2]);
        double[] change = Linear.solve(jacobian(equations, unknown, lateralAcceleration, deceleration), right);
        return -change[1] - car.chassis().wheelbase() / (speed * speed);
    }

    /**
     * The wheels that anti-lock brakes keep from braking as hard as the pedal asks of them; none without such brakes.
     * What such a wheel brakes follows its load and its slip, not the pedal. So the gradient, and all else that belongs
     * to a small change, jumps where a wheel begins to be held back.
     */
    public Set<Wheel> heldBack() {
        OperatingPoint point = point();
        return Arrays.stream(Wheel.values()).filter(point::heldBack).collect(Collectors.toUnmodifiableSet());
    }

    /** State of the car in this motion, in SI units; {@link BicycleState} has the indices. */
    public double[] state() {
        TrimEquations equations = new TrimEquations(car, speed);
        double[] unknown = {
            sideslip, steer, (brakeForce - driveForce) / car.chassis().mass()
        };
        return equations.state(unknown, lateralAcceleration, deceleration);
    }

    /** This motion as a point to linearise about. */
    public OperatingPoint point() {
        double[] state = state();
        return new OperatingPoint(
                car,
                state[BicycleState.VX],
                state[BicycleState.VY],
                yawRate(),
                steer,
                brakeForce,
                driveForce,
                loads,
                WheelLocks.NONE,
                state[BicycleState.FRONT_SLIP],
                state[BicycleState.REAR_SLIP]);
    }
}
