package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.foreload.study.LowDiscrepancy;
import org.junit.jupiter.api.Test;

/** Surfaces through known functions: planes are met exactly, and the least of what they say is where it must be. */
class ReleaseSurfacesTest {

    /** Rounding of a system of equations with numbers up to a hundred. */
    private static final double EXACT = 1e-8;

    /** In the middle of the space: peak, start, length, brake point. */
    private static final double[] CENTRE = {12, 0, 5, 0};

    private static final int MANY = 50;

    /** Points within a unit of the centre. */
    private static final List<double[]> POINTS = LowDiscrepancy.points(4, 20, 1).stream()
            .map(share -> {
                double[] x = CENTRE.clone();
                for (int i = 0; i < x.length; i++) {
                    x[i] += 2 * share[i] - 1;
                }
                return x;
            })
            .toList();

    private static double time(double[] x) {
        return 8 - 0.01 * x[0] + 0.02 * x[1] + 0.03 * x[2] - 0.005 * x[3];
    }

    private static EntryAtPoint entry(double[] x, double time, double limit, double... slips) {
        return new EntryAtPoint(x, true, time, new double[] {limit, -0.75}, limit, slips);
    }

    private static List<EntryAtPoint> planes(ToDoubleFunction<double[]> limit) {
        return POINTS.stream()
                .map(x -> entry(x, time(x), limit.applyAsDouble(x)))
                .toList();
    }

    private static ReleaseSurfaces through(List<EntryAtPoint> known) {
        return ReleaseSurfaces.through(MadeUpEntries.SPACE, known, CENTRE, MANY).orElseThrow();
    }

    private static double[] moved(double... by) {
        double[] x = CENTRE.clone();
        for (int i = 0; i < x.length; i++) {
            x[i] += by[i];
        }
        return x;
    }

    @Test
    void planesAreMetEverywhere() {
        ReleaseSurfaces surfaces = through(planes(x -> 0.1 * x[0] - 2));
        double[] x = moved(0.7, -1.3, 2, 5);
        assertEquals(time(x), surfaces.time(x), EXACT);
        assertArrayEquals(new double[] {time(x), 0.1 * x[0] - 2, -0.75}, surfaces.values(x), EXACT);
    }

    /** Half a second for each unit by which limit and verdict, which here are one, come nearer than the aim. */
    @Test
    void whatComesNearerToALimitThanItShouldHasItsPrice() {
        ReleaseSurfaces surfaces = through(planes(x -> 0.1 * (x[0] - 12)));
        double[] beyond = moved(1, 0, 0, 0);
        assertEquals(time(beyond) + 0.5 * 2 * (0.1 + 0.02), surfaces.cost(beyond, 0.02), EXACT);
        double[] within = moved(-1, 0, 0, 0);
        assertEquals(time(within), surfaces.cost(within, 0.02), EXACT);
        assertEquals(time(within) + 0.5 * 2 * 0.05, surfaces.cost(within, 0.15), EXACT);
    }

    @Test
    void anErrorThatIsNotForgivenHasItsPriceToo() {
        List<EntryAtPoint> known = POINTS.stream()
                .map(x -> entry(x, time(x), -0.5, 0.2 * (x[1] - CENTRE[1]), -0.5))
                .toList();
        double[] x = moved(0, 1, 0, 0);
        assertEquals(time(x) + 0.5 * 0.2, through(known).cost(x, 0), EXACT);
    }

    /** Entries that were not asked what they forgive take no part in what is said of it. */
    @Test
    void whatIsForgivenIsReadOffThoseThatWereAsked() {
        List<EntryAtPoint> known = new ArrayList<>();
        for (int i = 0; i < POINTS.size(); i++) {
            double[] x = POINTS.get(i);
            known.add(i % 2 == 0 ? entry(x, time(x), -0.5, 0.3 * (x[1] - CENTRE[1])) : entry(x, time(x), -0.5));
        }
        double[] x = moved(0, 1, 0, 0);
        assertEquals(time(x) + 0.5 * 0.3, through(known).cost(x, 0), EXACT);
    }

    /** Each limit of an error is read off the entries that know it; one that too few know has no price. */
    @Test
    void aLimitOfAnErrorIsReadOffThoseThatKnowIt() {
        List<EntryAtPoint> known = new ArrayList<>();
        for (int i = 0; i < POINTS.size(); i++) {
            double[] x = POINTS.get(i);
            double first = i % 3 == 0 ? Double.NaN : 0.3 * (x[1] - CENTRE[1]);
            double second = i % 3 == 1 ? Double.NaN : 0.2 * (x[2] - CENTRE[2]);
            double third = i < 4 ? 0.5 : Double.NaN;
            known.add(entry(x, time(x), -0.5, first, second, third));
        }
        double[] x = moved(0, 1, 1, 0);
        assertEquals(time(x) + 0.5 * (0.3 + 0.2), through(known).cost(x, 0), EXACT);
    }

    /** Time on a plane is least in a corner of the region; the brake point may go three times as far as the others. */
    @Test
    void theLeastOfAPlaneIsInACornerOfTheRegion() {
        double[] lowest = through(planes(x -> -0.75)).lowest(CENTRE, 0.6, 0.02);
        assertArrayEquals(moved(0.6, -0.6, -0.6, 1.8), lowest, EXACT);
        List<EntryAtPoint> opposite =
                POINTS.stream().map(x -> entry(x, 16 - time(x), -0.75)).toList();
        assertArrayEquals(moved(-0.6, 0.6, 0.6, -1.8), through(opposite).lowest(CENTRE, 0.6, 0.02), EXACT);
    }

    /**
     * A limit across the region is kept by as much as is aimed for: at 0.2 units less where it rises by a tenth each.
     */
    @Test
    void aLimitIsKeptByTheAim() {
        ReleaseSurfaces surfaces = through(planes(x -> 0.1 * (x[0] - CENTRE[0] - 0.3)));
        assertArrayEquals(moved(0.1, -0.6, -0.6, 1.8), surfaces.lowest(CENTRE, 0.6, 0.02), EXACT);
    }

    /**
     * From beyond a limit that nothing within reach can keep it goes on to where time is least, and no farther beyond.
     */
    @Test
    void aLimitThatCannotBeKeptIsNotExceededFarther() {
        ReleaseSurfaces level = through(planes(x -> 0.5));
        assertArrayEquals(moved(0.6, -0.6, -0.6, 1.8), level.lowest(CENTRE, 0.6, 0.02), EXACT);
        ReleaseSurfaces rising = through(planes(x -> 0.5 + 0.001 * (x[0] - CENTRE[0])));
        double[] lowest = rising.lowest(CENTRE, 0.6, 0.02);
        assertTrue(lowest[0] <= CENTRE[0] + EXACT, "went to " + lowest[0]);
        assertEquals(CENTRE[1] - 0.6, lowest[1], EXACT);
    }

    /** The bottom of a bowl within the region, as far as surfaces are smoothed. */
    @Test
    void theLeastOfABowlIsItsBottom() {
        double[] bottom = moved(0.2, -0.3, 0.1, 0.4);
        ToDoubleFunction<double[]> bowl = MadeUpEntries.bowl(bottom);
        ReleaseSurfaces surfaces = through(
                POINTS.stream().map(x -> entry(x, bowl.applyAsDouble(x), -0.75)).toList());
        double[] lowest = surfaces.lowest(CENTRE, 0.6, 0.02);
        assertEquals(8, bowl.applyAsDouble(lowest), 1e-3);
        assertTrue(bowl.applyAsDouble(CENTRE) > 8.0025);
        assertTrue(surfaces.cost(lowest, 0.02) < surfaces.cost(CENTRE, 0.02));
    }

    @Test
    void theRegionEndsWhereTheSpaceDoes() {
        double[] high = CENTRE.clone();
        high[0] = MadeUpEntries.SPACE.high()[0] - 0.1;
        high[2] = MadeUpEntries.SPACE.low()[2] + 0.2;
        double[] lowest = through(planes(x -> -0.75)).lowest(high, 0.6, 0.02);
        assertEquals(MadeUpEntries.SPACE.high()[0], lowest[0], EXACT);
        assertEquals(MadeUpEntries.SPACE.low()[2], lowest[2], EXACT);
    }

    /** How long an entry took that ended in the grass says nothing of those that make the corner. */
    @Test
    void timeIsReadOffEntriesThatMakeTheCorner() {
        List<EntryAtPoint> known = new ArrayList<>(planes(x -> -0.75));
        known.add(new EntryAtPoint(moved(0.1, 0, 0, 0), false, 3, new double[] {1, 1}, 1, new double[0]));
        ReleaseSurfaces surfaces = through(known);
        assertEquals(time(CENTRE), surfaces.time(CENTRE), EXACT);
        assertTrue(surfaces.cost(moved(0.1, 0, 0, 0), 0) > time(CENTRE) + 0.1, "but its verdict counts");
    }

    @Test
    void onlyTheNearestMakeASurface() {
        List<EntryAtPoint> known = new ArrayList<>();
        known.add(entry(moved(5, 0, 0, 0), 20, 1));
        known.add(entry(moved(0, 5, 5, 0), 2, 1));
        known.addAll(planes(x -> -0.75));
        ReleaseSurfaces surfaces = ReleaseSurfaces.through(MadeUpEntries.SPACE, known, CENTRE, POINTS.size())
                .orElseThrow();
        assertEquals(time(CENTRE), surfaces.time(CENTRE), EXACT);
    }

    /** A plane over four variables takes five points that do not lie in one of three. */
    @Test
    void tooFewEntriesOrThoseInOnePlaneMakeNoSurface() {
        List<EntryAtPoint> known = planes(x -> -0.75);
        List<EntryAtPoint> five = Stream.of(
                        CENTRE, moved(1, 0, 0, 0), moved(0, 1, 0, 0), moved(0, 0, 1, 0), moved(0, 0, 0, 1))
                .map(x -> entry(x, time(x), -0.75))
                .toList();
        assertEquals(
                time(CENTRE),
                ReleaseSurfaces.through(MadeUpEntries.SPACE, five, CENTRE, MANY)
                        .orElseThrow()
                        .time(CENTRE),
                EXACT);
        assertEquals(Optional.empty(), ReleaseSurfaces.through(MadeUpEntries.SPACE, known.subList(0, 4), CENTRE, MANY));
        List<EntryAtPoint> flat = POINTS.stream()
                .map(x -> new double[] {x[0], x[1], x[2], 0})
                .map(x -> entry(x, time(x), -0.75))
                .toList();
        assertEquals(Optional.empty(), ReleaseSurfaces.through(MadeUpEntries.SPACE, flat, CENTRE, MANY));
    }

    @Test
    void entriesOfWhichTooFewMakeTheCornerMakeNoSurface() {
        List<EntryAtPoint> known = new ArrayList<>();
        for (int i = 0; i < POINTS.size(); i++) {
            double[] x = POINTS.get(i);
            known.add(new EntryAtPoint(x, i < 4, time(x), new double[] {-0.5, -0.75}, -0.5, new double[0]));
        }
        assertEquals(Optional.empty(), ReleaseSurfaces.through(MadeUpEntries.SPACE, known, CENTRE, MANY));
    }

    /** Three units of brake point are as far as one of anything else. */
    @Test
    void theBrakePointCountsAThirdOfAnythingElse() {
        assertEquals(3, ReleaseSurfaces.room(3));
        assertEquals(1, ReleaseSurfaces.room(0));
        assertEquals(4 + 9 + 1, ReleaseSurfaces.squareDistance(CENTRE, moved(2, 0, -3, 3)), EXACT);
    }
}
