package org.foreload.balance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.InvalidValueException;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.Reaction;
import org.foreload.entry.EntryResult;
import org.foreload.entry.MadeUpEntry;
import org.foreload.entry.Outcome;
import org.foreload.entry.SimulationSettings;
import org.foreload.grip.Axle;
import org.foreload.optimum.SampleStudies;
import org.foreload.optimum.ShapeRanking;
import org.foreload.parameter.Parameter;
import org.foreload.path.Corner;
import org.foreload.pedal.LockingRamp;
import org.foreload.risk.Risk;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.stability.Scenes;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Proportion;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.junit.jupiter.api.Test;

/** The balance study on one car with few values, and its recommendation on made-up rows. */
class BalanceStudyTest {

    private static final BalanceStudy ONE_RELEASE = linear(0.3);

    private static final CornerStudy STUDY = study(Scenes.medium());

    /** From a share that locks the rear first to one that brakes with the front wheels alone. */
    private static final Balance WIDE =
            ONE_RELEASE.run(STUDY, new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.70, 0.82, 0.98)), Sweep.quiet());

    private static BalanceStudy linear(double end) {
        return new BalanceStudy(
                new SweepPlan(List.of(ReleaseShapes.LINEAR), List.of(0.8), List.of(-0.1), List.of(end), 0.25));
    }

    /** In steps ten times as large as usual: what is compared here is driven by the same simulator. */
    private static CornerStudy study(Corner corner) {
        return CornerStudy.of(
                Scenes.frontHeavy(),
                corner,
                DriverSettings.practised(),
                new SimulationSettings(1e-5, 1),
                Allowance.STANDARD);
    }

    /** Nothing follows from values that a stop left out: none is best, and none is said to fail. */
    @Test
    void aSweepThatWasStoppedRecommendsNothing() {
        BalanceAxis axis = new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.6, 0.7, 0.8));
        Balance stopped =
                Balance.of(axis, 0.7, List.of(row(0.6, 17.0, Axle.FRONT, 0), row(0.7, 17.1, Axle.FRONT, 0)), false);
        assertFalse(stopped.complete());
        assertEquals(Optional.empty(), stopped.recommended());
        assertFalse(stopped.interior());
        assertEquals("Stopped after 2 of 3 values: none is recommended.", stopped.reason());
        assertEquals(2, stopped.rows().size(), "what was done is kept");
        Thread.currentThread().interrupt();
        Balance interrupted = ONE_RELEASE.run(STUDY, axis, Sweep.quiet());
        assertTrue(Thread.interrupted(), "the interrupt was swallowed");
        assertFalse(interrupted.complete());
        assertEquals(Optional.empty(), interrupted.recommended());
    }

    /** A stop that comes when each value has its own release keeps these, and recommends none. */
    @Test
    void aSweepThatWasStoppedBeforeNeighboursAreComparedKeepsItsRows() {
        AtomicBoolean stopped = new AtomicBoolean();
        Sweep sweep = new Sweep(2, new Sweep.Progress() {
            @Override
            public void update(int done, int total) {
                stopped.set(done == 2 && total == 2);
            }

            @Override
            public boolean stopped() {
                return stopped.get();
            }
        });
        Balance balance = ONE_RELEASE.run(
                SampleStudies.coarse(Scenes.frontHeavy(), SampleStudies.shortCorner()),
                new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.7, 0.8)),
                sweep);
        assertEquals(2, balance.rows().size());
        assertFalse(balance.complete());
        assertEquals(Optional.empty(), balance.recommended());
        assertTrue(balance.reason().contains("compared with their neighbours"), balance.reason());
    }

    /** A release with which the car makes the corner is no quicker than the best: so no neighbour's is. */
    @Test
    void noValueIsSlowerThanWithTheReleaseOfItsNeighbour() {
        List<BalanceRow> rows = ONE_RELEASE
                .run(
                        STUDY,
                        new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.78, 0.8, 0.82)),
                        new Sweep(2, Sweep.Progress.SILENT))
                .rows();
        for (int i = 0; i < rows.size(); i++) {
            BalanceRow row = rows.get(i);
            for (BalanceRow other : rows.subList(Math.max(0, i - 1), Math.min(rows.size(), i + 2))) {
                BrakePlan plan = other.best().plan();
                Finding same =
                        STUDY.with(row.car(), STUDY.simulator().driver()).latest(plan.braking(), plan.brakePoint());
                assertTrue(
                        !same.found() || row.time() <= same.entry().time() + 1e-9,
                        row.value() + " takes " + row.time() + ", with the release of " + other.value() + " "
                                + same.entry().time());
            }
        }
    }

    /** One search for all: the car's own value has the release that explore finds for the car, or a quicker one. */
    @Test
    void theOwnValueIsThatOfExplore() {
        ReleaseSweep sweep = new ReleaseSweep(STUDY, ONE_RELEASE.releases());
        EntryResult explored =
                ShapeRanking.explore(sweep, Sweep.quiet()).best().orElseThrow().entry();
        EntryResult own = WIDE.rows().get(1).best();
        assertTrue(own.plan().equals(explored.plan()) || own.time() < explored.time(), own + " and " + explored);
    }

    @Test
    void theBestShareLiesBetweenALooseRearAndAnIdleOne() {
        assertEquals(3, WIDE.rows().size());
        assertTrue(WIDE.complete());
        assertEquals(0.82, WIDE.own());
        BalanceRow loose = WIDE.rows().get(0);
        BalanceRow middle = WIDE.rows().get(1);
        BalanceRow idle = WIDE.rows().get(2);
        assertEquals(Axle.REAR, loose.firstToLock().orElseThrow().axle());
        assertEquals(Axle.FRONT, idle.firstToLock().orElseThrow().axle());
        assertTrue(middle.time() < loose.time());
        assertTrue(middle.time() < idle.time());
        assertEquals(middle, WIDE.recommended().orElseThrow());
        assertTrue(WIDE.interior());
        assertTrue(WIDE.reason().contains("A front brake share of 0.820 is the quickest"), WIDE.reason());
        // More brake behind leaves the rear less to hold the car with.
        double looseGrowth = loose.leastStable().orElseThrow().row().growthRate();
        double idleGrowth = idle.leastStable().orElseThrow().row().growthRate();
        assertTrue(looseGrowth > middle.leastStable().orElseThrow().row().growthRate());
        assertTrue(idleGrowth < middle.leastStable().orElseThrow().row().growthRate());
    }

    /**
     * In an S of 50 and 45 m the brake is for the first bend, and comes off on the way to its apex at 33 m. Shares of
     * the way to the second, at 115 m, would be beyond it. Common practice, no source.
     */
    @Test
    void inAnSTheBrakeIsReleasedIntoTheFirstBend() {
        BalanceRow row = linear(0.8)
                .run(
                        study(SampleStudies.twoBends()),
                        new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.82, 0.9)),
                        Sweep.quiet())
                .rows()
                .get(0);
        assertTrue(row.made());
        double off = row.best().plan().release().end();
        assertTrue(off > 0 && off < 33, "off the brake at " + off);
    }

    /** A row of whose 32 entries with a small scatter so many fail. */
    private static BalanceRow row(double share, double time, Axle axle, int failed) {
        return row(share, time, Optional.of(new LockingRamp(axle, 9, 9)), failed);
    }

    private static BalanceRow row(double share, double time, Optional<LockingRamp> lock, int failed) {
        Car car = Scenes.light().withFrontBrakeShare(share);
        EntryResult entry = MadeUpEntry.of(Outcome.MADE_IT, 0, time, EntryResult.Limit.REAR_AXLE, List.of());
        return new BalanceRow(
                share,
                car,
                lock,
                entry,
                true,
                Optional.of(new Proportion(failed, 32)),
                Optional.of(Outcome.SPUN),
                Optional.of(Outcome.RAN_WIDE),
                Optional.empty());
    }

    private static Balance balance(BalanceRow... rows) {
        BalanceAxis axis = new BalanceAxis(
                BalanceAxis.BRAKE_SHARE,
                List.of(rows).stream().map(BalanceRow::value).toList());
        return Balance.of(axis, 0.7, List.of(rows), true);
    }

    @Test
    void aQuickerShareWhoseRearLocksFirstIsNotRecommended() {
        Balance balance =
                balance(row(0.6, 16.8, Axle.REAR, 0), row(0.7, 17.1, Axle.FRONT, 2), row(0.8, 17.3, Axle.FRONT, 0));
        assertEquals(0.7, balance.recommended().orElseThrow().value());
        assertTrue(balance.interior());
        assertEquals(
                "Keep what you have. A front brake share of 0.700 is the quickest that locks the front axle first and fails"
                        + " at most one time in ten with a small scatter (2 of 32 fail); 0.60 would be 0.3 s quicker, but its"
                        + " rear axle locks first; braked 10 m later it runs wide.",
                balance.reason());
    }

    @Test
    void aQuickerShareThatFailsTooOftenIsNotRecommended() {
        Balance balance =
                balance(row(0.7, 17.1, Axle.FRONT, 4), row(0.8, 17.3, Axle.FRONT, 3), row(0.9, 17.4, Axle.FRONT, 0));
        assertEquals(0.8, balance.recommended().orElseThrow().value());
        assertTrue(
                balance.reason().contains("0.700 would be 0.2 s quicker, but 13 % fail with a small scatter"),
                balance.reason());
    }

    /** No wheel of a car with anti-lock brakes locks (decision 0040), so neither axle is said to lock first. */
    @Test
    void whereNoWheelLocksNoAxleIsSaidToLockFirst() {
        Balance balance = balance(
                row(0.6, 17.3, Optional.empty(), 0),
                row(0.7, 17.1, Optional.empty(), 0),
                row(0.8, 17.3, Optional.empty(), 0));
        assertEquals(
                "Keep what you have. A front brake share of 0.700 is the quickest that fails at most one time in ten with a"
                        + " small scatter (0 of 32 fail); braked 10 m later it runs wide.",
                balance.reason());
    }

    /** A value stands with its unit behind it; the trade writes CG (ISO 8855). */
    @Test
    void aValueIsNamedWithItsUnit() {
        BalanceAxis height = new BalanceAxis(BalanceAxis.CG_HEIGHT, List.of(0.3, 0.4));
        Balance balance =
                Balance.of(height, 0.4, List.of(row(0.3, 17.3, Axle.FRONT, 0), row(0.4, 17.0, Axle.REAR, 0)), true);
        assertTrue(balance.reason().startsWith("A CG height of 0.30 m is the quickest"), balance.reason());
        assertTrue(balance.reason().contains("; 0.400 m would be 0.3 s quicker"), balance.reason());
    }

    /** By definition: those not farther from the recommended time than the accuracy, quicker or slower. */
    @Test
    void valuesNearerThanTheAccuracyAreEquallyQuick() {
        double near = 17.1 + 0.9 * Balance.ACCURACY;
        double far = 17.1 + 1.1 * Balance.ACCURACY;
        Balance balance =
                balance(row(0.6, 17.05, Axle.REAR, 0), row(0.7, 17.1, Axle.FRONT, 0), row(0.8, near, Axle.FRONT, 0));
        assertEquals(2, balance.equallyQuick());
        assertEquals(
                0,
                balance(row(0.7, 17.1, Axle.FRONT, 0), row(0.8, far, Axle.FRONT, 0))
                        .equallyQuick());
    }

    /** Nobody turns a screw for less than the search shows; for more, or for the front axle to lock first, one does. */
    @Test
    void whatTheCarHasIsKeptWhereNothingIsQuickerByMoreThanTheSearchShows() {
        double near = 17.1 + 0.9 * Balance.ACCURACY;
        Balance kept =
                balance(row(0.6, 17.3, Axle.FRONT, 0), row(0.7, near, Axle.FRONT, 0), row(0.8, 17.1, Axle.FRONT, 0));
        assertEquals(0.7, kept.recommended().orElseThrow().value());
        assertTrue(
                kept.reason()
                        .startsWith("Keep what you have. A front brake share of 0.700 is as quick, as far as the search"
                                + " shows, as any that locks the front axle first"),
                kept.reason());
        assertFalse(kept.interior(), "0.8 is no worse");
        assertTrue(kept.reason().contains("no optimum inside"), kept.reason());
        double far = 17.1 + 1.1 * Balance.ACCURACY;
        Balance changed =
                balance(row(0.6, 17.3, Axle.FRONT, 0), row(0.7, far, Axle.FRONT, 0), row(0.8, 17.1, Axle.FRONT, 0));
        assertEquals(0.8, changed.recommended().orElseThrow().value());
        assertTrue(changed.reason().startsWith("A front brake share of 0.80 is the quickest"), changed.reason());
        assertTrue(changed.reason().contains("the 0.700 that you have is 0.11 s slower, hardly"), changed.reason());
        Balance clear = balance(row(0.7, 17.1 + 2.1 * Balance.ACCURACY, Axle.FRONT, 0), row(0.8, 17.1, Axle.FRONT, 0));
        assertFalse(clear.reason().contains("tie"), clear.reason());
        assertEquals(
                0.8,
                balance(row(0.7, near, Axle.REAR, 0), row(0.8, 17.1, Axle.FRONT, 0))
                        .recommended()
                        .orElseThrow()
                        .value());
    }

    /** The light car's own share is a value of its own, between those of a sweep or beyond them, and only once. */
    @Test
    void theCarsOwnValueIsComparedToo() {
        Car car = Scenes.light().withFrontBrakeShare(0.7);
        BalanceAxis around = new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.6, 0.8));
        assertEquals(List.of(0.6, 0.7, 0.8), around.withOwn(car).values());
        assertEquals(around.withOwn(car), around.withOwn(car).withOwn(car));
        BalanceAxis above = new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.75, 0.8));
        assertEquals(List.of(0.7, 0.75, 0.8), above.withOwn(car).values());
        BalanceAxis rounded = new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.6, 0.1 * 7));
        assertEquals(List.of(0.6, 0.7), rounded.withOwn(car).values());
    }

    /** What is said of a value at the end is what the rows show, and nothing of why. */
    @Test
    void anOptimumAtTheEndIsSaidToBeNone() {
        Balance alone = balance(row(0.7, 17.1, Axle.FRONT, 0), row(0.8, 17.3, Axle.FRONT, 0));
        assertFalse(alone.interior());
        assertTrue(
                alone.reason()
                        .endsWith(
                                "It is the lower end of the sweep, which shows no optimum inside: none there is quicker."),
                alone.reason());
        Balance kept =
                balance(row(0.7, 17.15, Axle.FRONT, 0), row(0.8, 17.1, Axle.FRONT, 0), row(0.9, 17.26, Axle.FRONT, 0));
        assertFalse(kept.interior());
        assertTrue(
                kept.reason()
                        .endsWith(
                                "It is the lower end of the sweep; 0.80 is 0.050 s quicker, less than the search shows,"
                                        + " so that an optimum inside stays open."),
                kept.reason());
        Balance near = balance(row(0.6, 17.02, Axle.REAR, 0), row(0.7, 17.1, Axle.FRONT, 0));
        assertTrue(
                near.reason()
                        .endsWith(
                                "0.60 is 0.080 s quicker, less than the search shows, and its rear axle locks first, so"
                                        + " that an optimum inside stays open."),
                near.reason());
        Balance loose = balance(row(0.6, 16.8, Axle.REAR, 0), row(0.7, 17.1, Axle.FRONT, 0));
        assertTrue(loose.reason().contains("0.60 would be 0.3 s quicker, but its rear axle"), loose.reason());
        assertTrue(
                loose.reason().endsWith("It is the upper end of the sweep, which shows no optimum inside."),
                loose.reason());
    }

    @Test
    void whereEveryShareFailsTooOftenTheOneThatFailsLeastIsGivenWithThatWord() {
        Balance balance = balance(row(0.6, 17.0, Axle.REAR, 9), row(0.7, 17.1, Axle.FRONT, 8));
        assertEquals(0.7, balance.recommended().orElseThrow().value());
        assertTrue(balance.reason().contains("fails least often with a small scatter"), balance.reason());
        Balance loose = balance(row(0.6, 17.0, Axle.REAR, 1), row(0.7, 17.1, Axle.FRONT, 8));
        assertEquals(0.6, loose.recommended().orElseThrow().value());
        assertTrue(loose.reason().contains("though the rear axle locks first"), loose.reason());
    }

    /** Values are compared at equal risk: each brakes so early that few of its entries fail. */
    @Test
    void everyValueBrakesEarlyEnoughForASmallScatter() {
        for (BalanceRow row : WIDE.rows()) {
            assertTrue(row.steady(), row.value() + " fails " + row.failureShare());
            CornerStudy own = STUDY.with(row.car(), STUDY.simulator().driver());
            Risk again = new RiskStudy(own, Scatter.EXPERT, 32, 1).of(row.best().plan());
            assertEquals(row.failureShare(), again.failed().value());
        }
    }

    /**
     * Some metres beyond the latest brake point a driver who mends nothing fails more often than accepted: from there a
     * row brakes earlier, metre by metre, and no earlier than that takes.
     */
    @Test
    void whoFailsTooOftenBrakesEarlierByAsMuchAsItTakes() {
        CornerStudy study = SampleStudies.coarse(Scenes.frontHeavy(), SampleStudies.shortCorner())
                .with(Allowance.NO_MARGIN);
        Braking braking = Braking.of(0.8 * study.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, -3, 12));
        RiskStudy risks = new RiskStudy(study, Scatter.EXPERT, Reaction.NONE, 32, 1);
        double point = study.search().latest(braking).point();
        while (risks.of(braking.from(point)).failed().value() <= BalanceStudy.ACCEPTED) {
            point++;
        }
        BrakePlan latest = braking.from(point + 1);
        Risk equal = BalanceStudy.atEqualRisk(risks, latest);
        assertTrue(equal.failed().value() <= BalanceStudy.ACCEPTED, "fails " + equal.failed());
        double back = latest.brakePoint() - equal.plan().brakePoint();
        assertEquals(2, back, 1e-9);
        assertEquals(equal.plan(), BalanceStudy.atEqualRisk(risks, equal.plan()).plan(), "who is safe stays");
    }

    /** The law of parameters: a number that was put in is read back, and nothing else changes. */
    @Test
    void everyAxisReadsBackWhatItPutIn() {
        Car car = Scenes.light().with(new Aerodynamics(0.6, 0.3, 0.5, 1.2, 0));
        for (Parameter<Car> one : List.of(
                BalanceAxis.BRAKE_SHARE,
                BalanceAxis.ROLL_STIFFNESS_SHARE,
                BalanceAxis.CG_HEIGHT,
                BalanceAxis.DOWNFORCE_SHARE)) {
            assertEquals(0.44, one.of(one.with(car, 0.44)), 1e-12, one.name());
            assertEquals(one.of(car), one.of(one.with(one.with(car, 0.44), one.of(car))), 1e-12, one.name());
        }
        Aerodynamics moved = BalanceAxis.DOWNFORCE_SHARE.with(car, 0.25).aerodynamics();
        assertEquals(0.8, moved.frontDownforceArea() + moved.rearDownforceArea(), 1e-12);
    }

    /**
     * (b + μ·h)/L for the worked example of sources: a 1.2, b 1.5, h 0.55 has φ = 0.70 at μ = 0.709091. A third of the
     * stretch that is looked at lies below.
     */
    @Test
    void sharesAreTriedAroundTheOneThatLocksBothAxlesAtOnce() {
        Car car = Scenes.frontHeavy().with(new Chassis(1500, 2.7, 1.2, 0.55, 2400, 1.5, 1.5));
        List<Double> shares = BalanceAxis.brakeShares(car, 0.709091, 7).values();
        assertEquals(7, shares.size());
        assertEquals(0.70, shares.get(2), 5e-7);
        for (int i = 1; i < shares.size(); i++) {
            assertEquals(shares.get(2) + 0.04 * (i - 2), shares.get(i), 1e-12);
        }
    }

    @Test
    void valuesThatDoNotRiseAreRefused() {
        assertThrows(InvalidValueException.class, () -> new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.7, 0.6)));
        assertThrows(InvalidValueException.class, () -> new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.7)));
        assertThrows(
                InvalidValueException.class, () -> BalanceAxis.evenly(BalanceAxis.BRAKE_SHARE, Double.NaN, 0.8, 3));
    }
}
