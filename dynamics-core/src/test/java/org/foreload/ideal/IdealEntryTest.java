package org.foreload.ideal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.foreload.conventions.InvalidValueException;
import org.foreload.grip.GripLimits;
import org.foreload.grip.Motion;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;

class IdealEntryTest {

    @Provide
    Arbitrary<Car> cars() {
        return SampleCars.possible();
    }

    @Provide
    Arbitrary<Corner> corners() {
        return SampleCorners.possible();
    }

    /**
     * The profile, from the highest approach speed that works where the corner's own is too high: the one that is told.
     * A corner with a spiral of a millimetre may have none.
     */
    private static IdealProfile solve(Car car, Corner corner) {
        try {
            return IdealEntry.solve(car, corner);
        } catch (InvalidValueException tooFast) {
            Assume.that(tooFast.allowed().startsWith("at most"));
            double highest = Double.parseDouble(tooFast.allowed().split("[ ,]+")[2]);
            return IdealEntry.solve(car, new Corner(corner.name(), highest, corner.path()));
        }
    }

    /**
     * Rule of the trade (common practice): after a heavy braking zone, a hairpin leaves 10 to 30 % of it to the turn.
     */
    @Test
    void hairpinIsBrakedStraight() {
        for (double radius : new double[] {14, 20, 30}) {
            Corner corner = SampleCorners.left(60, 250, radius, 180, radius, radius, 80);
            double share = IdealEntry.solve(SampleCars.ROAD_CAR, corner).trailShare();
            assertTrue(share >= 0.10 && share <= 0.30, "share " + share + " at radius " + radius);
        }
    }

    /** Rule of the trade (common practice): in a fast, long corner most of the slowing is done while turning. */
    @Test
    void fastCornerIsBrakedTurning() {
        for (double radius : new double[] {120, 150}) {
            for (double speed : new double[] {60, 65}) {
                Corner corner = SampleCorners.left(speed, 120, radius, 120, 160, 80, 80);
                double share = IdealEntry.solve(SampleCars.ROAD_CAR, corner).trailShare();
                assertTrue(share >= 0.6 && share <= 1, "share " + share + " at radius " + radius);
            }
        }
    }

    /**
     * A wide bend, a short straight, a tight bend: the car brakes for the first, drives on, and brakes again. The
     * entry's braking is all of it: it starts before the first bend, and the top speed is shed from there.
     */
    @Test
    void brakingInTwoPartsStartsWithTheFirst() {
        Path path = SegmentPath.of(
                150,
                List.of(
                        new Segment.Spiral(20, Double.POSITIVE_INFINITY, 70, Turn.LEFT),
                        Segment.arc(30, 70, Turn.LEFT),
                        new Segment.Spiral(20, 70, Double.POSITIVE_INFINITY, Turn.LEFT),
                        Segment.straight(60),
                        new Segment.Spiral(20, Double.POSITIVE_INFINITY, 20, Turn.LEFT),
                        Segment.arc(30, 20, Turn.LEFT)),
                50,
                5);
        IdealProfile profile = IdealEntry.solve(SampleCars.ROAD_CAR, new Corner("two bends", 45, path));
        boolean drivesBetween = false;
        for (int i = 0; i < profile.size(); i++) {
            drivesBetween |= profile.station(i) > 30 && profile.station(i) < 130 && profile.deceleration(i) < -0.5;
        }
        assertTrue(drivesBetween);
        double brakePoint = profile.brakePoint().orElseThrow();
        assertTrue(brakePoint < 0, "brake point " + brakePoint);
        assertEquals(profile.topSpeed(), profile.speedAt(brakePoint), 0.1);
        assertTrue(profile.releaseEnd().orElseThrow() > 130);
        double shed = profile.topSpeed() - profile.minimumSpeed();
        assertEquals((profile.turnInSpeed() - profile.minimumSpeed()) / shed, profile.trailShare(), 0.01);
    }

    /** Gentle braking makes a speed feasible that coasting does not: a front-limited car slows all through the arc. */
    @Test
    void frontLimitedCarTrailsIntoTheArc() {
        Car car = SampleCars.ROAD_CAR
                .with(Aerodynamics.NONE)
                .withTyres(SampleCars.tyre(1.15, 0.95, 0.08), SampleCars.tyre(1.2, 1.3, 0.08));
        Corner corner = SampleCorners.left(45, 200, 60, 100, 30, 30, 50);
        IdealProfile profile = IdealEntry.solve(car, corner);
        double curvature = 1 / 60.0;
        double speed = profile.speedAt(31);
        assertTrue(GripLimits.of(car)
                        .use(Motion.onLine(speed, 0, curvature, 0, 0, 0))
                        .utilisation()
                > 1);
        assertTrue(profile.decelerationAt(31) > 0.02);
        assertTrue(profile.releaseEnd().orElseThrow() > 35);
    }

    @Test
    void tooFastAnApproachTellsTheHighestSpeed() {
        Corner corner = SampleCorners.left(50, 40, 20, 90, 5, 5, 20);
        var error = assertThrows(InvalidValueException.class, () -> IdealEntry.solve(SampleCars.ROAD_CAR, corner));
        assertEquals("approach_speed_mps", error.field());
        double highest = Double.parseDouble(error.allowed().replaceAll("[^0-9.]*([0-9.]+).*", "$1"));
        assertTrue(highest > 20 && highest < 50);
        IdealProfile profile =
                IdealEntry.solve(SampleCars.ROAD_CAR, new Corner("slower", 0.9999 * highest, corner.path()));
        assertTrue(profile.brakePoint().orElseThrow() < corner.path().start() + 1);
        assertThrows(
                InvalidValueException.class,
                () -> IdealEntry.solve(SampleCars.ROAD_CAR, new Corner("faster", 1.001 * highest, corner.path())));
    }

    /**
     * Where the curvature must vanish within less than a millimetre, the car can only crawl: the rear axle's friction
     * has to stop the yaw, so v² = μ·F·L/(Iz·|κ′|), from Iz·ψ̈ = F·L with ψ̈ = v²·κ′. Downhill, and out of a fast
     * approach.
     */
    @Test
    void aSpiralOfLessThanAMillimetreIsTakenAtACrawl() {
        double length = 6e-4;
        double radius = 12;
        Chassis chassis = new Chassis(600, 2.27, 0.8, 0.05, 470, 1.4, 1.4);
        Car car = SampleCars.pointMass(1)
                .with(chassis)
                .with(new Driveline(200e3, Driveline.DrivenAxle.FRONT))
                .withTyres(SampleCars.tyre(0.7, 0.9, 0), SampleCars.tyre(1.5, 0.5, 0));
        Path path = SegmentPath.of(
                        250,
                        List.of(Segment.arc(6.28, radius, Turn.LEFT), Segment.spiralOut(length, radius, Turn.LEFT)),
                        60,
                        5)
                .withGrade(-0.05);
        double rearLoad = chassis.mass() * 9.81 * chassis.cgToFrontAxle() / chassis.wheelbase();
        double crawl = Math.sqrt(0.5 * rearLoad * chassis.wheelbase() * length * radius / chassis.yawInertia());
        double lowest = IdealEntry.solve(car, new Corner("kink", 45, path)).minimumSpeed();
        assertEquals(crawl, lowest, 0.05 * crawl);
    }

    /** Statics: on a bank steeper than its friction, tan φ > μ, a car slides off a straight at any speed. */
    @Test
    void whereNoSpeedHoldsTheRoadThePlaceIsTold() {
        SegmentPath level = SegmentPath.of(50, List.of(Segment.arc(10, 100, Turn.LEFT)), 20, 5);
        Car car = SampleCars.pointMass(0.5);
        Corner steep = new Corner("steep", 20, level.withBanking(Math.atan(0.55)));
        var error = assertThrows(InvalidValueException.class, () -> IdealEntry.solve(car, steep));
        assertEquals("approach_speed_mps", error.field());
        assertTrue(error.allowed().contains("stand still"), error.allowed());
        Corner held = new Corner("held", 20, level.withBanking(Math.atan(0.45)));
        assertTrue(IdealEntry.solve(car, held).time() > 0);
    }

    /** The speed that is told is accepted; one above it by its rounding (1/128 m/s, and one in ten thousand) is not. */
    @Test
    void theToldSpeedIsTheHighestButForItsRounding() {
        for (double approach : new double[] {5, 20, 40, 80}) {
            Corner corner = SampleCorners.left(60, approach, 20, 90, 5, 5, 20);
            double told = told(SampleCars.ROAD_CAR, corner);
            Corner slower = new Corner("told", told, corner.path());
            assertEquals(told, IdealEntry.solve(SampleCars.ROAD_CAR, slower).speed(0), 1e-9 * told);
            Corner faster = new Corner("above", told * (1 + 1.5e-4) + 1.5 / 128, corner.path());
            assertThrows(InvalidValueException.class, () -> IdealEntry.solve(SampleCars.ROAD_CAR, faster));
        }
    }

    private static double told(Car car, Corner corner) {
        var error = assertThrows(InvalidValueException.class, () -> IdealEntry.solve(car, corner));
        return Double.parseDouble(error.allowed().split("[ ,]+")[2]);
    }

    /** The crawl of the test above, v² = μ·F·L/(Iz·|κ′|), on a spiral so short that it is less than 1/128 m/s. */
    @Test
    void aSpeedThatRoundsToNoneIsNotTold() {
        Car car = SampleCars.pointMass(1)
                .with(new Chassis(600, 2.27, 0.8, 0.05, 470, 1.4, 1.4))
                .withTyres(SampleCars.tyre(0.7, 0.9, 0), SampleCars.tyre(1.5, 0.5, 0));
        Path path = SegmentPath.of(0, List.of(Segment.spiralOut(4e-7, 12, Turn.LEFT)), 20, 5);
        Corner corner = new Corner("kink", 10, path);
        var error = assertThrows(InvalidValueException.class, () -> IdealEntry.solve(car, corner));
        assertTrue(error.allowed().contains("there is none: 0 m after turn-in"), error.allowed());
    }

    /**
     * A tall car of much grip lifts its inner front wheel in the arc; there the feasible set is not convex, and driving
     * as fast as the backward pass allows ends where no acceleration is feasible. The profile goes back from there and
     * can be driven. A search by brute force (speeds squared 0.1 m²/s² apart at stations 0.5 m apart, each pair of
     * neighbours tried, the least time to the end kept) needs 4.370 s.
     */
    @Test
    void whereALiftedWheelEndsTheWayTheProfileGoesBack() {
        Car car = new Car(
                "tall",
                new Chassis(2100, 2.3, 0.92, 0.4, 2777.25, 1.5, 1.4),
                new Suspension(0.45, 0.04, 0.17, Response.RIGID, Response.RIGID),
                new Aerodynamics(0.1, 0.7, 0.5, 1.2, 0.1),
                0.75,
                new Driveline(110_000, Driveline.DrivenAxle.FRONT),
                SampleCars.tyre(0.9, 1.4, 0.1),
                SampleCars.tyre(1.5, 1.3, 0.05));
        Path path = SegmentPath.of(
                70, List.of(Segment.arc(14, 38, Turn.LEFT), Segment.spiralOut(12, 38, Turn.LEFT)), 20, 5);
        Corner corner = new Corner("lifts", 35, path);
        IdealProfile profile = IdealEntry.solve(car, corner);
        Feasible.check(car, corner, profile);
        assertTrue(profile.time() >= 0.998 * 4.370, "" + profile.time());
        assertTrue(profile.time() <= 1.01 * 4.370, "" + profile.time());
    }

    /**
     * Such a car may meet the dead end at its very start: the speed that is told then lies below it, and is accepted.
     */
    @Test
    void whereALiftedWheelEndsTheWayAtTheStartALowerSpeedIsTold() {
        Car car = new Car(
                "tall",
                new Chassis(1900, 2.6, 1.56, 0.6, 2889.9, 1.3, 1.7),
                new Suspension(0.7, 0.01, 0.16, Response.RIGID, Response.RIGID),
                new Aerodynamics(0.8, 0.3, 0.9, 1.2, 0.2),
                0.75,
                new Driveline(200_000, Driveline.DrivenAxle.REAR),
                SampleCars.tyre(0.9, 1.6, 0.05),
                SampleCars.tyre(1.1, 1.4, 0.1));
        Path path = SegmentPath.of(
                50, List.of(Segment.arc(39.6, 28, Turn.LEFT), Segment.spiralOut(8.8, 28, Turn.LEFT)), 20, 5);
        double told = told(car, new Corner("lifts", 35, path));
        Corner slower = new Corner("told", told, path);
        Feasible.check(car, slower, IdealEntry.solve(car, slower));
    }

    @Test
    void frictionScaleKeepsTheMargin() {
        Corner corner = SampleCorners.left(40, 150, 40, 100, 20, 20, 50);
        IdealProfile profile =
                IdealEntry.solve(SampleCars.ROAD_CAR, corner, IdealOptions.DEFAULT.withFrictionScale(0.9));
        double most = 0;
        for (int i = 0; i < profile.size(); i++) {
            most = Math.max(most, Math.max(profile.frontUtilisation(i), profile.rearUtilisation(i)));
        }
        assertEquals(0.9, most, 1e-6);
        // The same as a car whose friction is a tenth lower.
        IdealProfile slippery = IdealEntry.solve(
                SampleCars.ROAD_CAR.withTyres(
                        SampleCars.tyre(0.9 * 1.15, 0.9 * 1.10, 0.08), SampleCars.tyre(0.9 * 1.17, 0.9 * 1.12, 0.08)),
                corner);
        assertEquals(slippery.time(), profile.time(), 1e-8);
        assertEquals(slippery.minimumSpeed(), profile.minimumSpeed(), 1e-8);
    }

    @Test
    void impossibleOptionsAreRefused() {
        assertThrows(InvalidValueException.class, () -> new IdealOptions(0, 1));
        assertThrows(InvalidValueException.class, () -> new IdealOptions(0.5, Double.NaN));
    }

    /** No step of any profile asks for more than tyres and engine have, judged by the readable model. */
    @Property
    void profileIsFeasible(@ForAll("cars") Car car, @ForAll("corners") Corner corner) {
        Feasible.check(car, corner, solve(car, corner));
    }

    /** The mirrored corner is driven in exactly the same way. */
    @Property
    void mirroredCornerMirrorsTheProfile(
            @ForAll("cars") Car car,
            @ForAll @DoubleRange(min = 12, max = 150) double radius,
            @ForAll @DoubleRange(min = 15, max = 45) double speed) {
        IdealProfile left = solve(car, SampleCorners.corner(speed, 150, radius, 90, 10, 5, 50, Turn.LEFT));
        IdealProfile right = solve(car, SampleCorners.corner(speed, 150, radius, 90, 10, 5, 50, Turn.RIGHT));
        assertEquals(left.size(), right.size());
        for (int i = 0; i < left.size(); i++) {
            assertEquals(left.speed(i), right.speed(i));
            assertEquals(left.frontUtilisation(i), right.frontUtilisation(i));
        }
        assertEquals(left.time(), right.time());
    }

    /**
     * At one place what braking leaves of the grip carries nothing but a standstill, and the search for the highest
     * speed must go on from there. The random cars of these tests found it.
     */
    @Test
    void aStandstillInBetweenEndsNoSearch() {
        Car car = new Car(
                "little grip",
                new Chassis(600.0895, 2.2029, 0.8256469200000001, 0.0125, 436.8871077001236, 1.7857, 1.3022),
                new Suspension(0.3143, -0.0047, 0.0134, Response.RIGID, Response.RIGID),
                new Aerodynamics(0.0008, 0.1008, -0.0016, 1.2, 0.0534),
                0.5404,
                new Driveline(40000.2439, Driveline.DrivenAxle.FRONT),
                SampleCars.tyre(0.5016, 0.5843, 0.0014),
                SampleCars.tyre(0.503, 0.5276, 0.0524));
        List<Segment> bend = List.of(
                new Segment.Spiral(0.2091250771971461, Double.POSITIVE_INFINITY, 12.0187, Turn.LEFT),
                new Segment.Arc(9.879391931936675, 12.0187, Turn.LEFT),
                new Segment.Spiral(0.2374125272527987, 12.0187, Double.POSITIVE_INFINITY, Turn.LEFT));
        Path path = SegmentPath.of(193.0406, bend, 60, 5).withGrade(0.0017).withBanking(0.093);
        Corner corner = new Corner("banked", 15, path);
        Feasible.check(car, corner, IdealEntry.solve(car, corner));
    }

    /** More friction is never slower: every profile of less friction is one of more. */
    @Property
    void moreFrictionIsNeverSlower(
            @ForAll("cars") Car car,
            @ForAll("corners") Corner corner,
            @ForAll @DoubleRange(min = 0.6, max = 1) double scale) {
        Corner gentle = new Corner("gentle", 15, corner.path());
        try {
            double less = IdealEntry.solve(car, gentle, IdealOptions.DEFAULT.withFrictionScale(scale))
                    .time();
            double more = IdealEntry.solve(car, gentle).time();
            assertTrue(more <= less * (1 + 1e-9));
        } catch (InvalidValueException tooFast) {
            assertEquals("approach_speed_mps", tooFast.field());
        }
    }

    /**
     * A point mass with grip to spare in its engine drives a symmetric corner the same forward and backward in time.
     */
    @Property
    void pointMassIsReversibleInTime(
            @ForAll @DoubleRange(min = 0.5, max = 1.6) double friction,
            @ForAll @DoubleRange(min = 15, max = 120) double radius,
            @ForAll @DoubleRange(min = 0, max = 1) double spiral) {
        Car car = SampleCars.pointMass(friction);
        double length = spiral * radius;
        Path path = SampleCorners.left(20, 40, radius, 90, length, length, 40).path();
        // The end speed of a slow start is the fastest that the exit allows; reversed, the fastest approach.
        double fastest =
                IdealEntry.solve(car, new Corner("slow start", 5, path)).speedAt(path.end());
        IdealProfile profile = IdealEntry.solve(car, new Corner("fast start", fastest * (1 - 1e-7), path));
        double middle = (path.start() + path.end()) / 2;
        for (double offset = 1; offset < path.end() - middle; offset += 3.7) {
            double before = profile.speedAt(middle - offset);
            assertEquals(before, profile.speedAt(middle + offset), 1e-5 * before);
        }
    }

    /** Two corners in a row: the second may have to be braked for in the first. */
    @Test
    void tightCornerBehindAWideOne() {
        Path path = SegmentPath.of(
                100,
                List.of(Segment.arc(120, 200, Turn.LEFT), Segment.straight(5), Segment.arc(30, 20, Turn.RIGHT)),
                50,
                5);
        IdealProfile profile = IdealEntry.solve(SampleCars.ROAD_CAR, new Corner("two", 30, path));
        assertTrue(profile.minimumSpeedAt() >= 125);
        assertTrue(profile.brakePoint().orElseThrow() > 0);
        assertEquals(1, profile.trailShare());
    }
}
