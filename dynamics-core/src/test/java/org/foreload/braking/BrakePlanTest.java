package org.foreload.braking;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;

/** A plan is when × how hard × how it comes off. */
class BrakePlanTest {

    private static final double NAN = Double.NaN;
    private static final Release RELEASE = new Release(ReleaseShapes.LINEAR, -20, 20);
    private static final BrakePlan PLAN = Braking.of(8, 0.4, RELEASE).from(-100);

    @Test
    void nothingIsAskedForBeforeTheBrakePoint() {
        assertEquals(0, PLAN.demand(-100.1, -0.002));
    }

    @Test
    void buildUpIsHalfACosineInTime() {
        assertEquals(0, PLAN.demand(-100, 0));
        assertEquals(8 * 0.25, PLAN.demand(-93, 0.4 / 3), 1e-14);
        assertEquals(4, PLAN.demand(-90, 0.2), 1e-14);
        assertEquals(8 * 0.75, PLAN.demand(-87, 0.8 / 3), 1e-14);
        assertEquals(8, PLAN.demand(-80, 0.4));
    }

    @Test
    void thePeakIsHeldUntilTheRelease() {
        assertEquals(8, PLAN.demand(-20, 3));
    }

    @Test
    void theReleaseRunsOverDistance() {
        assertEquals(6, PLAN.demand(-10, 3), 1e-14);
        assertEquals(2, PLAN.demand(10, 17), 1e-14);
        assertEquals(0, PLAN.demand(20, 17));
        assertEquals(0, PLAN.demand(50, 17));
    }

    /** The peak of a plan is told in hundredths of m/s², rounded down, but never to nothing. */
    @Test
    void aSoftPeakIsRoundedToAHundredthAtLeast() {
        assertEquals(7.85, Braking.of(7.859, 0.4, RELEASE).rounded().peakDeceleration());
        assertEquals(0.01, Braking.of(0.0149, 0.4, RELEASE).rounded().peakDeceleration());
        assertEquals(0.01, Braking.of(0.004, 0.4, RELEASE).rounded().peakDeceleration());
    }

    @Test
    void aReleaseThatStartsDuringBuildUpCutsThePeak() {
        assertEquals(4 * 0.5, PLAN.demand(0, 0.2), 1e-14);
    }

    @Test
    void noBuildUpTimeMeansThePeakAtOnce() {
        assertEquals(8, Braking.of(8, 0, RELEASE).from(-100).demand(-100, 0));
    }

    @Test
    void anotherBrakePointChangesNothingElse() {
        assertEquals(Braking.of(8, 0.4, RELEASE).from(-90), PLAN.withBrakePoint(-90));
    }

    @Test
    void aBrakeDroppedAtOnceHasOneKink() {
        Release drop = new Release(ReleaseShapes.TWO_STAGE, 5, 5);
        assertEquals(1, drop.remaining(4.999));
        assertEquals(0, drop.remaining(5));
        assertArrayEquals(new double[] {5}, drop.kinks());
    }

    @Test
    void anAbruptReleaseHoldsToItsEnd() {
        Release abrupt = new Release(ReleaseShapes.ABRUPT, -20, 20);
        assertEquals(1, abrupt.remaining(19.999));
        assertEquals(0, abrupt.remaining(20));
    }

    @Test
    void kinksOfTheShapeAreScaledOntoTheLine() {
        Release twoStage = new Release(ReleaseShapes.TWO_STAGE, -20, 30);
        assertArrayEquals(new double[] {-20, -10, 20, 30}, twoStage.kinks(), 1e-12);
    }

    @Test
    void impossibleNumbersAreRefused() {
        refused("brake_point", () -> Braking.of(8, 0.4, RELEASE).from(NAN));
        refused("peak_deceleration", () -> Braking.of(NAN, 0.4, RELEASE).from(-100));
        refused("peak_deceleration", () -> Braking.of(0, 0.4, RELEASE).from(-100));
        refused("build_up_time", () -> Braking.of(8, NAN, RELEASE).from(-100));
        refused("build_up_time", () -> Braking.of(8, -0.1, RELEASE).from(-100));
        refused("release_start", () -> new Release(ReleaseShapes.LINEAR, NAN, 0));
        refused("release_end", () -> new Release(ReleaseShapes.LINEAR, 0, NAN));
        refused("release_end", () -> new Release(ReleaseShapes.LINEAR, 0, -1));
    }

    private static void refused(String field, Runnable making) {
        assertEquals(
                field, assertThrows(InvalidValueException.class, making::run).field());
    }
}
