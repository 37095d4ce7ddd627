package org.foreload.handling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.load.Wheel;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A car whose anti-lock brakes hold its inner wheels back while it corners. */
class HeldBackTest {

    private static final double SPEED = 30;
    private static final double LATERAL = 4;

    private static final Car CAR = new Car(
                    "heavy",
                    new Chassis(2050, 2.98, 1.45, 0.56, 3700, 1.61, 1.6),
                    new Suspension(0.6, 0.05, 0.1, new Response(1.4, 0.35), new Response(1.4, 0.35)),
                    new Aerodynamics(0.65, -0.05, -0.1, 1.2, 0.6),
                    0.68,
                    new Driveline(280e3, DrivenAxle.REAR),
                    tyre(1, 16, 20),
                    tyre(1.03, 19, 22))
            .withAntiLock(true);

    private static FrictionTyre tyre(double across, double cornering, double slip) {
        return new FrictionTyre(new SlipCurve.MagicFormula(1.4, 0.2), 1.05, across, 0.1, 5000, 0.5, cornering, slip);
    }

    private static Trim trim(double deceleration, double lateral) {
        return Trim.find(CAR, SPEED, deceleration, lateral).orElseThrow();
    }

    /** Held back is who brakes less than the pedal asks, and only that; forces of the equations of motion. */
    @ParameterizedTest
    @ValueSource(doubles = {2, 6, 7, 7.1, 7.2, 7.6, 8})
    void heldBackIsWhoBrakesLessThanThePedalAsks(double deceleration) {
        Trim trim = trim(deceleration, LATERAL);
        WheelForces wheels = new WheelForces();
        rates(trim, trim.state(), wheels);
        for (Wheel wheel : Wheel.values()) {
            double share = wheel.front() ? 0.68 : 0.32;
            double asked = -trim.brakeForce() * share / 2;
            boolean less = wheels.longitudinal(wheel.ordinal()) > asked + 1e-6 * trim.brakeForce();
            assertEquals(less, trim.heldBack().contains(wheel), wheel.toString());
        }
    }

    private static double[] rates(Trim trim, double[] state, WheelForces wheels) {
        double[] rate = new double[BicycleState.SIZE];
        Controls controls = new Controls(trim.steer(), trim.brakeForce(), trim.driveForce(), WheelLocks.NONE, 0, 0);
        new BicycleModel(CAR).rates(state, 0, controls, wheels, rate);
        return rate;
    }

    /** A gentle brake is held back nowhere, a harder one at the light inner wheels first; without anti-lock none is. */
    @Test
    void theInnerWheelsAreHeldBackFirst() {
        assertEquals(Set.of(), trim(5, LATERAL).heldBack());
        assertEquals(
                Set.of(Wheel.FRONT_LEFT, Wheel.REAR_LEFT), trim(7.2, LATERAL).heldBack());
        assertEquals(
                Set.of(Wheel.FRONT_RIGHT, Wheel.REAR_RIGHT), trim(7.2, -LATERAL).heldBack());
        assertEquals(
                Set.of(),
                Trim.find(CAR.withAntiLock(false), SPEED, 5, LATERAL)
                        .orElseThrow()
                        .heldBack());
    }

    /**
     * The growth rate, on either side of where the inner rear wheel begins to be held back, against the equations of
     * motion stepped through time (C. Runge, W. Kutta) from a small disturbance, with speed and pitch held as in every
     * linear model of handling.
     */
    @ParameterizedTest
    @ValueSource(doubles = {7, 7.1, 7.16, 7.2, 7.4})
    void theGrowthRateIsThatOfTheMotionItself(double deceleration) {
        Trim trim = trim(deceleration, LATERAL);
        double growth = LinearHandling.of(trim).laggedEigenvalues().get(0).real();
        assertEquals(growth, stepped(trim), 0.03);
    }

    private static double stepped(Trim trim) {
        double[] start = trim.state();
        double[] rest = rates(trim, start, new WheelForces());
        double[] x = start.clone();
        x[BicycleState.YAW_RATE] += 1e-9;
        double step = 5e-4;
        double early = 0;
        for (int i = 0; i <= 6000; i++) {
            if (i == 5000) {
                early = Math.abs(x[BicycleState.YAW_RATE] - start[BicycleState.YAW_RATE]);
            }
            if (i == 6000) {
                break;
            }
            double[] first = held(trim, x, rest);
            double[] second = held(trim, moved(x, first, step / 2), rest);
            double[] third = held(trim, moved(x, second, step / 2), rest);
            double[] fourth = held(trim, moved(x, third, step), rest);
            for (int k = 0; k < x.length; k++) {
                x[k] += step / 6 * (first[k] + 2 * second[k] + 2 * third[k] + fourth[k]);
            }
        }
        double late = Math.abs(x[BicycleState.YAW_RATE] - start[BicycleState.YAW_RATE]);
        return Math.log(late / early) / (1000 * step);
    }

    private static double[] held(Trim trim, double[] state, double[] rest) {
        double[] rate = rates(trim, state, new WheelForces());
        for (int k = 0; k < rate.length; k++) {
            rate[k] -= rest[k];
        }
        rate[BicycleState.VX] = 0;
        rate[BicycleState.PITCH_TRANSFER] = 0;
        rate[BicycleState.PITCH_TRANSFER_RATE] = 0;
        return rate;
    }

    private static double[] moved(double[] state, double[] rate, double step) {
        double[] moved = state.clone();
        for (int k = 0; k < moved.length; k++) {
            moved[k] += step * rate[k];
        }
        return moved;
    }

    /**
     * The gradient by hand: that of the textbooks, m/L (b/C_f − a/C_r), and the steer that it takes against the moment
     * of the brake forces about the vertical axis, which each axle must bear as a pair of lateral forces over the
     * wheelbase: −(dM/da)/L (1/C_f + 1/C_r). The first alone has the other sign. Moments and forces of two neighbouring
     * motions; what load and brake do to the two stiffnesses is left out, and is less than a third of the first.
     */
    @Test
    void theMomentOfTheHeldBackWheelsMakesTheCarUndersteer() {
        Trim trim = trim(7.2, LATERAL);
        LateralModel model = LateralModel.at(trim.point());
        double compliance = 1 / model.frontStiffness() + 1 / model.rearStiffness();
        double textbook = 2050 / 2.98 * (1.53 / model.frontStiffness() - 1.45 / model.rearStiffness());
        double step = 1e-3;
        double perLateral = (moment(trim(7.2, LATERAL + step)) - moment(trim(7.2, LATERAL - step))) / (2 * step);
        double byHand = textbook - perLateral / 2.98 * compliance;
        assertTrue(textbook < -0.005, "textbook " + textbook);
        assertTrue(trim.understeerGradient() > 0);
        assertEquals(byHand, trim.understeerGradient(), Math.abs(textbook) / 3);
    }

    /** Moment of the forces along the wheels about the vertical axis, N m, positive to the left. */
    private static double moment(Trim trim) {
        WheelForces wheels = new WheelForces();
        rates(trim, trim.state(), wheels);
        return 1.61 / 2 * (wheels.longitudinal(1) - wheels.longitudinal(0))
                + 1.6 / 2 * (wheels.longitudinal(3) - wheels.longitudinal(2));
    }
}
