package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.foreload.braking.BrakePlan;
import org.foreload.conventions.InvalidValueException;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.entry.SimulationSettings;
import org.foreload.load.SampleCars;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepMemory;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A short search on a corner with short straights: what must hold for any length. */
class BestReleaseTest {

    private static final BestRelease SHORT = new BestRelease(7, 2, 60, 0.25);

    /** What is compared here differs by milliseconds at least. */
    private static final double COARSE = 1e-4;

    private static final CornerStudy STUDY = CornerStudy.of(
            SampleCars.ROAD_CAR,
            SampleStudies.corner(),
            DriverSettings.practised(),
            new SimulationSettings(COARSE, 1),
            Allowance.NO_MARGIN);

    /** What a plan in decimetres may lose of a search's time, s. */
    private static final double ROUNDING = 0.01;

    private static final AtomicInteger COUNTED = new AtomicInteger();

    private static Optimum optimum;

    @BeforeAll
    static void search() {
        optimum = SHORT.find(STUDY, 2, (done, total) -> {
            assertEquals(SHORT.total(), total);
            COUNTED.accumulateAndGet(done, Math::max);
        });
    }

    /**
     * The quickest shape first, each once, each with the margin; about as many releases as announced have been counted.
     */
    @Test
    void theSimpleShapesAreRanked() {
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

    /** The best of each shape is the one that a sweep finds, refined: whoever compares the two finds one answer. */
    @Test
    void theSimpleShapesAreThoseOfTheSweep() {
        ReleaseSweep sweep = new ReleaseSweep(STUDY, SweepPlan.standard());
        Sweep threads = new Sweep(2, Sweep.Progress.SILENT);
        Exploration refined = ShapeRanking.refine(sweep, sweep.coarse(threads, SweepMemory.NONE), threads);
        for (Optimum.Family family : optimum.families()) {
            double explored = refined.candidates().stream()
                    .filter(Exploration.Candidate::made)
                    .map(Exploration.Candidate::entry)
                    .filter(one -> one.plan().release().shape().name().equals(family.shape()))
                    .mapToDouble(EntryResult::time)
                    .min()
                    .orElseThrow();
            assertEquals(explored, family.entry().time(), COARSE, family.shape());
        }
    }

    /**
     * Two searches of the last round, each with places of its own, from two shapes; none comes to less than the best.
     */
    @Test
    void eachRestartIsASearchOfItsOwn() {
        List<Optimum.Restart> restarts = optimum.restarts();
        assertEquals(2, restarts.size());
        assertNotEquals(restarts.get(0).seed(), restarts.get(1).seed());
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
     * Twenty-seven releases of five shapes and three ideal ones; a hundred entries to refine each of these six shapes;
     * two rounds of two searches with 90; and two that are polished with four times as many.
     */
    @Test
    void theCountIsThatOfAllSearches() {
        assertEquals(5 * 27 + 3 + 6 * 100, new BestRelease(1, 0, 90, 0.25).total());
        assertEquals(5 * 27 + 3 + 6 * 100 + 4 * 90 + 8 * 90, new BestRelease(1, 2, 90, 0.25).total());
    }

    @Test
    void numbersOutsideTheirRangeAreRefused() {
        assertThrows(InvalidValueException.class, () -> new BestRelease(1, -1, 60, 0.25));
        assertThrows(InvalidValueException.class, () -> new BestRelease(1, 1, 19, 0.25));
        assertThrows(InvalidValueException.class, () -> new BestRelease(1, 1, 60, -0.1));
        assertEquals(new BestRelease(7, 2, 60, 0.4), SHORT.withBuildUpTime(0.4));
    }

    @Test
    void isNoWorseThanEachSimpleFamily() {
        EntryResult best = optimum.entry().orElseThrow();
        assertTrue(optimum.complete());
        assertEquals(5, optimum.families().size());
        optimum.families()
                .forEach(family -> assertTrue(best.time() <= family.entry().time(), family.shape()));
        assertTrue(STUDY.allowance().met(best));
    }

    /** With nothing in hand, the crowd that polishes the two best finds its way along limits where surfaces end. */
    @Test
    void polishingGainsOnEverySearch() {
        double searched = Math.min(
                optimum.restarts().stream()
                        .mapToDouble(Optimum.Restart::time)
                        .min()
                        .orElseThrow(),
                optimum.families().stream()
                        .mapToDouble(family -> family.entry().time())
                        .min()
                        .orElseThrow());
        double gained = searched - optimum.entry().orElseThrow().time();
        assertTrue(gained > 0.001, "gained " + gained);
    }

    /** Within the 4 % of the bound that a practised driver's lags and margins cost at most. */
    @Test
    void liesJustAboveTheBound() {
        assertTrue(optimum.aboveBound() > -0.005 && optimum.aboveBound() < 0.04, "above by " + optimum.aboveBound());
    }

    @Test
    void isTheSameToTheBitOnOneThread() {
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
