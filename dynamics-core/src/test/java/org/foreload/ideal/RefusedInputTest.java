package org.foreload.ideal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.conventions.InvalidValueException;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.SpoiltPath;
import org.foreload.path.Turn;
import org.junit.jupiter.api.Test;

/** What no ideal entry can be found for is refused in so many words. */
class RefusedInputTest {

    /**
     * A comparison with NaN is false (IEEE 754, section 5.11), so a search would run through: no bound comes out of it,
     * also where a corner does not look.
     */
    @Test
    void aLineWithAHoleGivesNoBound() {
        SegmentPath sound = SegmentPath.of(200, List.of(Segment.arc(60, 50, Turn.LEFT)), 100, 5);
        for (String what : List.of("curvature", "grade")) {
            assertHole(what, SpoiltPath.of(sound, what, s -> s > 10.8 && s < 12.2, Double.NaN));
        }
    }

    private static void assertHole(String what, Path path) {
        Corner corner = new Corner("own", 30, path);
        String message = assertThrows(IllegalStateException.class, () -> IdealEntry.solve(SampleCars.ROAD_CAR, corner))
                .getMessage();
        assertTrue(message.startsWith(what + " of the line at 1") && message.contains("NaN"), message);
    }

    /** A step of a nanometre means 10¹¹ stations for a hundred metres, more than any memory holds: arithmetic. */
    @Test
    void aStepThatNoMemoryHoldsIsRefused() {
        assertEquals(
                "step_m",
                assertThrows(InvalidValueException.class, () -> IdealOptions.DEFAULT.withStep(1e-9))
                        .field());
    }
}
