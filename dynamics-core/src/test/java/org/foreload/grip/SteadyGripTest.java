package org.foreload.grip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.foreload.load.SampleCars;
import org.foreload.load.WheelLoads;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.junit.jupiter.api.Test;

/** Steady cornering on the flat: the same numbers as the readable model, and limits from closed forms. */
class SteadyGripTest {

    private static final double G = 9.81;

    @Provide
    Arbitrary<Car> cars() {
        return SampleCars.possible();
    }

    @Property
    void agreesWithTheReadableModel(
            @ForAll("cars") Car car,
            @ForAll @DoubleRange(min = 5, max = 80) double speed,
            @ForAll @DoubleRange(min = -10, max = 20) double deceleration,
            @ForAll @DoubleRange(min = 0, max = 15) double lateral) {
        SteadyGrip grip = new SteadyGrip(car, speed);
        GripUse use = GripLimits.of(car).use(Motion.steady(speed, deceleration, lateral));
        same(use.front().utilisation(), grip.utilisation(Axle.FRONT, deceleration, lateral));
        same(use.rear().utilisation(), grip.utilisation(Axle.REAR, deceleration, lateral));
        assertEquals(use.front().lateralDemand(), grip.demandRate(Axle.FRONT) * lateral, 1e-6);
        assertEquals(use.rear().lateralDemand(), grip.demandRate(Axle.REAR) * lateral, 1e-6);
    }

    private static void same(double expected, double actual) {
        // Past a thousandfold overload a wheel load is all but zero, and rounding of the load decides the number.
        if (expected < 1000) {
            assertEquals(expected, actual, 1e-9 * (1 + expected * expected));
        }
    }

    /** With constant friction μ, both axles corner at μg wherever the centre of gravity is. */
    @Test
    void withoutBrakingBothAxlesCornerAtFrictionTimesGravity() {
        Car car = SampleCars.pointMass(1.1).with(new Chassis(1300, 2.5, 1.0, 0, 0, 1.5, 1.5));
        BrakingGrip grip = BrakingGrip.of(car, 20);
        assertEquals(1.1 * G, grip.lateralAcceleration(0), 1e-9);
        assertEquals(1300 * 1.1 * G * 1.5 / 2.5, grip.frontCapacity(0), 1e-6);
        assertEquals(1300 * 1.1 * G * 1.0 / 2.5, grip.rearCapacity(0), 1e-6);
    }

    /** Equal axles give way together, and then the front one is named. */
    @Test
    void ofEqualAxlesTheFrontOneIsNamed() {
        Car car = SampleCars.pointMass(1);
        assertEquals(Optional.of(Axle.FRONT), BrakingGrip.of(car, 20).limitingAxle(2));
        assertSame(Axle.FRONT, GripLimits.of(car).use(Motion.steady(20, 2, 3)).limitingAxle());
        assertEquals(
                Optional.of(Axle.FRONT),
                GgDiagram.of(car, 20, 3).boundary().get(1).limitingAxle());
        assertSame(car, GripLimits.of(car).car());
    }

    /** Drag helps the brakes and hinders the engine: μg ± drag over mass; and power over speed, less drag. */
    @Test
    void dragMovesTheEndsOfTheDiagram() {
        Aerodynamics air = new Aerodynamics(1, 0, 0, 1.2, 0);
        double drag = 0.5 * 1.2 * 1600 / 1200;
        List<GgDiagram.Point> strong =
                GgDiagram.of(SampleCars.pointMass(1.1).with(air), 40, 5).boundary();
        assertEquals(drag - 1.1 * G, strong.get(0).deceleration(), 1e-9);
        assertEquals(drag + 1.1 * G, strong.get(4).deceleration(), 1e-9);
        Car weak = SampleCars.pointMass(1.1).with(air).with(new Driveline(96_000, DrivenAxle.ALL));
        assertEquals(drag - 2, GgDiagram.of(weak, 40, 5).boundary().get(0).deceleration(), 1e-9);
    }

    /** Drag that acts high up lifts the front axle: at 30 m/s by drag·h/L, which the rear axle takes. */
    @Test
    void dragAtAHeightLoadsTheRearAxle() {
        Car car = SampleCars.pointMass(1).with(new Aerodynamics(1, 0, 0, 1.2, 0.5));
        double moved = 0.5 * 1.2 * 900 * 0.5 / 2.5;
        BrakingGrip grip = BrakingGrip.of(car, 30);
        double coasting = 0.5 * 1.2 * 900 / 1200;
        assertEquals(600 * G - moved, grip.frontCapacity(coasting), 1e-6);
        assertEquals(600 * G + moved, grip.rearCapacity(coasting), 1e-6);
    }

    /** Friction circle: points lie closer together towards both ends, as the cosine of equal angles. */
    @Test
    void pointsOfTheDiagramLieAtEqualAngles() {
        List<GgDiagram.Point> boundary =
                GgDiagram.of(SampleCars.pointMass(1), 40, 7).boundary();
        for (int i = 0; i < 7; i++) {
            assertEquals(-G * Math.cos(Math.PI * i / 6), boundary.get(i).deceleration(), 1e-9);
        }
    }

    /** Each point has the weaker axle's limit, and names it. */
    @Test
    void thePointsOfTheDiagramAreThoseOfTheWeakerAxle() {
        BrakingGrip grip = BrakingGrip.of(SampleCars.ROAD_CAR, 30);
        boolean frontSeen = false;
        boolean rearSeen = false;
        for (GgDiagram.Point point : GgDiagram.of(SampleCars.ROAD_CAR, 30, 21).boundary()) {
            double front = grip.frontCapacity(point.deceleration()) * 2.6 / (1400 * 1.38);
            double rear = grip.rearCapacity(point.deceleration()) * 2.6 / (1400 * 1.22);
            assertEquals(Math.min(front, rear), point.lateral(), 1e-9);
            assertEquals(front <= rear, point.limitingAxle().equals(Optional.of(Axle.FRONT)));
            frontSeen |= point.limitingAxle().equals(Optional.of(Axle.FRONT));
            rearSeen |= point.limitingAxle().equals(Optional.of(Axle.REAR));
        }
        assertTrue(frontSeen && rearSeen);
    }

    /**
     * Rigid car on grippy tyres: its inner wheels leave the road at g·t/(2h), whatever its axles could do (balance of
     * moments about the outer wheels; T. D. Gillespie, Fundamentals of Vehicle Dynamics, ch. 9, from memory). While it
     * brakes or drives, a wheel locks or spins before all its load is gone; anti-lock brakes let it go that far.
     */
    @Test
    void aTallCarRollsOverBeforeItSlides() {
        Car car = SampleCars.pointMass(1.5).with(new Chassis(1200, 2.5, 1.25, 0.75, 0, 1.5, 1.5));
        assertEquals(G * 1.5 / (2 * 0.75), BrakingGrip.of(car, 20).lateralAcceleration(0), 1e-9);
        assertEquals(Optional.empty(), BrakingGrip.of(car, 20).limitingAxle(0));
        BrakingGrip held = BrakingGrip.of(car.withAntiLock(true), 20);
        assertEquals(G, held.lateralAcceleration(3), 1e-9);
        assertEquals(Optional.empty(), held.limitingAxle(3));
        assertTrue(held.limitingAxle(12).isPresent(), "the circle of 1.5 g leaves less than 1 g across");
        for (GgDiagram.Point point : GgDiagram.of(car, 20, 41).boundary()) {
            assertTrue(point.lateral() <= G + 1e-9, point.toString());
            if (point.lateral() > 0) {
                GripUse use = GripLimits.of(car).use(Motion.steady(20, point.deceleration(), point.lateral()));
                double nearest = Math.max(use.utilisation(), use.tippingUtilisation());
                assertEquals(1, nearest, 1e-6, point.toString());
            }
        }
    }

    /** 7 m/s² across of the 9.80665 at which it tips, on tyres that could hold 14.7: by the same balance of moments. */
    @Test
    void isNearerToRollingOverThanToSliding() {
        Car car = SampleCars.pointMass(1.5).with(new Chassis(1200, 2.5, 1.25, 0.75, 0, 1.5, 1.5));
        GripUse use = GripLimits.of(car).use(Motion.steady(20, 0, 7));
        assertTrue(use.rollsOverFirst());
        assertEquals(7 / G, use.tippingUtilisation(), 1e-9);
        assertFalse(
                GripLimits.of(SampleCars.ROAD_CAR).use(Motion.steady(20, 0, 7)).rollsOverFirst());
    }

    /**
     * With anti-lock brakes each axle brakes as hard as it can be held, whatever the brake share: in a straight line
     * μg, and across what the circle leaves of it. With a share of 0.5 and no such brakes the light front axle of this
     * car locks at μg·2b/L, 0.8 of that.
     */
    @Test
    void antiLockBrakesTakeTheForceWhereItCanBeHeld() {
        Car share = SampleCars.pointMass(1).with(new Chassis(1200, 2.5, 1.5, 0, 0, 1.5, 1.5));
        assertEquals(0.8 * G, hardest(share), 1e-6);
        Car held = share.withAntiLock(true);
        assertEquals(G, hardest(held), 1e-6);
        BrakingGrip grip = BrakingGrip.of(held, 20);
        assertEquals(Math.sqrt(1 - 0.81) * G, grip.lateralAcceleration(0.9 * G), 1e-6);
        assertEquals(0.6 * G, grip.lateralAcceleration(0.8 * G), 1e-6);
        assertEquals(0, BrakingGrip.of(share, 20).lateralAcceleration(0.9 * G), 1e-6);
    }

    /** The envelope is where the use of the whole car comes to 1, with anti-lock brakes, too. */
    @Test
    void theEnvelopeWithAntiLockBrakesIsWhereTheCarIsFull() {
        Car car = SampleCars.ROAD_CAR.withAntiLock(true);
        for (GgDiagram.Point point : GgDiagram.of(car, 30, 21).boundary()) {
            if (point.deceleration() > 0 && point.lateral() > 0) {
                GripUse use = GripLimits.of(car).use(Motion.steady(30, point.deceleration(), point.lateral()));
                assertEquals(1, use.utilisation(), 1e-6, point.toString());
            }
        }
        assertTrue(hardest(car) > hardest(SampleCars.ROAD_CAR));
    }

    private static double hardest(Car car) {
        List<GgDiagram.Point> boundary = GgDiagram.of(car, 20, 3).boundary();
        return boundary.get(2).deceleration();
    }

    /** Traction: the driven front axle alone decides, μg(b/L)/(1 + μh/L); the rear one, unused, has no limit. */
    @Test
    void anAxleWithoutForceDoesNotLimitTheDriving() {
        Car car = SampleCars.pointMass(0.7)
                .with(new Chassis(1800, 2.6, 1.3, 0.7, 0, 1.5, 1.5))
                .with(new Driveline(1e9, DrivenAxle.FRONT));
        assertEquals(2.88903, -GgDiagram.of(car, 10, 3).boundary().get(0).deceleration(), 1e-5);
    }

    @Test
    void whatIsAskedIsFeasibleUpToTheLimitItself() {
        AxleUse all = new AxleUse(4000, 0, 4000, 4000, 1);
        AxleUse more = new AxleUse(4000, 0, 4001, 4000, 1.001);
        WheelLoads loads = new WheelLoads(2000, 2000, 2000, 2000);
        assertTrue(new GripUse(loads, all, all, 1, 1).feasible());
        assertFalse(new GripUse(loads, all, all, 1, 1.001).feasible());
        assertFalse(new GripUse(loads, more, all, 0, 0).feasible());
        assertFalse(new GripUse(loads, all, more, 0, 0).feasible());
        assertFalse(new GripUse(loads, all, all, 1.001, 0).feasible());
    }
}
