package org.foreload.driver;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.bicycle.WheelForces;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.tyre.Tyre;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The axle as its driver knows it, against the tyre asked the other way round: slip in, force out. */
class InverseTyreTest {

    private static final double V = 20;
    private static final double MOST_USE = 0.98;

    private static Tyre tyre(String curve) {
        SlipCurve shape = curve.equals("brush") ? new SlipCurve.Brush() : new SlipCurve.MagicFormula(1.4, -0.3);
        return new FrictionTyre(shape, 1.2, 1.1, 0.1, 4000, 0, 18, 20);
    }

    /** The car in a turn to the left: its right wheels carry more. */
    private static WheelForces turning(Tyre tyre) {
        WheelForces wheels = Wagon.wheels(tyre, V, -0.5, 0, 0);
        assertTrue(wheels.load(1) > wheels.load(0) + 500);
        return wheels;
    }

    private static double force(Tyre tyre, WheelForces wheels, double slipAngle) {
        double slip = Math.tan(slipAngle);
        return -tyre.lateralForce(slip, wheels.longitudinal(0), wheels.load(0))
                - tyre.lateralForce(slip, wheels.longitudinal(1), wheels.load(1));
    }

    /** Slip angle for a force, and the force at that slip angle: the one that was asked for, with unlike loads. */
    @ParameterizedTest
    @CsvSource({"brush, 0.05", "brush, 0.6", "brush, -0.9", "magic, 0.05", "magic, 0.6", "magic, -0.97"})
    void itIsTheInverse(String curve, double share) {
        Tyre tyre = tyre(curve);
        WheelForces wheels = turning(tyre);
        InverseTyre inverse = new InverseTyre(tyre, 0, MOST_USE);
        inverse.feel(wheels);
        double peak = tyre.peakForceY(wheels.load(0)) + tyre.peakForceY(wheels.load(1));
        assertEquals(peak, inverse.most(), 1e-9 * peak);
        double asked = share * peak;
        assertEquals(asked, force(tyre, wheels, inverse.slipAngle(asked)), 1e-6 * peak);
        assertEquals(-Math.signum(asked), Math.signum(inverse.slipAngle(asked)));
    }

    /** Under braking the peak is what the ellipse leaves, √(1 − q²), and the inverse is that of the braked tyre. */
    @ParameterizedTest
    @CsvSource({"brush, 0.4", "brush, 0.8", "magic, 0.4", "magic, 0.8"})
    void brakingLeavesWhatTheEllipseLeaves(String curve, double used) {
        Tyre tyre = tyre(curve);
        double brake = 2 * used * tyre.peakForceX(Wagon.wheels(tyre, V, 0, 0, 0).load(0)) / Wagon.BRAKE_SHARE;
        WheelForces wheels = Wagon.wheels(tyre, V, 0, 0, brake);
        double q = wheels.longitudinal(0) / tyre.peakForceX(wheels.load(0));
        InverseTyre inverse = new InverseTyre(tyre, 0, MOST_USE);
        inverse.feel(wheels);
        double peak = 2 * tyre.peakForceY(wheels.load(0)) * Math.sqrt(1 - q * q);
        assertEquals(peak, inverse.most(), 1e-9 * peak);
        for (double share : new double[] {0.1, -0.5, 0.9}) {
            assertEquals(share * peak, force(tyre, wheels, inverse.slipAngle(share * peak)), 1e-6 * peak);
        }
    }

    /** However much is asked, never past the slip of the most use that the driver allows. */
    @ParameterizedTest
    @ValueSource(strings = {"brush", "magic"})
    void neverPastThePeak(String curve) {
        Tyre tyre = tyre(curve);
        WheelForces wheels = turning(tyre);
        InverseTyre inverse = new InverseTyre(tyre, 0, MOST_USE);
        inverse.feel(wheels);
        double most = inverse.slipAngle(1e9);
        assertEquals(MOST_USE * inverse.most(), force(tyre, wheels, most), 1e-6 * inverse.most());
        assertEquals(-most, inverse.slipAngle(-1e9));
    }

    /** On linear tyres the slope is the stiffness, wherever the axle works. */
    @ParameterizedTest
    @ValueSource(doubles = {0, -0.5, 0.9})
    void theSlopeOfALinearTyreIsItsStiffness(double vy) {
        WheelForces wheels = Wagon.wheels(V, vy, 0, 0);
        InverseTyre inverse = new InverseTyre(Wagon.tyre(0), 2, MOST_USE);
        inverse.feel(wheels);
        assertEquals(Wagon.REAR, inverse.stiffness(wheels), 1e-6 * Wagon.REAR);
    }

    /** Elsewhere it is the slope of the tyre's curve where the axle works, by differences of the tyre itself. */
    @ParameterizedTest
    @CsvSource({"brush, -0.2", "brush, -0.6", "magic, -0.2", "magic, -0.6"})
    void theSlopeIsThatOfTheCurveWhereTheAxleWorks(String curve, double vy) {
        Tyre tyre = tyre(curve);
        WheelForces wheels = Wagon.wheels(tyre, V, vy, 0, 0);
        InverseTyre inverse = new InverseTyre(tyre, 0, MOST_USE);
        inverse.feel(wheels);
        double slip = inverse.slipAngle(wheels.frontLateral());
        double step = 1e-5;
        double slope = (force(tyre, wheels, slip - step) - force(tyre, wheels, slip + step)) / (2 * step);
        // A secant over four hundredths of the peak, per tangent and not per angle.
        assertEquals(slope, inverse.stiffness(wheels), 0.02 * slope);
    }

    /** A full axle still counts with a small part of its stiffness, so that no correction is endless. */
    @Test
    void aFullAxleHasALeastSlope() {
        Tyre tyre = tyre("brush").withFriction(0.9);
        WheelForces wheels = Wagon.wheels(tyre, V, -4, 0, 0);
        InverseTyre inverse = new InverseTyre(tyre, 0, 0.999);
        inverse.feel(wheels);
        double whole = tyre.corneringStiffness(wheels.load(0)) + tyre.corneringStiffness(wheels.load(1));
        assertEquals(0.08 * whole, inverse.stiffness(wheels), 1e-9 * whole);
    }

    @Test
    void anAxleInTheAirHasNothing() {
        WheelForces air = new WheelForces();
        InverseTyre inverse = new InverseTyre(tyre("brush"), 0, MOST_USE);
        inverse.feel(air);
        assertEquals(0, inverse.most());
        assertEquals(0, inverse.slipAngle(1000));
        assertEquals(0, inverse.stiffness(air));
    }

    /** With the brake at all that a wheel has, three tenths of the peak are still steered for. */
    @Test
    void withLockedWheelsSomeSteeringIsKept() {
        WheelForces wheels = Wagon.wheels(V, 0, 0, 5e4);
        InverseTyre inverse = new InverseTyre(Wagon.tyre(0), 0, MOST_USE);
        inverse.feel(wheels);
        assertEquals(0.3 * (wheels.load(0) + wheels.load(1)), inverse.most(), 1e-6);
    }
}
