package org.foreload.advice;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
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

    private static final double[] GUESS = {0.88, 1.01};

    /** Share of the friction that a driver uses on the way out at most; common practice, no source. */
    static final double MOST_USE = 0.97;

    /** Steps in which the friction along is raised until no wheel stops, and how often. */
    private static final double FIRMER = 1.04;

    private static final int FIRMER_STEPS = 8;

    /** Time in which a foot comes down, s; common practice, no source. */
    private static final double BUILD_UP = 0.2;

    /** While it is searched: coarser, as a probe is; what was found is driven with the standard settings. */
    private static final SimulationSettings SEARCHING = new SimulationSettings(1e-5, 2);

    /** A pick-up this near to the end of the release, m, is no coasting. */
    static final double AT_ONCE = 6;

    /** Distance between the stations at which speeds are compared, m. */
    private static final double STEP = 4;

    /** Weight of what comes behind the bend. */
    private static final double BEHIND = 0.1;

    /** Speed, m/s, below which a difference counts no more for being at a low speed. */
    private static final double SLOWEST = 5;

    private final Car car;
    private final DrivenLine line;
    private final BrakePlan first;

    /** Where speeds are compared, m; those recorded there, m/s; and what a difference counts. */
    private final double[] stations;

    private final double[] recorded;
    private final double[] weights;

    /** The car of each friction that the search has asked for: it looks at several peaks with one. */
    private final Map<Double, Replica> begun = new HashMap<>();

    private ReplicaFit(Run run, RecordedCorner did, Car car, DrivenLine line) {
        this.car = car;
        this.line = line;
        this.first = plan(did, line.turnIn());
        double start = line.corner().path().start();
        int count = Math.max(1, (int) Math.ceil((line.corner().path().end() - start) / STEP));
        this.stations = new double[count];
        this.recorded = new double[count];
        this.weights = new double[count];
        for (int i = 0; i < count; i++) {
            stations[i] = start + i * STEP;
            recorded[i] = run.speedAt(line.turnIn() + stations[i]);
            weights[i] = Math.sqrt(stations[i] < line.bendEnd() ? 1 : BEHIND) / Math.max(SLOWEST, recorded[i]);
        }
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
        double[] found = new SecantFit(fit::residuals, LOW, HIGH).from(GUESS);
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

    /** How far the simulated speeds are off, station by station; a car that does not come so far stands there. */
    private double[] residuals(double[] point) {
        double[] off = new double[stations.length];
        try {
            // A wheel that stops would make a step of the cost; whether one does is looked at afterwards.
            Replica.Drive drive = begun.computeIfAbsent(point[1], use -> replica(point, 1, true, SEARCHING))
                    .drive(plan(point));
            speeds(drive, off);
        } catch (InvalidValueException tooFast) {
            // Worse than any that comes, and the less so the more friction there is.
            Arrays.fill(off, point[1] - HIGH[1]);
        }
        for (int i = 0; i < off.length; i++) {
            off[i] = (off[i] - recorded[i]) * weights[i];
        }
        return off;
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

    private double speedError(Replica.Drive drive) {
        double[] speeds = new double[stations.length];
        int reached = speeds(drive, speeds);
        double sum = 0;
        for (int i = 0; i < reached; i++) {
            sum += (speeds[i] - recorded[i]) * (speeds[i] - recorded[i]);
        }
        return Math.sqrt(sum / Math.max(1, reached));
    }

    /** Fills in the speeds at the stations that a drive reaches; gives how many these are. */
    private int speeds(Replica.Drive drive, double[] speeds) {
        double[] s = drive.stations();
        double[] v = drive.speeds();
        int i = 0;
        for (int k = 0; k < stations.length; k++) {
            double at = stations[k];
            if (!(at < s[s.length - 1])) {
                return k;
            }
            while (i + 2 < s.length && s[i + 1] < at) {
                i++;
            }
            double share = (at - s[i]) / (s[i + 1] - s[i]);
            speeds[k] = v[i] * (1 - share) + v[i + 1] * share;
        }
        return stations.length;
    }
}
