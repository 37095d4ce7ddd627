package org.foreload.driver;

import java.util.Objects;
import java.util.Optional;
import org.foreload.bicycle.WheelForces;
import org.foreload.conventions.Bounds;
import org.foreload.vehicle.Car;

/**
 * The driver's left foot: the brake that the plan asks for, and how the foot departs from it. What it remembers is two
 * numbers that follow equations of their own: how far the foot has eased for a stopped wheel, a share from 0 to 1, and
 * how much faster than planned the driver perceives the car to be, m/s, late by the delay.
 *
 * <p>The foot feels how near the wheels are to stopping and the axles to their full use. What it adds to a plan fades
 * out towards both, so that it never adds its way into a lock. With anti-lock brakes no wheel stops, and what slows one
 * is given back as soon as its tyre needs the grip across: there it fades out towards a full lateral force alone.
 *
 * <p>Everything is smooth in state and time; one instance serves one run at a time.
 */
public final class BrakeFoot {

    /** Share of what a wheel carries rolling up to which the foot adds brake freely, and from which it adds none. */
    private static final double LOCK_NEAR = 0.82;

    private static final double LOCK_FELT = 0.95;

    /** The same for the use of an axle's friction. The hands fill the front to 0.985. */
    private static final double USE_NEAR = 0.86;

    private static final double USE_FELT = 0.97;

    /**
     * Share of the speed at which the throttle opens below which the foot adds no brake, and from which it adds freely:
     * nobody brakes more than planned who is as slow as the corner asks for.
     */
    private static final double SLOW_ENOUGH = 0.75;

    private static final double STILL_FAST = 0.95;

    /** Time over which the easing sets in after the delay, s. */
    private static final double ONSET = 0.05;

    private final LeftFoot foot;
    private final Reaction reaction;
    private final double slowestBraking;
    private final double opening;
    private final boolean antiLock;
    private final Optional<SpeedPlan> expected;

    /**
     * @param car whose brake it is
     * @param foot how the driver works the brake
     * @param opening speed at which the throttle opens, m/s
     * @param expected the speeds that the plan leads to expect; empty for a driver who expects none
     */
    public BrakeFoot(Car car, LeftFoot foot, double opening, Optional<SpeedPlan> expected) {
        this.antiLock = Objects.requireNonNull(car, "car").antiLock();
        this.foot = Objects.requireNonNull(foot, "foot");
        this.reaction = foot.reaction();
        this.opening = opening;
        this.slowestBraking = foot.slowestBraking() * opening;
        this.expected = Objects.requireNonNull(expected, "expected");
    }

    /** Whether the foot departs from its plan at all. */
    public boolean reacts() {
        return reaction.reacts();
    }

    /** Last station for which the driver expects a speed, m; infinite where none is expected. */
    public double expectedUpTo() {
        return expected.map(SpeedPlan::end).orElse(Double.POSITIVE_INFINITY);
    }

    /**
     * Brake that the foot asks for as planned, m/s²: the plan, faded out where the driver has become too slow.
     *
     * @param planned m/s²
     * @param speed m/s
     */
    public double asTold(double planned, double speed) {
        return planned * fading(speed);
    }

    private double fading(double speed) {
        return slowestBraking == 0 ? 1 : risen(speed / slowestBraking - 1);
    }

    /**
     * Brake that a reacting foot asks for, m/s², zero or above.
     *
     * @param planned m/s²
     * @param speed m/s
     * @param eased share by which the foot has eased
     * @param excess how much faster than planned the driver perceives the car to be, m/s
     * @param wheels loads and forces as they are
     */
    public double demand(double planned, double speed, double eased, double excess, WheelForces wheels) {
        double asked = reaction.asked(excess);
        double changed = planned;
        if (asked > 0) {
            changed += reaction.most() * Math.tanh(asked / reaction.most()) * room(wheels) * stillFast(speed);
        } else if (planned > 0) {
            double least = reaction.least() * planned;
            changed += least > 0 ? least * Math.tanh(asked / least) : 0;
        }
        return changed * (1 - Bounds.clamp(0, eased, 1)) * fading(speed);
    }

    /**
     * Rate of the share by which the foot has eased, 1/s: off, once the delay is over, while a wheel stands; back on as
     * far as no wheel is about to stop.
     *
     * @param eased that share
     * @param stoppedFor time since the first of the stopped wheels stopped, s; NaN if all turn
     * @param wheels loads and forces as they are
     */
    public double easing(double eased, double stoppedFor, WheelForces wheels) {
        if (Double.isNaN(stoppedFor)) {
            return -eased / reaction.regaining() * lockRoom(wheels);
        }
        return (1 - eased) / reaction.easing() * risen((stoppedFor - reaction.delay()) / ONSET);
    }

    /**
     * Rate of the perceived excess of speed, m/s²: it follows the true one with the delay as its time constant.
     *
     * @param excess as perceived, m/s
     * @param station m
     * @param speed m/s
     */
    public double perceiving(double excess, double station, double speed) {
        double real = expected.filter(plan -> plan.covers(station))
                .map(plan -> speed - plan.speed(station))
                .orElse(0.0);
        return (real - excess) / reaction.delay();
    }

    private double stillFast(double speed) {
        return risen((speed / opening - SLOW_ENOUGH) / (STILL_FAST - SLOW_ENOUGH));
    }

    /** What the grip leaves for more brake: 1 where there is plenty, 0 where the foot feels the limit. */
    private double room(WheelForces wheels) {
        double fullest = Bounds.larger(use(wheels, 0), use(wheels, 2));
        return lockRoom(wheels) * left(fullest, USE_NEAR, USE_FELT);
    }

    /** The same as far as stopping wheels are concerned; with anti-lock brakes none is. */
    private double lockRoom(WheelForces wheels) {
        if (antiLock) {
            return 1;
        }
        double room = 1;
        for (int wheel = 0; wheel < 4; wheel++) {
            double carried = -wheels.longitudinal(wheel);
            double margin = wheels.lockMargin(wheel);
            if (carried > 0) {
                room *= left(carried / Bounds.larger(carried, carried + margin), LOCK_NEAR, LOCK_FELT);
            }
        }
        return room;
    }

    /** Share of an axle's friction that is used and not given back, its wheels weighed by what they have. */
    private double use(WheelForces wheels, int left) {
        double used = 0;
        double most = 0;
        for (int wheel = left; wheel < left + 2; wheel++) {
            double peak = wheels.peakY(wheel);
            if (peak > 0) {
                double along = antiLock ? 0 : wheels.longitudinal(wheel) / wheels.peakX(wheel);
                used += peak * Math.hypot(along, wheels.lateral(wheel) / peak);
                most += peak;
            }
        }
        return most > 0 ? used / most : 0;
    }

    private static double left(double used, double near, double felt) {
        return 1 - risen((used - near) / (felt - near));
    }

    /** A smooth step from 0 to 1. */
    private static double risen(double x) {
        double inside = Bounds.clamp(0, x, 1);
        return inside * inside * (3 - 2 * inside);
    }
}
