package org.foreload.driver;

import static org.foreload.driver.Wagon.FRONT;
import static org.foreload.driver.Wagon.G;
import static org.foreload.driver.Wagon.MASS;
import static org.foreload.driver.Wagon.PEAK_SLIP;
import static org.foreload.driver.Wagon.PERCUSSION;
import static org.foreload.driver.Wagon.REAR;
import static org.foreload.driver.Wagon.TO_FRONT;
import static org.foreload.driver.Wagon.TO_REAR;
import static org.foreload.driver.Wagon.WHEELBASE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.bicycle.WheelForces;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.vehicle.Driveline;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The driver's hands as a whole, on linear tyres: there the angle is the direction in which the front axle moves plus
 * force over stiffness. What feedforward, feedback and inverse tyre give by themselves has its own tests.
 */
class SteeringTest {

    private static final double LAG = 0.05;
    private static final double BANDWIDTH = 4;
    private static final double DAMPING = 0.8;
    private static final double SLIP_USE = 0.98;
    private static final double V = 20;
    private static final double EXACT = 1e-12;

    private static final double YAW_DAMPING = 0.5;

    private static final SegmentPath STRAIGHT = SegmentPath.of(500, List.of(Segment.arc(10, 50, Turn.LEFT)), 100, 5);

    private static Path circle(double radius) {
        return SegmentPath.of(100, List.of(Segment.arc(400, radius, Turn.LEFT)), 100, 5);
    }

    private static Steering driver(Path path, double relaxation, double yawDamping) {
        return new Steering(
                Wagon.car(relaxation, 0, Driveline.DrivenAxle.REAR),
                path,
                new Hands(LAG, 1, BANDWIDTH, DAMPING, yawDamping, 0.1, SLIP_USE));
    }

    private static WheelForces wheels(double vx, double vy, double yawRate) {
        return Wagon.wheels(vx, vy, yawRate, 0);
    }

    /** The angle for a front axle that moves in some direction and is to give a force. */
    private static double angle(double direction, double force) {
        return direction + Math.atan(force / FRONT);
    }

    /** Force of the front axle that gives the centre of percussion this acceleration. */
    private static double force(double acceleration) {
        return MASS * TO_REAR / WHEELBASE * acceleration;
    }

    private static double pull(double offset) {
        return -6 * Math.tanh(BANDWIDTH * BANDWIDTH * offset / 6);
    }

    /** On the straight, with a driver who leaves the yaw to the car. */
    private static double onStraight(DriverView view) {
        return driver(STRAIGHT, 0, 0).angle(view, wheels(view.vx, view.vy, view.yawRate));
    }

    /** Steady circle: L/R + (W_f/C_f − W_r/C_r)·a_y/g, up to the squares of small angles. */
    @ParameterizedTest
    @CsvSource({"400, 20", "800, 30", "300, 12"})
    void aSteadyCircleTakesTheAngleOfTheHandbook(double radius, double speed) {
        double lateral = speed * speed / radius;
        double sideslip = TO_REAR / radius - MASS * TO_FRONT / WHEELBASE * lateral / REAR;
        double yawRate = speed / radius;
        double vy = speed * sideslip;
        double wanted = WHEELBASE / radius
                + (MASS * TO_REAR / WHEELBASE / FRONT - MASS * TO_FRONT / WHEELBASE / REAR) * lateral;
        for (double yawDamping : new double[] {0, 1}) {
            double angle = driver(circle(radius), 0, yawDamping)
                    .angle(Wagon.view(150, 0, -sideslip, speed, vy, yawRate), wheels(speed, vy, yawRate));
            assertEquals(wanted, angle, 0.003 * wanted);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, -0.1, 0.6, -0.65})
    void offTheLineTheDriverPullsTheCentreOfPercussionBack(double offset) {
        assertEquals(angle(0, force(pull(offset))), onStraight(Wagon.view(-400, offset, 0, V, 0, 0)), EXACT);
    }

    /** A heading takes the car off the line within one lag, puts the point ahead off it, and is an error of course. */
    @Test
    void aHeadingIsCorrected() {
        double heading = 0.01;
        double acceleration = pull(LAG * V * heading + PERCUSSION * heading) - 2 * DAMPING * BANDWIDTH * V * heading;
        assertEquals(angle(0, force(acceleration)), onStraight(Wagon.view(-400, 0, heading, V, 0, 0)), EXACT);
    }

    /**
     * Braking so hard that the rear wheels leave the road: the hands steer by the front axle alone, which carries all.
     * On the straight, straight on; off the line, back to it by the tracker.
     */
    @Test
    void theHandsSteerWithTheRearInTheAir() {
        WheelForces wheels = Wagon.rearInTheAir();
        assertEquals(MASS * G, wheels.frontAxleLoad(), 1e-6);
        assertEquals(0, wheels.rearAxleLoad());
        Steering driver = driver(STRAIGHT, 0, 0.7);
        double slowing = 8;
        assertEquals(0, driver.angle(Wagon.view(-400, 0, 0, V, 0, 0, 0, 0, slowing), wheels));
        double wanted = Math.atan(force(pull(0.1)) / (MASS * G / PEAK_SLIP));
        assertEquals(wanted, driver.angle(Wagon.view(-400, 0.1, 0, V, 0, 0, 0, 0, slowing), wheels), EXACT);
    }

    /**
     * Along the line, but with the rear out: the point ahead is off the line and is brought back; the wheels follow the
     * direction of the front axle, which is to countersteer.
     */
    @ParameterizedTest
    @ValueSource(doubles = {-0.3, 0.2})
    void withTheRearOutTheDriverCountersteers(double vy) {
        double direction = Math.atan2(vy, V);
        double speed = Math.hypot(V, vy);
        double offset = LAG * speed * (vy / V - direction) - PERCUSSION * direction;
        double angle = onStraight(Wagon.view(-400, 0, -direction, V, vy, 0));
        assertEquals(angle(direction, force(pull(offset))), angle, EXACT);
        assertEquals(Math.signum(vy), Math.signum(angle));
    }

    /** A yaw rate swings the point ahead across the line, and within one lag the car as well. */
    @Test
    void aYawRateIsCaught() {
        double rate = 0.02;
        double heading = LAG * rate;
        double acceleration = pull(PERCUSSION * heading) - 2 * DAMPING * BANDWIDTH * (V * heading + PERCUSSION * rate);
        assertEquals(
                angle(Math.atan2(TO_FRONT * rate, V), force(acceleration)),
                onStraight(Wagon.view(-400, 0, 0, V, 0, rate)),
                EXACT);
    }

    /** Rates count for as far as they bring the car within one lag. */
    @Test
    void theDriverLooksOneLagAhead() {
        double lateralRate = 0.5;
        double direction = Math.atan2(LAG * lateralRate, V);
        double drift = -2 * DAMPING * BANDWIDTH * V * direction;
        assertEquals(
                angle(direction, force(drift)), onStraight(Wagon.view(-400, 0, 0, V, 0, 0, lateralRate, 0, 0)), EXACT);
        double yawAcceleration = 0.3;
        double yaw = LAG * yawAcceleration;
        assertEquals(
                angle(Math.atan2(TO_FRONT * yaw, V), force(-2 * DAMPING * BANDWIDTH * PERCUSSION * yaw)),
                onStraight(Wagon.view(-400, 0, 0, V, 0, 0, 0, yawAcceleration, 0)),
                EXACT);
    }

    /** Faster than the car calms itself, a driver who asks for more yaw damping steers more against a yaw rate. */
    @Test
    void atSpeedTheDriverDampsTheYaw() {
        double speed = 45;
        DriverView view = Wagon.view(-400, 0, 0, speed, 0, 0.02);
        WheelForces wheels = wheels(speed, 0, 0.02);
        double left = driver(STRAIGHT, 0, 0).angle(view, wheels);
        double damped = driver(STRAIGHT, 0, YAW_DAMPING).angle(view, wheels);
        double more = driver(STRAIGHT, 0, 2 * YAW_DAMPING).angle(view, wheels);
        assertTrue(damped < left && more < damped, left + " " + damped + " " + more);
    }

    /** Never past the slip peak, and under braking only up to what the friction circle leaves, √(1 − q²). */
    @ParameterizedTest
    @CsvSource({"0, 1", "0.6, 0.8", "0.8, 0.6", "1, 0.3", "3, 0.3"})
    void theFrontIsNeverSteeredPastItsPeak(double brakeUse, double left) {
        WheelForces wheels = pressed(brakeUse);
        DriverView view = Wagon.view(100, 0, 0, V, 0, 0);
        double most = driver(circle(20), 0, 0.7).angle(view, wheels);
        assertEquals(Math.atan(SLIP_USE * left * PEAK_SLIP), most, 1e-9);
        assertEquals(
                -most, driver(((SegmentPath) circle(20)).mirrored(), 0, 0.7).angle(view, wheels), 1e-12);
    }

    /** The car straight on, its front wheels braked to a share of their friction. */
    private static WheelForces pressed(double brakeUse) {
        double share = Wagon.BRAKE_SHARE;
        // The front carries m·g·(b + h·d/g)/L and brakes with 0.8·m·d: solved for d. The rear wheels can do the rest.
        double d = brakeUse * G * TO_REAR / WHEELBASE / (share - brakeUse * Wagon.HEIGHT / WHEELBASE);
        return Wagon.wheels(V, 0, 0, MASS * d);
    }

    @Test
    void aFrontAxleInTheAirIsPointedWhereItGoes() {
        double angle = driver(circle(50), 0, 0.7).angle(Wagon.view(100, 0, 0, V, 0.4, 0.1), new WheelForces());
        assertEquals(Math.atan2(0.4 + TO_FRONT * 0.1, V), angle, EXACT);
    }

    /** What line and way back ask of the axles is the feedforward and the pull, without the calming of the car. */
    @Test
    void whatIsAskedOfTheAxlesIsTheLineAndTheWayBack() {
        double radius = 250;
        Steering driver = driver(circle(radius), 0, 0.7);
        DriverView view = Wagon.view(150, 0, 0, V, 0, V / radius);
        driver.angle(view, wheels(V, 0, V / radius));
        driver.lookForDrive(view, 0.1);
        double lean = TO_REAR / radius - MASS * TO_FRONT / WHEELBASE * V * V / radius / REAR;
        double across = V * V / radius;
        assertEquals(force(across + pull(PERCUSSION * lean)), driver.askedFront(view), 1);
        assertEquals(MASS * TO_FRONT / WHEELBASE * across, driver.askedRear(), 1e-6);
    }

    /** Drive that is asked for now arrives one lag of the foot later: by then the line may ask for nothing. */
    @Test
    void whatIsAskedIsReadWhereTheDriveArrives() {
        Path ending = SegmentPath.of(100, List.of(Segment.arc(60, 250, Turn.LEFT)), 200, 5);
        Steering driver = driver(ending, 0, 0.7);
        DriverView view = Wagon.view(40, 0, 0, V, 0, V / 250);
        driver.angle(view, wheels(V, 0, V / 250));
        driver.lookForDrive(view, 0.1);
        assertEquals(MASS * TO_FRONT / WHEELBASE * V * V / 250, driver.askedRear(), 1e-6);
        driver.lookForDrive(view, (60 - 40 + 3 * V * Hands.practised().curvatureWindow()) / V);
        assertEquals(0, driver.askedRear(), 1e-9);
    }

    /** Everything to the other side: the same angle the other way. */
    @Test
    void aMirroredCornerMirrorsTheHands() {
        Path left = SegmentPath.of(
                100, List.of(Segment.spiralIn(40, 60, Turn.LEFT), Segment.arc(50, 60, Turn.LEFT)), 100, 5);
        double angle =
                driver(left, 0.3, 1).angle(Wagon.view(30, 0.2, 0.02, V, -0.3, 0.3, 0.4, 0.5, 2), wheels(V, -0.3, 0.3));
        double mirrored = driver(left.mirrored(), 0.3, 1)
                .angle(Wagon.view(30, -0.2, -0.02, V, 0.3, -0.3, -0.4, -0.5, 2), wheels(V, 0.3, -0.3));
        assertEquals(-angle, mirrored, EXACT);
        assertTrue(Math.abs(angle) > 1e-3, "straight wheels: " + angle);
    }

    /** Straight along a straight there is nothing to do; the least that takes the car off it is answered. */
    @Test
    void onlyACarThatRunsStraightAlongAStraightIsLeftAlone() {
        double least = 1e-9;
        assertEquals(0, onStraight(Wagon.view(-400, 0, 0, V, 0, 0)));
        assertTrue(onStraight(Wagon.view(-400, least, 0, V, 0, 0)) < 0);
        assertTrue(onStraight(Wagon.view(-400, 0, least, V, 0, 0)) < 0);
        assertTrue(onStraight(Wagon.view(-400, 0, 0, V, -least, 0)) != 0);
        assertTrue(onStraight(Wagon.view(-400, 0, 0, V, 0, least)) != 0);
        assertTrue(onStraight(Wagon.view(-400, 0, 0, V, 0, 0, least, 0, 0)) != 0);
        assertTrue(onStraight(Wagon.view(-400, 0, 0, V, 0, 0, 0, least, 0)) != 0);
    }

    /** A road that slopes across pulls the car down even where the line is straight; along it the car runs askew. */
    @Test
    void aBankedStraightIsSteeredAgainst() {
        double pulled = MASS * G * Math.sin(0.02);
        double sideslip = Math.atan(TO_FRONT / WHEELBASE * pulled / REAR);
        double angle = driver(STRAIGHT.withBanking(0.02), 0, 0).angle(Wagon.view(-400, 0, 0, V, 0, 0), wheels(V, 0, 0));
        double held = -TO_REAR / WHEELBASE * pulled;
        assertEquals(angle(0, held + force(pull(PERCUSSION * sideslip))), angle, EXACT);
    }

    /** The turn begins to count where the look-ahead reaches it, and not before. */
    @ParameterizedTest
    @CsvSource({"-3.2, false", "-2.8, true"})
    void theTurnCountsOnceTheLookAheadReachesIt(double station, boolean steers) {
        // The lag of the hands and half of the window ahead: 20 m/s times 0.05 + 0.1 s.
        assertEquals(steers, onStraight(Wagon.view(station, 0, 0, V, 0, 0)) != 0);
    }
}
