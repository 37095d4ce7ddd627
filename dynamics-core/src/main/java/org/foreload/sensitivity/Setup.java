package org.foreload.sensitivity;

import java.util.Objects;
import org.foreload.braking.BrakePlan;
import org.foreload.driver.DriverSettings;
import org.foreload.path.Corner;
import org.foreload.vehicle.Car;

/**
 * All that an entry depends on, as one value whose numbers can be turned.
 *
 * @param car the car
 * @param corner the corner
 * @param driver the driver
 * @param plan the brake plan
 */
public record Setup(Car car, Corner corner, DriverSettings driver, BrakePlan plan) {

    /** Checks that nothing is missing. */
    public Setup {
        Objects.requireNonNull(car, "car");
        Objects.requireNonNull(corner, "corner");
        Objects.requireNonNull(driver, "driver");
        Objects.requireNonNull(plan, "plan");
    }

    Setup with(Car other) {
        return new Setup(other, corner, driver, plan);
    }

    Setup with(Corner other) {
        return new Setup(car, other, driver, plan);
    }

    Setup with(DriverSettings other) {
        return new Setup(car, corner, other, plan);
    }

    Setup with(BrakePlan other) {
        return new Setup(car, corner, driver, other);
    }
}
