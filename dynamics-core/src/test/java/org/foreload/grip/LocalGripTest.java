package org.foreload.grip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.foreload.load.SampleCars;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.junit.jupiter.api.Test;

/**
 * The power limit and the searches along lines of speed and acceleration. Power is force times speed; edges and
 * feasible points are held to what they mean, by the utilisation on either side.
 */
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
        assertEquals(POWER, taken(acceleration, middle, grade), 1e-6 * POWER);
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

    /** An edge is feasible, and a little further on nothing is. */
    @Property
    void anEdgeIsTheLastFeasiblePoint(
            @ForAll @DoubleRange(min = 5, max = 18) double speed,
            @ForAll @DoubleRange(min = 0, max = 0.02) @Scale(4) double curvature,
            @ForAll @DoubleRange(min = 0.5, max = 1) double scale,
            @ForAll @DoubleRange(min = 0.01, max = 3) double step) {
        Chord chord = place(curvature, 0).atSpeed(speed * speed, scale);
        double inside = -place(curvature, 0).coastingDeceleration(speed * speed);
        if (chord.excess(inside) < -0.01) {
            for (int sign = -1; sign <= 1; sign += 2) {
                double edge = chord.edgeFrom(inside, sign * step, sign * 100);
                assertTrue(chord.feasible(edge), () -> "excess " + chord.excess(edge));
                assertTrue(!chord.feasible(edge + sign * 1e-6 * Math.max(1, Math.abs(edge))));
                assertEquals(edge, chord.edge(inside, sign * 100), 1e-6);
                assertEquals(inside + sign * 1e-3, chord.edge(inside, inside + sign * 1e-3), 0, "feasible itself");
            }
        }
    }

    /**
     * From a start on either side of what is feasible, the search finds a point of it, or says that there is none.
     * Farther away, where an axle has no load left, the utilisation is infinite and its growing steps may leap over
     * what is feasible.
     */
    @Property
    void aFeasiblePointIsFoundFromNearby(
            @ForAll @DoubleRange(min = 5, max = 30) double speed,
            @ForAll @DoubleRange(min = 0, max = 0.03) @Scale(4) double curvature,
            @ForAll @DoubleRange(min = -15, max = 15) double start,
            @ForAll @DoubleRange(min = 0.01, max = 5) double step) {
        Chord chord = place(curvature, 0).atSpeed(speed * speed, 1);
        double found = chord.feasibleNear(start, step, -100, 100);
        boolean any = false;
        for (double x = -30; x <= 30; x += 0.1) {
            any |= chord.feasible(x);
        }
        if (any) {
            assertTrue(chord.feasible(found), () -> "found " + found);
        } else if (!Double.isNaN(found)) {
            assertTrue(chord.feasible(found));
        }
        if (chord.feasible(start)) {
            assertEquals(start, found, "a feasible start is taken");
        }
    }
}
