package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.load.SampleCars;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

/** Sweeps in which no trailed release is quickest. What is the best follows from the meaning of the word. */
class NothingToTrailTest {

    private static final Sweep ONE = new Sweep(1, Sweep.Progress.SILENT);

    /** A soft trailed release, the only one tried, is slower than hard braking in a straight line: that is the best. */
    @Test
    void straightLineBrakingIsTheBestWhereItIsQuickest() {
        SweepPlan soft = new SweepPlan(List.of(ReleaseShapes.LINEAR), List.of(0.4), List.of(-0.1), List.of(0.7), 0.25);
        Exploration found = new ReleaseSweep(ShortStudies.BARE, soft).run(ONE);
        Candidate best = found.best().orElseThrow();
        assertTrue(StraightLine.is(best.entry().plan()));
        assertEquals(found.baseline(), found.best());
        assertEquals(0, found.gain());
        assertTrue(found.complete());
        assertEquals(3, found.candidates().size(), "two that were asked for, and the best");
        assertTrue(found.candidates().stream()
                .allMatch(
                        one -> !one.made() || one.entry().time() >= best.entry().time()));
        assertTrue(found.candidates().get(2).onFront());
        assertEquals(best.entry().time(), found.candidates().get(2).entry().time());
    }

    /**
     * Wherever the foot leaves the throttle, nobody brakes: one row, and nothing is gained on straight-line braking.
     */
    @Test
    void whereNobodyBrakesNothingIsGained() {
        CornerStudy slow = CornerStudy.of(
                SampleCars.ROAD_CAR,
                ShortStudies.bend(28, 250),
                DriverSettings.practised(),
                ShortStudies.COARSE,
                Allowance.STANDARD);
        SweepPlan plan = new SweepPlan(
                List.of(ReleaseShapes.LINEAR, ReleaseShapes.HELD),
                List.of(0.5),
                List.of(-0.1),
                List.of(0.35, 0.7),
                0.25);
        Exploration found = new ReleaseSweep(slow, plan).run(ONE);
        List<Candidate> made =
                found.candidates().stream().filter(Candidate::made).toList();
        assertTrue(made.size() > 2 && made.stream().noneMatch(one -> one.entry().braked()), "nobody brakes");
        assertEquals(0, found.gain());
        assertEquals(found.best(), found.baseline());
        List<Candidate> rows = Exploration.bestOfEachShape(found.candidates());
        assertEquals(1, rows.size());
        assertEquals(Optional.empty(), rows.get(0).shape());
    }
}
