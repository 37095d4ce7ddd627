package org.foreload.grip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import org.foreload.conventions.InvalidValueException;
import org.foreload.load.SampleCars;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;

class BrakingGripTest {

    /**
     * The example of the closed form: μ 1.25, L 2.6 m, a 1.22 m, h 0.47 m, β 0.66; a very wide track is one tyre per
     * axle.
     */
    private static Car car(double frontRollStiffnessShare, double track) {
        return SampleCars.pointMass(1.25)
                .with(new Chassis(1400, 2.6, 1.22, 0.47, 0, track, track))
                .with(new Suspension(frontRollStiffnessShare, 0.02, 0.05, Response.RIGID, Response.RIGID))
                .withFrontBrakeShare(0.66);
    }

    /** Derived: d* = 3.823 m/s², +6.43 % of front capacity, with g = 9.80665; the first is in proportion to g. */
    private static final double BEST = 3.823 * 9.81 / 9.80665;

    @Test
    void closedFormOfTheExample() {
        assertEquals(BEST, BrakingGrip.bestDecelerationClosedForm(1.25, 2.6, 1.22, 0.47, 0.66), 5e-4);
    }

    /**
     * A 400 m track leaves a relative transfer of 1e-3 of the load, which the outer wheel's gain cancels all but
     * exactly.
     */
    @Test
    void wideTrackAgreesWithTheClosedForm() {
        for (double share : new double[] {0.2, 0.5, 0.8}) {
            BrakingGrip grip = BrakingGrip.of(car(share, 400), 30);
            assertEquals(BEST, grip.bestDeceleration(), 1e-3);
            assertEquals(0.0643, grip.bestFrontGain(), 5e-5);
        }
    }

    /** Constant friction: without braking the front axle corners at μ·m·g·b/L whatever the load transfer across it. */
    @Test
    void capacityWithoutBraking() {
        BrakingGrip grip = BrakingGrip.of(car(0.6, 1.5), 30);
        assertEquals(1.25 * 1400 * 9.81 * 1.38 / 2.6, grip.frontCapacity(0), 1e-5);
        assertEquals(1.25 * 1400 * 9.81 * 1.22 / 2.6, grip.rearCapacity(0), 1e-5);
    }

    /** A balanced car in a steady corner gains nothing: the rear axle pays at once. */
    @Test
    void rearAxlePays() {
        BrakingGrip grip = BrakingGrip.of(car(0.5, 1.5), 30);
        assertTrue(grip.frontCapacity(2) > grip.frontCapacity(0));
        assertTrue(grip.rearCapacity(2) < grip.rearCapacity(0));
        assertEquals(Optional.of(Axle.REAR), grip.limitingAxle(2));
        assertTrue(grip.lateralAcceleration(2) < grip.lateralAcceleration(0));
    }

    /** Front lock limit z = μb/(βL − μh) of the regulation's formulas: beyond it the front axle has nothing left. */
    @Test
    void nothingLeftBeyondLocking() {
        Car car = car(0.5, 1.5);
        double lock = 9.81 * BrakeDistribution.of(car).frontLockRate(1.25);
        BrakingGrip grip = BrakingGrip.of(car, 30);
        assertEquals(0, grip.frontCapacity(lock * 1.001));
        assertTrue(grip.frontCapacity(lock * 0.98) > 0);
    }

    /** More rearward CG and no CG height: braking only costs, so the best deceleration is none. */
    @Test
    void withoutCgHeightNoBrakingIsBest() {
        BrakingGrip grip = BrakingGrip.of(SampleCars.pointMass(1), 30);
        assertEquals(0, grip.bestDeceleration());
        assertEquals(0, grip.bestFrontGain());
    }

    /**
     * Friction circle: the g-g diagram of the point mass is a circle of radius μg, cut by power where power is small.
     */
    @Test
    void pointMassDiagramIsTheFrictionCircle() {
        GgDiagram diagram = GgDiagram.of(SampleCars.pointMass(1.1), 40, 31);
        for (GgDiagram.Point point : diagram.boundary()) {
            // Near the ends the lateral part is the square root of a small difference.
            assertEquals(1.1 * 9.81, Math.hypot(point.deceleration(), point.lateral()), 1e-8);
        }
        assertEquals(-1.1 * 9.81, diagram.boundary().get(0).deceleration(), 1e-8);
        Car weak = SampleCars.pointMass(1.1).with(new Driveline(96_000, DrivenAxle.ALL));
        GgDiagram.Point first = GgDiagram.of(weak, 40, 31).boundary().get(0);
        assertEquals(-2, first.deceleration(), 1e-9);
        assertEquals(Math.sqrt(1.1 * 9.81 * 1.1 * 9.81 - 4), first.lateral(), 1e-8);
    }

    /** A number that is none is refused by its name, whatever is asked about it. */
    @Test
    void aDecelerationThatIsNoneIsRefused() {
        BrakingGrip grip = BrakingGrip.of(SampleCars.ROAD_CAR, 30);
        List<DoubleFunction<?>> questions =
                List.of(grip::frontCapacity, grip::rearCapacity, grip::lateralAcceleration, grip::limitingAxle);
        for (DoubleFunction<?> question : questions) {
            InvalidValueException refused = assertThrows(InvalidValueException.class, () -> question.apply(Double.NaN));
            assertEquals("deceleration", refused.field());
        }
    }

    @Test
    void diagramsOverSpeeds() {
        var diagrams = GgDiagram.over(SampleCars.ROAD_CAR, new double[] {15, 30, 60}, 21);
        assertEquals(3, diagrams.size());
        // Power over speed: the driving end shrinks as speed grows.
        assertTrue(diagrams.get(2).boundary().get(0).deceleration()
                > diagrams.get(1).boundary().get(0).deceleration());
        assertEquals(21, diagrams.get(1).boundary().size());
    }

    /**
     * Corner limits that lift the inner front wheel end where the brake comes on: the smallest brake force would lock
     * it. Until then a car with drag is driven by its rear wheels, and slowing loads its front axle for nothing.
     */
    @Test
    void aLiftedWheelEndsTheGainWhereTheBrakeComesOn() {
        Car narrow = car(0.75, 1.1)
                .with(new org.foreload.vehicle.Aerodynamics(1.0, 0, 0, 1.2, 0))
                .with(new Driveline(1e9, DrivenAxle.REAR));
        double coasting = narrow.aerodynamics().drag(900) / 1400;
        BrakingGrip grip = BrakingGrip.of(narrow, 30);
        assertTrue(grip.frontCapacity(coasting + 1e-3) < 0.99 * grip.frontCapacity(coasting - 1e-3));
        assertEquals(coasting, grip.bestDeceleration(), 1e-6);
    }
}
