package org.foreload.advice;

import java.util.Arrays;
import org.foreload.envelope.FrictionEnvelope;
import org.foreload.recording.Channel;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.foreload.recording.Run;
import org.foreload.trace.Trace;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Suspension;

/**
 * A car that has the limits and the power that a recording shows, and for all else the numbers of a usual car: mass,
 * wheelbase and stiffnesses hardly move a time as long as friction, downforce and power per mass are right. Those
 * numbers are invented for want of a source, and belong to no car.
 */
final class FittedCar {

    private static final double GRAVITY = 9.81;

    private static final double MASS = 1000;

    private static final Chassis CHASSIS = new Chassis(MASS, 2.5, 1.25, 0.45, 1400, 1.45, 1.45);

    private static final double DRAG_AREA = 0.65;

    private static final double AIR_DENSITY = 1.2;

    /** Share by which the rear tyres have more across: a car that can be driven gives way at the front first. */
    private static final double REAR_RESERVE = 0.04;

    /** Front brake share above that at which both axles would lock together: the front is to lock first. */
    private static final double FRONT_RESERVE = 0.02;

    private static final double CORNERING_STIFFNESS = 17;

    private static final double SLIP_STIFFNESS = 20;

    private static final double RELAXATION_LENGTH = 0.35;

    /** Quantile of the power in a run that is full power. */
    private static final double FULL = 0.9;

    /** Acceleration, m/s², from which the engine is at work, and lateral one up to which tyres do not hold it back. */
    private static final double PUSHED = 0.3;

    private static final double HARDLY_TURNING = 2;

    /** Power in W of a run that never shows any. */
    private static final double LEAST_POWER = 20_000;

    private static final double STEP = 2;

    private FittedCar() {}

    /**
     * A car with these limits.
     *
     * @param limits on the tyres
     * @param run shows the power
     * @param from first station at which it does, m
     * @param to last one, m
     */
    static Car of(FrictionEnvelope limits, Run run, double from, double to) {
        double slow = limits.lowestSpeed();
        double fast = Math.max(slow + 1, limits.highestSpeed());
        double gain = (limits.lateral(fast).value() - limits.lateral(slow).value()) / (fast * fast - slow * slow);
        double across = (limits.lateral(slow).value() - gain * slow * slow) / GRAVITY;
        double downforce = 2 * MASS * Math.max(0, gain) / (AIR_DENSITY * across);
        double along = Math.max(across, limits.braking(slow).value() / GRAVITY);
        Aerodynamics air = new Aerodynamics(DRAG_AREA, downforce / 2, downforce / 2, AIR_DENSITY, 0);
        double share = (CHASSIS.cgToRearAxle() + CHASSIS.cgHeight() * along) / CHASSIS.wheelbase() + FRONT_RESERVE;
        return new Car(
                "fitted car",
                CHASSIS,
                new Suspension(0.55, 0.05, 0.05, Suspension.Response.RIGID, Suspension.Response.RIGID),
                air,
                Math.min(1, share),
                new Driveline(power(run, from, to), Driveline.DrivenAxle.REAR),
                tyre(along, across),
                tyre(along, across * (1 + REAR_RESERVE)));
    }

    /**
     * Braking in a straight line that any car bears before a wheel stops, as a share of what it bears across: brakes
     * are shared out for a little less than the most. Common practice, no source.
     */
    private static final double STRAIGHT_SHARE = 0.9;

    /** The hardest braking in a straight line that the car of these limits bears for a corner, shown or not, m/s². */
    static double borne(FrictionEnvelope limits, RecordedCorner did) {
        double speed = did.get(Measure.MINIMUM_SPEED).value();
        return Math.max(
                limits.braking(speed).value(),
                STRAIGHT_SHARE * limits.lateral(speed).value());
    }

    private static FrictionTyre tyre(double along, double across) {
        return new FrictionTyre(
                new SlipCurve.Brush(),
                along,
                across,
                0,
                MASS * GRAVITY / 4,
                RELAXATION_LENGTH,
                CORNERING_STIFFNESS,
                SLIP_STIFFNESS);
    }

    /** Power at the wheels for the mass of this car, W: what hard acceleration and drag together take. */
    private static double power(Run run, double from, double to) {
        Trace rows = run.resampled(STEP);
        Trace.Column station = rows.column(Channel.DISTANCE.field());
        Trace.Column speed = rows.column(Channel.SPEED.field());
        Trace.Column along = rows.column(Channel.LONGITUDINAL.field());
        Trace.Column across = rows.column(Channel.LATERAL.field());
        double[] powers = new double[rows.rows()];
        int count = 0;
        for (int i = 0; i < powers.length; i++) {
            boolean inside = station.at(i) >= from && station.at(i) <= to;
            if (inside && along.at(i) > PUSHED && Math.abs(across.at(i)) < HARDLY_TURNING) {
                double v = speed.at(i);
                powers[count++] = v * (MASS * along.at(i) + 0.5 * AIR_DENSITY * DRAG_AREA * v * v);
            }
        }
        double[] sorted = Arrays.copyOf(powers, count);
        Arrays.sort(sorted);
        return count == 0 ? LEAST_POWER : Math.max(LEAST_POWER, sorted[(int) (FULL * (count - 1))]);
    }
}
