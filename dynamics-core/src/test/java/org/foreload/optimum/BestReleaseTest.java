package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.atomic.AtomicInteger;
import org.foreload.entry.EntryResult;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

/** A short search on a corner with short straights: what must hold for any length. */
class BestReleaseTest {

    private static final BestRelease SHORT = new BestRelease(7, 2, 60, 0.25);

    private static final CornerStudy STUDY = SampleStudies.roadCar();
    private static final Optimum OPTIMUM = SHORT.find(STUDY, 2, Sweep.Progress.SILENT);

    @Test
    void isNoWorseThanEachSimpleFamily() {
        EntryResult best = OPTIMUM.entry().orElseThrow();
        assertTrue(OPTIMUM.complete());
        assertEquals(6, OPTIMUM.families().size());
        OPTIMUM.families()
                .forEach(family -> assertTrue(best.time() <= family.entry().time(), family.shape()));
        assertTrue(STUDY.allowance().met(best));
    }

    /** With nothing in hand, the crowd that polishes the two best finds its way along limits where surfaces end. */
    @Test
    void polishingGainsOnEverySearch() {
        double searched = Math.min(
                OPTIMUM.restarts().stream()
                        .mapToDouble(Optimum.Restart::time)
                        .min()
                        .orElseThrow(),
                OPTIMUM.families().stream()
                        .mapToDouble(family -> family.entry().time())
                        .min()
                        .orElseThrow());
        double gained = searched - OPTIMUM.entry().orElseThrow().time();
        assertTrue(gained > 0.001, "gained " + gained);
    }

    /** Within the 4 % of the bound that a practised driver's lags and margins cost at most. */
    @Test
    void liesJustAboveTheBound() {
        assertTrue(OPTIMUM.aboveBound() > -0.005 && OPTIMUM.aboveBound() < 0.04, "above by " + OPTIMUM.aboveBound());
    }

    @Test
    void isTheSameToTheBitOnOneThread() {
        Optimum single = SHORT.find(STUDY, 1, Sweep.Progress.SILENT);
        assertEquals(OPTIMUM.restarts(), single.restarts());
        assertEquals(
                OPTIMUM.entry().orElseThrow().plan(),
                single.entry().orElseThrow().plan());
        assertEquals(
                OPTIMUM.entry().orElseThrow().time(),
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
