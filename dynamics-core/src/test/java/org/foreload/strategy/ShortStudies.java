package org.foreload.strategy;

import java.util.List;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.SimulationSettings;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;

/** A rigid road car in a bend with short straights, driven coarsely: so quick that every brake point can be tried. */
final class ShortStudies {

    /** Coarse: what is compared is driven in the same way on both sides. */
    static final SimulationSettings COARSE = new SimulationSettings(1e-4, 1);

    static final Corner CORNER = bend(28, 35);

    /** With no margin at all. */
    static final CornerStudy BARE = study(Allowance.NO_MARGIN);

    private ShortStudies() {}

    static CornerStudy study(Allowance allowance) {
        return CornerStudy.of(SampleCars.ROAD_CAR, CORNER, DriverSettings.practised(), COARSE, allowance);
    }

    static Corner bend(double approachSpeed, double radius) {
        return new Corner(
                "short",
                approachSpeed,
                SegmentPath.of(
                        90,
                        List.of(
                                Segment.spiralIn(15, radius, Turn.LEFT),
                                Segment.arc(25, radius, Turn.LEFT),
                                Segment.spiralOut(15, radius, Turn.LEFT)),
                        25,
                        5));
    }

    /** Braking with a share of what locks a wheel. */
    static Braking braking(double share, ReleaseShape shape, double start, double end) {
        return Braking.of(share * BARE.lockLimit(), 0.25, new Release(shape, start, end));
    }
}
