package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.ideal.IdealEntry;
import org.foreload.ideal.IdealProfile;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.SegmentPath;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The estimate of a brake point against the work that the brake does from there, summed in small steps. */
class BrakePointEstimateTest {

    private static final double[][] RELEASES = {{-10, 5}, {-2, 25}, {8, 12}, {-70, 10}, {-55, 60}};

    private static final Car NO_DRAG = SampleCars.ROAD_CAR.with(Aerodynamics.NONE);

    private static Car with(double dragArea) {
        return NO_DRAG.with(new Aerodynamics(dragArea, 0, 0, 1.2, 0));
    }

    /**
     * Half the square of the speed that is lost: by the brake, the foot being worth nothing for the first half of its
     * way and all after that, and by a drag that grows evenly from the one end to the other.
     */
    private static double lost(Braking braking, double point, double speed) {
        double from = point + speed * braking.buildUpTime() / 2;
        double to = braking.release().end();
        int steps = 20_000;
        double sum = 0;
        for (int i = 0; i < steps; i++) {
            sum += braking.release().remaining(from + (i + 0.5) * (to - from) / steps);
        }
        return braking.peakDeceleration() * sum * (to - from) / steps;
    }

    /**
     * Three per cent slower than the bound is where the brake is off, or coasts from there at 0.8 m/s² to its least.
     */
    private static double target(IdealProfile bound, Release release) {
        double to = Math.min(release.end(), bound.minimumSpeedAt());
        double coasting = Math.sqrt(Math.pow(bound.minimumSpeed(), 2) + 1.6 * (bound.minimumSpeedAt() - to));
        return 0.97 * Math.min(bound.speedAt(Math.max(0, to)), coasting);
    }

    /** Without drag, brake and foot take away just what there is too much, whatever the shape and wherever it lies. */
    @Test
    void theBrakeTakesAwayWhatTheCarHasTooMuch() {
        IdealProfile bound = IdealEntry.solve(NO_DRAG, ShortStudies.CORNER);
        BrakePointEstimate estimate = new BrakePointEstimate(bound, NO_DRAG, ShortStudies.CORNER.path());
        for (ReleaseShape shape : ReleaseShapes.all()) {
            for (double[] ends : RELEASES) {
                Braking braking = Braking.of(9, 0.3, new Release(shape, ends[0], ends[1]));
                double point = estimate.of(braking);
                double lastAtFull = bound.brakePoint().orElseThrow();
                double speed = bound.speedAt(Math.min(point, lastAtFull));
                double tooMuch = (Math.pow(speed, 2) - Math.pow(target(bound, braking.release()), 2)) / 2;
                // A metre of the full peak is 9 m²/s²: this is within some centimetres.
                assertEquals(tooMuch, lost(braking, point, speed), 0.5, shape.name() + " to " + ends[1]);
            }
        }
    }

    /** With drag, an abrupt end at turn-in: brake and mean drag over the way at full, which is all there is. */
    @Test
    void dragHelpsTheBrake() {
        Car car = with(3);
        IdealProfile bound = IdealEntry.solve(car, ShortStudies.CORNER);
        Braking braking = Braking.of(6, 0.3, new Release(ReleaseShapes.ABRUPT, 0, 0));
        double point = new BrakePointEstimate(bound, car, ShortStudies.CORNER.path()).of(braking);
        double speed = bound.speedAt(point);
        double end = target(bound, braking.release());
        double tooMuch = (speed * speed - end * end) / 2;
        double drag = 0.5 * 1.2 * 3 / 1400 * (speed * speed + end * end) / 2;
        assertTrue(drag > 0.3, "a drag to speak of");
        assertEquals((6 + drag) * -(point + speed * 0.15), tooMuch, 0.2);
    }

    /** While the brake comes off, drag goes on as at the end: a release twice as long costs it twice. */
    @Test
    void dragGoesOnWhileTheBrakeComesOff() {
        Car car = with(3);
        IdealProfile bound = IdealEntry.solve(car, ShortStudies.CORNER);
        Braking braking = Braking.of(6, 0.3, new Release(ReleaseShapes.LINEAR, -12, 18));
        double point = new BrakePointEstimate(bound, car, ShortStudies.CORNER.path()).of(braking);
        double speed = bound.speedAt(point);
        double end = target(bound, braking.release());
        double each = 0.5 * 1.2 * 3 / 1400;
        double atFull = (6 + each * (speed * speed + end * end) / 2) * (-12 - (point + speed * 0.15));
        double comingOff = 6 * 15 + each * end * end * 30;
        assertEquals((speed * speed - end * end) / 2, atFull + comingOff, 0.2);
    }

    /** Downhill the brake has the height to take away besides: g·sin γ times the way. */
    @ParameterizedTest
    @ValueSource(doubles = {-0.08, 0.08})
    void theSlopeOfTheRoadCounts(double grade) {
        SegmentPath slope = ((SegmentPath) ShortStudies.CORNER.path()).withGrade(grade);
        Corner hill = new Corner("hill", ShortStudies.CORNER.approachSpeed(), slope);
        IdealProfile bound = IdealEntry.solve(NO_DRAG, hill);
        Braking braking = Braking.of(6, 0.3, new Release(ReleaseShapes.ABRUPT, 0, 0));
        double point = new BrakePointEstimate(bound, NO_DRAG, slope).of(braking);
        double speed = bound.speedAt(point);
        double coasting = 1.6 * bound.minimumSpeedAt() + 2 * 9.81 * Math.sin(grade) * bound.minimumSpeedAt();
        double end =
                0.97 * Math.min(bound.speedAt(0), Math.sqrt(Math.pow(bound.minimumSpeed(), 2) + Math.max(0, coasting)));
        double braked = (6 + 9.81 * Math.sin(grade)) * -point - 6 * speed * 0.15;
        assertEquals((speed * speed - end * end) / 2, braked, 0.5);
    }

    /** Nothing to lose: the foot is down when the brake is off, half its way after its station. */
    @Test
    void whoNeedNotSlowBrakesAtTheEndOfTheRelease() {
        Corner wide = ShortStudies.bend(12, 300);
        IdealProfile bound = IdealEntry.solve(NO_DRAG, wide);
        assertTrue(bound.brakePoint().isEmpty());
        BrakePointEstimate estimate = new BrakePointEstimate(bound, NO_DRAG, wide.path());
        Braking braking = Braking.of(6, 0.3, new Release(ReleaseShapes.LINEAR, -60, 15));
        double point = estimate.of(braking);
        assertEquals(15 - 0.15 * bound.speedAt(-60), point, 1e-9);
        assertEquals(0, estimate.earlierCosts(), 1e-12);
    }

    /** A metre at the least speed in place of one at the speed of the bound's brake point. */
    @Test
    void whatBrakingEarlierCosts() {
        IdealProfile bound = ShortStudies.BARE.bound();
        double straight = bound.speedAt(bound.brakePoint().orElseThrow());
        assertEquals(
                1 / bound.minimumSpeed() - 1 / straight,
                new BrakePointEstimate(bound, SampleCars.ROAD_CAR, ShortStudies.CORNER.path()).earlierCosts(),
                1e-12);
        assertTrue(straight > bound.minimumSpeed() + 5);
    }
}
