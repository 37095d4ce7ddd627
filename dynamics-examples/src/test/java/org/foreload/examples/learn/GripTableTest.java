package org.foreload.examples.learn;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.examples.demo.Demos;
import org.foreload.grip.BrakingGrip;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;

/** What the page interpolates is what the library computes. */
class GripTableTest {

    private static final Car CAR = Demos.car("car", "road").value();

    private static final GripTable TABLE = GripTable.of(CAR);

    private static final GripSetting START = GripPage.start(CAR);

    private static double best(double share, double height, double surface) {
        return TABLE.best(new GripSetting(0, share, height, surface));
    }

    @Test
    void atANodeItIsTheLibraryToSixDigits() {
        GripSetting node = new GripSetting(3, 0.7, 0.5, 0.9);
        double[] exact = GripQuantities.of(node, CAR).values();
        double[] table = TABLE.at(node).values();
        for (int i = 0; i < exact.length; i++) {
            assertEquals(exact[i], table[i], 5e-6 * Math.abs(exact[i]), GripQuantities.NAMES[i]);
        }
    }

    /**
     * The sum over both wheels of peak·√(1 − (F/peak)²) is the library's lateral capacity of an axle, locked or not.
     */
    @Test
    void theWheelsAddToTheAxle() {
        for (double d = 0; d <= 9; d += 0.5) {
            GripSetting setting = START.withDeceleration(d);
            GripQuantities exact = GripQuantities.of(setting, CAR);
            assertEquals(setting.frontCapacity(CAR), exact.frontCapacity(), 1e-6);
            assertEquals(setting.rearCapacity(CAR), exact.rearCapacity(), 1e-6);
        }
        assertTrue(GripQuantities.of(START.withDeceleration(9), CAR).locked());
    }

    /** The budgets are what a reader can still see on the page: a pixel of its charts is 50 N and one per cent. */
    @Test
    void betweenTheNodesItIsNearerThanOneCanSee() {
        GripTable.Error error = TABLE.error(CAR, 400, 7);
        assertTrue(error.load() < 0.1, error::toString);
        assertTrue(error.capacity() < 10, error::toString);
        assertTrue(error.commonUse() < 0.01, error::toString);
        assertTrue(error.use() < 0.06, error::toString);
        assertTrue(error.best() < 0.05, error::toString);
    }

    /**
     * d* = μ²·g·(b/L)(h/L)/(β² − μ²(h/L)²), as {@link BrakingGrip#bestDecelerationClosedForm} has it, for a car of one
     * friction and without air: it rises with friction and height and falls with the front share. What the page says of
     * its buttons is that.
     */
    @Test
    void theBestDecelerationMovesAsThePageSays() {
        double usual = best(0.82, 0.53, 1);
        assertTrue(best(0.6, 0.53, 1) > usual + 0.5);
        assertTrue(best(0.82, 0.68, 1) > usual + 0.2);
        assertTrue(best(0.82, 0.53, 0.6) < usual - 0.5);
        double far = START.withDeceleration(6).frontCapacity(CAR);
        assertTrue(far < START.withDeceleration(0).frontCapacity(CAR));
    }
}
