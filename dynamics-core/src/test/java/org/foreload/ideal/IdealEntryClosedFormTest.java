package org.foreload.ideal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.foreload.grip.Axle;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.junit.jupiter.api.Test;

/**
 * The point mass (no CG height, no yaw inertia, one friction) against closed forms and its own differential equation.
 */
class IdealEntryClosedFormTest {

    private static final double G = 9.81;

    private static Corner line(double speed, double approach, Segment... segments) {
        return new Corner("line", speed, SegmentPath.of(approach, List.of(segments), 0, 5));
    }

    private static double stationOfSpeed(IdealProfile profile, double speed, double low, double high) {
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (profile.speedAt(middle) > speed) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Straight braking from a constant speed to a corner's: the brake point is (v0² − v1²)/(2μg) before the corner. */
    @Test
    void brakePointOnAStraight() {
        Car coasting = SampleCars.pointMass(1).with(new Driveline(0, DrivenAxle.ALL));
        IdealProfile profile = IdealEntry.solve(coasting, line(40, 150, Segment.arc(40, 50, Turn.LEFT)));
        assertEquals(-(1600 - 50 * G) / (2 * G), profile.brakePoint().orElseThrow(), 1e-6);
        assertEquals(0, profile.releaseEnd().orElseThrow(), 1e-12);
        assertEquals(Math.sqrt(50 * G), profile.turnInSpeed(), 1e-8);
        assertEquals(Math.sqrt(50 * G), profile.minimumSpeed(), 1e-8);
        assertEquals(0, profile.minimumSpeedAt(), 1e-12);
        assertEquals(40, profile.topSpeed(), 1e-12);
        assertEquals(0, profile.trailShare(), 1e-8);
        double braking = (40 - Math.sqrt(50 * G)) / G;
        double cruising = (150 + profile.brakePoint().orElseThrow()) / 40;
        assertEquals(cruising + braking + 40 / Math.sqrt(50 * G), profile.time(), 1e-3);
    }

    /**
     * A car that tips before it slides takes a bend at √(R·g·t/(2h)), not at √(R·μ·g): moments about its outer wheels.
     */
    @Test
    void aTallCarTakesABendAtItsTippingLimit() {
        Car low = SampleCars.pointMass(1);
        Car tall = low.with(new Chassis(1200, 2.5, 1.25, 1.2, 0, 1.5, 1.5));
        IdealProfile profile = IdealEntry.solve(tall, line(25, 150, Segment.arc(40, 50, Turn.LEFT)));
        assertEquals(Math.sqrt(50 * G * 1.5 / 2.4), profile.minimumSpeed(), 1e-6);
        int inTheBend = 0;
        while (profile.station(inTheBend) < 20) {
            inTheBend++;
        }
        assertEquals(1, profile.rollOverUtilisation(inTheBend), 1e-6);
        assertEquals(Optional.empty(), profile.limitingAxle(inTheBend));
    }

    /** Time-reversed circle at the friction limit (Mungan, The Physics Teacher 44, 2006): r 50, A 10, 20 to 15 m/s. */
    @Test
    void brakingOnACircle() {
        // A tighter arc, legal without a spiral between for a point mass, asks for 15 m/s at the end of the first.
        Car car = SampleCars.pointMass(10 / G);
        IdealProfile profile =
                IdealEntry.solve(car, line(20, 0, Segment.arc(60, 50, Turn.LEFT), Segment.arc(20, 22.5, Turn.LEFT)));
        assertEquals(15, profile.speedAt(60), 1e-9);
        assertEquals(20, profile.speedAt(60 - 11.513247), 20 * 1e-4);
        // asin(u) falls by 2/R per metre, u = v²/(μgR).
        double[] stations = {50, 52.5, 55, 57.5};
        for (double s : stations) {
            double share = profile.speedAt(s) * profile.speedAt(s) / 500;
            assertEquals(Math.asin(225 / 500.0) + 2 / 50.0 * (60 - s), Math.asin(share), 2e-4);
        }
    }

    /** The same case: 0.651984 s from 20 to 15 m/s. */
    @Test
    void timeOfBrakingOnACircle() {
        Car car = SampleCars.pointMass(10 / G);
        IdealProfile profile =
                IdealEntry.solve(car, line(20, 0, Segment.arc(60, 50, Turn.LEFT), Segment.arc(20, 22.5, Turn.LEFT)));
        assertEquals(0.651984, profile.timeAt(60) - profile.timeAt(60 - 11.513247), 0.651984 * 1e-3);
    }

    /** Along a spiral: d(v²)/ds = −2 √(μ²g² − (v²κ)²), integrated backward from the start of the arc. */
    @Test
    void brakingAlongASpiral() {
        double friction = 1.1;
        double radius = 40;
        double length = 60;
        Car car = SampleCars.pointMass(friction).with(new Driveline(0, DrivenAxle.ALL));
        Corner corner = line(45, 60, Segment.spiralIn(length, radius, Turn.RIGHT), Segment.arc(20, radius, Turn.RIGHT));
        IdealProfile profile = IdealEntry.solve(car, corner);
        double grip = friction * G;
        double w = grip * radius;
        double step = 1e-4;
        int steps = (int) Math.round(length / step);
        for (int i = steps; i > 0; i--) {
            double s = i * step;
            if (i % 100_000 == 0 && i < steps) {
                assertEquals(Math.sqrt(w), profile.speedAt(s), 1e-3 * Math.sqrt(w));
            }
            // Classical Runge-Kutta.
            double k1 = slope(grip, w, s, radius, length);
            double k2 = slope(grip, w + step / 2 * k1, s - step / 2, radius, length);
            double k3 = slope(grip, w + step / 2 * k2, s - step / 2, radius, length);
            double k4 = slope(grip, w + step * k3, s - step, radius, length);
            w += step / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
        }
        assertEquals(Math.sqrt(w), profile.turnInSpeed(), 1e-3 * Math.sqrt(w));
        assertTrue(profile.trailShare() > 0.5);
    }

    private static double slope(double grip, double w, double s, double radius, double length) {
        double lateral = w * s / length / radius;
        return 2 * Math.sqrt(Math.max(0, grip * grip - lateral * lateral));
    }

    /** dv/dt = −(a + b·v²): from 70 to 50 m/s in 233.450727 − 122.993907 m (drag and full braking on a straight). */
    @Test
    void straightBrakingWithDrag() {
        Car car = SampleCars.pointMass(1)
                .with(new Chassis(1500, 2.5, 1.25, 0, 0, 1.5, 1.5))
                .with(new Aerodynamics(0.7, 0, 0, 1.225, 0))
                .with(new Driveline(300_000, DrivenAxle.ALL));
        IdealProfile profile = IdealEntry.solve(car, line(75, 400, Segment.arc(40, 60, Turn.LEFT)));
        double at70 = stationOfSpeed(profile, 70, profile.brakePoint().orElseThrow(), 0);
        double at50 = stationOfSpeed(profile, 50, profile.brakePoint().orElseThrow(), 0);
        assertEquals(233.450727 - 122.993907, at50 - at70, 1e-3);
    }

    /** Downforce corner, v = √(μg/(1/R − μk)): 53.780882 m/s. */
    @Test
    void downforceCorner() {
        Car car = SampleCars.pointMass(1.6)
                .with(new Chassis(750, 2.5, 1.25, 0, 0, 1.5, 1.5))
                .with(new Aerodynamics(0, 1.75, 1.75, 1.225, 0));
        IdealProfile profile = IdealEntry.solve(car, line(60, 100, Segment.arc(80, 100, Turn.LEFT)));
        assertEquals(53.780882, profile.minimumSpeed(), 1e-5);
    }

    /** Banked bend, tan φ = e: v² = gR(e + f)/(1 − e·f), statics; for the other hand, the bank is in the way. */
    @Test
    void bankedBend() {
        double bank = Math.atan(0.08);
        SegmentPath left = SegmentPath.of(50, List.of(Segment.arc(60, 100, Turn.LEFT)), 0, 5);
        SegmentPath right = SegmentPath.of(50, List.of(Segment.arc(60, 100, Turn.RIGHT)), 0, 5);
        Car car = SampleCars.pointMass(0.5);
        double with = Math.sqrt(G * 100 * 0.58 / (1 - 0.04));
        double against = Math.sqrt(G * 100 * 0.42 / (1 + 0.04));
        assertEquals(
                with,
                IdealEntry.solve(car, new Corner("helps", 25, left.withBanking(bank)))
                        .minimumSpeed(),
                1e-6);
        assertEquals(
                against,
                IdealEntry.solve(car, new Corner("hurts", 21, right.withBanking(bank)))
                        .minimumSpeed(),
                1e-6);
    }

    /** On a slope the brakes have μ·cos γ, and gravity adds sin γ. */
    @Test
    void brakingUphill() {
        double grade = 0.08;
        Car car = SampleCars.pointMass(1).with(new Driveline(0, DrivenAxle.ALL));
        SegmentPath path = SegmentPath.of(100, List.of(Segment.arc(10, 30, Turn.LEFT)), 0, 5)
                .withGrade(grade);
        IdealProfile profile = IdealEntry.solve(car, new Corner("uphill", 40, path));
        double deceleration = G * (Math.cos(grade) + Math.sin(grade));
        assertEquals(deceleration, profile.decelerationAt(-1), 1e-8);
    }

    /** Half the step, a quarter of the error: the second order of the midpoint rule, on the law asin(u) of a circle. */
    @Test
    void errorFallsWithTheSquareOfTheStep() {
        Corner corner = line(58, 0, Segment.arc(200, 400, Turn.LEFT), Segment.arc(20, 100, Turn.LEFT));
        double exact = Math.sqrt(400 * G * Math.sin(Math.asin(0.25) + 2 / 400.0 * 160));
        double[] errors = new double[3];
        for (int i = 0; i < errors.length; i++) {
            IdealOptions options = IdealOptions.DEFAULT.withStep(2 / Math.pow(2, i));
            errors[i] = Math.abs(
                    IdealEntry.solve(SampleCars.pointMass(1), corner, options).speedAt(40) - exact);
        }
        assertEquals(4, errors[0] / errors[1], 0.2);
        assertEquals(4, errors[1] / errors[2], 0.2);
    }

    @Test
    void noBrakingWhereNoneIsNeeded() {
        IdealProfile profile = IdealEntry.solve(SampleCars.ROAD_CAR, SampleCorners.left(10, 10, 100, 30, 10, 10, 10));
        assertTrue(profile.brakePoint().isEmpty());
        assertTrue(profile.releaseEnd().isEmpty());
        assertEquals(0, profile.trailShare());
    }

    @Test
    void limitingAxleOfAFrontLimitedCar() {
        Car car = SampleCars.ROAD_CAR.withTyres(SampleCars.tyre(1.15, 0.95, 0.08), SampleCars.tyre(1.2, 1.3, 0.08));
        IdealProfile profile = IdealEntry.solve(car, SampleCorners.left(45, 200, 60, 100, 30, 30, 50));
        for (int i = 0; i < profile.size(); i++) {
            if (profile.station(i) > 31 && profile.station(i) < 70) {
                assertEquals(Optional.of(Axle.FRONT), profile.limitingAxle(i));
            }
        }
    }
}
