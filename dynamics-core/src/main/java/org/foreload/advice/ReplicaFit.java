package org.foreload.advice;

import java.util.HashMap;
import java.util.Map;
import java.util.function.DoubleBinaryOperator;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.InvalidValueException;
import org.foreload.entry.SimulationSettings;
import org.foreload.recording.Estimate;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.foreload.recording.Run;
import org.foreload.study.Search;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;

/**
 * Fits what a recording does not show by itself, so that the simulated speeds lie on the recorded ones: the peak that
 * the brakes were asked for, and the friction with which the driver leaves the corner. A driver leaves a little unused;
 * where that takes more friction than the accelerations have shown, the car has more. And who braked without a wheel
 * that stops has a car that can.
 */
final class ReplicaFit {

    /** Bounds of the search: peak over the first guess, friction on the way out over what was shown. */
    private static final double[] LOW = {0.8, 0.75};

    private static final double[] HIGH = {1.15, 1.15};

    private static final double[] GUESS = {0.93, 1.0};

    private static final double RADIUS = 0.04;

    private static final int EVALUATIONS = 22;

    /** Share of the friction that a driver uses on the way out at most; common practice, no source. */
    private static final double MOST_USE = 0.97;

    /** Steps in which the friction along is raised until no wheel stops, and how often. */
    private static final double FIRMER = 1.04;

    private static final int FIRMER_STEPS = 8;

    /** Time in which a foot comes down, s; common practice, no source. */
    private static final double BUILD_UP = 0.2;

    /** While it is searched: coarser, as a probe is; what was found is driven with the standard settings. */
    private static final SimulationSettings SEARCHING = new SimulationSettings(1e-5, 2);

    /** What a car that does not make the corner counts like, m/s. */
    private static final double LOST = 50;

    /** A pick-up this near to the end of the release, m, is no coasting. */
    private static final double AT_ONCE = 6;

    /** Distance between the stations at which speeds are compared, m. */
    private static final double STEP = 4;

    private final Run run;
    private final Car car;
    private final DrivenLine line;
    private final BrakePlan first;

    /** The car of each friction that the search has asked for: it looks at several peaks with one. */
    private final Map<Double, Replica> begun = new HashMap<>();

    private ReplicaFit(Run run, RecordedCorner did, Car car, DrivenLine line) {
        this.run = run;
        this.car = car;
        this.line = line;
        this.first = plan(did, line.turnIn());
    }

    /**
     * The best fit.
     *
     * @param likeness how well it drives
     * @param replica the car and the driver that were found
     */
    record Fitted(Likeness likeness, Replica replica) {}

    /**
     * The best fit.
     *
     * @throws InvalidValueException if no car near this one can be slowed for the corner
     */
    static Fitted of(Run run, RecordedCorner did, Car car, DrivenLine line) {
        ReplicaFit fit = new ReplicaFit(run, did, car, line);
        double[] found = new Search(LOW, HIGH, EVALUATIONS, () -> false)
                .nearby(fit::cost, GUESS, RADIUS)
                .point();
        return fit.fitted(found);
    }

    /** A driver's plan as measured, in stations from turn-in. */
    static BrakePlan plan(RecordedCorner did, double turnIn) {
        double on = did.get(Measure.BRAKE_ON).value() - turnIn;
        double start = did.get(Measure.FIRST_EASE).value() - turnIn;
        double end = did.get(Measure.RELEASE_END).value() - turnIn;
        ReleaseShape shape = did.shape().orElse(ReleaseShapes.LINEAR);
        boolean abrupt = shape.equals(ReleaseShapes.ABRUPT);
        Release release = new Release(shape, abrupt ? end : start, Math.max(end, abrupt ? end : start));
        BrakePlan plan = Braking.of(did.get(Measure.PEAK_DECELERATION).value(), BUILD_UP, release)
                .from(on);
        Estimate pickUp = did.get(Measure.PICK_UP);
        boolean coasted = pickUp.known() && pickUp.value() - turnIn > end + AT_ONCE;
        return coasted ? plan.withPickUp(pickUp.value() - turnIn) : plan;
    }

    private BrakePlan plan(double[] point) {
        return first.withPeakDeceleration(first.peakDeceleration() * point[0]);
    }

    private static double exitUse(double[] point) {
        return Math.min(MOST_USE, point[1]);
    }

    private static double friction(double[] point) {
        return Math.max(1, point[1] / MOST_USE);
    }

    /** The car with the friction that a point stands for, and more of it along. */
    private Replica replica(double[] point, double firmer, boolean antiLock, SimulationSettings settings) {
        double friction = friction(point);
        Car scaled = car.withTyres(
                firmer(car.frontTyre().withFriction(friction), firmer),
                firmer(car.rearTyre().withFriction(friction), firmer));
        return Replica.of(scaled.withAntiLock(antiLock || car.antiLock()), line.corner(), exitUse(point), settings);
    }

    private static Tyre firmer(Tyre tyre, double factor) {
        if (factor == 1 || !(tyre instanceof FrictionTyre)) {
            return tyre;
        }
        FrictionTyre one = (FrictionTyre) tyre;
        return new FrictionTyre(
                one.curve(),
                one.frictionX() * factor,
                one.frictionY(),
                one.loadSensitivity(),
                one.referenceLoad(),
                one.relaxationLength(),
                one.corneringStiffnessPerLoad(),
                one.slipStiffnessPerLoad());
    }

    private double cost(double[] point) {
        try {
            // A wheel that stops would make a step of the cost; whether one does is looked at afterwards.
            Replica.Drive drive = begun.computeIfAbsent(point[1], use -> replica(point, 1, true, SEARCHING))
                    .drive(plan(point));
            return misfit(drive) + (drive.made() ? 0 : LOST * (1 - covered(drive)));
        } catch (InvalidValueException tooFast) {
            return LOST + HIGH[1] - point[1];
        }
    }

    private Fitted fitted(double[] point) {
        double firmer = 1;
        Replica replica = replica(point, firmer, false, SimulationSettings.STANDARD);
        Replica.Drive drive = replica.drive(plan(point));
        for (int i = 0; i < FIRMER_STEPS && !drive.made(); i++) {
            firmer *= FIRMER;
            replica = replica(point, firmer, false, SimulationSettings.STANDARD);
            drive = replica.drive(plan(point));
        }
        Likeness likeness = new Likeness(
                plan(point),
                friction(point),
                exitUse(point),
                speedError(drive),
                drive.time() - line.seconds(),
                drive.made(),
                drive.cause());
        return new Fitted(likeness, replica);
    }

    private double covered(Replica.Drive drive) {
        double start = line.corner().path().start();
        double last = drive.stations()[drive.stations().length - 1];
        return (last - start) / (line.corner().path().end() - start);
    }

    private double speedError(Replica.Drive drive) {
        return error(drive, (at, speed) -> 1);
    }

    /**
     * The error that is made small: in shares of the speed, since the limit goes with its square, and less by what
     * comes behind the bend, where an engine that differs a little must not be made up for by friction.
     */
    private double misfit(Replica.Drive drive) {
        return line.corner().approachSpeed()
                * error(drive, (at, speed) -> (at < line.bendEnd() ? 1 : BEHIND) / (speed * speed));
    }

    /** Weight of what comes behind the bend. */
    private static final double BEHIND = 0.1;

    /** Root mean square difference of the speeds with a weight for each place and recorded speed. */
    private double error(Replica.Drive drive, DoubleBinaryOperator weight) {
        double[] s = drive.stations();
        double[] v = drive.speeds();
        double sum = 0;
        int count = 0;
        int i = 0;
        for (double at = s[0]; at < s[s.length - 1]; at += STEP) {
            while (i + 2 < s.length && s[i + 1] < at) {
                i++;
            }
            double share = (at - s[i]) / (s[i + 1] - s[i]);
            double recorded = run.speedAt(line.turnIn() + at);
            double off = v[i] * (1 - share) + v[i + 1] * share - recorded;
            sum += off * off * weight.applyAsDouble(at, recorded);
            count++;
        }
        return Math.sqrt(sum / Math.max(1, count));
    }
}
