package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.strategy.CornerStudy;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RestOfReleaseTest {

    private static BrakePlan plan(ReleaseShape shape, double brakePoint) {
        return Braking.of(9, 0.25, new Release(shape, -30, 50)).from(brakePoint);
    }

    /** What is asked of the brake is the same at every place and time from the brake point on. */
    @ParameterizedTest
    @ValueSource(strings = {"linear", "progressive", "held", "circle", "smooth", "two-stage"})
    void asksTheSameOfTheBrake(String name) {
        BrakePlan whole = plan(ReleaseShapes.named(name), 7);
        BrakePlan rest = RestOfRelease.of(whole);
        assertEquals(7, rest.release().start());
        for (double station = 7; station <= 60; station += 0.37) {
            double time = (station - 7) / 30;
            assertEquals(whole.demand(station, time), rest.demand(station, time), 1e-12, name + " at " + station);
        }
        double last = 0;
        for (double kink : rest.release().shape().kinks()) {
            assertTrue(kink > last && kink < 1, name);
            last = kink;
        }
    }

    /** Seven is at 37 of 80 metres; what has a corner after that has it at the same place. */
    @Test
    void cornersOfTheShapeStayWhereTheyAre() {
        BrakePlan whole = plan(ReleaseShapes.TWO_STAGE, 7);
        BrakePlan rest = RestOfRelease.of(whole);
        double[] beyond =
                Arrays.stream(whole.release().kinks()).filter(s -> s > 7).toArray();
        double[] kinks = rest.release().kinks();
        assertTrue(beyond.length > 1);
        assertEquals(7, kinks[0]);
        assertArrayEquals(beyond, Arrays.copyOfRange(kinks, 1, kinks.length), 1e-9);
        assertEquals("two-stage", rest.release().shape().name());
    }

    /** A foot that comes down just where a shape has a corner has it behind. */
    @Test
    void aCornerAtTheBrakePointIsNone() {
        double[] all = ReleaseShapes.TWO_STAGE.kinks();
        ReleaseShape rest = new RestOfRelease(ReleaseShapes.TWO_STAGE, all[0]);
        assertEquals(all.length - 1, rest.kinks().length);
        assertTrue(rest.kinks()[0] > 0);
    }

    @Test
    void aPlanThatReachesItsPeakStaysAsItIs() {
        BrakePlan just = plan(ReleaseShapes.LINEAR, -30);
        assertSame(just, RestOfRelease.of(just));
        BrakePlan early = plan(ReleaseShapes.LINEAR, -40);
        assertSame(early, RestOfRelease.of(early));
        BrakePlan off = plan(ReleaseShapes.LINEAR, 50);
        assertSame(off, RestOfRelease.of(off), "nothing is left where the brake is off");
    }

    /** The estimate of the brake point hardly jumps as it moves into the release, and does not pass its end. */
    @Test
    void theEstimateMovesIntoTheRelease() {
        CornerStudy study = SampleStudies.roadCar();
        double last = Double.NaN;
        boolean within = false;
        for (double start = -120; start <= 0; start += 0.25) {
            Braking plan = Braking.of(0.8 * study.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, start, 60));
            double estimate = study.search().estimate(plan);
            assertTrue(Double.isNaN(last) || Math.abs(estimate - last) < 1, "from " + last + " to " + estimate);
            assertTrue(estimate < plan.release().end());
            within |= estimate > plan.release().start();
            last = estimate;
        }
        assertTrue(within, "some of these releases are entered late");
    }
}
