package org.foreload.optimum;

import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.entry.SimulationSettings;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;

/**
 * Studies for tests: a plausible car on brush tyres in a right-angle corner with short straights, quick to simulate.
 */
public final class SampleStudies {

    /** Tolerance of the simulator: what is tested here does not hang on microseconds. */
    private static final double COARSE = 1e-5;

    private SampleStudies() {}

    /** The corner. */
    public static Corner corner() {
        return bend("right angle", 32, 110, 25, 40, Math.toRadians(100) * 40 - 25, 60);
    }

    /** A corner that takes half as long. */
    public static Corner shortCorner() {
        return bend("short", 28, 90, 15, 35, 25, 25);
    }

    /** A corner that comes up so fast that the last look at brake points gains by hundredths. */
    static Corner fastCorner() {
        return bend("fast", 55, 220, 30, 60, 60, 150);
    }

    /** An S: a bend of 50 m radius with its apex at 33 m, and one of 45 m with its apex at 115 m. */
    public static Corner twoBends() {
        return new Corner(
                "an S",
                50,
                SegmentPath.of(
                        300,
                        List.of(
                                Segment.spiralIn(20, 50, Turn.LEFT),
                                Segment.arc(26, 50, Turn.LEFT),
                                Segment.spiralOut(20, 50, Turn.LEFT),
                                Segment.straight(15),
                                Segment.spiralIn(20, 45, Turn.RIGHT),
                                Segment.arc(28, 45, Turn.RIGHT),
                                Segment.spiralOut(20, 45, Turn.RIGHT)),
                        100,
                        5));
    }

    /** A left-hand bend on a road ten metres wide: speed in m/s, lengths and the radius in m. */
    private static Corner bend(
            String name, double speed, double before, double spiral, double radius, double arc, double after) {
        return new Corner(
                name,
                speed,
                SegmentPath.of(
                        before,
                        List.of(
                                Segment.spiralIn(spiral, radius, Turn.LEFT),
                                Segment.arc(arc, radius, Turn.LEFT),
                                Segment.spiralOut(spiral, radius, Turn.LEFT)),
                        after,
                        5));
    }

    /** A practised driver, nothing in hand: the searches are tested where they are hardest, on the edge. */
    public static CornerStudy study(Car car) {
        return CornerStudy.of(
                car, corner(), DriverSettings.practised(), new SimulationSettings(COARSE, 1), Allowance.NO_MARGIN);
    }

    /** The same on another corner, in larger steps: for what differs by milliseconds at least. */
    public static CornerStudy coarse(Car car, Corner corner) {
        return CornerStudy.of(
                car, corner, DriverSettings.practised(), new SimulationSettings(1e-4, 1), Allowance.NO_MARGIN);
    }

    /** The plausible road car. */
    public static CornerStudy roadCar() {
        return study(SampleCars.ROAD_CAR);
    }

    /** Straight-line braking that makes the corner with room to spare. */
    public static BrakePlan straightLine() {
        return Braking.of(8, 0.25, new Release(ReleaseShapes.ABRUPT, 0, 0)).from(-80);
    }

    /** An entry as if it had taken another time, s. */
    public static EntryResult withTime(EntryResult entry, double time) {
        return new EntryResult(
                entry.plan(),
                entry.outcome(),
                entry.longestLock(),
                entry.events(),
                entry.turnInSpeed(),
                entry.topSpeed(),
                entry.minimumSpeed(),
                entry.minimumSpeedAt(),
                time,
                entry.trailShare(),
                entry.farthestOffset(),
                entry.lockReserve(),
                entry.margins(),
                entry.limit(),
                entry.profile(),
                entry.evaluations());
    }
}
