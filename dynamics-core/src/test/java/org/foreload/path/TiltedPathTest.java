package org.foreload.path;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;

class TiltedPathTest {

    private static final SegmentPath LEVEL =
            SegmentPath.of(50, List.of(Segment.spiralIn(20, 30, Turn.LEFT), Segment.arc(25, 30, Turn.LEFT)), 40, 5);

    /** The same as drawing the line on that slope in the first place. */
    @Test
    void isTheLineDrawnOnASlope() {
        Path drawn = LEVEL.withGrade(0.05).withBanking(-0.1);
        Path tilted = new TiltedPath(LEVEL.withGrade(0.02), 0.03, -0.1);
        assertEquals(drawn.start(), tilted.start());
        assertEquals(drawn.end(), tilted.end());
        assertArrayEquals(drawn.kinks(), tilted.kinks());
        for (double s = -50; s <= 85; s += 7.5) {
            assertEquals(drawn.grade(s), tilted.grade(s), 1e-15);
            assertEquals(drawn.banking(s), tilted.banking(s), 1e-15);
            assertEquals(drawn.curvature(s), tilted.curvature(s));
            assertEquals(drawn.curvatureGradient(s), tilted.curvatureGradient(s));
            assertEquals(drawn.heading(s), tilted.heading(s));
            assertEquals(drawn.position(s), tilted.position(s));
            assertEquals(drawn.widthLeft(s), tilted.widthLeft(s));
            assertEquals(drawn.widthRight(s), tilted.widthRight(s));
        }
    }

    @Test
    void aMirrorTurnsTheBankingAndNotTheGrade() {
        Path mirrored = new TiltedPath(LEVEL, 0.03, 0.1).mirrored();
        assertEquals(0.03, mirrored.grade(10));
        assertEquals(-0.1, mirrored.banking(10));
        assertEquals(-LEVEL.curvature(10), mirrored.curvature(10));
    }

    @Test
    void aWallIsRefused() {
        assertEquals(
                "grade",
                assertThrows(InvalidValueException.class, () -> new TiltedPath(LEVEL, 1.6, 0))
                        .field());
        assertEquals(
                "banking",
                assertThrows(InvalidValueException.class, () -> new TiltedPath(LEVEL, 0, -1.6))
                        .field());
    }
}
