package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.foreload.braking.BrakePlan;
import org.junit.jupiter.api.Test;

/** Descents where time and limits are known functions: how far down they come, and with how many entries. */
class KnownDescentTest {

    private static final int ENTRIES = ShapeRanking.ENTRIES;

    /** In the middle of the space: peak, start, length, brake point. */
    private static final double[] START = {12, 0, 5, 0};

    /** Steps that promise less than 0.3 ms are not taken; a bowl is left by somewhat more. */
    private static final double ARRIVED = 5e-3;

    /** Entries that are counted, and where they were. */
    private record Known(
            ToDoubleFunction<double[]> time,
            Function<double[], double[]> limits,
            Predicate<double[]> made,
            Predicate<double[]> early,
            Function<double[], double[]> slips,
            List<double[]> points)
            implements ReleaseDescent.Entries {

        static Known of(ToDoubleFunction<double[]> time, Function<double[], double[]> limits) {
            return new Known(time, limits, x -> true, x -> true, x -> new double[0], new ArrayList<>());
        }

        Known madeWhere(Predicate<double[]> here) {
            return new Known(time, limits, here, early, slips, new ArrayList<>());
        }

        Known keptEarlyWhere(Predicate<double[]> here) {
            return new Known(time, limits, made, here, slips, new ArrayList<>());
        }

        /** With a slip that says how near it comes to a limit, and no more than that it is beyond. */
        Known withSlip(ToDoubleFunction<double[]> limit) {
            return new Known(time, limits, made, early, x -> slip(limit.applyAsDouble(x)), new ArrayList<>());
        }

        private static double[] slip(double limit) {
            return limit > 0 ? new double[] {Double.NaN, 0.05} : new double[] {-5, limit};
        }

        @Override
        public ReleaseSpace space() {
            return MadeUpEntries.SPACE;
        }

        @Override
        public double[] point(BrakePlan plan) {
            return MadeUpEntries.SPACE.point(plan, plan.brakePoint());
        }

        @Override
        public BrakePlan plan(double[] x) {
            return MadeUpEntries.SPACE.braking(x).from(ReleaseSpace.shift(x));
        }

        @Override
        public ReleaseDescent.Tried at(double[] x) {
            points.add(x.clone());
            return new ReleaseDescent.Tried(x, made.test(x), time.applyAsDouble(x), limits.apply(x));
        }

        @Override
        public double[] slips(double[] x) {
            return slips.apply(x);
        }

        @Override
        public boolean early(double[] x) {
            return early.test(x);
        }

        Optional<double[]> from(double[] start, int most) {
            return new ReleaseDescent(this, plan(start), most).quicker().map(this::point);
        }

        double lowestFrom(double[] start) {
            return time.applyAsDouble(from(start, ENTRIES).orElseThrow());
        }
    }

    /** Far within four limits, beyond none; of the second nothing is asked. */
    private static double[] free(double[] x) {
        return new double[] {-5, Double.NEGATIVE_INFINITY, -5, -5};
    }

    /** The same with the first limit a function of the point. */
    private static Function<double[], double[]> first(ToDoubleFunction<double[]> limit) {
        return x -> new double[] {limit.applyAsDouble(x), Double.NEGATIVE_INFINITY, -5, -5};
    }

    private static double[] moved(double... by) {
        double[] x = START.clone();
        for (int i = 0; i < x.length; i++) {
            x[i] += by[i];
        }
        return x;
    }

    @Test
    void aDescentEndsNearTheBottomOfABowl() {
        Known bowl = Known.of(MadeUpEntries.bowl(moved(2, -1.5, 1, 4)), KnownDescentTest::free);
        assertEquals(8, bowl.lowestFrom(START), ARRIVED);
        assertTrue(bowl.points().size() < 60, bowl.points().size() + " entries");
    }

    /** Slopes of a plane are known after five entries; steps of one, two and then three units lead to its corner. */
    @Test
    void onAPlaneEachStepIsLongerUpToThreeUnits() {
        Known plane = Known.of(x -> 8 + 0.01 * (x[1] - x[0]), KnownDescentTest::free);
        double least =
                8 + 0.01 * (MadeUpEntries.SPACE.low()[1] - MadeUpEntries.SPACE.high()[0]);
        assertEquals(least, plane.lowestFrom(START), 1e-9);
        List<double[]> points = plane.points();
        double[] starts = points.subList(4, 9).stream().mapToDouble(x -> x[1]).toArray();
        assertArrayEquals(new double[] {0, -1, -3, -6, -9}, starts, 1e-6);
    }

    /** The brake point may move five times as far, either way. */
    @Test
    void theBrakePointMovesFiveUnitsForOneOfTheOthers() {
        for (int side : new int[] {-1, 1}) {
            Known plane = Known.of(x -> 8 - 0.01 * side * x[3], KnownDescentTest::free);
            plane.from(START, ENTRIES);
            double[] places = plane.points().subList(5, 8).stream()
                    .mapToDouble(x -> side * x[3])
                    .toArray();
            assertArrayEquals(new double[] {5, 15, 30}, places, 1e-6);
        }
    }

    /** Slopes are measured a quarter of a unit to the side where quicker releases mostly lie. */
    @Test
    void slopesAreMeasuredAlongEachVariable() {
        Known plane = Known.of(x -> 8 - 0.01 * x[0], KnownDescentTest::free);
        plane.from(START, ENTRIES);
        double[][] expected = {
            START, moved(0.25, 0, 0, 0), moved(0, 0.25, 0, 0), moved(0, 0, -0.25, 0), moved(0, 0, 0, 0.25)
        };
        for (int i = 0; i < expected.length; i++) {
            assertArrayEquals(expected[i], plane.points().get(i), 1e-9);
        }
    }

    /** Where the corner is not made on one side, or the space ends there, the other side is measured. */
    @Test
    void aSideWithoutAnEntryIsLeftForTheOther() {
        Known late = Known.of(x -> 8 - 0.01 * x[1], KnownDescentTest::free).madeWhere(x -> x[3] < 0.1);
        late.from(START, ENTRIES);
        assertArrayEquals(moved(0, 0, 0, 0.25), late.points().get(4), 1e-9);
        assertArrayEquals(moved(0, 0, 0, -0.25), late.points().get(5), 1e-9);
        double[] end = START.clone();
        end[0] = MadeUpEntries.SPACE.high()[0];
        Known plane = Known.of(x -> 8 - 0.01 * x[1], KnownDescentTest::free);
        plane.from(end, ENTRIES);
        assertEquals(end[0] - 0.25, plane.points().get(1)[0], 1e-9);
    }

    /** Peak and brake point both gain and share a limit: what ends on it is within it, by little. */
    @Test
    void aDescentEndsOnALimit() {
        Known plane = Known.of(x -> 8 - 0.01 * x[0], first(x -> 0.5 * (x[0] - START[0] - 1.2)));
        double[] found = plane.from(START, ENTRIES).orElseThrow();
        assertTrue(found[0] <= START[0] + 1.2 && found[0] > START[0] + 1.1, "ends at " + (found[0] - START[0]));
    }

    /** The lowest point of a bowl on a limit that bends: a circle of two units around the start. */
    @Test
    void aDescentFollowsALimitThatBends() {
        ToDoubleFunction<double[]> circle = x -> 25 * (MadeUpEntries.bowl(START).applyAsDouble(x) - 8) - 1 + 0.1 * x[3];
        Known bowl = Known.of(MadeUpEntries.bowl(moved(3, -3, 0, 0)), first(circle));
        double[] found = bowl.from(START, ENTRIES).orElseThrow();
        assertTrue(circle.applyAsDouble(found) <= 0);
        assertTrue(
                bowl.time().applyAsDouble(found) < 8 + 0.01 * Math.pow(Math.sqrt(18) - 2, 2) + 0.02,
                "down to " + bowl.time().applyAsDouble(found));
    }

    /**
     * A peak half a unit higher meets a limit that no slope has shown: an earlier brake point leads back, in the second
     * correction, which knows what the first one did, a hundredth within it.
     */
    @Test
    void aStepTooFarIsMendedByAnEarlierBrakePoint() {
        ToDoubleFunction<double[]> limit = x -> (x[0] > START[0] + 0.5 ? 0.2 : -0.2) + 0.1 * x[3];
        Known plane = Known.of(x -> 8 - 0.05 * x[0] - 0.01 * x[3], first(limit));
        plane.from(START, ENTRIES);
        double[] step = plane.points().get(5);
        assertEquals(START[0] + 1, step[0], 1e-6);
        assertEquals(1.9, step[3], 1e-6, "as far as the limit allows without it");
        double[] once = plane.points().get(6);
        double[] twice = plane.points().get(7);
        assertEquals(step[0], twice[0], 1e-9);
        assertTrue(once[3] < step[3] && limit.applyAsDouble(once) > 0);
        assertEquals(-0.01, limit.applyAsDouble(twice), 1e-6);
        assertTrue(plane.points().get(8)[0] > step[0] + 1e-3, "and goes on from there");
    }

    /** Where an earlier brake point hardly helps the step is halved instead. */
    @Test
    void aStepThatNoEarlierBrakePointMendsIsHalved() {
        Known plane = Known.of(x -> 8 - 0.05 * x[0], first(x -> x[0] > START[0] + 0.5 ? 0.2 : -0.2));
        plane.from(START, ENTRIES);
        assertEquals(START[0] + 1, plane.points().get(5)[0], 1e-6);
        assertEquals(START[0] + 0.5, plane.points().get(6)[0], 1e-6);
    }

    @Test
    void whatFailsAMetreEarlyIsNotTaken() {
        Known plane = Known.of(x -> 8 - 0.01 * x[0], KnownDescentTest::free);
        Known careful = plane.keptEarlyWhere(x -> x[0] <= START[0] + 0.6);
        double[] found = careful.from(START, ENTRIES).orElseThrow();
        assertTrue(found[0] <= START[0] + 0.6 && found[0] > START[0] + 0.2, "ends at " + found[0]);
        assertEquals(Optional.empty(), plane.keptEarlyWhere(x -> false).from(START, ENTRIES));
    }

    /**
     * What must be in hand is a limit like the others: the descent ends on it, a hundredth within, and goes along it.
     */
    @Test
    void aDescentGoesAlongWhatMustBeInHand() {
        Known plane = Known.of(x -> 8 - 0.01 * x[0] - 0.003 * x[1], KnownDescentTest::free);
        ToDoubleFunction<double[]> slip = x -> 0.5 * (x[0] - START[0] - 0.85) + 0.1 * (x[1] - START[1]);
        double[] found = plane.withSlip(slip).from(START, ENTRIES).orElseThrow();
        assertEquals(-0.01, slip.applyAsDouble(found), 1e-6);
        assertEquals(MadeUpEntries.SPACE.high()[1], found[1], 1e-6, "as late as there is room");
    }

    /** A slip that bends says too little, ahead of it, of where it stops a wheel: then shorter steps lead there. */
    @Test
    void aSlipThatStopsAWheelIsComeNearToByShorterSteps() {
        Known plane = Known.of(x -> 8 - 0.01 * x[0], KnownDescentTest::free);
        double[] found = plane.withSlip(x -> x[0] > START[0] + 0.9 ? 1 : -0.05)
                .from(START, ENTRIES)
                .orElseThrow();
        assertTrue(found[0] <= START[0] + 0.9 && found[0] > START[0] + 0.7, "ends at " + (found[0] - START[0]));
    }

    @Test
    void whereNothingIsQuickerNothingIsFound() {
        Known bowl = Known.of(MadeUpEntries.bowl(START), KnownDescentTest::free);
        assertEquals(Optional.empty(), bowl.from(START, ENTRIES));
        Known level = Known.of(x -> 8, KnownDescentTest::free);
        assertEquals(Optional.empty(), level.from(START, ENTRIES));
        assertEquals(9, level.points().size(), "the start, and slopes measured on either side");
        assertArrayEquals(moved(-0.25, 0, 0, 0), level.points().get(5), 1e-9);
    }

    @Test
    void aStartThatDoesNotMakeTheCornerIsNone() {
        Known none = Known.of(x -> 8 - x[0], KnownDescentTest::free).madeWhere(x -> false);
        assertEquals(Optional.empty(), none.from(START, ENTRIES));
        assertEquals(1, none.points().size());
    }

    /** Each step asks for one entry, and counts one more for the early foot; slopes take four. */
    @Test
    void noMoreEntriesAreTriedThanAllowed() {
        Known plane = Known.of(x -> 8 + 0.01 * x[1], KnownDescentTest::free);
        plane.from(START, 15);
        assertEquals(5 + 5, plane.points().size());
    }
}
