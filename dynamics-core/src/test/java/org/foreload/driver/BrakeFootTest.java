package org.foreload.driver;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.conventions.InvalidValueException;
import org.foreload.entry.SampleEntries;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;

/** The left foot, moment by moment, against its law written out. */
class BrakeFootTest {

    private static final Reaction REACTION = new Reaction(0.2, 0.3, 0.1, 0.5, 0.4, 2, 3, 0.3);
    private static final SpeedPlan EXPECTED = new SpeedPlan(new double[] {-100, 0}, new double[] {50, 30});
    private static final Car CAR = SampleEntries.LIGHT;
    private static final Car ANTI_LOCK = CAR.withAntiLock(true);
    private static final BrakeFoot FOOT =
            new BrakeFoot(CAR, LeftFoot.practised().withSlowestBraking(0.4).with(REACTION), 20, Optional.of(EXPECTED));

    /** Straight ahead at 40 m/s with this brake, m/s². */
    private static WheelForces braked(double brake) {
        return wheels(CAR, brake, 0);
    }

    /** At 40 m/s with this brake, m/s², and with this slip across at both axles. */
    private static WheelForces wheels(Car car, double brake, double slip) {
        double[] x = new double[BicycleState.SIZE];
        x[BicycleState.VX] = 40;
        x[BicycleState.PITCH_TRANSFER] = 780 * brake * 0.44 / 2.35;
        x[BicycleState.FRONT_SLIP] = slip;
        x[BicycleState.REAR_SLIP] = slip;
        WheelForces wheels = new WheelForces();
        new BicycleModel(car)
                .rates(
                        x,
                        0,
                        new Controls(0, 780 * brake, 0, WheelLocks.NONE, 0, 0),
                        wheels,
                        new double[BicycleState.SIZE]);
        return wheels;
    }

    private static double asked(double excess) {
        return 2 * (excess - 0.4 * Math.tanh(excess / 0.4));
    }

    @Test
    void asExpectedItIsThePlan() {
        assertEquals(6, FOOT.demand(6, 40, 0, 0, braked(6)));
        assertEquals(6, FOOT.asTold(6, 40));
        assertTrue(FOOT.reacts());
        assertFalse(new BrakeFoot(CAR, LeftFoot.practised(), 20, Optional.empty()).reacts());
    }

    /** With plenty of grip left a tenth too fast is not noticed, and a lot too fast adds no more than allowed. */
    @Test
    void tooFastAddsBrakeUpToTheMost() {
        WheelForces gentle = braked(4);
        assertEquals(4, FOOT.demand(4, 40, 0, 0.1, gentle), 0.01);
        assertEquals(4 + 3 * Math.tanh(asked(1) / 3), FOOT.demand(4, 40, 0, 1, gentle), 1e-9);
        assertEquals(7, FOOT.demand(4, 40, 0, 20, gentle), 1e-6);
    }

    /**
     * Who is as slow as the corner asks for adds nothing, whatever was expected: 20 m/s is where the throttle opens.
     */
    @Test
    void nobodyBrakesMoreThanPlannedToAStop() {
        BrakeFoot foot = new BrakeFoot(CAR, LeftFoot.practised().with(REACTION), 20, Optional.of(EXPECTED));
        assertEquals(7, foot.demand(4, 19, 0, 20, braked(4)), 1e-6);
        assertEquals(5.5, foot.demand(4, 17, 0, 20, braked(4)), 1e-6);
        assertEquals(4, foot.demand(4, 15, 0, 20, braked(4)), 1e-6);
    }

    /** Near what the wheels can carry it adds less, and nothing at it. */
    @Test
    void nothingIsAddedNearTheLimit() {
        double limit = 0;
        while (braked(limit).lockMargin(0) > 1 && braked(limit).lockMargin(2) > 1) {
            limit += 0.01;
        }
        double before = 3;
        for (double share : new double[] {0.8, 0.85, 0.88, 0.91, 0.94, 0.98}) {
            double peak = share * limit;
            double added = FOOT.demand(peak, 40, 0, 20, braked(peak)) - peak;
            assertTrue(added <= before + 1e-9, "at " + share);
            before = added;
        }
        assertEquals(0, before, 1e-12);
    }

    /**
     * With anti-lock brakes who is too fast presses on, held back or not: so drivers of such cars are taught (common
     * practice, no source). Only what the tyres give across takes from that: an axle that is full across leaves the
     * foot nothing to add.
     */
    @Test
    void withAntiLockBrakesOnlyTheLateralForceLimitsWhatIsAdded() {
        BrakeFoot foot = new BrakeFoot(ANTI_LOCK, LeftFoot.practised().with(REACTION), 20, Optional.of(EXPECTED));
        WheelForces heldBack = wheels(ANTI_LOCK, 20, 0);
        assertTrue(-heldBack.longitudinal(0) < 780 * 20 * CAR.frontBrakeShare() / 2, "front wheels are held back");
        assertEquals(20 + 3 * Math.tanh(asked(1) / 3), foot.demand(20, 40, 0, 1, heldBack), 1e-9);
        double before = 3;
        for (double slip : new double[] {0.02, 0.06, 0.1, 0.15, 0.2}) {
            WheelForces turning = wheels(ANTI_LOCK, 4, slip);
            double added = foot.demand(4, 40, 0, 20, turning) - 4;
            double across = Math.max(across(turning, 0), across(turning, 2));
            assertEquals(3 * (1 - risen((across - 0.86) / (0.97 - 0.86))), added, 1e-6, "slip " + slip);
            assertTrue(added <= before, "at " + slip);
            before = added;
        }
        assertEquals(0, before, 1e-12, "full across");
    }

    /** Lateral force of an axle over the sum of its wheels' peaks. */
    private static double across(WheelForces wheels, int left) {
        return (Math.abs(wheels.lateral(left)) + Math.abs(wheels.lateral(left + 1)))
                / (wheels.peakY(left) + wheels.peakY(left + 1));
    }

    /** The smooth step 3x² − 2x³ between 0 and 1. */
    private static double risen(double x) {
        double inside = Math.min(1, Math.max(0, x));
        return inside * inside * (3 - 2 * inside);
    }

    /** Too slow leaves out a share of the plan, at most the one stated, and of nothing it leaves out nothing. */
    @Test
    void tooSlowLeavesOutAShare() {
        WheelForces wheels = braked(6);
        assertEquals(6 - 1.8 * Math.tanh(asked(1) / 1.8), FOOT.demand(6, 40, 0, -1, wheels), 1e-9);
        assertEquals(6 * 0.7, FOOT.demand(6, 40, 0, -20, wheels), 1e-6);
        assertEquals(0, FOOT.demand(0, 40, 0, -20, wheels));
    }

    @Test
    void easedAndSlowItComesOff() {
        assertEquals(6 * 0.75, FOOT.demand(6, 40, 0.25, 0, braked(6)), 1e-12);
        assertEquals(0, FOOT.demand(6, 40, 1, 0, braked(6)));
        assertEquals(3, FOOT.demand(6, 12, 0, 0, braked(6)), 1e-12);
        assertEquals(3, FOOT.asTold(6, 12), 1e-12);
        assertEquals(0, FOOT.asTold(6, 8));
    }

    /** Nothing happens before the delay is over; then the brake comes off with its time constant. */
    @Test
    void aStoppedWheelIsEasedAfterTheDelay() {
        WheelForces wheels = braked(4);
        assertEquals(0, FOOT.easing(0, 0.19, wheels));
        assertEquals(5, FOOT.easing(0, 0.225, wheels), 1e-9);
        assertEquals(10, FOOT.easing(0, 0.3, wheels), 1e-12);
        assertEquals(4, FOOT.easing(0.6, 0.3, wheels), 1e-12);
        assertEquals(-1.2, FOOT.easing(0.6, Double.NaN, wheels), 1e-12);
    }

    /** What is perceived runs after what is: a first-order lag. Beyond the plan nothing is expected. */
    @Test
    void speedIsPerceivedLate() {
        double planned = Math.sqrt((50 * 50 + 30 * 30) / 2.0);
        assertEquals(planned, EXPECTED.speed(-50), 1e-12);
        assertEquals((2 - 0.5) / 0.2, FOOT.perceiving(0.5, -50, planned + 2), 1e-9);
        assertEquals(-0.5 / 0.2, FOOT.perceiving(0.5, 1, 40), 1e-12);
        assertEquals(0, FOOT.expectedUpTo());
    }

    @Test
    void reactionsAreChecked() {
        assertFalse(Reaction.NONE.reacts());
        assertTrue(Reaction.practised().reacts());
        InvalidValueException error =
                assertThrows(InvalidValueException.class, () -> new Reaction(0.2, 0.3, 0, 0.5, 0.4, 2, 3, 0.3));
        assertEquals("easing_s", error.field());
        assertThrows(InvalidValueException.class, () -> new Reaction(Double.NaN, 0.3, 0.1, 0.5, 0.4, 2, 3, 0.3));
        assertThrows(InvalidValueException.class, () -> new Reaction(0.2, 0.3, 0.1, 0.5, 0.4, 2, 3, 1.3));
    }
}
