package org.foreload.handling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.conventions.InvalidValueException;
import org.foreload.load.LoadTransfer;
import org.foreload.load.SampleCars;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;

/** Trims against the equations of motion, and the linear model against differences of those equations. */
class TrimTest {

    /** The road car with a body that takes its time, so that loads are states and can be held. */
    static final Car SPRUNG =
            SampleCars.ROAD_CAR.with(new Suspension(0.55, 0.03, 0.06, new Response(1.5, 0.4), new Response(1.6, 0.4)));

    private static double[] rates(Car car, double[] state, Controls controls) {
        double[] rate = new double[BicycleState.SIZE];
        new BicycleModel(car).rates(state, 0, controls, new WheelForces(), rate);
        return rate;
    }

    private static Controls controls(Trim trim) {
        return new Controls(trim.steer(), trim.brakeForce(), trim.driveForce(), WheelLocks.NONE, 0, 0);
    }

    private static double[] state(Trim trim) {
        OperatingPoint point = trim.point();
        double[] state = new double[BicycleState.SIZE];
        state[BicycleState.VX] = point.vx();
        state[BicycleState.VY] = point.vy();
        state[BicycleState.YAW_RATE] = point.yawRate();
        LoadTransfer transfer = LoadTransfer.of(trim.car());
        state[BicycleState.PITCH_TRANSFER] =
                trim.loads().frontAxle() - transfer.frontAxle(9.81, point.vx() * point.vx());
        state[BicycleState.ROLL_ACCELERATION] =
                (trim.loads().frontRight() - trim.loads().frontLeft()) / 2 / transfer.frontLateral(1);
        state[BicycleState.FRONT_SLIP] = point.frontSlip();
        state[BicycleState.REAR_SLIP] = point.rearSlip();
        return state;
    }

    /** In a trim sideslip and yaw rate hold still, speed falls as asked, and loads have nowhere to go. */
    @Property(edgeCases = EdgeCasesMode.NONE)
    void aTrimIsSteady(
            @ForAll @DoubleRange(min = 8, max = 55) double speed,
            @ForAll @DoubleRange(min = -8, max = 8) double lateral,
            @ForAll @DoubleRange(min = -1, max = 7) double deceleration) {
        Optional<Trim> found = Trim.find(SPRUNG, speed, deceleration, lateral);
        if (found.isEmpty()) {
            double asked = Math.hypot(lateral, deceleration);
            assertTrue(asked > 5, "no trim for an easy " + lateral + " and " + deceleration);
            return;
        }
        Trim trim = found.get();
        double[] state = state(trim);
        double[] rate = rates(SPRUNG, state, controls(trim));
        double vx = state[BicycleState.VX];
        double vy = state[BicycleState.VY];
        assertEquals(-deceleration, (vx * rate[BicycleState.VX] + vy * rate[BicycleState.VY]) / speed, 1e-7);
        assertEquals(0, (vx * rate[BicycleState.VY] - vy * rate[BicycleState.VX]) / (speed * speed), 1e-8);
        assertEquals(0, rate[BicycleState.YAW_RATE], 1e-8);
        assertEquals(0, rate[BicycleState.PITCH_TRANSFER_RATE], 1e-2);
        assertEquals(0, rate[BicycleState.ROLL_ACCELERATION_RATE], 1e-5);
        assertEquals(0, rate[BicycleState.FRONT_SLIP], 1e-8);
        assertEquals(0, rate[BicycleState.REAR_SLIP], 1e-8);
        assertEquals(speed * speed * trim.curvature(), lateral, 1e-9);
    }

    /**
     * The written-out matrix against differences of the equations of motion, loads and relaxed slip held at true slip.
     */
    @Property(tries = 60, edgeCases = EdgeCasesMode.NONE)
    void theMatrixIsThatOfTheEquationsOfMotion(
            @ForAll @DoubleRange(min = 10, max = 50) double speed,
            @ForAll @DoubleRange(min = -6, max = 6) double lateral,
            @ForAll @DoubleRange(min = -0.5, max = 5) double deceleration) {
        var tyre = ((org.foreload.tyre.FrictionTyre) SPRUNG.frontTyre()).withRelaxationLength(0);
        Car car = SPRUNG.withTyres(tyre, tyre);
        Optional<Trim> found = Trim.find(car, speed, deceleration, lateral);
        if (found.isEmpty()) {
            return;
        }
        Trim trim = found.get();
        LateralModel model = LateralModel.at(trim.point());
        double[] state = state(trim);
        double step = 1e-5;
        double[] perSpeed = difference(car, trim, state, BicycleState.VY, step);
        double[] perYaw = difference(car, trim, state, BicycleState.YAW_RATE, step);
        double[] perSteer = steered(car, trim, state, step);
        double[][] pairs = {
            {model.a11(), perSpeed[BicycleState.VY]},
            {model.a12(), perYaw[BicycleState.VY]},
            {model.a21(), perSpeed[BicycleState.YAW_RATE]},
            {model.a22(), perYaw[BicycleState.YAW_RATE]},
            {model.b1(), perSteer[BicycleState.VY]},
            {model.b2(), perSteer[BicycleState.YAW_RATE]}
        };
        for (double[] pair : pairs) {
            // A central difference over 1e-5 leaves the kink of the brush curve at zero slip: some 1e-4.
            assertEquals(pair[1], pair[0], 1e-3 * (1 + Math.abs(pair[1])));
        }
    }

    private static double[] difference(Car car, Trim trim, double[] state, int index, double step) {
        double[] up = state.clone();
        double[] down = state.clone();
        up[index] += step;
        down[index] -= step;
        return slope(rates(car, up, controls(trim)), rates(car, down, controls(trim)), step);
    }

    private static double[] steered(Car car, Trim trim, double[] state, double step) {
        Controls up = new Controls(trim.steer() + step, trim.brakeForce(), trim.driveForce(), WheelLocks.NONE, 0, 0);
        Controls down = new Controls(trim.steer() - step, trim.brakeForce(), trim.driveForce(), WheelLocks.NONE, 0, 0);
        return slope(rates(car, state, up), rates(car, state, down), step);
    }

    private static double[] slope(double[] up, double[] down, double step) {
        double[] slope = new double[up.length];
        for (int i = 0; i < slope.length; i++) {
            slope[i] = (up[i] - down[i]) / (2 * step);
        }
        return slope;
    }

    /** The gradient, found by implicit differentiation, against two neighbouring trims. */
    @Test
    void theGradientIsTheSlopeOfSteerOverLateralAcceleration() {
        double speed = 28;
        double deceleration = 3;
        double step = 1e-3;
        Trim low = Trim.find(SPRUNG, speed, deceleration, 4 - step).orElseThrow();
        Trim high = Trim.find(SPRUNG, speed, deceleration, 4 + step).orElseThrow();
        double expected = (high.steer() - low.steer()) / (2 * step) - 2.6 / (speed * speed);
        double gradient =
                Trim.find(SPRUNG, speed, deceleration, 4).orElseThrow().understeerGradient();
        assertEquals(expected, gradient, 1e-6 * Math.abs(expected) + 1e-9);
    }

    @Test
    void aRightTurnMirrorsALeftOne() {
        Trim left = Trim.find(SPRUNG, 25, 2, 5).orElseThrow();
        Trim right = Trim.find(SPRUNG, 25, 2, -5).orElseThrow();
        assertEquals(left.steer(), -right.steer(), 1e-9);
        assertEquals(left.sideslip(), -right.sideslip(), 1e-9);
        assertEquals(left.loads().frontLeft(), right.loads().frontRight(), 1e-4);
        assertEquals(left.understeerGradient(), right.understeerGradient(), 1e-8);
    }

    /** In a straight line force is mass times deceleration less drag, whatever the tyres. */
    @Test
    void inAStraightLineTheBrakesDoWhatDragDoesNot() {
        Trim trim = Trim.find(SPRUNG, 40, 5, 0).orElseThrow();
        assertEquals(1400 * 5 - 0.5 * 1.2 * 0.68 * 1600, trim.brakeForce(), 1e-4);
        assertEquals(0, trim.driveForce());
        assertEquals(0, trim.steer(), 1e-10);
    }

    @Test
    void thereIsNoTrimBeyondTheGrip() {
        assertTrue(Trim.find(SPRUNG, 30, 0, 14).isEmpty());
        assertTrue(Trim.find(SPRUNG, 30, 13, 0).isEmpty());
        assertTrue(Trim.find(SPRUNG, 30, 9, 9).isEmpty());
    }

    @Test
    void numbersThatAreNoneAreRefused() {
        assertThrows(InvalidValueException.class, () -> Trim.find(SPRUNG, 0, 1, 1));
        assertThrows(InvalidValueException.class, () -> Trim.find(SPRUNG, Double.NaN, 1, 1));
        assertThrows(InvalidValueException.class, () -> Trim.find(SPRUNG, 30, 1, Double.NaN));
        assertThrows(InvalidValueException.class, () -> Trim.find(SPRUNG, 30, Double.POSITIVE_INFINITY, 1));
        assertThrows(InvalidValueException.class, () -> Trim.find(SampleCars.pointMass(1), 30, 1, 1));
    }

    /** Speed, deceleration, lateral acceleration: the order of {@code Motion.steady} and {@code LoadTransfer}. */
    @Test
    void theArgumentsComeInTheOrderOfAMotion() {
        Trim trim = Trim.find(SPRUNG, 30, 2, 3).orElseThrow();
        assertEquals(2, trim.deceleration());
        assertEquals(3, trim.lateralAcceleration());
    }
}
