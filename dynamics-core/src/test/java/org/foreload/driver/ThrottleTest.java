package org.foreload.driver;

import static org.foreload.driver.Wagon.FRONT;
import static org.foreload.driver.Wagon.G;
import static org.foreload.driver.Wagon.HEIGHT;
import static org.foreload.driver.Wagon.MASS;
import static org.foreload.driver.Wagon.REAR;
import static org.foreload.driver.Wagon.TO_FRONT;
import static org.foreload.driver.Wagon.TO_REAR;
import static org.foreload.driver.Wagon.WHEELBASE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.bicycle.WheelForces;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The right foot, against force balances and friction circles written out, on tyres of friction one. */
class ThrottleTest {

    private static final double DRAG_AREA = 0.8;
    private static final double USE = 0.97;
    private static final SpeedPlan EXIT = new SpeedPlan(new double[] {20, 60}, new double[] {10, 20});

    /** A plan for a corner that has long been open: what is left is what grip and engine allow. */
    private static final SpeedPlan ALL = new SpeedPlan(new double[] {20, 21}, new double[] {10, 90});

    private static final RightFoot FOOT = new RightFoot(0.1, USE, 0.98);

    private static Throttle foot(DrivenAxle driven, SpeedPlan exit) {
        return new Throttle(Wagon.car(0, DRAG_AREA, driven), exit, FOOT);
    }

    private static double drag(double speed) {
        return 0.5 * 1.2 * DRAG_AREA * speed * speed;
    }

    private static Path circle(double radius, Turn turn) {
        return SegmentPath.of(100, List.of(Segment.arc(400, radius, turn)), 100, 5);
    }

    private static final Path STRAIGHT = SegmentPath.of(900, List.of(Segment.arc(10, 50, Turn.LEFT)), 100, 5);

    /** A car that follows its circle steadily, or goes straight for a radius of infinity. */
    private static final class Motion {

        final DriverView view;
        final WheelForces wheels;
        final Steering hands;
        final double lateral;

        /** With a relaxation length of none; the hands look one lag ahead on a circle, which is the same there. */
        Motion(double station, double radius, double speed, Turn turn) {
            double sign = turn == Turn.LEFT ? 1 : -1;
            lateral = speed * speed / radius;
            double sideslip = sign * (TO_REAR / radius - MASS * TO_FRONT / WHEELBASE * lateral / REAR);
            double yawRate = sign * speed / radius;
            view = Wagon.view(station, 0, -sideslip, speed, speed * sideslip, yawRate);
            double steer = sideslip + TO_FRONT * yawRate / speed + sign * MASS * TO_REAR / WHEELBASE * lateral / FRONT;
            wheels = new WheelForces();
            Wagon.rates(speed, speed * sideslip, yawRate, steer, 0, wheels);
            Path path = Double.isInfinite(radius) ? STRAIGHT : circle(radius, turn);
            hands = new Steering(Wagon.car(0, 0, DrivenAxle.REAR), path, Hands.practised());
            hands.angle(view, wheels);
        }
    }

    private static Motion straight(double station, double speed) {
        return new Motion(station, Double.POSITIVE_INFINITY, speed, Turn.LEFT);
    }

    @Test
    void flatOutIsPowerOverSpeed() {
        WheelForces wheels = Wagon.wheels(40, 0, 0, 0);
        assertEquals(Wagon.POWER / 40, foot(DrivenAxle.REAR, EXIT).flatOut(40, wheels), 1e-9);
    }

    /** At low speed friction limits: 97 % of the driven axle's load on friction one, or of all four by quarters. */
    @Test
    void flatOutIsWhatTheDrivenWheelsCanCarry() {
        WheelForces wheels = Wagon.wheels(5, 0, 0, 0);
        double weight = MASS * G;
        double front = weight * TO_REAR / WHEELBASE;
        double rear = weight * TO_FRONT / WHEELBASE;
        assertEquals(USE * rear, foot(DrivenAxle.REAR, EXIT).flatOut(5, wheels), 1e-8);
        assertEquals(USE * front, foot(DrivenAxle.FRONT, EXIT).flatOut(5, wheels), 1e-8);
        assertEquals(USE * 2 * rear, foot(DrivenAxle.ALL, EXIT).flatOut(5, wheels), 1e-8);
        assertEquals(USE * rear, foot(DrivenAxle.REAR, EXIT).flatOut(0.1, wheels), 1e-8);
    }

    /** Each axle has its own tyres. */
    @Test
    void aGrippierRearAxleDrivesMore() {
        Car plain = Wagon.car(0, 0, DrivenAxle.REAR);
        Car car = plain.withTyres(plain.frontTyre(), plain.rearTyre().withFriction(1.1));
        WheelForces wheels = Wagon.wheels(car, 5, 0, 0, 0);
        double rear = MASS * G * TO_FRONT / WHEELBASE;
        assertEquals(USE * 1.1 * rear, new Throttle(car, EXIT, FOOT).flatOut(5, wheels), 1e-8);
    }

    @Test
    void inTheAirNothingDrives() {
        assertEquals(0, foot(DrivenAxle.REAR, EXIT).flatOut(30, new WheelForces()));
    }

    /**
     * The driven axle keeps the lateral force that the line asks of it: both wheels drive alike, and Σ √(P² − X²) of
     * two unlike wheels is what it asks, at 97 % of the friction; or the weaker wheel gives all that it may.
     */
    @ParameterizedTest
    @CsvSource({"REAR, 60, 20", "FRONT, 60, 20", "REAR, 60, 12", "FRONT, 45, 15", "REAR, 45, 19.5"})
    void theDrivenAxleKeepsItsLateralForce(DrivenAxle driven, double radius, double speed) {
        Motion motion = new Motion(100, radius, speed, Turn.RIGHT);
        int left = driven == DrivenAxle.FRONT ? 0 : 2;
        double small = Math.min(motion.wheels.load(left), motion.wheels.load(left + 1));
        double large = Math.max(motion.wheels.load(left), motion.wheels.load(left + 1));
        assertTrue(large > 1.2 * small);
        double asked =
                Math.abs(driven == DrivenAxle.FRONT ? motion.wheels.frontLateral() : motion.wheels.rearLateral());
        double arm = driven == DrivenAxle.FRONT ? TO_REAR : TO_FRONT;
        assertEquals(MASS * arm / WHEELBASE * motion.lateral, asked, 0.02 * asked);
        Car strong = Wagon.car(0, 0, driven).with(new Driveline(1e9, driven));
        double x = new Throttle(strong, ALL, FOOT).flatOut(speed, motion.wheels) / 2;
        double kept = USE * (Math.sqrt(small * small - x * x) + Math.sqrt(large * large - x * x));
        if (x < USE * small * (1 - 1e-9)) {
            assertEquals(asked, kept, 1e-6 * asked);
        } else {
            assertEquals(USE * small, x, 1e-6 * small);
            assertTrue(kept > asked);
        }
        assertTrue(x > 0.05 * small);
    }

    /** A left turn and a right one are the same to the foot. */
    @ParameterizedTest
    @EnumSource(DrivenAxle.class)
    void aMirroredTurnIsDrivenAlike(DrivenAxle driven) {
        Throttle foot = foot(driven, ALL);
        Motion left = new Motion(100, 60, 19, Turn.LEFT);
        Motion right = new Motion(100, 60, 19, Turn.RIGHT);
        assertEquals(
                foot.exit(left.view, left.wheels, left.hands), foot.exit(right.view, right.wheels, right.hands), 1e-6);
    }

    /**
     * No more than leaves the front axle what steering asks of it: once m·a·h/L have moved to the rear, 97 % of the
     * front axle's load on friction one is m·a_y·b/L.
     */
    @ParameterizedTest
    @ValueSource(doubles = {20, 22, 23.65})
    void theFrontKeepsWhatItNeedsOnceTheLoadHasMoved(double speed) {
        Motion motion = new Motion(100, 60, speed, Turn.LEFT);
        Car strong = Wagon.car(0, 0, DrivenAxle.ALL).with(new Driveline(1e9, DrivenAxle.ALL));
        double force = new Throttle(strong, ALL, FOOT).exit(motion.view, motion.wheels, motion.hands);
        // The cornering drag of the steered front is made up for; the view has straight wheels, so it is none here.
        double acceleration = force / MASS;
        double left = MASS * G * TO_REAR / WHEELBASE - MASS * acceleration * HEIGHT / WHEELBASE;
        double asked = motion.hands.askedFront(motion.view);
        assertTrue(USE * left >= asked * (1 - 1e-9), "front axle short by " + (asked - USE * left));
        if (speed > 23) {
            assertEquals(asked, USE * left, 1e-6 * asked);
            assertTrue(acceleration > 0.3);
        }
    }

    /** Off the throttle the engine slows the driven wheels by what the car's owner says; no more is ever asked. */
    @Test
    void aClosedThrottleGivesTheDragOfTheEngine() {
        Car car = Wagon.car(0, DRAG_AREA, DrivenAxle.REAR).with(new Driveline(Wagon.POWER, DrivenAxle.REAR, 640));
        Throttle foot = new Throttle(car, EXIT, FOOT);
        assertEquals(-640, foot.closed());
        Motion tooFast = straight(15, 60);
        assertEquals(-640, foot.pickUp(tooFast.view, tooFast.wheels, tooFast.hands));
        Motion full = new Motion(100, 60, 26, Turn.LEFT);
        assertEquals(-640, new Throttle(car, ALL, FOOT).exit(full.view, full.wheels, full.hands));
        assertEquals(0, foot(DrivenAxle.REAR, EXIT).closed(), 1e-12);
    }

    /**
     * Before the corner opens, an error of speed is mended at two per second, drag on top; at 10 m/s the drag alone.
     */
    @Test
    void beforeTheCornerOpensThePlanIsFollowed() {
        Throttle foot = foot(DrivenAxle.REAR, EXIT);
        Motion planned = straight(15, 10);
        assertEquals(drag(10), foot.pickUp(planned.view, planned.wheels, planned.hands), 1e-6);
        Motion slower = straight(15, 9.2);
        assertEquals(MASS * 2 * 0.8 + drag(9.2), foot.pickUp(slower.view, slower.wheels, slower.hands), 1e-6);
    }

    /** On a slope gravity's part along the road, m·g·sin γ, comes on top (statics of the inclined plane). */
    @ParameterizedTest
    @ValueSource(doubles = {0.08, -0.08})
    void uphillAndDownhillThePlannedSpeedIsHeld(double grade) {
        Car car = Wagon.car(0, DRAG_AREA, DrivenAxle.REAR).with(new Driveline(Wagon.POWER, DrivenAxle.REAR, 5000));
        Motion planned = straight(15, 10);
        planned.view.slope(G * Math.sin(grade));
        assertEquals(
                drag(10) + MASS * G * Math.sin(grade),
                new Throttle(car, EXIT, FOOT).pickUp(planned.view, planned.wheels, planned.hands),
                1e-6);
    }

    /** What the wheels push takes the load off the front axle, whatever of it gravity takes. */
    @Test
    void theFrontLeavesAsMuchDriveOnASlope() {
        Motion motion = new Motion(100, 60, 23.65, Turn.LEFT);
        Car strong = Wagon.car(0, 0, DrivenAxle.ALL).with(new Driveline(1e9, DrivenAxle.ALL));
        Throttle foot = new Throttle(strong, ALL, FOOT);
        double level = foot.exit(motion.view, motion.wheels, motion.hands);
        motion.view.slope(0.8);
        assertEquals(level, foot.exit(motion.view, motion.wheels, motion.hands), 1e-9);
    }

    /** Once it opens, the foot takes all that grip and engine give, even where the car is faster than the plan. */
    @ParameterizedTest
    @ValueSource(doubles = {12, 30})
    void onceItOpensOnlyGripAndEngineDecide(double speed) {
        assertTrue(EXIT.speed(30) < 20 && EXIT.speed(30) > 12);
        Motion motion = straight(30, speed);
        double rear = MASS * G * TO_FRONT / WHEELBASE;
        assertEquals(
                Math.min(Wagon.POWER / speed, USE * rear),
                foot(DrivenAxle.REAR, EXIT).exit(motion.view, motion.wheels, motion.hands),
                1e-6);
    }
}
