package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.foreload.braking.Braking;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.entry.SimulationSettings;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

/** Sweeps of a few releases. */
class ExplorationTest {

    private static final SweepPlan FEW = new SweepPlan(
            List.of(ReleaseShapes.LINEAR, ReleaseShapes.SMOOTH),
            List.of(0.7),
            List.of(-0.1),
            List.of(0.3, 0.7, 1.4),
            0.25);

    private static final CornerStudy STUDY = CornerStudy.of(
            SampleCars.ROAD_CAR,
            new Corner(
                    "medium",
                    38,
                    SegmentPath.of(
                            150,
                            List.of(
                                    new Segment.Spiral(25, Double.POSITIVE_INFINITY, 40, Turn.LEFT),
                                    Segment.arc(50, 40, Turn.LEFT),
                                    new Segment.Spiral(25, 40, Double.POSITIVE_INFINITY, Turn.LEFT)),
                            80,
                            5)),
            DriverSettings.practised(),
            new SimulationSettings(1e-4, 1),
            Allowance.STANDARD);

    private static final Exploration WHOLE = new ReleaseSweep(STUDY, FEW).run(new Sweep(2, Sweep.Progress.SILENT));

    /** Remembers all that it is told. */
    private static final class Notebook implements SweepMemory {

        private final Map<Braking, Found> known = new ConcurrentHashMap<>();

        @Override
        public Optional<Found> recall(Braking release) {
            return Optional.ofNullable(known.get(release));
        }

        @Override
        public void keep(Braking release, Found found) {
            known.put(release, found);
        }
    }

    private static void assertSame(Exploration expected, Exploration actual) {
        assertEquals(expected.candidates().size(), actual.candidates().size());
        for (int i = 0; i < expected.candidates().size(); i++) {
            assertEquals(expected.candidates().get(i), actual.candidates().get(i));
        }
        EntryResult best = expected.best().orElseThrow().entry();
        assertEquals(best.withoutProfile(), actual.best().orElseThrow().entry().withoutProfile());
        assertEquals(
                best.profile().orElseThrow().rows(),
                actual.best().orElseThrow().entry().profile().orElseThrow().rows());
    }

    @Test
    void whatIsSaidToBeMadeIsMade() {
        assertTrue(WHOLE.complete());
        assertEquals(7, WHOLE.candidates().size());
        for (Candidate candidate : WHOLE.candidates()) {
            assertTrue(!candidate.made() || STUDY.allowance().met(candidate.entry()));
        }
        assertTrue(WHOLE.best().orElseThrow().made());
        double straight = WHOLE.baseline().orElseThrow().entry().time();
        assertEquals(straight - WHOLE.best().orElseThrow().entry().time(), WHOLE.gain(), 1e-12);
        for (Candidate candidate : WHOLE.candidates()) {
            boolean line = StraightLine.is(candidate.entry().plan());
            assertTrue(!line || !candidate.made() || candidate.entry().time() >= straight, "the baseline is the best");
        }
    }

    /** The definition of the trade-off, pair by pair. */
    @Test
    void theFrontHoldsThoseThatNoOtherBeatsInBoth() {
        double best = WHOLE.best().orElseThrow().inHand();
        for (Candidate one : WHOLE.candidates()) {
            if (one.made() && Double.isNaN(one.inHand())) {
                assertFalse(one.onFront());
                boolean near =
                        one.entry().time() <= WHOLE.best().orElseThrow().entry().time() + 0.5;
                assertTrue(
                        !near || InHand.of(STUDY.simulator(), one.entry().plan()) <= best, "not asked, and beats it");
                continue;
            }
            boolean beaten = WHOLE.candidates().stream()
                    .filter(Candidate::made)
                    .anyMatch(other -> other.entry().time() <= one.entry().time()
                            && other.inHand() >= one.inHand()
                            && (other.entry().time() < one.entry().time() || other.inHand() > one.inHand()));
            assertEquals(one.made() && !beaten, one.onFront());
        }
    }

    @Test
    void theNumberOfThreadsChangesNothing() {
        assertSame(WHOLE, new ReleaseSweep(STUDY, FEW).run(new Sweep(1, Sweep.Progress.SILENT)));
    }

    @Test
    void aStoppedSweepGoesOnFromItsMemoryToTheSameAnswer() {
        Notebook notebook = new Notebook();
        AtomicInteger finished = new AtomicInteger();
        Exploration stopped = new ReleaseSweep(STUDY, FEW)
                .run(
                        new Sweep(1, new Sweep.Progress() {
                            @Override
                            public void update(int done, int total) {
                                finished.set(done);
                            }

                            @Override
                            public boolean stopped() {
                                return finished.get() == 3;
                            }
                        }),
                        notebook);
        assertFalse(stopped.complete());
        assertEquals(3, stopped.candidates().size());
        assertEquals(3, notebook.known.size());
        assertSame(WHOLE, new ReleaseSweep(STUDY, FEW).run(new Sweep(2, Sweep.Progress.SILENT), notebook));
        assertEquals(7, notebook.known.size());
    }
}
