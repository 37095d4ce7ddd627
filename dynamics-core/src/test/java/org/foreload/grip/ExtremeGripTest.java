package org.foreload.grip;

import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import org.foreload.load.SampleCars;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Cars that the guards let through but nobody could build: the searches end all the same. */
class ExtremeGripTest {

    /** Keeps a search without end from stopping the build; it takes a millisecond. */
    private static final Duration PATIENCE = Duration.ofSeconds(60);

    private static void searchesEnd(Car car) {
        assertTimeoutPreemptively(PATIENCE, () -> {
            BrakingGrip grip = BrakingGrip.of(car, 30);
            for (double deceleration : new double[] {-3, 0, 0.5, 3, 9}) {
                assertTrue(!(grip.frontCapacity(deceleration) < 0));
                assertTrue(!(grip.rearCapacity(deceleration) < 0));
            }
        });
    }

    private static Car with(double mass, double wheelbase, double inertia, double track) {
        Chassis chassis = new Chassis(mass, wheelbase, wheelbase / 2, 0.5, inertia, track, 1.5);
        return SampleCars.ROAD_CAR.with(chassis);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e308, 1e30, 1e-30, Double.MIN_VALUE})
    void ofAnyMass(double mass) {
        searchesEnd(with(mass, 2.6, 2200, 1.5));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e308, 1e30, 1e-30, 1e-300})
    void ofAnyLength(double wheelbase) {
        searchesEnd(with(1400, wheelbase, 2200, 1.5));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e308, 1e30, 1e-30, Double.MIN_VALUE})
    void ofAnyWidth(double track) {
        searchesEnd(with(1400, 2.6, 2200, track));
    }
}
