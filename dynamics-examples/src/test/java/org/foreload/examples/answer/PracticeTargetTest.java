package org.foreload.examples.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.foreload.driver.Reaction;
import org.foreload.entry.EntryResult;
import org.foreload.examples.demo.Demos;
import org.foreload.optimum.Optimum;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.foreload.strategy.StraightLine;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

/** Where practice leads a driver who does exactly what was planned, and so repeats each plan always or never. */
class PracticeTargetTest {

    private static final CornerStudy STUDY = CornerStudy.of(
            Demos.car("", Demos.DEFAULT_CAR).value(),
            Demos.corner("", Demos.DEFAULT_CORNER).value());

    private static final EntryResult LATEST = STUDY.search()
            .latest(StraightLine.braking(0.6 * STUDY.lockLimit(), 0.25))
            .entry();

    private static final EntryResult EARLY = moved(LATEST, -30);

    private static final EntryResult EARLIER = moved(LATEST, -34);

    private static final EntryResult TOO_LATE = moved(LATEST, 15);

    private static EntryResult moved(EntryResult entry, double by) {
        return STUDY.simulator().run(entry.plan().withBrakePoint(entry.plan().brakePoint() + by));
    }

    private static final RiskStudy EXACT = new RiskStudy(STUDY, Scatter.NONE, Reaction.NONE, 1, 1);

    private static Optimum optimum(EntryResult best, EntryResult... families) {
        return new Optimum(
                Optional.of(new Finding(best, true, 0)),
                Optional.empty(),
                10,
                List.of(families).stream()
                        .map(entry -> new Optimum.Family("abrupt", entry))
                        .toList(),
                List.of(),
                true);
    }

    private static PracticeTarget target(double accepted, EntryResult best, EntryResult... families) {
        return PracticeTarget.of(EXACT, optimum(best, families), accepted, Sweep.quiet())
                .orElseThrow();
    }

    @Test
    void theBestIsTheTargetWhereTheDriverRepeatsIt() {
        assertSame(LATEST, target(0, LATEST, EARLY).entry());
        assertSame(TOO_LATE, target(1, TOO_LATE, EARLY).entry(), "all is accepted");
    }

    /** The quickest of those that the driver repeats, in whatever order they come. */
    @Test
    void theQuickestThatTheDriverRepeatsTakesItsPlace() {
        assertTrue(EARLY.made() && EARLIER.made() && EARLY.time() < EARLIER.time());
        PracticeTarget target = target(0, TOO_LATE, EARLIER, EARLY);
        assertSame(EARLY, target.entry());
        assertEquals(1, target.bestRisk().failed().value());
        String words = target.instead(0.05);
        assertTrue(words.contains("fails in 100.0 % of this driver's entries, more than the 5.0 % accepted"), words);
    }

    @Test
    void whereNoneIsRepeatedTheStepsHeadForTheBest() {
        PracticeTarget target = target(0, TOO_LATE);
        assertSame(TOO_LATE, target.entry());
        assertTrue(target.isBest());
    }
}
