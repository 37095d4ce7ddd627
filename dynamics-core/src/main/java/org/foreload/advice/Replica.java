package org.foreload.advice;

import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.conventions.Rising;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.RightFoot;
import org.foreload.entry.EntryResult;
import org.foreload.entry.SimulationSettings;
import org.foreload.envelope.FrictionEnvelope;
import org.foreload.path.Corner;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Proportion;
import org.foreload.trace.Trace;
import org.foreload.vehicle.Car;

/** A car on a line with a driver: all that this package asks of the simulator. */
final class Replica {

    private final CornerStudy study;

    private Replica(CornerStudy study) {
        this.study = study;
    }

    /**
     * A replica.
     *
     * @param car the car
     * @param corner the line
     * @param exitUse share of the friction with which the driver leaves the corner
     * @param settings of the simulator
     * @throws org.foreload.conventions.InvalidValueException if the car cannot be slowed for the corner
     */
    static Replica of(Car car, Corner corner, double exitUse, SimulationSettings settings) {
        RightFoot usual = RightFoot.practised();
        DriverSettings driver = DriverSettings.practised().with(usual.withExitFriction(exitUse));
        return new Replica(CornerStudy.of(car, corner, driver, settings, Allowance.NO_MARGIN));
    }

    /** The car. */
    Car car() {
        return study.simulator().car();
    }

    /** The same with another car and the same exit. */
    Replica with(Car other) {
        return new Replica(study.with(other, study.simulator().driver()));
    }

    /**
     * One drive.
     *
     * @param time from start to end of the line, s; NaN unless it was made
     * @param made whether the car made the corner
     * @param cause how it ended
     * @param drift farthest distance off the line, m
     * @param stations rising, m
     * @param speeds m/s
     */
    record Drive(double time, boolean made, String cause, double drift, double[] stations, double[] speeds) {

        /** Speed at a station, m/s, that of the nearest end beyond them. */
        double speedAt(double station) {
            return Rising.straight(stations, speeds, station);
        }
    }

    /** Two speeds at brake off this near to each other, m/s, are the same. */
    private static final double SAME_SPEED = 0.01;

    /** Steps of the search for it; each gains a digit or more. */
    private static final int MOST_STEPS = 8;

    /**
     * How much harder a driver has to brake from a later place, m/s², so that the car is as fast where the brake is
     * off: what follows then stays as it was. Newton's method; by how much the square of the speed there falls with the
     * deceleration is twice the length of the braking, that of the release as far as it is held.
     *
     * @param plan the driver's
     * @param later by how much, m
     * @return empty where no braking makes the corner like that
     */
    Optional<Double> harder(BrakePlan plan, double later) {
        double off = plan.release().end();
        double speed = drive(plan).speedAt(off);
        double eased = (plan.release().start() + off) / 2;
        double length = eased - plan.brakePoint() - later;
        if (!(length > later)) {
            return Optional.empty();
        }
        BrakePlan moved = plan.withBrakePoint(plan.brakePoint() + later);
        double harder = plan.peakDeceleration() * later / length;
        for (int i = 0; i < MOST_STEPS; i++) {
            Drive drive = drive(moved.withPeakDeceleration(plan.peakDeceleration() + harder));
            double faster = drive.speedAt(off) - speed;
            if (!drive.made()) {
                return Optional.empty();
            }
            if (Math.abs(faster) < SAME_SPEED) {
                return Optional.of(harder);
            }
            harder += faster * speed / length;
        }
        return Optional.empty();
    }

    /** Drives a plan and keeps the speeds. */
    Drive drive(BrakePlan plan) {
        EntryResult entry = study.simulator().run(plan);
        Trace profile = entry.profile().orElseThrow();
        return new Drive(
                entry.time(),
                entry.made(),
                entry.cause(),
                entry.farthestOffset(),
                profile.column("s_m").values(),
                profile.column("speed_mps").values());
    }

    /** How much of the limits a plan uses at most where braking and cornering take alike. */
    double mixedUse(BrakePlan plan, FrictionEnvelope limits) {
        Trace profile = study.simulator().run(plan).profile().orElseThrow();
        Trace.Column speed = profile.column("speed_mps");
        Trace.Column along = profile.column("deceleration_mps2");
        Trace.Column across = profile.column("lateral_acceleration_mps2");
        double most = 0;
        for (int i = 0; i < profile.rows(); i++) {
            if (limits.mixed(speed.at(i), along.at(i), across.at(i))) {
                most = Math.max(most, limits.use(speed.at(i), along.at(i), across.at(i)));
            }
        }
        return most;
    }

    /** The same without the speeds. */
    Drive quickly(BrakePlan plan) {
        EntryResult entry = study.simulator().probe(plan);
        return new Drive(
                entry.time(), entry.made(), entry.cause(), entry.farthestOffset(), new double[0], new double[0]);
    }

    /** How often a plan fails for a driver who scatters; empty where that is more than a share allowed. */
    Optional<Proportion> failures(BrakePlan plan, Scatter scatter, AdviceSettings settings) {
        return new RiskStudy(study, scatter, settings.samples(), settings.seed())
                .seldomFailing(plan, settings.failing());
    }
}
