package org.foreload.grip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.foreload.conventions.InvalidValueException;
import org.foreload.load.SampleCars;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.junit.jupiter.api.Test;

class GripLimitsTest {

    private static final double G = 9.81;

    private static GripLimits pointMass(double friction) {
        return GripLimits.of(SampleCars.pointMass(friction));
    }

    /** Schaum's Outline of College Physics, 11th ed., ch. 3: μ 0.90 from 20 m/s: 8.829 m/s², 22.65 m. */
    @Test
    void stopAtTheFrictionLimit() {
        AccelerationRange range =
                pointMass(0.9).accelerationRange(400, 0, 0, 0, 0).orElseThrow();
        assertEquals(-8.829, range.lowest(), 1e-6);
        assertEquals(22.65, 400 / (2 * -range.lowest()), 0.005);
    }

    /** R 20 m, μ 0.5: v² = μgR. */
    @Test
    void skidsAtTheLimitSpeedOfAFlatBend() {
        GripUse use = pointMass(0.5).use(Motion.onLine(9.90454, 0, 1 / 20.0, 0, 0, 0));
        assertEquals(1, use.utilisation(), 1e-5);
    }

    /** Highway design: R = V²/(127(e + f)), 100 km/h, e 8 %, f 0.12: 393.70 m for small angles with g = 9.80. */
    @Test
    void bankedBend() {
        double speed = 100 / 3.6;
        double banking = Math.atan(0.08);
        // The same balance without the small-angle simplification: v²/(gR) = (e + f)/(1 − e·f).
        double radius = speed * speed / G * (1 - 0.08 * 0.12) / (0.08 + 0.12);
        assertEquals(393.70, radius, 0.011 * radius);
        GripUse use = pointMass(0.12).use(Motion.onLine(speed, 0, 1 / radius, 0, 0, banking));
        assertEquals(1, use.front().utilisation(), 1e-9);
        assertEquals(1, use.rear().utilisation(), 1e-9);
    }

    /** Derived: v = √(μg/(1/R − μk)), k = ρ·ClA/(2m): 53.780882 m/s, and 39.618178 m/s without downforce. */
    @Test
    void downforceCorner() {
        Car car = SampleCars.pointMass(1.6)
                .with(new Chassis(750, 2.5, 1.25, 0, 0, 1.5, 1.5))
                .with(new Aerodynamics(0, 1.75, 1.75, 1.225, 0));
        assertEquals(
                1,
                GripLimits.of(car)
                        .use(Motion.onLine(53.780882, 0, 0.01, 0, 0, 0))
                        .utilisation(),
                1e-7);
        assertEquals(
                1,
                pointMass(1.6).use(Motion.onLine(39.618178, 0, 0.01, 0, 0, 0)).utilisation(),
                1e-7);
    }

    /** Jazar, eq. 2.120: with μ = 1 on all wheels, 100 km/h take 2.83 s. */
    @Test
    void fullDriveFriction() {
        double acceleration =
                pointMass(1).accelerationRange(400, 0, 0, 0, 0).orElseThrow().highest();
        assertEquals(2.83, 100 / 3.6 / acceleration, 0.005);
    }

    /** Traction with load transfer: front μg(b/L)/(1 + μh/L), rear μg(a/L)/(1 − μh/L); 2.88903 and 4.23085 m/s². */
    @Test
    void tractionLimits() {
        Car car = SampleCars.pointMass(0.7).with(new Chassis(1800, 2.6, 1.3, 0.7, 0, 1.5, 1.5));
        Car front = car.with(new Driveline(1e9, DrivenAxle.FRONT));
        Car rear = car.with(new Driveline(1e9, DrivenAxle.REAR));
        assertEquals(
                2.88903,
                GripLimits.of(front)
                        .accelerationRange(100, 0, 0, 0, 0)
                        .orElseThrow()
                        .highest(),
                1e-5);
        assertEquals(
                4.23085,
                GripLimits.of(rear)
                        .accelerationRange(100, 0, 0, 0, 0)
                        .orElseThrow()
                        .highest(),
                1e-5);
    }

    /** Power over force: 100 kW at 50 m/s are 2000 N. */
    @Test
    void powerLimitsDriving() {
        Car car = SampleCars.pointMass(1).with(new Driveline(100_000, DrivenAxle.ALL));
        AccelerationRange range =
                GripLimits.of(car).accelerationRange(2500, 0, 0, 0, 0).orElseThrow();
        assertEquals(2000 / 1200.0, range.highest(), 1e-12);
        assertEquals(0.6, GripLimits.of(car).use(Motion.steady(50, -1, 0)).powerUtilisation(), 1e-12);
    }

    /** Friction circle: with friction 1 everywhere, utilisation is √(d² + a²)/g on every axle. */
    @Test
    void pointMassUtilisationIsTheFrictionCircle() {
        GripUse use = pointMass(1).use(Motion.steady(30, 5, 6));
        assertEquals(Math.hypot(5, 6) / G, use.front().utilisation(), 1e-12);
        assertEquals(Math.hypot(5, 6) / G, use.rear().utilisation(), 1e-12);
        assertEquals(Math.hypot(5, 6) / G, use.front().adhesion(), 1e-12);
    }

    /** Balance of moments: the front axle starts the rotation, Iz·ψ″/L, and the rear axle is relieved by as much. */
    @Test
    void frontAxleStartsTheYaw() {
        Car car = SampleCars.ROAD_CAR;
        double speed = 30;
        GripUse use = GripLimits.of(car).use(Motion.onLine(speed, 4, 0.01, 0.001, 0, 0));
        double yaw = speed * speed * 0.001 - 4 * 0.01;
        double lateral = speed * speed * 0.01;
        assertEquals((1400 * lateral * 1.38 + 2200 * yaw) / 2.6, use.front().lateralDemand(), 1e-9);
        assertEquals((1400 * lateral * 1.22 - 2200 * yaw) / 2.6, use.rear().lateralDemand(), 1e-9);
    }

    /** Equal brake torque: in a corner the inner wheel, with less load, decides the utilisation of the axle. */
    @Test
    void insideWheelLocksFirst() {
        Car car = SampleCars.ROAD_CAR;
        GripUse use = GripLimits.of(car).use(new Motion(30, 9, 2, 0, 0, 0));
        double inner = use.loads().frontLeft();
        double locked = use.front().longitudinalForce() / 2 / car.frontTyre().peakForceX(inner);
        assertTrue(use.loads().frontRight() > inner);
        assertEquals(locked, use.front().utilisation(), 1e-12);
    }

    @Test
    void brakedWheelWithoutLoadIsOverEveryLimit() {
        Car tall = SampleCars.pointMass(1).with(new Chassis(1500, 2.5, 1.25, 1.2, 0, 1.4, 1.4));
        GripUse use = GripLimits.of(tall).use(Motion.steady(20, 1, 9));
        assertEquals(Double.POSITIVE_INFINITY, use.front().utilisation());
        assertFalse(use.feasible());
        assertTrue(
                Double.isFinite(GripLimits.of(tall).use(Motion.steady(20, 0, 9)).utilisation()));
    }

    /** Gentle braking makes a speed feasible that coasting does not: the range lies wholly on the braking side. */
    @Test
    void feasibleOnlyWhileBraking() {
        Car frontLimited = SampleCars.ROAD_CAR
                .with(Aerodynamics.NONE)
                .withTyres(SampleCars.tyre(1.15, 0.95, 0.05), SampleCars.tyre(1.2, 1.3, 0.05));
        LocalGrip grip = GripLimits.of(frontLimited).at(0.02, 0, 0, 0);
        double coasting = grip.atAcceleration(0, 1).edgeFrom(0, 10, 1e4);
        AccelerationRange range = grip.accelerationRange(1.01 * coasting, 1).orElseThrow();
        assertTrue(range.highest() < 0);
        assertTrue(range.lowest() < range.highest());
        assertTrue(grip.accelerationRange(1.5 * coasting, 1).isEmpty());
    }

    @Test
    void impossibleMotionIsRefused() {
        var error = assertThrows(InvalidValueException.class, () -> Motion.steady(Double.NaN, 0, 0));
        assertEquals("speed_mps", error.field());
    }

    @Provide
    Arbitrary<Car> cars() {
        return SampleCars.possible();
    }

    /** Definition: with all friction scaled by the utilisation, the axle just carries its demand. */
    @Property
    void utilisationIsTheFrictionScaleThatJustCarries(
            @ForAll("cars") Car car,
            @ForAll @DoubleRange(min = 5, max = 80) double speed,
            @ForAll @DoubleRange(min = -5, max = 15) double deceleration,
            @ForAll @DoubleRange(min = 0.5, max = 15) double lateral) {
        Motion motion = Motion.steady(speed, deceleration, lateral);
        GripUse use = GripLimits.of(car).use(motion);
        double scale = use.front().utilisation();
        Assume.that(scale < 100);
        AxleUse scaled = GripLimits.of(car.withTyres(car.frontTyre().withFriction(scale * (1 + 1e-9)), car.rearTyre()))
                .use(motion)
                .front();
        assertTrue(scaled.lateralCapacity() >= scaled.lateralDemand());
        AxleUse less = GripLimits.of(car.withTyres(car.frontTyre().withFriction(scale * (1 - 1e-6)), car.rearTyre()))
                .use(motion)
                .front();
        double inner = Math.min(use.loads().frontLeft(), use.loads().frontRight());
        boolean innerLocks = Math.abs(less.longitudinalForce()) / 2
                > scale * (1 - 1e-6) * car.frontTyre().peakForceX(inner);
        assertTrue(innerLocks || less.lateralCapacity() < less.lateralDemand());
    }

    /** Tipping at g·t/(2h) is a limit of its own, with grip to spare (balance of moments). */
    @Test
    void aTallCarIsLimitedByTipping() {
        Car tall = SampleCars.pointMass(1).with(new Chassis(1200, 2.5, 1.25, 1.2, 0, 1.5, 1.5));
        double tips = 9.81 * 1.5 / 2.4;
        GripUse inside = GripLimits.of(tall).use(Motion.steady(20, 0, 0.99 * tips));
        assertEquals(0.99, inside.tippingUtilisation(), 1e-12);
        assertTrue(inside.feasible());
        GripUse beyond = GripLimits.of(tall).use(Motion.steady(20, 0, -1.01 * tips));
        assertTrue(beyond.utilisation() < 1);
        assertFalse(beyond.feasible());
        assertEquals(1.01, GripLimits.of(tall).at(-1.01 * tips / 400, 0, 0, 0).utilisation(400, 0), 1e-12);
    }

    /** The fast twin gives the numbers of the readable one. */
    @Property
    void localGripAgreesWithTheReadableModel(
            @ForAll("cars") Car plain,
            @ForAll boolean antiLock,
            @ForAll @DoubleRange(min = 5, max = 80) double speed,
            @ForAll @DoubleRange(min = -10, max = 20) double deceleration,
            @ForAll @Scale(5) @DoubleRange(min = -0.05, max = 0.05) double curvature,
            @ForAll @Scale(5) @DoubleRange(min = -0.002, max = 0.002) double gradient,
            @ForAll @Scale(5) @DoubleRange(min = -0.1, max = 0.1) double grade,
            @ForAll @Scale(5) @DoubleRange(min = -0.3, max = 0.3) double banking) {
        Car car = plain.withAntiLock(antiLock);
        GripUse use = GripLimits.of(car).use(Motion.onLine(speed, deceleration, curvature, gradient, grade, banking));
        LocalGrip grip = GripLimits.of(car).at(curvature, gradient, grade, banking);
        double w = speed * speed;
        same(use.front().utilisation(), grip.frontUtilisation(w, deceleration));
        same(use.rear().utilisation(), grip.rearUtilisation(w, deceleration));
        same(use.tippingUtilisation(), grip.tippingUtilisation(w, deceleration));
        double force = use.front().longitudinalForce() + use.rear().longitudinalForce();
        assertEquals(force, grip.force(w, deceleration), 1e-6);
        if (force < -1) {
            double power = car.driveline().power();
            double atLimit = -grip.force(w, -grip.powerAcceleration(w)) * speed;
            assertEquals(power, atLimit, 1e-9 * power);
        }
    }

    private static void same(double expected, double actual) {
        // Past a thousandfold overload a wheel load is all but zero, and rounding of the load decides the number.
        if (expected < 1000) {
            assertEquals(expected, actual, 1e-9 * (1 + expected * expected));
        }
    }

    @Property
    void mirroredMotionUsesAsMuch(
            @ForAll("cars") Car car,
            @ForAll @DoubleRange(min = 5, max = 80) double speed,
            @ForAll @DoubleRange(min = -10, max = 20) double deceleration,
            @ForAll @Scale(5) @DoubleRange(min = -0.05, max = 0.05) double curvature,
            @ForAll @Scale(5) @DoubleRange(min = -0.3, max = 0.3) double banking) {
        GripLimits limits = GripLimits.of(car);
        GripUse left = limits.use(Motion.onLine(speed, deceleration, curvature, 0.001, 0.02, banking));
        GripUse right = limits.use(Motion.onLine(speed, deceleration, -curvature, -0.001, 0.02, -banking));
        same(left.front().utilisation(), right.front().utilisation());
        same(left.rear().utilisation(), right.rear().utilisation());
        assertEquals(left.front().lateralDemand(), -right.front().lateralDemand(), 1e-9);
    }

    /**
     * Key fact of the package: along any chord of motions at one place, capacity minus demand of each axle lies on or
     * above the straight line between its ends, as long as no wheel lifts or locks.
     */
    @Property
    void marginIsConcaveAlongChords(
            @ForAll("cars") Car car,
            @ForAll @Scale(5) @DoubleRange(min = -0.03, max = 0.03) double curvature,
            @ForAll @Scale(5) @DoubleRange(min = -0.001, max = 0.001) double gradient,
            @ForAll @DoubleRange(min = 25, max = 3600) double w1,
            @ForAll @DoubleRange(min = 25, max = 3600) double w2,
            @ForAll @DoubleRange(min = -8, max = 15) double d1,
            @ForAll @DoubleRange(min = -8, max = 15) double d2,
            @ForAll @DoubleRange(min = 0, max = 1) double share) {
        GripUse one = use(car, w1, d1, curvature, gradient);
        GripUse two = use(car, w2, d2, curvature, gradient);
        GripUse between = use(car, w1 + share * (w2 - w1), d1 + share * (d2 - d1), curvature, gradient);
        Assume.that(rolling(one, car) && rolling(two, car));
        double tolerance = 1e-7 * car.chassis().mass();
        assertTrue(rolling(between, car), "wheel limits are concave too");
        assertTrue(
                margin(between.front()) >= (1 - share) * margin(one.front()) + share * margin(two.front()) - tolerance);
        assertTrue(margin(between.rear()) >= (1 - share) * margin(one.rear()) + share * margin(two.rear()) - tolerance);
    }

    private static GripUse use(Car car, double w, double deceleration, double curvature, double gradient) {
        return GripLimits.of(car).use(Motion.onLine(Math.sqrt(w), deceleration, curvature, gradient, 0, 0));
    }

    private static boolean rolling(GripUse use, Car car) {
        double front = Math.min(use.loads().frontLeft(), use.loads().frontRight());
        double rear = Math.min(use.loads().rearLeft(), use.loads().rearRight());
        return front > 0
                && rear > 0
                && Math.abs(use.front().longitudinalForce()) / 2
                        <= car.frontTyre().peakForceX(front)
                && Math.abs(use.rear().longitudinalForce()) / 2
                        <= car.rearTyre().peakForceX(rear);
    }

    private static double margin(AxleUse use) {
        return use.lateralCapacity() - Math.abs(use.lateralDemand());
    }

    /** The ends of the acceleration range are at the limit, its middle is within, just outside is not. */
    @Property
    void accelerationRangeIsTheWholeFeasibleInterval(
            @ForAll("cars") Car car,
            @ForAll @DoubleRange(min = 5, max = 60) double speed,
            @ForAll @Scale(5) @DoubleRange(min = -0.05, max = 0.05) double curvature) {
        GripLimits limits = GripLimits.of(car);
        var range = limits.accelerationRange(speed * speed, curvature, 0, 0, 0);
        Assume.that(range.isPresent());
        double low = range.get().lowest();
        double high = range.get().highest();
        assertTrue(feasible(limits, speed, curvature, low, 1e-9));
        assertTrue(feasible(limits, speed, curvature, high, 1e-9));
        assertTrue(feasible(limits, speed, curvature, (low + high) / 2, 1e-9));
        assertFalse(feasible(limits, speed, curvature, low - 1e-3, 0));
        assertFalse(feasible(limits, speed, curvature, high + 1e-3, 0));
    }

    private static boolean feasible(GripLimits limits, double speed, double curvature, double a, double tolerance) {
        GripUse use = limits.use(Motion.onLine(speed, -a, curvature, 0, 0, 0));
        return use.utilisation() <= 1 + tolerance && use.powerUtilisation() <= 1 + tolerance;
    }
}
