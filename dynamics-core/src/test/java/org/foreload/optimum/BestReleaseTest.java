package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.ToDoubleFunction;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.InvalidValueException;
import org.foreload.entry.EntryResult;
import org.foreload.load.SampleCars;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.Finding;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepPlan;
import org.foreload.strategy.Trial;
import org.foreload.study.Rounds;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A short search on a corner with short straights: what must hold for any length. */
class BestReleaseTest {

    private static final BestRelease SHORT = new BestRelease(7, 2, 40, 0.25);

    private static final CornerStudy STUDY = SampleStudies.coarse(SampleCars.ROAD_CAR, SampleStudies.shortCorner());

    /** What a plan in decimetres may lose of a search's time, s. */
    private static final double ROUNDING = 0.01;

    private static final AtomicInteger COUNTED = new AtomicInteger();

    private static Optimum optimum;

    /** One search, and what must hold of it: whoever changes a line sees at once which. */
    @Test
    void aShortSearch() {
        optimum = SHORT.find(STUDY, 2, (done, total) -> {
            assertEquals(SHORT.total(), total);
            COUNTED.accumulateAndGet(done, Math::max);
        });
        assertAll(
                BestReleaseTest::theSimpleShapesAreRanked,
                BestReleaseTest::theSimpleShapesAreThoseOfTheSweep,
                BestReleaseTest::eachRestartIsASearchOfItsOwn,
                BestReleaseTest::isNoWorseThanEachSimpleFamily,
                BestReleaseTest::theLastLookFindsItAgain,
                BestReleaseTest::liesJustAboveTheBound,
                BestReleaseTest::isTheSameToTheBitOnOneThread);
    }

    /**
     * The quickest shape first, each once, each with the margin; about as many releases as announced have been counted.
     */
    private static void theSimpleShapesAreRanked() {
        List<Optimum.Family> families = optimum.families();
        assertEquals(5, families.stream().map(Optimum.Family::shape).distinct().count());
        for (int i = 0; i < families.size(); i++) {
            Optimum.Family family = families.get(i);
            assertEquals(family.shape(), family.entry().plan().release().shape().name());
            assertTrue(STUDY.allowance().met(family.entry()), family.shape());
            assertTrue(i == 0
                    || families.get(i - 1).entry().time() <= family.entry().time());
        }
        assertTrue(COUNTED.get() > 0.95 * SHORT.total(), "counted " + COUNTED.get());
        assertEquals(STUDY.bound().time(), optimum.boundTime());
    }

    /** The best of each shape is what exploring finds, to the bit, and the best of all is no slower than its best. */
    private static void theSimpleShapesAreThoseOfTheSweep() {
        Exploration explored = explored(STUDY);
        for (Optimum.Family family : optimum.families()) {
            double quickest = explored.candidates().stream()
                    .filter(Exploration.Candidate::made)
                    .map(Exploration.Candidate::entry)
                    .filter(one -> one.plan().release().shape().name().equals(family.shape()))
                    .mapToDouble(EntryResult::time)
                    .min()
                    .orElseThrow();
            assertEquals(quickest, family.entry().time(), family.shape());
        }
        assertTrue(optimum.entry().orElseThrow().time()
                <= explored.best().orElseThrow().entry().time());
    }

    private static Exploration explored(CornerStudy study) {
        return ShapeRanking.explore(new ReleaseSweep(study, SweepPlan.standard()), new Sweep(2, Sweep.Progress.SILENT));
    }

    /**
     * What must be in hand stops searches short of what exploring finds, the best of each shape: it never gets ahead
     * all the same. Nothing is polished; what that would have driven is counted as left out.
     */
    @Test
    void withSomethingInHandIsNeverSlowerThanExploringAndNothingIsPolished() {
        BestRelease shortest = new BestRelease(7, 1, 20, 0.25);
        AtomicInteger counted = new AtomicInteger();
        CornerStudy careful = STUDY.with(new Allowance(0.5, 0.5, 0.01, 0.05, 4));
        Optimum found = shortest.find(careful, 1, (done, total) -> counted.accumulateAndGet(done, Math::max));
        Finding best = found.best().orElseThrow();
        assertTrue(best.entry().time() <= found.families().get(0).entry().time());
        int withoutTheIdeal = shortest.total() - ShapeRanking.ENTRIES;
        assertTrue(counted.get() >= withoutTheIdeal && counted.get() <= shortest.total(), "counted " + counted);
        assertTrue(best.inHand() >= 4, "in hand " + best.inHand());
        assertEquals(5, found.families().size());
        assertEquals(1, found.restarts().size());
    }

    /** The same with a metre in hand, and in a fast corner, where the last look gains on the searches. */
    @Test
    @Tag("long")
    void isNeverSlowerThanExploringElsewhere() {
        neverSlower(STUDY.with(new Allowance(0.5, 0, 0, 0, 1)));
        neverSlower(SampleStudies.coarse(SampleCars.ROAD_CAR, SampleStudies.fastCorner()));
    }

    private static void neverSlower(CornerStudy study) {
        double explored = explored(study).best().orElseThrow().entry().time();
        assertTrue(BestRelease.SIMPLE_SHAPES.find(study).entry().orElseThrow().time() <= explored);
    }

    /**
     * Two searches, each from a shape of its own, that have gone on with places of their own; none comes to less than
     * the best.
     */
    private static void eachRestartIsASearchOfItsOwn() {
        List<Optimum.Restart> restarts = optimum.restarts();
        assertEquals(2, restarts.size());
        assertEquals(7 * 2001 + 2, restarts.get(0).seed());
        assertEquals(7 * 2001 + 3, restarts.get(1).seed());
        assertNotEquals(restarts.get(0).from(), restarts.get(1).from());
        double best = optimum.entry().orElseThrow().time();
        double slowest = optimum.families().get(4).entry().time();
        for (Optimum.Restart restart : restarts) {
            assertTrue(restart.time() < slowest && restart.time() > best - ROUNDING, restart + " beside " + best);
        }
        BrakePlan plan = optimum.entry().orElseThrow().plan();
        assertEquals(plan.rounded(), plan, "plans are given in decimetres");
        assertEquals(0.25, plan.buildUpTime());
    }

    /**
     * Twenty-seven releases of five shapes, three of straight-line braking and three ideal ones; 160 entries to refine
     * each of these six shapes, three others and two once more; two searches with 90, and two that go on, however many
     * searches there are; and two that are polished with four times as many.
     */
    @Test
    void theCountIsThatOfAllSearches() {
        assertEquals(5 * 27 + 3 + 3 + 11 * 160, new BestRelease(1, 0, 90, 0.25).total());
        assertEquals(5 * 27 + 3 + 3 + 11 * 160 + 4 * 90 + 8 * 90, new BestRelease(1, 2, 90, 0.25).total());
        assertEquals(5 * 27 + 3 + 3 + 11 * 160 + (5 + 2) * 90 + 8 * 90, new BestRelease(1, 5, 90, 0.25).total());
    }

    @Test
    void numbersOutsideTheirRangeAreRefused() {
        assertThrows(InvalidValueException.class, () -> new BestRelease(1, -1, 60, 0.25));
        assertThrows(InvalidValueException.class, () -> new BestRelease(1, 1, 19, 0.25));
        assertThrows(InvalidValueException.class, () -> new BestRelease(1, 1, 60, -0.1));
        assertEquals(new BestRelease(7, 2, 40, 0.4), SHORT.withBuildUpTime(0.4));
    }

    private static void isNoWorseThanEachSimpleFamily() {
        EntryResult best = optimum.entry().orElseThrow();
        assertTrue(optimum.complete());
        assertEquals(5, optimum.families().size());
        optimum.families()
                .forEach(family -> assertTrue(best.time() <= family.entry().time(), family.shape()));
        double straight = optimum.straightLine().orElseThrow().entry().time();
        assertTrue(best.time() < straight, "straight-line braking takes " + straight);
        assertTrue(STUDY.allowance().met(best));
    }

    /** The last look at all brake points of one release has nothing left to gain. */
    private static void theLastLookFindsItAgain() {
        EntryResult best = optimum.entry().orElseThrow();
        Finding again = BestRelease.checked(STUDY, best.plan()).orElseThrow();
        assertEquals(best.plan(), again.entry().plan());
        assertEquals(best.time(), again.entry().time());
    }

    /**
     * A search stops at the first brake point beyond which the margin is missed; the last look at one release finds a
     * quicker one.
     */
    @Tag("long")
    @Test
    void theLastLookGainsOnASearchNearTheLatest() {
        CornerStudy study = SampleStudies.coarse(SampleCars.ROAD_CAR, SampleStudies.fastCorner());
        EntryResult best = SHORT.find(study, 1, Sweep.Progress.SILENT).entry().orElseThrow();
        Trial near = study.search().quickest(best.plan().braking());
        assertTrue(near.met());
        EntryResult last =
                BestRelease.checked(study, near.entry().plan()).orElseThrow().entry();
        double gained = study.simulator().run(near.entry().plan()).time() - last.time();
        assertTrue(gained > 0.001, "gained " + gained);
        assertEquals(best.plan(), last.plan(), "the best has had its last look");
    }

    /**
     * A limit bends around the start, the bottom of the bowl lies beyond it: the least is where the way to it leaves.
     */
    @Test
    void aCrowdFindsTheLowestPointOnALimitThatBends() {
        double[] start = {12, 0, 5, 0};
        ToDoubleFunction<double[]> bowl = MadeUpEntries.bowl(14, -1.5, 6, 3);
        ToDoubleFunction<double[]> circle = x -> 50 * (MadeUpEntries.bowl(start).applyAsDouble(x) - 8) - 2;
        AtomicInteger counted = new AtomicInteger();
        Rounds rounds = new Rounds(1, (done, total) -> counted.set(done), 3000);
        MadeUpEntries entries = MadeUpEntries.of(bowl, rounds).with(circle);
        double atStart = bowl.applyAsDouble(start);
        EntryAtPoint found =
                BestRelease.polished(entries, start, atStart, 2000, 1, rounds).orElseThrow();
        double toTheBottom = Math.sqrt(2 * 2 + 1.5 * 1.5 + 1 + 3 * 3);
        assertTrue(found.allowed());
        assertEquals(8 + 0.01 * (toTheBottom - 2) * (toTheBottom - 2), found.time(), 1e-3);
        assertEquals(bowl.applyAsDouble(found.x()), found.time());
        assertTrue(entries.driven() <= 2000, "drove " + entries.driven());
        assertEquals(2000, counted.get(), "what is not driven is counted as left out");
        assertEquals(atStart, entries.asked().get(0));
        double last = entries.asked().get(entries.driven() - 1);
        assertTrue(last < atStart && last >= found.time(), "then only what is quicker: " + last);
    }

    @Test
    void whereNothingIsQuickerACrowdFindsNothing() {
        double[] start = {12, 0, 5, 0};
        Rounds rounds = new Rounds(1, Sweep.Progress.SILENT, 200);
        MadeUpEntries slower = MadeUpEntries.of(MadeUpEntries.bowl(start), rounds);
        assertEquals(Optional.empty(), BestRelease.polished(slower, start, 8, 100, 1, rounds));
        MadeUpEntries beyond =
                MadeUpEntries.of(MadeUpEntries.bowl(start), rounds).with(x -> 0.01);
        assertEquals(Optional.empty(), BestRelease.polished(beyond, start, 9, 100, 1, rounds));
    }

    /** Half a second for each unit, of all limits together or of the verdict, whichever is more. */
    @Test
    void whatGoesBeyondALimitHasItsPrice() {
        double[] none = {};
        assertEquals(9, BestRelease.priced(new EntryAtPoint(none, true, 9, new double[] {-1, -0.2}, 0, none)));
        assertEquals(
                9.2, BestRelease.priced(new EntryAtPoint(none, true, 9, new double[] {0.3, 0.1}, 0.3, none)), 1e-12);
        assertEquals(
                9.4, BestRelease.priced(new EntryAtPoint(none, true, 9, new double[] {0.3, -1}, 0.8, none)), 1e-12);
        assertEquals(1000, BestRelease.priced(new EntryAtPoint(none, false, 9, new double[] {1, 1}, 1, none)));
    }

    /**
     * A plan later than the latest becomes it, and so does one that is only early; one that is early and quicker stays.
     */
    @Test
    void aBestPlanHasItsLatestBrakePointUnlessAnEarlierOneIsQuicker() {
        Braking late = Braking.of(0.8 * STUDY.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, -5, 20))
                .rounded();
        EntryResult latest = STUDY.latest(late).entry();
        double point = latest.plan().brakePoint();
        for (double from : new double[] {point + 3, point, point - 3}) {
            Finding checked = BestRelease.checked(STUDY, late.from(from)).orElseThrow();
            assertEquals(point, checked.entry().plan().brakePoint(), 1e-9);
        }
        Braking gentle = Braking.of(0.5 * STUDY.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, -5, 25))
                .rounded();
        Trial quickest = STUDY.search().quickest(gentle);
        double latestOfGentle = STUDY.latest(gentle).entry().plan().brakePoint();
        assertTrue(quickest.point() < latestOfGentle - 0.3, "a release with which braking earlier pays");
        Finding kept = BestRelease.checked(STUDY, gentle.from(quickest.point())).orElseThrow();
        assertEquals(quickest.point(), kept.entry().plan().brakePoint(), 1e-9);
        assertTrue(kept.found() && kept.inHand() >= 0);
        Finding early =
                BestRelease.checked(STUDY, gentle.from(quickest.point() - 8)).orElseThrow();
        assertEquals(latestOfGentle, early.entry().plan().brakePoint(), 1e-9, "slower by far");
        assertEquals(
                Optional.empty(),
                BestRelease.checked(
                        STUDY, late.withPeakDeceleration(2 * STUDY.lockLimit()).from(point)));
    }

    /** Where nothing keeps what is asked, as a front axle with nearly all its grip left, there is no best. */
    @Test
    void whereNoReleaseKeepsTheMarginThereIsNoBest() {
        CornerStudy strict = STUDY.with(new Allowance(0.5, 0, 0.9, 0.9, 0));
        Optimum none = SHORT.find(strict, 1, Sweep.Progress.SILENT);
        assertEquals(Optional.empty(), none.entry());
        assertTrue(none.families().isEmpty() && none.restarts().isEmpty());
        assertTrue(none.complete());
    }

    /** Within the 4 % of the bound that a practised driver's lags and margins cost at most. */
    private static void liesJustAboveTheBound() {
        assertTrue(optimum.aboveBound() > -0.005 && optimum.aboveBound() < 0.04, "above by " + optimum.aboveBound());
    }

    private static void isTheSameToTheBitOnOneThread() {
        Optimum single = SHORT.find(STUDY, 1, Sweep.Progress.SILENT);
        assertEquals(optimum.restarts(), single.restarts());
        assertEquals(
                optimum.entry().orElseThrow().plan(),
                single.entry().orElseThrow().plan());
        assertEquals(
                optimum.entry().orElseThrow().time(),
                single.entry().orElseThrow().time());
    }

    @Test
    void aStopKeepsWhatWasFound() {
        AtomicInteger seen = new AtomicInteger();
        Optimum stopped = SHORT.find(STUDY, 2, new Sweep.Progress() {
            @Override
            public void update(int done, int total) {
                seen.accumulateAndGet(done, Math::max);
            }

            @Override
            public boolean stopped() {
                return seen.get() >= 85;
            }
        });
        assertFalse(stopped.complete());
        assertTrue(stopped.entry().isPresent());
        assertTrue(seen.get() < 125, "went on for " + seen.get());
    }
}
