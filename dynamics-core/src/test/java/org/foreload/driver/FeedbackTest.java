package org.foreload.driver;

import static org.foreload.driver.Wagon.INERTIA;
import static org.foreload.driver.Wagon.MASS;
import static org.foreload.driver.Wagon.PERCUSSION;
import static org.foreload.driver.Wagon.TO_FRONT;
import static org.foreload.driver.Wagon.TO_REAR;
import static org.foreload.driver.Wagon.WHEELBASE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.WheelForces;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.junit.jupiter.api.Test;

/**
 * How the driver corrects: read off as four coefficients, put into the equations of a body on two axles written out
 * here, and held against the motion that was asked for.
 */
class FeedbackTest {

    private static final double BANDWIDTH = 4;
    private static final double DAMPING = 0.8;
    private static final double V = 30;

    private static Hands hands(double yawDamping) {
        return new Hands(0.05, 1, BANDWIDTH, DAMPING, yawDamping, 0.1, 0.98);
    }

    private static Feedback wagon(double yawDamping) {
        return new Feedback(Wagon.car(0, 0, Driveline.DrivenAxle.REAR), hands(yawDamping));
    }

    /**
     * The centre of percussion: with the front axle free of force, a car whose rear axle pushes across turns about the
     * point that stays where it is (source: S. D. Poisson's centre of percussion, any text on rigid bodies; from
     * memory). Here by the equations of motion of the whole car.
     */
    @Test
    void theRearAxleDoesNotMoveTheCentreOfPercussion() {
        double ahead = wagon(0.7).percussion();
        assertEquals(PERCUSSION, ahead, 1e-12);
        double vy = 0.4;
        double yawRate = -0.1;
        WheelForces wheels = new WheelForces();
        double alongFront = Math.atan2(vy + TO_FRONT * yawRate, V);
        double[] rates = Wagon.rates(V, vy, yawRate, alongFront, 0, wheels);
        assertEquals(0, wheels.frontLateral(), 1e-6);
        assertTrue(Math.abs(wheels.rearLateral()) > 1000);
        double across = rates[BicycleState.VY] + V * yawRate;
        assertTrue(Math.abs(across) > 0.5);
        assertEquals(0, across + ahead * rates[BicycleState.YAW_RATE], 1e-9);
    }

    /** And the front axle moves it as if its force alone acted on the mass m·b/L. */
    @Test
    void theFrontAxleMovesItAsAMass() {
        double asked = wagon(0).force(V, 1e5, 0, 1, 0, 0);
        double acceleration = -2 * DAMPING * BANDWIDTH;
        double across = asked / MASS;
        double yaw = TO_FRONT * asked / INERTIA;
        assertEquals(acceleration, across + PERCUSSION * yaw, 1e-9);
    }

    /** Off the line the driver pulls back, but never harder than 6 m/s²; and near it as the bandwidth says. */
    @Test
    void offTheLineTheDriverPullsBackButNotInProportion() {
        Feedback feedback = wagon(0);
        double unit = MASS * TO_REAR / WHEELBASE;
        double near = 1e-4;
        assertEquals(-BANDWIDTH * BANDWIDTH * near, feedback.force(V, 1e5, near, 0, 0, 0) / unit, 1e-9);
        assertEquals(feedback.force(V, 1e5, near, 0, 0, 0), feedback.wayBack(), 1e-9);
        assertEquals(-6, feedback.force(V, 1e5, 50, 0, 0, 0) / unit, 1e-9);
        assertEquals(6, feedback.force(V, 1e5, -50, 0, 0, 0) / unit, 1e-9);
        // The way back is the tracker's: pull and damping, and nothing of what calms the yaw.
        Feedback calming = wagon(0.7);
        double whole = calming.force(V, 1e5, near, 1, 0.1, 0.2);
        double tracked = -BANDWIDTH * BANDWIDTH * near - 2 * DAMPING * BANDWIDTH;
        assertEquals(tracked * unit, calming.wayBack(), 1e-9 * unit);
        assertTrue(Math.abs(whole - calming.wayBack()) > 1e-3 * unit);
    }

    /** A car that damps its own yaw as well as asked is left to it: the slower, the stiffer. */
    @Test
    void aCarThatCalmsItselfIsLeftAlone() {
        Feedback feedback = wagon(0.7);
        // √c·δ/2 = 0.5·√(1e5/(1500·1.11))·2.61/v is above 0.7 below 14.4 m/s.
        assertEquals(0, feedback.force(14, 1e5, 0, 0, 1, 0), 0);
        assertEquals(0, feedback.force(14, 1e5, 0, 0, 0, 1), 0);
        assertTrue(Math.abs(feedback.force(15, 1e5, 0, 0, 0, 1)) > 0);
    }

    /**
     * With the rear wheels in the air there is no weather vane: c = 0 and θ″ = q·u, so what is left is the tracker of
     * the centre of percussion, p″ = −A₁p′ − A₀p, and the yaw is left to it.
     */
    @Test
    void withoutRearTyresTheTrackerIsLeft() {
        Feedback feedback = wagon(0.7);
        double unit = MASS * TO_REAR / WHEELBASE;
        assertEquals(-2 * DAMPING * BANDWIDTH * unit, feedback.force(V, 0, 0, 1, 0, 0), 1e-9 * unit);
        assertEquals(0, feedback.force(V, 0, 0, 0, 1, 0), 0);
        assertEquals(0, feedback.force(V, 0, 0, 0, 0, 1), 0);
    }

    /**
     * The poles are where they were asked for. The body: m·ÿ = F + F_r and Iz·θ̈ = a·F − b·F_r, with the rear axle's
     * force −C·(ẏ/v − θ − b·θ̇/v); the driver's F comes from the feedback, read off by unit errors. The coefficients of
     * the characteristic polynomial of that matrix are compared with those of (s² + A₁s + A₀)(s² + B₁s + c).
     */
    @Property
    void theClosedLoopHasThePolesThatWereAskedFor(
            @ForAll @DoubleRange(min = 700, max = 2500) double mass,
            @ForAll @DoubleRange(min = 2.2, max = 3.1) double wheelbase,
            @ForAll @DoubleRange(min = 0.4, max = 0.6) double frontShare,
            @ForAll @DoubleRange(min = 0.7, max = 1.3) double dynamicIndex,
            @ForAll @DoubleRange(min = 5, max = 25) double stiffnessPerLoad,
            @ForAll @DoubleRange(min = 5, max = 80) double speed,
            @ForAll @DoubleRange(min = 0.4, max = 1) double yawDamping) {
        double b = frontShare * wheelbase;
        double a = wheelbase - b;
        double inertia = dynamicIndex * mass * a * b;
        double rear = stiffnessPerLoad * mass * 9.81 * a / wheelbase;
        Car car = Wagon.car(0, 0, Driveline.DrivenAxle.REAR)
                .with(new Chassis(mass, wheelbase, a, 0.5, inertia, 1.5, 1.5));
        Feedback feedback = new Feedback(car, hands(yawDamping));
        double x = feedback.percussion();
        double near = 1e-6;
        double gainP = feedback.force(speed, rear, near, 0, 0, 0) / near;
        double gainDrift = feedback.force(speed, rear, 0, 1, 0, 0);
        double gainHeading = feedback.force(speed, rear, 0, 0, 1, 0);
        double gainTurning = feedback.force(speed, rear, 0, 0, 0, 1);

        // In y, ẏ, θ, θ̇ of the CG; the driver sees p = y + x·θ.
        double[] force = {gainP, gainDrift, x * gainP + gainHeading, x * gainDrift + gainTurning};
        double[] rearForce = {0, -rear / speed, rear, rear * b / speed};
        double[][] matrix = new double[4][4];
        matrix[0][1] = 1;
        matrix[2][3] = 1;
        for (int i = 0; i < 4; i++) {
            matrix[1][i] = (force[i] + rearForce[i]) / mass;
            matrix[3][i] = (a * force[i] - b * rearForce[i]) / inertia;
        }
        double c = rear / (mass * x);
        double own = c * (x + b) / speed;
        double b1 = Math.max(own, 2 * yawDamping * Math.sqrt(c));
        double a1 = 2 * DAMPING * BANDWIDTH;
        double a0 = BANDWIDTH * BANDWIDTH;
        double[] wanted = {a1 + b1, a0 + a1 * b1 + c, a0 * b1 + a1 * c, a0 * c};
        double[] found = characteristic(matrix);
        for (int i = 0; i < 4; i++) {
            assertEquals(wanted[i], found[i], 1e-6 * wanted[i], "coefficient " + i);
        }
    }

    /** Coefficients of det(s − M) below the leading one, by the method of Faddeev and LeVerrier (from memory). */
    private static double[] characteristic(double[][] matrix) {
        int n = matrix.length;
        double[] coefficients = new double[n];
        double[][] power = new double[n][n];
        for (int i = 0; i < n; i++) {
            power[i][i] = 1;
        }
        for (int k = 1; k <= n; k++) {
            double[][] product = new double[n][n];
            double trace = 0;
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    for (int m = 0; m < n; m++) {
                        product[i][j] += matrix[i][m] * power[m][j];
                    }
                }
                trace += product[i][i];
            }
            coefficients[k - 1] = -trace / k;
            for (int i = 0; i < n; i++) {
                product[i][i] += coefficients[k - 1];
            }
            power = product;
        }
        return coefficients;
    }
}
