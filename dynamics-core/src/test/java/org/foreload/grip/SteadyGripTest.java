package org.foreload.grip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
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
        assertSame(Axle.FRONT, BrakingGrip.of(car, 20).limitingAxle(2));
        assertSame(Axle.FRONT, GripLimits.of(car).use(Motion.steady(20, 2, 3)).limitingAxle());
        assertSame(Axle.FRONT, GgDiagram.of(car, 20, 3).boundary().get(1).limitingAxle());
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
            assertEquals(front <= rear, point.limitingAxle() == Axle.FRONT);
            frontSeen |= point.limitingAxle() == Axle.FRONT;
            rearSeen |= point.limitingAxle() == Axle.REAR;
        }
        assertTrue(frontSeen && rearSeen);
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
