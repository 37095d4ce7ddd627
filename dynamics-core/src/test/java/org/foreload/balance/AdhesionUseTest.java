package org.foreload.balance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.stability.Scenes;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.junit.jupiter.api.Test;

/** The regulation's picture on the worked example: a = 1.20 m, b = 1.50 m, h = 0.55 m. */
class AdhesionUseTest {

    private static AdhesionUse use(double share) {
        Car car = Scenes.light().with(new Chassis(1500, 2.7, 1.2, 0.55, 2500, 1.55, 1.55));
        return AdhesionUse.of(car.withFrontBrakeShare(share));
    }

    /** The worked example's curves at z = 0.30 and 0.80. */
    @Test
    void adhesionIsThatOfTheRegulation() {
        AdhesionUse use = use(0.70);
        assertEquals(0.709091, use.criticalRate(), 1e-6);
        AdhesionUse.Row gentle = use.rows().get(5);
        assertEquals(0.30, gentle.rate(), 1e-12);
        assertEquals(0.340541, gentle.front(), 1e-6);
        assertEquals(0.234783, gentle.rear(), 1e-6);
        AdhesionUse.Row hard = use.rows().get(15);
        assertEquals(0.779381, hard.front(), 1e-6);
        assertEquals(0.852632, hard.rear(), 1e-6);
        assertTrue(!use.frontFirst(), "the rear curve lies above from 0.71 on");
        assertTrue(use(0.75).frontFirst());
    }

    /** Floor z = 0.1 + 0.7 (k − 0.2): at k = 0.5 it is 0.310 (UN Regulation 13-H, from memory). */
    @Test
    void theBandEndsAtTheFloor() {
        AdhesionUse use = use(0.70);
        AdhesionUse.Row row = use.rows().get(6);
        assertEquals(0.35, row.rate(), 1e-12);
        assertEquals(row.rate(), 0.1 + 0.7 * (row.most() - 0.2), 1e-12);
        assertTrue(use.efficient());
        assertTrue(!use(1).efficient(), "front brakes alone need too much adhesion");
    }
}
