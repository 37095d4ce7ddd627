package org.foreload.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.Reaction;
import org.foreload.driver.SpeedPlan;
import org.foreload.entry.EntryEvent.Kind;
import org.foreload.path.Corner;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.trace.Trace;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A left foot that reacts, against the same foot that brakes as told. What it must do is common practice, no source: a
 * driver eases a wheel that has stopped, and who is too fast keeps more brake on.
 */
class ReactingFootTest {

    private static final Reaction FOOT = Reaction.practised();
    private static final Corner CORNER = SampleEntries.medium(50);

    /** So much brake at the front that the front wheels stop first. */
    private static final Car CAR = SampleEntries.LIGHT.withFrontBrakeShare(0.74);

    private static final CornerStudy TOLD = study(DriverSettings.practised(), CORNER, 1e-6);
    private static final EntrySimulator REACTING =
            study(DriverSettings.reacting(), CORNER, 1e-6).simulator();

    /** A trailed release with plenty of brake to spare, from a little before its latest brake point. */
    private static final BrakePlan PLAN = latest();

    private static CornerStudy study(DriverSettings driver, Corner corner, double tolerance) {
        return CornerStudy.of(CAR, corner, driver, new SimulationSettings(tolerance, 1), Allowance.STANDARD);
    }

    private static BrakePlan latest() {
        Braking plan = Braking.of(0.72 * TOLD.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, -20, 35));
        BrakePlan found = TOLD.latest(plan).entry().plan();
        return found.withBrakePoint(found.brakePoint() - 2);
    }

    private static BrakePlan tooHard() {
        return PLAN.withPeakDeceleration(1.15 * TOLD.lockLimit());
    }

    /** Longest time for which any wheel stood in one go, s, read from the profile. */
    private static double longestLock(EntryResult entry) {
        Trace trace = entry.profile().orElseThrow();
        double longest = 0;
        for (int wheel = 0; wheel < 4; wheel++) {
            double since = Double.NaN;
            for (int i = 0; i < trace.rows(); i++) {
                boolean stands = ((int) trace.column("locked_wheels").at(i) >> wheel & 1) != 0;
                double time = trace.column("time_s").at(i);
                since = stands ? Double.isNaN(since) ? time : since : Double.NaN;
                longest = stands ? Math.max(longest, time - since) : longest;
            }
        }
        return longest;
    }

    /** As told, wheels stopped by a foot that is too hard slide to the release; a foot that feels them eases. */
    @Test
    void aWheelThatStopsOnTheStraightTurnsAgain() {
        EntryResult told = TOLD.simulator().run(tooHard());
        assertTrue(told.event(Kind.FRONT_LOCKS).orElseThrow().station() < -50);
        assertTrue(longestLock(told) > 2, "as told for " + longestLock(told));
        assertFalse(told.made());

        EntryResult eased = REACTING.run(tooHard());
        assertTrue(eased.event(Kind.FRONT_LOCKS).orElseThrow().station() < -50);
        double stood = longestLock(eased);
        assertTrue(stood > FOOT.delay(), "no sooner than the delay, after " + stood);
        assertTrue(stood < FOOT.delay() + FOOT.takeBack(), "taken back after " + stood);
        assertEquals(Outcome.MADE_IT, eased.outcome(), eased.cause());
        assertEquals(0, eased.lockReserve());
    }

    /** A slower foot leaves the wheel stopped for longer, and more than delay and take-back together is a lock-up. */
    @Test
    void aLockThatIsNotTakenBackInTimeIsALockUp() {
        Reaction slow = new Reaction(0.25, 0.1, 1.5, 0.8, 0.4, 2, 3, 0.3);
        EntrySimulator sluggish =
                study(DriverSettings.practised().with(slow), CORNER, 1e-6).simulator();
        EntryResult entry = sluggish.run(tooHard());
        assertTrue(longestLock(entry) > 0.35);
        assertEquals(Outcome.LOCKED_UP, entry.outcome());
        assertTrue(entry.cause().startsWith("front wheel locks "), entry.cause());
    }

    /** The foot never adds to a plan that goes as expected. */
    @Test
    void aPlanThatGoesAsExpectedIsDrivenAsTold() {
        EntryResult told = TOLD.simulator().run(PLAN);
        EntryResult reacting = REACTING.run(PLAN);
        assertTrue(told.made());
        assertEquals(told.time(), reacting.time(), 1e-4);
        assertEquals(told.minimumSpeed(), reacting.minimumSpeed(), 1e-3);
        assertEquals(told.farthestOffset(), reacting.farthestOffset(), 1e-3);
    }

    /** Who brakes some metres late comes closer to the speeds expected than one who carries out the plan regardless. */
    @ParameterizedTest
    @ValueSource(doubles = {3, 6})
    void whoIsTooFastKeepsMoreBrakeOn(double late) {
        SpeedPlan expected = REACTING.expected(PLAN);
        BrakePlan missed = PLAN.withBrakePoint(PLAN.brakePoint() + late);
        EntryResult told = TOLD.simulator().run(missed);
        EntryResult reacting = REACTING.run(missed, expected);
        assertEquals(Outcome.MADE_IT, reacting.outcome(), reacting.cause());
        double planned = expected.speed(0);
        assertTrue(told.turnInSpeed() > planned + 0.4);
        assertTrue(
                reacting.turnInSpeed() - planned < 0.75 * (told.turnInSpeed() - planned),
                reacting.turnInSpeed() + " and " + told.turnInSpeed() + " for " + planned);
        double most = 0;
        Trace trace = reacting.profile().orElseThrow();
        for (int i = 0; i < trace.rows(); i++) {
            most = Math.max(most, trace.column("brake_mps2").at(i));
        }
        assertTrue(most > PLAN.peakDeceleration() + 0.2);
        assertTrue(most < PLAN.peakDeceleration() + FOOT.most());
    }

    /** However late, what the foot adds stops no wheel on the straight: it feels how near they are. */
    @ParameterizedTest
    @ValueSource(doubles = {0.72, 0.8, 0.88})
    void whatTheFootAddsStopsNoWheel(double share) {
        BrakePlan plan = PLAN.withPeakDeceleration(share * TOLD.lockLimit());
        SpeedPlan expected = REACTING.expected(plan);
        BrakePlan late = plan.withBrakePoint(plan.brakePoint() + 15);
        assertFalse(locksOnTheStraight(TOLD.simulator().run(late)));
        EntryResult reacting = REACTING.run(late, expected);
        assertFalse(locksOnTheStraight(reacting), reacting.events().toString());
    }

    private static boolean locksOnTheStraight(EntryResult entry) {
        return entry.events().stream()
                .anyMatch(event ->
                        event.station() < -20 && (event.kind() == Kind.FRONT_LOCKS || event.kind() == Kind.REAR_LOCKS));
    }

    /** Who brakes too early comes off a little and loses less. */
    @Test
    void whoIsTooSlowComesOffALittle() {
        SpeedPlan expected = REACTING.expected(PLAN);
        BrakePlan early = PLAN.withBrakePoint(PLAN.brakePoint() - 6);
        EntryResult told = TOLD.simulator().run(early);
        EntryResult reacting = REACTING.run(early, expected);
        assertTrue(reacting.made());
        assertTrue(reacting.minimumSpeed() > told.minimumSpeed() + 0.3);
        assertTrue(reacting.minimumSpeed() < expected.speed(reacting.minimumSpeedAt()) + 0.1);
    }

    /** A foot that brakes as told takes no notice of what was expected, to the last bit. */
    @Test
    void aFootAsToldExpectsNothing() {
        SpeedPlan slow = new SpeedPlan(new double[] {-200, 200}, new double[] {10, 10});
        EntryResult plain = TOLD.simulator().run(tooHard());
        EntryResult withPlan = TOLD.simulator().run(tooHard(), slow);
        assertEquals(plain.minimumSpeed(), withPlan.minimumSpeed());
        assertEquals(plain.outcome(), withPlan.outcome());
        assertEquals(plain.farthestOffset(), withPlan.farthestOffset());
    }

    @Test
    void theMirroredCornerIsDrivenAlike() {
        EntrySimulator right = study(
                        DriverSettings.reacting(),
                        new Corner("right", 50, CORNER.path().mirrored()),
                        1e-6)
                .simulator();
        EntryResult left = REACTING.run(tooHard());
        EntryResult mirrored = right.run(tooHard());
        assertEquals(left.outcome(), mirrored.outcome());
        assertEquals(left.time(), mirrored.time(), 1e-5);
        assertEquals(left.farthestOffset(), mirrored.farthestOffset(), 1e-4);
    }

    /** The default accuracy holds a reacting run to a millisecond, locks and all; a probe ends as the run does. */
    @Test
    void theDefaultAccuracyIsGoodToAMillisecond() {
        EntrySimulator fine = study(DriverSettings.reacting(), CORNER, 1e-9).simulator();
        SpeedPlan expected = fine.expected(PLAN);
        for (BrakePlan plan : new BrakePlan[] {tooHard(), PLAN.withBrakePoint(PLAN.brakePoint() + 5)}) {
            EntryResult run = REACTING.run(plan, expected);
            assertEquals(fine.run(plan, expected).time(), run.time(), 1e-3);
            EntryResult probe = REACTING.probe(plan, expected);
            assertEquals(run.outcome(), probe.outcome());
            assertEquals(run.time(), probe.time(), 2e-3);
        }
    }

    /** Where the entry as told ends on the way, the driver's expectation ends, and the run goes on. */
    @Test
    void anExpectationMayEndOnTheWay() {
        BrakePlan early = PLAN.withBrakePoint(-190);
        assertTrue(TOLD.simulator().run(early).event(Kind.STOPPED).isPresent());
        SpeedPlan expected = REACTING.expected(early);
        assertTrue(expected.end() < 0);
        EntryResult entry = REACTING.run(PLAN, expected);
        assertTrue(entry.minimumSpeedAt() > expected.end());
    }
}
