package org.foreload.risk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.PedalDisturbance;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.study.StopAfter;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

/** The way from one plan to another, most of it for a driver who never strays: there a plan fails always or never. */
class PracticeStepsTest {

    private static final BrakePlan LATEST = SampleRisks.BRAKING.from(SampleRisks.EDGE);

    /** The same brake from a point that lies so much beyond the latest one, m; before it where below zero. */
    private static BrakePlan beyond(double metres) {
        return SampleRisks.BRAKING.from(SampleRisks.EDGE + metres);
    }

    private static Optional<PracticeSteps> exactly(BrakePlan now, BrakePlan target, int number, double accepted) {
        return PracticeSteps.plan(SampleRisks.exact(), now, target, number, accepted, SampleRisks.QUIET);
    }

    private static PracticeSteps.Step only(BrakePlan plan) {
        return exactly(plan, plan, 1, 0).orElseThrow().steps().get(0);
    }

    @Test
    void aLaterBrakePointIsReachedInEvenSteps() {
        BrakePlan now = beyond(-9.5);
        BrakePlan target = beyond(-0.5);
        PracticeSteps way = exactly(now, target, 3, 0).orElseThrow();
        assertEquals(1, way.reached());
        List<PracticeSteps.Step> steps = way.steps();
        assertEquals(4, steps.size());
        assertEquals(now, steps.get(0).risk().plan());
        assertEquals(0, steps.get(0).later());
        assertEquals(0, steps.get(0).gain());
        for (PracticeSteps.Step step : steps.subList(1, 4)) {
            assertEquals(3, step.later(), 1e-9);
            assertEquals(0, step.further(), 1e-9);
            assertEquals(List.of(Aspect.BRAKE_POINT), step.changed());
        }
        assertEquals(target, steps.get(3).risk().plan());
    }

    /**
     * A driver learns one thing at a time (common practice of coaching, no source): whatever the way, a step changes
     * one thing; where it changes two, each of them alone is slower or leaves less than the margin.
     */
    @Test
    void aStepChangesOneThingUnlessThatWouldLose() {
        Release carried = new Release(ReleaseShapes.LINEAR, -3, 9);
        Braking gentle = Braking.of(6.8, 0.25, carried);
        List<PracticeSteps.Step> steps = exactly(gentle.from(latest(gentle) - 3), LATEST, 5, 0)
                .orElseThrow()
                .steps();
        assertEquals(LATEST, steps.get(steps.size() - 1).risk().plan());
        assertTrue(steps.stream().anyMatch(step -> step.changed().size() == 1), "one thing at a time");
        assertTrue(steps.stream().anyMatch(step -> step.changed().size() == 2), "two where neither gains alone");
        for (PracticeSteps.Step step : steps.subList(1, steps.size())) {
            assertTrue(step.gain() > -0.005, "no step is slower: " + step);
            assertTrue(step.changed().size() < 3, "never all at once: " + step);
            assertEquals(step.changed().size() > 1, !step.alone().isEmpty());
            for (PracticeSteps.Alone alone : step.alone()) {
                assertTrue(!alone.kept() || alone.gain() < 0, alone.toString());
            }
        }
    }

    /**
     * What each change does by itself is what that very plan does in a run of its own. In one step from gentle to hard
     * braking the harder foot alone does not leave too little margin, it stops the car on the straight: 26 m/s are gone
     * after v² / 2a = 38 m at 9 m/s², and the 3 m of a foot that comes down.
     */
    @Test
    void aChangeByItselfIsDrivenAndSaysHowItEnds() {
        Braking gentle = Braking.of(4.5, 0.25, SampleRisks.BRAKING.release());
        BrakePlan now = gentle.from(latest(gentle) - 16);
        assertTrue(now.brakePoint() < -41 - 1, now.toString());
        Braking hard = SampleRisks.BRAKING.withPeakDeceleration(9);
        BrakePlan target = hard.from(latest(hard) - 3);
        PracticeSteps.Step step =
                exactly(now, target, 1, 0).orElseThrow().steps().get(1);
        assertEquals(List.of(Aspect.BRAKE_POINT, Aspect.PEAK), step.changed());
        EntryResult later = step.alone().get(0).entry();
        EntryResult harder = step.alone().get(1).entry();
        assertEquals(now.withBrakePoint(target.brakePoint()), later.plan());
        assertEquals(now.withPeakDeceleration(9), harder.plan());
        assertEquals(Outcome.RAN_WIDE, later.outcome());
        assertEquals(Outcome.STOPPED, harder.outcome());
        assertEquals(
                SampleRisks.STUDY.simulator().probe(harder.plan()).event(EntryEvent.Kind.STOPPED),
                harder.event(EntryEvent.Kind.STOPPED));
        assertTrue(harder.event(EntryEvent.Kind.STOPPED).orElseThrow().station() < 0, "before turn-in");
    }

    private static double latest(Braking braking) {
        return SampleRisks.STUDY.search().latest(braking).point();
    }

    /**
     * Whoever takes a step by its brake point only, and does all else as before, makes the corner; each such entry is
     * simulated by itself. A metre, the least that is a step, is left to the plan's own margin. The way is 19 m of
     * brake point, more than any plan along it forgives.
     */
    @Test
    void aStepHalfDoneMakesTheCorner() {
        Braking gentle = Braking.of(4.5, 0.25, SampleRisks.BRAKING.release());
        BrakePlan now = gentle.from(latest(gentle) - 6);
        BrakePlan target = beyond(-0.5);
        List<PracticeSteps.Step> steps =
                exactly(now, target, 8, 0).orElseThrow().steps();
        assertEquals(target, steps.get(steps.size() - 1).risk().plan());
        assertTrue(target.brakePoint() - now.brakePoint() > 18, "a long way");
        for (int i = 1; i < steps.size(); i++) {
            double later = steps.get(i).later();
            BrakePlan before = steps.get(i - 1).risk().plan();
            EntryResult half = half(before, later);
            assertTrue(later <= LEAST || half.made(), later + " m later from " + before + ": " + half.cause());
            assertEquals(0, steps.get(i).beyond(), 1e-9);
        }
    }

    /** The brake point of a step, and all else as before. */
    private static EntryResult half(BrakePlan before, double later) {
        return SampleRisks.STUDY.simulator().run(before.withBrakePoint(before.brakePoint() + later));
    }

    /** Least that is a step, m, and a little more: a way is cut into whole parts. */
    private static final double LEAST = 1.05;

    /** In one step there is no way around it: what is too much is said. */
    @Test
    void aStepThatCannotBeSmallerSaysByHowMuchItIsTooLarge() {
        Braking gentle = Braking.of(4.5, 0.25, SampleRisks.BRAKING.release());
        BrakePlan from = gentle.from(latest(gentle) - 2.5);
        BrakePlan target = beyond(-2.5);
        List<PracticeSteps.Step> steps =
                exactly(from, target, 1, 0).orElseThrow().steps();
        assertEquals(2, steps.size());
        assertEquals(0, steps.get(0).beyond());
        int forgiven = steps.get(0).tooLate().by().getAsInt() - 1;
        assertTrue(half(from, forgiven).made() && !half(from, forgiven + 1).made());
        assertEquals(
                target.brakePoint() - from.brakePoint() - forgiven, steps.get(1).beyond(), 1e-9);
    }

    /** Who does not brake at all has no brake point to miss: the first step may be of any size. */
    @Test
    void whoDoesNotBrakeHasNoBrakePointToMove() {
        RiskStudy risks = SampleRisks.risks(Scatter.NONE, 1, 1);
        BrakePlan none = Braking.of(7, 0.25, new Release(ReleaseShapes.LINEAR, -103, -82))
                .from(-80);
        Optional<PracticeSteps> way = PracticeSteps.plan(risks, none, beyond(-3), 1, 1, SampleRisks.QUIET);
        assertEquals(0, way.orElseThrow().steps().get(1).beyond());
    }

    /** What a driver cannot tell apart is no step of its own: a place to a metre, a peak to a hundredth of g. */
    @Test
    void whatCannotBeToldApartGoesAlongWithTheRest() {
        BrakePlan now = beyond(-8).withPeakDeceleration(6.95);
        List<PracticeSteps.Step> steps =
                exactly(now, LATEST, 2, 0).orElseThrow().steps();
        assertEquals(3, steps.size());
        for (PracticeSteps.Step step : steps.subList(1, 3)) {
            assertEquals(List.of(Aspect.BRAKE_POINT), step.changed());
            assertEquals(7, step.risk().plan().peakDeceleration(), 1e-12);
        }
    }

    /** A step that drowns in the driver's own scatter is none: ten metres are two steps for who strays by four. */
    @Test
    void noStepIsSmallerThanTheScatter() {
        RiskStudy risks = SampleRisks.risks(SampleRisks.brakePointOnly(4), 2, 1);
        List<PracticeSteps.Step> steps = PracticeSteps.plan(risks, beyond(-30), beyond(-20), 6, 1, SampleRisks.QUIET)
                .orElseThrow()
                .steps();
        assertEquals(3, steps.size());
        for (PracticeSteps.Step step : steps.subList(1, 3)) {
            assertEquals(5, step.later(), 1e-9);
        }
        List<PracticeSteps.Step> less = PracticeSteps.plan(risks, beyond(-23), beyond(-20), 6, 1, SampleRisks.QUIET)
                .orElseThrow()
                .steps();
        assertEquals(2, less.size());
        assertEquals(3, less.get(1).later(), 1e-9);
    }

    /** What the steps gain is what the last is quicker than the first. */
    @Test
    void gainsSumToTheWholeGain() {
        List<PracticeSteps.Step> steps =
                exactly(beyond(-6), LATEST, 2, 0).orElseThrow().steps();
        double gained = steps.stream().mapToDouble(PracticeSteps.Step::gain).sum();
        RiskStudy risks = SampleRisks.exact();
        double whole = risks.of(beyond(-6)).meanTime() - risks.of(LATEST).meanTime();
        assertTrue(whole > 0, "braking later is quicker: " + whole);
        assertEquals(whole, gained, 1e-9);
    }

    /**
     * The last of 64 equal parts of the way within the risk: 32 m of way in parts of half a metre, of which the 21st
     * ends a quarter of a metre before the latest point, and the 22nd as much beyond it.
     */
    @Test
    void theFarthestStepIsFoundToASixtyFourthOfTheWay() {
        PracticeSteps way = exactly(beyond(-10.75), beyond(21.25), 3, 0).orElseThrow();
        assertEquals(21.0 / 64, way.reached());
        BrakePlan last = way.steps().get(3).risk().plan();
        assertEquals(SampleRisks.EDGE - 0.25, last.brakePoint(), 1e-9);
    }

    @Test
    void whereNoPartOfTheWayIsWithinTheRiskThereIsNoStep() {
        PracticeSteps way = exactly(LATEST, beyond(64), 3, 0).orElseThrow();
        assertEquals(0, way.reached());
        assertEquals(1, way.steps().size());
    }

    /** A risk exactly as large as accepted is accepted. */
    @Test
    void whoIsAlreadyTooRiskyHasNoSteps() {
        assertEquals(Optional.empty(), exactly(beyond(1), LATEST, 1, 0.99));
        assertEquals(2, exactly(beyond(1), LATEST, 1, 1).orElseThrow().steps().size());
    }

    /** One plan for now, one for the target, the three of the way without scatter, and each step with it. */
    @Test
    void aTargetWithinTheRiskIsNotSearchedFor() {
        StopAfter counting = new StopAfter(Integer.MAX_VALUE);
        PracticeSteps.plan(SampleRisks.exact(), beyond(-2), LATEST, 2, 0, new Sweep(1, counting));
        assertEquals(1 + 1 + 3 + 2, counting.cases());
    }

    /** However far it had come. */
    @Test
    void aStopLeavesNoSteps() {
        for (int after = 0; after < 7; after++) {
            Sweep stopped = new Sweep(1, new StopAfter(after));
            assertEquals(Optional.empty(), PracticeSteps.plan(SampleRisks.exact(), beyond(-2), LATEST, 2, 0, stopped));
        }
    }

    /** Overdone by as many metres as it takes, and felt as that entry is. */
    @Test
    void whatGoesFirstIsTheCauseOfTheFirstEntryThatFails() {
        EntryResult failed = SampleRisks.STUDY.simulator().run(beyond(0.5));
        PracticeSteps.Step step = only(beyond(-2.5));
        assertEquals(OptionalInt.of(3), step.tooLate().by());
        assertEquals(failed.cause(), step.tooLate().goesFirst());
        assertEquals(TellTale.of(failed), step.tooLate().tellTale());
        assertEquals(step.tooLate(), step.tooLateAsPlanned(), "a foot that mends nothing");
    }

    /**
     * A foot that reacts gets away with more than one that presses as planned: the plan fails as planned at the same
     * metre as that very entry, and with the foot that reacts farther on.
     */
    @Test
    void whatAFootThatReactsSavesIsNotSavedAsPlanned() {
        RiskStudy reacting = new RiskStudy(SampleRisks.STUDY, Scatter.NONE, 1, 1);
        PracticeSteps.Step step = PracticeSteps.plan(reacting, beyond(-2.5), beyond(-2.5), 1, 0, SampleRisks.QUIET)
                .orElseThrow()
                .steps()
                .get(0);
        assertEquals(only(beyond(-2.5)).tooLateAsPlanned(), step.tooLateAsPlanned());
        assertEquals(OptionalInt.of(3), step.tooLateAsPlanned().by());
        assertTrue(
                step.tooLate().by().orElse(TooLate.MOST + 1) > 3, step.tooLate().toString());
    }

    @Test
    void thirtyMetresOfOverdoingAreLookedAtAndNoMore() {
        EntryResult failed = SampleRisks.STUDY.simulator().run(beyond(0.5));
        assertEquals(OptionalInt.of(30), only(beyond(-29.5)).tooLate().by());
        assertEquals(failed.cause(), only(beyond(-29.5)).tooLate().goesFirst());
        PracticeSteps.Step safe = only(beyond(-31));
        assertEquals(OptionalInt.empty(), safe.tooLate().by());
        assertEquals("nothing goes wrong within 30 m", safe.tooLate().goesFirst());
        assertEquals("none", safe.tooLate().tellTale());
    }

    @Test
    void theEndsOfTheWayAreThePlansThemselves() {
        BrakePlan target = beyond(3);
        assertSame(LATEST, PracticeSteps.between(LATEST, target, 0));
        assertSame(target, PracticeSteps.between(LATEST, target, 1));
    }

    @Test
    void aQuarterOfTheWayIsAQuarterInEveryNumber() {
        BrakePlan now =
                Braking.of(6, 0.2, new Release(ReleaseShapes.HELD, -8, 8)).from(-60);
        BrakePlan target =
                Braking.of(8, 0.4, new Release(ReleaseShapes.HELD, 0, 24)).from(-40);
        BrakePlan quarter = PracticeSteps.between(now, target, 0.25);
        assertEquals(6.5, quarter.peakDeceleration(), 1e-12);
        assertEquals(0.25, quarter.buildUpTime(), 1e-12);
        assertEquals(-6, quarter.release().start(), 1e-12);
        assertEquals(12, quarter.release().end(), 1e-12);
        assertEquals(-55, quarter.brakePoint(), 1e-12);
    }

    /** A pick-up lies between two; where one plan leaves it to the grip, so does a step towards the other. */
    @Test
    void thePickUpMovesWhereBothPlansNameIt() {
        Braking braking = Braking.of(6, 0.2, new Release(ReleaseShapes.HELD, -8, 8));
        BrakePlan early = pickingUp(braking, OptionalDouble.of(10)).from(-60);
        BrakePlan late = pickingUp(braking, OptionalDouble.of(30)).from(-60);
        assertEquals(
                OptionalDouble.of(15),
                PracticeSteps.between(early, late, 0.25).braking().pickUp());
        assertEquals(
                OptionalDouble.empty(),
                PracticeSteps.between(early, braking.from(-60), 0.5).braking().pickUp());
    }

    private static Braking pickingUp(Braking braking, OptionalDouble station) {
        return new Braking(
                braking.peakDeceleration(), braking.buildUpTime(), braking.release(), station, PedalDisturbance.NONE);
    }

    /** Half of 1 − u² and half of (1 − u)² is 1 − u. Between the places that are mixed a spline stands in for it. */
    @Test
    void halfHeldAndHalfProgressiveIsLinear() {
        BrakePlan now = LATEST.with(new Release(ReleaseShapes.HELD, 0, 1));
        BrakePlan target = LATEST.with(new Release(ReleaseShapes.PROGRESSIVE, 0, 1));
        Release half = PracticeSteps.between(now, target, 0.5).release();
        for (double u = 0; u <= 1; u += 1.0 / 64) {
            assertEquals(1 - u, half.remaining(u), 0.005);
        }
    }

    /** Also for a driver who strays and whose foot reacts, on a way along which the release is carried further. */
    @Test
    void noStepIsRiskierThanAccepted() {
        RiskStudy risks = new RiskStudy(SampleRisks.STUDY, Scatter.EXPERT, 8, 1);
        BrakePlan now =
                Braking.of(7, 0.25, new Release(ReleaseShapes.ABRUPT, 0, 0)).from(SampleRisks.EDGE - 12);
        PracticeSteps way = PracticeSteps.plan(risks, now, beyond(2), 2, 0.125, SampleRisks.QUIET)
                .orElseThrow();
        assertTrue(way.reached() > 0 && way.reached() < 1, way.toString());
        for (PracticeSteps.Step step : way.steps()) {
            assertTrue(step.risk().failed().value() <= 0.125);
            assertTrue(!step.tooLate().goesFirst().isEmpty()
                    && !step.tooLate().tellTale().isEmpty());
        }
    }
}
