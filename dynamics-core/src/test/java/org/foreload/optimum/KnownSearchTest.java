package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.ToDoubleFunction;
import org.foreload.braking.BrakePlan;
import org.foreload.study.Rounds;
import org.foreload.study.StopAfter;
import org.junit.jupiter.api.Test;

/** Searches on surfaces where time and limits are known functions, of which the least is known. */
class KnownSearchTest {

    /** A gain of a tenth of a millisecond counts; some of them in a row may be left. */
    private static final double ARRIVED = 1e-3;

    private static final int ENTRIES = 200;

    /** In the middle of the space: peak, start, length, brake point. */
    private static final double[] START = {12, 0, 5, 0};

    private static final BrakePlan PLAN = MadeUpEntries.SPACE.braking(START).from(0);

    private static final ToDoubleFunction<double[]> BOWL = MadeUpEntries.bowl(14, -1.5, 6, 3);

    private final AtomicInteger counted = new AtomicInteger();
    private final Rounds rounds = new Rounds(1, (done, total) -> counted.set(done), ENTRIES);

    private SurfaceSearch search(MadeUpEntries entries) {
        return new SurfaceSearch(entries, ENTRIES, 1, rounds);
    }

    @Test
    void aSearchFindsTheBottomOfABowlAndStopsThere() {
        MadeUpEntries entries = MadeUpEntries.of(BOWL, rounds);
        EntryAtPoint found = search(entries).from(PLAN).orElseThrow();
        assertEquals(8, found.time(), ARRIVED);
        assertEquals(BOWL.applyAsDouble(found.x()), found.time());
        assertTrue(entries.driven() < 50, "drove " + entries.driven());
        assertEquals(ENTRIES, counted.get(), "what is not driven is counted as left out");
    }

    /** After the start and the four beside it, only what is quicker than the best so far is asked what it forgives. */
    @Test
    void onlyQuickerEntriesAreAskedWhatTheyForgive() {
        MadeUpEntries entries = MadeUpEntries.of(BOWL, rounds);
        search(entries).from(PLAN);
        double best = BOWL.applyAsDouble(START);
        for (int i = 5; i < entries.driven(); i++) {
            assertEquals(best, entries.asked().get(i), 1e-12, "entry " + i);
            best = Math.min(best, BOWL.applyAsDouble(entries.points().get(i)));
        }
    }

    /** With peaks up to 13 units the least is beside the bottom, a unit off: a hundredth of a second. */
    @Test
    void aSearchFindsTheLowestPointOnALimit() {
        MadeUpEntries entries = MadeUpEntries.of(BOWL, rounds).with(x -> 0.2 * (x[0] - 13));
        EntryAtPoint found = search(entries).from(PLAN).orElseThrow();
        assertTrue(found.allowed());
        assertEquals(8.01, found.time(), ARRIVED);
    }

    /** Where the limit bends the same: a circle of radius two around the start, the bottom farther out. */
    @Test
    void aSearchFindsTheLowestPointOnALimitThatBends() {
        ToDoubleFunction<double[]> circle = x -> 50 * (MadeUpEntries.bowl(START).applyAsDouble(x) - 8) - 2;
        MadeUpEntries entries = MadeUpEntries.of(BOWL, rounds).with(circle).withNothingInHand();
        EntryAtPoint found = search(entries).from(PLAN).orElseThrow();
        double toTheBottom = Math.sqrt(2 * 2 + 1.5 * 1.5 + 1 + 3 * 3);
        assertTrue(found.allowed());
        assertEquals(8 + 0.01 * (toTheBottom - 2) * (toTheBottom - 2), found.time(), ARRIVED);
    }

    /** The least lies in a corner of the space, many units away: steps that pay become longer. */
    @Test
    void aSearchGoesFarWhereItKeepsGaining() {
        MadeUpEntries entries = MadeUpEntries.of(x -> 8 + 0.01 * (x[1] - x[0]), rounds);
        EntryAtPoint found = search(entries).from(PLAN).orElseThrow();
        double[] least = {MadeUpEntries.SPACE.high()[0], MadeUpEntries.SPACE.low()[1]};
        assertArrayEquals(least, Arrays.copyOf(found.x(), 2), 1e-9);
        assertTrue(entries.driven() < 45, "drove " + entries.driven());
    }

    /** Half the region of 0.6 units is one step, and there are enough: each gain widens it by 1.6 times, up to two. */
    @Test
    void theRegionGrowsWithEachGain() {
        MadeUpEntries entries = MadeUpEntries.of(x -> 8 + 0.01 * (x[1] - x[0]), rounds);
        search(entries).from(PLAN);
        double[] starts = entries.points().subList(5, 10).stream()
                .mapToDouble(x -> x[1] - START[1])
                .toArray();
        assertArrayEquals(new double[] {-0.6, -1.56, -3.096, -5.096, -7.096}, starts, 1e-6);
    }

    /**
     * Without a gain it shrinks to 0.7 of what it was, and what is driven lies within it, the brake point farther out.
     */
    @Test
    void theRegionShrinksWithoutAGain() {
        MadeUpEntries entries = MadeUpEntries.of(MadeUpEntries.bowl(START), rounds);
        search(entries).from(PLAN);
        double region = 0.6;
        double farthest = 0;
        double[] sides = new double[START.length];
        for (double[] x : entries.points().subList(5, entries.driven())) {
            for (int i = 0; i < START.length; i++) {
                double off = (x[i] - START[i]) / region;
                assertTrue(Math.abs(off) <= ReleaseSurfaces.room(i) + 1e-9, off + " regions off");
                sides[i] += Math.signum(off);
            }
            farthest = Math.max(farthest, Math.abs(x[3] - START[3]) / region);
            region = Math.max(0.05, 0.7 * region);
        }
        assertTrue(farthest > 0.7, "the brake point only went " + farthest);
        for (double side : sides) {
            assertTrue(Math.abs(side) < 14, "all on one side");
        }
    }

    @Test
    void aStartBeyondALimitIsLeftForAnEntryThatKeepsIt() {
        MadeUpEntries entries = MadeUpEntries.of(BOWL, rounds).with(x -> 0.2 * (x[0] - 11.95));
        EntryAtPoint found = search(entries).from(PLAN).orElseThrow();
        assertTrue(found.allowed());
        assertEquals(8 + 0.01 * 2.05 * 2.05, found.time(), ARRIVED);
        assertEquals(Double.POSITIVE_INFINITY, entries.asked().get(5), "each that keeps its limits is asked");
        assertTrue(entries.asked().get(entries.driven() - 1) < 8.1, "then only quicker ones");
    }

    @Test
    void whereNoEntryKeepsItsLimitsNoneIsFound() {
        MadeUpEntries entries = MadeUpEntries.of(BOWL, rounds).with(x -> 0.5);
        assertEquals(Optional.empty(), search(entries).from(PLAN));
    }

    /** At the bottom nothing is gained: one entry, one beside it along each of four variables, and then fifteen. */
    @Test
    void aSearchStopsAfterFifteenEntriesWithoutAGain() {
        MadeUpEntries entries = MadeUpEntries.of(MadeUpEntries.bowl(START), rounds);
        assertEquals(8, search(entries).from(PLAN).orElseThrow().time(), 1e-12);
        assertEquals(20, entries.driven());
    }

    @Test
    void withNothingInHandItStopsAfterThirty() {
        MadeUpEntries entries =
                MadeUpEntries.of(MadeUpEntries.bowl(START), rounds).withNothingInHand();
        assertEquals(8, search(entries).from(PLAN).orElseThrow().time(), 1e-12);
        assertEquals(35, entries.driven());
    }

    /** Entries that gain nothing are driven at places of their own, none twice. */
    @Test
    void whereNothingIsPromisedItLooksWhereLittleIsKnown() {
        MadeUpEntries entries = MadeUpEntries.of(MadeUpEntries.bowl(START), rounds);
        search(entries).from(PLAN);
        List<double[]> points = entries.points();
        for (int i = 0; i < points.size(); i++) {
            double[] one = points.get(i);
            assertTrue(
                    points.subList(0, i).stream().allMatch(other -> ReleaseSurfaces.squareDistance(one, other) > 1e-4),
                    "twice at " + Arrays.toString(one));
        }
    }

    @Test
    void noMoreEntriesAreDrivenThanAskedFor() {
        MadeUpEntries entries = MadeUpEntries.of(BOWL, rounds);
        EntryAtPoint found = new SurfaceSearch(entries, 9, 1, rounds).from(PLAN).orElseThrow();
        assertEquals(9, entries.driven());
        assertTrue(found.time() < BOWL.applyAsDouble(START));
        assertEquals(9, counted.get());
    }

    @Test
    void aStopEndsASearchWithTheBestSoFar() {
        StopAfter stop = new StopAfter(8);
        Rounds stopping = new Rounds(1, stop, ENTRIES);
        MadeUpEntries entries = MadeUpEntries.of(BOWL, stopping);
        assertTrue(new SurfaceSearch(entries, ENTRIES, 1, stopping).from(PLAN).isPresent());
        assertEquals(8, entries.driven());
        assertEquals(8, stop.cases());
    }

    /** A car that does not make it is tried 0.3, 0.7, 1.5 and 3 m earlier, and then given up. */
    @Test
    void aStartThatIsTooLateIsTriedEarlier() {
        MadeUpEntries never = MadeUpEntries.of(BOWL, rounds).madeWhere(x -> false);
        assertEquals(Optional.empty(), search(never).from(PLAN));
        double[] shifts =
                never.points().stream().mapToDouble(ReleaseSpace::shift).toArray();
        assertArrayEquals(new double[] {0, -0.3, -0.7, -1.5, -3}, shifts, 1e-9);
        MadeUpEntries early = MadeUpEntries.of(BOWL, rounds).madeWhere(x -> ReleaseSpace.shift(x) < -0.5);
        assertTrue(search(early).from(PLAN).isPresent());
        assertEquals(-0.7, ReleaseSpace.shift(early.points().get(2)), 1e-9);
        assertEquals(-0.7, ReleaseSpace.shift(early.points().get(3)), 1e-9, "the first beside it");
    }

    /** To the sides where quicker entries mostly lie: harder, later, shorter, and a later brake point. */
    @Test
    void theFirstEntriesLieAlongEachVariable() {
        MadeUpEntries entries = MadeUpEntries.of(BOWL, rounds);
        search(entries).from(PLAN);
        double[] offsets = {0.25, 0.25, -0.25, 0.5};
        for (int i = 0; i < START.length; i++) {
            double[] expected = START.clone();
            expected[i] += offsets[i];
            assertArrayEquals(expected, entries.points().get(1 + i), 1e-9);
            assertEquals(Double.POSITIVE_INFINITY, entries.asked().get(1 + i), "each is asked what it forgives");
        }
    }

    /** Where there is no corner to be made on one side it is tried on the other, and then nearer. */
    @Test
    void theFirstEntriesMakeTheCorner() {
        MadeUpEntries entries = MadeUpEntries.of(BOWL, rounds).madeWhere(x -> Math.abs(x[0] - START[0]) < 0.2);
        search(entries).from(PLAN);
        double[] tried = entries.points().stream()
                .limit(5)
                .mapToDouble(x -> x[0] - START[0])
                .toArray();
        assertArrayEquals(new double[] {0, 0.25, -0.25, 0.25 / 3, 0}, tried, 1e-9);
    }

    /** The same where it is made far beyond a limit: a slope to there says little of the start. */
    @Test
    void theFirstEntriesDoNotGoFarBeyondALimit() {
        MadeUpEntries entries = MadeUpEntries.of(BOWL, rounds).with(x -> x[0] > START[0] + 0.2 ? 1 : -1);
        search(entries).from(PLAN);
        assertEquals(START[0] + 0.25, entries.points().get(1)[0], 1e-9);
        assertEquals(START[0] - 0.25, entries.points().get(2)[0], 1e-9);
        assertEquals(START[0], entries.points().get(3)[0], 1e-9);
        MadeUpEntries near = MadeUpEntries.of(BOWL, rounds).with(x -> x[0] > START[0] + 0.2 ? 0.9 : -1);
        search(near).from(PLAN);
        assertEquals(START[0], near.points().get(2)[0], 1e-9, "the next variable");
    }

    /** Where all that make the corner lie in one plane there is no surface: it looks as far from each as it can. */
    @Test
    void withoutASurfaceItLooksFarFromAllThatIsKnown() {
        MadeUpEntries entries = MadeUpEntries.of(BOWL, rounds).madeWhere(x -> Math.abs(x[1] - START[1]) < 1e-9);
        EntryAtPoint found = search(entries).from(PLAN).orElseThrow();
        assertArrayEquals(START, found.x(), 1e-9, "none beside it makes the corner in every variable");
        List<double[]> points = entries.points();
        assertEquals(1 + 7 + 15, points.size());
        double[] first = points.get(8);
        for (double[] before : points.subList(0, 8)) {
            assertTrue(ReleaseSurfaces.squareDistance(first, before) > 0.1, "near " + Arrays.toString(before));
        }
    }

    @Test
    void atTheEndOfTheSpaceTheFirstEntriesLieOnTheOtherSide() {
        double[] end = START.clone();
        end[0] = MadeUpEntries.SPACE.high()[0];
        MadeUpEntries entries = MadeUpEntries.of(BOWL, rounds);
        search(entries).from(MadeUpEntries.SPACE.braking(end).from(0));
        assertEquals(end[0] - 0.25, entries.points().get(1)[0], 1e-9);
    }

    @Test
    void theSameSeedDrivesTheSameEntries() {
        MadeUpEntries first = MadeUpEntries.of(BOWL, rounds);
        MadeUpEntries again = MadeUpEntries.of(BOWL, rounds);
        MadeUpEntries other = MadeUpEntries.of(BOWL, rounds);
        SurfaceSearch search = search(first);
        search.from(PLAN);
        search(again).from(PLAN);
        new SurfaceSearch(other, ENTRIES, 2, rounds).from(PLAN);
        assertEquals(
                Arrays.deepToString(first.points().toArray()),
                Arrays.deepToString(again.points().toArray()));
        assertNotEquals(
                Arrays.deepToString(first.points().toArray()),
                Arrays.deepToString(other.points().toArray()));
        assertEquals(first.driven(), search.known().size());
    }
}
