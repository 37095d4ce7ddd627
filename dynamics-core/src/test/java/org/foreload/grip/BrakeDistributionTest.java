package org.foreload.grip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.foreload.conventions.InvalidValueException;
import org.foreload.load.SampleCars;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.junit.jupiter.api.Test;

/**
 * Derived example from the formulas of UN Regulation 13-H, Annex 5 (from memory): a 1.20, b 1.50, h 0.55 m, share 0.70.
 */
class BrakeDistributionTest {

    private static final BrakeDistribution EXAMPLE = new BrakeDistribution(2.7, 1.2, 0.55, 0.7);

    @Test
    void criticalRate() {
        assertEquals(0.709091, EXAMPLE.criticalRate(), 5e-7);
        assertEquals(0.709091, EXAMPLE.frontAdhesion(0.709091), 5e-6);
        assertEquals(0.709091, EXAMPLE.rearAdhesion(0.709091), 5e-6);
    }

    @Test
    void adhesionBelowAndAboveTheCriticalRate() {
        assertEquals(0.340541, EXAMPLE.frontAdhesion(0.3), 5e-7);
        assertEquals(0.234783, EXAMPLE.rearAdhesion(0.3), 5e-7);
        assertEquals(0.779381, EXAMPLE.frontAdhesion(0.8), 5e-7);
        assertEquals(0.852632, EXAMPLE.rearAdhesion(0.8), 5e-7);
    }

    @Test
    void lockLimits() {
        assertEquals(0.359281, EXAMPLE.frontLockRate(0.4), 5e-7);
        assertEquals(0.466019, EXAMPLE.rearLockRate(0.4), 5e-7);
        assertEquals(0.827586, EXAMPLE.frontLockRate(0.8), 5e-7);
        assertEquals(0.768, EXAMPLE.rearLockRate(0.8), 5e-7);
        assertEquals(1.119403, EXAMPLE.frontLockRate(1), 5e-7);
        assertEquals(0.882353, EXAMPLE.rearLockRate(1), 5e-7);
    }

    @Test
    void withoutCgHeightTheOrderNeverFlips() {
        assertEquals(Double.POSITIVE_INFINITY, new BrakeDistribution(2.7, 1.2, 0, 0.7).criticalRate());
        assertEquals(Double.NEGATIVE_INFINITY, new BrakeDistribution(2.7, 1.2, 0, 0.5).criticalRate());
        assertEquals(0, new BrakeDistribution(2, 1, 0, 0.5).criticalRate());
        assertEquals(Double.POSITIVE_INFINITY, EXAMPLE.rearAdhesion(3));
    }

    @Test
    void whatIsNoCarIsRefused() {
        assertThrows(InvalidValueException.class, () -> new BrakeDistribution(-1, Double.NaN, 0, 7));
        assertThrows(InvalidValueException.class, () -> new BrakeDistribution(Double.NaN, 1.2, 0.5, 0.7));
        assertThrows(InvalidValueException.class, () -> new BrakeDistribution(2.7, 2.7, 0.5, 0.7));
        assertThrows(InvalidValueException.class, () -> new BrakeDistribution(2.7, 1.2, -0.1, 0.7));
        assertThrows(InvalidValueException.class, () -> new BrakeDistribution(2.7, 1.2, 0.5, 1.01));
    }

    /**
     * The car model in a straight line uses the adhesion of the regulation, and its limit is the earlier lock limit.
     */
    @Test
    void agreesWithTheCarModel() {
        Car car = SampleCars.pointMass(0.8)
                .with(new Chassis(1500, 2.7, 1.2, 0.55, 0, 1.5, 1.5))
                .withFrontBrakeShare(0.7);
        GripUse use = GripLimits.of(car).use(Motion.steady(20, 0.3 * 9.81, 0));
        assertEquals(0.340541, use.front().adhesion(), 5e-7);
        assertEquals(0.234783, use.rear().adhesion(), 5e-7);
        double hardest = -GripLimits.of(car)
                .accelerationRange(400, 0, 0, 0, 0)
                .orElseThrow()
                .lowest();
        assertEquals(0.768 * 9.81, hardest, 1e-6);
        assertEquals(
                Axle.REAR, GripLimits.of(car).use(Motion.steady(20, hardest, 0)).limitingAxle());
    }

    /** On the ideal parabola both axles use exactly z. */
    @Property
    void idealParabolaUsesBothAxlesAlike(@ForAll @DoubleRange(min = 0.01, max = 1.2) double rate) {
        double front = EXAMPLE.idealFront(rate);
        double rear = EXAMPLE.idealRear(rate);
        assertEquals(rate, front + rear, 1e-12);
        BrakeDistribution ideal = new BrakeDistribution(2.7, 1.2, 0.55, front / rate);
        assertEquals(rate, ideal.frontAdhesion(rate), 1e-12);
        assertEquals(rate, ideal.rearAdhesion(rate), 1e-12);
        assertTrue(front > EXAMPLE.idealFront(0));
    }
}
