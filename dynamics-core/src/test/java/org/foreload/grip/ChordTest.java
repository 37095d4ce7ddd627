package org.foreload.grip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.foreload.load.SampleCars;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;

/**
 * Lines of speed and acceleration through what is feasible. Edges and feasible points are held to what they mean, by
 * the utilisation on either side, and by looking everywhere.
 */
class ChordTest {

    /** As far as {@link LocalGrip} looks: most of it is where an axle has no load. */
    private static final double BOUND = 1000;

    private static Chord atSpeed(Car car, double curvature, double speed, double scale) {
        return GripLimits.of(car).at(curvature, 0, 0, 0).atSpeed(speed * speed, scale);
    }

    @Provide
    Arbitrary<Car> cars() {
        return SampleCars.possible();
    }

    /** Speed squared and acceleration along each kind of line, in the readable model. */
    @Property
    void excessIsTheUtilisationOverTheScale(
            @ForAll("cars") Car car,
            @ForAll @DoubleRange(min = 10, max = 50) double speed,
            @ForAll @DoubleRange(min = -4, max = 4) double acceleration,
            @ForAll @DoubleRange(min = -3, max = 3) double step,
            @ForAll @DoubleRange(min = 0.5, max = 1.2) double scale) {
        GripLimits limits = GripLimits.of(car);
        LocalGrip place = limits.at(0.005, 0.0001, 0, 0);
        double w = speed * speed;
        same(limits, w, acceleration, scale, place.atSpeed(w, scale).excess(acceleration));
        same(
                limits,
                w,
                acceleration,
                scale,
                place.atAcceleration(acceleration, scale).excess(w));
        same(
                limits,
                w + acceleration * step,
                acceleration,
                scale,
                place.overStep(w, step, scale).excess(acceleration));
    }

    private static void same(GripLimits limits, double w, double acceleration, double scale, double excess) {
        double used = limits.use(Motion.onLine(Math.sqrt(w), -acceleration, 0.005, 0.0001, 0, 0))
                .utilisation();
        if (used < 1000) {
            assertEquals(used / scale - 1, excess, 1e-9 * (1 + used * used));
        }
    }

    /** An edge is feasible, and a little further on nothing is. */
    @Property
    void anEdgeIsTheLastFeasiblePoint(
            @ForAll("cars") Car car,
            @ForAll @DoubleRange(min = 5, max = 18) double speed,
            @ForAll @DoubleRange(min = 0, max = 0.02) @Scale(4) double curvature,
            @ForAll @DoubleRange(min = 0.5, max = 1) double scale,
            @ForAll @DoubleRange(min = 0.01, max = 3) double step) {
        Chord chord = atSpeed(car, curvature, speed, scale);
        if (chord.excess(0) < -0.01) {
            for (int sign = -1; sign <= 1; sign += 2) {
                double edge = chord.edgeFrom(0, sign * step, sign * BOUND);
                assertTrue(chord.feasible(edge), () -> "excess " + chord.excess(edge));
                if (edge != sign * BOUND) {
                    assertTrue(!chord.feasible(edge + sign * 1e-6 * Math.max(1, Math.abs(edge))));
                    assertEquals(edge, chord.edgeFrom(edge, sign * step, sign * BOUND), 1e-6, "already there");
                }
                double near = sign * 1e-3;
                double nearEdge = chord.feasible(near) ? near : edge;
                assertEquals(nearEdge, chord.edgeFrom(0, sign * step, near), 1e-6, "feasible itself, or the edge");
            }
        }
    }

    /** From wherever it starts, the search finds a feasible point if there is one. */
    @Property
    void aFeasiblePointIsFoundFromAnywhere(
            @ForAll @DoubleRange(min = 5, max = 30) double speed,
            @ForAll @DoubleRange(min = 0, max = 0.03) @Scale(4) double curvature,
            @ForAll @DoubleRange(min = -60, max = 60) double start,
            @ForAll @DoubleRange(min = 0.01, max = 5) double step) {
        foundIfThereIsAny(atSpeed(SampleCars.ROAD_CAR, curvature, speed, 1), start, step);
    }

    /** The same for all kinds of cars and frictions: those driven by all wheels, tall ones, slippery roads. */
    @Property
    void aFeasiblePointIsFoundForAnyCar(
            @ForAll("cars") Car car,
            @ForAll @DoubleRange(min = 5, max = 60) double speed,
            @ForAll @DoubleRange(min = 0, max = 0.03) @Scale(4) double curvature,
            @ForAll @DoubleRange(min = 0.1, max = 1.2) double scale,
            @ForAll @DoubleRange(min = -60, max = 60) double start) {
        foundIfThereIsAny(atSpeed(car, curvature, speed, scale), start, 0.05);
    }

    private static void foundIfThereIsAny(Chord chord, double start, double step) {
        double found = chord.feasibleNear(start, step, -BOUND, BOUND);
        boolean any = false;
        for (double x = -30; x <= 30 && !any; x += 0.1) {
            any = chord.feasible(x);
        }
        if (any || !Double.isNaN(found)) {
            assertTrue(chord.feasible(found), () -> "found " + found);
            assertTrue(Math.abs(found) <= BOUND);
        }
        if (chord.feasible(start)) {
            assertEquals(start, found, "a feasible start is taken");
        }
    }

    /** Speeds at an acceleration, and accelerations over a step that ends at a speed, are lines of the same kind. */
    @Property
    void aFeasiblePointIsFoundAlongOtherLines(
            @ForAll("cars") Car car,
            @ForAll @DoubleRange(min = -6, max = 2) double acceleration,
            @ForAll @DoubleRange(min = 0, max = 0.03) @Scale(4) double curvature,
            @ForAll @DoubleRange(min = 0, max = 6000) double start) {
        LocalGrip place = GripLimits.of(car).at(curvature, 0, 0, 0);
        Chord speeds = place.atAcceleration(acceleration, 1);
        double found = speeds.feasibleNear(start, 10, 0, 6000);
        boolean any = false;
        for (double w = 1; w <= 6000 && !any; w += 20) {
            any = speeds.feasible(w);
        }
        assertTrue(!any || speeds.feasible(found), () -> "found " + found);
        Chord step = place.overStep(start, -2, 1);
        double braking = step.feasibleNear(acceleration, 0.05, -BOUND, start / 4);
        any = false;
        for (double x = -20; x <= start / 4 && !any; x += 0.1) {
            any = step.feasible(x);
        }
        assertTrue(!any || step.feasible(braking), () -> "found " + braking);
    }

    /**
     * A rear driven car that has lifted a rear wheel can neither brake nor drive, since that wheel has nothing to do it
     * with. It can coast: 256 N of drag slow 1024 kg by 0.25 m/s², without rounding. All of the roll stiffness at the
     * rear lifts the wheel at g·t/(4h) = 6.9 m/s², half of what tips the car.
     */
    @Test
    void onThreeWheelsOnlyCoastingIsLeft() {
        Car stiff = SampleCars.pointMass(1)
                .with(new Chassis(1024, 2.5, 1.25, 0.5, 0, 1.4, 1.4))
                .with(new Suspension(0, 0, 0, Response.RIGID, Response.RIGID))
                .with(new Driveline(1e9, DrivenAxle.REAR))
                .with(new Aerodynamics(2, 0, 0, 1, 0));
        Chord chord = atSpeed(stiff, 9.0 / 256, 16, 1);
        for (double start : new double[] {-40, -1, 0, 5}) {
            assertEquals(-0.25, chord.feasibleNear(start, 0.05, -BOUND, BOUND), 0);
        }
        assertEquals(Double.NaN, chord.feasibleNear(0, 0.05, -0.2, BOUND), "without braking at all");
        assertEquals(Double.NaN, chord.feasibleNear(0, 0.05, -BOUND, -0.3), "braking only");
    }

    /**
     * The axle that gives way first corners faster with more load: the rear one while the front wheels pull, the front
     * one while the car brakes. Just above the speed at which it may coast, what is feasible is a little way off on
     * that side, and nothing else is.
     */
    @Test
    void whatIsFeasibleOnlyWhileDrivingOrBrakingIsFound() {
        Tyre strong = SampleCars.tyre(1.2, 1.3, 0.05);
        Tyre weak = SampleCars.tyre(1.15, 0.95, 0.05);
        Car car = SampleCars.ROAD_CAR.with(Aerodynamics.NONE).with(new Driveline(1e9, DrivenAxle.FRONT));
        foundOnOneSide(car.withTyres(strong, weak), 1);
        foundOnOneSide(car.withTyres(weak, strong), -1);
    }

    private static void foundOnOneSide(Car car, int side) {
        LocalGrip place = GripLimits.of(car).at(0.02, 0, 0, 0);
        double coasting = place.atAcceleration(0, 1).edgeFrom(0, 10, 1e4);
        Chord chord = place.atSpeed(1.001 * coasting, 1);
        for (double start : new double[] {-60, 0, 60}) {
            double found = chord.feasibleNear(start, 1e-3, -BOUND, BOUND);
            assertTrue(chord.feasible(found) && found * side > 0, () -> "found " + found);
        }
    }

    /** The neighbours on both sides come before anything farther away. */
    @Property
    void theNeighboursAreLookedAtFirst(
            @ForAll @DoubleRange(min = 0, max = 0.02) @Scale(4) double curvature,
            @ForAll @DoubleRange(min = 0.01, max = 2) double step) {
        Chord chord = atSpeed(SampleCars.ROAD_CAR, curvature, 15, 1);
        for (int sign = -1; sign <= 1; sign += 2) {
            double edge = chord.edgeFrom(0, sign, sign * BOUND);
            double start = edge + sign * 0.5 * step;
            assertEquals(start - sign * step, chord.feasibleNear(start, step, -BOUND, BOUND), 1e-12);
        }
    }
}
