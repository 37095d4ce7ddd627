package org.foreload.driver;

import static org.foreload.driver.Wagon.FRONT;
import static org.foreload.driver.Wagon.G;
import static org.foreload.driver.Wagon.INERTIA;
import static org.foreload.driver.Wagon.MASS;
import static org.foreload.driver.Wagon.PEAK_SLIP;
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
 * The driver's hands, one term at a time, on linear tyres: there the angle is the direction in which the front axle
 * moves plus force over stiffness. The terms are those of the class comment; the steady circle is that of the
 * single-track car (sources: T. D. Gillespie, Fundamentals of Vehicle Dynamics, ch. 6, from memory).
 */
class SteeringTest {

    private static final double LAG = 0.05;
    private static final double BANDWIDTH = 4;
    private static final double DAMPING = 0.8;
    private static final double YAW_DAMPING = 10;
    private static final double WINDOW = 0.1;
    private static final double SLIP_USE = 0.98;
    private static final double V = 20;

    /** What of a lateral force the front gives: its share by the lever, and four fifths of what the rear has not. */
    private static final double FRONT_PART = TO_REAR / WHEELBASE + 0.8 * TO_FRONT / WHEELBASE;

    /** What of a yaw moment the front gives as a force, N per N·m: four fifths of it come back, for the rear. */
    private static final double YAW_PART = (1 - 0.8) / WHEELBASE;

    private static final double EXACT = 1e-12;

    private static final SegmentPath STRAIGHT = SegmentPath.of(500, List.of(Segment.arc(10, 50, Turn.LEFT)), 100, 5);

    private static Path circle(double radius) {
        return SegmentPath.of(100, List.of(Segment.arc(400, radius, Turn.LEFT)), 100, 5);
    }

    private static Steering driver(Path path, double relaxation) {
        return new Steering(
                Wagon.car(relaxation, 0, Driveline.DrivenAxle.REAR),
                path,
                new DriverSettings(LAG, 1, 0.04, 0.1, BANDWIDTH, DAMPING, YAW_DAMPING, WINDOW, SLIP_USE, 0.97, 0));
    }

    /** Far before the turn, where the line is straight. */
    private static double onStraight(
            double offset, double heading, double vx, double vy, double yawRate, double lateralRate, double yawAcc) {
        return driver(STRAIGHT, 0)
                .angle(-400, offset, heading, vx, vy, yawRate, lateralRate, yawAcc, 0, wheels(vx, vy, yawRate));
    }

    private static WheelForces wheels(double vx, double vy, double yawRate) {
        return Wagon.wheels(vx, vy, yawRate, 0);
    }

    /** The angle for a front axle that moves in some direction and is to give a force. */
    private static double angle(double direction, double force) {
        return direction + Math.atan(force / FRONT);
    }

    private static double pull(double offset, double bandwidth) {
        return -6 * Math.tanh(bandwidth * bandwidth * offset / 6);
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
        double angle = driver(circle(radius), 0)
                .angle(150, 0, -sideslip, speed, vy, yawRate, 0, 0, 0, wheels(speed, vy, yawRate));
        assertEquals(wanted, angle, 0.003 * wanted);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, -0.1, 0.6, -0.65})
    void offTheLineTheDriverPullsBackButNotInProportion(double offset) {
        double force = FRONT_PART * MASS * pull(offset, BANDWIDTH);
        assertEquals(angle(0, force), onStraight(offset, 0, V, 0, 0, 0, 0), EXACT);
    }

    /** Above 30 m/s as the square root of the speed, down to 65 %. */
    @ParameterizedTest
    @CsvSource({"30, 1", "45, 0.81649658", "60, 0.70710678", "100, 0.65"})
    void atSpeedTheDriverCorrectsMoreGently(double speed, double share) {
        double force = FRONT_PART * MASS * pull(0.2, share * BANDWIDTH);
        assertEquals(angle(0, force), onStraight(0.2, 0, speed, 0, 0, 0, 0), 1e-9);
    }

    /** The heading takes the car off the line within one lag, and is itself an error of course. */
    @Test
    void aHeadingIsCorrected() {
        double heading = 0.01;
        double turning = pull(LAG * V * heading, BANDWIDTH) - 2 * DAMPING * BANDWIDTH * V * heading;
        assertEquals(angle(0, FRONT_PART * MASS * turning), onStraight(0, heading, V, 0, 0, 0, 0), EXACT);
    }

    /** Along the line, but with the rear out: the front is made to give four fifths of what the rear gives wrongly. */
    @ParameterizedTest
    @ValueSource(doubles = {-0.3, 0.2})
    void withTheRearOutTheDriverCountersteers(double vy) {
        double speed = Math.hypot(V, vy);
        double direction = Math.atan2(vy, V);
        double offset = LAG * speed * (vy / V - direction);
        double turning = pull(offset, BANDWIDTH);
        double rear = -REAR * vy / V;
        double angle = onStraight(0, -direction, V, vy, 0, 0, 0);
        assertEquals(angle(direction, FRONT_PART * MASS * turning - 0.8 * rear), angle, EXACT);
        assertEquals(Math.signum(vy), Math.signum(angle));
    }

    /** A yaw rate turns the car away from the line within one lag, and is damped; the rear's own force is known. */
    @Test
    void aYawRateIsDamped() {
        double rate = 0.02;
        double turning = -2 * DAMPING * BANDWIDTH * V * LAG * rate;
        double rear = REAR * TO_REAR * rate / V;
        double force = FRONT_PART * MASS * turning - YAW_PART * INERTIA * YAW_DAMPING * rate - 0.8 * rear;
        double direction = Math.atan2(TO_FRONT * rate, V);
        assertEquals(angle(direction, force), onStraight(0, 0, V, 0, rate, 0, 0), EXACT);
    }

    /** Rates count for as far as they bring the car within one lag. */
    @Test
    void theDriverLooksOneLagAhead() {
        double lateralRate = 0.5;
        double direction = Math.atan2(LAG * lateralRate, V);
        double turning = -2 * DAMPING * BANDWIDTH * V * direction;
        assertEquals(angle(direction, FRONT_PART * MASS * turning), onStraight(0, 0, V, 0, 0, lateralRate, 0), EXACT);
        double yawAcceleration = 0.3;
        double yaw = LAG * yawAcceleration;
        assertEquals(
                angle(Math.atan2(TO_FRONT * yaw, V), -YAW_PART * INERTIA * YAW_DAMPING * yaw),
                onStraight(0, 0, V, 0, 0, 0, yawAcceleration),
                EXACT);
    }

    /**
     * In a round turn under braking: the speed of when the steering acts and the tyre has built up its slip, and the
     * yaw that the slowing itself asks for, −d·κ.
     */
    @ParameterizedTest
    @CsvSource({"0, 0", "3, 0", "3, 0.4"})
    void brakingInATurnIsLookedAheadTo(double deceleration, double relaxation) {
        double radius = 250;
        double yawRate = V / radius;
        double later = V - deceleration * (LAG * V + relaxation) / V;
        double lateral = later * later / radius;
        double rear = REAR * TO_REAR * yawRate / V;
        double force = FRONT_PART * MASS * lateral - YAW_PART * INERTIA * deceleration / radius - 0.8 * rear;
        double direction = Math.atan2(TO_FRONT * yawRate, V);
        double angle = driver(circle(radius), relaxation)
                .angle(150, 0, 0, V, 0, yawRate, 0, 0, deceleration, wheels(V, 0, yawRate));
        assertEquals(angle(direction, force), angle, EXACT);
    }

    /** On a spiral the curvature runs on while the driver acts: κ'·(s + preview), and yaw must gain V²·κ'. */
    @Test
    void aSpiralIsReadAhead() {
        double gradient = 1 / (200.0 * 120);
        Path spiral = SegmentPath.of(
                100, List.of(Segment.spiralIn(120, 200, Turn.LEFT), Segment.arc(50, 200, Turn.LEFT)), 100, 5);
        double station = 60;
        double yawRate = V * gradient * (station + LAG * V);
        double heading = -LAG * (yawRate - V * gradient * station);
        double turning = V * V * gradient * (station + LAG * V) + pull(LAG * V * heading, BANDWIDTH);
        double rear = REAR * TO_REAR * yawRate / V;
        double force = FRONT_PART * MASS * turning + YAW_PART * INERTIA * V * V * gradient - 0.8 * rear;
        double direction = Math.atan2(TO_FRONT * yawRate, V);
        double angle = driver(spiral, 0).angle(station, 0, heading, V, 0, yawRate, 0, 0, 0, wheels(V, 0, yawRate));
        assertEquals(angle(direction, force), angle, EXACT);
    }

    /** Where a turn begins without a spiral the driver rounds it off over the window, V·0.1 s to each side. */
    @Test
    void aJumpOfCurvatureIsRoundedOff() {
        double radius = 250;
        double window = WINDOW * V;
        double beyond = 0.7;
        double station = -LAG * V - window + beyond;
        double curvature = beyond / radius / (2 * window);
        double gradient = 1 / radius / (2 * window);
        double force = FRONT_PART * MASS * V * V * curvature + YAW_PART * INERTIA * V * V * gradient;
        double angle = driver(circle(radius), 0).angle(station, 0, 0, V, 0, 0, 0, 0, 0, wheels(V, 0, 0));
        assertEquals(angle(0, force), angle, EXACT);
    }

    /** On a bank the road gives part of the force: a·cos φ − g·sin φ·cos γ is left to the tyres. */
    @Test
    void aBankedRoadGivesPartOfTheForce() {
        double banking = 0.05;
        double grade = -0.06;
        double force = -FRONT_PART * MASS * G * Math.sin(banking) * Math.cos(grade);
        double angle = driver(STRAIGHT.withGrade(grade).withBanking(banking), 0)
                .angle(-400, 0, 0, V, 0, 0, 0, 0, 0, wheels(V, 0, 0));
        assertEquals(angle(0, force), angle, EXACT);
    }

    /** Never past the slip peak, and under braking only up to what the friction circle leaves, √(1 − q²). */
    @ParameterizedTest
    @CsvSource({"0, 1", "0.6, 0.8", "0.8, 0.6", "1, 0.3", "3, 0.3"})
    void theFrontIsNeverSteeredPastItsPeak(double brakeUse, double left) {
        WheelForces wheels = pressed(brakeUse);
        Steering driver = driver(circle(20), 0);
        double most = driver.angle(100, 0, 0, V, 0, 0, 0, 0, 0, wheels);
        assertEquals(Math.atan(SLIP_USE * left * PEAK_SLIP), most, 1e-9);
        assertEquals(-most, driver(circle(20).mirrored(), 0).angle(100, 0, 0, V, 0, 0, 0, 0, 0, wheels), 1e-12);
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
        double angle = driver(circle(50), 0).angle(100, 0, 0, V, 0.4, 0.1, 0, 0, 0, new WheelForces());
        assertEquals(Math.atan2(0.4 + TO_FRONT * 0.1, V), angle, EXACT);
    }

    /** Everything to the other side: the same angle the other way. */
    @Test
    void aMirroredCornerMirrorsTheHands() {
        Path left = SegmentPath.of(
                100, List.of(Segment.spiralIn(40, 60, Turn.LEFT), Segment.arc(50, 60, Turn.LEFT)), 100, 5);
        double angle = driver(left, 0.3).angle(30, 0.2, 0.02, V, -0.3, 0.3, 0.4, 0.5, 2, wheels(V, -0.3, 0.3));
        double mirrored =
                driver(left.mirrored(), 0.3).angle(30, -0.2, -0.02, V, 0.3, -0.3, -0.4, -0.5, 2, wheels(V, 0.3, -0.3));
        assertEquals(-angle, mirrored, EXACT);
        assertTrue(Math.abs(angle) > 0.01);
    }
}
