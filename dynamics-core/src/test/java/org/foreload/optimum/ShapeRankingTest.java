package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.load.SampleCars;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepMemory;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Rounds;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

/** Which shapes tie, and what refining the best of each adds. */
class ShapeRankingTest {

    private static final CornerStudy STUDY = SampleStudies.coarse(SampleCars.ROAD_CAR, SampleStudies.corner());

    private static final Sweep ONE_THREAD = new Sweep(1, Sweep.Progress.SILENT);

    private static final EntryResult ENTRY = STUDY.simulator().probe(SampleStudies.straightLine());

    private static Candidate slowerBy(double seconds) {
        return new Candidate(SampleStudies.withTime(ENTRY, 8 + seconds), true, 0, false);
    }

    @Test
    void shapesThatTheSearchDoesNotSetApartTie() {
        assertEquals(OptionalInt.of(1), ShapeRanking.tied(List.of(slowerBy(0))));
        assertEquals(OptionalInt.of(1), ShapeRanking.tied(List.of(slowerBy(0), slowerBy(0.051))));
        assertEquals(
                OptionalInt.of(3),
                ShapeRanking.tied(List.of(slowerBy(0), slowerBy(0.02), slowerBy(0.049), slowerBy(0.08))));
    }

    @Test
    void whereNoShapeMakesTheCornerNoneTies() {
        assertEquals(OptionalInt.empty(), ShapeRanking.tied(List.of()));
    }

    /** Two shapes in two peaks each, and a brake dropped before the corner, which has no shape to refine. */
    private static final ReleaseSweep SWEEP = new ReleaseSweep(
            STUDY,
            new SweepPlan(
                    List.of(ReleaseShapes.PROGRESSIVE, ReleaseShapes.HELD, ReleaseShapes.ABRUPT),
                    List.of(0.5, 0.6),
                    List.of(-0.2),
                    List.of(0.0),
                    0.25));

    private static final Exploration GRID = SWEEP.coarse(ONE_THREAD, SweepMemory.NONE);

    private static final Exploration REFINED = ShapeRanking.refine(SWEEP, GRID, ONE_THREAD);

    private static double quickest(List<Candidate> candidates, ReleaseShape shape) {
        return candidates.stream()
                .filter(Candidate::made)
                .filter(one -> one.entry().plan().release().shape() == shape)
                .mapToDouble(one -> one.entry().time())
                .min()
                .orElseThrow();
    }

    /**
     * The best of each shape is refined to a quicker release of that shape, and so is the best with the other peak;
     * then once more the two that came out quickest.
     */
    @Test
    void theBestOfEachShapeIsMadeQuicker() {
        List<Candidate> more = REFINED.candidates()
                .subList(GRID.candidates().size(), REFINED.candidates().size());
        assertEquals(
                Set.of(ReleaseShapes.PROGRESSIVE, ReleaseShapes.HELD),
                more.stream().map(one -> one.entry().plan().release().shape()).collect(Collectors.toSet()));
        assertTrue(more.size() > 2 && more.size() <= 2 + 1 + 2, more.size() + " were refined");
        for (ReleaseShape shape : List.of(ReleaseShapes.PROGRESSIVE, ReleaseShapes.HELD)) {
            assertTrue(quickest(more, shape) < quickest(GRID.candidates(), shape) - 0.01, shape.name());
        }
        for (Candidate one : more) {
            BrakePlan plan = one.entry().plan();
            assertEquals(plan.rounded(), plan, "plans are given in decimetres");
            assertTrue(STUDY.allowance().met(one.entry()));
        }
    }

    /** Each release counts once, and each of five descents as often as it may drive; the quickest comes first. */
    @Test
    void theBestOfEachShapeIsCountedAndRanked() {
        AtomicInteger counted = new AtomicInteger();
        Rounds rounds = new Rounds(1, (done, total) -> counted.set(done), 2000);
        List<Braking> releases = SWEEP.releases().stream()
                .filter(one -> one.release().shape() != ReleaseShapes.ABRUPT)
                .toList();
        List<EntryResult> best = ShapeRanking.best(STUDY, releases, rounds);
        assertEquals(releases.size() + 5 * ShapeRanking.ENTRIES, counted.get());
        assertEquals(2, best.size());
        assertTrue(best.get(0).time() < best.get(1).time());
        for (EntryResult one : best) {
            assertEquals(quickest(REFINED.candidates(), one.plan().release().shape()), one.time());
        }
    }

    /** The main job is the sweep and its refinement in one call; what is known already is not searched for again. */
    @Test
    void theSweepAndItsRefinementAreOneCall() {
        List<Integer> told = Collections.synchronizedList(new ArrayList<>());
        Exploration whole = ShapeRanking.explore(SWEEP, new Sweep(2, (done, total) -> {
            assertEquals(SWEEP.releases().size(), total);
            told.add(done);
        }));
        assertEquals(REFINED, whole);
        assertEquals(SWEEP.releases().size(), told.size(), "told of the releases to begin with, and of no others");
        assertTrue(whole.complete());
        assertTrue(whole.gain() > SWEEP.run(ONE_THREAD).gain() + 0.01);
    }

    /** A stop, or an interrupt, after the sweep and before its refinement leaves out three descents, and says so. */
    @Test
    void aRefinementThatWasStoppedIsNotComplete() {
        int releases = SWEEP.releases().size();
        AtomicInteger told = new AtomicInteger();
        Exploration stopped = ShapeRanking.explore(SWEEP, new Sweep(1, new Sweep.Progress() {
            @Override
            public void update(int done, int total) {
                told.set(done);
            }

            @Override
            public boolean stopped() {
                return told.get() == releases;
            }
        }));
        assertFalse(stopped.complete());
        assertEquals(3, stopped.planned() - stopped.candidates().size());
        Thread.currentThread().interrupt();
        Exploration interrupted = ShapeRanking.refine(SWEEP, GRID, ONE_THREAD);
        assertTrue(Thread.interrupted(), "the interrupt was swallowed");
        assertFalse(interrupted.complete());
    }

    @Test
    void aSweepThatWasStoppedIsLeftAsItIs() {
        Candidate only = slowerBy(0);
        Exploration stopped = new Exploration(List.of(only), Optional.empty(), Optional.empty(), 7, 2);
        assertFalse(stopped.complete());
        assertEquals(
                1, ShapeRanking.refine(SWEEP, stopped, ONE_THREAD).candidates().size());
    }
}
