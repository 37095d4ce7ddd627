package org.foreload.limit;

import org.foreload.conventions.Checks;
import org.foreload.conventions.Gravity;
import org.foreload.conventions.InvalidValueException;
import org.foreload.load.LoadTransfer;
import org.foreload.load.RoadPlane;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;

/**
 * The equations of {@link org.foreload.bicycle.BicycleModel}, written down a second time so that they can be
 * differentiated twice. A test holds the two together. What differs, and only where the limit does not go: a wheel that
 * leaves the road does so over a band of load, and a wheel that is asked for more than it has is held just below its
 * peak and does not stop.
 *
 * <p>The results of {@link #evaluate} are numbers of nodes on the tape, and stay until the next evaluation.
 */
final class SmoothBicycle {

    /** Half of the band of load over which a wheel leaves the road, as a share of the car's weight. */
    private static final double LIFT_BAND = 0.004;

    /** Share of its longitudinal peak above which a wheel's force bends over, and the share that it never reaches. */
    private static final double BENDS_FROM = 0.99;

    private static final double BENDS_TO = 0.9995;

    /**
     * Share of its longitudinal peak from which the force of a wheel bends over to what anti-lock brakes hold it to.
     */
    private static final double HELD_FROM = 0.90;

    /** Share of what it can carry that a wheel may be asked for, so that none comes to the edge of stopping. */
    private static final double ROLLING_SHARE = 0.998;

    /** Brake force, N, too small to stop even a wheel in the air: as in the other form of these equations. */
    private static final double IDLE_FORCE = 1;

    private final Car car;
    private final double perYawInertia;
    private final FrictionTyre[] tyres;
    private final SlipShape[] shapes;
    private final LoadTransfer transfer;
    private final double liftBand;
    private final double[] brakeShare;
    private final double[] driveShare;

    /** Acceleration along and across the car, m/s², without the turning of its axes; yaw acceleration, rad/s². */
    int accelerationX;

    int accelerationY;
    int yawAcceleration;

    /** Load, N, that these forces would hold moved to the front, and the lateral specific force of the tyres, m/s². */
    int pitchTarget;

    int rollTarget;

    /** Lateral specific force, m/s², without sign, at which the car tips over, if it {@link #tips} at all. */
    int tipping;

    /** Tangents of the slip angles of front and rear as the axles move, before any lag. */
    int frontSlip;

    int rearSlip;

    /** By axle, front first: lateral force, N, to the left, and what the longitudinal force leaves for it. */
    final int[] lateral = new int[2];

    final int[] lateralPeak = new int[2];

    /** By axle: how far, in squares of it, the slip is before that of the pure lateral peak. */
    final int[] beforePeak = new int[2];

    /** By wheel: load, N. */
    final int[] load = new int[4];

    /** By wheel: force along it, N, positive to the front. */
    final int[] along = new int[4];

    /** By wheel, twice: force, N, that it could carry beyond what is asked of it, driving and braking. */
    final int[] rolling = new int[8];

    /**
     * @throws InvalidValueException if a tyre is none of the ready ones: the equations need the curve's formula; or if
     *     the car has no yaw inertia: a transient model needs one
     */
    SmoothBicycle(Car car) {
        this.car = car;
        this.perYawInertia =
                1 / Checks.positive("yaw_inertia_kg_m2", car.chassis().yawInertia());
        this.transfer = LoadTransfer.of(car);
        this.tyres = new FrictionTyre[] {known("front_tyre", car.frontTyre()), known("rear_tyre", car.rearTyre())};
        this.shapes = new SlipShape[] {new SlipShape(tyres[0].curve()), new SlipShape(tyres[1].curve())};
        this.liftBand = LIFT_BAND * car.chassis().mass() * Gravity.G;
        double frontDrive = car.driveline().drivenAxle().frontShare();
        this.brakeShare = new double[] {car.frontBrakeShare(), 1 - car.frontBrakeShare()};
        this.driveShare = new double[] {frontDrive, 1 - frontDrive};
    }

    private static FrictionTyre known(String field, Tyre tyre) {
        if (tyre instanceof FrictionTyre friction) {
            return friction;
        }
        throw new InvalidValueException(
                field, tyre.getClass().getName(), "a FrictionTyre: of another model the slopes are not known");
    }

    /** Whether there is a lateral force at which the car tips over: it has a height. */
    boolean tips() {
        return transfer.tipping(1, 1) < Double.POSITIVE_INFINITY;
    }

    /**
     * Records the equations.
     *
     * @param tape record
     * @param vx speed along the car, m/s
     * @param vy speed across the car, m/s
     * @param yawRate rad/s
     * @param pitch load moved to the front, N
     * @param roll lateral specific force as the body feels it, m/s²
     * @param frontLateral slip that the front tyres have, tangent
     * @param rearLateral slip that the rear tyres have, tangent
     * @param steer rad
     * @param brake brake force over mass, m/s²
     * @param drive drive force over mass, m/s²
     * @param grade rad
     * @param banking rad
     */
    void evaluate(
            Tape tape,
            int vx,
            int vy,
            int yawRate,
            int pitch,
            int roll,
            int frontLateral,
            int rearLateral,
            int steer,
            int brake,
            int drive,
            double grade,
            double banking) {
        double mass = car.chassis().mass();
        double toFront = car.chassis().cgToFrontAxle();
        double toRear = car.chassis().cgToRearAxle();
        double wheelbase = car.chassis().wheelbase();
        int sinSteer = tape.sin(steer);
        int cosSteer = tape.cos(steer);
        int turning = tape.times(vx, yawRate);
        int speedSquared = tape.square(vx);
        int drag = tape.scaled(speedSquared, car.aerodynamics().drag(1));

        int tanSteer = tape.over(sinSteer, cosSteer);
        int course = tape.over(tape.plus(vy, tape.scaled(yawRate, toFront)), vx);
        frontSlip = tape.over(tape.minus(course, tanSteer), tape.shifted(tape.times(course, tanSteer), 1));
        rearSlip = tape.over(tape.minus(vy, tape.scaled(yawRate, toRear)), vx);

        loads(tape, turning, speedSquared, pitch, roll, grade, banking);
        int[] across = new int[4];
        axle(tape, 0, frontLateral, brake, drive, mass, across);
        axle(tape, 1, rearLateral, brake, drive, mass, across);
        int frontX = tape.plus(along[0], along[1]);
        int rearX = tape.plus(along[2], along[3]);
        int bodyX = tape.plus(tape.minus(tape.times(frontX, cosSteer), tape.times(lateral[0], sinSteer)), rearX);
        int frontBodyY = tape.plus(tape.times(lateral[0], cosSteer), tape.times(frontX, sinSteer));
        int bodyY = tape.plus(frontBodyY, lateral[1]);
        int frontTurning = tape.minus(
                tape.times(tape.minus(along[1], along[0]), cosSteer),
                tape.times(tape.minus(across[1], across[0]), sinSteer));
        int moment = tape.plus(
                tape.minus(tape.scaled(frontBodyY, toFront), tape.scaled(lateral[1], toRear)),
                tape.plus(
                        tape.scaled(frontTurning, car.chassis().frontTrack() / 2),
                        tape.scaled(
                                tape.minus(along[3], along[2]), car.chassis().rearTrack() / 2)));

        double sideGravity = Gravity.G * Math.sin(banking) * Math.cos(grade);
        accelerationX = tape.shifted(tape.scaled(tape.minus(bodyX, drag), 1 / mass), -RoadPlane.slowing(grade));
        rollTarget = tape.scaled(bodyY, 1 / mass);
        accelerationY = tape.shifted(rollTarget, sideGravity);
        yawAcceleration = tape.scaled(moment, perYawInertia);
        double height = car.chassis().cgHeight();
        pitchTarget = tape.minus(
                tape.scaled(drag, (height - car.aerodynamics().dragHeight()) / wheelbase),
                tape.scaled(bodyX, height / wheelbase));
    }

    private void loads(Tape tape, int turning, int speedSquared, int pitch, int roll, double grade, double banking) {
        double flat = RoadPlane.normal(0, grade, banking);
        double perTurning = RoadPlane.normal(1, grade, banking) - flat;
        int front = axleLoad(
                tape,
                transfer.frontAxle(flat, 0),
                transfer.frontAxle(1, 0) * perTurning,
                transfer.frontAxle(0, 1),
                turning,
                speedSquared);
        int rear = axleLoad(
                tape,
                transfer.rearAxle(flat, 0),
                transfer.rearAxle(1, 0) * perTurning,
                transfer.rearAxle(0, 1),
                turning,
                speedSquared);
        int frontNow = tape.plus(front, pitch);
        int rearNow = tape.minus(rear, pitch);
        front = tape.minus(positive(tape, frontNow), positive(tape, tape.scaled(rearNow, -1)));
        rear = tape.minus(positive(tape, rearNow), positive(tape, tape.scaled(frontNow, -1)));
        if (tips()) {
            tipping = tape.plus(tape.scaled(front, transfer.tipping(1, 0)), tape.scaled(rear, transfer.tipping(0, 1)));
        }
        wheels(tape, 0, front, tape.scaled(roll, transfer.frontLateral(1)));
        wheels(tape, 2, rear, tape.scaled(roll, transfer.rearLateral(1)));
    }

    private static int axleLoad(
            Tape tape, double still, double perTurning, double perSquare, int turning, int speedSquared) {
        int load = tape.shifted(tape.scaled(speedSquared, perSquare), still);
        return perTurning == 0 ? load : tape.plus(load, tape.scaled(turning, perTurning));
    }

    private void wheels(Tape tape, int left, int axle, int shift) {
        int half = tape.scaled(axle, 0.5);
        int atLeft = tape.minus(half, shift);
        int atRight = tape.plus(half, shift);
        load[left] = tape.minus(positive(tape, atLeft), positive(tape, tape.scaled(atRight, -1)));
        load[left + 1] = tape.minus(positive(tape, atRight), positive(tape, tape.scaled(atLeft, -1)));
    }

    /** A load or zero, joined over the band by the polynomial of lowest order that keeps slope and curvature. */
    private int positive(Tape tape, int node) {
        double t = tape.value(node) / liftBand;
        if (t >= 1) {
            return node;
        }
        if (t <= -1) {
            return tape.constant(0);
        }
        double square = t * t;
        double result = liftBand * (3 + 8 * t + 6 * square - square * square) / 16;
        return tape.function(node, result, 0.5 + 0.75 * t - 0.25 * square * t, 0.75 * (1 - square) / liftBand);
    }

    /** A longitudinal peak, or where a wheel is about to leave the road a little more, so that it can be divided by. */
    private int atLeast(Tape tape, int peak) {
        return tape.value(peak) >= 2 * liftBand
                ? peak
                : tape.shifted(positive(tape, tape.shifted(peak, -liftBand)), liftBand);
    }

    private void axle(Tape tape, int axle, int slip, int brake, int drive, double mass, int[] across) {
        FrictionTyre tyre = tyres[axle];
        SlipShape shape = shapes[axle];
        double stiffness = tyre.corneringStiffnessPerLoad() / tyre.frictionY();
        int normalised = tape.scaled(slip, stiffness);
        int square = tape.square(normalised);
        int asked = tape.minus(
                tape.scaled(drive, mass * driveShare[axle] / 2), tape.scaled(brake, mass * brakeShare[axle] / 2));
        beforePeak[axle] = tape.shifted(tape.scaled(square, -1 / shape.peakSquare()), 1);
        int mostUsed = shape.most(tape, square);
        int mostShare = tape.sqrt(mostUsed);
        int[] peaks = new int[2];
        for (int side = 0; side < 2; side++) {
            int wheel = 2 * axle + side;
            int friction = tape.shifted(
                    tape.scaled(load[wheel], -tyre.loadSensitivity() / tyre.referenceLoad()),
                    1 + tyre.loadSensitivity());
            int capacity = tape.times(load[wheel], friction);
            int peakX = tape.scaled(capacity, tyre.frictionX());
            int rollingPeak = tape.times(peakX, mostShare);
            int ratio = carriedShare(tape, asked, atLeast(tape, rollingPeak));
            int used = tape.times(tape.square(ratio), mostUsed);
            int force = tape.times(tape.times(capacity, normalised), shape.share(tape, square, used));
            along[wheel] = tape.times(rollingPeak, ratio);
            across[wheel] = tape.scaled(force, -tyre.frictionY());
            int left = tape.sqrt(tape.shifted(tape.scaled(used, -1), 1));
            peaks[side] = tape.scaled(tape.times(capacity, left), tyre.frictionY());
            int most = tape.shifted(tape.scaled(rollingPeak, ROLLING_SHARE), IDLE_FORCE);
            rolling[2 * wheel] = tape.minus(most, asked);
            rolling[2 * wheel + 1] = tape.plus(most, asked);
        }
        lateral[axle] = tape.plus(across[2 * axle], across[2 * axle + 1]);
        lateralPeak[axle] = tape.plus(peaks[0], peaks[1]);
    }

    /** Share of the longitudinal peak that a wheel carries: what is asked over the peak, bent over just below one. */
    private int carriedShare(Tape tape, int asked, int peak) {
        double most = tape.value(peak);
        double ratio = tape.value(asked) / most;
        double size = Math.abs(ratio);
        boolean held = car.antiLock() && ratio < 0;
        double from = held ? HELD_FROM : BENDS_FROM;
        if (size <= from) {
            return tape.over(asked, peak);
        }
        double width = (held ? Car.ANTI_LOCK_SHARE : BENDS_TO) - from;
        double tanh = Math.tanh((size - from) / width);
        double result = Math.copySign(from + width * tanh, ratio);
        double slope = 1 - tanh * tanh;
        double curvature = -Math.copySign(2 * tanh * slope / width, ratio);
        double byAsked = 1 / most;
        double byPeak = -ratio / most;
        return tape.function(
                asked,
                peak,
                result,
                slope * byAsked,
                slope * byPeak,
                curvature * byAsked * byAsked,
                curvature * byAsked * byPeak - slope * byAsked / most,
                curvature * byPeak * byPeak + slope * 2 * ratio / (most * most));
    }
}
