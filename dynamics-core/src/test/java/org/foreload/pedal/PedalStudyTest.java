package org.foreload.pedal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.FootError.Leg;
import org.foreload.braking.Pedal;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntrySimulator;
import org.foreload.entry.Outcome;
import org.foreload.stability.Scenes;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

/** Two pedals under the same leg. */
class PedalStudyTest {

    private static final Pedal FORCE = new Pedal.ForceSensing(40, 0, 0.03);

    /** Linear spring: travel follows force in proportion, so without an error of place it is a force pedal. */
    private static final Pedal LINEAR_TRAVEL = new Pedal.TravelSensing(10_000, 0, 250, 0, 0.03);

    private static final EntrySimulator SIMULATOR =
            CornerStudy.of(Scenes.light(), Scenes.medium()).simulator();
    private static final BrakePlan PLAN =
            Braking.of(7.5, 0.25, new Release(ReleaseShapes.LINEAR, -5, 30)).from(-155);

    private static List<PedalStudy.Result> run(Leg leg, long seed, Pedal... pedals) {
        return new PedalStudy(leg, 6, seed).run(SIMULATOR, PLAN, List.of(pedals), Sweep.quiet());
    }

    @Test
    void theSameLegOnTwoPedalsThatMeasureTheSameComesOutTheSame() {
        List<PedalStudy.Result> results = run(Leg.pushing(0), 7, FORCE, LINEAR_TRAVEL);
        assertEquals(results.get(0).brakeScatter(), results.get(1).brakeScatter(), 1e-12);
        assertEquals(results.get(0).outcomes(), results.get(1).outcomes());
        // A rounding error in the pedal may shift the integrator's steps, at the tolerance of a probe.
        assertEquals(results.get(0).meanTime(), results.get(1).meanTime(), 1e-3);
        // Steady error and wander add as squares, √(2.6² + 2.7²) = 3.7 % of the force; over levels that fall evenly
        // from
        // the peak to a tenth of it that is √0.37 of 3.7 % of the peak; six attempts know it to a half.
        assertEquals(0.0228, results.get(0).brakeScatter(), 0.0114);
        assertEquals(
                6,
                results.get(0).outcomes().values().stream()
                        .mapToInt(Integer::intValue)
                        .sum());
    }

    /** The same seed gives the same answer, another one another. */
    @Test
    void theSeedDecides() {
        PedalStudy.Result first = run(Leg.pushing(0.001), 7, FORCE).get(0);
        assertEquals(first, run(Leg.pushing(0.001), 7, FORCE).get(0));
        assertTrue(
                first.brakeScatter() != run(Leg.pushing(0.001), 8, FORCE).get(0).brakeScatter());
    }

    /** Attempts that a stop or an interrupt left out are missing, and the answer says so. */
    @Test
    void whatAStopLeftOutIsMissing() {
        PedalStudy study = new PedalStudy(Leg.pushing(0), 6, 7);
        AtomicInteger told = new AtomicInteger();
        Sweep sweep = new Sweep(1, new Sweep.Progress() {
            @Override
            public void update(int done, int total) {
                told.set(done);
            }

            @Override
            public boolean stopped() {
                return told.get() == 8;
            }
        });
        List<PedalStudy.Result> stopped = study.run(SIMULATOR, PLAN, List.of(FORCE, LINEAR_TRAVEL), sweep);
        assertTrue(stopped.get(0).complete());
        assertEquals(6, stopped.get(0).driven());
        assertFalse(stopped.get(1).complete());
        assertEquals(2, stopped.get(1).driven());
        assertEquals(6, stopped.get(1).planned());
        Thread.currentThread().interrupt();
        List<PedalStudy.Result> interrupted = study.run(SIMULATOR, PLAN, List.of(FORCE), Sweep.quiet());
        assertTrue(Thread.interrupted(), "the interrupt was swallowed");
        assertFalse(interrupted.get(0).complete());
    }

    @Test
    void aSteadyLegMakesTheCornerTheSameEveryTime() {
        PedalStudy.Result result = run(new Leg(0, 0, 1.8, 0), 7, FORCE).get(0);
        assertEquals(0, result.brakeScatter(), 1e-12);
        assertEquals(6, result.count(Outcome.MADE_IT));
        assertEquals(0, result.timeDeviation(), 1e-9);
    }
}
