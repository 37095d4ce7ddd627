package org.foreload.risk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.PedalDisturbance;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.Reaction;
import org.foreload.entry.Outcome;
import org.foreload.load.SampleCars;
import org.foreload.optimum.SampleStudies;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.LowDiscrepancy;
import org.foreload.study.Proportion;
import org.foreload.study.StopAfter;
import org.foreload.study.Sweep;
import org.foreload.tyre.BareTyre;
import org.junit.jupiter.api.Test;

class RiskStudyTest {

    private static final CornerStudy STUDY = SampleStudies.coarse(SampleCars.ROAD_CAR, SampleStudies.corner());
    private static final BrakePlan LATEST = STUDY.latest(
                    Braking.of(0.8 * STUDY.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, -3, 24)))
            .entry()
            .plan();

    private static Risk risk(Scatter scatter, int samples, long seed, BrakePlan plan) {
        return new RiskStudy(STUDY, scatter, samples, seed).of(plan);
    }

    /** Of a foot that mends nothing: a plan at its limit fails now and then. */
    private static Risk asTold(Scatter scatter, int samples, long seed) {
        return new RiskStudy(STUDY, scatter, Reaction.NONE, samples, seed).of(LATEST);
    }

    @Test
    void withoutScatterAPlanFailsNeverOrAlways() {
        assertEquals(0, risk(Scatter.NONE, 8, 1, LATEST).failed().count());
        BrakePlan hopeless = LATEST.withBrakePoint(LATEST.brakePoint() + 15);
        assertEquals(8, risk(Scatter.NONE, 8, 1, hopeless).failed().count());
    }

    @Test
    void withoutScatterEveryTimeIsTheSame() {
        Risk risk = new RiskStudy(STUDY, Scatter.NONE, Reaction.NONE, 4, 1).of(LATEST);
        assertEquals(STUDY.simulator().probe(LATEST).time(), risk.meanTime(), 1e-12);
        assertEquals(0, risk.timeDeviation(), 1e-12);
    }

    @Test
    void oneThreadAndTwoGiveTheSameAnswer() {
        RiskStudy risks = new RiskStudy(STUDY, Scatter.NOVICE, 32, 3);
        Risk one = risks.of(LATEST, new Sweep(1, Sweep.Progress.SILENT)).orElseThrow();
        Risk two = risks.of(LATEST, new Sweep(2, Sweep.Progress.SILENT)).orElseThrow();
        assertEquals(one, two);
        assertEquals(one, risks.of(LATEST));
    }

    /** Two entries of thirty-two say nothing of one in twenty: after a stop there is no answer, or one by name. */
    @Test
    void afterAStopThereIsNoAnswerButWhatIsAskedForByName() {
        RiskStudy risks = new RiskStudy(STUDY, Scatter.NOVICE, 32, 3);
        assertEquals(Optional.empty(), risks.of(LATEST, new Sweep(1, new StopAfter(2))));
        assertEquals(
                2,
                risks.soFar(LATEST, new Sweep(1, new StopAfter(2)))
                        .orElseThrow()
                        .failed()
                        .of());
        assertEquals(Optional.empty(), risks.soFar(LATEST, new Sweep(1, new StopAfter(0))));
    }

    /**
     * What scatters is the demand itself: over entries and time it deviates by the standard deviation asked for, which
     * of a sine is its amplitude over √2 (closed form).
     */
    @Test
    void thePedalDeviatesByItsStandardDeviation() {
        Scatter unsteady = new Scatter("unsteady", 0, 0, 0, 0.05, 0);
        RiskStudy risks = new RiskStudy(STUDY, unsteady, 1, 1);
        double sum = 0;
        int count = 0;
        for (double[] point : LowDiscrepancy.points(6, 1024, 1)) {
            PedalDisturbance foot = risks.missed(LATEST, point).disturbance();
            for (int i = 0; i < 200; i++) {
                double off = foot.delivered(1, i / 200.0 * 10 * foot.shortestPeriod()) - 1;
                sum += off * off;
                count++;
            }
        }
        assertEquals(0.05, Math.sqrt(sum / count), 0.0005);
    }

    /** Seeing that one arrives too fast, and braking more, saves entries that fail otherwise. */
    @Test
    void aFootThatReactsFailsLess() {
        int reacting = risk(Scatter.NOVICE, 64, 2, LATEST).failed().count();
        int asTold = asTold(Scatter.NOVICE, 64, 2).failed().count();
        assertTrue(reacting < asTold, reacting + " and " + asTold);
    }

    @Test
    void theWaysToFailSumToTheFailures() {
        Risk risk = asTold(Scatter.NOVICE, 64, 2);
        int sum = risk.of(Outcome.RAN_WIDE).count()
                + risk.of(Outcome.SPUN).count()
                + risk.of(Outcome.LOCKED_UP).count();
        assertEquals(risk.failed().count(), sum);
        assertTrue(sum > 0 && sum < 64, "a plan at its limit fails now and then: " + sum);
        assertEquals(risk.meanTime() + 7 * risk.failed().value(), risk.expectedTime(7), 1e-12);
    }

    /** From a plan that works without scatter, more scatter can only be shown to fail more, not less. */
    @Property(tries = 8)
    void moreScatterNeverFailsLessBeyondTheInterval(
            @ForAll @DoubleRange(min = 0.2, max = 1) double little,
            @ForAll @DoubleRange(min = 1.2, max = 3) double factor) {
        Scatter calm = Scatter.PRACTISED.times(little);
        Proportion less = asTold(calm, 32, 5).failed();
        Proportion more = asTold(calm.times(factor), 32, 5).failed();
        assertTrue(more.high() >= less.low(), less + " with little, " + more + " with more");
    }

    /** Intervals hold a value known from far more entries in nearly all repetitions with seeds of their own. */
    @Test
    void intervalsHoldTheTruthInRepetition() {
        double truth = asTold(Scatter.NOVICE, 256, 99).failed().value();
        assertTrue(truth > 0.1 && truth < 0.9, "nothing to estimate: " + truth);
        int held = 0;
        int repetitions = 20;
        for (int seed = 0; seed < repetitions; seed++) {
            Proportion seen = asTold(Scatter.NOVICE, 16, seed).failed();
            held += seen.low() <= truth && truth <= seen.high() ? 1 : 0;
        }
        assertTrue(held >= 18, held + " of " + repetitions);
    }

    /** Who only asks whether a plan fails seldom enough gets the answer of the full count, for fewer entries. */
    @Test
    void seldomFailingAgreesWithTheFullCount() {
        int enough = 0;
        int tooMany = 0;
        for (double scatter : new double[] {0.1, 0.3, 0.6, 1}) {
            for (int seed = 0; seed < 2; seed++) {
                RiskStudy risks = new RiskStudy(STUDY, Scatter.NOVICE.times(scatter), Reaction.NONE, 32, seed);
                Proportion all = risks.of(LATEST).failed();
                boolean seldom = all.value() <= 0.05;
                assertEquals(seldom ? Optional.of(all) : Optional.empty(), risks.seldomFailing(LATEST, 0.05));
                enough += seldom ? 1 : 0;
                tooMany += seldom ? 0 : 1;
            }
        }
        RiskStudy risks = new RiskStudy(STUDY, Scatter.NOVICE, Reaction.NONE, 32, 0);
        assertEquals(Optional.of(risks.of(LATEST).failed()), risks.seldomFailing(LATEST, 1), "whatever fails");
        assertTrue(enough >= 2 && tooMany >= 2, enough + " fail seldom, " + tooMany + " do not");
    }

    /** Braking far too early is slow and no failure, unlike the same plan followed to the letter. */
    @Test
    void whoBrakesFarTooEarlyComesOffTheBrake() {
        BrakePlan early = LATEST.withBrakePoint(LATEST.brakePoint() - 60);
        assertTrue(!STUDY.simulator().probe(early).made());
        Risk risk = risk(Scatter.NONE, 2, 1, early);
        assertEquals(0, risk.failed().count());
        assertTrue(risk.meanTime() > STUDY.simulator().probe(LATEST).time() + 1);
    }

    /** The ripple of the draws is that of the simulator's own pedal, and it is all that strays here. */
    @Test
    void anUnsteadyFootAloneChangesTheTimeButLittle() {
        Scatter rippled = new Scatter("ripple only", 0, 0, 0, 0.04, 0);
        BrakePlan early = LATEST.withBrakePoint(LATEST.brakePoint() - 10);
        Risk risk = risk(rippled, 32, 1, early);
        double calm = STUDY.simulator().probe(early).time();
        assertTrue(risk.timeDeviation() > 0 && risk.timeDeviation() < 0.02 * calm, risk.toString());
    }

    /** A car on tyres of the user's own feels the grip scatter like any other. */
    @Test
    void gripScattersOnATyreFromOutside() {
        var car = STUDY.simulator().car();
        var own = SampleStudies.coarse(
                car.withTyres(BareTyre.of(car.frontTyre()), BareTyre.of(car.rearTyre())),
                STUDY.simulator().corner());
        Scatter slippery = new Scatter("grip only", 0, 0, 0, 0, 0.05);
        BrakePlan early = LATEST.withBrakePoint(LATEST.brakePoint() - 5);
        // The same draws for both: a few show it, and a tyre without a closed form is slow.
        Risk plain = new RiskStudy(STUDY, slippery, 2, 1).of(early);
        Risk wrapped = new RiskStudy(own, slippery, 2, 1).of(early);
        assertEquals(plain.meanTime(), wrapped.meanTime(), 1e-3 * plain.meanTime());
        assertTrue(wrapped.timeDeviation() > 0);
    }

    @Test
    void theSensiblePlanIsSlowerAndSaferThanTheRecklessOne() {
        RiskStudy risks = new RiskStudy(STUDY, Scatter.NOVICE, Reaction.NONE, 16, 1);
        Choice choice = SensibleRelease.among(risks, java.util.List.of(LATEST), new Sweep(2, Sweep.Progress.SILENT));
        Risk reckless = choice.reckless().orElseThrow();
        Risk sensible = choice.quickest(0.05).orElseThrow();
        assertTrue(sensible.failed().value() <= 0.05);
        assertTrue(reckless.failed().value() > sensible.failed().value());
        assertTrue(reckless.meanTime() < sensible.meanTime());
        assertTrue(!reckless.plan().equals(sensible.plan()));
        double slower = Double.POSITIVE_INFINITY;
        double riskier = -1;
        for (Risk risk : choice.curve()) {
            assertTrue(risk.failed().value() >= riskier && risk.meanTime() <= slower);
            slower = risk.meanTime();
            riskier = risk.failed().value();
        }
    }
}
