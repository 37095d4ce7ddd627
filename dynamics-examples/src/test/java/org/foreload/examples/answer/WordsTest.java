package org.foreload.examples.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.junit.jupiter.api.Test;

/** Plans in words. */
class WordsTest {

    private static BrakePlan plan(double brakePoint, double start, double end) {
        return Braking.of(10, 0.25, new Release(ReleaseShapes.LINEAR, start, end))
                .from(brakePoint);
    }

    @Test
    void aPlanSaysWhereItEasesOff() {
        assertEquals(
                "brake 80.0 m before turn-in, to 10.00 m/s², ease off from 5.0 m before turn-in, off 20.0 m after "
                        + "turn-in (linear)",
                Words.brake(plan(-80, -5, 20)));
        assertEquals(
                "brake 80.0 m before turn-in, to 10.00 m/s², ease off from turn-in, off 20.0 m after turn-in (linear)",
                Words.brake(plan(-80, 0, 20)));
        assertEquals(
                "brake 80.0 m before turn-in, to 10.00 m/s², off at once at turn-in", Words.brake(plan(-80, 0, 0)));
    }

    /** A linear release from −20 m to 80 m leaves 60 % of the peak at 20 m. */
    @Test
    void aFootThatComesDownIntoTheReleaseDoesNotReachThePeak() {
        assertEquals(
                "brake 20.0 m after turn-in, to at most 6.00 m/s², off 80.0 m after turn-in (linear); this release is one "
                        + "of 10.00 m/s² from 20.0 m before turn-in",
                Words.brake(plan(20, -20, 80)));
    }
}
