package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.braking.SplineRelease;
import org.foreload.braking.TabulatedRelease;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.SimulationSettings;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.junit.jupiter.api.Test;

/** Plans as points: that each is the other's image, and where the space ends. */
class ReleaseSpaceTest {

    /** Rounding of a few products of numbers below 100. */
    private static final double EXACT = 1e-9;

    private static final CornerStudy STUDY = SampleStudies.roadCar();
    private static final double LIMIT = STUDY.lockLimit();
    private static final double APEX = STUDY.simulator().apex();
    private static final double HARDEST = 1.1 * LIMIT;

    /** In a corner of one bend, any. */
    private static final Release LIKE = new Release(ReleaseShapes.LINEAR, 0, 20);

    /** A spline through six values has seven pieces. */
    private static final int PIECES = 7;

    private static ReleaseSpace of(ReleaseShape shape) {
        return ReleaseSpace.of(STUDY, LIKE, HARDEST, 0.25, Optional.of(shape));
    }

    private static ReleaseSpace free() {
        return ReleaseSpace.of(STUDY, LIKE, HARDEST, 0.25, Optional.empty());
    }

    private static Braking braking(ReleaseShape shape) {
        return Braking.of(0.6 * LIMIT, 0.25, new Release(shape, -0.1 * APEX, 0.7 * APEX));
    }

    private static void assertSame(Braking expected, Braking actual) {
        assertEquals(expected.peakDeceleration(), actual.peakDeceleration(), EXACT);
        assertEquals(expected.buildUpTime(), actual.buildUpTime());
        assertEquals(expected.release().start(), actual.release().start(), EXACT);
        assertEquals(expected.release().end(), actual.release().end(), EXACT);
    }

    /** What is left of a shape at the places of a spline. */
    private static double[] atPlaces(ReleaseShape shape) {
        double[] left = new double[PIECES + 1];
        for (int i = 0; i <= PIECES; i++) {
            left[i] = shape.remaining(SplineRelease.place(i, PIECES));
        }
        return left;
    }

    @Test
    void thePointOfAPlanIsThatPlan() {
        Braking braking = braking(ReleaseShapes.HELD);
        ReleaseSpace space = of(ReleaseShapes.HELD);
        double[] x = space.point(braking.from(-50), 1.3);
        assertEquals(4, x.length);
        assertEquals(4, space.size());
        assertSame(braking, space.braking(x));
        assertEquals(ReleaseShapes.HELD, space.braking(x).release().shape());
        assertEquals(1.3, ReleaseSpace.shift(x), EXACT);
    }

    /** One unit of each variable is as much as the space says of itself. */
    @Test
    void aUnitIsASmallShareOfWhatItMeasures() {
        ReleaseSpace space = of(ReleaseShapes.LINEAR);
        double[] x = space.point(braking(ReleaseShapes.LINEAR).from(-50), 0);
        double[] beside = Arrays.stream(x).map(one -> one + 1).toArray();
        Braking here = space.braking(x);
        Braking there = space.braking(beside);
        assertEquals(0.05 * LIMIT, there.peakDeceleration() - here.peakDeceleration(), EXACT);
        assertEquals(0.15 * APEX, there.release().start() - here.release().start(), EXACT);
        assertEquals(0.3 * APEX, there.release().end() - here.release().end(), EXACT);
        assertEquals(0.4, ReleaseSpace.shift(beside), EXACT);
    }

    /** A linear release falls by a step at each place of the spline, and each is larger than the smallest believed. */
    @Test
    void aFreeShapePassesThroughTheShapeItStandsForAtItsPlaces() {
        for (ReleaseShape shape : List.of(ReleaseShapes.LINEAR, ReleaseShapes.CIRCLE)) {
            Braking braking = braking(shape);
            double[] x = free().point(braking.from(-50), 0);
            assertEquals(10, x.length);
            assertEquals(10, free().size());
            assertSame(braking, free().braking(x));
            assertArrayEquals(
                    atPlaces(shape), atPlaces(free().braking(x).release().shape()), EXACT, shape.name());
        }
    }

    /** A step below a hundredth is taken for one, and there are seven steps: so much are all others off together. */
    @Test
    void aShapeWithStepsTooSmallIsMissedByLittle() {
        ReleaseShape early = new TabulatedRelease("early", new double[] {0, 0.4, 1}, new double[] {1, 0, 0});
        for (ReleaseShape shape : List.of(early, ReleaseShapes.TWO_STAGE, ReleaseShapes.PROGRESSIVE)) {
            double[] x = free().point(braking(shape).from(-50), 0);
            double[] read = atPlaces(free().braking(x).release().shape());
            assertArrayEquals(atPlaces(shape), read, 0.07, shape.name());
            for (int i = 1; i <= PIECES; i++) {
                assertTrue(read[i] < read[i - 1], shape.name() + " does not fall to " + i);
            }
        }
    }

    /** A step is as large as the exponential of its own logarithm, counted from the last one's. */
    @Test
    void equalLogarithmsAreEqualSteps() {
        double[] x = free().point(braking(ReleaseShapes.LINEAR).from(-50), 0);
        Arrays.fill(x, 4, 10, 0);
        double[] even = atPlaces(free().braking(x).release().shape());
        for (int i = 0; i <= PIECES; i++) {
            assertEquals(1 - i / 7.0, even[i], EXACT);
        }
        x[6] = 2.5 * Math.log(3);
        double[] left = atPlaces(free().braking(x).release().shape());
        assertEquals(1.0 / 9, left[0] - left[1], EXACT);
        assertEquals(3.0 / 9, left[2] - left[3], EXACT);
        assertEquals(1.0 / 9, left[6], EXACT);
    }

    @Test
    void theSpaceEndsAtTheHardestBrakingAndThreeWaysToTheApexBeforeTurnIn() {
        ReleaseSpace space = of(ReleaseShapes.LINEAR);
        Braking least = space.braking(space.low());
        assertEquals(0.15 * LIMIT, least.peakDeceleration(), EXACT);
        assertEquals(-3 * APEX, least.release().start(), EXACT);
        assertEquals(-2.95 * APEX, least.release().end(), EXACT);
        assertEquals(-60, ReleaseSpace.shift(space.low()), EXACT);
        Braking most = space.braking(space.high());
        assertEquals(HARDEST, most.peakDeceleration(), EXACT);
        assertEquals(1.5 * APEX, most.release().start(), EXACT);
        assertEquals(6 * APEX, most.release().end(), EXACT);
        assertEquals(60, ReleaseSpace.shift(space.high()), EXACT);
    }

    /**
     * Where a wheel of a body that still pitches stops below the limit of a steady car, peaks up to that limit stay.
     */
    @Test
    void peaksUpToTheLockingLimitAreAlwaysWithin() {
        ReleaseSpace space = ReleaseSpace.of(STUDY, LIKE, 0.9 * LIMIT, 0.25, Optional.of(ReleaseShapes.LINEAR));
        assertEquals(LIMIT, space.braking(space.high()).peakDeceleration(), EXACT);
    }

    /** The ratio of a step to the last lies between e to the power of minus and plus six. */
    @Test
    void stepsOfAFreeShapeStayComparable() {
        double[] x = free().point(braking(ReleaseShapes.LINEAR).from(-50), 0);
        Arrays.fill(x, 4, 10, 0);
        x[4] = free().high()[4];
        double[] left = atPlaces(free().braking(x).release().shape());
        assertEquals(6, Math.log((left[0] - left[1]) / left[6]), EXACT);
        x[4] = free().low()[4];
        left = atPlaces(free().braking(x).release().shape());
        assertEquals(-6, Math.log((left[0] - left[1]) / left[6]), 1e-6);
    }

    /** Peaks of a study that is much like another are shares of what that other would brake by. */
    @Test
    void theSamePointBrakesInProportionToWhatIsCountedAsTheWhole() {
        ReleaseSpace less = ReleaseSpace.of(STUDY, LIKE, 0.8 * LIMIT, 0.9 * LIMIT, 0.3);
        double[] x = free().point(braking(ReleaseShapes.LINEAR).from(-50), 0);
        assertEquals(0.8 * 0.6 * LIMIT, less.braking(x).peakDeceleration(), EXACT);
        assertEquals(0.9 * LIMIT, less.braking(less.high()).peakDeceleration(), EXACT);
        assertEquals(0.3, less.braking(x).buildUpTime());
        assertEquals(10, less.size());
    }

    /**
     * A fast approach to a tight corner is braked for long before turn-in: a release may begin where the brake does.
     */
    @Test
    void aReleaseMayBeginAtTheIdealBrakePoint() {
        CornerStudy fast = CornerStudy.of(
                SampleCars.ROAD_CAR,
                new Corner(
                        "a fast approach",
                        50,
                        SegmentPath.of(
                                260,
                                List.of(
                                        Segment.spiralIn(10, 15, Turn.LEFT),
                                        Segment.arc(10, 15, Turn.LEFT),
                                        Segment.spiralOut(10, 15, Turn.LEFT)),
                                40,
                                5)),
                DriverSettings.practised(),
                new SimulationSettings(1e-4, 1),
                Allowance.NO_MARGIN);
        double apex = fast.simulator().apex();
        double brakePoint = fast.bound().brakePoint().orElseThrow();
        assertTrue(brakePoint < -4 * apex, brakePoint + " m before an apex at " + apex);
        ReleaseSpace space = ReleaseSpace.of(fast, LIKE, HARDEST, 0.25, Optional.of(ReleaseShapes.LINEAR));
        assertEquals(brakePoint, space.braking(space.low()).release().start(), EXACT);
        Release longest = space.braking(space.high()).release();
        assertEquals(4.5 * apex - brakePoint - 3 * apex, longest.end() - longest.start(), EXACT);
        assertEquals(1.5 * apex, longest.start(), EXACT);
    }

    @Test
    void aPlanOutsideIsBroughtToTheNearestEnd() {
        ReleaseSpace space = of(ReleaseShapes.LINEAR);
        Release early = new Release(ReleaseShapes.LINEAR, -4 * APEX, 3 * APEX);
        double[] x = space.point(Braking.of(2 * LIMIT, 0.25, early).from(-50), -100);
        assertArrayEquals(new double[] {space.high()[0], space.low()[1], space.high()[2], space.low()[3]}, x, EXACT);
        Release late = new Release(ReleaseShapes.LINEAR, 2 * APEX, 2.01 * APEX);
        double[] y = space.point(Braking.of(0.1 * LIMIT, 0.25, late).from(-50), 100);
        assertArrayEquals(new double[] {space.low()[0], space.high()[1], space.low()[2], space.high()[3]}, y, EXACT);
    }
}
