package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.foreload.strategy.StraightLine;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Chassis;
import org.junit.jupiter.api.Test;

/** The best release where trailing the brake gains nothing. What is the best follows from the meaning of the word. */
class StraightLineBestTest {

    /** A tall car, which must not be braked into a hairpin that turns in as sharply as this one. */
    private static CornerStudy tallCarInAHairpin() {
        Chassis low = SampleCars.ROAD_CAR.chassis();
        Chassis tall = new Chassis(
                low.mass(),
                low.wheelbase(),
                low.cgToFrontAxle(),
                0.8,
                low.yawInertia(),
                low.frontTrack(),
                low.rearTrack());
        Corner hairpin = new Corner(
                "hairpin",
                28,
                SegmentPath.of(
                        90,
                        List.of(
                                Segment.spiralIn(5, 8, Turn.LEFT),
                                Segment.arc(25, 8, Turn.LEFT),
                                Segment.spiralOut(5, 8, Turn.LEFT)),
                        25,
                        5));
        return SampleStudies.coarse(SampleCars.ROAD_CAR.with(tall), hairpin);
    }

    @Test
    void straightLineBrakingIsTheBestWhereItIsQuickest() {
        CornerStudy study = tallCarInAHairpin();
        Optimum found = BestRelease.SIMPLE_SHAPES.find(study);
        Finding straight = StraightLine.best(study, 0.25, Sweep.quiet()).orElseThrow();
        double quickestTrailed = found.families().get(0).entry().time();
        assertTrue(quickestTrailed > straight.entry().time() + 0.01, "trailed " + quickestTrailed);
        assertEquals(straight.entry().plan(), found.best().orElseThrow().entry().plan());
        assertEquals(straight.entry().time(), found.entry().orElseThrow().time());
        assertEquals(found.entry(), found.baseline());
        assertTrue(found.families().stream()
                .noneMatch(family -> StraightLine.is(family.entry().plan())));
        assertFalse(found.aboveBound() < 0);
    }
}
