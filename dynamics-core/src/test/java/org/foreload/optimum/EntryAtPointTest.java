package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Trial;
import org.foreload.study.Rounds;
import org.junit.jupiter.api.Test;

/** Entries as numbers: what is read off a driven one, and what one is taken for that was driven elsewhere. */
class EntryAtPointTest {

    private static final double[] X = {1, 2};
    private static final double[] NO_SLIPS = {};

    private static EntryAtPoint entry(boolean made, double verdict, double... limits) {
        return new EntryAtPoint(X, made, 8, limits, verdict, NO_SLIPS);
    }

    @Test
    void anEntryIsAllowedThatJustKeepsItsLimits() {
        assertTrue(entry(true, 0, -0.5, 0).allowed());
        assertFalse(entry(true, 0.001, -0.5, 0.001).allowed());
        assertFalse(entry(false, 0, -0.5, 0).allowed());
    }

    @Test
    void itsValuesAreTimeAndThenItsLimits() {
        assertArrayEquals(
                new double[] {8, -0.5, 0.25}, entry(true, 0.25, -0.5, 0.25).values());
    }

    /** The verdict on an entry that keeps its limits is the largest of those it has afterwards. */
    @Test
    void aChangeMovesTimeAndLimitsAndTheVerdictWithThem() {
        EntryAtPoint changed = entry(true, -0.25, -0.5, -0.25).changedBy(new double[] {0.5, 0.75, 0.125});
        assertSame(X, changed.x());
        assertTrue(changed.made());
        assertEquals(8.5, changed.time());
        assertArrayEquals(new double[] {0.25, -0.125}, changed.limits());
        assertEquals(0.25, changed.verdict());
        assertEquals(
                -0.125,
                entry(true, 0, 0, -0.5).changedBy(new double[] {0, -0.125, 0}).verdict());
    }

    /** An entry that failed for what its limits do not show, such as an error not forgiven, is taken to fail again. */
    @Test
    void aChangeDoesNotMendWhatFailed() {
        assertEquals(
                0.3, entry(true, 0.3, -0.5).changedBy(new double[] {0, -0.25}).verdict());
    }

    @Test
    void farWithinALimitOrBeyondItIsNoFartherThanOne() {
        EntryAtPoint changed = entry(true, -0.25, -0.5, -0.25).changedBy(new double[] {0, -7, 9});
        assertArrayEquals(new double[] {-1, 1}, changed.limits());
        assertEquals(
                -1, entry(true, -0.25, -0.5).changedBy(new double[] {0, -7}).verdict());
    }

    private static final CornerStudy BARE = SampleStudies.roadCar();

    /** Four metres in hand, and no other margin. */
    private static final CornerStudy CAREFUL = BARE.with(new Allowance(0.5, 0, 0, 0, 4));

    private static Braking braking(double share) {
        double apex = BARE.simulator().apex();
        return Braking.of(share * BARE.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, -0.1 * apex, 0.7 * apex));
    }

    private static BrakePlan latest(CornerStudy study, double share) {
        Trial latest = study.search().latest(braking(share));
        assertTrue(latest.met());
        return latest.entry().plan();
    }

    /** A driver, and how many entries the rounds have counted. */
    private record Counted(EntryAtPoint.Driver driver, AtomicInteger count) {

        static Counted of(CornerStudy study) {
            ReleaseSpace space = ReleaseSpace.of(
                    study,
                    new Release(ReleaseShapes.LINEAR, 0, 20),
                    study.lockLimit(),
                    0.25,
                    Optional.of(ReleaseShapes.LINEAR));
            AtomicInteger count = new AtomicInteger();
            Rounds rounds = new Rounds(1, (done, total) -> count.set(done), 1000);
            return new Counted(new EntryAtPoint.Driver(study, space, rounds), count);
        }

        EntryAtPoint at(BrakePlan plan, double than) {
            EntryAtPoint entry = driver.at(driver.point(plan), than);
            assertEquals(driver.driven(), count.get());
            return entry;
        }
    }

    @Test
    void thePlanAtThePointOfAPlanIsThatPlan() {
        EntryAtPoint.Driver driver = Counted.of(BARE).driver();
        BrakePlan plan = latest(BARE, 0.6);
        BrakePlan again = driver.plan(driver.point(plan));
        assertEquals(plan.brakePoint(), again.brakePoint(), 1e-9);
        assertEquals(plan.peakDeceleration(), again.peakDeceleration(), 1e-9);
        assertEquals(plan.release().end(), again.release().end(), 1e-9);
    }

    /** Nothing is asked of either axle without a margin: as far within as it goes. */
    @Test
    void anEntryWithoutAMarginIsHeldAgainstDriftEdgeAndLock() {
        BrakePlan plan = latest(BARE, 0.6);
        Trial trial = BARE.search().trial(plan);
        Counted counted = Counted.of(BARE);
        EntryAtPoint entry = counted.at(plan, Double.NEGATIVE_INFINITY);
        assertEquals(1, counted.driver().driven());
        assertTrue(entry.allowed());
        assertEquals(trial.entry().time(), entry.time(), 1e-6);
        assertEquals(7, entry.limits().length);
        assertEquals(trial.excess().drift(), entry.limits()[0], 1e-3);
        assertArrayEquals(new double[] {-1, -1, -1, -1}, Arrays.copyOfRange(entry.limits(), 2, 6));
        assertEquals(Arrays.stream(entry.limits()).max().orElseThrow(), entry.verdict());
        assertArrayEquals(NO_SLIPS, entry.slips());
        assertTrue(counted.driver().onTheEdge());
    }

    /** One a metre early is driven for who asks what an entry forgives, and one for each of three errors. */
    @Test
    void aQuickerEntryIsAskedWhatItForgives() {
        BrakePlan plan = latest(CAREFUL, 0.6);
        Counted counted = Counted.of(CAREFUL);
        assertFalse(counted.driver().onTheEdge());
        EntryAtPoint entry = counted.at(plan, Double.POSITIVE_INFINITY);
        assertEquals(5, counted.driver().driven());
        assertTrue(entry.allowed());
        assertEquals(6, entry.slips().length);
        for (double slip : entry.slips()) {
            assertTrue(slip <= 0 && slip >= -1, "forgiven by " + slip);
        }
        assertArrayEquals(NO_SLIPS, counted.at(plan, entry.time()).slips(), "no quicker than itself");
        assertEquals(6, counted.driver().driven());
    }

    /** Metres left to the edge of the track and tenths of the brake left to a lock, of each error in turn. */
    @Test
    void aSlipIsForgivenByWhatItLeavesToTheEdgeAndToALock() {
        for (double share : new double[] {0.6, 0.82}) {
            BrakePlan plan = latest(CAREFUL, share);
            double[] slips =
                    Counted.of(CAREFUL).at(plan, Double.POSITIVE_INFINITY).slips();
            List<BrakePlan> errors = List.of(
                    plan.braking().withReleaseLater(4).from(plan.brakePoint()),
                    plan.withBrakePoint(plan.brakePoint() + 4),
                    plan.withPeakDeceleration(1.1 * plan.peakDeceleration()));
            for (int i = 0; i < 3; i++) {
                EntryResult entry = CAREFUL.simulator().probe(errors.get(i));
                assertEquals(Math.max(-1, -entry.margins().edge()), slips[2 * i], 1e-3);
                assertEquals(Math.max(-1, -10 * entry.lockReserve()), slips[2 * i + 1], 1e-3);
            }
        }
    }

    /** Its limits are kept, and so is the verdict; one error is beyond what it is allowed. */
    @Test
    void anErrorThatIsNotForgivenIsNotAllowed() {
        CornerStudy most = BARE.with(new Allowance(0.5, 0, 0, 0, 16));
        BrakePlan plan = latest(BARE, 0.6);
        EntryAtPoint asked = Counted.of(most).at(plan, Double.POSITIVE_INFINITY);
        EntryAtPoint unasked = Counted.of(most).at(plan, Double.NEGATIVE_INFINITY);
        assertTrue(unasked.allowed(), "its limits are kept: " + Arrays.toString(unasked.limits()));
        assertFalse(asked.allowed());
        assertEquals(unasked.verdict(), asked.verdict());
        assertTrue(asked.made());
        assertTrue(Arrays.stream(asked.slips()).anyMatch(slip -> slip > 0));
    }

    /** One that goes beyond a limit and makes the corner is asked by who asks of all, as around a start. */
    @Test
    void whoAsksOfAllAsksOfThoseBeyondALimit() {
        CornerStudy strict = BARE.with(new Allowance(0.5, 0, 0.9, 0.9, 4));
        BrakePlan plan = latest(CAREFUL, 0.6);
        Counted counted = Counted.of(strict);
        EntryAtPoint asked = counted.at(plan, Double.POSITIVE_INFINITY);
        assertTrue(asked.made() && asked.verdict() > 0);
        assertEquals(6, asked.slips().length);
        assertEquals(4, counted.driver().driven(), "itself and three errors");
        assertArrayEquals(NO_SLIPS, counted.at(plan, 1e3).slips(), "a limit is missed");
    }

    @Test
    void whoDoesNotMakeTheCornerIsAsFarBeyondAsItGoes() {
        Counted counted = Counted.of(CAREFUL);
        EntryAtPoint entry = counted.at(latest(BARE, 0.7).withBrakePoint(-5), Double.POSITIVE_INFINITY);
        assertFalse(entry.made());
        assertEquals(1, entry.verdict());
        assertArrayEquals(NO_SLIPS, entry.slips());
        assertEquals(1, counted.driver().driven());
    }
}
