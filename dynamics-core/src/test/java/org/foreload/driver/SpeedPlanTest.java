package org.foreload.driver;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The plan for the way out, by v² = v₀² + 2·a·s between its stations. */
class SpeedPlanTest {

    private static final SpeedPlan PLAN = new SpeedPlan(new double[] {20, 50, 90}, new double[] {10, 20, 25});

    @Test
    void speedSquaredRunsLinearlyBetweenTheStations() {
        assertEquals(20, PLAN.opening());
        assertEquals(10, PLAN.speed(20));
        assertEquals(Math.sqrt(100 + 2 * 5 * 12), PLAN.speed(32), 1e-12); // (400 − 100)/(2·30) = 5 m/s²
        assertEquals(20, PLAN.speed(50), 1e-12);
        assertEquals(Math.sqrt(400 + 2 * 225 / 80.0 * 16), PLAN.speed(66), 1e-12);
        assertEquals(25, PLAN.speed(90), 1e-12);
        assertEquals(5, PLAN.acceleration(32), 1e-12);
        assertEquals(225 / 80.0, PLAN.acceleration(66), 1e-12);
        assertEquals(225 / 80.0, PLAN.acceleration(50), 1e-12);
    }

    @Test
    void beyondTheEndsTheSpeedOfTheEndIsKept() {
        assertEquals(10, PLAN.speed(-5));
        assertEquals(25, PLAN.speed(200));
    }

    @Test
    void aPlanKeepsNoHandOnItsArrays() {
        double[] stations = {0, 10};
        double[] speeds = {5, 6};
        SpeedPlan plan = new SpeedPlan(stations, speeds);
        stations[0] = 3;
        speeds[0] = 3;
        plan.stations()[1] = 7;
        plan.speeds()[1] = 7;
        assertArrayEquals(new double[] {0, 10}, plan.stations());
        assertArrayEquals(new double[] {5, 6}, plan.speeds());
    }

    /** Wrong numbers are refused by name: in descending order, twice the same, not finite, below zero. */
    @ParameterizedTest
    @CsvSource({
        "0, 0, 5, 5, station 1",
        "10, 0, 5, 5, station 1",
        "NaN, 10, 5, 5, station 0",
        "0, NaN, 5, 5, station 1",
        "0, Infinity, 5, 5, station 1",
        "-Infinity, 0, 5, 5, station 0",
        "0, 10, NaN, 5, speed 0",
        "0, 10, 5, -1, speed 1",
        "0, 10, 5, Infinity, speed 1"
    })
    void wrongNumbersAreRefused(double first, double second, double before, double after, String which) {
        InvalidValueException refused = assertThrows(
                InvalidValueException.class,
                () -> new SpeedPlan(new double[] {first, second}, new double[] {before, after}));
        assertEquals("speed plan, " + which, refused.field());
    }

    @Test
    void plansWithTheSameNumbersAreEqual() {
        SpeedPlan same = new SpeedPlan(new double[] {20, 50, 90}, new double[] {10, 20, 25});
        assertEquals(PLAN, same);
        assertEquals(PLAN.hashCode(), same.hashCode());
        assertNotEquals(PLAN, new SpeedPlan(new double[] {20, 50, 91}, new double[] {10, 20, 25}));
        assertNotEquals(PLAN, new SpeedPlan(new double[] {20, 50, 90}, new double[] {10, 20, 26}));
    }

    @Test
    void aPlanNeedsTwoStationsEachWithASpeed() {
        assertThrows(IllegalArgumentException.class, () -> new SpeedPlan(new double[] {1}, new double[] {1}));
        assertThrows(IllegalArgumentException.class, () -> new SpeedPlan(new double[] {1, 2}, new double[] {1}));
    }
}
