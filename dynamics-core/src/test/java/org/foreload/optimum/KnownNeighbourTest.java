package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.ToDoubleFunction;
import org.foreload.study.Rounds;
import org.foreload.study.StopAfter;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Searches that set out from what is known of a study much like theirs; both are known functions. */
class KnownNeighbourTest {

    private static final int ENTRIES = 100;
    private static final double[] START = {12, 0, 5, 0};
    private static final ToDoubleFunction<double[]> LIMIT = x -> 0.2 * (x[0] - 13);

    /** Who looks nowhere but where something is promised stops a little before the least, s. */
    private static final double NEARLY = 3e-3;

    private static List<EntryAtPoint> known;
    private static EntryAtPoint best;

    private final AtomicInteger counted = new AtomicInteger();
    private final Rounds rounds = new Rounds(1, (done, total) -> counted.set(done), ENTRIES);

    @BeforeAll
    static void searchTheFirst() {
        Rounds silent = new Rounds(1, Sweep.Progress.SILENT, ENTRIES);
        MadeUpEntries first =
                MadeUpEntries.of(MadeUpEntries.bowl(14, -1.5, 6, 3), silent).with(LIMIT);
        SurfaceSearch search = new SurfaceSearch(first, ENTRIES, 1, silent);
        best = search.from(MadeUpEntries.SPACE.braking(START).from(0)).orElseThrow();
        known = List.copyOf(search.known());
    }

    /** Half a second slower, its bottom a little aside, and a limit that is reached a twentieth of a unit sooner. */
    private MadeUpEntries muchLikeIt() {
        ToDoubleFunction<double[]> bowl = MadeUpEntries.bowl(14, -1.3, 6.2, 2.7);
        return MadeUpEntries.of(x -> bowl.applyAsDouble(x) + 0.5, rounds).with(x -> LIMIT.applyAsDouble(x) + 0.01);
    }

    @Test
    void itsBestIsFoundWithFewEntries() {
        MadeUpEntries entries = muchLikeIt();
        SurfaceSearch search = new SurfaceSearch(entries, ENTRIES, 1, rounds);
        EntryAtPoint found = search.near(known, best.x()).orElseThrow();
        assertTrue(found.allowed());
        assertEquals(8.5 + 0.01 * 1.05 * 1.05, found.time(), NEARLY);
        assertTrue(entries.driven() < 12, "drove " + entries.driven());
        assertEquals(ENTRIES, counted.get());
    }

    /** What was driven elsewhere is taken for half a second slower here, and the place driven here is not taken. */
    @Test
    void entriesOfTheFirstStandInMovedByWhatItsOwnShows() {
        Rounds stopped = new Rounds(1, new StopAfter(0), ENTRIES);
        MadeUpEntries entries =
                MadeUpEntries.of(x -> MadeUpEntries.bowl(14, -1.5, 6, 3).applyAsDouble(x) + 0.5, stopped);
        SurfaceSearch search = new SurfaceSearch(entries, ENTRIES, 1, stopped);
        search.near(known, best.x());
        assertEquals(1, entries.driven());
        long apart = known.stream()
                .filter(one -> ReleaseSurfaces.squareDistance(one.x(), best.x()) >= 0.05 * 0.05)
                .count();
        assertEquals(1 + apart, search.known().size());
        assertTrue(apart < known.size() && apart > known.size() / 2);
        for (EntryAtPoint one : search.known()) {
            double there = MadeUpEntries.bowl(14, -1.5, 6, 3).applyAsDouble(one.x());
            assertEquals(there + 0.5, one.time(), 1e-3);
        }
    }

    /** Where nothing is promised any more no entry is driven: the first study has looked around already. */
    @Test
    void theSameStudyAgainTakesHardlyAnEntry() {
        MadeUpEntries entries =
                MadeUpEntries.of(MadeUpEntries.bowl(14, -1.5, 6, 3), rounds).with(LIMIT);
        EntryAtPoint found = new SurfaceSearch(entries, ENTRIES, 1, rounds)
                .near(known, best.x())
                .orElseThrow();
        assertEquals(best.time(), found.time(), 1e-3);
        assertTrue(entries.driven() < 6, "drove " + entries.driven());
    }

    @Test
    void tooFewEntriesSayNothing() {
        MadeUpEntries entries = muchLikeIt();
        SurfaceSearch search = new SurfaceSearch(entries, ENTRIES, 1, rounds);
        assertEquals(Optional.empty(), search.near(known.subList(0, 3), best.x()));
        assertEquals(1, entries.driven());
    }

    @Test
    void aStartThatDoesNotMakeTheCornerIsNone() {
        MadeUpEntries entries = muchLikeIt().madeWhere(x -> false);
        SurfaceSearch search = new SurfaceSearch(entries, ENTRIES, 1, rounds);
        assertEquals(Optional.empty(), search.near(known, best.x()));
        assertEquals(5, entries.driven());
    }
}
