package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.foreload.study.Rounds;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

/** What a search on surfaces keeps, and what it gains on the release that it sets out from. */
class SurfaceSearchTest {

    private static final CornerStudy STUDY = SampleStudies.roadCar().with(Allowance.STANDARD);

    private static final int ENTRIES = 150;

    /**
     * Two searches of one thing, of which one sets out from the end of the other, differ by no more than shapes that
     * tie.
     */
    private static final double LUCK = ShapeRanking.TIE;

    private static BrakePlan start() {
        double apex = STUDY.simulator().apex();
        Release release = new Release(ReleaseShapes.LINEAR, -0.1 * apex, 0.7 * apex);
        Finding start = STUDY.latest(Braking.of(0.6 * STUDY.lockLimit(), 0.25, release));
        assertTrue(start.found());
        return start.entry().plan();
    }

    private static EntryAtPoint.Driver driver(CornerStudy study, Rounds rounds) {
        double hardest = new LockReserve(study).hardest(0.25);
        return new EntryAtPoint.Driver(
                study,
                ReleaseSpace.of(study, new Release(ReleaseShapes.LINEAR, 0, 20), hardest, 0.25, Optional.empty()),
                rounds);
    }

    private static double time(CornerStudy study, BrakePlan plan) {
        return study.search().trial(plan).entry().time();
    }

    private static boolean keepsAll(CornerStudy study, BrakePlan plan) {
        return study.search().trial(plan).met()
                && study.search()
                        .trial(plan.withBrakePoint(plan.brakePoint() - 1))
                        .met()
                && study.search().leftWithNothingInHand(plan) >= 0;
    }

    @Test
    void whatItFindsIsMuchQuickerAndKeepsAllThatIsAsked() {
        Rounds rounds = new Rounds(1, Sweep.Progress.SILENT, ENTRIES);
        EntryAtPoint.Driver driver = driver(STUDY, rounds);
        EntryAtPoint found =
                new SurfaceSearch(driver, ENTRIES, 1, rounds).from(start()).orElseThrow();
        BrakePlan plan = driver.plan(found.x());
        assertEquals(time(STUDY, plan), found.time());
        assertTrue(found.time() < time(STUDY, start()) - 0.1, found.time() + " from " + time(STUDY, start()));
        assertTrue(found.time() > STUDY.bound().time());
        assertTrue(keepsAll(STUDY, plan));
        assertTrue(driver.driven() <= ENTRIES + 6, "drove " + driver.driven());
    }

    /** From an entry that ends in the grass it finds nothing, and stops. */
    @Test
    void aStartThatDoesNotMakeTheCornerIsNone() {
        Rounds rounds = new Rounds(1, Sweep.Progress.SILENT, ENTRIES);
        EntryAtPoint.Driver driver = driver(STUDY, rounds);
        BrakePlan late = start().withBrakePoint(-5);
        assertEquals(Optional.empty(), new SurfaceSearch(driver, ENTRIES, 1, rounds).from(late));
        assertTrue(driver.driven() < 10);
    }

    /**
     * The best release of a car on a little less grip: with few entries nearly as quick as a whole search of that car
     * finds it, and allowed there, where the known one is not.
     */
    @Test
    void aNeighbourhoodKnowsTheBestOfAStudyMuchLikeIt() {
        Neighbourhood nearby = new Neighbourhood(STUDY, start(), 40);
        BrakePlan best = nearby.best().plan();
        assertTrue(keepsAll(STUDY, best));
        var car = STUDY.simulator().car();
        CornerStudy slippery = STUDY.with(
                car.withTyres(car.frontTyre().withFriction(0.98), car.rearTyre().withFriction(0.98)),
                STUDY.simulator().driver());
        Neighbourhood.Best there = nearby.in(slippery, best.buildUpTime());
        assertTrue(keepsAll(slippery, there.plan()));
        assertTrue(!keepsAll(slippery, best), "the old release still is good enough");
        assertEquals(there, nearby.in(slippery, best.buildUpTime()));
        Rounds rounds = new Rounds(1, Sweep.Progress.SILENT, 300);
        double whole = new SurfaceSearch(driver(slippery, rounds), 300, 1, rounds)
                .from(there.plan())
                .orElseThrow()
                .time();
        assertTrue(there.time() < whole + LUCK, there.time() + " beside " + whole);
        assertTrue(there.time() > nearby.best().time(), "less grip is slower");
    }
}
