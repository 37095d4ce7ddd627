package org.foreload.driver;

import static org.foreload.driver.Wagon.FRONT;
import static org.foreload.driver.Wagon.G;
import static org.foreload.driver.Wagon.INERTIA;
import static org.foreload.driver.Wagon.MASS;
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
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Driveline;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What the line asks of the two axles, against the balance of forces across and of moments about the CG: F_f + F_r =
 * m·a and a·F_f − b·F_r = Iz·ψ̈ (source: Newton and Euler, for any body on two axles).
 */
class FeedforwardTest {

    private static final double V = 20;
    private static final double LAG = 0.05;
    private static final double WINDOW = 0.1;
    private static final double EXACT = 1e-9;

    private static Feedforward look(Path path, double relaxation, DriverView view) {
        return look(path, relaxation, view, Wagon.wheels(V, 0, 0, 0));
    }

    private static Feedforward look(Path path, double relaxation, DriverView view, WheelForces wheels) {
        Hands hands = new Hands(LAG, 1, 4, 0.8, 0.7, WINDOW, 0.98);
        Car car = Wagon.car(relaxation, 0, Driveline.DrivenAxle.REAR);
        InverseTyre rear = new InverseTyre(car.rearTyre(), 2, hands.slipUse());
        rear.feel(wheels);
        Feedforward feedforward = new Feedforward(car, path, hands, rear);
        feedforward.look(view);
        feedforward.carry(view, wheels);
        return feedforward;
    }

    private static DriverView at(double station, double deceleration) {
        return Wagon.view(station, 0, 0, V, 0, 0, 0, 0, deceleration);
    }

    private static Path circle(double radius, Turn turn) {
        return SegmentPath.of(100, List.of(Segment.arc(400, radius, turn)), 100, 5);
    }

    private static void balances(Feedforward asked, double lateral, double yawAcceleration) {
        assertEquals(MASS * lateral, asked.frontForce() + asked.rearForce(), EXACT * MASS);
        assertEquals(
                INERTIA * yawAcceleration,
                TO_FRONT * asked.frontForce() - TO_REAR * asked.rearForce(),
                EXACT * INERTIA);
    }

    @ParameterizedTest
    @CsvSource({"250, LEFT", "250, RIGHT", "90, LEFT"})
    void aRoundTurnIsCarriedByBothAxlesByTheLever(double radius, Turn turn) {
        double sign = turn == Turn.LEFT ? 1 : -1;
        Feedforward asked = look(circle(radius, turn), 0, at(150, 0));
        balances(asked, sign * V * V / radius, 0);
        assertEquals(sign * V / radius, asked.yawRate(), 1e-12);
    }

    /**
     * Steady sideslip: the direction of the rear axle, b·κ, less the slip angle that its force takes. On linear tyres
     * b/R − m·a·V²/(L·C_r·R): T. D. Gillespie, Fundamentals of Vehicle Dynamics, ch. 6 (from memory).
     */
    @ParameterizedTest
    @CsvSource({"250, LEFT", "400, RIGHT"})
    void theSideslipIsThatOfTheSteadyCircle(double radius, Turn turn) {
        double sign = turn == Turn.LEFT ? 1 : -1;
        double expected = TO_REAR / radius - MASS * TO_FRONT / WHEELBASE * V * V / radius / REAR;
        assertTrue(Math.abs(expected) > 1e-3);
        // The tangent of a slip angle of 0.02 is off its angle by 3e-6.
        assertEquals(sign * expected, look(circle(radius, turn), 0, at(150, 0)).sideslip(), 1e-5);
    }

    /**
     * Braking in a round turn: the speed of when the steering acts and the tyre has built up its slip, v² less 2·d over
     * that way to first order, and the yaw that slowing itself asks for, ψ̈ = −d·κ.
     */
    @ParameterizedTest
    @CsvSource({"3, 0", "3, 0.4", "-1.5, 0.4"})
    void brakingInATurnIsLookedAheadTo(double deceleration, double relaxation) {
        double radius = 250;
        double way = LAG * V + relaxation;
        double then = V - deceleration * way / V;
        assertEquals(V * V - 2 * deceleration * way, then * then, 0.1);
        Feedforward asked = look(circle(radius, Turn.LEFT), relaxation, at(150, deceleration));
        balances(asked, then * then / radius, -deceleration / radius);
        // The rear axle's slip angle falls with its force, by 2·v·d·κ·m·a/(L·C_r) in a second: the nose swings back.
        double swing = 2 * then * deceleration / radius * MASS * TO_FRONT / WHEELBASE / REAR;
        assertEquals(then / radius - swing, asked.yawRate(), 1e-9);
    }

    /** Where the sideslip changes along the line, the car turns less than the line by that: r = v·κ − dβ/dt. */
    @Test
    void theYawRateIsThatOfTheLineLessTheGrowthOfSideslip() {
        double gradient = 1 / (200.0 * 120);
        Path spiral = SegmentPath.of(
                100, List.of(Segment.spiralIn(120, 200, Turn.LEFT), Segment.arc(50, 200, Turn.LEFT)), 100, 5);
        double step = 2;
        double growth = (look(spiral, 0, at(60 + step, 0)).sideslip()
                        - look(spiral, 0, at(60 - step, 0)).sideslip())
                / (2 * step)
                * V;
        assertTrue(Math.abs(growth) > 3e-4);
        double line = V * gradient * (60 + LAG * V);
        // Slip angles of up to 0.02 against their tangents.
        assertEquals(line - growth, look(spiral, 0, at(60, 0)).yawRate(), 1e-3 * Math.abs(growth));
    }

    /** On a spiral the curvature runs on while the driver acts, and the yaw rate must gain V²·κ′. */
    @ParameterizedTest
    @CsvSource({"0", "0.5"})
    void aSpiralIsReadAhead(double relaxation) {
        double gradient = 1 / (200.0 * 120);
        Path spiral = SegmentPath.of(
                100, List.of(Segment.spiralIn(120, 200, Turn.LEFT), Segment.arc(50, 200, Turn.LEFT)), 100, 5);
        double curvature = gradient * (60 + LAG * V + relaxation);
        balances(look(spiral, relaxation, at(60, 0)), V * V * curvature, V * V * gradient);
    }

    /**
     * With the rear wheels in the air there is no slip angle that could swing the nose: the car points along its line
     * at the rear axle, β = b·κ, and turns as the line does less b·v·κ′ (source: the geometry of a rolling axle).
     */
    @ParameterizedTest
    @CsvSource({"0", "8"})
    void anAxleInTheAirSlidesNothing(double deceleration) {
        WheelForces wheels = Wagon.rearInTheAir();
        assertEquals(0, wheels.rearAxleLoad());
        double gradient = 1 / (200.0 * 120);
        Path spiral = SegmentPath.of(
                100, List.of(Segment.spiralIn(120, 200, Turn.LEFT), Segment.arc(50, 200, Turn.LEFT)), 100, 5);
        double then = V - deceleration * LAG;
        Feedforward asked = look(spiral, 0, at(60, deceleration), wheels);
        double curvature = gradient * (60 + LAG * V);
        assertEquals(then * curvature - TO_REAR * then * gradient, asked.yawRate(), EXACT);
        assertEquals(TO_REAR * curvature, asked.sideslip(), EXACT);
        assertEquals(0, asked.rearStiffness());
        Feedforward straight = look(spiral, 0, at(-60, deceleration), wheels);
        assertEquals(0, straight.yawRate());
        assertEquals(0, straight.sideslip());
    }

    /** Where a turn begins without a spiral the driver rounds it off over the window, V·0.1 s to each side. */
    @Test
    void aJumpOfCurvatureIsRoundedOff() {
        double radius = 250;
        double window = WINDOW * V;
        double beyond = 0.7;
        double station = -LAG * V - window + beyond;
        double share = beyond / (2 * window);
        balances(
                look(circle(radius, Turn.LEFT), 0, at(station, 0)),
                V * V * share / radius,
                V * V / radius / (2 * window));
    }

    /** On a bank the road gives part of the force: a·cos φ − g·sin φ·cos γ is left to the tyres. */
    @Test
    void aBankedRoadGivesPartOfTheForce() {
        double banking = 0.05;
        double grade = -0.06;
        SegmentPath turn = SegmentPath.of(100, List.of(Segment.arc(400, 250, Turn.LEFT)), 100, 5);
        Feedforward asked = look(turn.withGrade(grade).withBanking(banking), 0, at(150, 0));
        balances(asked, V * V / 250 * Math.cos(banking) - G * Math.sin(banking) * Math.cos(grade), 0);
    }

    /** Front forces over their stiffness and the yaw rate make the understeer of the handbook: a check of the two. */
    @Test
    void theForcesMakeTheAnglesOfTheHandbook() {
        double radius = 300;
        Feedforward asked = look(circle(radius, Turn.LEFT), 0, at(150, 0));
        double steer = asked.sideslip() + TO_FRONT * asked.yawRate() / V + asked.frontForce() / FRONT;
        double handbook = WHEELBASE / radius
                + (MASS * TO_REAR / WHEELBASE / FRONT - MASS * TO_FRONT / WHEELBASE / REAR) * V * V / radius;
        assertEquals(handbook, steer, 1e-5);
    }
}
