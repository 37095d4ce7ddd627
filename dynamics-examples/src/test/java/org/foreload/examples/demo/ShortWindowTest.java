package org.foreload.examples.demo;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.SplineRelease;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.entry.SimulationSettings;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.junit.jupiter.api.Test;

/**
 * A release of the car with downforce in a hairpin that makes the corner within the drift allowed from a metre and a
 * quarter of brake points only: earlier a wheel stops, as the car is slower there and has less load. The search is held
 * against entries driven from around what it finds.
 */
class ShortWindowTest {

    private static final CornerStudy STUDY = CornerStudy.of(
            Demos.car("", "downforce").value(),
            new Corner(
                    "hairpin",
                    60,
                    SegmentPath.of(
                            250,
                            List.of(
                                    Segment.spiralIn(14, 11, Turn.RIGHT),
                                    Segment.arc(Math.toRadians(170) * 11 - 14, 11, Turn.RIGHT),
                                    Segment.spiralOut(14, 11, Turn.RIGHT)),
                            150,
                            5)),
            DriverSettings.practised(),
            SimulationSettings.STANDARD,
            Allowance.NO_MARGIN);

    private static final double KNOWN = -117.5;

    private static final Braking BRAKING = Braking.of(
            16.8,
            0.25,
            new Release(new SplineRelease("free", 0.623, 0.237, 0.098, 0.033, 0.0134, 0.0087), -1.784, 20.9));

    private static EntryResult from(double brakePoint) {
        return STUDY.simulator().run(BRAKING.from(brakePoint));
    }

    @Test
    void isFoundAroundWhatIsKnown() {
        Finding found = STUDY.latest(BRAKING, KNOWN);
        assertTrue(found.found());
        double latest = found.entry().plan().brakePoint();
        assertTrue(STUDY.allowance().met(from(latest)));
        assertTrue(STUDY.allowance().met(from(latest - 1)), "who is a metre early fails");
        assertFalse(STUDY.allowance().met(from(latest + 0.25)), "there is a later one");
        assertFalse(STUDY.allowance().met(from(latest - 2.5)), "the window is not short");
        assertTrue(from(latest + found.inHand() - 0.5).made(), "so much is not in hand");
    }

    /** Far from the window, nothing is known and nothing found. */
    @Test
    void isNotFoundAroundAWrongGuess() {
        assertFalse(STUDY.latest(BRAKING, KNOWN - 40).found());
    }
}
