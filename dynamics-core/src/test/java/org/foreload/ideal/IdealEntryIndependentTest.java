package org.foreload.ideal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.vehicle.Car;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Against an independent solution of the same equations by another method: the convex sets of feasible speed squared
 * and acceleration, taken at both ends of each step (not in its middle), are cut out by their tangents, and a linear
 * programme finds all speeds at once; utilisation by bisection on its definition. That discretisation is of first order
 * and on the slow side; its results for steps of 1 m and 0.5 m are extrapolated to no step. What is left between the
 * two times is a few parts in a hundred thousand.
 */
class IdealEntryIndependentTest {

    /** The lowest speed of a hairpin, a point between two kinks, extrapolates worst: to a part in two thousand. */
    private static final double TOLERANCE = 1e-3;

    /** In m; the two differ by millimetres. */
    private static final double BRAKE_POINT_TOLERANCE = 0.02;

    @ParameterizedTest
    @CsvSource({
        // car: friction front and rear; corner: speed, approach, radius, degrees, spirals, exit; time, turn-in,
        // minimum, end
        "1.10, 1.12, 50, 250, 20, 180, 18, 120, 15.2115, 20.208, 14.336, 36.822, -123.28",
        "1.10, 1.12, 45, 200, 60, 100, 35, 120, 13.1226, 32.286, 25.100, 40.707, -73.05",
        "1.10, 1.12, 60, 200, 140, 90, 90, 150, 14.1907, 50.667, 38.401, 50.341, -61.79",
        "0.98, 1.25, 50, 250, 20, 180, 18, 120, 15.4656, 20.000, 13.642, 36.762, -123.65",
        "0.98, 1.25, 45, 200, 60, 100, 35, 120, 13.4308, 31.798, 23.775, 40.334, -74.38",
        "0.98, 1.25, 60, 200, 140, 90, 90, 150, 14.5860, 50.222, 36.369, 49.471, -63.77",
        "1.20, 0.98, 50, 250, 20, 180, 18, 120, 15.5132, 19.819, 13.481, 36.709, -123.97",
        "1.20, 0.98, 45, 200, 60, 100, 35, 120, 13.4714, 31.397, 23.654, 40.267, -75.46",
        "1.20, 0.98, 60, 200, 140, 90, 90, 150, 14.6548, 49.147, 36.450, 49.462, -68.49"
    })
    void agrees(
            double frontFriction,
            double rearFriction,
            double speed,
            double approach,
            double radius,
            double degrees,
            double spiral,
            double exit,
            double time,
            double turnIn,
            double minimum,
            double end,
            double brakePoint) {
        Car car = SampleCars.ROAD_CAR.withTyres(
                SampleCars.tyre(1.15, frontFriction, 0.08), SampleCars.tyre(1.17, rearFriction, 0.08));
        Corner corner = SampleCorners.left(speed, approach, radius, degrees, spiral, spiral, exit);
        IdealProfile profile = IdealEntry.solve(car, corner);
        assertEquals(time, profile.time(), TOLERANCE * time);
        assertEquals(turnIn, profile.turnInSpeed(), TOLERANCE * turnIn);
        assertEquals(minimum, profile.minimumSpeed(), TOLERANCE * minimum);
        assertEquals(end, profile.speedAt(corner.path().end()), TOLERANCE * end);
        assertEquals(brakePoint, profile.brakePoint().orElseThrow(), BRAKE_POINT_TOLERANCE);
    }
}
