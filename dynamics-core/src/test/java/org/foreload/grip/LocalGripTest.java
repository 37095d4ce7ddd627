package org.foreload.grip;

import static org.junit.jupiter.api.Assertions.assertEquals;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.foreload.load.LoadTransfer;
import org.foreload.load.SampleCars;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.junit.jupiter.api.Test;

/** The power limit at one place, where power is force times speed, and what a wheel without load lacks. */
class LocalGripTest {

    private static final double POWER = 180_000;

    private static final Car CAR =
            SampleCars.ROAD_CAR.with(new Aerodynamics(0.7, 0, 0, 1.2, 0)).with(new Driveline(POWER, DrivenAxle.REAR));

    private static LocalGrip place(double curvature, double grade) {
        return GripLimits.of(CAR).at(curvature, 0, grade, 0);
    }

    /** Power that an acceleration takes on a slope: inertia, weight along the road, and drag, times speed. */
    private static double taken(double acceleration, double speed, double grade) {
        double mass = CAR.chassis().mass();
        double drag = 0.5 * 1.2 * 0.7 * speed * speed;
        return (mass * (acceleration + 9.81 * Math.sin(grade)) + drag) * speed;
    }

    @Property
    void theEngineGivesItsPowerAndNoMore(
            @ForAll @DoubleRange(min = 3, max = 90) double speed,
            @ForAll @DoubleRange(min = -0.15, max = 0.15) double grade) {
        double acceleration = place(0, grade).powerAcceleration(speed * speed);
        assertEquals(POWER, taken(acceleration, speed, grade), 1e-9 * POWER);
    }

    @Property
    void theSpeedOfAnAccelerationTakesThePower(
            @ForAll @DoubleRange(min = -3, max = 8) double acceleration,
            @ForAll @DoubleRange(min = -0.15, max = 0.15) double grade) {
        double speed = Math.sqrt(place(0, grade).powerSpeedSquared(acceleration));
        assertEquals(POWER, taken(acceleration, speed, grade), 1e-9 * POWER);
    }

    /** Constant over a step, judged in its middle. */
    @Property
    void overAStepThePowerIsTakenInItsMiddle(
            @ForAll @DoubleRange(min = 0, max = 80) double speed,
            @ForAll @DoubleRange(min = 0.05, max = 8) double step,
            @ForAll @DoubleRange(min = -0.1, max = 0.1) double grade) {
        double acceleration = place(0, grade).powerAccelerationOverStep(speed * speed, step);
        double middle = Math.sqrt(speed * speed + acceleration * step);
        assertEquals(POWER, taken(acceleration, middle, grade), 1e-9 * POWER);
    }

    @Test
    void withoutDragThereIsNoFastestSpeedOnTheFlat() {
        LocalGrip still = GripLimits.of(CAR.with(Aerodynamics.NONE)).at(0, 0, 0, 0);
        assertEquals(Double.POSITIVE_INFINITY, still.powerSpeedSquared(0));
        assertEquals(POWER / CAR.chassis().mass() / 2, Math.sqrt(still.powerSpeedSquared(2)), 1e-9);
    }

    /** Rolling free, a car is slowed by its drag and by the hill. */
    @Property
    void coastingIsDragAndHill(
            @ForAll @DoubleRange(min = 0, max = 90) double speed,
            @ForAll @DoubleRange(min = -0.15, max = 0.15) double grade) {
        double drag = 0.5 * 1.2 * 0.7 * speed * speed / CAR.chassis().mass();
        LocalGrip place = place(0, grade);
        assertEquals(drag + 9.81 * Math.sin(grade), place.coastingDeceleration(speed * speed), 1e-9);
        assertEquals(0, place.force(speed * speed, place.coastingDeceleration(speed * speed)), 1e-6);
    }

    /** A step of no length, and an engine without power, are read where the car is. */
    @Test
    void theLimitsOfAStepWithoutLengthOrPower() {
        LocalGrip place = place(0, 0.05);
        assertEquals(place.powerAcceleration(900), place.powerAccelerationOverStep(900, 0), 1e-9);
        LocalGrip idle =
                GripLimits.of(CAR.with(new Driveline(0, DrivenAxle.REAR))).at(0, 0, 0.05, 0);
        // Without drag it would roll 2·g·sin γ of speed squared down for each metre; with it, a little more.
        assertEquals(-9.81 * Math.sin(0.05), idle.powerAccelerationOverStep(0, 1), 1e-6);
        assertEquals(-idle.coastingDeceleration(400), idle.powerAcceleration(400), 1e-12);
    }

    /** At a standstill an engine with any power gives any acceleration; one without leaves what the hill does. */
    @Test
    void atAStandstillPowerIsAllOrNothing() {
        LocalGrip idle =
                GripLimits.of(CAR.with(new Driveline(0, DrivenAxle.REAR))).at(0, 0, 0.05, 0);
        assertEquals(-9.81 * Math.sin(0.05), idle.powerAcceleration(0), 1e-12);
        assertEquals(
                -9.81 * Math.sin(0.05),
                idle.accelerationRange(0, 1).orElseThrow().highest(),
                1e-12);
        assertEquals(Double.POSITIVE_INFINITY, place(0, 0.05).powerAcceleration(0));
    }

    /** Rolling free down a hill a car without power comes to the speed at which drag holds it. */
    @Test
    void downhillTheSpeedWithoutPowerIsWhereDragHoldsTheHill() {
        LocalGrip idle =
                GripLimits.of(CAR.with(new Driveline(0, DrivenAxle.REAR))).at(0, 0, -0.05, 0);
        double held = 1400 * 9.81 * Math.sin(0.05) / (0.5 * 1.2 * 0.7);
        assertEquals(held, idle.powerSpeedSquared(0), 1e-9 * held);
        assertEquals(0, idle.powerSpeedSquared(3), 1e-12);
    }

    @Test
    void uphillThereIsAFastestSpeedEvenWithoutDrag() {
        LocalGrip still = GripLimits.of(CAR.with(Aerodynamics.NONE)).at(0, 0, 0.1, 0);
        assertEquals(POWER / (1400 * 9.81 * Math.sin(0.1)), Math.sqrt(still.powerSpeedSquared(0)), 1e-9);
        assertEquals(
                Double.POSITIVE_INFINITY,
                GripLimits.of(CAR.with(Aerodynamics.NONE)).at(0, 0, -0.1, 0).powerSpeedSquared(0));
    }

    /** Load lacks where a wheel has none and is asked for force: half the axle's load short of what moves across. */
    @Test
    void lackingLoadIsThatOfTheWheelThatIsPulledOffTheRoad() {
        // 1400 kg, b/L 1.38/2.6, a/L 1.22/2.6; at 30 m/s² of braking 1400·30·0.5/2.6 N move forward.
        LocalGrip straight = GripLimits.of(CAR).at(0, 0, 0, 0);
        double weight = 1400 * 9.81;
        double rear = weight * 1.22 / 2.6 - 1400 * 30 * 0.5 / 2.6;
        assertEquals(-rear / 2 / weight, straight.lackingLoad(400, 30), 1e-12);
        double front = weight * 1.38 / 2.6 - 1400 * 30 * 0.5 / 2.6;
        Car all = CAR.with(new Driveline(POWER, DrivenAxle.ALL));
        assertEquals(-front / 2 / weight, GripLimits.of(all).at(0, 0, 0, 0).lackingLoad(400, -30), 1e-12);
        assertEquals(0, straight.lackingLoad(400, 5), 0);
        // In a bend of 20 m/s² the transfer across the axles is too much for their inner wheels.
        LocalGrip bent = GripLimits.of(CAR).at(20.0 / 400, 0, 0, 0);
        LoadTransfer transfer = LoadTransfer.of(CAR);
        double moved = 1400 * 1.0 * 0.5 / 2.6;
        double frontLack = transfer.frontLateral(20) - (weight * 1.38 / 2.6 + moved) / 2;
        double rearLack = transfer.rearLateral(20) - (weight * 1.22 / 2.6 - moved) / 2;
        assertEquals(Math.max(frontLack, rearLack) / weight, bent.lackingLoad(400, 1), 1e-12);
    }
}
