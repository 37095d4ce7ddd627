package org.foreload.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryEvent.Kind;
import org.foreload.path.Path;
import org.foreload.pedal.LockingRamp;
import org.foreload.strategy.CornerStudy;
import org.foreload.trace.Trace;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;

/** Anti-lock brakes: no wheel is slowed by more than 95 % of what it carries rolling, and none stops. */
class AntiLockTest {

    private static final double SHARE = 0.95;
    private static final Car PLAIN = SampleEntries.LIGHT;
    private static final Car CAR = PLAIN.withAntiLock(true);

    /** In a bend at 30 m/s with this brake force, N, and this drive force, N. */
    private static WheelForces moment(Car car, double[] x, double brake, double drive) {
        WheelForces wheels = new WheelForces();
        new BicycleModel(car)
                .rates(
                        x,
                        0,
                        new Controls(0.03, brake, drive, WheelLocks.NONE, 0, 0),
                        wheels,
                        new double[BicycleState.SIZE]);
        return wheels;
    }

    private static double[] bend() {
        double[] x = new double[BicycleState.SIZE];
        x[BicycleState.VX] = 30;
        x[BicycleState.YAW_RATE] = 0.2;
        x[BicycleState.ROLL_ACCELERATION] = 6;
        x[BicycleState.PITCH_TRANSFER] = 600;
        x[BicycleState.FRONT_SLIP] = -0.03;
        x[BicycleState.REAR_SLIP] = -0.025;
        return x;
    }

    @Test
    void eachWheelIsHeldToItsShare() {
        double[] x = bend();
        for (double drive : new double[] {0, -400}) {
            WheelForces wheels = moment(CAR, x, 60_000, drive);
            for (int wheel = 0; wheel < 4; wheel++) {
                Tyre tyre = wheel < 2 ? CAR.frontTyre() : CAR.rearTyre();
                double slip = x[wheel < 2 ? BicycleState.FRONT_SLIP : BicycleState.REAR_SLIP];
                double carries = tyre.rollingForceLimit(slip, wheels.load(wheel));
                assertEquals(-SHARE * carries, wheels.longitudinal(wheel), 1e-6 * carries, "wheel " + wheel);
                assertTrue(wheels.lockMargin(wheel) > 0.04 * carries);
                assertTrue(Math.abs(wheels.lateral(wheel)) > 0);
            }
        }
    }

    @Test
    void aBrakeThatStopsNothingIsLeftAlone() {
        double[] x = bend();
        WheelForces with = moment(CAR, x, 2000, 0);
        WheelForces without = moment(PLAIN, x, 2000, 0);
        for (int wheel = 0; wheel < 4; wheel++) {
            assertEquals(without.longitudinal(wheel), with.longitudinal(wheel));
            // Each by itself, off the curve, and two at once, off a table of shares.
            assertEquals(without.lateral(wheel), with.lateral(wheel), 1e-6 * without.peakY(wheel));
        }
    }

    /**
     * A tyre that is slowed less gives more across, up to its peak (friction ellipse; H. B. Pacejka, ch. 1, from
     * memory), and the control slows it less as soon as it slips across: only the lateral force counts. Not so without
     * the control, nor for a wheel that drives.
     */
    @Test
    void whatTheControlGivesBackDoesNotCount() {
        double[] x = bend();
        for (double brake : new double[] {5000, 60_000}) {
            WheelForces braked = moment(CAR, x, brake, 0);
            double rear = Math.abs(braked.rearLateral()) / (braked.peakY(2) + braked.peakY(3));
            assertEquals(rear, new Fullness(BEND, true).bound(braked, 2), 1e-12);
            assertTrue(new Fullness(BEND, false).bound(braked, 2) > rear + 0.05);
        }
        WheelForces driven = moment(CAR, x, 0, 3000);
        assertEquals(new Fullness(BEND, false).bound(driven, 2), new Fullness(BEND, true).bound(driven, 2));
    }

    private static final Path BEND = SampleEntries.medium(50).path();

    @Test
    void aFootThatIsFarTooHardMakesTheCorner() {
        CornerStudy plain = CornerStudy.of(PLAIN, SampleEntries.medium(50));
        CornerStudy held = CornerStudy.of(CAR, SampleEntries.medium(50));
        double limit = plain.lockLimit();
        BrakePlan hard = Braking.of(1.5 * limit, 0.25, new Release(ReleaseShapes.LINEAR, -40, -10))
                .from(-115);
        assertFalse(plain.simulator().run(hard).made());
        EntryResult entry = held.simulator().run(hard);
        assertEquals(Outcome.MADE_IT, entry.outcome(), entry.cause());
        assertTrue(entry.events().stream()
                .noneMatch(event -> event.kind() == Kind.FRONT_LOCKS || event.kind() == Kind.REAR_LOCKS));
        assertEquals(Double.POSITIVE_INFINITY, entry.lockReserve());
        var deceleration = entry.profile().orElseThrow().column("deceleration_mps2");
        double most = 0;
        for (int i = 0; i < deceleration.size(); i++) {
            most = Math.max(most, deceleration.at(i));
        }
        assertTrue(most > SHARE * limit, most + " of " + limit);
    }

    /**
     * Newton's law on a level straight: what the wheels put on the road is the deceleration, less the drag, and what is
     * left of the throttle; it is less than the pedal asks for. Each front wheel then has √(1 − 0.95²) of its lateral
     * peak left (friction ellipse; H. B. Pacejka, ch. 1, from memory), and one that stands still nothing.
     */
    @Test
    void theProfileSaysWhatTheWheelsPutOnTheRoad() {
        BrakePlan hard =
                Braking.of(20, 0.25, new Release(ReleaseShapes.LINEAR, -30, -5)).from(-115);
        for (Car car : new Car[] {CAR, PLAIN}) {
            Trace profile = CornerStudy.of(car, SampleEntries.medium(50))
                    .simulator()
                    .run(hard)
                    .profile()
                    .orElseThrow();
            int rows = 0;
            for (int i = 0; i < profile.rows(); i++) {
                double s = profile.column("s_m").at(i);
                double locked = profile.column("locked_wheels").at(i);
                if (s < -90 || s > -40 || !car.antiLock() && locked != 15) {
                    continue;
                }
                rows++;
                double speed = profile.column("speed_mps").at(i);
                double drag = 0.5 * 1.2 * 0.6 * speed * speed / 780;
                double drive = profile.column("drive_mps2").at(i);
                double onRoad = profile.column("brake_on_road_mps2").at(i);
                assertEquals(profile.column("deceleration_mps2").at(i) - drag + drive, onRoad, 1e-6, "at " + s);
                assertTrue(onRoad < profile.column("brake_mps2").at(i) - 1, "at " + s);
                double peak = car.frontTyre()
                                .peakForceY(profile.column("front_left_load_n").at(i))
                        + car.frontTyre()
                                .peakForceY(profile.column("front_right_load_n").at(i));
                double left = car.antiLock() ? Math.sqrt(1 - SHARE * SHARE) * peak : 0;
                assertEquals(left, profile.column("front_beside_brake_n").at(i), 1e-4 * peak, "at " + s);
            }
            assertTrue(rows > 10, rows + " rows");
        }
    }

    @Test
    void nothingLocksFirst() {
        assertTrue(LockingRamp.of(PLAIN, 40).isPresent());
        assertTrue(LockingRamp.of(CAR, 40).isEmpty());
    }

    @Test
    void everyCopyKeepsIt() {
        assertTrue(CAR.antiLock());
        assertFalse(PLAIN.antiLock());
        assertEquals(PLAIN, CAR.withAntiLock(false));
        assertTrue(CAR.with(CAR.chassis())
                .with(CAR.suspension())
                .with(CAR.aerodynamics())
                .with(CAR.driveline())
                .withFrontBrakeShare(0.7)
                .withTyres(CAR.rearTyre(), CAR.frontTyre())
                .antiLock());
    }
}
