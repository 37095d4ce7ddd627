package org.foreload.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;

/** The two fields of a car file that say what slows and what stops a wheel. */
class BrakeFieldsTest {

    private static Car car(String fields) {
        return read(fields).value();
    }

    private static Loaded<Car> read(String fields) {
        return CarFile.parse(SampleCars.smallestWith("power_w", "\"power_w\": 1e5" + fields), "car.json");
    }

    @Test
    void bothMayBeLeftOut() {
        assertFalse(car("").antiLock());
        assertEquals(0, car("").driveline().closedThrottleDrag());
    }

    @Test
    void bothAreReadAndWritten() {
        Car car = car(", \"anti_lock\": true, \"closed_throttle_drag_n\": 350");
        assertTrue(car.antiLock());
        assertEquals(350, car.driveline().closedThrottleDrag());
        assertEquals(car, CarFile.parse(CarFile.write(car), "car.json").value());
        assertFalse(car(", \"anti_lock\": false").antiLock());
    }

    @Test
    void whatIsImpossibleIsRefused() {
        assertEquals(
                "car.json: anti_lock: yes: must be true or false",
                assertThrows(InputException.class, () -> car(", \"anti_lock\": \"yes\""))
                        .line());
        String line = assertThrows(InputException.class, () -> car(", \"closed_throttle_drag_n\": -1"))
                .line();
        assertTrue(line.startsWith("car.json: closed_throttle_drag_n: -1"), line);
    }

    /** Ten kilonewtons on a tonne would be a brake and no engine. */
    @Test
    void anUnusualEngineDragDrawsAWarning() {
        assertTrue(read(", \"closed_throttle_drag_n\": 1e4").warnings().stream()
                .anyMatch(warning -> warning.field().equals("closed_throttle_drag_n")));
        assertTrue(read(", \"closed_throttle_drag_n\": 300").warnings().stream()
                .noneMatch(warning -> warning.field().equals("closed_throttle_drag_n")));
    }
}
